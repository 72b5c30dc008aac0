// What every sheet says in the same words.
#include "ui/print/documents.h"
#include "ui/words/said.h"
#include "ui/words/words.h"

#include <QCoreApplication>
#include <QLocale>

#include <cmath>

namespace hammerline::print {

namespace {
using words::onPaper;

constexpr double kFootPoints = 8.5;

/// "Readings in mm. ▲ … ▼ …", the signs painted, then the zones' source and where the bass end is. Of ticks only where
/// the sheet has boxes to tick.
Solid footOf(const Source& source, bool ticks) {
    const Type type{kFootPoints};
    const double line = lineHeight(type);
    const QString units = onPaper(QT_TRANSLATE_NOOP("paper", "Readings in mm."));
    const QString high = onPaper(QT_TRANSLATE_NOOP("paper", "too far or too much"));
    const QString low = onPaper(QT_TRANSLATE_NOOP("paper", "too near or too little"));
    const QString tick = ticks ? onPaper(QT_TRANSLATE_NOOP("paper", "A tick means: set to the aim.")) : QString();
    QString second = onPaper(QT_TRANSLATE_NOOP("paper", "A maker's own figures win over these zones."));
    if (source.piano().vertical())
        second += QStringLiteral("    ") +
                  onPaper(QT_TRANSLATE_NOOP("paper", "Bass end: with the action's back to you it is on your right."));
    return {2 * line, [=](Canvas& c, const QRectF& r) {
                const double base = r.y() + line * 0.75;
                double x = r.x() + c.text(r.x(), base, units, type) + 3;
                for (const bool up : {true, false}) {
                    c.triangle(x, base - 1.8, up);
                    x += 2.8;
                    x += c.text(x, base, up ? high : low, type) + 3;
                }
                c.text(x + 2, base, tick, type);
                c.textWithin(r.x(), base + line, r.width(), second, type);
            }};
}

} // namespace

QString passText(const Pass& pass) {
    return pass.label.empty() ? onPaper(QT_TRANSLATE_NOOP("paper", "pass %1")).arg(pass.number)
                              : onPaper(QT_TRANSLATE_NOOP("paper", "pass %1, %2"))
                                    .arg(pass.number)
                                    .arg(QString::fromStdString(pass.label));
}

Document emptyDocument(const Source& source, const QString& title, const QString& about, bool ticks) {
    Document document;
    document.title = title;
    document.subtitle = {{QString::fromStdString(source.piano().name), true}};
    if (source.view.pass.number > 0)
        document.subtitle.push_back({QStringLiteral("  ·  ") + passText(source.view.pass), false});
    if (!about.isEmpty()) document.subtitle.push_back({QStringLiteral("  ·  ") + about, false});
    document.specLine =
        onPaper(QT_TRANSLATE_NOOP("paper", "Zones: %1. Source: %2"))
            .arg(words::specName(source.view.sheet.name), QString::fromStdString(source.view.sheet.source));
    document.date = QLocale(QLocale::English).toString(source.date, QStringLiteral("d MMMM yyyy"));
    document.foot = footOf(source, ticks);
    return document;
}

Paragraph cautionText(const Piano& piano) {
    Paragraph text;
    for (const std::string_view id : words::cautionsFor(piano)) {
        // of the cautions those that matter at the open action; the rest stands in the survey and the record
        const bool atTheAction =
            id == "tipping" || id == "tension" || id == "mains" || id == "force" || id == "grand-slide";
        if (!atTheAction) continue;
        const QString sentence = words::caution(id, piano);
        const auto stop = text.empty() ? sentence.indexOf(QLatin1Char('.')) : -1;
        if (stop >= 0) {
            text.push_back({sentence.left(stop + 1), true});
            text.push_back({sentence.mid(stop + 1), false});
        } else {
            text.push_back({QLatin1Char(' ') + sentence, false});
        }
    }
    return text;
}

QString minutesText(double minutes) {
    const int all = static_cast<int>(std::lround(minutes));
    if (all < 60) return onPaper(QT_TRANSLATE_NOOP("paper", "%1 min")).arg(std::max(all, minutes > 0 ? 1 : 0));
    return onPaper(QT_TRANSLATE_NOOP("paper", "%1 h %2")).arg(all / 60).arg(all % 60, 2, 10, QLatin1Char('0'));
}

QString mm(double value, int decimals) {
    return words::number(value, decimals);
}

double noteCell(Canvas& c, double x, double base, NoteNumber note, const Piano& piano) {
    c.text(x + 8.2, base, QString::number(note.value), {13.5, true}, Align::right);
    c.keySwatch(x + 9.7, base - 4, colourOf(note, piano) == KeyColour::sharp);
    return x + 13 + c.text(x + 13, base - 0.3, words::pitch(note, piano), {10});
}

QString sectionText(std::size_t index, const Piano& piano) {
    const std::vector<Section> sections = sectionsOf(piano);
    const Section& section = sections.at(index);
    return onPaper(QT_TRANSLATE_NOOP("paper", "%1, notes %2 to %3"))
        .arg(words::sectionName(section, index, sections.size()))
        .arg(section.range.first)
        .arg(section.range.last);
}

Document partsSheet(const Source& source, const QString& title, const QString& about) {
    Document document = emptyDocument(source, title, {});
    document.subtitle = {{QString::fromStdString(source.piano().name), true}};
    if (!about.isEmpty()) document.subtitle.push_back({QStringLiteral("  \u00B7  ") + about, false});
    document.specLine.clear();
    const QString foot = onPaper(QT_TRANSLATE_NOOP("paper", "Note 1 is the bass end."));
    document.foot = {4, [foot](Canvas& c, const QRectF& r) { c.textWithin(r.x(), r.y() + 3, r.width(), foot, {8.5}); },
                     false};
    return document;
}

Table plainTable() {
    Table table;
    table.columns = 1;
    table.headHeight = 0;
    table.again = gap(0);
    return table;
}

} // namespace hammerline::print
