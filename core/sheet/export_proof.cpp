#include "core/sheet/export_proof.hpp"

#include "core/sheet/iso_time.hpp"

#include <array>
#include <map>

namespace hammerline::sheet {
namespace {

constexpr std::array<std::string_view, 7> kTimedLists = {"done",  "findings", "symptoms", "work",
                                                         "plans", "photos",   "remarks"};

bool isTimed(std::string_view name) {
    return std::find(kTimedLists.begin(), kTimedLists.end(), name) != kTimedLists.end();
}

/// The time under which a row stands among the acts: its order where it has one, else the time it gives.
std::string timeOf(const Json& row) {
    if (!row.is_object()) return {};
    // beyond the year 9999, or before the year 1, no calendar helps: as it is
    constexpr std::int64_t kFarthest = 250'000'000'000'000'000;
    if (const auto order = row.find("order"); order != row.end() && order->is_number_integer()) {
        const auto place = order->get<std::int64_t>();
        const bool onCalendar = place > -kFarthest / 5 && place < kFarthest;
        return onCalendar ? isoTime(place) : std::to_string(place);
    }
    for (const char* name : {"at", "started"})
        if (const auto said = row.find(name); said != row.end() && said->is_string()) {
            const auto time = said->get<std::string>();
            if (time.size() > 10 && time[10] == 'T') return time; // a pass's "at" is where its key frame lay
        }
    return {};
}

class Proof {
public:
    explicit Proof(const DigestText& digest) : m_digest(digest) {}

    void read(const Json& piano) {
        for (const auto& [name, value] : byName(piano)) {
            if (name == "proof") continue;
            if (name == "passes" && value->is_array())
                readPasses(*value);
            else if (isTimed(name) && value->is_array())
                for (const Json& row : *value)
                    add(m_acts[timeOf(row)], name, row);
            else
                add(m_setUp, name, *value);
        }
    }
    const std::string& setUp() const { return m_setUp; }
    const std::map<std::string, std::string>& acts() const { return m_acts; }

private:
    void readPasses(const Json& passes) {
        std::size_t number = 0;
        for (const Json& pass : passes) {
            const std::string place = "pass" + std::to_string(++number);
            std::string& ofPass = m_acts[timeOf(pass)];
            if (!pass.is_object()) add(ofPass, place, pass);
            if (!pass.is_object()) continue;
            for (const auto& [name, value] : byName(pass))
                if (name != "readings" || !value->is_array()) add(ofPass, place + name, *value);
            if (const auto readings = pass.find("readings"); readings != pass.end() && readings->is_array())
                for (const Json& row : *readings)
                    add(m_acts[timeOf(row)], place, row);
        }
    }
    static std::map<std::string, const Json*> byName(const Json& object) {
        std::map<std::string, const Json*> members;
        for (const auto& member : object.items())
            members[member.key()] = &member.value();
        return members;
    }
    void add(std::string& chain, std::string_view name, const Json& value) {
        std::string told = chain;
        told += '\n';
        told += name;
        told += '\n';
        told += nlohmann::json(value).dump(-1, ' ', false, nlohmann::json::error_handler_t::replace);
        chain = m_digest(told);
    }

    const DigestText& m_digest;
    std::string m_setUp;
    std::map<std::string, std::string> m_acts; // by time
};

} // namespace

Json proofOf(const Json& piano, const DigestText& digest) {
    Proof proof(digest);
    proof.read(piano);
    Json out = {{"set_up", proof.setUp()}, {"acts", Json::array()}};
    for (const auto& [at, chain] : proof.acts())
        out["acts"].push_back({{"at", at}, {"digest", chain}});
    return out;
}

std::string unproven(const Json& piano, const Json& said, const DigestText& digest) {
    Proof found(digest);
    found.read(piano);
    const auto textOf = [](const Json& object, const char* name) {
        const auto at = object.is_object() ? object.find(name) : object.end();
        return object.is_object() && at != object.end() && at->is_string() ? at->get<std::string>() : std::string();
    };
    if (textOf(said, "set_up") != found.setUp()) return "set_up";
    std::map<std::string, std::string> acts;
    if (said.contains("acts") && said["acts"].is_array())
        for (const Json& act : said["acts"])
            acts[textOf(act, "at")] = textOf(act, "digest");
    const auto other = std::mismatch(acts.begin(), acts.end(), found.acts().begin(), found.acts().end());
    const bool bothEnd = other.first == acts.end() && other.second == found.acts().end();
    if (bothEnd) return {};
    if (other.first == acts.end()) return other.second->first;
    if (other.second == found.acts().end()) return other.first->first;
    return std::min(other.first->first, other.second->first);
}

} // namespace hammerline::sheet
