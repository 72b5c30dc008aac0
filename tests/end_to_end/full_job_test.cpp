// The whole job with findings, answers, lines of the plan and a second pass, walked by what the program says is next,
// on each of five kinds of action: nothing is told twice, nothing against what was just done, and it comes to its end.
#include "bench.h"
#include <iomanip>
#include <regex>

using namespace hammerline::test;

namespace {

struct Job {
    std::string name;
    std::string sheet;                                // of the zones
    std::vector<std::string> setUp;                   //
    std::vector<std::string> found;                   // survey --add
    std::map<std::string, std::map<int, double>> off; // dimension -> note -> mm from the aim, as found
    std::vector<std::string> secondLook;              // dimensions
    int notes = 88;
};

std::map<int, double> allOf(int first, int last, double mm) {
    std::map<int, double> out;
    for (int n = first; n <= last; ++n)
        out[n] = mm;
    return out;
}

const std::vector<std::string> kVerticalLook = {"lost-motion", "blow",         "let-off",    "key-dip",
                                                "checking",    "damper-start", "key-height", "sharp-height"};
const std::vector<std::string> kOverdamperLook = {"lost-motion", "blow",       "let-off",     "key-dip",
                                                  "checking",    "key-height", "sharp-height"};
const std::vector<std::string> kGrandLook = {"blow",     "let-off",      "drop",       "key-dip",
                                             "checking", "damper-start", "key-height", "sharp-height"};

std::vector<Job> jobs() {
    const std::map<std::string, std::map<int, double>> vertical = {{"let-off", allOf(20, 31, 1.6)},
                                                                   {"key-height", {{33, -0.7}, {40, -0.7}, {52, -0.7}}},
                                                                   {"key-dip", {{12, -1.1}, {25, -1.1}, {59, -1.1}}},
                                                                   {"checking", {{8, 6}, {47, 6}}}};
    std::map<std::string, std::map<int, double>> loose = vertical, grand = vertical;
    loose["lost-motion"] = allOf(1, 29, 0.7);
    grand["blow"] = {{30, 2.6}, {31, 2.6}, {70, 2.6}};
    grand["drop"] = {{10, 2}, {11, 2}};
    return {
        {.name = "upright with cord loops",
         .sheet = "upright",
         .setUp = {"--action", "upright", "--attribute", "butt=cord-loop"},
         .found = {"5,6 butt-spring broken", "all bridle-strap rotted replace-set", "44 let-off-screw seized",
                   "9 front-bushing tight ease"},
         .off = loose,
         .secondLook = kVerticalLook},
        {.name = "old upright with brass rail and player",
         .sheet = "old-upright",
         .setUp = {"--action", "upright", "--player", "--attribute", "butt=brass-rail", "--notes", "85", "--spec",
                   "old-upright"},
         .found = {"12,23 butt-plate broken", "all bridle-strap rotted replace-set",
                   "7 hammer-head deep-grooves reshape"},
         .off = loose,
         .secondLook = kVerticalLook,
         .notes = 85},
        {.name = "drop action",
         .sheet = "drop",
         .setUp = {"--action", "drop"},
         .found = {"30 jack-spring broken", "41 key-top chipped"},
         .off = loose,
         .secondLook = kVerticalLook},
        {.name = "overdamper",
         .sheet = "upright",
         .setUp = {"--action", "upright", "--attribute", "damping=overdamper"},
         .found = {"30 hammer-flange tight", "20 hammer-shank crack"},
         .off = loose,
         .secondLook = kOverdamperLook},
        {.name = "grand",
         .sheet = "grand",
         .setUp = {"--action", "grand"},
         .found = {"30 knuckle flat", "all hammer-head deep-grooves reshape", "12 repetition-lever loose-pin"},
         .off = grand,
         .secondLook = kGrandLook},
    };
}

std::string typedMm(double mm) {
    std::ostringstream text;
    text << std::fixed << std::setprecision(2) << mm;
    return text.str();
}

/// The operations of each step of the work, as far as the plan's lines belong to one.
const std::map<std::string, std::set<std::string>> kLines = {
    {"renew-key-cloths", {"back-rail-shim"}},
    {"set-rest-rail", {"rest-rail-shim", "rail-cloth-shim"}},
    {"level-naturals", {"balance-punching", "balance-rail-shim"}},
    {"level-sharps", {"balance-punching"}},
    {"take-up-lost-motion", {"capstan-turn"}},
    {"set-grand-blow", {"capstan-turn"}},
    {"set-let-off", {"let-off-turn"}},
    {"set-grand-let-off", {"let-off-turn"}},
    {"set-drop", {"drop-turn"}},
    {"set-dip-naturals", {"front-punching"}},
    {"set-dip-sharps", {"front-punching"}},
    {"set-checks", {"check-bend"}},
    {"set-grand-checks", {"check-bend"}},
    {"line-dampers", {"damper-wire"}},
    {"time-dampers-by-key", {"spoon-bend"}},
    {"time-overdampers", {"overdamper-button", "damper-wire"}},
    {"seat-and-line-grand-dampers", {"lever-timing", "damper-wire"}},
    {"time-grand-dampers-by-key", {"lever-timing"}},
    {"set-damper-pedal", {"pedal-rod"}},
    {"grand-pedals", {"pedal-rod"}},
    {"set-soft-pedal", {"half-blow-rod"}},
    {"set-bridle-wires", {"bridle-bend"}},
    {"set-player-clearance", {"player-screw"}},
};
/// What opens and closes a way may come again; everything else is told once.
const std::set<std::string> kWays = {"take-stack-out",    "put-stack-in",     "take-action-out",   "seat-action",
                                     "draw-grand-action", "lift-grand-stack", "seat-grand-action", "take-keys-off"};

/// A technician who does what is said next: reads, mends, turns to the aim, answers that all is sound.
class Technician {
public:
    explicit Technician(const Job& job) : m_job(job), m_off(job.off), m_bench(job.setUp) {
        m_zones = json::parse(readAll(std::string(HAMMERLINE_SOURCE_DIR) + "/resources/spec/" + job.sheet + ".json"))
                      .at("zones");
        for (const std::string& each : job.found)
            m_bench.found(each);
    }

