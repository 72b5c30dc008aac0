// The kill test on the command line: the program is started again and again on one book and killed with SIGKILL at
// random moments. What it had said to have taken is there, a file of readings is there as a whole or not at all, and
// the book is sound. Usage: soak CYCLES PROGRAM [SEED]
#include "db/bench_book.h"

#include <fcntl.h>
#include <sys/wait.h>
#include <unistd.h>

#include <chrono>
#include <csignal>
#include <cstdio>
#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <random>
#include <sstream>
#include <thread>

using namespace hammerline;
namespace fs = std::filesystem;
using Clock = std::chrono::steady_clock;

namespace {

constexpr std::array kTyped = {dimension::keyDip, dimension::blow, dimension::letOff, dimension::checking};

[[noreturn]] void broken(const std::string& what) {
    std::fprintf(stderr, "soak: %s\n", what.c_str());
    std::exit(1);
}

template <class T>
T ok(Outcome<T> outcome, const char* doing) {
    if (!outcome)
        broken(std::string(doing) + ": " + std::string(key(outcome.error().code)) + " " + outcome.error().detail);
    return std::move(*outcome);
}

std::string readAll(const fs::path& path) {
    std::ifstream in(path, std::ios::binary);
    std::ostringstream text;
    text << in.rdbuf();
    return text.str();
}

struct Run {
    bool killed = false;
    std::chrono::microseconds took{};
    std::string said;
};

/// Starts the program and kills it after `life`; none: lets it end.
Run start(std::vector<std::string> words, const fs::path& folder, std::optional<std::chrono::microseconds> life) {
    std::vector<char*> arguments;
    for (std::string& word : words)
        arguments.push_back(word.data());
    arguments.push_back(nullptr);
    const fs::path out = folder / "said";
    const auto begun = Clock::now();
    const pid_t child = ::fork();
    if (child < 0) broken("fork");
    if (child == 0) {
        const int file = ::open(out.c_str(), O_WRONLY | O_CREAT | O_TRUNC, 0600);
        ::dup2(file, STDOUT_FILENO);
        ::dup2(::open("/dev/null", O_WRONLY), STDERR_FILENO);
        ::execv(arguments[0], arguments.data());
        ::_exit(127);
    }
    if (life) {
        std::this_thread::sleep_for(*life); // the random moment itself, not a wait for anything
        ::kill(child, SIGKILL);
    }
    int status = 0;
    ::waitpid(child, &status, 0);
    if (!life && (!WIFEXITED(status) || WEXITSTATUS(status) != 0)) broken("the program does not do " + words[1]);
    const auto took = std::chrono::duration_cast<std::chrono::microseconds>(Clock::now() - begun);
    return {WIFSIGNALED(status), took, readAll(out)};
}

class Soak {
public:
    Soak(std::string program, unsigned seed) : m_program(std::move(program)), m_chance(seed) {
        std::string pattern = (fs::temp_directory_path() / "hammerline-soak-XXXXXX").string();
        m_folder = ::mkdtemp(pattern.data());
        m_book = (m_folder / "soak.hammerline").string();
        m_table = m_folder / "table.csv";
        const auto made = start({m_program, "new", m_book, "--piano", "Soak", "--action", "upright"}, m_folder, {});
        m_longest = made.took;
        m_longest = std::max(start(enterWords(1, kTyped[0], "10"), m_folder, {}).took, m_longest);
        m_expected[{NoteNumber{1}, kTyped[0]}] = "10";
    }
    ~Soak() {
        std::error_code ignored;
        fs::remove_all(m_folder, ignored);
    }
    Soak(const Soak&) = delete;
    Soak& operator=(const Soak&) = delete;

    void cycle(int number) {
        if (number % 5 == 4)
            importTable(number);
        else
            enterOne(number);
        verify();
    }

    /// A journal that never held anything may lie beside the book until the next write, and no longer.
    void lastWrite() {
        start(enterWords(1, kTyped[0], "10.1"), m_folder, {});
        if (fs::exists(m_book + "-journal")) broken("a journal is left behind");
    }

    int killed() const { return m_killed; }
    int acknowledged() const { return m_acknowledged; }
    int halfWay() const { return m_halfWay; }

private:
    std::vector<std::string> enterWords(int note, DimensionId id, const std::string& text) const {
        return {m_program, "enter", m_book, std::to_string(note), std::string(key(id)), text, "--take-doubtful"};
    }

