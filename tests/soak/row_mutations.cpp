// Books whose rows were changed from outside: random values in random columns, values of two rows swapped, rows
// deleted, with every CHECK put aside. Every command and sheet then refuses with a sentence or does its work: none
// crashes, runs for ever or takes all the memory.
//   row_mutations PROGRAM COUNT [all [FROM]]    without "all" each book meets three of the commands in turn
#include "tests/soak/mutated_rows.h"

#include <fcntl.h>
#include <sqlite3.h>
#include <sys/resource.h>
#include <sys/wait.h>
#include <unistd.h>

#include <cstdio>
#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <sstream>
#include <string>
#include <vector>

namespace fs = std::filesystem;

namespace {

using Words = std::vector<std::string>;

constexpr rlim_t kMostSeconds = 30;      // of the processor, with sanitizers
constexpr long kMostKilobytes = 900'000; // likewise
constexpr std::size_t kCommandsEach = 3;

[[noreturn]] void broken(const std::string& what) {
    std::fprintf(stderr, "row_mutations: %s\n", what.c_str());
    std::exit(1);
}

std::string readAll(const fs::path& path) {
    std::ifstream in(path, std::ios::binary);
    std::ostringstream text;
    text << in.rdbuf();
    return text.str();
}

/// "@": the folder.
const std::vector<Words>& commands() {
    static const std::vector<Words> all = {
        {"list", "@/book.hammerline", "--json"},
        {"check", "@/book.hammerline"},
        {"check", "@/book.hammerline", "--json", "--pass", "2"},
        {"action", "@/book.hammerline"},
        {"action", "@/book.hammerline", "--note", "40", "--json"},
        {"plan", "@/book.hammerline", "--json"},
        {"compare", "@/book.hammerline", "--json"},
        {"survey", "@/book.hammerline"},
        {"survey", "@/book.hammerline", "--json"},
        {"work", "@/book.hammerline"},
        {"next", "@/book.hammerline"},
        {"experience", "@/book.hammerline"},
        {"visits", "@/book.hammerline"},
        {"estimate", "@/book.hammerline"},
        {"remark", "@/book.hammerline"},
        {"photo", "@/book.hammerline"},
        {"photo", "@/book.hammerline", "--show", "1", "--out", "@/shown.png"},
        {"export", "@/book.hammerline", "--out", "@/out.csv"},
        {"export", "@/book.hammerline", "--out", "@/out.json"},
        {"share", "@/book.hammerline", "--out", "@/out.html"},
        {"print", "@/book.hammerline", "adjustment", "--out", "@/out.pdf"},
        {"print", "@/book.hammerline", "check", "--out", "@/out.pdf"},
        {"print", "@/book.hammerline", "survey", "--out", "@/out.pdf"},
        {"print", "@/book.hammerline", "parts", "--out", "@/out.pdf"},
        {"print", "@/book.hammerline", "labels", "--out", "@/out.pdf"},
        {"print", "@/book.hammerline", "comparison", "--out", "@/out.pdf"},
        {"print", "@/book.hammerline", "record", "--out", "@/out.pdf"},
        {"print", "@/book.hammerline", "action", "--out", "@/out.pdf"},
        {"print", "@/book.hammerline", "gauges", "--out", "@/out.pdf"},
        {"print", "@/book.hammerline", "estimate", "--out", "@/out.pdf"},
        {"print", "@/book.hammerline", "card", "--out", "@/out.pdf"},
        {"print", "@/book.hammerline", "work", "--out", "@/out.pdf"},
        {"verify", "@/book.hammerline"},
        {"window", "@/book.hammerline", "--picture", "@/out.png", "--settings", "@/window.ini"},
        {"backup", "@/book.hammerline"},
        {"restore", "@/book.hammerline", "--rescue", "@/rescued.hammerline"},
        {"merge", "@/sound.hammerline", "@/book.hammerline"},
        {"enter", "@/book.hammerline", "40", "let-off", "3.1"},
        {"undo", "@/book.hammerline"},
        {"redo", "@/book.hammerline"},
        {"tick", "@/book.hammerline", "--all"},
        {"piano", "@/book.hammerline", "--owner", "the school"},
    };
    return all;
}

struct Ran {
    int status = -1;
    int killedBy = 0;
    long kilobytes = 0;
    std::string refused;
};

Ran run(const std::string& program, Words words, const fs::path& folder) {
    words.insert(words.begin(), program);
    std::vector<char*> arguments;
    for (std::string& word : words) {
        if (word.starts_with('@')) word.replace(0, 1, folder.string());
        arguments.push_back(word.data());
    }
    arguments.push_back(nullptr);
    const fs::path beside = folder.parent_path();
    const pid_t child = fork();
    if (child == 0) {
        const rlimit limit{kMostSeconds, kMostSeconds};
        setrlimit(RLIMIT_CPU, &limit);
        for (const auto& [name, value] : {std::pair<const char*, std::string>{"LC_ALL", "C.UTF-8"},
                                          {"QT_QPA_PLATFORM", "offscreen"},
                                          {"XDG_RUNTIME_DIR", beside.string()},
                                          {"XDG_CONFIG_HOME", beside.string()},
                                          {"ASAN_OPTIONS", "detect_leaks=0:exitcode=99"}})
            setenv(name, value.c_str(), 1);
        dup2(open("/dev/null", O_RDWR), STDIN_FILENO);
        dup2(open("/dev/null", O_WRONLY), STDOUT_FILENO);
        dup2(open((beside / "refused").c_str(), O_WRONLY | O_CREAT | O_TRUNC, 0600), STDERR_FILENO);
        execv(arguments[0], arguments.data());
        _exit(127);
    }
    int status = 0;
    rusage used{};
    wait4(child, &status, 0, &used);
    return {WIFEXITED(status) ? WEXITSTATUS(status) : -1, WIFSIGNALED(status) ? WTERMSIG(status) : 0, used.ru_maxrss,
            readAll(beside / "refused")};
}

class Mutations {
public:
    explicit Mutations(std::string program) : m_program(fs::absolute(program)) {
        std::string pattern = (fs::temp_directory_path() / "hammerline-rows-XXXXXX").string();
        m_root = fs::canonical(mkdtemp(pattern.data()));
        fs::create_directories(m_root / "now");
        const auto must = [&](const Words& words) {
            if (const Ran ran = run(m_program, words, m_root / "now"); ran.status > 1)
                broken(words[0] + ": " + ran.refused);
        };
        const std::string book = "@/book.hammerline";
        must({"demo", book});
        must({"remark", book, "glued before", "--note", "40"});
        must({"photo", book, std::string(HAMMERLINE_SOURCE_DIR) + "/resources/icon/128.png", "--note", "40"});
        must({"override", book, "40", "let-off", "2.5", "3", "3.5", "--reason", "thick strings"});
        must({"survey", book, "--symptom", "20-30 " + symptom()});
        must({"piano", book, "--owner", "the school"});
        must({"work", book, "--step", "stand-it-safe", "--done", "all"});
        must({"enter", book, "40", "let-off", "3.3"});
        must({"undo", book});
        fs::rename(m_root / "now/book.hammerline", m_root / "small.hammerline");
        fs::copy_file(m_root / "small.hammerline", m_root / "large.hammerline");
        pad(m_root / "large.hammerline");
    }
    ~Mutations() {
        std::error_code ignored;
        fs::remove_all(m_root, ignored);
    }
    Mutations(const Mutations&) = delete;
    Mutations& operator=(const Mutations&) = delete;

