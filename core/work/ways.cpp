#include "core/work/ways.h"

#include <algorithm>

namespace hammerline::work {
namespace {

/// One way: the step that opens it, the one that closes it, and which accesses lie behind it or need it closed.
struct Way {
    std::string_view opens, closes, kinds;
    std::vector<std::string_view> behind, shut;
    std::vector<std::string_view> before; // what keeps piano and parts safe, once
};

/// In the order in which one leads to the next. A piano that stands safe comes before anything heavy leaves it, and
/// rotten straps are looked at before the action is moved (common practice, no source).
const std::vector<Way>& waysOfAll() {
    static const std::vector<Way> ways = {
        {.opens = "take-stack-out",
         .closes = "put-stack-in",
         .kinds = "P",
         .behind = {"in", "rail-off", "tilted", "one-key", "keys-off", "out", "stack-out"},
         .shut = {"stack-in", "closed"},
         .before = {"stand-it-safe", "open-case"}},
        {.opens = "take-action-out",
         .closes = "seat-action",
         .kinds = "UBDO",
         .behind = {"out"},
         .shut = {"in", "rail-off", "tilted", "one-key", "stack-in", "closed"},
         .before = {"stand-it-safe", "open-case", "prop-the-wippens"}},
        {.opens = "draw-grand-action",
         .closes = "seat-grand-action",
         .kinds = "G",
         .behind = {"g-drawn", "g-stack-off", "g-keys-off", "g-belly", "keys-off"},
         .shut = {"g-in", "closed"},
         .before = {"stand-it-safe"}},
        {.opens = "lift-grand-stack",
         .closes = "seat-grand-action",
         .kinds = "G",
         .behind = {"g-stack-off", "g-keys-off", "keys-off"},
         .shut = {},
         .before = {}},
        {.opens = "take-keys-off",
         .closes = "space-keys",
         .kinds = "UBDOG",
         .behind = {"keys-off", "g-keys-off"},
         .shut = {},
         .before = {}},
    };
    return ways;
}

bool holds(const std::vector<std::string_view>& list, std::string_view one) {
    return std::find(list.begin(), list.end(), one) != list.end();
}

/// Found or read: what asks for a way by itself. A step that is only ticked off says where it is done, and that is all.
bool byEvidence(const StepNow& now) {
    return now.asks == StepAsks::mend || now.asks == StepAsks::turn;
}

class Opener {
public:
    Opener(std::vector<StepNow>& steps, std::span<const StepNow> held, const WaysKnown& known)
        : m_steps(steps), m_held(held), m_known(known) {
        const auto open = std::find_if(held.begin(), held.end(), [](const StepNow& each) { return each.openNow(); });
        m_next = open == held.end() ? nullptr : &*open;
    }

    void all() {
        for (const Way& way : waysOfAll()) {
            StepNow* opens = at(way.opens);
            if (!opens) continue;
            const bool open = saidAt(way.opens) > saidAt(way.closes);
            if (m_next && byEvidence(*m_next) && behind(way, *m_next) && !open)
                openIt(way, *opens);
            else if (open && mayClose(way))
                reopen(at(way.closes));
            else if (!open && !m_known.whole && opens->state != StepState::done)
                settle(*opens, anyBehind(way) ? "comes-later" : "no-work");
        }
    }

private:
    StepNow* at(std::string_view id) {
        for (StepNow& each : m_steps)
            if (each.step->id == id) return &each;
        return nullptr;
    }

    std::int64_t saidAt(std::string_view id) const {
        const auto said = m_known.saidAt.find(id);
        return said == m_known.saidAt.end() ? 0 : said->second;
    }

    std::string_view accessOfIts(const StepNow& now) const {
        return accessFor(*now.step, m_known.piano, now.notes.size());
    }
    bool behind(const Way& way, const StepNow& now) const {
        return now.step->id != way.opens && holds(way.behind, accessOfIts(now));
    }
    bool anyBehind(const Way& way) const {
        return std::any_of(m_held.begin(), m_held.end(), [&](const StepNow& each) {
            return !each.settled() && byEvidence(each) && behind(way, each);
        });
    }

    /// The next step needs it closed, or nothing more is to be done behind it. What closes it for the first time has
    /// its own place in the order.
    bool mayClose(const Way& way) {
        const StepNow* closes = at(way.closes);
        if (!closes || way.shut.empty() || !closes->settled()) return false;
        if (!m_next) return !anyBehind(way);
        return m_next->step->id != way.closes && holds(way.shut, accessOfIts(*m_next));
    }

    void reopen(StepNow* step) {
        if (!step) return;
        step->state = StepState::open;
        step->reason = {};
        step->asks = StepAsks::tick;
        const bool once = step->step->per != PartUnit::note;
        if (once) step->minutes = step->step->minutes[0];
    }

    void openIt(const Way& way, StepNow& opens) {
        reopen(&opens);
        for (const std::string_view id : way.before)
            if (StepNow* step = at(id); step && step->settled() && step->state != StepState::done) reopen(step);
    }

    static void settle(StepNow& now, std::string_view reason) {
        now.state = StepState::notHere;
        now.reason = reason;
        now.notes.clear();
        now.minutes = 0;
        now.dimension.reset();
        now.asks = StepAsks::tick;
    }

    std::vector<StepNow>& m_steps;
    std::span<const StepNow> m_held;
    const WaysKnown& m_known;
    const StepNow* m_next = nullptr;
};

} // namespace

void openTheWays(std::vector<StepNow>& steps, std::span<const StepNow> held, const WaysKnown& known) {
    Opener(steps, held, known).all();
}

} // namespace hammerline::work