    json next() const { return m_bench.answer("next"); }
    const Bench& bench() const { return m_bench; }

    /// Does what is next; false at the end.
    bool goOn() {
        const json now = next();
        const std::string kind = now.at("kind"), said = now.at("sentence");
        INFO(said);
        REQUIRE_FALSE(said.empty());
        if (kind == "done") return false;
        toldOnce(now);
        if (kind == "step")
            step(now);
        else if (kind == "look")
            answer(now.at("question"));
        else if (kind == "wait")
            for (const json& each : now.at("waits"))
                m_bench.done("survey", {"--set", "in-hand." + each.get<std::string>() + "=yes"});
        else
            readAt(now); // measure-again, decide
        return true;
    }

private:
    /// Never the same twice in a row, and outside the ways never the same at all.
    void toldOnce(json now) {
        now.erase("sentence");
        const std::string same = now.dump();
        CHECK(same != m_last);
        m_last = same;
        const bool way = now.at("kind") == "step" && kWays.contains(now.at("step"));
        if (!way) CHECK(++m_told[same] <= 1);
    }

    void step(const json& now) {
        const std::string id = now.at("step"), asks = now.at("asks");
        const bool reads = asks == "read" || asks == "read-again";
        if (id == "read-as-found") readSamples();
        if (asks == "turn" || asks == "trial") return turn(id, now);
        if (reads && id != "read-as-found") return readAt(now);
        m_bench.done("work", {"--step", id, "--done", "all"});
    }

    /// Lines of the plan at these notes, set to the aim: from then on they read it.
    void turn(const std::string& id, const json& now) {
        const json plan = m_bench.plan();
        const std::set<int> notes = now.at("notes").get<std::set<int>>();
        const bool atOnce = now.at("asks") == "turn" && notes.size() > 4; // else line by line
        int ticked = 0;
        for (const json& line : plan.at("steps")) {
            const std::string operation = line.at("operation");
            const auto at = line.at("notes").get<std::set<int>>();
            const bool here =
                notes.empty() || std::any_of(at.begin(), at.end(), [&](int n) { return notes.contains(n); });
            const bool its = now.at("asks") == "trial" ? operation == plan.at("trials").at(0).at("operation")
                                                       : kLines.at(id).contains(operation);
            if (!here || !its) continue;
            if (!atOnce) m_bench.done("tick", {"--step", line.at("id"), "--aim"});
            for (auto& [dimension, off] : m_off)
                for (const int note : at)
                    if (servesIt(operation, dimension)) off.erase(note);
            ++ticked;
        }
        CHECK(ticked > 0); // what is asked for can be carried out
        if (atOnce) m_bench.done("work", {"--step", id, "--done", "all"});
    }

