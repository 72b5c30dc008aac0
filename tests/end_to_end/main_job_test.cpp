// The main job through the built program: readings in, verdicts and a printed adjustment list out, on the four
// constructed files of tests/reference/cases (truth.json says what is in them).
#include <catch2/catch.hpp>

#include "program.h"
#include <algorithm>
#include <regex>
#include <set>

using namespace hammerline::test;
using nlohmann::json;

namespace {

/// Notes whose reading of a dimension is outside on that side.
std::set<int> outside(const json& check, const std::string& dimension, const std::string& verdict) {
    std::set<int> notes;
    for (const auto& row : check.at("ranked"))
        if (row.at("dimension") == dimension && row.at("verdict") == verdict) notes.insert(row.at("note").get<int>());
    return notes;
}

template <class T>
bool hasAll(const std::set<T>& all, const std::set<T>& wanted) {
    return std::includes(all.begin(), all.end(), wanted.begin(), wanted.end());
}

json imported(const Folder& folder, const std::string& file, std::vector<std::string> setUp, int status) {
    const std::string book = folder / "book.hammerline";
    setUp.insert(setUp.begin(), {"new", book, "--piano", "P"});
    REQUIRE(program(setUp).status == 0);
    const Answer answer = program({"import", book, reference("cases/" + file), "--json"});
    INFO(answer.err);
    CHECK(answer.status == status);
    return answer.json();
}

json checked(const Folder& folder) {
    const Answer answer = program({"check", folder / "book.hammerline", "--json"});
    INFO(answer.err);
    CHECK(answer.status == 1);
    return answer.json();
}

void printsAdjustmentList(const Folder& folder) {
    for (const std::string paper : {"A4", "Letter"}) {
        const std::string pdf = folder / ("list-" + paper + ".pdf");
        const Answer answer =
            program({"print", folder / "book.hammerline", "adjustment", "--out", pdf, "--paper", paper});
        INFO(answer.err);
        CHECK(answer.status == 0);
        const Answer text = runWords({"pdftotext", "-layout", pdf, "-"});
        CHECK(text.status == 0);
        CHECK(text.out.find("Adjustment list") != std::string::npos);
    }
}

/// Every sheet of the demo book on both papers, with what must stand on it and no number that nobody measured.
void printsEverySheet(const Folder& folder, const std::string& book) {
    const std::vector<std::pair<std::string, std::vector<std::string>>> sheets = {
        {"adjustment", {"Adjustment list"}},
        {"adjustment-large", {"Adjustment list"}},
        {"check", {"Check list", "deviation"}},
        {"survey", {"Work list of the survey"}},
        {"parts", {"Parts to order"}},
        {"labels", {"Marks"}},
        {"comparison", {"Comparison"}},
        {"record", {"Record for the owner"}},
        {"work", {"The work, step by step", "Next: "}},
    };
    for (const auto& [sheet, words] : sheets)
        for (const std::string paper : {"A4", "Letter"}) {
            INFO(sheet << " on " << paper);
            const std::string pdf = folder / (sheet + paper + ".pdf");
            const Answer answer = program({"print", book, sheet, "--out", pdf, "--paper", paper});
            INFO(answer.err);
            CHECK(answer.status <= 1);
            const std::string text = runWords({"pdftotext", "-layout", pdf, "-"}).out;
            for (const std::string& word : words)
                CHECK(text.find(word) != std::string::npos);
            CHECK(text.find("School upright") != std::string::npos);
            // no length, minute, count or year has five digits: such a number is rubbish from memory
            CHECK_FALSE(std::regex_search(text, std::regex("[0-9]{5,}")));
        }
}

/// Findings in every state, an order under way, steps of the work ticked and set aside, screws whose answer was learned
/// between two passes, and fewer readings outside after the work than before it.
void tellsItsStory(const std::string& book) {
    const json survey = program({"survey", book, "--json"}).json();
    std::set<std::string> states, parts;
    for (const auto& each : survey.at("findings")) {
        states.insert(each.at("state"));
        parts.insert(each.at("part"));
    }
    CHECK(states == std::set<std::string>{"mended", "sound", "to-do", "watch"});
    CHECK(parts.size() >= 40);
    CHECK(survey.at("parts").size() >= 5);
    std::set<std::string> steps;
    const json work = program({"work", book, "--json"}).json();
    for (const auto& each : work.at("steps"))
        steps.insert(each.at("state"));
    CHECK(hasAll(steps, {"done", "not-here", "open", "waits"}));
    std::set<std::string> learned;
    const json plan = program({"plan", book, "--json"}).json();
    for (const auto& each : plan.at("responses"))
        if (each.at("learned") == true) learned.insert(each.at("operation"));
    CHECK(hasAll(learned, {"capstan-turn", "let-off-turn"}));
    const auto out = [&](const char* pass) {
        const json ranked = program({"check", book, "--pass", pass, "--json"}).json().at("ranked");
        return std::count_if(ranked.begin(), ranked.end(),
                             [](const json& row) { return row.at("verdict") == "low" || row.at("verdict") == "high"; });
    };
    CHECK(out("2") > 60);
    CHECK(out("4") * 2 < out("2"));
}

} // namespace

