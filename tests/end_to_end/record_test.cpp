// The piano's own record through the built program: whose it is, found by words, put away; remarks, photographs, an
// estimate and a card on paper, a page for a second opinion and its answer; two books that become one.
#include "core/sheet/base64.h"

#include <catch2/catch.hpp>

#include "program.h"
#include <cmath>

using namespace hammerline::test;
using nlohmann::json;

namespace {

/// A PNG of one point.
void writePicture(const std::string& path) {
    std::ofstream(path, std::ios::binary) << *hammerline::fromBase64(
        "iVBORw0KGgoAAAANSUhEUgAAAAEAAAABCAYAAAAfFcSJAAAADUlEQVR42mNk+M9QDwADhgGAWjR9awAAAABJRU5ErkJggg==");
}

int statusOf(const std::vector<std::string>& words) {
    const Answer answer = program(words);
    INFO(answer.err);
    return answer.status;
}

std::size_t countOf(const std::string& book, const char* command, const char* list,
                    std::vector<std::string> more = {}) {
    std::vector<std::string> words = {command, book, "--json"};
    words.insert(words.end(), more.begin(), more.end());
    return program(words).json().at(list).size();
}

std::string paperText(const std::string& book, const std::string& sheet, const std::string& paper,
                      const Folder& folder) {
    const std::string pdf = folder / (sheet + paper + ".pdf");
    CHECK(statusOf({"print", book, sheet, "--out", pdf, "--paper", paper}) == 0);
    return runWords({"pdftotext", "-layout", pdf, "-"}).out;
}

} // namespace

TEST_CASE("a piano is entered with whose it is, found by any of its words, changed, put away and brought back") {
    const Folder folder;
    const std::string book = folder / "shop.hammerline";
    CHECK(statusOf({"new", book, "--piano", "Hall", "--action", "upright", "--maker", "Invented & Sons", "--year",
                    "about 1912", "--owner", "Zoë B."}) == 0);
    CHECK(statusOf({"new", book, "--piano", "School", "--action", "grand"}) == 0);
    CHECK(countOf(book, "list", "pianos", {"--find", "zoe 1912"}) == 1);
    CHECK(countOf(book, "list", "pianos", {"--find", "zoe 1913"}) == 0);
    CHECK(statusOf({"piano", book, "--piano", "Hall", "--year", "old"}) == 2);
    CHECK(statusOf({"piano", book, "--piano", "Hall", "--owner", ""}) == 0);
    CHECK(countOf(book, "list", "pianos", {"--find", "zoe"}) == 0);
    CHECK(statusOf({"undo", book}) == 0);
    CHECK(countOf(book, "list", "pianos", {"--find", "zoe"}) == 1);
    CHECK(statusOf({"archive", book}) == 2); // say which
    CHECK(statusOf({"archive", book, "--piano", "School"}) == 0);
    CHECK(countOf(book, "list", "pianos") == 1);
    CHECK(countOf(book, "list", "pianos", {"--archived"}) == 2);
    CHECK(statusOf({"pass", book}) == 0); // the only piano that is not put away is meant
    CHECK(statusOf({"enter", book, "40", "let-off", "3"}) == 0);
    CHECK(statusOf({"piano", book, "--action", "grand"}) == 2); // measured: the kind stays
    CHECK(statusOf({"piano", book, "--piano", "School", "--action", "drop"}) == 0);
    CHECK(statusOf({"unarchive", book, "--piano", "School"}) == 0);
    CHECK(countOf(book, "list", "pianos") == 2);
}