    void one(unsigned number, bool all) {
        const fs::path now = m_root / "now";
        fs::remove_all(now);
        fs::create_directory(now);
        const bool large = number % 2 == 1;
        const fs::path book = now / "book.hammerline";
        fs::copy_file(m_root / (large ? "large.hammerline" : "small.hammerline"), book);
        fs::copy_file(m_root / "small.hammerline", now / "sound.hammerline");
        std::string what;
        {
            hammerline::soak::MutatedRows rows(book, number);
            for (unsigned change = 0; change <= number % 3; ++change)
                what += rows.change() + "; ";
        }
        const auto& each = commands();
        const std::size_t count = all ? each.size() : kCommandsEach;
        for (std::size_t i = 0; i < count; ++i)
            look(number, what, all ? each[i] : each[(number * kCommandsEach + i) % each.size()]);
    }

    long runs() const { return m_runs; }
    long wrongs() const { return m_wrongs; }

private:
    static std::string symptom() { return "double-strike"; }

    /// Above the size up to which a book is checked as it is opened.
    static void pad(const fs::path& book) {
        sqlite3* db = nullptr;
        sqlite3_open(book.c_str(), &db);
        const char* sql = "CREATE TABLE pad (x); INSERT INTO pad VALUES (zeroblob(17 << 20)); DROP TABLE pad";
        if (sqlite3_exec(db, sql, nullptr, nullptr, nullptr) != SQLITE_OK) broken("the book cannot be made larger");
        sqlite3_close(db);
    }

    void look(unsigned number, const std::string& what, const Words& words) {
        const Ran ran = run(m_program, words, m_root / "now");
        ++m_runs;
        std::string wrong;
        if (ran.killedBy != 0) wrong = "killed by signal " + std::to_string(ran.killedBy);
        if (ran.killedBy == 0 && (ran.status < 0 || ran.status > 2)) wrong = "ended with " + std::to_string(ran.status);
        if (ran.status == 2 && ran.refused.empty()) wrong = "refused without a sentence";
        if (ran.kilobytes > kMostKilobytes) wrong = "took " + std::to_string(ran.kilobytes) + " kB";
        if (wrong.empty()) return;
        ++m_wrongs;
        std::string line;
        for (const std::string& word : words)
            line += word + ' ';
        std::printf("book %u (%s) %s: %s\n    %s\n", number, what.c_str(), line.c_str(), wrong.c_str(),
                    ran.refused.substr(0, 2000).c_str());
        std::fflush(stdout);
    }

    std::string m_program;
    fs::path m_root;
    long m_runs = 0, m_wrongs = 0;
};

} // namespace

int main(int argc, char** argv) {
    const unsigned count = argc > 2 ? static_cast<unsigned>(std::atoi(argv[2])) : 0;
    if (count == 0) broken("row_mutations PROGRAM COUNT [all [FROM]]");
    const unsigned from = argc > 4 ? static_cast<unsigned>(std::atoi(argv[4])) : 0;
    Mutations mutations(argv[1]);
    for (unsigned number = from; number < from + count; ++number)
        mutations.one(number, argc > 3);
    std::printf("row mutations: %u books, %ld runs, %ld wrong\n", count, mutations.runs(), mutations.wrongs());
    return mutations.wrongs() == 0 ? 0 : 1;
}
