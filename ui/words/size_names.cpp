#include "ui/words/size_names.h"

#include "ui/words/said.h"
#include "ui/words/survey_names.h"

#include <QCoreApplication>
#include <QLocale>
#include <QStringList>

#include <algorithm>
#include <array>

namespace hammerline::words {
namespace {

struct SizeText {
    std::string_view id;
    const char* text;
};

constexpr std::array kFieldNames = {
    SizeText{"diameter", QT_TRANSLATE_NOOP("survey", "diameter")},
    SizeText{"number", QT_TRANSLATE_NOOP("survey", "number")},
    SizeText{"length", QT_TRANSLATE_NOOP("survey", "length")},
    SizeText{"width", QT_TRANSLATE_NOOP("survey", "width")},
    SizeText{"thickness", QT_TRANSLATE_NOOP("survey", "thickness")},
    SizeText{"depth", QT_TRANSLATE_NOOP("survey", "depth")},
    SizeText{"hole", QT_TRANSLATE_NOOP("survey", "hole")},
    SizeText{"hole-distance", QT_TRANSLATE_NOOP("survey", "distance of the holes")},
    SizeText{"threads-per-inch", QT_TRANSLATE_NOOP("survey", "threads per inch")},
    SizeText{"thread", QT_TRANSLATE_NOOP("survey", "thread")},
    SizeText{"head", QT_TRANSLATE_NOOP("survey", "head")},
    SizeText{"section-length", QT_TRANSLATE_NOOP("survey", "length of the section")},
    SizeText{"tongues", QT_TRANSLATE_NOOP("survey", "tongues")},
    SizeText{"pitch", QT_TRANSLATE_NOOP("survey", "from tongue to tongue")},
    SizeText{"kind", QT_TRANSLATE_NOOP("survey", "kind")},
    SizeText{"wire", QT_TRANSLATE_NOOP("survey", "wire")},
    SizeText{"hook", QT_TRANSLATE_NOOP("survey", "hook")},
    SizeText{"outside", QT_TRANSLATE_NOOP("survey", "outside")},
    SizeText{"count", QT_TRANSLATE_NOOP("survey", "how many")},
    SizeText{"bore", QT_TRANSLATE_NOOP("survey", "bore distance")},
    SizeText{"rake", QT_TRANSLATE_NOOP("survey", "rake in degrees")},
    SizeText{"tail", QT_TRANSLATE_NOOP("survey", "length of the tail")},
    SizeText{"shank-diameter", QT_TRANSLATE_NOOP("survey", "diameter of the shank")},
    SizeText{"core", QT_TRANSLATE_NOOP("survey", "width of the core")},
};

/// Common practice, no source, where it is not the table of sizes itself (core/survey/size_rows.cpp).
constexpr std::array kHow = {
    SizeText{"centre-pin",
             QT_TRANSLATE_NOOP("survey", "Push a pin out; micrometer in its middle. Order the next size up "
                                         "and its two neighbours, and try three first.")},
    SizeText{"centre-bushing", QT_TRANSLATE_NOOP("survey", "By trial with the pin.")},
    SizeText{"butt-plate", QT_TRANSLATE_NOOP("survey", "Caliper. Plate and screw from one source: threads differ.")},
    SizeText{"butt-plate-screw", QT_TRANSLATE_NOOP("survey", "Caliper, and a thread gauge or an old nut.")},
    SizeText{"brass-flange-rail", QT_TRANSLATE_NOOP("survey", "By the section, not by the tongue; send a photograph.")},
    SizeText{"bridle-strap",
             QT_TRANSLATE_NOOP("survey", "An old one from the butt to the hole of its tab; 1.5 mm more. "
                                         "A hole in the catcher: cork or glued cord; none: clip.")},
    SizeText{"butt-spring", QT_TRANSLATE_NOOP("survey", "Send one as a sample: from a rail with slots, or a loop.")},
    SizeText{"jack-spring", QT_TRANSLATE_NOOP("survey", "Free length, outside diameter, wire; send one as a sample.")},
    SizeText{"hammer-head", QT_TRANSLATE_NOOP("survey", "Send the hammers of every section's ends; a bored set has no "
                                                        "spares, so the count is exact.")},
    SizeText{"front-felt", QT_TRANSLATE_NOOP("survey", "Caliper, lightly closed; naturals and sharps apart.")},
    SizeText{"balance-felt", QT_TRANSLATE_NOOP("survey", "Caliper, lightly closed; one thickness for the whole set.")},
    SizeText{"front-bushing", QT_TRANSLATE_NOOP("survey", "Hole less pin, halved; at three keys.")},
    SizeText{"balance-bushing", QT_TRANSLATE_NOOP("survey", "Hole less pin, halved; at three keys.")},
    SizeText{"bushing-cloth", QT_TRANSLATE_NOOP("survey", "Hole less pin, halved; at three keys.")},
    SizeText{"lifter", QT_TRANSLATE_NOOP("survey", "The whole set: hole, length, thread of the wire.")},
    SizeText{"damper-felt-clip", QT_TRANSLATE_NOOP("survey", "A whole old one at the first and at the last note of its "
                                                             "kind; widths grow along the keyboard.")},
    SizeText{"damper-felt-wedge",
             QT_TRANSLATE_NOOP("survey", "A whole old one at the first and at the last note of its "
                                         "kind; widths grow along the keyboard.")},
    SizeText{"damper-felt-split-wedge", QT_TRANSLATE_NOOP("survey", "A whole old one at the first and at the last note "
                                                                    "of its kind.")},
    SizeText{"damper-felt-flat", QT_TRANSLATE_NOOP("survey", "A whole old one at the first and at the last note of its "
                                                             "kind.")},
};
constexpr const char* kCaliper =
    QT_TRANSLATE_NOOP("survey", "Caliper, lightly closed, at the least worn piece, mostly an end note's.");

template <std::size_t N>
const char* textOf(const std::array<SizeText, N>& texts, std::string_view id) {
    const auto found = std::ranges::find(texts, id, &SizeText::id);
    return found == texts.end() ? nullptr : found->text;
}

QString fieldText(const SizeField& field, const std::string& value) {
    const QString name = sizeFieldName(field.key), said = QString::fromStdString(value);
    return field.unit == SizeUnit::mm ? inSurvey("%1 %2 mm").arg(name, said) : inSurvey("%1 %2").arg(name, said);
}

QString pinText(double number) {
    return inSurvey("%1 (%2 mm)").arg(number, 0, 'g', 3).arg(pinDiameter(number), 0, 'f', 2);
}

/// The number of the old pin, from itself or from its diameter, and what to order for it.
QString nextPins(const PartsLine& line) {
    const auto number = line.measured.find("number"), diameter = line.measured.find("diameter");
    const bool known = number != line.measured.end() || diameter != line.measured.end();
    if (line.part != "centre-pin" || !known) return {};
    const double old = number != line.measured.end() ? std::strtod(number->second.c_str(), nullptr)
                                                     : pinNumber(std::strtod(diameter->second.c_str(), nullptr));
    return inSurvey("; order number %1, with %2 and %3 to try").arg(pinText(old + 0.5), pinText(old), pinText(old + 1));
}

} // namespace

QString sizeFieldName(std::string_view field) {
    const char* name = textOf(kFieldNames, field);
    return name ? inSurvey(name) : QString::fromUtf8(field.data(), qsizetype(field.size()));
}

QString sizeHow(std::string_view supply) {
    const char* how = textOf(kHow, supply);
    return inSurvey(how ? how : kCaliper);
}

QString measuredText(const PartsLine& line) {
    const SizeRow* row = sizeRow(line.part);
    QStringList out;
    for (const SizeField& field : row ? row->fields : std::span<const SizeField>{})
        if (const auto value = line.measured.find(std::string(field.key)); value != line.measured.end())
            out << fieldText(field, value->second);
    return out.join(inSurvey(", "));
}

QString orderedBy(const PartsLine& line) {
    if (!line.bySize) return {};
    const QString measured = measuredText(line);
    if (measured.isEmpty()) return inSurvey("size not measured yet. %1").arg(sizeHow(line.part));
    return measured + nextPins(line);
}

QString oddSizeSentence(const PartSize& size) {
    const SizeRow* row = sizeRow(size.supply);
    const auto field = std::ranges::find(row->fields, size.field, &SizeField::key);
    return inSurvey("%1, %2: customary is %3 to %4. Measure again before it is ordered.")
        .arg(supplyName(size.supply), fieldText(*field, size.value))
        .arg(field->low)
        .arg(field->high);
}

QString sizeUsage(std::string_view supply) {
    const SizeRow* row = sizeRow(supply);
    const QString name = QString::fromUtf8(supply.data(), qsizetype(supply.size()));
    if (!row) return inSurvey("\"%1\" is ordered by name and number alone; it has no size.").arg(name);
    QStringList fields;
    for (const SizeField& each : row->fields)
        fields << QString::fromUtf8(each.key.data(), qsizetype(each.key.size()));
    return inSurvey("%1 is ordered by %2: size.%1.%3=VALUE, in mm or with its sign, or size.%1.%3@1-12=VALUE for some "
                    "notes.")
        .arg(name, fields.join(inSurvey(", ")), fields.front());
}

QString notOrderedSentence(std::string_view supply, std::string_view why) {
    if (why == "size")
        return inSurvey("%1 cannot be marked as ordered: the size is not measured yet. %2")
            .arg(supplyName(supply), sizeHow(supply));
    return inSurvey("%1 cannot be marked as ordered: no finding asks for it.").arg(supplyName(supply));
}

} // namespace hammerline::words
