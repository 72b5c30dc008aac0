// Account, stroke and drawing agree to the last shown digit, with each other, with what check judged and with what the
// plan expects, over the demo and the four case files of tests/reference/cases.
#include <catch2/catch.hpp>

#include "program.h"
#include <map>

using namespace hammerline::test;
using json = nlohmann::json;

namespace {

constexpr double kShownDigit = 0.005; // half of what two decimals show
constexpr double kDrawnWithin = 0.05; // mm: what a drawing may miss a reading by

double reading(const json& account, const std::string& dimension) {
    for (const json& term : account.at("terms"))
        if (term.at("dimension") == dimension) return term.at("reading");
    return -1;
}

/// Where the links of the drawing put the hammer, and when, is what was read and what account and stroke say.
void checkDrawing(const json& drawing, const json& account, const json& stroke) {
    if (drawing.contains("refused")) {
        CHECK_FALSE(drawing.at("refused").empty());
        return;
    }
    CHECK(drawing.at("bottom").get<double>() == Approx(stroke.at("bottom").get<double>()).margin(kShownDigit));
    CHECK(drawing.at("at_rest").get<double>() == Approx(reading(account, "blow")).margin(kDrawnWithin));
    if (drawing.at("let_off").is_null()) {
        CHECK(account.at("aftertouch").get<double>() < 0); // the jack stays
        return;
    }
    CHECK(drawing.at("let_off").get<double>() == Approx(stroke.at("let_off").get<double>()).margin(kShownDigit));
    CHECK(drawing.at("at_let_off").get<double>() == Approx(reading(account, "let-off")).margin(kDrawnWithin));
}

/// Notes whose account is complete.
int checkActions(const std::string& book, const std::string& pass) {
    const Answer answer = program({"action", book, "--pass", pass, "--json"});
    INFO(answer.err);
    REQUIRE(answer.status < 2);
    const json judged = program({"check", book, "--pass", pass, "--json"}).json();
    std::map<std::pair<int, std::string>, double> values;
    for (const json& row : judged.at("ranked"))
        if (!row.at("value").is_null() && row.at("relation") == "=")
            values[{row.at("note").get<int>(), row.at("dimension").get<std::string>()}] = row.at("value");
    std::map<std::pair<int, std::string>, double> planned;
    for (const json& row : program({"plan", book, "--pass", pass, "--json"}).json().at("expected"))
        planned[{row.at("note").get<int>(), row.at("dimension").get<std::string>()}] = row.at("value");
    int complete = 0;
    const json told = answer.json();
    for (const json& note : told.at("notes")) {
        const json& account = note.at("account");
        const json& stroke = note.at("stroke");
        double sum = 0;
        for (const json& term : account.at("terms")) {
            if (term.at("reading").is_null()) continue;
            sum += term.at("share").get<double>();
            const auto read = values.find({note.at("note").get<int>(), term.at("dimension").get<std::string>()});
            if (read == values.end() || term.at("dimension") == "lost-motion") continue;
            CHECK(term.at("reading").get<double>() == Approx(read->second).margin(kShownDigit));
        }
        if (account.at("aftertouch").is_null()) continue;
        ++complete;
        INFO("note " << note.at("note"));
        CHECK(account.at("aftertouch").get<double>() == Approx(sum).margin(kShownDigit));
        CHECK(stroke.at("aftertouch").get<double>() == Approx(sum).margin(kShownDigit));
        CHECK(stroke.at("bottom").get<double>() - stroke.at("let_off").get<double>() ==
              Approx(sum).margin(kShownDigit));
        checkDrawing(note.at("drawing"), account, stroke);
        if (note.at("account_after").is_null() || note.at("account_after").at("aftertouch").is_null()) continue;
        CHECK(note.at("account_after").at("aftertouch").get<double>() ==
              Approx(note.at("stroke_after").at("aftertouch").get<double>()).margin(kShownDigit));
        checkDrawing(note.at("drawing_after"), note.at("account_after"), note.at("stroke_after"));
        for (const json& term : note.at("account_after").at("terms")) {
            const auto found = planned.find({note.at("note").get<int>(), term.at("dimension").get<std::string>()});
            if (found == planned.end() || term.at("dimension") == "lost-motion") continue;
            CHECK(term.at("reading").get<double>() == Approx(found->second).margin(kShownDigit));
        }
    }
    return complete;
}

std::string textOf(const std::string& pdf) {
    return runWords({"pdftotext", pdf, "-"}).out;
}

} // namespace

