// A plan as text and back: what a frozen plan keeps (architecture: options, steps, expected readings).
#include "core/plan/plan.h"

#include <nlohmann/json.hpp>

#include <algorithm>
#include <deque>

namespace hammerline {

namespace {

using Json = nlohmann::ordered_json;

constexpr std::array<std::string_view, 2> kIntents = {"touch-up", "full"};
constexpr std::array<std::string_view, 3> kFloats = {"dip", "blow", "aftertouch"};
constexpr std::array<std::string_view, 3> kStages = {"trial", "sections", "whole"};
constexpr std::array<std::string_view, 3> kRules = {"plain", "guard95", "guardU"};

template <class Enum, std::size_t n>
Enum enumOf(const std::string& text, const std::array<std::string_view, n>& keys) {
    const auto found = std::find(keys.begin(), keys.end(), text);
    if (found == keys.end()) throw std::out_of_range(text);
    return static_cast<Enum>(found - keys.begin());
}

template <class Value>
Json orNull(const std::optional<Value>& value) {
    return value ? Json(*value) : Json(nullptr);
}
template <class Value>
std::optional<Value> optionalAt(const Json& json, const char* name) {
    if (!json.contains(name) || json[name].is_null()) return std::nullopt;
    return json[name].get<Value>();
}

Json amountsJson(const std::map<int, double>& amounts) {
    Json json = Json::object();
    for (const auto& [note, amount] : amounts)
        json[std::to_string(note)] = amount;
    return json;
}
std::map<int, double> amountsFrom(const Json& json) {
    std::map<int, double> amounts;
    for (const auto& [note, amount] : json.items())
        amounts[std::stoi(note)] = amount.get<double>();
    return amounts;
}

Json notesJson(const std::vector<NoteNumber>& notes) {
    Json json = Json::array();
    for (const NoteNumber note : notes)
        json.push_back(note.value);
    return json;
}
std::vector<NoteNumber> notesFrom(const Json& json) {
    std::vector<NoteNumber> notes;
    for (const Json& note : json)
        notes.push_back({note.get<int>()});
    return notes;
}

Json cellJson(Cell cell) {
    return {cell.note.value, key(cell.dimension)};
}

/// Reads; whatever does not fit throws and becomes one refusal.
class Reader {
public:
    /// Ids in a plan point at texts that last: those of a plan that was read stay with it.
    std::string_view lasting(const std::string& text) {
        if (text.empty()) return {};
        m_texts->push_back(text);
        return m_texts->back();
    }
    std::shared_ptr<const std::deque<std::string>> texts() const { return m_texts; }

