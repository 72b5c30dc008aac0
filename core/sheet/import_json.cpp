#include "core/sheet/json_number.hpp"
#include "core/sheet/sheet.h"

namespace hammerline {

using sheet::Json;

std::string importJson(const Intake& intake, int pass, std::size_t taken) {
    Json out;
    out["taken"] = taken;
    out["pass"] = pass;
    out["questions"] = Json::array();
    for (const Question& q : intake.questions)
        out["questions"].push_back({{"line", q.place.line},
                                    {"note", q.cell ? Json(q.cell->note.value) : Json(nullptr)},
                                    {"dimension", q.cell ? sheet::text(key(q.cell->dimension)) : Json(nullptr)},
                                    {"text", q.text},
                                    {"kind", sheet::text(key(q.doubt))},
                                    {"slip", q.slip},
                                    {"may_take", q.mayTake},
                                    {"suggestion", q.suggestion.empty() ? Json(nullptr) : Json(q.suggestion)}});
    out["refused_rows"] = Json::array();
    for (const RefusedRow& r : intake.refused)
        out["refused_rows"].push_back({{"line", r.line},
                                       {"column", r.column},
                                       {"note", r.note},
                                       {"dimension", r.dimension ? sheet::text(key(*r.dimension)) : Json(nullptr)},
                                       {"text", r.text},
                                       {"kind", sheet::text(key(r.kind))}});
    out["ignored_columns"] = Json::array();
    for (const std::string& column : intake.ignoredColumns)
        out["ignored_columns"].push_back(column);
    out["references"] = Json::object();
    for (const auto& [id, reference] : intake.references)
        out["references"][std::string(key(id))] = reference;
    return sheet::dump(out);
}

std::string refusalJson(const Refusal& refusal, std::string_view sentence) {
    const Json out = {{"refused",
                       {{"code", sheet::text(key(refusal.code))},
                        {"place",
                         {{"source", refusal.place.source},
                          {"line", refusal.place.line},
                          {"column", refusal.place.column},
                          {"field", refusal.place.field}}},
                        {"text", refusal.offending},
                        {"sentence", std::string(sentence)}}}};
    return sheet::dump(out);
}

} // namespace hammerline
