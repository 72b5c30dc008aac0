// What was done, said on the command line: a second word on a step corrects the first, and a step can be not done.
#include <catch2/catch.hpp>

#include "program.h"

using namespace hammerline::test;

TEST_CASE("a tick is corrected, not added to, and taken back by the step's own command") {
    const Folder folder;
    const std::string book = folder / "book.hammerline";
    REQUIRE(program({"new", book, "--piano", "P", "--action", "upright"}).status == 0);
    REQUIRE(program({"enter", book, "20", "let-off", "6.0"}).status < 2);
    const auto kept = [&] {
        REQUIRE(program({"export", book, "--out", folder / "all.json"}).status == 0);
        return nlohmann::json::parse(readAll(folder / "all.json")).at("pianos").at(0).at("done");
    };
    const auto tick = [&](std::vector<std::string> words) {
        words.insert(words.begin(), {"tick", book, "--step", "let-off-turn:20"});
        return program(words).status;
    };
    CHECK(tick({"--not-done"}) == 2); // nothing was said of it
    CHECK(tick({"--amount", "1/8"}) == 0);
    CHECK(tick({"--amount", "1/4"}) == 0);
    REQUIRE(kept().size() == 1);
    CHECK(kept().at(0).at("amount") == 0.25);
    CHECK(tick({"--not-done", "--aim"}) == 2);
    CHECK(kept().size() == 1);
    CHECK(tick({"--not-done"}) == 0);
    CHECK(kept().empty());
    CHECK(program({"undo", book}).status == 0);
    CHECK(kept().at(0).at("amount") == 0.25);
}
