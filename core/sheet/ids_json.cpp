#include "core/causes/cause_ids.h"
#include "core/sheet/json_number.hpp"
#include "core/sheet/sheet.h"

#include <set>

namespace hammerline {
namespace {

using sheet::Json;

std::string_view kindText(Kind kind) {
    return kind == Kind::length ? "length" : kind == Kind::mass ? "mass" : "share";
}

Json dimensionRows() {
    Json out = Json::array();
    for (const Dimension& d : dimensions()) {
        Json allowed = Json::array();
        for (const WordId w : d.words)
            allowed.push_back(sheet::text(row(w).key));
        Json references = Json::array();
        for (const auto each : d.references)
            references.push_back(sheet::text(each));
        out.push_back({{"id", sheet::text(d.key)},
                       {"kind", sheet::text(kindText(d.kind))},
                       {"unit", sheet::text(key(d.entryUnit))},
                       {"words", allowed},
                       {"references", references}});
    }
    return out;
}

Json operationRows() {
    Json out = Json::array();
    for (const Operation& o : operations())
        out.push_back({{"id", sheet::text(key(o.id))}, {"access", sheet::text(key(o.access))}, {"common", o.common}});
    return out;
}

Json partRows() {
    Json out = Json::array();
    for (const Part& p : parts()) {
        Json faults = Json::array();
        for (const auto each : p.faults)
            faults.push_back(sheet::text(each));
        Json remedies = Json::array();
        for (const auto each : p.remedies)
            remedies.push_back(sheet::text(each));
        out.push_back({{"id", sheet::text(p.key)},
                       {"kinds", sheet::text(p.kinds)},
                       {"must", sheet::text(key(p.must))},
                       {"unit", sheet::text(key(p.unit))},
                       {"faults", faults},
                       {"remedies", remedies}});
    }
    return out;
}

} // namespace

std::string idsJson() {
    Json out;
    out["dimensions"] = dimensionRows();
    out["words"] = Json::array();
    std::set<std::string_view> listed; // one key may stand for two words
    for (const Word& w : readingWords())
        if (listed.insert(w.key).second) out["words"].push_back(sheet::text(w.key));
    out["operations"] = operationRows();
    out["parts"] = partRows();
    out["causes"] = Json::array();
    for (const auto each : causeKeys())
        out["causes"].push_back(sheet::text(each));
    out["symptoms"] = Json::array();
    for (const auto each : symptomKeys())
        out["symptoms"].push_back(sheet::text(each));
    out["attributes"] = Json::array();
    for (const AttributeRow& each : attributes())
        out["attributes"].push_back({{"id", sheet::text(each.name)}, {"values", sheet::text(each.values)}});
    out["spec_sheets"] = Json::array();
    for (const auto& each : builtInSheets())
        out["spec_sheets"].push_back(each);
    out["refusal_codes"] = Json::array();
    for (const RefusalCode each : refusalCodes())
        out["refusal_codes"].push_back(sheet::text(key(each)));
    return sheet::dump(out);
}

} // namespace hammerline
