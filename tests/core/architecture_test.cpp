// The house keeps its floors: includes go down only. Link targets alone do not guard (SQLiteCpp sits in the system's
// include folder), so this test reads the includes.
#include <catch2/catch.hpp>

#include <filesystem>
#include <fstream>
#include <map>
#include <regex>
#include <string>
#include <vector>

namespace fs = std::filesystem;

namespace {

struct Include {
    std::string file, target;
    bool quoted;
};

std::vector<Include> includesOf(const std::string& folder) {
    static const std::regex line(R"(^\s*#\s*include\s*([<"])([^>"]+)[>"])");
    std::vector<Include> out;
    const fs::path root(HAMMERLINE_SOURCE_DIR);
    for (const auto& entry : fs::recursive_directory_iterator(root / folder)) {
        const auto extension = entry.path().extension();
        if (extension != ".cpp" && extension != ".h") continue;
        std::ifstream in(entry.path());
        for (std::string text; std::getline(in, text);) {
            std::smatch found;
            if (std::regex_search(text, found, line))
                out.push_back({fs::relative(entry.path(), root).string(), found[2], found[1] == "\""});
        }
    }
    return out;
}

bool startsWith(const std::string& text, const std::string& with) {
    return text.compare(0, with.size(), with) == 0;
}

std::string roomOf(const std::string& path) {
    const auto first = path.find('/');
    const auto second = path.find('/', first + 1);
    return path.substr(first + 1, second - first - 1);
}

const std::map<std::string, int> kLevels = {
    {"refusal", 0},    {"stats", 0},  {"units", 1},  {"piano", 2}, {"pass", 3},    {"spec", 3},
    {"operation", 3},  {"survey", 3}, {"intake", 4}, {"judge", 4}, {"history", 4}, {"causes", 5},
    {"comparison", 5}, {"stroke", 5}, {"plan", 6},   {"sheet", 7},
};

} // namespace

TEST_CASE("core knows nobody") {
    for (const auto& [file, target, quoted] : includesOf("core")) {
        INFO(file << " includes " << target);
        if (quoted) CHECK(startsWith(target, "core/"));
        CHECK_FALSE(target[0] == 'Q');
        CHECK(target.find("sqlite") == std::string::npos);
        CHECK(target.find("SQLite") == std::string::npos);
        for (const std::string banned : {"filesystem", "fstream", "iostream", "locale", "ctime"})
            CHECK(target != banned);
    }
}

TEST_CASE("a room of core includes rooms of lower levels only") {
    for (const auto& [file, target, quoted] : includesOf("core")) {
        if (!quoted) continue;
        INFO(file << " includes " << target);
        const std::string from = roomOf(file);
        const std::string to = roomOf(target);
        REQUIRE(kLevels.count(from) == 1);
        REQUIRE(kLevels.count(to) == 1);
        if (from != to) CHECK(kLevels.at(to) < kLevels.at(from));
    }
}

TEST_CASE("heavy libraries stay in the .cpp files of core") {
    for (const auto& [file, target, quoted] : includesOf("core")) {
        INFO(file << " includes " << target);
        if (file.size() > 2 && file.substr(file.size() - 2) == ".h") {
            CHECK_FALSE(startsWith(target, "nlohmann"));
            CHECK_FALSE(startsWith(target, "boost"));
        }
    }
}

TEST_CASE("the book knows no window, the window no SQL, the words no widgets") {
    for (const auto& [file, target, quoted] : includesOf("db")) {
        INFO(file << " includes " << target);
        if (quoted) CHECK((startsWith(target, "core/") || startsWith(target, "db/")));
        CHECK_FALSE(target[0] == 'Q');
        if (file.substr(file.size() - 2) == ".h" && file == "db/bench_book.h")
            CHECK(target.find("SQLite") == std::string::npos);
    }
    for (const std::string floor : {"ui", "app"})
        for (const auto& [file, target, quoted] : includesOf(floor)) {
            INFO(file << " includes " << target);
            CHECK(target.find("sqlite") == std::string::npos);
            CHECK(target.find("SQLite") == std::string::npos);
            if (floor == "ui" && quoted) CHECK_FALSE(startsWith(target, "app/"));
            if (startsWith(file, "ui/words/")) {
                if (quoted) CHECK((startsWith(target, "core/") || startsWith(target, "ui/words/")));
                CHECK(target.find("QWidget") == std::string::npos);
                CHECK(target.find("QPainter") == std::string::npos);
            }
        }
}

TEST_CASE("only one unit pays for the command-line library") {
    int units = 0;
    for (const auto& each : includesOf("app"))
        units += startsWith(each.target, "CLI/");
    CHECK(units <= 1);
}