    bool servesIt(const std::string& operation, const std::string& dimension) const {
        static const std::map<std::string, std::string> serves = {
            {"let-off-turn", "let-off"},   {"balance-punching", "key-height"}, {"balance-rail-shim", "key-height"},
            {"front-punching", "key-dip"}, {"check-bend", "checking"},         {"drop-turn", "drop"},
            {"rest-rail-shim", "blow"},    {"rail-cloth-shim", "blow"},        {"capstan-turn", "lost-motion"}};
        const bool grandsBlow = operation == "capstan-turn" && dimension == "blow" && m_job.sheet == "grand";
        return grandsBlow || (serves.contains(operation) && serves.at(operation) == dimension);
    }

    void answer(const std::string& question) {
        const Answer plan = program({"plan", m_bench.path()});
        std::smatch found;
        static const std::regex how("survey (--state|--look) \"([^\"]+)\"");
        INFO(question << ": " << plan.err);
        REQUIRE(std::regex_search(plan.err, found, how));
        m_bench.done("survey", {found[1], found[2]});
    }

    void readAt(const json& now) {
        const auto notes = now.at("notes").get<std::vector<int>>();
        if (now.at("asks") != "read-again" || !now.at("dimension").is_null())
            return m_bench.read(readings({now.at("dimension")}, notes), true);
        m_bench.done("pass", {"--label", "second look"});
        m_bench.read(readings(m_job.secondLook, notes), true);
    }
    void readSamples() {
        std::vector<int> notes = {3, 5, 14, 28, 38, 51, 56, 62, 68, 73, 79};
        m_bench.read(readings({"key-height", "key-dip", "blow", "let-off", "checking"}, notes), true);
    }

    Readings readings(const std::vector<std::string>& dimensions, const std::vector<int>& notes) const {
        Readings out;
        for (const int note : notes)
            for (const std::string& dimension : dimensions)
                if (dimension == "strap")
                    out[note][dimension] = "ok";
                else if (const auto mm = valueOf(dimension, note))
                    out[note][dimension] = typedMm(*mm);
        return out;
    }
    std::optional<double> valueOf(const std::string& dimension, int note) const {
        std::optional<double> aim;
        for (const json& zone : m_zones)
            if (zone.at("dimension") == dimension && holdsAt(zone, note)) aim = zone.at("nominal");
        const auto off = m_off.find(dimension);
        if (aim && off != m_off.end() && off->second.contains(note)) *aim += off->second.at(note);
        return aim;
    }
    /// Sections end at A#2, C5 and F#6 (notes 26, 52, 70 from A0).
    static bool holdsAt(const json& zone, int note) {
        const std::string keys = zone.value("keys", ""), place = zone.value("place", "");
        const char here = note <= 26 ? 'b' : note <= 52 ? 't' : note <= 70 ? 'm' : 'h';
        const bool ofColour = keys.empty() || (keys == "natural") == isNatural(note);
        return ofColour && (place.empty() || place.find(here) != std::string::npos);
    }

    const Job& m_job;
    std::map<std::string, std::map<int, double>> m_off;
    Bench m_bench;
    json m_zones;
    std::string m_last;
    std::map<std::string, int> m_told;
};

} // namespace

TEST_CASE("a whole job with findings, answers, lines and a second pass comes to its end, on each kind") {
    for (const Job& job : jobs()) {
        INFO(job.name);
        Technician technician(job);
        int acts = 0;
        while (technician.goOn())
            REQUIRE(++acts < 200);
        CHECK(acts > 60); // it did not stop early
        const json work = technician.bench().answer("work");
        CHECK(work.at("minutes_left") == 0);
        for (const json& each : work.at("steps")) {
            INFO(each.at("id"));
            CHECK((each.at("state") == "done" || each.at("state") == "not-here"));
        }
        CHECK(technician.bench().survey().at("blocked").empty());
        const std::string sheet = technician.bench().sheet("work");
        CHECK(sheet.find("Hand it over") != std::string::npos);
    }
}