    Run killedRun(std::vector<std::string> words) {
        const auto most = m_longest.count() * 11 / 10;
        const std::chrono::microseconds life{std::uniform_int_distribution<std::int64_t>(0, most)(m_chance)};
        Run run = start(std::move(words), m_folder, life);
        if (run.killed) ++m_killed;
        if (fs::exists(m_book + "-journal")) ++m_halfWay; // killed in the middle of a write
        return run;
    }

    void enterOne(int number) {
        const int note = std::uniform_int_distribution<int>(1, 88)(m_chance);
        const DimensionId id = kTyped[static_cast<std::size_t>(number) % kTyped.size()];
        const bool wide = id == dimension::blow || id == dimension::checking;
        char text[16];
        std::snprintf(text, sizeof text, "%s.%05d", wide ? "14" : "3", number % 100'000);
        const Run run = killedRun(enterWords(note, id, text));
        const bool acknowledged = run.said.find("1 readings taken") != std::string::npos;
        m_acknowledged += acknowledged;
        settle({{Cell{NoteNumber{note}, id}, text}}, acknowledged);
    }

    void importTable(int number) {
        std::map<Cell, std::string> fresh;
        std::string rows = "note,lost motion,after touch\r\n";
        for (int note = 1; note <= 88; ++note) {
            char text[16];
            std::snprintf(text, sizeof text, "0.%05d", number % 100'000);
            rows += std::to_string(note) + "," + text + "," + "1" + (text + 1) + "\r\n";
            fresh[{NoteNumber{note}, dimension::lostMotion}] = text;
            fresh[{NoteNumber{note}, dimension::aftertouch}] = std::string("1") + (text + 1);
        }
        std::ofstream(m_table, std::ios::binary) << rows;
        const Run run = killedRun({m_program, "import", m_book, m_table.string(), "--take-doubtful"});
        const bool acknowledged = run.said.find("176 readings taken") != std::string::npos;
        m_acknowledged += acknowledged;
        settle(fresh, acknowledged);
    }

    /// All of what was written is there, or (where nothing was said) none of it; all else is as it was.
    void settle(const std::map<Cell, std::string>& fresh, bool acknowledged) {
        const auto book = ok(BenchBook::open(m_book), "open");
        const PianoRecord record = ok(book.load(ok(book.findPiano({}), "find")), "load");
        std::map<Cell, std::string> found;
        if (record.passes.size() != 1) broken("there are " + std::to_string(record.passes.size()) + " passes");
        for (const auto& [cell, measured] : record.passes.front().cells)
            if (!measured.missing()) found[cell] = measured.latest()->typed;
        auto after = m_expected;
        for (const auto& [cell, text] : fresh)
            after[cell] = text;
        if (found == after)
            m_expected = after;
        else if (acknowledged)
            broken("a reading that was acknowledged is lost");
        else if (found != m_expected)
            broken("something is half done");
    }

    void verify() {
        const auto book = ok(BenchBook::open(m_book), "open");
        const Verification verification = ok(book.verify(), "verify");
        if (!verification.sound) broken("not sound: " + verification.problems.front().what);
    }

    std::string m_program, m_book;
    fs::path m_folder, m_table;
    std::mt19937 m_chance;
    std::chrono::microseconds m_longest{};
    std::map<Cell, std::string> m_expected;
    int m_killed = 0, m_acknowledged = 0, m_halfWay = 0;
};

} // namespace

int main(int argc, char** argv) {
    const int cycles = argc > 2 ? std::atoi(argv[1]) : 0;
    if (cycles < 1) broken("say how many cycles, and which program");
    const unsigned seed = argc > 3 ? static_cast<unsigned>(std::atoi(argv[3])) : std::random_device{}();
    std::printf("seed %u\n", seed);
    std::fflush(stdout);
    Soak soak(argv[2], seed);
    for (int i = 0; i < cycles; ++i)
        soak.cycle(i);
    soak.lastWrite();
    std::printf("command line: %d cycles, %d killed (%d in the middle of a write), %d acknowledged, all there, sound\n",
                cycles, soak.killed(), soak.halfWay(), soak.acknowledged());
    return 0;
}
