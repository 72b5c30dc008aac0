// The whole job through the built program: survey, parts, numbers, what blocks, the player, the record (scenarios S4
// and S6; situations C1, C10).
#include <catch2/catch.hpp>

#include "program.h"
#include <algorithm>
#include <set>

using namespace hammerline::test;
using nlohmann::json;

namespace {

json surveyed(const Folder& folder, std::vector<std::string> more, int status) {
    std::vector<std::string> words = {"survey", folder / "b.hammerline", "--json"};
    words.insert(words.end(), more.begin(), more.end());
    const Answer answer = program(words);
    INFO(answer.out + answer.err);
    REQUIRE(answer.status == status);
    return answer.json();
}

const json& lineOf(const json& lines, const std::string& key, const std::string& value) {
    const auto found = std::find_if(lines.begin(), lines.end(), [&](const json& l) { return l.at(key) == value; });
    INFO(value);
    REQUIRE(found != lines.end());
    return *found;
}

std::string printed(const Folder& folder, const std::string& sheet) {
    const std::string pdf = folder / (sheet + ".pdf");
    const Answer answer = program({"print", folder / "b.hammerline", sheet, "--out", pdf});
    INFO(answer.err);
    REQUIRE(answer.status == 0);
    return runWords({"pdftotext", "-layout", pdf, "-"}).out;
}

bool holds(const std::string& text, const std::string& part) {
    return text.find(part) != std::string::npos;
}

void playerUpright(const Folder& folder) {
    REQUIRE(
        program({"new", folder / "b.hammerline", "--piano", "P", "--action", "upright", "--notes", "85", "--lowest",
                 "A0", "--last-damper", "66", "--player", "--attribute", "butt=brass-rail", "--spec", "old-upright"})
            .status == 0);
}

void write(const std::string& path, const std::string& text) {
    std::ofstream(path, std::ios::binary) << text;
}

} // namespace

