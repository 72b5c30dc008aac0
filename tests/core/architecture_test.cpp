// The house keeps its floors: includes go down only. Link targets alone do not guard (SQLiteCpp sits in the system's
// include folder), so this test reads the includes.
#include <catch2/catch.hpp>

#include <algorithm>
#include <cctype>
#include <filesystem>
#include <fstream>
#include <iterator>
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

struct SourceFile {
    std::string file, text;
};

std::vector<SourceFile> sourcesOf(const std::string& folder) {
    std::vector<SourceFile> out;
    const fs::path root(HAMMERLINE_SOURCE_DIR);
    for (const auto& entry : fs::recursive_directory_iterator(root / folder)) {
        const auto extension = entry.path().extension();
        if (extension != ".cpp" && extension != ".h" && extension != ".hpp") continue;
        std::ifstream in(entry.path());
        std::string text{std::istreambuf_iterator<char>(in), {}};
        out.push_back({fs::relative(entry.path(), root).string(), std::move(text)});
    }
    return out;
}

/// The text with comments, strings and characters blanked, so that braces count.
std::string withoutTexts(const std::string& text) {
    std::string out;
    for (std::size_t i = 0; i < text.size(); ++i) {
        const std::string two = text.substr(i, 2);
        const bool digitMark = text[i] == '\'' && i > 0 && std::isdigit(static_cast<unsigned char>(text[i - 1]));
        if (two == "//") {
            i = text.find('\n', i);
        } else if (two == "/*") {
            i = text.find("*/", i) + 1;
        } else if (text.compare(i, 2, "R\"") == 0) {
            const std::size_t open = text.find('(', i);
            i = text.find(')' + text.substr(i + 2, open - i - 2) + '"', open);
            i = text.find('"', i);
        } else if (text[i] == '"' || (text[i] == '\'' && !digitMark)) {
            const char quote = text[i++];
            while (i < text.size() && text[i] != quote)
                i += text[i] == '\\' ? 2U : 1U;
        } else {
            out += text[i];
        }
        if (i == std::string::npos) break;
    }
    return out;
}

/// Types that are defined at namespace level, with their namespace; an unnamed namespace is called by its file.
std::vector<std::string> typesAtNamespaceLevel(const std::string& text, const std::string& file) {
    static const std::regex space(R"(\bnamespace\s*([\w:]*)\s*$)");
    static const std::regex type(
        R"(\b(?:struct|class|union|enum)(?:\s+class)?\s+(\w+)(?:\s+final)?\s*(:[^:][^;(]*)?$)");
    struct Open {
        bool isNamespace;
        std::string name;
    };
    std::vector<Open> open;
    std::vector<std::string> out;
    std::string head;
    for (const char c : withoutTexts(text)) {
        if (c == '{') {
            std::smatch found;
            const bool atNamespaceLevel =
                std::all_of(open.begin(), open.end(), [](const Open& o) { return o.isNamespace; });
            if (std::regex_search(head, found, space)) {
                open.push_back({true, found[1].length() == 0 ? file : found[1].str()});
            } else {
                if (atNamespaceLevel && std::regex_search(head, found, type)) {
                    std::string name;
                    for (const Open& each : open)
                        name += each.name + "::";
                    out.push_back(name + found[1].str());
                }
                open.push_back({false, {}});
            }
        }
        if (c == '}' && !open.empty()) open.pop_back();
        const bool ends = c == '{' || c == '}' || c == ';';
        ends ? head.clear() : head.push_back(c);
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
    {"refusal", 0},    {"stats", 0},     {"units", 1},      {"piano", 2},  {"pass", 3},
    {"spec", 3},       {"operation", 3}, {"survey", 3},     {"intake", 4}, {"judge", 4},
    {"history", 4},    {"causes", 5},    {"comparison", 5}, {"stroke", 5}, {"experience", 5},
    {"kinematics", 3}, {"reserve", 5},   {"plan", 6},       {"work", 7},   {"sheet", 8},
};

} // namespace

TEST_CASE("no type name is defined twice in one namespace") {
    // Two structs of one name in two units of one program: whichever destructor the linker keeps frees the other's
    // memory. Optimised builds hide it by inlining, -O0 aborts.
    std::map<std::string, std::vector<std::string>> definitions;
    for (const std::string folder : {"core", "db", "ui", "app"})
        for (const SourceFile& source : sourcesOf(folder))
            for (const std::string& name : typesAtNamespaceLevel(source.text, source.file))
                definitions[name].push_back(source.file);
    REQUIRE(definitions.size() > 400);
    for (const auto& [name, files] : definitions) {
        INFO(name << " in " << files.front() << " and " << files.back());
        CHECK(files.size() == 1);
    }
}

TEST_CASE("the reader of type names sees twins, and only twins") {
    const auto of = [](const std::string& text) { return typesAtNamespaceLevel(text, "a.cpp"); };
    CHECK(of("namespace h { struct A { struct B { int b; }; }; struct C; }") == std::vector<std::string>{"h::A"});
    CHECK(of("namespace h { namespace { enum class A { x }; } }") == std::vector<std::string>{"h::a.cpp::A"});
    CHECK(of("namespace h { struct A::Inner { int x; }; void f() { struct L {}; } }").empty());
    CHECK(of("namespace h { /* struct X { */ const char* t = \"struct Y {\"; class Z final : public Q {}; }") ==
          std::vector<std::string>{"h::Z"});
}

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