    DimensionId dimension(const std::string& text) const { return found(findDimension(text)); }
    OperationId operation(const std::string& text) const { return found(findOperation(text)); }
    Cell cell(const Json& json) const { return {{json.at(0).get<int>()}, dimension(json.at(1))}; }
    Access access(const std::string& text) const {
        for (std::size_t i = 0; i < kAccesses; ++i)
            if (key(static_cast<Access>(i)) == text) return static_cast<Access>(i);
        throw std::out_of_range(text);
    }
    Direction direction(const std::string& text) const {
        for (int i = 0; i <= static_cast<int>(Direction::inspect); ++i)
            if (key(static_cast<Direction>(i)) == text) return static_cast<Direction>(i);
        throw std::out_of_range(text);
    }
    Verdict verdict(const std::string& text) const {
        for (int i = 0; i <= static_cast<int>(Verdict::notFitted); ++i)
            if (key(static_cast<Verdict>(i)) == text) return static_cast<Verdict>(i);
        throw std::out_of_range(text);
    }

private:
    template <class Value>
    Value found(const Outcome<Value>& outcome) const {
        if (!outcome) throw std::out_of_range(outcome.error().offending);
        return *outcome;
    }
    std::shared_ptr<std::deque<std::string>> m_texts = std::make_shared<std::deque<std::string>>();
};

Json stepJson(const Step& step) {
    Json serves = Json::array(), stack = Json::array();
    for (const DimensionId id : step.serves)
        serves.push_back(key(id));
    for (const Length piece : step.stack)
        stack.push_back(piece.nm);
    return {{"id", step.id},
            {"order", step.order},
            {"access", key(step.access)},
            {"operation", key(step.operation)},
            {"note", step.note ? Json(step.note->value) : Json(nullptr)},
            {"notes", notesJson(step.notes)},
            {"serves", serves},
            {"direction", key(step.direction)},
            {"positive", step.positive ? Json(*step.positive) : Json(nullptr)},
            {"opposite", step.opposite},
            {"aim", orNull(step.aim)},
            {"aim_dimension", key(step.aimDimension)},
            {"now", orNull(step.now)},
            {"now_word", step.nowWord ? Json(row(*step.nowWord).key) : Json(nullptr)},
            {"amount", orNull(step.amount)},
            {"go", orNull(step.go)},
            {"amounts", amountsJson(step.amounts)},
            {"at_part", orNull(step.atPart)},
            {"unit", static_cast<int>(step.unit)},
            {"why", step.why},
            {"minutes", step.minutes},
            {"after", step.after},
            {"stack", stack}};
}

Step stepFrom(Reader& reader, const Json& json) {
    Step step;
    step.id = json.at("id");
    step.order = json.at("order");
    step.access = reader.access(json.at("access"));
    step.operation = reader.operation(json.at("operation"));
    if (const auto note = optionalAt<int>(json, "note")) step.note = NoteNumber{*note};
    step.notes = notesFrom(json.at("notes"));
    for (const Json& served : json.at("serves"))
        step.serves.push_back(reader.dimension(served));
    step.direction = reader.direction(json.at("direction"));
    if (json.contains("positive")) step.positive = optionalAt<bool>(json, "positive");
    step.opposite = json.value("opposite", false);
    step.aim = optionalAt<double>(json, "aim");
    step.aimDimension = reader.dimension(json.at("aim_dimension"));
    step.now = optionalAt<std::int64_t>(json, "now");
    if (const auto word = optionalAt<std::string>(json, "now_word"))
        if (const auto found = findWord(*word, step.aimDimension)) step.nowWord = *found;
    step.amount = optionalAt<double>(json, "amount");
    step.go = optionalAt<double>(json, "go");
    step.amounts = amountsFrom(json.at("amounts"));
    step.atPart = optionalAt<double>(json, "at_part");
    const int unit = json.at("unit");
    if (unit < 0 || unit > static_cast<int>(AmountUnit::none)) throw std::out_of_range("unit");
    step.unit = static_cast<AmountUnit>(unit);
    step.stopIf = row(step.operation).guard;
    step.why = json.at("why");
    step.minutes = json.at("minutes");
    step.after = json.at("after").get<std::vector<std::string>>();
    for (const Json& piece : json.at("stack"))
        step.stack.push_back(Length{piece.get<std::int64_t>()});
    return step;
}

Json othersJson(const Response& response) {
    if (!response.others) return nullptr;
    const GuessOfOthers& others = *response.others;
    return {{"pianos", others.pianos},
            {"low95", others.low95},
            {"high95", others.high95},
            {"customary", Json::array({others.customary.perUnit, others.customary.sd})}};
}

/// Older plans have none.
std::optional<GuessOfOthers> othersFrom(const Json& json, const Response& response) {
    const auto found = json.find("others");
    if (found == json.end() || found->is_null() || response.effects.empty()) return std::nullopt;
    const Json& customary = found->at("customary");
    return GuessOfOthers{found->at("pianos"),
                         found->at("low95"),
                         found->at("high95"),
                         {response.effects.front().dimension, customary.at(0), customary.at(1)}};
}

Json responseJson(const Response& response) {
    Json effects = Json::array();
    for (const Effect& effect : response.effects)
        effects.push_back({key(effect.dimension), effect.perUnit, effect.sd});
    return {{"operation", key(response.operation)},
            {"keys", response.keys ? Json(static_cast<int>(*response.keys)) : Json(nullptr)},
            {"effects", effects},
            {"section", orNull(response.section)},
            {"learned", response.learned},
            {"opposite", response.opposite},
            {"pairs", response.pairs},
            {"low95", response.low95},
            {"high95", response.high95},
            {"others", othersJson(response)}};
}

Response responseFrom(Reader& reader, const Json& json) {
    Response response{reader.operation(json.at("operation")), {}, {}};
    if (const auto keys = optionalAt<int>(json, "keys"))
        response.keys = *keys == 0 ? KeyColour::natural : KeyColour::sharp;
    for (const Json& effect : json.at("effects"))
        response.effects.push_back({reader.dimension(effect.at(0)), effect.at(1), effect.at(2)});
    response.learned = json.at("learned");
    response.section = optionalAt<std::size_t>(json, "section");
    response.opposite = json.value("opposite", false);
    response.pairs = json.at("pairs");
    response.low95 = json.at("low95");
    response.high95 = json.at("high95");
    response.others = othersFrom(json, response);
    return response;
}

Json causeJson(const Cause& cause) {
    Json explains = Json::array();
    for (const Cell& cell : cause.explains)
        explains.push_back(cellJson(cell));
    return {{"cause", cause.key},
            {"notes", notesJson(cause.notes)},
            {"remedy", cause.remedy},
            {"amount", orNull(cause.amount)},
            {"amounts", amountsJson(cause.amounts)},
            {"beside", orNull(cause.beside)},
            {"unit", static_cast<int>(cause.unit)},
            {"certainty", cause.certainty},
            {"checks", cause.checks},
            {"explains", explains}};
}

Cause causeFrom(Reader& reader, const Json& json) {
    Cause cause;
    cause.key = reader.lasting(json.at("cause"));
    cause.notes = notesFrom(json.at("notes"));
    cause.remedy = reader.lasting(json.at("remedy"));
    cause.amount = optionalAt<double>(json, "amount");
    cause.amounts = amountsFrom(json.at("amounts"));
    cause.beside = optionalAt<double>(json, "beside");
    cause.unit = static_cast<AmountUnit>(std::clamp(json.at("unit").get<int>(), 0, 2));
    cause.certainty = json.at("certainty");
    for (const Json& check : json.at("checks"))
        cause.checks.push_back(reader.lasting(check));
    for (const Json& cell : json.at("explains"))
        cause.explains.push_back(reader.cell(cell));
    return cause;
}

Json optionsJson(const PlanOptions& options) {
    return {{"intent", key(options.intent)},      {"float", key(options.floating)},
            {"minutes", orNull(options.minutes)}, {"accepted", options.accepted},
            {"stage", key(options.stage)},        {"rule", kRules.at(static_cast<std::size_t>(options.rule))}};
}

PlanOptions optionsFrom(const Json& json) {
    PlanOptions options;
    options.intent = enumOf<Intent>(json.at("intent"), kIntents);
    options.floating = enumOf<Float>(json.at("float"), kFloats);
    options.minutes = optionalAt<double>(json, "minutes");
    options.accepted = json.at("accepted").get<std::map<std::string, std::string>>();
    options.stage = enumOf<Stage>(json.at("stage"), kStages);
    options.rule = enumOf<Rule>(json.at("rule"), kRules);
    return options;
}

Json outlookJson(const Plan& plan) {
    Json json;
    for (const char* name : {"expected", "read_next", "stale", "conflicts", "blocked", "trials"})
        json[name] = Json::array();
    for (const Expected& e : plan.expected)
        json["expected"].push_back({cellJson(e.cell), e.value, e.low95, e.high95, key(e.verdict)});
    for (const ToRead& each : plan.readNext)
        json["read_next"].push_back({cellJson(each.cell), each.why});
    for (const Cell& cell : plan.becomesStale)
        json["stale"].push_back(cellJson(cell));
    for (const Conflict& c : plan.conflicts)
        json["conflicts"].push_back({c.note.value, c.what, c.needsDip, c.keyGives, c.aftertouchAtLeast, c.raiseKey,
                                     c.shortenBlow, c.aftertouchThen});
    for (const BlockedNote& b : plan.blocked)
        json["blocked"].push_back({b.note.value, b.finding.part, b.finding.fault, b.finding.remedy, b.finding.remark,
                                   b.finding.note ? Json(b.finding.note->value) : Json(nullptr)});
    for (const Trial& t : plan.trials)
        json["trials"].push_back({key(t.operation), notesJson(t.notes), t.amount, key(t.direction)});
    return json;
}

void outlookFrom(Reader& reader, const Json& json, Plan& plan) {
    for (const Json& e : json.at("expected"))
        plan.expected.push_back({reader.cell(e.at(0)), e.at(1), e.at(2), e.at(3), reader.verdict(e.at(4))});
    for (const Json& e : json.at("read_next"))
        plan.readNext.push_back({reader.cell(e.at(0)), reader.lasting(e.at(1))});
    for (const Json& e : json.at("stale"))
        plan.becomesStale.push_back(reader.cell(e));
    for (const Json& e : json.at("conflicts"))
        plan.conflicts.push_back(
            {{e.at(0).get<int>()}, reader.lasting(e.at(1)), e.at(2), e.at(3), e.at(4), e.at(5), e.at(6), e.at(7)});
    for (const Json& e : json.at("blocked")) {
        BlockedNote blocked{{e.at(0).get<int>()}, {}};
        blocked.finding.part = e.at(1);
        blocked.finding.fault = e.at(2);
        blocked.finding.remedy = e.at(3);
        blocked.finding.remark = e.at(4);
        if (!e.at(5).is_null()) blocked.finding.note = NoteNumber{e.at(5).get<int>()};
        plan.blocked.push_back(std::move(blocked));
    }
    for (const Json& e : json.at("trials"))
        plan.trials.push_back(
            {reader.operation(e.at(0)), notesFrom(e.at(1)), e.at(2).get<double>(), reader.direction(e.at(3))});
}

Plan planFrom(const Json& json) {
    Reader reader;
    Plan plan;
    plan.uuid = json.at("uuid");
    plan.pass = json.at("pass");
    plan.options = optionsFrom(json.at("options"));
    for (std::size_t i = 0; i < 2; ++i) {
        const Json& ratio = json.at("ratio").at(i);
        plan.ratio[i] = {ratio.at(0), ratio.at(1), ratio.at(2)};
    }
    for (const Json& each : json.at("responses"))
        plan.responses.push_back(responseFrom(reader, each));
    for (const Json& each : json.at("causes"))
        plan.causes.push_back(causeFrom(reader, each));
    for (const Json& each : json.at("steps"))
        plan.steps.push_back(stepFrom(reader, each));
    outlookFrom(reader, json.at("outlook"), plan);
    for (const Json& each : json.at("ask_first"))
        plan.askFirst.push_back(reader.lasting(each));
    plan.minutes = json.at("minutes");
    plan.texts = reader.texts();
    return plan;
}

} // namespace

std::string_view key(Intent intent) {
    return kIntents.at(static_cast<std::size_t>(intent));
}
std::string_view key(Float floating) {
    return kFloats.at(static_cast<std::size_t>(floating));
}
std::string_view key(Stage stage) {
    return kStages.at(static_cast<std::size_t>(stage));
}

std::string writeOptions(const PlanOptions& options) {
    return optionsJson(options).dump();
}

Outcome<PlanOptions> readOptions(std::string_view json) {
    try {
        return optionsFrom(Json::parse(json));
    } catch (const std::exception& wrong) {
        return refuse(RefusalCode::badJson, {}, wrong.what());
    }
}

std::string writePlan(const Plan& plan) {
    Json json;
    json["uuid"] = plan.uuid;
    json["pass"] = plan.pass;
    json["options"] = optionsJson(plan.options);
    for (const char* name : {"ratio", "responses", "causes", "steps", "ask_first"})
        json[name] = Json::array();
    for (const Ratio& ratio : plan.ratio)
        json["ratio"].push_back({ratio.value, ratio.spread, ratio.notes});
    for (const Response& each : plan.responses)
        json["responses"].push_back(responseJson(each));
    for (const Cause& each : plan.causes)
        json["causes"].push_back(causeJson(each));
    for (const Step& each : plan.steps)
        json["steps"].push_back(stepJson(each));
    json["outlook"] = outlookJson(plan);
    for (const std::string_view each : plan.askFirst)
        json["ask_first"].push_back(each);
    json["minutes"] = plan.minutes;
    return json.dump(-1, ' ', false, Json::error_handler_t::replace);
}

Outcome<Plan> readPlan(std::string_view json) {
    try {
        return planFrom(Json::parse(json));
    } catch (const std::exception& wrong) {
        return refuse(RefusalCode::badJson, {}, wrong.what());
    }
}

} // namespace hammerline
