// Words for the set-up of a piano: kinds of action, attributes and their values, references, spec sheets.
#include "ui/words/words.h"

#include <QCoreApplication>

#include <array>

namespace hammerline::words {

namespace {

struct Row {
    std::string_view key;
    const char* text;
};

constexpr std::array kAttributes{
    Row{"damping", QT_TRANSLATE_NOOP("setup", "Damping")},
    Row{"capstan", QT_TRANSLATE_NOOP("setup", "Capstan")},
    Row{"butt", QT_TRANSLATE_NOOP("setup", "Butt")},
    Row{"rest-rail", QT_TRANSLATE_NOOP("setup", "Rest rail")},
    Row{"brackets", QT_TRANSLATE_NOOP("setup", "Brackets")},
    Row{"let-off", QT_TRANSLATE_NOOP("setup", "Let-off")},
    Row{"player", QT_TRANSLATE_NOOP("setup", "Player")},
    Row{"player-works", QT_TRANSLATE_NOOP("setup", "Player works")},
    Row{"keys", QT_TRANSLATE_NOOP("setup", "Keys to wippens")},
    Row{"balance-screws", QT_TRANSLATE_NOOP("setup", "Rail screws")},
    Row{"arms-natural", QT_TRANSLATE_NOOP("setup", "Key arms, natural")},
    Row{"arms-sharp", QT_TRANSLATE_NOOP("setup", "Key arms, sharp")},
    Row{"rest-rail-factor", QT_TRANSLATE_NOOP("setup", "Blow for each mm at the rail")},
    Row{"ratio-natural", QT_TRANSLATE_NOOP("setup", "Hammer to key front, naturals")},
    Row{"ratio-sharp", QT_TRANSLATE_NOOP("setup", "Hammer to key front, sharps")},
    Row{"stock", QT_TRANSLATE_NOOP("setup", "Punchings in stock")},
    Row{"last-damper", QT_TRANSLATE_NOOP("setup", "Last damper")},
    Row{"sections", QT_TRANSLATE_NOOP("setup", "Sections")},
};

// value, or attribute=value where one value means two things
constexpr std::array kValues{
    Row{"underdamper", QT_TRANSLATE_NOOP("setup", "Underdamper with spoon")},
    Row{"overdamper", QT_TRANSLATE_NOOP("setup", "Overdamper with wires")},
    Row{"grand-lever", QT_TRANSLATE_NOOP("setup", "Grand damper levers")},
    Row{"holed", QT_TRANSLATE_NOOP("setup", "Holed screw (pin)")},
    Row{"square", QT_TRANSLATE_NOOP("setup", "Square-headed screw")},
    Row{"dowel", QT_TRANSLATE_NOOP("setup", "Wooden dowel on a screw")},
    Row{"rocker", QT_TRANSLATE_NOOP("setup", "Rocker with two screws")},
    Row{"fixed", QT_TRANSLATE_NOOP("setup", "Fixed (nail or glued)")},
    Row{"drop-button", QT_TRANSLATE_NOOP("setup", "Button on a drop wire")},
    Row{"wood-flange", QT_TRANSLATE_NOOP("setup", "Wooden flange")},
    Row{"cord-loop", QT_TRANSLATE_NOOP("setup", "Cord loop on the flange")},
    Row{"brass-rail", QT_TRANSLATE_NOOP("setup", "Brass flange rail, plates")},
    Row{"eye-screw", QT_TRANSLATE_NOOP("setup", "Eye screw with button")},
    Row{"front-screw", QT_TRANSLATE_NOOP("setup", "Screw from the front")},
    Row{"let-off=none", QT_TRANSLATE_NOOP("setup", "No screw")},
    Row{"player=none", QT_TRANSLATE_NOOP("setup", "None")},
    Row{"above", QT_TRANSLATE_NOOP("setup", "Stack above the keys")},
    Row{"below", QT_TRANSLATE_NOOP("setup", "Stack below the keys")},
    Row{"wippen", QT_TRANSLATE_NOOP("setup", "Works the wippen")},
    Row{"key", QT_TRANSLATE_NOOP("setup", "Works the key")},
    Row{"sticker", QT_TRANSLATE_NOOP("setup", "Works the sticker")},
    Row{"loose", QT_TRANSLATE_NOOP("setup", "Loose")},
    Row{"hooked", QT_TRANSLATE_NOOP("setup", "Hooked")},
    Row{"rule", QT_TRANSLATE_NOOP("setup", "Ruler")},
    Row{"simple", QT_TRANSLATE_NOOP("setup", "Simple gauge")},
    Row{"good", QT_TRANSLATE_NOOP("setup", "Good gauge")},
};

constexpr std::array kReferences{
    Row{"bed", QT_TRANSLATE_NOOP("setup", "from the key bed")},
    Row{"line", QT_TRANSLATE_NOOP("setup", "from this piano's own line")},
    Row{"slip", QT_TRANSLATE_NOOP("setup", "from the key slip")},
    Row{"below-let-off", QT_TRANSLATE_NOOP("setup", "below the let-off point")},
    Row{"string", QT_TRANSLATE_NOOP("setup", "from the string")},
    Row{"mm", QT_TRANSLATE_NOOP("setup", "hammer travel in mm")},
    Row{"percent", QT_TRANSLATE_NOOP("setup", "share of the hammer's travel")},
    Row{"dampers-up", QT_TRANSLATE_NOOP("setup", "dampers up")},
    Row{"dampers-down", QT_TRANSLATE_NOOP("setup", "dampers down")},
};

constexpr std::array kSheets{
    Row{"upright", QT_TRANSLATE_NOOP("setup", "upright")},
    Row{"old-upright", QT_TRANSLATE_NOOP("setup", "old upright")},
    Row{"drop", QT_TRANSLATE_NOOP("setup", "drop action")},
    Row{"grand", QT_TRANSLATE_NOOP("setup", "grand")},
};

template <std::size_t N>
QString lookUp(const std::array<Row, N>& rows, std::string_view key) {
    for (const Row& row : rows)
        if (row.key == key) return QCoreApplication::translate("setup", row.text);
    return {};
}

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
    return orKey(lookUp(kSheets, name), name);
}
QString attributeName(std::string_view name) {
    return orKey(lookUp(kAttributes, name), name);
}

QString attributeValue(std::string_view attribute, std::string_view value) {
    const std::string both = std::string(attribute) + "=" + std::string(value);
    const QString own = lookUp(kValues, both);
    return own.isEmpty() ? orKey(lookUp(kValues, value), value) : own;
}

QString referenceName(DimensionId, std::string_view reference) {
    return orKey(lookUp(kReferences, reference), reference);
}

} // namespace hammerline::words
