#include "core/sheet/finish_json.hpp"
#include "core/sheet/json_number.hpp"
#include "core/sheet/sheet.h"

namespace hammerline {
namespace {

using sheet::Json;

Json dimensionRow(const DimensionComparison& each) {
    return {{"dimension", sheet::text(key(each.dimension))},
            {"n", each.n},
            {"outside_before", each.outsideBefore},
            {"outside_now", each.outsideNow},
            {"worse_now", each.worseNow},
            {"median_change", sheet::rounded(each.medianChange)},
            {"spread_before", sheet::rounded(each.spreadBefore)},
            {"spread_now", sheet::rounded(each.spreadNow)},
            {"ppk", sheet::rounded(each.ppk)},
            {"mean_change", sheet::rounded(each.meanChange)},
            {"low95", sheet::rounded(each.low95)},
            {"high95", sheet::rounded(each.high95)},
            {"achieved_bias", sheet::rounded(each.achievedBias)},
            {"achieved_rms", sheet::rounded(each.achievedRms)},
            {"largest_step", sheet::rounded(each.largestStep)}};
}

} // namespace

std::string comparisonJson(const Comparison& comparison, const FinishLine& finish) {
    Json out;
    out["from"] = comparison.from;
    out["to"] = comparison.to;
    out["dimensions"] = Json::array();
    for (const auto& each : comparison.dimensions)
        out["dimensions"].push_back(dimensionRow(each));
    out["not_comparable"] = Json::array();
    for (const auto& [id, why] : comparison.notComparable)
        out["not_comparable"].push_back({{"dimension", sheet::text(key(id))}, {"why", sheet::text(why)}});
    out["climate"] = comparison.climate ? Json{{"moisture_before", sheet::rounded(comparison.climate->moistureBefore)},
                                               {"moisture_now", sheet::rounded(comparison.climate->moistureNow)},
                                               {"could_explain", comparison.climate->couldExplain}}
                                        : Json(nullptr);
    out["got_worse"] = Json::array();
    for (const Cell& cell : comparison.gotWorse)
        out["got_worse"].push_back({{"note", cell.note.value}, {"dimension", sheet::text(key(cell.dimension))}});
    out["grade"] = sheet::text(key(finish.grade));
    out["missing_for_grade"] = sheet::texts(finish.missing);
    out["finish"] = sheet::finishRow(finish);
    out["learned"] = Json::array();
    for (const Response& response : comparison.learned) {
        if (!response.learned || response.effects.empty()) continue;
        out["learned"].push_back(
            {{"operation", sheet::text(key(response.operation))},
             {"dimension", sheet::text(key(response.effects.front().dimension))},
             {"keys",
              !response.keys ? Json(nullptr) : Json(*response.keys == KeyColour::natural ? "natural" : "sharp")},
             {"section", response.section ? Json(*response.section + 1) : Json(nullptr)},
             {"per_unit", sheet::rounded(response.effects.front().perUnit)},
             {"low95", sheet::rounded(response.low95)},
             {"high95", sheet::rounded(response.high95)},
             {"pairs", response.pairs}});
    }
    return sheet::dump(out);
}

} // namespace hammerline
