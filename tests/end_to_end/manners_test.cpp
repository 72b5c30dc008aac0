// How the command line behaves, against what is usual: GNU's and POSIX's conventions (help and version on standard
// output with status 0, "-" for the standard streams, write errors never silent), https://clig.dev for suggestions.
#include <catch2/catch.hpp>

#include "program.h"

using namespace hammerline::test;

namespace {

std::string newBook(const Folder& folder) {
    const std::string book = folder / "book.hammerline";
    REQUIRE(program({"new", book, "--piano", "Hall", "--action", "upright", "--last-damper", "66"}).status == 0);
    return book;
}

/// A shell line with the program as $H.
Answer shell(const std::string& line) {
    return runWords({"sh", "-c", std::string("H=") + quoted(HAMMERLINE_PROGRAM) + "; " + line});
}

} // namespace

TEST_CASE("help: every option has a word, every command an example that the program reads") {
    const Answer top = program({"help"});
    CHECK(top.status == 0);
    CHECK(program({"--help"}).out == top.out);
    CHECK(program({"-V"}).out == program({"--version"}).out);
    std::istringstream lines(top.out.substr(top.out.find("Commands:\n") + 10));
    int commands = 0;
    for (std::string line; std::getline(lines, line) && !line.empty(); ++commands) {
        const std::string name = line.substr(2, line.find(' ', 2) - 2);
        INFO(name);
        const Answer help = program({"help", name});
        CHECK(help.status == 0);
        CHECK(help.out == program({name, "--help"}).out);
        CHECK(help.out.find("Example:\n  hammerline " + name) != std::string::npos);
        std::istringstream options(help.out.substr(help.out.find("Options:\n") + 9));
        for (std::string option; std::getline(options, option);) {
            INFO(option);
            CHECK(option.find_first_not_of(' ', std::min(option.find("  ", 3), option.size())) != std::string::npos);
        }
        const std::string example = help.out.substr(help.out.find("hammerline " + name, help.out.find("Example:")));
        if (name == "window" || name == "demo") continue;
        // in an empty folder the example is understood: it fails on the file that is not there, never on its own words
        const Folder folder;
        const Answer tried =
            shell("cd " + quoted(folder / "") + " && $H " + example.substr(11, example.find('\n') - 11));
        CHECK(tried.err.find("hammerline help") == std::string::npos);
    }
    CHECK(commands >= 22);
}

TEST_CASE("a mistyped word is answered with the nearest one") {
    CHECK(program({"chek", "a.hammerline"}).err.find("Did you mean check?") != std::string::npos);
    CHECK(program({"check", "a.hammerline", "--pas", "1"}).err.find("Did you mean --pass?") != std::string::npos);
    CHECK(program({"check", "a.hammerline", "--xyzzy"}).err.find("Did you mean") == std::string::npos);
    CHECK(program({"check", "a.hammerline", "--xyzzy"}).status == 2);
    CHECK(program({"help", "chck"}).status == 2);
}

TEST_CASE("a negative reading needs no --") {
    const Folder folder;
    const std::string book = newBook(folder);
    CHECK(program({"enter", book, "40", "lost-motion", "-0.3"}).status == 0);
    CHECK(program({"enter", book, "41", "lost-motion", "--", "-0.3"}).status == 0);
    CHECK(program({"enter", book, "42", "lost-motion", "-.3"}).status == 0);
    const std::string table = program({"export", book, "--out", "-"}).out;
    for (const char* note : {"40", "41"})
        CHECK(table.find(std::string(";") + note + ";lost-motion;1;-0.3;") != std::string::npos);
    CHECK(table.find(";42;lost-motion;1;-.3;") != std::string::npos);
}