TEST_CASE("scenario S6: a player upright of 85 notes, from the survey to the player") {
    const Folder folder;
    playerUpright(folder);
    const json survey = surveyed(folder,
                                 {"--add", "1-85 bridle-strap rotted replace-set", "--add",
                                  "12,23,24,40 butt-plate broken", "--add", "1-10 damper-felt-clip hard", "--add",
                                  "11-28 damper-felt-wedge hard", "--add", "29-66 damper-felt-flat hard", "--add",
                                  "all front-felt moth", "--add", "all front-bushing hard rebush-set", "--add",
                                  "all balance-bushing hard rebush-set", "--add", "all moth-rust green-pins repin-set"},
                                 1);
    const json& parts = survey.at("parts");
    CHECK(lineOf(parts, "part", "bridle-strap").at("quantity") == 90);
    CHECK(lineOf(parts, "part", "butt-plate").at("quantity") == 5);
    CHECK(lineOf(parts, "part", "butt-plate-screw").at("quantity") == 5);
    CHECK(lineOf(parts, "size", "clip").at("needed") == 10);
    CHECK(lineOf(parts, "size", "bichord").at("needed") == 18);
    CHECK(lineOf(parts, "size", "flat").at("needed") == 38);
    CHECK(lineOf(parts, "part", "front-felt").at("size") == "50 + 35");
    CHECK(lineOf(parts, "part", "front-bushing").at("needed").get<int>() +
              lineOf(parts, "part", "balance-bushing").at("needed").get<int>() ==
          340);
    CHECK(lineOf(parts, "part", "centre-pin").at("needed") == 321);
    CHECK(lineOf(parts, "part", "centre-bushing").at("needed") == 642);
    CHECK(survey.at("blocked").size() == 85);
    const json& steps = survey.at("order").at("steps");
    CHECK(lineOf(steps, "step", "action").at("state") == "waits"); // straps, plates, pins
    CHECK(steps.back().at("step") == "record");
    CHECK(steps.at(steps.size() - 2).at("step") == "player");

    // Every sheet can be printed before anything was measured.
    CHECK(holds(printed(folder, "survey"), "The whole job, in this order"));
    CHECK(holds(printed(folder, "parts"), "Centre pins"));
    CHECK(holds(printed(folder, "labels"), "K 1 to K"));
    CHECK(holds(printed(folder, "record"), "Record for the owner"));
    REQUIRE(program({"print", folder / "b.hammerline", "parts", "--out", folder / "order.csv"}).status == 0);
    const std::string order = readAll(folder / "order.csv");
    CHECK(holds(order, "Bridle straps;;85;5;90;piece;85;85;1-85;"));
    CHECK(holds(order, "Centre pins;;321;17;338;piece;"));

    // The four notes with a broken plate stay out of the plan.
    surveyed(folder,
             {"--state", "all bridle-strap mended", "--state", "all front-felt mended", "--state",
              "all front-bushing mended", "--state", "all balance-bushing mended", "--state", "all moth-rust mended"},
             1);
    std::string csv = "note;let-off\r\n";
    for (int n = 1; n <= 85; ++n)
        csv += std::to_string(n) + (n <= 44 ? ";5.5\r\n" : ";3.0\r\n");
    write(folder / "one.csv", csv);
    REQUIRE(program({"import", folder / "b.hammerline", folder / "one.csv"}).status == 0);
    const json plan = program({"plan", folder / "b.hammerline", "--json"}).json();
    std::set<int> blocked;
    for (const json& each : plan.at("blocked")) {
        blocked.insert(each.at("note").get<int>());
        CHECK(each.at("finding").at("part") == "butt-plate");
    }
    CHECK(blocked == std::set<int>{12, 23, 24, 40});
    for (const json& step : plan.at("steps"))
        if (step.at("note").is_number()) CHECK_FALSE(blocked.contains(step.at("note").get<int>()));

    // The player, after the action: clearance as a reading of its own, the stack part of the pass.
    surveyed(folder, {"--state", "12,23,24,40 butt-plate mended"}, 1);
    REQUIRE(program({"pass", folder / "b.hammerline", "--label", "stack in", "--stack", "in"}).status == 0);
    csv = "note;player clearance;lost motion\r\n";
    for (int n = 1; n <= 85; ++n) {
        const bool held = n >= 30 && n <= 38, far = n >= 60 && n <= 62;
        csv += std::to_string(n) + (held ? ";0.3" : far ? ";2.0" : ";1.2") + (held ? ";0.0\r\n" : ";0.3\r\n");
    }
    write(folder / "two.csv", csv);
    program({"import", folder / "b.hammerline", folder / "two.csv", "--take-doubtful"});
    const json check = program({"check", folder / "b.hammerline", "--json"}).json();
    std::set<int> low, high;
    for (const json& row : check.at("ranked"))
        if (row.at("dimension") == "player-clearance") {
            if (row.at("verdict") == "low") low.insert(row.at("note").get<int>());
            if (row.at("verdict") == "high") high.insert(row.at("note").get<int>());
        }
    CHECK(low == std::set<int>{30, 31, 32, 33, 34, 35, 36, 37, 38});
    CHECK(high == std::set<int>{60, 61, 62});
    const json held = lineOf(check.at("causes"), "cause", "finger-holds-wippen");
    CHECK(held.at("notes") == json({30, 31, 32, 33, 34, 35, 36, 37, 38}));
    CHECK(held.at("remedy") == "read-stack-out");
    // Missing lost motion there is no ground to turn a capstan; the fingers are set after all else.
    const json player = program({"plan", folder / "b.hammerline", "--json"}).json();
    CHECK(player.at("steps").back().at("operation") == "player-screw");
    CHECK(player.at("steps").back().at("access") == "stack-in"); // the sheet's heading of its own
    for (const json& step : player.at("steps"))
        if (step.at("operation") == "capstan-turn")
            CHECK_FALSE((step.at("note").get<int>() >= 30 && step.at("note").get<int>() <= 38));
}

