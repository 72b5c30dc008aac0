// What keeping a reading costs over the bare database, as ratios: one durable reading against INSERT + COMMIT at the
// same journal mode and synchronous, and the import of a million readings in the long form against `sqlite3 .import` of
// the same rows. Prints NAME VALUE UNIT goal GOAL ok|short.
//   bench_durable [FOLDER] [READINGS]      FOLDER: on the disk to measure (the working folder)
#include "db/bench_book.h"

#include <SQLiteCpp/SQLiteCpp.h>
#include <fcntl.h>
#include <sys/resource.h>
#include <sys/vfs.h>
#include <sys/wait.h>
#include <unistd.h>

#include <algorithm>
#include <chrono>
#include <cstdio>
#include <cstdlib>
#include <filesystem>
#include <fstream>

using namespace hammerline;
namespace fs = std::filesystem;
using Clock = std::chrono::steady_clock;

namespace {

constexpr std::array kMeasured = {dimension::keyDip, dimension::blow, dimension::letOff, dimension::checking,
                                  dimension::downWeight};
constexpr std::array kTyped = {"10,1", "46", "3,2", "14,5", "52"};
constexpr std::array<std::int64_t, 5> kCounts = {10'100'000, 46'000'000, 3'200'000, 14'500'000, 52'000};
constexpr int kTrials = 10;
constexpr int kPairs = 1000;

[[noreturn]] void stop(const std::string& why) {
    std::fprintf(stderr, "bench_durable: %s\n", why.c_str());
    std::exit(1);
}

template <class T>
T ok(Outcome<T> outcome) {
    if (!outcome) stop("refused: " + std::string(key(outcome.error().code)) + " " + outcome.error().detail);
    return std::move(*outcome);
}

double secondsSince(Clock::time_point begun) {
    return std::chrono::duration<double>(Clock::now() - begun).count();
}

double median(std::vector<double> values) {
    std::sort(values.begin(), values.end());
    return (values[(values.size() - 1) / 2] + values[values.size() / 2]) / 2;
}

void line(const char* name, double value, const char* unit, double goal) {
    std::printf("%s %.3f %s goal %g %s\n", name, value, unit, goal, value <= goal ? "ok" : "short");
    std::fflush(stdout);
}

/// A file system in memory does not sync, nor does a disk that answers faster than any can.
bool syncs(const fs::path& folder) {
    struct statfs of {};
    constexpr long kTmpfs = 0x01021994, kRamfs = static_cast<long>(0x858458f6);
    if (::statfs(folder.c_str(), &of) != 0 || of.f_type == kTmpfs || of.f_type == kRamfs) return false;
    const fs::path probe = folder / "probe";
    const int file = ::open(probe.c_str(), O_WRONLY | O_CREAT | O_TRUNC, 0600);
    std::vector<double> taken;
    for (int i = 0; i < 50; ++i) {
        const auto begun = Clock::now();
        if (::pwrite(file, &i, sizeof i, 0) != sizeof i || ::fsync(file) != 0) break;
        taken.push_back(secondsSince(begun));
    }
    ::close(file);
    fs::remove(probe);
    return taken.size() == 50 && median(taken) > 20e-6;
}

Piano upright() {
    Piano piano = *makePiano(ActionKind::upright);
    piano.name = "Speed";
    return piano;
}

/// The n-th reading of a pass, each its own cell and trial.
NewReading reading(int n) {
    const std::size_t which = static_cast<std::size_t>(n) % kMeasured.size();
    const int of = n / static_cast<int>(kMeasured.size());
    NewReading each{{NoteNumber{of % 88 + 1}, kMeasured[which]}, {}};
    each.reading.count = kCounts[which];
    each.reading.typed = kTyped[which];
    each.reading.typedUnit = which == 4 ? "g" : "mm";
    each.reading.trial = of / 88 + 1;
    return each;
}

void durableReading(const fs::path& folder) {
    const std::string ours = (folder / "ours.hammerline").string(), bare = (folder / "bare.hammerline").string();
    auto book = ok(BenchBook::create(ours));
    const std::string piano = ok(book.addPiano(upright(), "upright"));
    ok(book.addPass(piano, {"as found", {}, {}, false, false, {}}));
    const NewReading first = reading(0);
    ok(book.store(piano, 1, {&first, 1}));
    fs::copy_file(ours, bare);
    SQLite::Database db(bare, SQLite::OPEN_READWRITE);
    for (const char* pragma : {"PRAGMA journal_mode=DELETE", "PRAGMA synchronous=EXTRA", "PRAGMA foreign_keys=ON"})
        db.exec(pragma);
    SQLite::Statement insert(db, "INSERT INTO reading (pass_id, note, dimension_id, trial, act_id, relation, value, "
                                 "typed, unit) VALUES (1, ?, 1, ?, (SELECT max(id) FROM act), '=', ?, ?, ?)");
    std::vector<double> kept, inserted;
    for (int n = 1; n <= kPairs; ++n) {
        const NewReading each = reading(n);
        auto begun = Clock::now();
        ok(book.store(piano, 1, {&each, 1}));
        kept.push_back(secondsSince(begun));
        begun = Clock::now();
        db.exec("BEGIN IMMEDIATE");
        insert.bind(1, n % 88 + 1);
        insert.bind(2, n / 88 + 2);
        insert.bind(3, each.reading.count);
        insert.bind(4, each.reading.typed);
        insert.bind(5, each.reading.typedUnit);
        insert.exec();
        insert.reset();
        db.exec("COMMIT");
        inserted.push_back(secondsSince(begun));
    }
    line("durable-reading-over-bare-insert", median(kept) / median(inserted), "ratio", 1.2);
}

struct Run {
    double seconds{};
    double megabytes{};
};

/// Runs a command with its words on standard input, and its voice silenced.
Run run(std::vector<std::string> words, const std::string& input = {}) {
    std::vector<char*> arguments;
    for (std::string& word : words)
        arguments.push_back(word.data());
    arguments.push_back(nullptr);
    const auto begun = Clock::now();
    const pid_t child = ::fork();
    if (child == 0) {
        if (!input.empty()) ::dup2(::open(input.c_str(), O_RDONLY), STDIN_FILENO);
        ::dup2(::open("/dev/null", O_WRONLY), STDOUT_FILENO);
        ::execvp(arguments[0], arguments.data());
        ::_exit(127);
    }
    int status = 0;
    struct rusage used {};
    ::wait4(child, &status, 0, &used);
    if (!WIFEXITED(status) || WEXITSTATUS(status) != 0) stop(words[0] + " " + words[1] + " failed");
    return {secondsSince(begun), static_cast<double>(used.ru_maxrss) / 1024};
}

/// One row a reading, as the export writes it.
void writeLongForm(const fs::path& file, int readings) {
    std::ofstream out(file, std::ios::binary);
    out << "\xEF\xBB\xBFpiano;pass;note;dimension;trial;text;unit;state;at\r\n";
    const int ofPass = static_cast<int>(kMeasured.size()) * 88 * kTrials;
    for (int n = 0; n < readings; ++n) {
        const NewReading each = reading(n % ofPass);
        out << "Speed;" << n / ofPass + 1 << ';' << each.cell.note.value << ';' << key(each.cell.dimension) << ';'
            << each.reading.trial << ';' << each.reading.typed << ';' << each.reading.typedUnit << ";;\r\n";
    }
}

/// The rows as they stand in the book, without the columns that are NULL in all of them, which .import cannot write:
/// the table of the comparison is the book's own without these four columns, so that it has less to do.
void writeRows(const std::string& book, const fs::path& file) {
    SQLite::Database db(book, SQLite::OPEN_READONLY);
    SQLite::Statement rows(db, "SELECT pass_id, note, dimension_id, trial, act_id, withdrawn, relation, value, typed, "
                               "unit, taken, reason FROM reading ORDER BY act_id, pass_id");
    std::ofstream out(file, std::ios::binary);
    while (rows.executeStep())
        for (int column = 0; column < 12; ++column)
            out << (column > 0 ? "," : "") << '"' << rows.getColumn(column).getString() << '"'
                << (column == 11 ? "\n" : "");
}

void emptyReadings(const std::string& book) {
    SQLite::Database db(book, SQLite::OPEN_READWRITE);
    db.exec("DROP TABLE reading;"
            "CREATE TABLE reading ("
            "  pass_id INTEGER NOT NULL REFERENCES pass,"
            "  note INTEGER NOT NULL CHECK (note BETWEEN 1 AND 108),"
            "  dimension_id INTEGER NOT NULL REFERENCES dimension,"
            "  trial INTEGER NOT NULL CHECK (trial BETWEEN 1 AND 99),"
            "  act_id INTEGER NOT NULL REFERENCES act,"
            "  withdrawn INTEGER NOT NULL DEFAULT 0 CHECK (withdrawn IN (0,1)),"
            "  relation TEXT NOT NULL CHECK (relation IN ('=','<','>','..','word','not-fitted')),"
            "  value INTEGER CHECK (value BETWEEN -1000000000000 AND 1000000000000),"
            "  typed TEXT NOT NULL, unit TEXT NOT NULL DEFAULT '',"
            "  taken INTEGER NOT NULL DEFAULT 0 CHECK (taken IN (0,1)),"
            "  reason TEXT NOT NULL DEFAULT '',"
            "  PRIMARY KEY (pass_id, note, dimension_id, trial, act_id),"
            "  CHECK ((value IS NOT NULL) = (relation IN ('=','<','>','..')))"
            ") STRICT, WITHOUT ROWID;"
            "CREATE INDEX reading_act ON reading (act_id);"
            "VACUUM");
}

void importing(const fs::path& folder, int readings) {
    const fs::path table = folder / "long.csv", rows = folder / "rows.csv", commands = folder / "commands";
    const std::string empty = (folder / "empty.hammerline").string();
    writeLongForm(table, readings);
    ok(ok(BenchBook::create(empty)).addPiano(upright(), "upright"));
    std::vector<double> ours, bare;
    double most = 0;
    const std::string target = (folder / "target.hammerline").string();
    const std::string bareEmpty = (folder / "bare-empty.db").string(),
                      bareTarget = (folder / "bare-target.db").string();
    for (int round = 0; round < 3; ++round) {
        fs::copy_file(empty, target, fs::copy_options::overwrite_existing);
        ::sync();
        const Run run1 = run({HAMMERLINE_PROGRAM, "import", target, table.string(), "--json"});
        ours.push_back(run1.seconds);
        most = std::max(most, run1.megabytes);
        if (round == 0) {
            writeRows(target, rows);
            fs::copy_file(target, bareEmpty, fs::copy_options::overwrite_existing);
            emptyReadings(bareEmpty);
            std::ofstream(commands) << "PRAGMA journal_mode=DELETE;\nPRAGMA synchronous=EXTRA;\nPRAGMA "
                                       "foreign_keys=ON;\n.mode csv\n.import "
                                    << rows.string() << " reading\n";
        }
        fs::copy_file(bareEmpty, bareTarget, fs::copy_options::overwrite_existing);
        ::sync();
        bare.push_back(run({"sqlite3", bareTarget}, commands.string()).seconds);
    }
    SQLite::Database one(target), other(bareTarget);
    const char* count = "SELECT count(*) FROM reading";
    if (one.execAndGet(count).getInt() != readings || other.execAndGet(count).getInt() != readings)
        stop("the two have not taken the same rows");
    const double mine = *std::min_element(ours.begin(), ours.end());
    const double theirs = *std::min_element(bare.begin(), bare.end());
    std::fprintf(stderr, "import of %d readings: %.2f s, sqlite3 .import %.2f s\n", readings, mine, theirs);
    line("import-over-sqlite-import", mine / theirs, "ratio", 1.15);
    line("import-memory", most, "MB", 64);
}

} // namespace

int main(int argc, char** argv) {
    const int readings = argc > 2 ? std::atoi(argv[2]) : 1'000'000;
    std::string pattern = (fs::path(argc > 1 ? argv[1] : ".") / "durable-XXXXXX").string();
    if (readings < 1 || ::mkdtemp(pattern.data()) == nullptr) stop("say a folder that can be written");
    const fs::path folder = pattern;
    if (syncs(folder))
        durableReading(folder);
    else
        std::printf("durable-reading-over-bare-insert refused ratio goal 1.2 short\n");
    if (std::system("sqlite3 --version >/dev/null 2>&1") == 0)
        importing(folder, readings);
    else
        std::printf("import-over-sqlite-import refused ratio goal 1.15 short\n");
    std::error_code ignored;
    fs::remove_all(folder, ignored);
    return 0;
}
