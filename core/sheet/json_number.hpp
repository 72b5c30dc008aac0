// Numbers as the JSON of the commands writes them: lengths in mm, masses in g, exact; infinite or unknown is null.
#pragma once

#include "core/piano/dimension.h"

#include <nlohmann/json.hpp>

#include <cmath>

namespace hammerline::sheet {

using Json = nlohmann::ordered_json;

inline Json number(std::optional<double> value) {
    return value && std::isfinite(*value) ? Json(*value) : Json(nullptr);
}

/// Rounded to whole nanometres, so that at most six decimals appear.
inline Json rounded(std::optional<double> mm) {
    return mm && std::isfinite(*mm) ? Json(std::round(*mm * 1e6) / 1e6) : Json(nullptr);
}

inline Json count(DimensionId id, std::optional<std::int64_t> value) {
    return value ? Json(toTrade(*value, row(id).kind)) : Json(nullptr);
}

inline Json notes(const std::vector<NoteNumber>& list) {
    Json out = Json::array();
    for (const NoteNumber n : list)
        out.push_back(n.value);
    return out;
}

inline Json text(std::string_view value) {
    return Json(std::string(value));
}

inline Json texts(const std::vector<std::string_view>& list) {
    Json out = Json::array();
    for (const auto each : list)
        out.push_back(std::string(each));
    return out;
}

inline std::string dump(const Json& json) {
    return json.dump(2, ' ', false, Json::error_handler_t::replace);
}

} // namespace hammerline::sheet
