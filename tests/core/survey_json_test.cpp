#include "core/sheet/sheet.h"
#include "tests/core/survey_bench.h"

#include <nlohmann/json.hpp>

using namespace hammerline;
using namespace hammerline::survey_bench;

namespace {
nlohmann::json written(const Piano& piano, const std::vector<Finding>& findings) {
    PianoRecord record;
    record.piano = piano;
    record.findings = findings;
    return nlohmann::json::parse(surveyJson(record));
}
} // namespace

TEST_CASE("the survey's JSON groups notes that say the same, and says what blocks") {
    const Piano piano = playerUpright();
    std::vector<Finding> findings;
    add(findings, "12,23,24,40 butt-plate broken", piano);
    state(findings, "1-85 action-bolts sound", piano);
    state(findings, "12 butt-plate mended", piano);
    const auto json = written(piano, findings);
    REQUIRE(json["findings"].size() == 3);
    const auto& plates = json["findings"][0];
    CHECK(plates["notes"] == nlohmann::json({23, 24, 40}));
    CHECK(plates["part"] == "butt-plate");
    CHECK(plates["fault"] == "broken");
    CHECK(plates["remedy"] == "new-plate");
    CHECK(plates["state"] == "to-do");
    CHECK(plates["blocks"] == true);
    CHECK(json["findings"][1]["notes"].size() == 85);
    CHECK(json["findings"][1]["blocks"] == false);
    CHECK(json["blocked"] == nlohmann::json({23, 24, 40}));
    REQUIRE(json["parts"].size() == 2);
    CHECK(json["parts"][0]["part"] == "butt-plate");
    CHECK(json["parts"][0]["needed"] == 3);
    CHECK(json["parts"][0]["spare"] == 1);
    CHECK(json["parts"][0]["quantity"] == 4);
    CHECK(json["parts"][0]["unit"] == "piece");
    CHECK(json["parts"][0]["whole_set"] == false);
    CHECK(json["minutes"] == 18);
    CHECK(json["minutes_done"] == 6);
}

TEST_CASE("an empty survey is empty lists, not nothing") {
    const auto json = written(pianoOf(ActionKind::grand), {});
    CHECK(json["findings"].empty());
    CHECK(json["parts"].empty());
    CHECK(json["minutes"] == 0);
    CHECK_FALSE(json["ask_before_plan"].empty());
}
