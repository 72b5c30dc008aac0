#include "core/sheet/json_walk.hpp"

#include "core/intake/encoding.h"

namespace hammerline::sheet {
namespace {

constexpr int kDeepest = 32;

} // namespace

Outcome<Json> parseJson(std::string_view text) {
    if (text.starts_with("\xEF\xBB\xBF")) text.remove_prefix(3);
    bool tooDeep = false;
    const auto shallow = [&](int depth, Json::parse_event_t, Json&) {
        tooDeep = tooDeep || depth > kDeepest;
        return depth <= kDeepest;
    };
    try {
        Json json = Json::parse(text.begin(), text.end(), shallow);
        if (tooDeep) return refuse(RefusalCode::badJson, {}, "depth");
        return json;
    } catch (const Json::parse_error& wrong) {
        const std::size_t at = wrong.byte > 0 ? wrong.byte - 1 : 0;
        return refuse(RefusalCode::badJson, {}, "syntax", placeOf(text, at));
    } catch (const Json::exception&) { // a number that no double holds
        return refuse(RefusalCode::badJson, {}, "range");
    }
}

} // namespace hammerline::sheet