TEST_CASE("- is standard input and standard output") {
    const Folder folder;
    const std::string book = newBook(folder);
    const Answer imported = shell("printf 'note,let-off\\n40,3.1\\n41,2.9\\n' | $H import " + quoted(book) + " -");
    CHECK(imported.status == 0);
    const Answer table = program({"export", book, "--out", "-"});
    CHECK(table.out.find(";41;let-off;1;2.9;") != std::string::npos);
    CHECK(program({"export", book, "--json", "--out", "-"}).json().is_object());
    CHECK(program({"print", book, "check", "--out", "-"}).out.rfind("%PDF-", 0) == 0);
}

TEST_CASE("output that is lost is no success") {
    const Folder folder;
    const std::string book = newBook(folder);
    for (const std::string command : {"list", "verify", "check --json", "export --out -"}) {
        INFO(command);
        const std::string name = command.substr(0, command.find(' '));
        const std::string more = command.substr(name.size());
        const Answer lost = shell("$H " + name + ' ' + quoted(book) + more + " >/dev/full");
        if (name == "check" && lost.err.find("no pass") != std::string::npos) continue;
        CHECK(lost.status == 2);
        CHECK(lost.err.find("lost") != std::string::npos);
    }
    CHECK(shell("$H ids >/dev/full").status == 2);
    CHECK(shell("$H --help >/dev/full").status == 2);
}

TEST_CASE("a day that does not exist is refused") {
    const Folder folder;
    const std::string book = newBook(folder);
    const std::vector<std::string> words = {"override", book, "40", "let-off", "2.5", "3", "3.5", "--reason", "wires"};
    const auto with = [&words](const std::string& day) {
        auto all = words;
        all.insert(all.end(), {"--review", day});
        return program(all);
    };
    CHECK(with("2026-99-01").status == 2);
    CHECK(with("2026-02-30").status == 2);
    CHECK(with("2028-02-29").status == 0); // a leap year
}

TEST_CASE("--quiet keeps results and refusals and drops remarks") {
    const Folder folder;
    const std::string book = newBook(folder);
    CHECK(!program({"survey", book}).err.empty());
    const Answer quiet = program({"survey", book, "--quiet"});
    CHECK(quiet.err.empty());
    CHECK(quiet.out == program({"survey", book}).out);
    CHECK(!program({"check", folder / "none.hammerline", "--quiet"}).err.empty());
}

TEST_CASE("a terminal obeys no name, cell or path, and a long one is cut") {
    const Folder folder;
    const std::string book = folder / "b.hammerline", table = folder / "t.csv";
    // CSI of ECMA-48 as escape sequence and as C1 character, and a right-to-left override (Unicode Annex 9)
    const std::string wild = "A\x1b[31mB\xc2\x9b"
                             "2J\xe2\x80\xaeZ";
    CHECK(program({"new", book, "--piano", wild, "--action", "upright"}).status == 0);
    std::ofstream(table) << "note,let off\n1," << wild << "\n2," << std::string(1'000'000, 'x') << "\n";
    const auto tame = [](const std::string& said) {
        INFO(said.substr(0, 2000));
        CHECK(said.find('\x1b') == std::string::npos);
        CHECK(said.find("\xc2\x9b") == std::string::npos);
        CHECK(said.find("\xe2\x80\xae") == std::string::npos);
        CHECK(said.size() < 2000);
    };
    for (const auto& words : {std::vector<std::string>{"list", book},
                              {"import", book, table},
                              {"next", book},
                              {"check", folder / (wild + ".hammerline")},
                              {wild},
                              {"enter", book, wild, "let-off", "3"},
                              {"piano", book, "--attribute", wild + "=" + wild}}) {
        const Answer answer = program(words);
        tame(answer.out);
        tame(answer.err);
    }
    CHECK(program({"list", book}).out.find("\\x1b[31m") != std::string::npos);
}

