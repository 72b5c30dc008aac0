// Words for the set-up of a piano: kinds of action, attributes and their values, references, spec sheets.
#include "ui/words/said.h"
#include "ui/words/words.h"

#include <QCoreApplication>

#include <array>

namespace hammerline::words {

namespace {

constexpr std::array kAttributes{
    KeyedText{"damping", QT_TRANSLATE_NOOP("setup", "Damping")},
    KeyedText{"capstan", QT_TRANSLATE_NOOP("setup", "Capstan")},
    KeyedText{"butt", QT_TRANSLATE_NOOP("setup", "Butt")},
    KeyedText{"rest-rail", QT_TRANSLATE_NOOP("setup", "Rest rail")},
    KeyedText{"brackets", QT_TRANSLATE_NOOP("setup", "Brackets")},
    KeyedText{"let-off", QT_TRANSLATE_NOOP("setup", "Let-off")},
    KeyedText{"player", QT_TRANSLATE_NOOP("setup", "Player")},
    KeyedText{"player-works", QT_TRANSLATE_NOOP("setup", "Player works")},
    KeyedText{"keys", QT_TRANSLATE_NOOP("setup", "Keys to wippens")},
    KeyedText{"balance-screws", QT_TRANSLATE_NOOP("setup", "Rail screws")},
    KeyedText{"arms-natural", QT_TRANSLATE_NOOP("setup", "Natural F, P, T, C")},
    KeyedText{"arms-sharp", QT_TRANSLATE_NOOP("setup", "Sharp F, P, T, C")},
    KeyedText{"rest-rail-factor", QT_TRANSLATE_NOOP("setup", "Blow a mm at the rail")},
    KeyedText{"ratio-natural", QT_TRANSLATE_NOOP("setup", "Hammer : key, naturals")},
    KeyedText{"ratio-sharp", QT_TRANSLATE_NOOP("setup", "Hammer : key, sharps")},
    KeyedText{"stock", QT_TRANSLATE_NOOP("setup", "Punchings in stock")},
    KeyedText{"capstan-reserve", QT_TRANSLATE_NOOP("setup", "Capstan thread left")},
    KeyedText{"capstan-length", QT_TRANSLATE_NOOP("setup", "Capstan screw, length under its head")},
    KeyedText{"crown", QT_TRANSLATE_NOOP("setup", "Crown of the key line")},
    KeyedText{"capstan-up", QT_TRANSLATE_NOOP("setup", "Turn that sends a capstan up")},
    KeyedText{"let-off-in", QT_TRANSLATE_NOOP("setup", "Turn that sends a let-off screw in")},
    KeyedText{"drop-in", QT_TRANSLATE_NOOP("setup", "Turn that sends a drop screw in")},
    KeyedText{"last-damper", QT_TRANSLATE_NOOP("setup", "Last damper")},
    KeyedText{"sections", QT_TRANSLATE_NOOP("setup", "Sections")},
};

// value, or attribute=value where one value means two things
constexpr std::array kValues{
    KeyedText{"underdamper", QT_TRANSLATE_NOOP("setup", "Underdamper with spoon")},
    KeyedText{"overdamper", QT_TRANSLATE_NOOP("setup", "Overdamper with wires")},
    KeyedText{"grand-lever", QT_TRANSLATE_NOOP("setup", "Grand damper levers")},
    KeyedText{"holed", QT_TRANSLATE_NOOP("setup", "Holed screw (pin)")},
    KeyedText{"square", QT_TRANSLATE_NOOP("setup", "Square-headed screw")},
    KeyedText{"dowel", QT_TRANSLATE_NOOP("setup", "Wooden dowel on a screw")},
    KeyedText{"rocker", QT_TRANSLATE_NOOP("setup", "Rocker with two screws")},
    KeyedText{"fixed", QT_TRANSLATE_NOOP("setup", "Fixed (nail or glued)")},
    KeyedText{"drop-button", QT_TRANSLATE_NOOP("setup", "Button on a drop wire")},
    KeyedText{"wood-flange", QT_TRANSLATE_NOOP("setup", "Wooden flange")},
    KeyedText{"cord-loop", QT_TRANSLATE_NOOP("setup", "Cord loop on the flange")},
    KeyedText{"brass-rail", QT_TRANSLATE_NOOP("setup", "Brass flange rail, plates")},
    KeyedText{"eye-screw", QT_TRANSLATE_NOOP("setup", "Eye screw with button")},
    KeyedText{"front-screw", QT_TRANSLATE_NOOP("setup", "Screw from the front")},
    KeyedText{"let-off=none", QT_TRANSLATE_NOOP("setup", "No screw")},
    KeyedText{"player=none", QT_TRANSLATE_NOOP("setup", "None")},
    KeyedText{"above", QT_TRANSLATE_NOOP("setup", "Stack above the keys")},
    KeyedText{"below", QT_TRANSLATE_NOOP("setup", "Stack below the keys")},
    KeyedText{"wippen", QT_TRANSLATE_NOOP("setup", "Works the wippen")},
    KeyedText{"key", QT_TRANSLATE_NOOP("setup", "Works the key")},
    KeyedText{"sticker", QT_TRANSLATE_NOOP("setup", "Works the sticker")},
    KeyedText{"loose", QT_TRANSLATE_NOOP("setup", "Loose")},
    KeyedText{"hooked", QT_TRANSLATE_NOOP("setup", "Hooked")},
    KeyedText{"straight", QT_TRANSLATE_NOOP("setup", "Straight")},
    KeyedText{"as-found", QT_TRANSLATE_NOOP("setup", "As found")},
    KeyedText{"clockwise", QT_TRANSLATE_NOOP("setup", "clockwise")},
    KeyedText{"anticlockwise", QT_TRANSLATE_NOOP("setup", "anticlockwise")},
    KeyedText{"rule", QT_TRANSLATE_NOOP("setup", "Ruler")},
    KeyedText{"simple", QT_TRANSLATE_NOOP("setup", "Simple gauge")},
    KeyedText{"good", QT_TRANSLATE_NOOP("setup", "Good gauge")},
};

constexpr std::array kReferences{
    KeyedText{"bed", QT_TRANSLATE_NOOP("setup", "from the key bed")},
    KeyedText{"line", QT_TRANSLATE_NOOP("setup", "from this piano's own line")},
    KeyedText{"slip", QT_TRANSLATE_NOOP("setup", "from the key slip")},
    KeyedText{"below-let-off", QT_TRANSLATE_NOOP("setup", "below the let-off point")},
    KeyedText{"string", QT_TRANSLATE_NOOP("setup", "from the string")},
    KeyedText{"in-the-wood", QT_TRANSLATE_NOOP("setup", "thread in the wood")},
    KeyedText{"standing-out", QT_TRANSLATE_NOOP("setup", "what stands out of the key")},
    KeyedText{"finger", QT_TRANSLATE_NOOP("setup", "pressed with a finger")},
    KeyedText{"weight", QT_TRANSLATE_NOOP("setup", "pressed by a weight")},
    KeyedText{"spacer", QT_TRANSLATE_NOOP("setup", "pressed onto a spacer")},
    KeyedText{"mm", QT_TRANSLATE_NOOP("setup", "hammer travel in mm")},
    KeyedText{"percent", QT_TRANSLATE_NOOP("setup", "share of the hammer's travel")},
    KeyedText{"dampers-up", QT_TRANSLATE_NOOP("setup", "dampers up")},
    KeyedText{"dampers-down", QT_TRANSLATE_NOOP("setup", "dampers down")},
};

constexpr std::array kSheets{
    KeyedText{"upright", QT_TRANSLATE_NOOP("setup", "upright")},
    KeyedText{"old-upright", QT_TRANSLATE_NOOP("setup", "old upright")},
    KeyedText{"drop", QT_TRANSLATE_NOOP("setup", "drop action")},
    KeyedText{"grand", QT_TRANSLATE_NOOP("setup", "grand")},
};

QString orKey(const QString& words, std::string_view key) {
    return words.isEmpty() ? QString::fromUtf8(key.data(), static_cast<qsizetype>(key.size())) : words;
}

} // namespace

QString actionName(ActionKind kind) {
    switch (kind) {
    case ActionKind::upright:
        return QCoreApplication::translate("setup", "Upright");
    case ActionKind::drop:
        return QCoreApplication::translate("setup", "Drop action");
    case ActionKind::grand:
        return QCoreApplication::translate("setup", "Grand");
    }
    return {};
}

QString specName(std::string_view name) {
    return orKey(saidOf(kSheets, name, "setup"), name);
}
QString attributeName(std::string_view name) {
    return orKey(saidOf(kAttributes, name, "setup"), name);
}

QString attributeValue(std::string_view attribute, std::string_view value) {
    const std::string both = std::string(attribute) + "=" + std::string(value);
    const QString own = saidOf(kValues, both, "setup");
    return own.isEmpty() ? orKey(saidOf(kValues, value, "setup"), value) : own;
}

QString referenceName(DimensionId, std::string_view reference) {
    return orKey(saidOf(kReferences, reference, "setup"), reference);
}

} // namespace hammerline::words
