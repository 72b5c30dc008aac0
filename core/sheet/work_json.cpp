#include "core/sheet/json_number.hpp"
#include "core/sheet/work_now.h"

namespace hammerline {
namespace {

using sheet::Json;

Json supplyList(const std::set<std::string>& supplies) {
    Json out = Json::array();
    for (const std::string& each : supplies)
        out.push_back(each);
    return out;
}

Json dimensionKey(std::optional<DimensionId> dimension) {
    return dimension ? Json(sheet::text(key(*dimension))) : Json(nullptr);
}

Json stepRow(const StepNow& now, const Piano& piano) {
    return {{"id", sheet::text(now.step->id)},
            {"part", sheet::text(key(now.step->part))},
            {"access", sheet::texts(accessOf(*now.step, piano))},
            {"state", sheet::text(key(now.state))},
            {"asks", sheet::text(key(now.asks))},
            {"needs", sheet::texts(needsOf(*now.step, piano))},
            {"waits_for", sheet::texts(now.waitsFor)},
            {"supplies", supplyList(now.supplies)},
            {"notes", sheet::notes(now.notes)},
            {"done_notes", sheet::notes(now.doneNotes)},
            {"lines", now.lines},
            {"minutes", now.minutes},
            {"spent", static_cast<double>(now.spent) / 60},
            {"dimension", dimensionKey(now.dimension)},
            {"reason", sheet::text(now.reason)},
            {"remark", now.remark},
            {"cautions", sheet::texts(cautionsOf(*now.step, piano))}};
}

Json nextRow(const NextAct& next, const std::string& sentence) {
    return {{"kind", sheet::text(key(next.kind))},
            {"step", next.step ? Json(sheet::text(next.step->step->id)) : Json(nullptr)},
            {"asks", next.step ? Json(sheet::text(key(next.step->asks))) : Json(nullptr)},
            {"notes", sheet::notes(next.notes)},
            {"dimension", dimensionKey(next.dimension)},
            {"question", next.question.empty() ? Json(nullptr) : Json(sheet::text(next.question))},
            {"waits", supplyList(next.supplies)},
            {"sentence", sentence}};
}

} // namespace

std::string workJson(const WorkNow& now, const PianoRecord& record, const std::string& sentence) {
    Json out;
    out["job"] = now.whole ? "whole" : "asked";
    out["steps"] = Json::array();
    for (const StepNow& each : now.steps)
        out["steps"].push_back(stepRow(each, record.piano));
    out["minutes_left"] = now.minutes;
    out["next"] = nextRow(now.next, sentence);
    return sheet::dump(out);
}

std::string nextJson(const WorkNow& now, const std::string& sentence) {
    return sheet::dump(nextRow(now.next, sentence));
}

} // namespace hammerline
