// What a person does to an action, in the trade's words: names, access, guards, amounts that a hand can turn.
#include "ui/words/said.h"
#include "ui/words/words.h"

#include <QCoreApplication>

#include <array>
#include <cmath>

namespace hammerline::words {

namespace {

QString operationText(const char* text) {
    return QCoreApplication::translate("operations", text);
}

struct Names {
    const char* work; // heading of the work
    const char* part; // what the hand holds
};

// By row of the catalogue of operations.
constexpr std::array<Names, kOperationCount> kNames = {{
    {QT_TRANSLATE_NOOP("operations", "Balance punchings"), QT_TRANSLATE_NOOP("operations", "balance punching")},
    {QT_TRANSLATE_NOOP("operations", "Front punchings"), QT_TRANSLATE_NOOP("operations", "front punching")},
    {QT_TRANSLATE_NOOP("operations", "Capstans"), QT_TRANSLATE_NOOP("operations", "capstan")},
    {QT_TRANSLATE_NOOP("operations", "Hammer rest rail"), QT_TRANSLATE_NOOP("operations", "rest rail pads")},
    {QT_TRANSLATE_NOOP("operations", "Rest rail cloth, by note"), QT_TRANSLATE_NOOP("operations", "rest rail cloth")},
    {QT_TRANSLATE_NOOP("operations", "Let-off screws"), QT_TRANSLATE_NOOP("operations", "let-off screw")},
    {QT_TRANSLATE_NOOP("operations", "Drop screws"), QT_TRANSLATE_NOOP("operations", "drop screw")},
    {QT_TRANSLATE_NOOP("operations", "Back-check wires"), QT_TRANSLATE_NOOP("operations", "back-check wire")},
    {QT_TRANSLATE_NOOP("operations", "Damper spoons"), QT_TRANSLATE_NOOP("operations", "spoon")},
    {QT_TRANSLATE_NOOP("operations", "Damper wires, by the pedal"), QT_TRANSLATE_NOOP("operations", "damper wire")},
    {QT_TRANSLATE_NOOP("operations", "Bridle wires"), QT_TRANSLATE_NOOP("operations", "bridle wire")},
    {QT_TRANSLATE_NOOP("operations", "Balance rail shims"), QT_TRANSLATE_NOOP("operations", "balance rail")},
    {QT_TRANSLATE_NOOP("operations", "Back rail shims"), QT_TRANSLATE_NOOP("operations", "back rail")},
    {QT_TRANSLATE_NOOP("operations", "Player fingers"), QT_TRANSLATE_NOOP("operations", "player finger")},
    {QT_TRANSLATE_NOOP("operations", "Half-blow rod"), QT_TRANSLATE_NOOP("operations", "half-blow rod")},
    {QT_TRANSLATE_NOOP("operations", "Damper pedal rod"), QT_TRANSLATE_NOOP("operations", "damper pedal rod")},
    {QT_TRANSLATE_NOOP("operations", "Damper underlevers"), QT_TRANSLATE_NOOP("operations", "damper underlever")},
    {QT_TRANSLATE_NOOP("operations", "Look at the parts"), QT_TRANSLATE_NOOP("operations", "part")},
}};

// By value of Access.
constexpr std::array<const char*, kAccesses> kAccess = {
    QT_TRANSLATE_NOOP("operations", "Keys off"),     QT_TRANSLATE_NOOP("operations", "One key at a time"),
    QT_TRANSLATE_NOOP("operations", "Action in"),    QT_TRANSLATE_NOOP("operations", "Action tilted"),
    QT_TRANSLATE_NOOP("operations", "Action out"),   QT_TRANSLATE_NOOP("operations", "Action in, stack out"),
    QT_TRANSLATE_NOOP("operations", "On the bench"), QT_TRANSLATE_NOOP("operations", "Stack in"),
};

struct Guard {
    std::string_view id;
    const char* sentence;
    const char *grand = nullptr, *dropButton = nullptr; // where other parts are meant
};
// The rules before every table: nothing is forced.
constexpr std::array kGuards = {
    Guard{"eye-twists", QT_TRANSLATE_NOOP("operations", "If the eye twists and the screw does not: stop.")},
    Guard{"capstan-thread",
          QT_TRANSLATE_NOOP("operations", "Stop when the hammer only trembles at a light tug on the rail, or where "
                                          "less than 8 mm of thread would be left in the wood."),
          QT_TRANSLATE_NOOP("operations", "Stop where less than 8 mm of thread would be left in the wood, or where the "
                                          "heel would tip off the head. No key is touched while the action slides: a "
                                          "pressed key lifts its hammer, and it breaks."),
          QT_TRANSLATE_NOOP("operations", "Stop when the hammer only trembles at a light tug on the rail, or where "
                                          "fewer than four turns of thread would be left on the wire.")},
    Guard{"sharp-proud", QT_TRANSLATE_NOOP("operations", "Sharps must stay at least 1 mm proud when pressed; key "
                                                         "fronts clear of the key slip.")},
    Guard{"rail-seated", QT_TRANSLATE_NOOP("operations", "Not more than 2 mm a go; the rail must lie on every pad "
                                                         "before you read again.")},
    Guard{"weak-spring-first",
          QT_TRANSLATE_NOOP("operations", "First look whether the spring lifts the hammer: a weak spring reads the "
                                          "same. A screw that does not turn: stop."),
          QT_TRANSLATE_NOOP("operations", "First look whether the spring lifts the hammer: a weak spring reads the "
                                          "same. Read in its place, turn drawn out. No key is touched while the action "
                                          "slides: a pressed key lifts its hammer, and it breaks. A screw that does "
                                          "not turn: stop.")},
    Guard{"wire-bent-twice",
          QT_TRANSLATE_NOOP("operations", "Hold the wood with a second tool, less than 2 mm a go; a wire bent twice "
                                          "at one place is spent."),
          QT_TRANSLATE_NOOP("operations", "Hold the wood with a second tool, less than 2 mm a go; a wire bent twice "
                                          "at one place is spent. No key is touched while the action slides: a pressed "
                                          "key lifts its hammer, and it breaks.")},
    Guard{"rail-screws", QT_TRANSLATE_NOOP("operations", "Loosen the rail screws by turns, never one alone; keys must "
                                                         "stay free on their pins.")},
    Guard{"stack-seated", QT_TRANSLATE_NOOP("operations", "Suction off and the stack bolted down before you read; "
                                                          "motor springs can strike.")},
    Guard{"key-winks", QT_TRANSLATE_NOOP("operations", "Stop as soon as a key dips with the soft pedal: the straps "
                                                       "are then too tight.")},
    Guard{"pedal-free-play", QT_TRANSLATE_NOOP("operations", "The pedal keeps 3 to 9 mm of free play, else the "
                                                             "dampers never land.")},
    Guard{"lever-free", QT_TRANSLATE_NOOP("operations", "The lever must fall by its own weight; a screw that does "
                                                        "not turn: stop.")},
};

} // namespace

QString name(OperationId id) {
    return operationText(kNames.at(id.row).work);
}

QString name(OperationId id, const Piano& piano) {
    const bool onWires = id == operation::capstanTurn && piano.capstan == Capstan::dropButton;
    return onWires ? operationText(QT_TRANSLATE_NOOP("operations", "Drop-wire buttons")) : name(id);
}

QString partName(OperationId id) {
    return operationText(kNames.at(id.row).part);
}

QString accessName(Access access) {
    return operationText(kAccess.at(static_cast<std::size_t>(access)));
}

QString accessName(Access access, const Piano& piano) {
    struct Kind {
        Access access;
        ActionKind kind;
        const char* name;
    };
    static constexpr std::array kKinds = {
        Kind{Access::keysOff, ActionKind::grand, QT_TRANSLATE_NOOP("operations", "Stack and keys off")},
        Kind{Access::actionIn, ActionKind::grand, QT_TRANSLATE_NOOP("operations", "Action in its place")},
        Kind{Access::actionOut, ActionKind::grand, QT_TRANSLATE_NOOP("operations", "Action drawn out")},
        Kind{Access::keysOff, ActionKind::drop, QT_TRANSLATE_NOOP("operations", "Keys off, lifters unhooked")},
    };
    for (const Kind& each : kKinds)
        if (each.access == access && each.kind == piano.action) return operationText(each.name);
    return accessName(access);
}

QString stopSentence(std::string_view guard, const Piano& piano) {
    for (const Guard& row : kGuards) {
        if (row.id != guard) continue;
        if (row.grand && !piano.vertical()) return operationText(row.grand);
        if (row.dropButton && piano.capstan == Capstan::dropButton) return operationText(row.dropButton);
        return operationText(row.sentence);
    }
    return {};
}

// The ids are made of a size ("touch", "under-1/8", "about-1/4", "1/4") and of what follows it ("look", "then-on").
QString amountWords(std::string_view id) {
    if (id.empty()) return {};
    QString rest = QString::fromUtf8(id.data(), static_cast<int>(id.size()));
    const auto took = [&rest](QLatin1String end) {
        if (!rest.endsWith(end)) return false;
        rest.chop(static_cast<int>(end.size()));
        return true;
    };
    const bool on = took(QLatin1String("-then-on")) || took(QLatin1String("-on"));
    const bool look = took(QLatin1String("-look"));
    QString size = rest;
    if (rest == QLatin1String("touch")) size = operationText(QT_TRANSLATE_NOOP("operations", "a touch"));
    const auto worded = [&](QLatin1String start, const char* text) {
        if (rest.startsWith(start)) size = operationText(text).arg(rest.mid(start.size()));
    };
    worded(QLatin1String("under-"), QT_TRANSLATE_NOOP("operations", "under %1"));
    worded(QLatin1String("about-"), QT_TRANSLATE_NOOP("operations", "about %1"));
    worded(QLatin1String("over-"), QT_TRANSLATE_NOOP("operations", "over %1"));
    if (on) return operationText(QT_TRANSLATE_NOOP("operations", "%1, look, then on")).arg(size);
    if (look) return operationText(QT_TRANSLATE_NOOP("operations", "%1, look")).arg(size);
    return size;
}

QString byHowMuch(const Step& step, const Piano& piano) {
    const auto inMm = [](double mm) { return number(std::abs(mm), 2); };
    const QString unit = QChar(u' ') + unitName(Unit::mm);
    QStringList parts;
    if (!step.amounts.empty()) {
        for (const auto& [at, mm] : step.amounts)
            parts << operationText(QT_TRANSLATE_NOOP("operations", "at %1: %2 mm")).arg(at).arg(inMm(mm));
        return parts.join(QStringLiteral(", "));
    }
    if (!step.stack.empty()) {
        for (const Length piece : step.stack)
            parts << inMm(toTrade(piece.nm, Kind::length));
        return parts.join(QStringLiteral(" + ")) + unit;
    }
    const std::optional<double> amount = step.go ? step.go : step.amount;
    if (!amount) return {};
    if (step.unit == AmountUnit::turn)
        return amountWords(handAmount(step.amount.value_or(*amount), capOf(step.operation, piano)));
    return step.unit == AmountUnit::mm ? inMm(*amount) + unit : QString();
}

QString turnText(double turns) {
    for (const int part : {2, 4, 8, 16})
        if (const double pieces = turns * part; std::abs(pieces - std::round(pieces)) < 1e-9 && pieces < part)
            return QStringLiteral("%1/%2").arg(std::lround(pieces)).arg(part);
    return number(turns, 2);
}

QString whySentence(std::string_view why) {
    struct Row {
        std::string_view why;
        const char* sentence;
    };
    static constexpr std::array kRows = {
        Row{"low", QT_TRANSLATE_NOOP("operations", "below its zone")},
        Row{"high", QT_TRANSLATE_NOOP("operations", "above its zone")},
        Row{"undecided", QT_TRANSLATE_NOOP("operations", "too near to tell")},
        Row{"probably-outside", QT_TRANSLATE_NOOP("operations", "probably outside")},
        Row{"uneven", QT_TRANSLATE_NOOP("operations", "off its neighbours")},
        Row{"to-nominal", QT_TRANSLATE_NOOP("operations", "to the aim")},
        Row{"stale", QT_TRANSLATE_NOOP("operations", "moved since")},
        Row{"on-its-rail", QT_TRANSLATE_NOOP("operations", "only look: does the hammer lie on its rail?")},
        Row{"reference-note", QT_TRANSLATE_NOOP("operations", "a reference note")},
        Row{"rod-slopes", QT_TRANSLATE_NOOP("operations", "rises more at one end: look at the rod's hangers, a loose "
                                                          "hook, the felt between its two parts, the bracket")},
        Row{"rail-hinge", QT_TRANSLATE_NOOP("operations", "goes farther at one end: look at the rail's hinges and "
                                                          "where the rod holds it")},
        Row{"follows", QT_TRANSLATE_NOOP("operations", "follows earlier work")},
    };
    for (const Row& row : kRows)
        if (row.why == why) return operationText(row.sentence);
    return why.empty() ? QString{} : causeName(why);
}

} // namespace hammerline::words
