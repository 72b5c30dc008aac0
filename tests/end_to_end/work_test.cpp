// The whole job on each of five kinds of action, walked step by step by what the program says comes next.
#include <catch2/catch.hpp>

#include "program.h"
#include <set>

using namespace hammerline::test;
using nlohmann::json;

namespace {

struct KindWalked {
    std::string name;
    std::vector<std::string> setUp;
    std::vector<std::string> has, hasNot; // steps
};

const std::vector<KindWalked>& kindsWalked() {
    static const std::vector<KindWalked> kinds = {
        {"upright with cord loops",
         {"--action", "upright", "--attribute", "butt=cord-loop"},
         {"take-action-out", "travel-hammers", "set-rest-rail", "line-dampers", "time-dampers-by-key"},
         {"mend-brass-rail", "bed-key-frame", "set-drop", "time-overdampers", "put-stack-in"}},
        {"old upright with brass rail and player",
         {"--action", "upright", "--player", "--attribute", "butt=brass-rail", "--notes", "85"},
         {"take-stack-out", "mend-brass-rail", "put-stack-in", "set-player-clearance", "test-by-hand-and-roll"},
         {"travel-hammers", "lift-grand-stack", "time-overdampers"}},
        {"drop action",
         {"--action", "drop"},
         {"take-action-out", "take-up-lost-motion", "set-rest-rail"},
         {"mend-brass-rail", "draw-grand-action", "put-stack-in"}},
        {"overdamper",
         {"--action", "upright", "--attribute", "damping=overdamper"},
         {"time-overdampers", "seat-dampers"},
         {"line-dampers", "time-dampers-by-key", "bed-key-frame"}},
        {"grand",
         {"--action", "grand"},
         {"draw-grand-action", "bed-key-frame", "set-grand-blow", "set-drop", "grand-pedals"},
         {"open-case", "take-action-out", "set-rest-rail", "set-checks", "set-bridle-wires", "mend-brass-rail"}},
    };
    return kinds;
}

json workOf(const std::string& book, std::vector<std::string> more = {}) {
    std::vector<std::string> words = {"work", book, "--json"};
    words.insert(words.end(), more.begin(), more.end());
    const Answer answer = program(words);
    INFO(answer.out + answer.err);
    REQUIRE(answer.status <= 1);
    return answer.json();
}

bool mentions(const std::string& text, const std::string& word) {
    return text.find(word) != std::string::npos;
}

} // namespace

TEST_CASE("a whole job is walked by what comes next, on each kind without a step of another") {
    for (const KindWalked& kind : kindsWalked()) {
        INFO(kind.name);
        const Folder folder;
        const std::string book = folder / "b.hammerline";
        std::vector<std::string> made = {"new", book, "--piano", "P"};
        made.insert(made.end(), kind.setUp.begin(), kind.setUp.end());
        REQUIRE(program(made).status == 0);
        std::vector<std::string> walked;
        json next = program({"next", book, "--json"}).json();
        while (next.at("kind") == "step" && walked.size() < 100) {
            const std::string step = next.at("step");
            INFO(step);
            const Answer said = program({"work", book, "--step", step, "--quiet"});
            CHECK(said.status == 1);
            CHECK(mentions(said.out, "How:"));
            CHECK_FALSE(mentions(said.out, "|")); // the mark of lines that are for some kinds alone
            CHECK_FALSE(mentions(said.out, kind.name == "grand" ? "n upright" : " grand"));
            CHECK(mentions(next.at("sentence"), "Next: "));
            CHECK(std::find(walked.begin(), walked.end(), step) == walked.end());
            walked.push_back(step);
            next = workOf(book, {"--step", step, "--done", "all"}).at("next");
        }
        CHECK(next.at("kind") == "done");
        const std::set<std::string> all(walked.begin(), walked.end());
        for (const std::string& step : kind.has) {
            INFO(step);
            CHECK(all.contains(step));
        }
        for (const std::string& step : kind.hasNot) {
            INFO(step);
            CHECK_FALSE(all.contains(step));
        }
        const json work = workOf(book);
        CHECK(work.at("minutes_left") == 0);
        CHECK(work.at("steps").size() == all.size());
        // undo goes back step by step, and the export carries the ticks to another book
        const std::string exported = folder / "b.json", copy = folder / "c.hammerline";
        REQUIRE(program({"export", book, "--out", exported}).status == 0);
        REQUIRE(program({"import", copy, exported}).status == 0);
        CHECK(workOf(copy).at("steps") == work.at("steps"));
        REQUIRE(program({"undo", book}).status == 0);
        CHECK(program({"next", book, "--json"}).json().at("step") == walked.back());
    }
}

TEST_CASE("a step is ticked at notes, taken back, not needed with a reason, and refused in one sentence") {
    const Folder folder;
    const std::string book = folder / "b.hammerline";
    REQUIRE(program({"new", book, "--piano", "P", "--action", "upright"}).status == 0);
    const auto step = [&](const json& work, const std::string& id) {
        for (const json& each : work.at("steps"))
            if (each.at("id") == id) return each;
        return json();
    };
    const json eased = step(workOf(book, {"--step", "ease-keys", "--done", "1-40", "--minutes", "30"}), "ease-keys");
    CHECK(eased.at("done_notes").size() == 40);
    CHECK(eased.at("spent") == 30);
    const json back = step(workOf(book, {"--step", "ease-keys", "--undone", "1-10"}), "ease-keys");
    CHECK(back.at("done_notes").size() == 30);
    const json muffler = step(workOf(book, {"--step", "set-muffler", "--not-here", "it has none"}), "set-muffler");
    CHECK(muffler.at("state") == "not-here");
    CHECK(muffler.at("remark") == "it has none");
    for (const std::vector<std::string>& wrong :
         std::vector<std::vector<std::string>>{{"work", book, "--step", "no-such-step"},
                                               {"work", book, "--step", "set-drop", "--done", "all"},
                                               {"work", book, "--done", "all"},
                                               {"work", book, "--step", "ease-keys", "--done", "1-99"},
                                               {"work", book, "--step", "ease-keys", "--done", "1", "--undone", "2"},
                                               {"work", book, "--step", "ease-keys", "--remark", "only a remark"}}) {
        const Answer refused = program(wrong);
        CHECK(refused.status == 2);
        CHECK_FALSE(refused.err.empty());
    }
    CHECK(step(workOf(book), "ease-keys") == back);
}