TEST_CASE("scenario S4: screws are tried first, and what does not turn is left alone") {
    const Folder folder;
    const std::string book = folder / "b.hammerline";
    REQUIRE(program({"new", book, "--piano", "P", "--action", "upright"}).status == 0);
    std::string csv = "note;let-off\r\n";
    for (int n = 1; n <= 88; ++n)
        csv += std::to_string(n) + ";5.5\r\n";
    write(folder / "one.csv", csv);
    program({"import", book, folder / "one.csv"});
    const Answer before = program({"plan", book});
    CHECK(holds(before.err, "Try three let-off screws"));
    CHECK(holds(before.err, "let-off-screw sound")); // how it is answered
    const json unanswered = program({"plan", book, "--json"}).json();
    const json& asked = unanswered.at("ask_first");
    for (const auto* each : {"try-let-off-screws", "action-bolts", "let-off-rail", "capstan"})
        CHECK(std::find(asked.begin(), asked.end(), each) != asked.end());

    surveyed(folder,
             {"--state", "1-3,27-29,53,54,72,73 let-off-screw sound", "--add", "44 let-off-screw seized", "--add",
              "71 let-off-screw eye-broken"},
             1);
    surveyed(folder, {"--state", "55 let-off-screw sound"}, 1);
    const Answer plan = program({"plan", book});
    CHECK_FALSE(holds(plan.err, "Try three let-off screws"));
    CHECK(holds(plan.out, "seized; warm, then a hair"));
    CHECK(holds(plan.out, "Stop: it is not forced."));
    const json after = program({"plan", book, "--json"}).json();
    std::set<int> blocked;
    for (const json& each : after.at("blocked"))
        blocked.insert(each.at("note").get<int>());
    CHECK(blocked == std::set<int>{44, 71});
    CHECK(after.at("steps").size() == 86);
    CHECK(surveyed(folder, {}, 1).at("advice").empty());
    CHECK(surveyed(folder, {"--add", "5,6,7 let-off-screw seized"}, 1).at("advice") ==
          json({"let-off-rail-to-specialist"}));
}

TEST_CASE("the settings of the job, numbers on the way back and symptoms through the program") {
    const Folder folder;
    playerUpright(folder);
    const std::string book = folder / "b.hammerline";
    json survey = surveyed(folder, {"--add", "5,6 jack-spring broken", "--symptom", "1-20 double-strike"}, 1);
    CHECK(lineOf(survey.at("order").at("steps"), "step", "action").at("state") == "waits");
    CHECK(lineOf(survey.at("order").at("steps"), "step", "action").at("minutes") == 12); // six each
    CHECK(lineOf(survey.at("symptoms").at(0).at("checks"), "check", "jack-spring").at("supported") == true);
    survey = surveyed(
        folder, {"--set", "minutes.jack-spring=8", "--set", "in-hand.jack-spring=yes", "--set", "spare-at-least=3"}, 1);
    CHECK(lineOf(survey.at("order").at("steps"), "step", "action").at("state") == "open");
    CHECK(lineOf(survey.at("order").at("steps"), "step", "action").at("minutes") == 16);
    CHECK(lineOf(survey.at("parts"), "part", "jack-spring").at("quantity") == 5);
    const Answer wrong = program({"survey", book, "--set", "minutes.jack-spring=soon"});
    CHECK(wrong.status == 2);
    CHECK(holds(wrong.err, "is no setting of the job"));

    survey = surveyed(folder, {"--check-numbers", "key 1-20 22 21 23-31 31 33-85"}, 1);
    const json& numbers = survey.at("numbers").at(0);
    CHECK(numbers.at("missing") == json({32}));
    CHECK(numbers.at("double") == json({31}));
    CHECK(numbers.at("out_of_sequence").size() == 1);
    CHECK(program({"survey", book, "--check-numbers", "key 1-20 twenty"}).status == 2);
    CHECK(program({"survey", book, "--check-numbers", "keyy 1-20"}).status == 2);
}
