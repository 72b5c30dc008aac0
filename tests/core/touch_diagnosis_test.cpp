// Friction or weight: weighings that technicians' lists and letters published, the year of each from memory.
#include "core/judge/touch_diagnosis.h"
#include "tests/core/survey_bench.h"

using namespace hammerline;

namespace {

NoteTouch weighed(double down, double up, ActionKind kind = ActionKind::upright, bool old = false) {
    return touchOf({40}, down, up, *touchWeight(down, up), survey_bench::pianoOf(kind), old);
}
using Says = std::vector<TouchSays>;
using enum TouchSays;

} // namespace

TEST_CASE("what is farther outside is named first") {
    const NoteTouch rough = weighed(80, 15);
    CHECK(rough.touch.friction == Approx(32.5));
    CHECK(rough.touch.mean == Approx(47.5));
    CHECK(rough.says == Says{friction});
    const NoteTouch both = weighed(80, 45); // friction 1.3 half widths from its aim, weight 3.1
    CHECK(both.frictionOff == Approx(1.3));
    CHECK(both.weightOff == Approx(3.07).margin(0.01));
    CHECK(both.says == Says{weight, friction});
    CHECK(weighed(52, 28).says == Says{right});                            // list post, 2003: an ordinary note
    CHECK(weighed(70, 20).says == Says{friction});                         // and after freeing its centres:
    CHECK(weighed(48, 30).says == Says{right});                            // a letter on uprights
    CHECK(weighed(60, 5).says == Says{hidden});                            // 27.5 g under 32.5 g
    CHECK(weighed(40, 32, ActionKind::grand).says == Says{loose});         // 4 g
    CHECK(weighed(56, 34, ActionKind::grand).says == Says{weight});        // 45 g, a grand's end at 42
    CHECK(weighed(56, 34).says == Says{right});                            // and not an upright's
    CHECK(weighed(59, 23, ActionKind::upright, true).says == Says{right}); // 18 g in an old action
    CHECK(weighed(59, 23).says == Says{friction});
    CHECK(weighed(40, 20).says == Says{light});
}

TEST_CASE("only notes with both weights are told of, and none whose up weight is not below") {
    const Piano piano = survey_bench::pianoOf(ActionKind::upright);
    Pass pass;
    const auto read = [&](int note, DimensionId id, double grams) {
        Reading reading;
        reading.count = fromTrade(grams, row(id).kind);
        pass.cells[{NoteNumber{note}, id}].trials = {reading};
    };
    read(10, dimension::downWeight, 80);
    read(10, dimension::upWeight, 15);
    read(11, dimension::downWeight, 52);
    read(12, dimension::downWeight, 30);
    read(12, dimension::upWeight, 31);
    const auto all = touchesOf(pass, piano, false);
    REQUIRE(all.size() == 1);
    CHECK(all[0].note == NoteNumber{10});
    CHECK(key(all[0].says.front()) == "friction");
}
