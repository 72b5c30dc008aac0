#include "core/judge/touch_diagnosis.h"
#include "core/plan/from_samples.h"
#include "core/sheet/finish_json.hpp"
#include "core/sheet/json_number.hpp"
#include "core/sheet/sheet.h"

namespace hammerline {
namespace {

using sheet::Json;

std::string_view sign(Relation relation) {
    return relation == Relation::less      ? "<"
           : relation == Relation::more    ? ">"
           : relation == Relation::between ? ".."
                                           : "=";
}

Json summaryOf(const Summary& s, Grade grade) {
    return {{"fitted", s.fitted},
            {"within", s.within},
            {"low", s.low},
            {"high", s.high},
            {"undecided", s.undecided},
            {"missing", s.missing},
            {"not_fitted", s.notFitted},
            {"uneven", s.uneven},
            {"stale", s.stale},
            {"grade", sheet::text(key(grade))}};
}

Json rankedRow(const Judged& judged, const PassView& view, const Piano& piano) {
    const Measured* measured = view.pass.at(judged.cell);
    const Reading* last = measured ? measured->latest() : nullptr;
    return {{"note", judged.cell.note.value},
            {"name", pitchName(judged.cell.note, piano)},
            {"dimension", sheet::text(key(judged.cell.dimension))},
            {"value", sheet::count(judged.cell.dimension, judged.value)},
            {"relation", sheet::text(sign(judged.relation))},
            {"upper", sheet::count(judged.cell.dimension, judged.upper)},
            {"word", judged.word ? sheet::text(row(*judged.word).key) : Json(nullptr)},
            {"typed", last ? Json(last->typed) : Json(nullptr)},
            {"typed_unit", last ? Json(last->typedUnit) : Json(nullptr)},
            {"verdict", sheet::text(key(judged.verdict))},
            {"deviation", sheet::number(judged.deviation)},
            {"infinite", judged.infinite},
            {"uneven", judged.uneven},
            {"step", judged.step},
            {"stale", judged.stale},
            {"overridden", judged.overridden}};
}

Json causeRow(const Cause& cause) {
    Json amounts = Json::object();
    for (const auto& [note, amount] : cause.amounts)
        amounts[std::to_string(note)] = sheet::rounded(amount);
    return {{"cause", sheet::text(cause.key)},
            {"notes", sheet::notes(cause.notes)},
            {"remedy", sheet::text(cause.remedy)},
            {"amount", sheet::rounded(cause.amount)},
            {"amounts", amounts},
            {"beside", sheet::rounded(cause.beside)},
            {"unit", cause.unit == AmountUnit::mm     ? "mm"
                     : cause.unit == AmountUnit::turn ? "turn"
                                                      : ""},
            {"certainty", sheet::number(cause.certainty)},
            {"checks", sheet::texts(cause.checks)},
            {"replaces", cause.explains.size()}};
}

Json touchRow(const NoteTouch& touch) {
    Json says = Json::array();
    for (const TouchSays each : touch.says)
        says.push_back(sheet::text(key(each)));
    return {{"note", touch.note.value},
            {"down", sheet::number(touch.down)},
            {"up", sheet::number(touch.up)},
            {"friction", sheet::number(touch.touch.friction)},
            {"mean", sheet::number(touch.touch.mean)},
            {"says", std::move(says)}};
}

} // namespace

std::string checkJson(const PianoRecord& record, const PassView& view, const FinishLine& finish) {
    Json out;
    out["piano"] = record.piano.name;
    out["pass"] = view.pass.number;
    out["asked"] = Json::array();
    for (const DimensionId id : view.review.asked)
        out["asked"].push_back(sheet::text(key(id)));
    out["summary"] = summaryOf(view.review.summary, finish.grade);
    out["missing_for_grade"] = sheet::texts(finish.missing);
    out["finish"] = sheet::finishRow(finish);
    out["from_samples"] = Json::array();
    for (const FromSamples& each : fromSamples(record.piano, view.review))
        out["from_samples"].push_back({{"dimension", sheet::text(key(each.dimension))},
                                       {"operation", sheet::text(key(each.operation))},
                                       {"read", each.read},
                                       {"out", each.out},
                                       {"all", each.all},
                                       {"minutes", each.minutes},
                                       {"low95", each.low},
                                       {"high95", each.high}});
    out["spec"] = {{"name", view.sheet.name}, {"source", view.sheet.source}};
    out["zones"] = Json::array();
    for (const auto& [cell, zone] : view.review.zones)
        out["zones"].push_back({{"dimension", sheet::text(key(cell.dimension))},
                                {"note", cell.note.value},
                                {"low", sheet::count(cell.dimension, zone.low)},
                                {"nominal", sheet::count(cell.dimension, zone.nominal)},
                                {"high", sheet::count(cell.dimension, zone.high)}});
    out["ranked"] = Json::array();
    for (const Judged& judged : view.review.ranked)
        out["ranked"].push_back(rankedRow(judged, view, record.piano));
    out["doubtful_notes"] = Json::array();
    for (const DoubtfulNote& each : view.review.doubtful)
        out["doubtful_notes"].push_back({{"note", each.note.value},
                                         {"why", sheet::text(each.why)},
                                         {"suspect", sheet::text(key(each.suspect))},
                                         {"residual", sheet::rounded(each.residual)}});
    out["touch"] = Json::array();
    for (const NoteTouch& each : touchesOf(view.pass, record.piano, view.sheet.name == "old-upright"))
        out["touch"].push_back(touchRow(each));
    out["causes"] = Json::array();
    for (const Cause& cause : view.causes)
        out["causes"].push_back(causeRow(cause));
    return sheet::dump(out);
}

} // namespace hammerline