TEST_CASE("account and stroke of the demo agree with each other and with its check") {
    const Folder folder;
    const std::string book = folder / "demo.hammerline";
    REQUIRE(program({"demo", book}).status == 0);
    CHECK(checkActions(book, "2") > 70);
    CHECK(checkActions(book, "4") > 40);
    const Answer note = program({"action", book, "--pass", "2", "--note", "F3"});
    CHECK(note.out.find("33 F3") != std::string::npos);
    CHECK(note.out.find("Aftertouch left") != std::string::npos);
    CHECK(program({"action", book, "--note", "133"}).status == 2);
}

TEST_CASE("what is left at a note and what settles are said, printed and read as a pass of their own") {
    const Folder folder;
    const std::string book = folder / "hall.hammerline", pdf = folder / "record.pdf";
    REQUIRE(program({"new", book, "--piano", "Hall", "--action", "upright"}).status == 0);
    CHECK(program({"pass", book, "--settled"}).status == 2); // nothing is new
    REQUIRE(program({"pass", book}).status == 0);
    REQUIRE(program({"enter", book, "40", "capstan-reserve", "13"}).status == 0);
    REQUIRE(program({"survey", book, "--add", "all front-felt hard new-set"}).status < 2);
    REQUIRE(program({"survey", book, "--state", "all front-felt mended"}).status < 2);
    const json note = program({"action", book, "--note", "40", "--json"}).json();
    const json& thread = note.at("notes").at(0).at("left").at(0);
    CHECK(thread.at("of") == "capstan-thread");
    CHECK(thread.at("left") == 5); // 13 less the limit of 8 mm
    CHECK(thread.at("rounds") == 2);
    CHECK(program({"action", book, "--note", "40"}).out.find("at least 2 more rounds") != std::string::npos);

    const json visits = program({"visits", book, "--json"}).json();
    CHECK(visits.at("visits").empty()); // nobody wrote one down
    const json& forecast = visits.at("settling").at(0);
    CHECK(forecast.at("piano") == "Hall");
    CHECK(forecast.at("parts").at(0).at("part") == "front-felt");
    CHECK(forecast.at("parts").at(0).at("source").get<std::string>().find("1995-April/001290") != std::string::npos);
    CHECK(forecast.at("first_visit").get<std::string>() < forecast.at("settled_by").get<std::string>());
    CHECK(forecast.at("due") == false);
    // dip, aftertouch and checking of 88 notes
    CHECK(forecast.at("read").size() == 264);

    REQUIRE(program({"print", book, "record", "--out", pdf}).status < 2);
    CHECK(textOf(pdf).find("Still settling, a forecast") != std::string::npos);
    CHECK(textOf(pdf).find("least of 1 note known") != std::string::npos);
    REQUIRE(program({"print", book, "card", "--out", pdf}).status < 2);
    CHECK(textOf(pdf).find("read what new felts have moved") != std::string::npos);
    CHECK(program({"pass", book, "--settled", "--json"}).json().at("pass") == 2);
    REQUIRE(program({"archive", book, "--piano", "Hall"}).status == 0);
    CHECK(program({"visits", book, "--json"}).json().at("settling").empty()); // put away: nothing is due
}

TEST_CASE("account and stroke of the four case files agree") {
    const auto [file, action] = GENERATE(table<std::string, std::string>({{"filed_hammers.csv", "upright"},
                                                                          {"sunk_rail.csv", "upright"},
                                                                          {"player_85_slips.csv", "upright"},
                                                                          {"grand_samples.tsv", "grand"}}));
    INFO(file);
    const Folder folder;
    const std::string book = folder / "case.hammerline";
    std::vector<std::string> made{"new", book, "--piano", "Case", "--action", action};
    if (file == "player_85_slips.csv") made.insert(made.end(), {"--notes", "85", "--player"});
    REQUIRE(program(made).status == 0);
    REQUIRE(program({"import", book, reference("cases/" + file)}).status < 2);
    checkActions(book, "1");
}