TEST_CASE("filed hammers: inch fractions under a header unit, five shallow notes found") {
    const Folder folder;
    const json import = imported(folder, "filed_hammers.csv", {"--action", "upright"}, 0);
    CHECK(import.at("questions").empty());
    CHECK(import.at("taken") == 88 * 5);
    const json check = checked(folder);
    CHECK(hasAll(outside(check, "key-dip", "low"), {6, 35, 40, 71}));
    // 11/32 in, 8.73 mm, on a sharp whose dip may be 8.8: nearer to the edge than the gauge can tell.
    CHECK(outside(check, "key-dip", "undecided") == std::set<int>{12});
    printsAdjustmentList(folder);
}

TEST_CASE("sunk rail: German header words, semicolons, decimal commas; four close let-offs found") {
    const Folder folder;
    const json import = imported(folder, "sunk_rail.csv", {"--action", "upright"}, 0);
    CHECK(import.at("taken") == 88 * 5);
    CHECK(import.at("references").at("key-height") == "bed");
    const json check = checked(folder);
    CHECK(hasAll(outside(check, "let-off", "low"), {13, 60, 76, 84}));
    const auto low = outside(check, "key-height", "low");
    CHECK(low.contains(39)); // the deepest note of the hump
    CHECK_FALSE(low.contains(1));
    CHECK_FALSE(low.contains(88));
    printsAdjustmentList(folder);
}

TEST_CASE("grand samples: tabs, pitch names, units in the cells; only what was measured is judged") {
    const Folder folder;
    const json import =
        imported(folder, "grand_samples.tsv", {"--action", "grand", "--sections", "1-20,21-41,42-62,63-88"}, 0);
    CHECK(import.at("taken") == 22 * 6);
    const json check = checked(folder);
    CHECK(check.at("ranked").size() == 22 * 6);
    CHECK(outside(check, "drop", "high").contains(58));
    CHECK(outside(check, "blow", "low").contains(21));
    const json plan = program({"plan", folder / "book.hammerline", "--json"}).json();
    std::set<int> measured;
    for (const auto& row : check.at("ranked"))
        measured.insert(row.at("note").get<int>());
    for (const auto& step : plan.at("steps"))
        if (!step.at("note").is_null()) CHECK(measured.contains(step.at("note").get<int>()));
    printsAdjustmentList(folder);
}