TEST_CASE("remarks, photographs, estimate, card, second opinion and its answer, in one book and merged into another") {
    const Folder folder;
    const std::string book = folder / "demo.hammerline", picture = folder / "p.png", page = folder / "page.html";
    writePicture(picture);
    std::ofstream(folder / "none.jpg") << "no picture";
    CHECK(statusOf({"demo", book}) == 0);
    // The visit that the story ends with is taken back: the card says the one that is made here.
    CHECK(statusOf({"remark", book, "--remove", std::to_string(countOf(book, "remark", "remarks"))}) == 0);
    const auto told = countOf(book, "remark", "remarks");
    CHECK(countOf(book, "visits", "visits") == 0);
    const auto numbered = [told](std::size_t more) { return std::to_string(told + more); };
    CHECK(statusOf({"remark", book, "glued before", "--finding", "40 hammer-shank", "--who", "A. B."}) == 0);
    CHECK(statusOf({"remark", book, "come again", "--kind", "visit", "--date", "2199-03-01"}) == 0);
    CHECK(statusOf({"remark", book, "x", "--date", "2026-02-30"}) == 2);
    CHECK(countOf(book, "remark", "remarks") == told + 2);
    CHECK(countOf(book, "visits", "visits") == 1);
    CHECK(statusOf({"remark", book, "--remove", numbered(3)}) == 2);

    CHECK(statusOf({"photo", book, picture, "--finding", "40 hammer-shank", "--caption", "as found"}) == 0);
    CHECK(statusOf({"photo", book, picture, "--finding", "40 hammer-shank"}) == 0); // there already
    CHECK(statusOf({"photo", book, folder / "none.jpg"}) == 2);
    CHECK(statusOf({"photo", book, folder / "nowhere.jpg"}) == 2);
    CHECK(countOf(book, "photo", "photos") == 1);
    CHECK(statusOf({"photo", book, "--show", "1", "--out", folder / "back.png"}) == 0);
    CHECK(readAll(folder / "back.png").substr(1, 3) == "PNG");

    const json before = program({"estimate", book, "--json"}).json();
    CHECK(before.at("total").is_null()); // nothing is priced that nobody priced
    const json priced = program({"estimate", book, "--set", "hour=60", "--set", "currency=EUR", "--json"}).json();
    CHECK(priced.at("labour").get<double>() ==
          Approx(priced.at("minutes").get<double>() + priced.at("allowance_minutes").get<double>()).margin(0.02));
    CHECK(statusOf({"estimate", book, "--set", "hour=cheap"}) == 2);
    for (const char* paper : {"A4", "Letter"}) {
        const std::string estimate = paperText(book, "estimate", paper, folder);
        CHECK(estimate.find("Sum") != std::string::npos);
        CHECK(estimate.find("60.00 EUR") != std::string::npos);
        const std::string card = paperText(book, "card", paper, folder);
        CHECK(card.find("come again") != std::string::npos);
        CHECK(paperText(book, "record", paper, folder).find("glued before") != std::string::npos);
    }

    CHECK(statusOf({"share", book, "--question", "<file> & again?", "--out", page}) == 0);
    const std::string html = readAll(page);
    CHECK(html.find("&lt;file&gt; &amp; again?") != std::string::npos);
    CHECK(html.find("data:image/png;base64,") != std::string::npos);
    CHECK(html.find("[40 hammer-shank]") != std::string::npos);
    CHECK(html.find("<svg") != std::string::npos);
    CHECK(html.find("://") == std::string::npos); // no address anywhere
    std::ofstream(folder / "answer.txt") << "who: Berta\n[40 hammer-shank] not enough, glue again\n";
    CHECK(program({"advice", book, folder / "answer.txt", "--json"}).json().at("added") == 1);
    CHECK(program({"advice", book, folder / "answer.txt", "--json"}).json().at("added") == 0);
    CHECK(statusOf({"remark", book, "--accept", numbered(1)}) == 2); // a remark is no advice
    CHECK(statusOf({"remark", book, "--accept", numbered(3)}) == 0);
    CHECK(program({"remark", book, "--json"}).json().at("remarks").at(told + 2).at("accepted") == "yes");

    const std::string other = folder / "other.hammerline";
    CHECK(statusOf({"export", book, "--out", folder / "all.json"}) == 0);
    CHECK(statusOf({"import", other, folder / "all.json"}) <= 1);
    CHECK(countOf(other, "photo", "photos") == 1);
    CHECK(countOf(other, "remark", "remarks") == told + 3);
    CHECK(statusOf({"merge", other, book}) <= 1);
    CHECK(statusOf({"verify", other}) == 0);
    CHECK(statusOf({"experience", book}) == 0);
}

TEST_CASE("gauge: repeats and the study of three persons, typed and told") {
    const Folder folder;
    const std::string book = folder / "g.hammerline";
    REQUIRE(statusOf({"new", book, "--piano", "Hall", "--action", "upright", "--last-damper", "66"}) == 0);
    CHECK(program({"gauge", book, "--json"}).json().at("dimensions").empty());
    // Two persons, three notes, two trials each.
    for (const std::string person : {"1", "2"}) {
        if (person == "2") REQUIRE(statusOf({"pass", book, "--label", "second person"}) == 0);
        for (const std::string note : {"30", "31", "32"})
            for (const std::string last : {"1", "3"}) {
                std::vector<std::string> words = {"enter", book, note, "let-off", "3." + last};
                if (last == "3") words.emplace_back("--repeat");
                CHECK(statusOf(words) < 2);
            }
    }
    const json told = program({"gauge", book, "--dimension", "let-off", "--persons", "1,2", "--json"}).json();
    REQUIRE(told.at("dimensions").size() == 1);
    const json use = told.at("dimensions")[0];
    CHECK(use.at("dimension") == "let-off");
    CHECK(use.at("n") == 12);
    // Every pair 3.1, 3.3: range 0.2 over d2(2) = 1.128379 (control_chart_constants.csv, by Duncan).
    CHECK(std::abs(use.at("study").at("repeatability").get<double>() - 0.2 / 1.128379) < 0.002);
    CHECK(use.at("study").at("persons") == 2);
    CHECK(program({"gauge", book, "--persons", "1,7"}).status == 2);
    CHECK(program({"gauge", book, "--dimension", "nonsense"}).status == 2);
    CHECK(program({"gauge", book}).out.find("12") != std::string::npos);
}
