// A spec sheet as JSON and back.
#include "core/spec/spec.h"

#include <nlohmann/json.hpp>

#include <algorithm>
#include <cmath>

namespace hammerline {
namespace {

using Json = nlohmann::ordered_json;

tl::unexpected<Refusal> bad(RefusalCode code, std::string field, std::string offending = {}) {
    return refuse(code, std::move(offending), {}, Place{{}, 0, 0, std::move(field)});
}

/// The first key that the form does not know, so that a slip in a name is never taken for "not said".
std::optional<std::string> strangerIn(const Json& object, std::initializer_list<std::string_view> known) {
    for (const auto& [name, value] : object.items())
        if (std::find(known.begin(), known.end(), name) == known.end()) return name;
    return std::nullopt;
}

Outcome<std::string> textIn(const Json& object, const char* name, const std::string& at) {
    const auto found = object.find(name);
    if (found == object.end() || !found->is_string() || found->get_ref<const std::string&>().empty())
        return bad(RefusalCode::badSpecSheet, at + name);
    return found->get<std::string>();
}

/// A number in the dimension's trade unit as a count of its smallest unit.
Outcome<std::int64_t> countOf(const Json& value, Kind kind, const std::string& at) {
    constexpr double kBeyondAnything = 1e6;
    if (!value.is_number()) return bad(RefusalCode::badZone, at, value.dump());
    const double trade = value.get<double>();
    if (!std::isfinite(trade) || std::abs(trade) > kBeyondAnything) return bad(RefusalCode::badZone, at, value.dump());
    return std::llround(trade * (kind == Kind::length ? kNmPerMm : 1000));
}

Outcome<std::optional<std::int64_t>> sideOf(const Json& object, const char* name, Kind kind, const std::string& at) {
    const auto found = object.find(name);
    if (found == object.end() || found->is_null()) return std::optional<std::int64_t>{};
    return countOf(*found, kind, at + name).map([](std::int64_t count) { return std::optional(count); });
}

Outcome<Zone> zoneOf(const Json& object, Kind kind, const std::string& at) {
    const auto nominal = object.find("nominal");
    if (nominal == object.end()) return bad(RefusalCode::badZone, at + "nominal");
    const auto count = countOf(*nominal, kind, at + "nominal");
    if (!count) return tl::unexpected(count.error());
    const auto low = sideOf(object, "low", kind, at);
    if (!low) return tl::unexpected(low.error());
    const auto high = sideOf(object, "high", kind, at);
    if (!high) return tl::unexpected(high.error());
    const Zone zone{*low, *count, *high};
    if (!ordered(zone)) return bad(RefusalCode::badZone, at + "nominal");
    return zone;
}

bool isPlace(const std::string& place) {
    const bool letters = place.find_first_not_of("btmhx") == std::string::npos;
    const bool range = place.find_first_not_of("0123456789-") == std::string::npos &&
                       std::count(place.begin(), place.end(), '-') == 1 && place.front() != '-' && place.back() != '-';
    return place.empty() || letters || range;
}

Outcome<std::optional<KeyColour>> keysOf(const Json& object, const std::string& at) {
    const auto found = object.find("keys");
    if (found == object.end() || found->is_null()) return std::optional<KeyColour>{};
    if (*found == "natural") return std::optional(KeyColour::natural);
    if (*found == "sharp") return std::optional(KeyColour::sharp);
    return bad(RefusalCode::badSpecSheet, at + "keys", found->dump());
}

Outcome<ZoneRow> rowOf(const Json& object, const std::string& at) {
    if (!object.is_object()) return bad(RefusalCode::badSpecSheet, at);
    if (auto other =
            strangerIn(object, {"dimension", "keys", "place", "low", "nominal", "high", "to", "source", "remark"}))
        return bad(RefusalCode::badSpecSheet, at + *other);
    const auto name = textIn(object, "dimension", at);
    if (!name) return tl::unexpected(name.error());
    const auto id = findDimension(*name);
    if (!id) return bad(RefusalCode::badSpecSheet, at + "dimension", *name);
    const auto keys = keysOf(object, at);
    if (!keys) return tl::unexpected(keys.error());
    const auto first = zoneOf(object, row(*id).kind, at);
    if (!first) return tl::unexpected(first.error());

    ZoneRow out{*id, *keys, {}, *first, *first};
    if (object.contains("place")) {
        if (!object["place"].is_string()) return bad(RefusalCode::badSpecSheet, at + "place");
        out.place = object["place"].get<std::string>();
        if (!isPlace(out.place)) return bad(RefusalCode::badSpecSheet, at + "place", out.place);
    }
    if (object.contains("source")) {
        const auto source = textIn(object, "source", at);
        if (!source) return tl::unexpected(source.error());
        out.source = *source;
    }
    if (object.contains("to")) {
        const auto last = zoneOf(object["to"], row(*id).kind, at + "to.");
        if (!last) return tl::unexpected(last.error());
        // A side that opens on the way has no meaning between its ends.
        if (first->low.has_value() != last->low.has_value() || first->high.has_value() != last->high.has_value())
            return bad(RefusalCode::badZone, at + "to");
        out.last = *last;
    }
    return out;
}

void writeZone(Json& out, const Zone& zone, Kind kind) {
    if (zone.low) out["low"] = toTrade(*zone.low, kind);
    out["nominal"] = toTrade(zone.nominal, kind);
    if (zone.high) out["high"] = toTrade(*zone.high, kind);
}

Outcome<void> readSteps(const Json& steps, SpecSheet& sheet) {
    if (!steps.is_object()) return bad(RefusalCode::badSpecSheet, "steps");
    for (const auto& [name, value] : steps.items()) {
        const auto id = findDimension(name);
        if (!id) return bad(RefusalCode::badSpecSheet, "steps." + name, name);
        const auto count = countOf(value, row(*id).kind, "steps." + name);
        if (!count) return tl::unexpected(count.error());
        if (*count <= 0) return bad(RefusalCode::badZone, "steps." + name, value.dump());
        sheet.step[*id] = *count;
    }
    return {};
}

} // namespace

Outcome<SpecSheet> readSpecSheet(std::string_view text) {
    const Json json = Json::parse(text.begin(), text.end(), nullptr, false);
    if (json.is_discarded()) return bad(RefusalCode::badJson, "");
    if (!json.is_object()) return bad(RefusalCode::badSpecSheet, "");
    if (auto other = strangerIn(json, {"name", "source", "zones", "steps", "remark"}))
        return bad(RefusalCode::badSpecSheet, *other);
    SpecSheet sheet;
    const auto name = textIn(json, "name", "");
    if (!name) return tl::unexpected(name.error());
    const auto source = textIn(json, "source", "");
    if (!source) return tl::unexpected(source.error());
    sheet.name = *name;
    sheet.source = *source;
    if (!json.contains("zones") || !json["zones"].is_array()) return bad(RefusalCode::badSpecSheet, "zones");
    for (std::size_t i = 0; i < json["zones"].size(); ++i) {
        auto zone = rowOf(json["zones"][i], "zones[" + std::to_string(i) + "].");
        if (!zone) return tl::unexpected(zone.error());
        sheet.zones.push_back(std::move(*zone));
    }
    if (json.contains("steps"))
        if (auto steps = readSteps(json["steps"], sheet); !steps) return tl::unexpected(steps.error());
    return sheet;
}

std::string writeSpecSheet(const SpecSheet& sheet) {
    Json out;
    out["name"] = sheet.name;
    out["source"] = sheet.source;
    out["zones"] = Json::array();
    for (const ZoneRow& each : sheet.zones) {
        const Kind kind = row(each.dimension).kind;
        Json zone;
        zone["dimension"] = std::string(key(each.dimension));
        if (each.colour) zone["keys"] = *each.colour == KeyColour::natural ? "natural" : "sharp";
        if (!each.place.empty()) zone["place"] = each.place;
        writeZone(zone, each.first, kind);
        if (each.last != each.first) writeZone(zone["to"], each.last, kind);
        if (!each.source.empty()) zone["source"] = each.source;
        out["zones"].push_back(std::move(zone));
    }
    out["steps"] = Json::object();
    for (const auto& [id, count] : sheet.step)
        out["steps"][std::string(key(id))] = toTrade(count, row(id).kind);
    return out.dump(1, ' ', false, Json::error_handler_t::replace);
}

} // namespace hammerline
