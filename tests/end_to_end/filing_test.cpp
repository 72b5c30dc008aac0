// Filing in passes, through the built program: each is kept by itself, and their sum counts (at most a third of the
// felt, common practice, no source).
#include "bench.h"

using namespace hammerline::test;

namespace {

std::map<std::string, double> filedAt(const Bench& bench, int note) {
    bench.answer("verify");
    const std::string file = bench.file("all.json");
    REQUIRE(program({"export", bench.path(), "--out", file}).status == 0);
    std::map<std::string, double> out;
    const json all = json::parse(readAll(file));
    for (const json& finding : all.at("pianos").at(0).at("findings")) {
        const std::string fault = finding.value("fault", "");
        if (finding.at("part") == "hammer-head" && finding.at("note") == note && fault.starts_with("filed-"))
            out[fault] = finding.at("amount");
    }
    return out;
}

} // namespace

TEST_CASE("filing passes stand beside each other and add up, whatever is found or said later") {
    Bench bench({"--action", "upright"});
    bench.found("40-42 hammer-head deep-grooves reshape");
    bench.found("40-42 hammer-head hammers-filed 0.4");
    bench.found("40-42 hammer-head hammers-filed 0.3");
    CHECK(filedAt(bench, 40) == std::map<std::string, double>{{"filed-1", 0.4}, {"filed-2", 0.3}});
    CHECK(bench.survey().at("blocked").empty());
    const auto open = [&] {
        const json steps = bench.answer("work").at("steps");
        const auto filing =
            std::find_if(steps.begin(), steps.end(), [](const json& each) { return each.at("id") == "file-hammers"; });
        return filing->at("asks") == "mend";
    };
    CHECK_FALSE(open()); // the grooves that it was for are mended with it
    bench.found("40 hammer-head deep-grooves reshape");
    CHECK(open());
    bench.state("40 hammer-head sound");
    CHECK(filedAt(bench, 40) == std::map<std::string, double>{{"filed-1", 0.4}, {"filed-2", 0.3}});
    bench.found("40 hammer-head hammers-filed 0.5");
    CHECK(filedAt(bench, 40) == std::map<std::string, double>{{"filed-1", 0.4}, {"filed-2", 0.3}, {"filed-3", 0.5}});
    CHECK(bench.sheet("record").find("1.2 mm taken") != std::string::npos);
    REQUIRE(program({"undo", bench.path()}).status == 0);
    CHECK(filedAt(bench, 40) == std::map<std::string, double>{{"filed-1", 0.4}, {"filed-2", 0.3}});

    const std::string copy = bench.file("copy.hammerline");
    REQUIRE(program({"import", copy, bench.file("all.json")}).status < 2);
    REQUIRE(program({"export", copy, "--out", bench.file("copy.json")}).status == 0);
    CHECK(json::parse(readAll(bench.file("copy.json"))).at("pianos").at(0).at("findings") ==
          json::parse(readAll(bench.file("all.json"))).at("pianos").at(0).at("findings"));
}
