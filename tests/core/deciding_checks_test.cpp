// What is asked before a cause is taken on can be answered on this action.
#include "core/causes/rule.h"
#include "tests/core/scene.h"

#include <catch2/catch.hpp>

using namespace hammerline;

TEST_CASE("no part is asked about that the action does not have") {
    Piano over = *makePiano(ActionKind::upright);
    over.damping = Damping::overdamper;
    int asked = 0, left = 0;
    for (const Piano& piano :
         {*makePiano(ActionKind::upright), over, *makePiano(ActionKind::drop), *makePiano(ActionKind::grand)}) {
        const scene::Scene scene(piano, defaultSheet(piano.action));
        for (const CauseRule& rule : causeRules()) {
            const auto weighed = weigh(0.6, rule.checks, scene.record, scene.record.passes.back());
            REQUIRE(weighed);
            for (const DecidingCheck& check : rule.checks) {
                INFO(rule.key << " " << check.id);
                const bool open = std::ranges::find(weighed->open, check.id) != weighed->open.end();
                const Part* part = findPart(check.part);
                if (part) CHECK(open == fitted(*part, piano));
                if (!part) CHECK(open);
                ++(open ? asked : left);
            }
        }
    }
    CHECK(asked > 60);
    CHECK(left > 0); // an overdamper has no damper levers, a grand no butts
}
