// The check list on paper: causes first, then what is out, worst first, then the counts by dimension.
#include "ui/print/documents.h"
#include "ui/words/said.h"
#include "ui/words/words.h"

#include <QCoreApplication>

#include <cmath>

namespace hammerline::print {

namespace {

using words::onPaper;

constexpr Type kHead{9}, kCell{10}, kSmall{8.5};
// Right or left edges in a column, mm.
constexpr double kDimensionLeft = 25, kValueRight = 57.5, kZoneRight = 73;

QString valueText(const Judged& judged) {
    if (judged.word) return words::name(*judged.word);
    if (!judged.value) return QString(QChar(0x2013));
    const QString shown = words::shown(judged.cell.dimension, *judged.value);
    if (judged.relation == Relation::less) return QStringLiteral("< ") + shown;
    if (judged.relation == Relation::more) return QStringLiteral("> ") + shown;
    return shown;
}

QString deviationText(const Judged& judged) {
    if (judged.verdict == Verdict::undecided) return QStringLiteral("?");
    if (judged.verdict == Verdict::within)
        return judged.step ? onPaper(QT_TRANSLATE_NOOP("paper", "step"))
                           : onPaper(QT_TRANSLATE_NOOP("paper", "uneven"));
    if (judged.infinite || !judged.deviation) return {};
    const QString sign = *judged.deviation < 0 ? QString(QChar(0x2212)) : QStringLiteral("+");
    return sign + QString::number(std::abs(*judged.deviation), 'f', 1) + QStringLiteral(" ×"); // not mm
}

void paintLine(Canvas& c, const QRectF& r, const CheckLine& line, const Piano& piano) {
    const Judged& judged = *line.judged;
    const double base = r.y() + 5;
    noteCell(c, r.x() - 1.5, base, judged.cell.note, piano);
    c.textWithin(r.x() + kDimensionLeft, base, 20.5, words::name(judged.cell.dimension), kCell);
    c.textWithin(r.x() + kValueRight, base, 11, valueText(judged), {11, true}, Align::right);
    if (line.zone)
        c.textWithin(r.x() + kZoneRight, base, 15, words::zoneText(judged.cell.dimension, *line.zone), kSmall,
                     Align::right);
    double x = r.right();
    x -= c.text(x, base, deviationText(judged), {10, true}, Align::right);
    const bool outside = judged.verdict == Verdict::low || judged.verdict == Verdict::high;
    for (int i = 0; outside && i < judged.marks(); ++i)
        c.triangle(x -= 2.1, base - 2.3, judged.verdict == Verdict::high, 1.8);
    c.line(r.x(), r.bottom(), r.right(), r.bottom(), 0.3);
}

Table outTable(const CheckSheet& sheet, const Piano& piano) {
    Table table;
    table.head = [](Canvas& c, const QRectF& r) {
        const double base = r.bottom() - 1.8;
        c.text(r.x() + 1, base, onPaper(QT_TRANSLATE_NOOP("paper", "note")), kHead);
        c.text(r.x() + kDimensionLeft, base, onPaper(QT_TRANSLATE_NOOP("paper", "what")), kHead);
        c.text(r.x() + kValueRight, base, onPaper(QT_TRANSLATE_NOOP("paper", "reading")), kHead, Align::right);
        c.text(r.x() + kZoneRight, base, onPaper(QT_TRANSLATE_NOOP("paper", "zone")), kHead, Align::right);
        c.text(r.right(), base, onPaper(QT_TRANSLATE_NOOP("paper", "deviation")), kHead, Align::right);
        c.line(r.x(), r.bottom(), r.right(), r.bottom(), 0.3);
    };
    table.again = headingBlock({}, onPaper(QT_TRANSLATE_NOOP("paper", "Worst first, continued")), {});
    for (const CheckLine& line : sheet.lines)
        table.rows.push_back({7,
                              {},
                              [line, &piano](Canvas& c, const QRectF& r) { paintLine(c, r, line, piano); },
                              onPaper(QT_TRANSLATE_NOOP("paper", "note %1")).arg(line.judged->cell.note.value)});
    return table;
}

/// Counts by dimension: one row each over the full width.
Solid countsBlock(const Review& review) {
    constexpr double kLine = 5.6;
    const double height = kLine * static_cast<double>(review.byDimension.size() + 1) + 1.5;
    return {height, [&review](Canvas& c, const QRectF& r) {
                const std::array<QString, 6> heads = {
                    onPaper(QT_TRANSLATE_NOOP("paper", "low")),    onPaper(QT_TRANSLATE_NOOP("paper", "within")),
                    onPaper(QT_TRANSLATE_NOOP("paper", "high")),   onPaper(QT_TRANSLATE_NOOP("paper", "undecided")),
                    onPaper(QT_TRANSLATE_NOOP("paper", "uneven")), onPaper(QT_TRANSLATE_NOOP("paper", "not read"))};
                const auto right = [&](std::size_t i) { return r.x() + 70 + static_cast<double>(i) * 21; };
                double base = r.y() + 4;
                for (std::size_t i = 0; i < heads.size(); ++i)
                    c.text(right(i), base, heads[i], kHead, Align::right);
                c.line(r.x(), base + 1.5, r.right(), base + 1.5, 0.3);
                for (const auto& [dimension, s] : review.byDimension) {
                    base += kLine;
                    c.textWithin(r.x(), base, 48, words::name(dimension), kCell);
                    const std::array<int, 6> counts = {s.low, s.within, s.high, s.undecided, s.uneven, s.missing};
                    for (std::size_t i = 0; i < counts.size(); ++i)
                        c.text(right(i), base, counts[i] ? QString::number(counts[i]) : QString(QChar(0x00B7)),
                               {10, counts[i] != 0 && i != 1 && i != 5}, Align::right);
                }
            }};
}

/// What the words and signs of the list mean.
Paragraph legendOfCheck() {
    return {{onPaper(QT_TRANSLATE_NOOP("paper", "deviation: ")), true},
            {onPaper(QT_TRANSLATE_NOOP("paper", "from the aim, not in mm: 1.0 × is the edge of the zone. ")), false},
            {QStringLiteral("?: "), true},
            {onPaper(QT_TRANSLATE_NOOP("paper", "at the edge, the gauge cannot say. ")), false},
            {onPaper(QT_TRANSLATE_NOOP("paper", "uneven: ")), true},
            {onPaper(QT_TRANSLATE_NOOP("paper", "within, but off the run of its neighbours. ")), false},
            {onPaper(QT_TRANSLATE_NOOP("paper", "step: ")), true},
            {onPaper(QT_TRANSLATE_NOOP("paper", "within, but far from the next key of its colour.")), false}};
}

} // namespace

Document checkDocument(const Source& source, const CheckSheet& sheet) {
    const QString about =
        onPaper(QT_TRANSLATE_NOOP("paper", "%1 of %2 notes read are out")).arg(sheet.notesOut).arg(sheet.notesRead);
    Document document = emptyDocument(source, onPaper(QT_TRANSLATE_NOOP("paper", "Check list")), about);
    auto& blocks = document.blocks;
    const Review& review = source.view.review;
    if (!source.view.causes.empty()) {
        blocks.emplace_back(headingBlock({}, onPaper(QT_TRANSLATE_NOOP("paper", "One cause behind many")), {}));
        for (const Cause& cause : source.view.causes)
            blocks.emplace_back(
                paragraphBlock(boldBeforeColon(words::causeSentence(cause, source.piano())), 10, source.width()));
        blocks.emplace_back(gap(2));
    }
    for (const DoubtfulNote& doubt : review.doubtful)
        blocks.emplace_back(paragraphBlock(
            {{onPaper(QT_TRANSLATE_NOOP("paper", "Measure again: note %1, %2. "))
                  .arg(words::noteName(doubt.note, source.piano()), words::name(doubt.suspect)),
              true},
             {onPaper(QT_TRANSLATE_NOOP("paper", "It does not agree with the other readings of this note.")), false}},
            10, source.width()));
    if (sheet.lines.empty()) {
        blocks.emplace_back(paragraphBlock(
            {{review.ranked.empty()
                  ? onPaper(QT_TRANSLATE_NOOP("paper", "Nothing is measured in this pass."))
                  : onPaper(QT_TRANSLATE_NOOP("paper", "Nothing is out: every reading lies within its zone.")),
              false}},
            12, source.width()));
    } else {
        blocks.emplace_back(headingBlock(
            {}, onPaper(QT_TRANSLATE_NOOP("paper", "Worst first")),
            QCoreApplication::translate("paper", "%n reading(s)", nullptr, static_cast<int>(sheet.lines.size()))));
        blocks.emplace_back(paragraphBlock(legendOfCheck(), 9, source.width()));
        blocks.emplace_back(outTable(sheet, source.piano()));
    }
    if (!review.byDimension.empty()) {
        blocks.emplace_back(gap(3));
        blocks.emplace_back(headingBlock({}, onPaper(QT_TRANSLATE_NOOP("paper", "By dimension")), {}));
        blocks.emplace_back(countsBlock(review));
    }
    return document;
}

} // namespace hammerline::print