TEST_CASE("a player's 85 notes with slips: asked about, not stored silently") {
    const Folder folder;
    const json import =
        imported(folder, "player_85_slips.csv", {"--action", "upright", "--notes", "85", "--player"}, 1);
    std::set<std::pair<std::string, std::string>> asked;
    for (const auto& q : import.at("questions"))
        if (!q.at("dimension").is_null())
            asked.emplace(q.at("dimension").get<std::string>(), q.at("text").get<std::string>());
    for (const auto& r : import.at("refused_rows"))
        if (!r.at("dimension").is_null())
            asked.emplace(r.at("dimension").get<std::string>(), r.at("text").get<std::string>());
    const auto askedAbout = [&](const std::string& dimension, const std::string& part) {
        return std::any_of(asked.begin(), asked.end(), [&](const auto& each) {
            return each.first == dimension && each.second.find(part) != std::string::npos;
        });
    };
    CHECK(askedAbout("aftertouch", ".40in"));
    CHECK(askedAbout("blow", "1 13/16"));
    CHECK(askedAbout("key-dip", "99"));
    const json check = checked(folder);
    for (const auto& row : check.at("ranked")) {
        CHECK_FALSE((row.at("dimension") == "aftertouch" && row.at("typed") == ".40in"));
        CHECK_FALSE((row.at("dimension") == "key-dip" && row.at("typed") == "99"));
    }
    // 1/8" is right, only in another unit: 3.175 mm exactly (1 in = 25.4 mm, NBS Circular 572 addendum).
    const bool found = std::any_of(check.at("ranked").begin(), check.at("ranked").end(), [](const json& row) {
        return row.at("dimension") == "let-off" && row.at("note") == 34 && row.at("value") == 3.175;
    });
    CHECK(found);
    printsAdjustmentList(folder);
}

TEST_CASE("readings typed one by one, taken back and brought again") {
    const Folder folder;
    const std::string book = folder / "book.hammerline";
    REQUIRE(program({"new", book, "--piano", "Upright", "--action", "upright"}).status == 0);
    const auto enter = [&](std::vector<std::string> words) {
        words.insert(words.begin(), {"enter", book});
        return program(words);
    };
    // Typing as it comes at the bench.
    CHECK(enter({"40", "blow", "46", "--json"}).json().at("taken") == 1);
    CHECK(enter({"41", "blow", "46,5"}).status == 0);
    CHECK(enter({"C4", "blow", "1 13/16"}).status == 0);
    CHECK(enter({"40", "aftertouch", ".040in"}).status == 0);
    CHECK(enter({"40", "key-height", "gap .6"}).status == 0);
    CHECK(enter({"40", "lost-motion", "off"}).status == 0);
    CHECK(enter({"40", "aftertouch", "0.8..1.2"}).status == 0);
    CHECK(enter({"40", "checking", "<16"}).status == 0);
    CHECK(enter({"42", "strap", "ok"}).status == 0);
    // 3/8 in a dip cell is 9.525 mm.
    CHECK(enter({"40", "key-dip", "3/8"}).status == 0);
    // Inch meant: asked, nothing stored.
    const Answer inch = enter({"43", "blow", "1 13/16 mm", "--json"});
    CHECK(inch.status == 1);
    CHECK(inch.json().at("taken") == 0);
    CHECK(inch.json().at("questions").size() == 1);
    // A let-off of 15 is asked about and takes a reason.
    CHECK(enter({"43", "let-off", "15"}).status == 1);
    CHECK(enter({"43", "let-off", "15", "--take-doubtful", "--reason", "a beginner plays here"}).status == 0);
    // Bad input: one sentence, nothing stored.
    const Answer bad = enter({"40", "key-dip", "9,5,1", "--json"});
    CHECK(bad.status == 2);
    CHECK(bad.json().at("refused").at("code") == "two-decimal-marks");
    CHECK(enter({"99", "key-dip", "9.5"}).status == 2);
    const Answer sharp = enter({"41", "key-height", "0"}); // a sharp has no key height of its own
    CHECK(sharp.status == 2);
    CHECK(sharp.err.find("Key height is not fitted at this note.") != std::string::npos);

    const auto dipOf40 = [&]() -> json {
        const json check = program({"check", book, "--json"}).json();
        for (const auto& row : check.at("ranked"))
            if (row.at("note") == 40 && row.at("dimension") == "key-dip") return row.at("value");
        return nullptr;
    };
    CHECK(dipOf40() == 9.525);
    CHECK(enter({"40", "key-dip", "10.1"}).status == 0);
    CHECK(dipOf40() == 10.1);
    CHECK(program({"undo", book}).status == 0);
    CHECK(dipOf40() == 9.525);
    CHECK(program({"redo", book}).status == 0);
    CHECK(dipOf40() == 10.1);
}

