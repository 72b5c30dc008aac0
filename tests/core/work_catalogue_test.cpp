// The order of work as a graph of steps, for each kind of action (common practice, no source).
#include "core/work/work.h"

#include <catch2/catch.hpp>

#include <algorithm>
#include <set>

using namespace hammerline;

namespace {

struct KindOfAction {
    const char* name;
    Piano piano;
};

std::vector<KindOfAction> kindsOfAction() {
    Piano upright = *makePiano(ActionKind::upright), old = upright, over = upright;
    upright.butt = Butt::cordLoop;
    old.butt = Butt::brassRail;
    old.player = PlayerStack::above;
    over.damping = Damping::overdamper;
    return {{"upright", upright},
            {"old upright with brass rail and player", old},
            {"drop action", *makePiano(ActionKind::drop)},
            {"overdamper", over},
            {"grand", *makePiano(ActionKind::grand)}};
}

bool holds(const std::vector<const StepOfWork*>& steps, std::string_view id) {
    return std::any_of(steps.begin(), steps.end(), [&](const StepOfWork* step) { return step->id == id; });
}

} // namespace

TEST_CASE("no need of a step runs in a circle, on no kind of action") {
    for (const auto& [name, piano] : kindsOfAction()) {
        INFO(name);
        const Piano& of = piano;
        const auto all = allSteps();
        const auto here = std::count_if(all.begin(), all.end(), [&](const auto& step) { return offered(step, of); });
        const auto sorted = stepsOf(piano);
        REQUIRE(sorted.size() == static_cast<std::size_t>(here));
        std::set<std::string_view> before;
        for (const StepOfWork* step : sorted) {
            INFO(step->id);
            for (const auto need : needsOf(*step, piano))
                CHECK(before.count(need) == 1);
            CHECK(before.insert(step->id).second);
        }
    }
}

TEST_CASE("every word of a step leads somewhere") {
    const auto accesses = workAccessKeys();
    CHECK(allSteps().size() == 88);
    std::set<std::string_view> ids;
    for (const StepOfWork& step : allSteps()) {
        INFO(step.id);
        CHECK(ids.insert(step.id).second);
        for (const auto need : step.needs)
            CHECK(findStep(need) != nullptr);
        CHECK_FALSE((step.access.empty() && step.accessOfGrand.empty()));
        for (const auto& list : {step.access, step.accessOfGrand})
            for (const auto access : list) {
                INFO(access);
                CHECK(std::find(accesses.begin(), accesses.end(), access) != accesses.end());
            }
        CHECK(step.minutes[0] <= step.minutes[1]);
    }
}

TEST_CASE("every operation that an action has is a step's") {
    for (const auto& [name, piano] : kindsOfAction())
        for (const Operation& operation : operations()) {
            if (!applies(operation.id, piano)) continue;
            INFO(name << ": " << key(operation.id));
            const auto steps = stepsOf(piano);
            CHECK(std::any_of(steps.begin(), steps.end(), [&](const StepOfWork* step) {
                const auto& of = step->operations;
                return std::find(of.begin(), of.end(), key(operation.id)) != of.end();
            }));
        }
}

TEST_CASE("each kind of action has its own steps and none of another's") {
    const auto kinds = kindsOfAction();
    const auto upright = stepsOf(kinds[0].piano), old = stepsOf(kinds[1].piano), over = stepsOf(kinds[3].piano),
               grand = stepsOf(kinds[4].piano);
    CHECK(holds(upright, "travel-hammers"));
    CHECK_FALSE(holds(upright, "mend-brass-rail"));
    CHECK_FALSE(holds(upright, "take-stack-out"));
    CHECK(holds(old, "mend-brass-rail"));
    CHECK_FALSE(holds(old, "travel-hammers"));
    CHECK(holds(old, "set-player-clearance"));
    CHECK(holds(over, "time-overdampers"));
    CHECK_FALSE(holds(over, "line-dampers"));
    CHECK_FALSE(holds(over, "time-dampers-by-key"));
    CHECK(holds(grand, "bed-key-frame"));
    CHECK_FALSE(holds(grand, "set-rest-rail"));
    CHECK_FALSE(holds(grand, "take-action-out"));
    for (const StepOfWork* step : grand)
        CHECK_FALSE(accessOf(*step, kinds[4].piano).empty());
}

TEST_CASE("hammers are filed before everything that filing disturbs, on every kind that files") {
    // list posts and handbooks agree: filing makes blow, let-off and checking larger, so it comes before regulating
    const StepOfWork& filing = *findStep("file-hammers");
    for (const auto& [name, piano] : kindsOfAction()) {
        INFO(name);
        const std::string_view setsBlow = piano.vertical() ? "set-rest-rail" : "set-grand-blow";
        const std::string_view setsLetOff = piano.vertical() ? "set-let-off" : "set-grand-let-off";
        const std::string_view setsChecks = piano.vertical() ? "set-checks" : "set-grand-checks";
        for (const std::string_view later :
             {setsBlow, setsLetOff, setsChecks, std::string_view("fit-hammers-to-strings"),
              std::string_view("square-hammers"), std::string_view("trial-notes")}) {
            INFO(later);
            std::set<std::string_view> before;
            std::vector<std::string_view> open = {later};
            while (!open.empty()) {
                const std::string_view id = open.back();
                open.pop_back();
                for (const std::string_view need : needsOf(*findStep(id), piano))
                    if (before.insert(need).second) open.push_back(need);
            }
            CHECK(before.contains(filing.id));
        }
    }
}