TEST_CASE("what is no file is not waited for") {
    const Folder folder;
    const std::string book = folder / "b.hammerline", pipe = folder / "pipe";
    CHECK(program({"new", book, "--piano", "P", "--action", "upright"}).status == 0);
    REQUIRE(runWords({"mkfifo", pipe}).status == 0);
    for (const auto& words : {std::vector<std::string>{"import", book, pipe},
                              {"import", book, "/dev/zero"},
                              {"piano", book, "--spec", pipe},
                              {"advice", book, pipe},
                              {"photo", book, pipe},
                              {"merge", book, pipe},
                              {"restore", book, pipe},
                              {"check", pipe}}) {
        std::vector<std::string> line = {"timeout", "30", HAMMERLINE_PROGRAM};
        line.insert(line.end(), words.begin(), words.end());
        const Answer answer = runWords(line);
        INFO(words[0] << ' ' << answer.err);
        CHECK(answer.status == 2);
        CHECK_FALSE(answer.err.empty());
    }
}

TEST_CASE("a picture of a book that does not open is refused, and nobody is asked") {
    const Folder folder;
    const std::string book = folder / "b.hammerline", picture = folder / "p.png";
    CHECK(program({"demo", book}).status == 0);
    std::string bytes = readAll(book);
    std::fill(bytes.begin() + 5000, bytes.begin() + 40'000, '\xee');
    std::ofstream(book, std::ios::binary) << bytes;
    const Answer answer = runWords(
        {"timeout", "60", HAMMERLINE_PROGRAM, "window", book, "--picture", picture, "--settings", folder / "s.ini"});
    CHECK(answer.status == 2);
    CHECK(answer.err.find("is damaged") != std::string::npos);
    CHECK_FALSE(fs::exists(picture));
}

namespace {

/// The demo book: passes, a plan, findings.
std::string demoBook(const Folder& folder) {
    const std::string book = folder / "demo.hammerline";
    REQUIRE(program({"demo", book}).status == 0);
    return book;
}

std::vector<std::string> linesOf(const std::string& text) {
    std::vector<std::string> out;
    std::istringstream in(text);
    for (std::string line; std::getline(in, line);)
        out.push_back(line);
    return out;
}

/// Letters of a terminal, not bytes: what UTF-8 continues does not count.
std::size_t columnOf(const std::string& line, std::size_t byte) {
    return static_cast<std::size_t>(
        std::count_if(line.begin(), line.begin() + static_cast<std::ptrdiff_t>(byte),
                      [](char c) { return (static_cast<unsigned char>(c) & 0xC0) != 0x80; }));
}

} // namespace

TEST_CASE("people get a table whose columns stand under their headings, and sentences only with --spoken") {
    const Folder folder;
    const std::string book = demoBook(folder);
    const Answer table = program({"check", book});
    const auto lines = linesOf(table.out);
    const auto head =
        std::find_if(lines.begin(), lines.end(), [](const auto& each) { return each.rfind("Note", 0) == 0; });
    REQUIRE(head != lines.end());
    const std::size_t dimension = columnOf(*head, head->find("Dimension"));
    const auto ranked = program({"check", book, "--json"}).json().at("ranked");
    std::size_t rows = 0;
    for (auto line = head + 1; line != lines.end(); ++line, ++rows) {
        INFO(*line);
        const std::size_t second =
            line->find("  ") == std::string::npos ? 0 : line->find_first_not_of(' ', line->find("  "));
        CHECK(columnOf(*line, second) == dimension);
        CHECK(line->back() != ' ');
    }
    CHECK(rows == static_cast<std::size_t>(std::count_if(ranked.begin(), ranked.end(), [](const auto& each) {
              return each.at("verdict") != "within" || each.at("uneven") == true || each.at("step") == true;
          })));
    CHECK(table.out.find("deviation plus") == std::string::npos);
    const Answer spoken = program({"check", book, "--spoken"});
    CHECK(spoken.out.find("Note 77, C♯7, lost motion, 0.9 millimetres, too much, deviation plus 3.0") !=
          std::string::npos);
    CHECK(linesOf(spoken.out).size() + 1 == lines.size());
    for (const char* command : {"check", "plan", "action", "compare"}) {
        INFO(command);
        CHECK(program({command, book, "--json"}).out == program({command, book, "--json", "--spoken"}).out);
        CHECK(program({command, book}).out != program({command, book, "--spoken"}).out);
    }
}

TEST_CASE("a wrong value is answered with what the option takes") {
    const Folder folder;
    const std::string book = newBook(folder);
    const auto said = [](std::vector<std::string> words) {
        const Answer answer = program(std::move(words));
        CHECK(answer.status == 2);
        return answer.err.substr(0, answer.err.find(" See:"));
    };
    CHECK(said({"check", book, "--rule", "foo"}) == "--rule takes plain, guard95 or guardU; \"foo\" is none.");
    CHECK(said({"pass", book, "--stack", "x"}) == "--stack takes in or out; \"x\" is none.");
    CHECK(said({"pass", book, "--humidity=wet"}) == "--humidity takes a number; \"wet\" is none.");
    CHECK(said({"window", book, "--text-size", "10"}) == "--text-size takes 80 to 200; \"10\" is none.");
    CHECK(said({"plan", book, "--minutes"}) == "--minutes needs a value: what can be done in so many minutes.");
    CHECK(said({"enter", book, "40"}) == "enter needs DIMENSION: what was measured, such as let-off.");
    CHECK(said({"check", book, "more"}).rfind("check has no place for \"more\"", 0) == 0);
    CHECK(said({"check", book, "-x"}) == "check has no option -x.");
    CHECK(program({"pass", book, "--humidity", "21,5", "--temperature=-1,5"}).status == 0); // as readings are typed
}

TEST_CASE("cautions in full once, then the first of them and how many more") {
    const Folder folder;
    const std::string book = newBook(folder);
    const std::string first = program({"survey", book}).err;
    REQUIRE(program({"survey", book, "--add", "40 jack-spring broken", "--quiet"}).status == 1);
    const std::string later = program({"survey", book}).err;
    CHECK(first.find("tonnes") != std::string::npos);
    CHECK(later.find("tonnes") == std::string::npos);
    CHECK(later.find("falls backward") != std::string::npos);
    CHECK(later.find("more cautions hold here: --cautions.") != std::string::npos);
    CHECK(program({"survey", book, "--cautions"}).err.find("tonnes") != std::string::npos);
}

TEST_CASE("one is one, and nothing is coloured") {
    const Folder folder;
    const std::string book = newBook(folder);
    CHECK(program({"enter", book, "40", "let-off", "3.1"}).out == "Pass 1: 1 reading taken, 0 questions, 0 refused.\n");
    CHECK(program({"list", book}).out.find("1 reading ") != std::string::npos);
    for (const char* command : {"check", "plan", "survey", "list", "estimate"}) {
        const Answer plain = program({command, book});
        CHECK((plain.out + plain.err).find('\x1b') == std::string::npos);
        CHECK(shell("NO_COLOR=1 TERM=xterm $H " + std::string(command) + ' ' + quoted(book)).out == plain.out);
    }
}

TEST_CASE("a zone of its own for a range of notes is one act") {
    const Folder folder;
    const std::string book = newBook(folder);
    const Answer done =
        program({"override", book, "20-22,40", "let-off", "2.5", "3", "3.5", "--reason", "thick strings", "--json"});
    CHECK(done.json().at("notes") == 4);
    REQUIRE(program({"enter", book, "21", "let-off", "3.6"}).status == 0);
    REQUIRE(program({"enter", book, "23", "let-off", "3.6"}).status == 0);
    const auto ranked = program({"check", book, "--json"}).json().at("ranked");
    for (const auto& each : ranked)
        if (each.at("note") == 21) CHECK(each.at("overridden") == true);
    REQUIRE(program({"undo", book}).status == 0);
    REQUIRE(program({"undo", book}).status == 0);
    REQUIRE(program({"undo", book}).status == 0); // the zones, all four
    CHECK(program({"export", book, "--json", "--out", "-"}).out.find("thick strings") == std::string::npos);
    CHECK(program({"override", book, "90", "let-off", "2", "3", "4", "--reason", "x"}).status == 2);
}
