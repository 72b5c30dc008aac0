// A walk over JSON that remembers the first thing that is wrong and where it stands.
#pragma once

#include "core/refusal/go_on.h"
#include "core/refusal/refusal.h"

#include <nlohmann/json.hpp>

#include <cmath>
#include <cstdint>
#include <functional>
#include <optional>
#include <string>

namespace hammerline::sheet {

using Json = nlohmann::ordered_json;

/// Parsed within a depth that no document of ours needs. Refuses badJson with line and column, and cancelled.
/// Members keep their order: what an attribute may be depends on those before it.
Outcome<Json> parseJson(std::string_view text, const GoOn& = {});

/// The same refusals for a text that comes in pieces (empty: its end), in the memory of one piece.
Outcome<void> skimJson(const std::function<Outcome<std::string_view>()>& next);

class JsonWalk {
public:
    /// A value and its path. Getters give a default after the first refusal.
    struct At {
        const Json* json;
        std::string path;
    };

    /// `said`: where it is not the value itself that is told.
    void wrong(const At& at, std::string cause, std::string said = {}) {
        if (m_refusal) return;
        if (at.json) said = at.json->dump(-1, ' ', false, Json::error_handler_t::replace);
        if (said.size() > 60) said = said.substr(0, said.find_first_of(",]}", 30)) + " ...";
        m_refusal = Refusal{RefusalCode::badJson, {{}, 0, 0, at.path}, std::move(said), std::move(cause)};
    }
    bool ok() const { return !m_refusal; }
    const std::optional<Refusal>& refusal() const { return m_refusal; }

    /// A member that may be missing or null.
    std::optional<At> maybe(const At& object, const char* name) {
        if (!object.json->is_object()) {
            wrong(object, "type");
            return std::nullopt;
        }
        const auto found = object.json->find(name);
        if (found == object.json->end() || found->is_null()) return std::nullopt;
        return At{&*found, object.path + "/" + name};
    }

    std::string text(const At& object, const char* name, bool required = false) {
        const auto at = member(object, name, required);
        if (!at) return {};
        if (!at->json->is_string()) {
            wrong(*at, "type");
            return {};
        }
        auto said = at->json->get<std::string>();
        if (said.find('\0') != said.npos) wrong(*at, "zero-byte");
        return said;
    }
    std::optional<double> number(const At& object, const char* name, bool required = false) {
        const auto at = member(object, name, required);
        return at ? number(*at) : std::nullopt;
    }
    std::optional<double> number(const At& at) {
        if (at.json->is_number() && std::isfinite(at.json->get<double>())) return at.json->get<double>();
        wrong(at, "type");
        return std::nullopt;
    }
    /// A whole number within bounds.
    std::optional<std::int64_t> whole(const At& object, const char* name, std::int64_t low, std::int64_t high,
                                      bool required = false) {
        const auto at = member(object, name, required);
        return at ? whole(*at, low, high) : std::nullopt;
    }
    std::optional<std::int64_t> whole(const At& at, std::int64_t low, std::int64_t high) {
        const bool small = at.json->is_number_unsigned() && at.json->get<std::uint64_t>() > INT64_MAX;
        if (!at.json->is_number_integer() || small) {
            wrong(at, "type");
            return std::nullopt;
        }
        const auto value = at.json->get<std::int64_t>();
        if (value >= low && value <= high) return value;
        wrong(at, "range");
        return std::nullopt;
    }
    bool flag(const At& object, const char* name) {
        const auto at = maybe(object, name);
        if (!at) return false;
        if (!at->json->is_boolean()) wrong(*at, "type");
        return at->json->is_boolean() && at->json->get<bool>();
    }

    /// Each element of an array that may be missing, until something is wrong.
    template <class F>
    void each(const At& object, const char* name, F&& take) {
        const auto at = maybe(object, name);
        if (at) each(*at, take);
    }
    template <class F>
    void each(const At& list, F&& take) {
        if (!list.json->is_array()) return wrong(list, "type");
        std::size_t i = 0;
        for (const Json& element : *list.json) {
            if (!ok()) return;
            take(At{&element, list.path + "/" + std::to_string(i++)});
        }
    }
    /// Each member of an object that may be missing: name and value.
    template <class F>
    void members(const At& object, const char* name, F&& take) {
        const auto at = maybe(object, name);
        if (!at) return;
        if (!at->json->is_object()) return wrong(*at, "type");
        for (const auto& [key, value] : at->json->items()) {
            if (!ok()) return;
            take(key, At{&value, at->path + "/" + key});
        }
    }

private:
    std::optional<At> member(const At& object, const char* name, bool required) {
        auto at = maybe(object, name);
        if (!at && required) wrong({nullptr, object.path + "/" + name}, "missing");
        return at;
    }

    std::optional<Refusal> m_refusal;
};

} // namespace hammerline::sheet
