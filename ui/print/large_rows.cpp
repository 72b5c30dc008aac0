#include "ui/print/large_rows.h"

#include "ui/print/work_line.h"
#include "ui/print/work_rows.h"
#include "ui/words/said.h"
#include "ui/words/words.h"

#include <QCoreApplication>

#include <algorithm>

namespace hammerline::print {

namespace {

using words::onPaper;

constexpr Type kTitle{19, true}, kNumber{28, true}, kWhat{32, true}, kBeside{16}, kHand{13}, kRead{11};
constexpr double kRow = 17.2, kBase = 12.2, kBox = 11;
constexpr double kNumberRight = 33, kSwatch = 35, kPitch = 41.5, kSign = 63, kWhatLeft = 71;
constexpr double kMark = 6.5, kBeforeMark = 2.5; // the section's mark, in the margin at the right
constexpr double kLeastHand = 26;                // what stands small at the right keeps at least this
constexpr double kMarksFrom = 26, kMarksTo = 210, kBetweenMarks = 6;
constexpr double kThick = 0.9, kThin = 0.35;
constexpr std::size_t kHeavierEvery = 5;

/// Where the aim stands: one place for all lines of a work.
struct Places {
    double to = 0, aim = 0;
};

QString toText() {
    return onPaper(QT_TRANSLATE_NOOP("paper", "to"));
}

QString wordOf(const AdjustmentLine& line, const Piano& piano) {
    return words::directionWord(line.step->direction, line.step->operation, piano);
}

Places placesOf(const AdjustmentWork& work, const Piano& piano) {
    double widest = 0;
    for (const AdjustmentLine& line : work.lines)
        if (line.step->aim) widest = std::max(widest, textWidth(wordOf(line, piano), kWhat));
    const double to = kWhatLeft + std::min(widest, 50.0) + 4;
    return {to, to + textWidth(toText(), kBeside) + 3};
}

struct Mark {
    QString name;
    double from, to; // mm from the top of the page
};

Mark markOf(std::size_t section, const Piano& piano) {
    const auto sections = sectionsOf(piano);
    const double each = (kMarksTo - kMarksFrom) / static_cast<double>(sections.size());
    const double from = kMarksFrom + each * static_cast<double>(section);
    return {words::sectionName(sections.at(section), section, sections.size()), from, from + each - kBetweenMarks};
}

/// The same mark from every row of the section: it stands where it stands, however many rows the page has of it.
void paintMark(Canvas& c, double right, const Mark& mark) {
    const QRectF place(right + kBeforeMark, mark.from, kMark, mark.to - mark.from);
    c.fill(place);
    c.draw(place, [&](QPainter& painter, const QRectF& r) {
        painter.setFont(canvasFont({13, true}));
        painter.setPen(Qt::white);
        painter.translate(r.center());
        painter.rotate(90);
        painter.drawText(QRectF(-r.height() / 2, -r.width() / 2, r.height(), r.width()), Qt::AlignCenter, mark.name);
    });
}

void paintNote(Canvas& c, const QRectF& r, NoteNumber note, bool ticked, const Piano& piano) {
    const double base = r.y() + kBase;
    c.tickBox(r.x(), r.y() + (kRow - kBox) / 2, kBox, ticked);
    c.text(r.x() + kNumberRight, base, QString::number(note.value), kNumber, Align::right);
    c.keySwatch(r.x() + kSwatch, base - 8.6, colourOf(note, piano) == KeyColour::sharp, 4.4, 9.4);
    c.textWithin(r.x() + kPitch, base, kSign - kPitch - 5.5, words::pitch(note, piano), kBeside);
}

/// At the right, small: what the hand does, and what was read.
void paintBeside(Canvas& c, double left, double right, double top, const AdjustmentLine& line) {
    const double width = right - left;
    const QString said = amountText(line);
    const QString amount = line.step->stack.empty() ? said : onPaper(QT_TRANSLATE_NOOP("paper", "%1 mm")).arg(said);
    if (!said.isEmpty()) c.textWithin(right, top + 7.4, width, amount, kHand, Align::right);
    QString read = onPaper(QT_TRANSLATE_NOOP("paper", "read %1")).arg(nowText(line));
    if (const QString taken = takenText(line); !taken.isEmpty()) read += u' ' + taken;
    if (line.read || line.nowWord) c.textWithin(right, top + 13.2, width, read, kRead, Align::right);
}

void paintLarge(Canvas& c, const QRectF& r, const AdjustmentLine& line, const Places& places, const Piano& piano) {
    const double base = r.y() + kBase, right = r.right();
    paintNote(c, r, line.note, line.ticked, piano);
    c.turn(r.x() + kSign, r.y() + kRow / 2, words::signOf(line.step->operation, line.step->direction, piano), 5);
    const QString word = wordOf(line, piano);
    if (!line.step->aim) {
        const double room = right - kLeastHand - r.x() - kWhatLeft;
        const double width = std::min(textWidth(word, kWhat), room / 2);
        c.textWithin(r.x() + kWhatLeft, base, width, word, kWhat);
        c.textWithin(r.x() + kWhatLeft + width + 3, base, room - width - 3, words::directionEffect(*line.step, piano),
                     kBeside);
        paintBeside(c, right - kLeastHand, right, r.y(), line);
        return;
    }
    c.textWithin(r.x() + kWhatLeft, base, places.to - kWhatLeft - 4, word, kWhat);
    c.text(r.x() + places.to, base, toText(), kBeside);
    const double room = right - kLeastHand - r.x() - places.aim;
    const double end =
        r.x() + places.aim + c.textWithin(r.x() + places.aim, base, room, words::aimText(*line.step), kWhat) + 3;
    paintBeside(c, std::max(end, right - 60), right, r.y(), line);
}

bool inTrialOf(const AdjustmentWork& work, NoteNumber note) {
    return work.trial && std::ranges::find(work.trial->notes, note) != work.trial->notes.end();
}

void paintEnd(Canvas& c, const QRectF& r, std::size_t row) {
    const bool heavier = row % kHeavierEvery == 0;
    c.line(r.x(), r.bottom(), r.right(), r.bottom(), heavier ? kThick : kThin);
}

QString nameOf(NoteNumber note) {
    return onPaper(QT_TRANSLATE_NOOP("paper", "note %1")).arg(note.value);
}

} // namespace

Solid largeHeading(const QString& text, const QString& right) {
    return {12.5,
            [=](Canvas& c, const QRectF& r) {
                const double base = r.y() + 8.2, side = textWidth(right, kRead);
                c.textWithin(r.x(), base, r.width() - side - 4, text, kTitle);
                c.text(r.right(), base, right, kRead, Align::right);
                c.line(r.x(), r.y() + 11, r.right(), r.y() + 11, kThick);
            },
            true};
}

Table largeTable(const AdjustmentWork& work, const Piano& piano) {
    Table table = plainTable();
    const Places places = placesOf(work, piano);
    for (const AdjustmentLine& line : work.lines) {
        if (inTrialOf(work, line.note)) continue;
        const std::size_t row = table.rows.size() + 1;
        table.rows.push_back(
            {kRow,
             {},
             [line, places, row, &piano, mark = markOf(line.section, piano)](Canvas& c, const QRectF& r) {
                 paintLarge(c, r, line, places, piano);
                 paintEnd(c, r, row);
                 paintMark(c, r.right(), mark);
             },
             nameOf(line.note)});
    }
    return table;
}

Table largeTrialTable(const AdjustmentWork& work, const Piano& piano) {
    Table table = plainTable();
    const QString what =
        words::directionWord(work.trial->direction, work.operation, piano) + u' ' + trialAmount(work, piano);
    const words::Sign sign = words::signOf(work.operation, work.trial->direction, piano);
    for (const NoteNumber note : work.trial->notes) {
        const auto line = std::ranges::find(work.lines, note, &AdjustmentLine::note);
        const bool ticked = line != work.lines.end() && line->ticked;
        table.rows.push_back({kRow,
                              {},
                              [=, &piano](Canvas& c, const QRectF& r) {
                                  const double base = r.y() + kBase, from = r.right() - 42;
                                  paintNote(c, r, note, ticked, piano);
                                  c.turn(r.x() + kSign, r.y() + kRow / 2, sign, 5);
                                  c.textWithin(r.x() + kWhatLeft, base, from - r.x() - kWhatLeft - 4, what, kWhat);
                                  c.text(from, r.y() + 6, onPaper(QT_TRANSLATE_NOOP("paper", "then it shows")), kRead);
                                  c.line(from, base + 1.5, r.right() - 9, base + 1.5, kThin);
                                  c.text(r.right(), base + 1, onPaper(QT_TRANSLATE_NOOP("paper", "mm")), kRead,
                                         Align::right);
                                  c.line(r.x(), r.bottom(), r.right(), r.bottom(), kThin);
                              },
                              nameOf(note)});
    }
    return table;
}

} // namespace hammerline::print
