#include "ui/words/step_figures.h"

#include "core/spec/spec.h"
#include "ui/words/said.h"
#include "ui/words/words.h"

#include <QRegularExpression>

#include <algorithm>

namespace hammerline::words {
namespace {

#define T(text) QT_TRANSLATE_NOOP("work", text)
constexpr std::array kPlaceNames{KeyedText{"b", T("bass")}, KeyedText{"t", T("tenor")}, KeyedText{"m", T("treble")},
                                 KeyedText{"h", T("treble")}, KeyedText{"x", T("top notes")}};
#undef T

QString figureSaid(const char* text) {
    return QCoreApplication::translate("work", text);
}

struct Wanted {
    const Dimension* dimension = nullptr;
    std::optional<KeyColour> colour;
    QString side; // empty: from low to high
};

/// "bt" -> "bass and tenor"; m and h are one treble where they agree.
QString placesSaid(const std::string& letters) {
    QStringList names;
    for (const char letter : letters)
        names << saidOf(kPlaceNames, std::string_view(&letter, 1), "work");
    names.removeDuplicates();
    return names.join(figureSaid(QT_TRANSLATE_NOOP("work", " and ")));
}

/// As the sheet writes it: 0.25, 13.
QString figureOf(const Dimension& dimension, std::int64_t count) {
    return QString::number(std::abs(toTrade(count, dimension.kind)), 'g', 4);
}

QString sideSaid(const Wanted& wanted, const Zone& zone) {
    const Dimension& of = *wanted.dimension;
    const QString unit = QChar(u' ') + unitName(of.kind);
    if (wanted.side == QStringLiteral("aim")) return figureOf(of, zone.nominal) + unit;
    const bool both = zone.low && zone.high && wanted.side.isEmpty();
    if (both)
        return figureSaid(QT_TRANSLATE_NOOP("work", "%1 to %2"))
            .arg(figureOf(of, *zone.low), figureOf(of, *zone.high) + unit);
    return zone.high ? figureOf(of, *zone.high) + unit : QString();
}

bool meant(const ZoneRow& row, const Wanted& wanted) {
    const bool coloured = !wanted.colour || !row.colour || row.colour == wanted.colour;
    return row.dimension == wanted.dimension->id && coloured;
}

/// What one sheet says, by the places it tells apart.
QString bySheet(const SpecSheet& sheet, const Wanted& wanted) {
    if (wanted.side == QStringLiteral("step")) {
        const auto step = sheet.step.find(wanted.dimension->id);
        if (step == sheet.step.end()) return {};
        return figureOf(*wanted.dimension, step->second) + QChar(u' ') + unitName(wanted.dimension->kind);
    }
    QStringList said;
    for (const ZoneRow& row : sheet.zones) {
        if (!meant(row, wanted)) continue;
        const QString figure = sideSaid(wanted, row.first);
        const QString place = placesSaid(row.place);
        said << (place.isEmpty() ? figure : figureSaid(QT_TRANSLATE_NOOP("work", "%1 in the %2")).arg(figure, place));
    }
    return said.join(QStringLiteral(", "));
}

QString figures(const Wanted& wanted, const Piano& piano) {
    QStringList said;
    for (const std::string& name : sheetsFor(piano.action)) {
        const QString here = bySheet(*builtInSheet(name), wanted);
        if (here.isEmpty() || said.contains(here)) continue;
        said << (said.isEmpty() ? here : figureSaid(QT_TRANSLATE_NOOP("work", "on an old action %1")).arg(here));
    }
    return said.join(QStringLiteral(", "));
}

Wanted wantedBy(const QString& asked) {
    Wanted wanted;
    for (const QString& word : asked.split(u' ')) {
        if (word == QStringLiteral("natural"))
            wanted.colour = KeyColour::natural;
        else if (word == QStringLiteral("sharp"))
            wanted.colour = KeyColour::sharp;
        else if (const auto found = findDimension(word.toStdString()))
            wanted.dimension = &row(*found);
        else
            wanted.side = word;
    }
    return wanted;
}

} // namespace

QString withFigures(const QString& line, const Piano& piano) {
    static const QRegularExpression braces(QStringLiteral("\\{([a-z -]+)\\}"));
    QString out = line;
    for (auto found = braces.match(out); found.hasMatch(); found = braces.match(out)) {
        const Wanted wanted = wantedBy(found.captured(1));
        const QString said = wanted.dimension ? figures(wanted, piano) : QString();
        out.replace(found.capturedStart(), found.capturedLength(), said);
    }
    return out;
}

} // namespace hammerline::words
