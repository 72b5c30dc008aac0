#include "core/plan/plan_in_force.h"
#include "core/plan/trials_said.h"
#include "core/sheet/finish_json.hpp"
#include "core/sheet/json_number.hpp"
#include "core/sheet/sheet.h"

namespace hammerline {
namespace {

using sheet::Json;

std::string_view unitText(AmountUnit unit) {
    return unit == AmountUnit::mm ? "mm" : unit == AmountUnit::turn ? "turn" : "";
}

/// What other pianos taught of the guess; null where it is the customary one.
Json othersRow(const Response& response) {
    if (!response.others) return nullptr;
    return {{"pianos", response.others->pianos},
            {"low95", sheet::rounded(response.others->low95)},
            {"high95", sheet::rounded(response.others->high95)},
            {"customary", sheet::rounded(response.others->customary.perUnit)}};
}

Json responseRows(const Plan& plan) {
    Json out = Json::array();
    for (const Response& response : plan.responses)
        for (const Effect& effect : response.effects)
            out.push_back({{"operation", sheet::text(key(response.operation))},
                           {"dimension", sheet::text(key(effect.dimension))},
                           {"keys", !response.keys ? Json(nullptr)
                                                   : Json(*response.keys == KeyColour::natural ? "natural" : "sharp")},
                           {"per_unit", sheet::rounded(effect.perUnit)},
                           {"sd", sheet::rounded(effect.sd)},
                           {"section", response.section ? Json(*response.section + 1) : Json(nullptr)},
                           {"learned", response.learned},
                           {"pairs", response.pairs},
                           {"others", othersRow(response)}});
    return out;
}

Json stepRow(const Step& step) {
    Json serves = Json::array();
    for (const DimensionId id : step.serves)
        serves.push_back(sheet::text(key(id)));
    Json amounts = Json::object();
    for (const auto& [note, amount] : step.amounts)
        amounts[std::to_string(note)] = sheet::rounded(amount);
    Json stack = Json::array();
    for (const Length piece : step.stack)
        stack.push_back(piece.mm());
    return {{"id", step.id},
            {"order", step.order},
            {"access", sheet::text(key(step.access))},
            {"operation", sheet::text(key(step.operation))},
            {"note", step.note ? Json(step.note->value) : Json(nullptr)},
            {"notes", sheet::notes(step.notes)},
            {"serves", serves},
            {"direction", sheet::text(key(step.direction))},
            {"opposite", step.opposite},
            {"aim", sheet::rounded(step.aim)},
            {"aim_dimension", sheet::text(key(step.aimDimension))},
            {"amount", sheet::rounded(step.amount)},
            {"go", sheet::rounded(step.go)},
            {"amounts", amounts},
            {"at_part", sheet::rounded(step.atPart)},
            {"unit", sheet::text(unitText(step.unit))},
            {"stop_if", sheet::text(step.stopIf)},
            {"why", step.why},
            {"minutes", sheet::rounded(step.minutes)},
            {"stack", stack}};
}

/// The reference notes of a pass on the bench; null for one in the piano.
Json setUpRow(const BenchSetUp& setUp) {
    if (setUp.state == BenchSetUp::State::inPiano) return nullptr;
    Json compared = Json::array();
    for (const ReferenceReading& each : setUp.compared)
        compared.push_back({{"section", each.section + 1},
                            {"notes", sheet::notes(each.notes)},
                            {"dimension", sheet::text(key(each.dimension))},
                            {"in_piano", sheet::rounded(each.inPiano)},
                            {"on_bench", sheet::rounded(each.onBench)},
                            {"limit", sheet::rounded(each.limit)},
                            {"agrees", each.agrees()}});
    return {{"state", sheet::text(key(setUp.state))}, {"waits", setUp.waits()}, {"reference_notes", compared}};
}

} // namespace

std::string planJson(const Plan& plan, const PianoRecord& record) {
    Json out;
    out["plan"] = plan.uuid.empty() ? Json(nullptr) : Json(plan.uuid);
    out["pass"] = plan.pass;
    out["intent"] = sheet::text(key(plan.options.intent));
    out["float"] = sheet::text(key(plan.options.floating));
    out["stage"] = sheet::text(key(plan.options.stage));
    out["ratio"] = {{"natural", sheet::rounded(plan.ratio[0].value)}, {"sharp", sheet::rounded(plan.ratio[1].value)}};
    out["responses"] = responseRows(plan);
    out["steps"] = Json::array();
    for (const Step& step : plan.steps)
        out["steps"].push_back(stepRow(step));
    out["expected"] = Json::array();
    for (const Expected& each : plan.expected)
        out["expected"].push_back({{"note", each.cell.note.value},
                                   {"dimension", sheet::text(key(each.cell.dimension))},
                                   {"value", sheet::rounded(each.value)},
                                   {"low95", sheet::rounded(each.low95)},
                                   {"high95", sheet::rounded(each.high95)},
                                   {"verdict", sheet::text(key(each.verdict))}});
    out["read_next"] = Json::array();
    for (const ToRead& each : plan.readNext)
        out["read_next"].push_back({{"note", each.cell.note.value},
                                    {"dimension", sheet::text(key(each.cell.dimension))},
                                    {"why", sheet::text(each.why)}});
    out["conflicts"] = Json::array();
    for (const Conflict& each : plan.conflicts)
        out["conflicts"].push_back({{"note", each.note.value},
                                    {"what", sheet::text(each.what)},
                                    {"needs_dip", sheet::rounded(each.needsDip)},
                                    {"key_gives", sheet::rounded(each.keyGives)},
                                    {"raise_key", sheet::rounded(each.raiseKey)},
                                    {"shorten_blow", sheet::rounded(each.shortenBlow)},
                                    {"aftertouch_then", sheet::rounded(each.aftertouchThen)}});
    out["blocked"] = Json::array();
    for (const BlockedNote& each : plan.blocked)
        out["blocked"].push_back(
            {{"note", each.note.value},
             {"finding",
              {{"part", each.finding.part}, {"fault", each.finding.fault}, {"remedy", each.finding.remedy}}}});
    out["trials"] = Json::array();
    for (const Trial& each : plan.trials)
        out["trials"].push_back({{"operation", sheet::text(key(each.operation))},
                                 {"notes", sheet::notes(each.notes)},
                                 {"amount", sheet::rounded(each.amount)},
                                 {"direction", sheet::text(key(each.direction))}});
    out["trials_said"] = Json::array();
    for (const TrialAnswer& each : trialsSaid(record))
        out["trials_said"].push_back({{"operation", sheet::text(key(each.operation))},
                                      {"says", sheet::text(key(each.says))},
                                      {"notes", sheet::notes(each.notes)},
                                      {"goes", each.goes},
                                      {"number", each.known},
                                      {"check_arms", each.arms}});
    out["stale_after"] = Json::array();
    for (const Cell& cell : plan.becomesStale)
        out["stale_after"].push_back({{"note", cell.note.value}, {"dimension", sheet::text(key(cell.dimension))}});
    out["bench"] = setUpRow(plan.setUp);
    out["ask_first"] = sheet::texts(openQuestions(plan, record));
    out["minutes"] = sheet::rounded(plan.minutes);
    out["finish"] = plan.finish ? sheet::finishRow(*plan.finish) : Json(nullptr);
    return sheet::dump(out);
}

} // namespace hammerline