TEST_CASE("the demo book: checked, planned, compared, printed, exported, verified, backed up") {
    const Folder folder;
    const std::string book = folder / "demo.hammerline";
    REQUIRE(program({"demo", book}).status == 0);
    CHECK(program({"demo", book}).status == 2); // never over what is there
    const json list = program({"list", book, "--json"}).json();
    REQUIRE(list.at("pianos").size() == 1);
    CHECK(list.at("pianos")[0].at("passes").size() == 4);
    const json both = program({"list", book, "--archived", "--json"}).json().at("pianos");
    REQUIRE(both.size() == 2);
    CHECK(both[1].at("action") == "grand");
    tellsItsStory(book);
    CHECK(program({"check", book, "--pass", "1", "--json"}).json().at("pass") == 1);
    CHECK(program({"plan", book, "--json"}).status <= 1);
    CHECK(program({"compare", book, "--from", "2", "--to", "4", "--json"}).json().at("to") == 4);
    CHECK(program({"verify", book, "--json"}).json().at("sound") == true);
    CHECK(program({"backup", book, "--out", folder / "copy.hammerline"}).status == 0);
    CHECK(program({"verify", folder / "copy.hammerline"}).status == 0);
    printsEverySheet(folder, book);
    CHECK(program({"export", book, "--out", folder / "all.json"}).status == 0);
    CHECK(json::parse(readAll(folder / "all.json")).at("pianos").size() == 2);

    // What was exported comes back unchanged.
    const std::string csv = folder / "all.csv";
    const std::string school = "School upright, 1955 (invented readings)";
    REQUIRE(program({"export", book, "--piano", school, "--out", csv}).status == 0);
    const std::string again = folder / "again.hammerline";
    REQUIRE(program({"new", again, "--piano", school, "--action", "upright", "--last-damper", "66"}).status == 0);
    const Answer import = program({"import", again, csv, "--json"});
    INFO(import.err);
    CHECK(import.status == 0);
    REQUIRE(program({"export", again, "--out", folder / "again.csv"}).status == 0);
    const auto withoutTimes = [](const std::string& text) {
        std::istringstream in(text);
        std::string out;
        for (std::string line; std::getline(in, line);)
            out += line.substr(0, line.rfind(';')) + '\n';
        return out;
    };
    CHECK(withoutTimes(readAll(csv)) == withoutTimes(readAll(folder / "again.csv")));
}

TEST_CASE("every command answers --help and refuses nonsense with status 2") {
    CHECK(program({"--help"}).status == 0);
    CHECK(program({"--version"}).out.rfind("hammerline ", 0) == 0);
    for (const std::string command :
         {"demo",    "new",   "piano",  "pass",    "import", "enter",  "undo",   "redo", "override",
          "check",   "plan",  "tick",   "compare", "survey", "print",  "export", "list", "backup",
          "restore", "merge", "verify", "ids",     "window", "action", "work",   "next", "gauge"}) {
        INFO(command);
        CHECK(program({command, "--help"}).status == 0);
    }
    CHECK(program({"nonsense"}).status == 2);
    CHECK(program({"check", "/nowhere/at/all.hammerline"}).status == 2);
    const Answer refused = program({"check", reference("cases/truth.json"), "--json"});
    CHECK(refused.status == 2);
    CHECK(refused.json().at("refused").at("code") == "not-a-book");
    CHECK_FALSE(refused.json().at("refused").at("sentence").get<std::string>().empty());
    const json ids = program({"ids", "--json"}).json();
    for (const std::string group :
         {"dimensions", "words", "operations", "parts", "causes", "symptoms", "attributes", "refusal_codes"})
        CHECK_FALSE(ids.at(group).empty());
}
