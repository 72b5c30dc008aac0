// Whatever file is given to it, the program stays small: what a person could never look through is refused with a
// sentence before it fills the memory.
#include <catch2/catch.hpp>
#include <fcntl.h>
#include <sys/resource.h>

#include "program.h"
#include <functional>

using namespace hammerline::test;

namespace {

#if defined(HAMMERLINE_PROGRAM_IS_SANITIZED)
// the sanitizer keeps a map of the memory and borders around every piece of it, some 200 MB before a file is read: the
// bound of the program proper does not hold, but a file that is kept tenfold is still far beyond this one
constexpr long kMostMegabytes = 4 * 128;
#else
constexpr long kMostMegabytes = 128;
#endif

struct Peak {
    int status = -1;
    long megabytes = 0;
    std::string err;
};

Peak measured(const std::vector<std::string>& words, const std::string& folder) {
    std::vector<std::string> all = words;
    all.insert(all.begin(), HAMMERLINE_PROGRAM);
    std::vector<char*> arguments;
    for (std::string& word : all)
        arguments.push_back(word.data());
    arguments.push_back(nullptr);
    const std::string err = folder + "/err";
    const pid_t child = ::fork();
    if (child == 0) {
        ::setenv("ASAN_OPTIONS", "detect_leaks=0:quarantine_size_mb=1", 1);
        ::dup2(::open("/dev/null", O_RDWR), STDIN_FILENO);
        ::dup2(STDIN_FILENO, STDOUT_FILENO);
        ::dup2(::open(err.c_str(), O_WRONLY | O_CREAT | O_TRUNC, 0600), STDERR_FILENO);
        ::execv(arguments[0], arguments.data());
        ::_exit(127);
    }
    int status = 0;
    struct rusage used {};
    ::wait4(child, &status, 0, &used);
    return {WIFEXITED(status) ? WEXITSTATUS(status) : -1, used.ru_maxrss / 1024, readAll(err)};
}

std::string times(const std::string& text, std::size_t count) {
    std::string all;
    all.reserve(text.size() * count);
    for (std::size_t i = 0; i < count; ++i)
        all += text;
    return all;
}

} // namespace

TEST_CASE("no bad file fills the memory") {
    const Folder folder;
    const std::string book = folder / "hall.hammerline", file = folder / "bad";
    REQUIRE(program({"new", book, "--piano", "Hall", "--action", "upright"}).status == 0);
    const std::string before = readAll(book);
    const std::string heads = "piano;pass;note;dimension;trial;text;unit;state;at\r\n";
    const auto rows = [&](int count, const std::function<std::string(int)>& row) {
        std::string all = heads;
        for (int i = 0; i < count; ++i)
            all += row(i) + "\r\n";
        return all;
    };
    const auto cell = [](int i, const std::string& text) {
        return "Hall;1;" + std::to_string(i % 88 + 1) + ";key-dip;" + std::to_string(i / 88 % 99 + 1) + ';' + text +
               ";mm;;";
    };
    const std::string exportHead = R"({"format": "hammerline-export", "version": 1, "pianos": [)";
    struct Row {
        const char* name;
        std::function<std::string()> bytes;
        std::string says;
    };
    const Row table[] = {
        {"every ninth row refused",
         [&] { return rows(300'000, [&](int i) { return cell(i, i % 9 == 0 ? "x" : "10"); }); },
         "cannot be read or are doubtful"},
        {"498,000 questions", [&] { return rows(498'000, [&](int i) { return cell(i, "100"); }); },
         "cannot be read or are doubtful"},
        {"a pass for every row",
         [&] { return rows(300'000, [&](int i) { return "Hall;p" + std::to_string(i) + ";1;key-dip;1;10;mm;;"; }); },
         "more than 1,000 passes"},
        {"a row of separators", [&] { return heads + times(";", 10'000'000); }, "more than 4,096 columns"},
        {"a wide table of separators", [&] { return "note,key-dip\n1" + times(",", 7'000'000); },
         "more than 4,096 columns"},
        {"a wide table of many rows", [&] { return "note,key-dip\n" + times("1,10\n", 1'500'000); },
         "more than 200,000 cells"},
        {"a quotation mark that is never closed", [&] { return heads + "Hall;\"" + times("x", 40'000'000); },
         "never closed"},
        {"a large table of another form", [&] { return "note,key-dip\n" + times("1,10\n", 10'000'000); },
         "larger than what can be taken in at once"},
        {"zero bytes", [&] { return std::string(60'000'000, '\0'); }, "larger than what can be taken in at once"},
        {"a long list in an export", [&] { return exportHead + times("1,", 60'000'000) + "1]}"; }, "more than 10,000"},
        {"an export that breaks off", [&] { return exportHead + times(R"({"name": "Hall"},)", 1'000'000); },
         "from here on this is no JSON"},
        {"lists in lists", [&] { return exportHead + times("[", 50'000'000); }, "nested deeper than 32 levels"},
        {"another JSON", [&] { return "{\"a\": [" + times(R"({"x": 1, "y": "abc"},)", 4'000'000) + "1]}"; },
         "/format: it is missing"},
    };
    for (const auto& [name, bytes, says] : table) {
        std::ofstream(file, std::ios::binary) << bytes();
        const Peak peak = measured({"import", book, file}, folder / "");
        INFO(name << ", " << peak.megabytes << " MB, " << peak.err.substr(0, 200));
        CHECK(peak.status == 2);
        CHECK(peak.megabytes < kMostMegabytes);
        CHECK(peak.err.find(says) != std::string::npos);
        CHECK(readAll(book) == before);
    }
    std::ofstream(file, std::ios::binary) << "{\"zones\": [" + times(R"({"low": 1, "high": 2},)", 1'800'000) + "1]}";
    const Peak sheet = measured({"piano", book, "--spec", file}, folder / "");
    INFO(sheet.megabytes << " MB, " << sheet.err);
    CHECK(sheet.status == 2);
    CHECK(sheet.megabytes < kMostMegabytes);
    CHECK(sheet.err.find("larger than what can be taken in at once (1 MB") != std::string::npos);
}
