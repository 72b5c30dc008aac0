#include "tests/soak/fault_bench.h"

#include "db/bench_book.h"
#include "tests/soak/calls_log.h"

#include <fcntl.h>
#include <sqlite3.h>
#include <sys/mman.h>
#include <sys/wait.h>
#include <unistd.h>

#include <algorithm>
#include <array>
#include <cerrno>
#include <csignal>
#include <cstdio>
#include <cstdlib>
#include <cstring>
#include <fstream>
#include <memory>
#include <sstream>

namespace hammerline::soak {
namespace {

namespace fs = std::filesystem;

std::string readAll(const fs::path& path) {
    std::ifstream in(path, std::ios::binary);
    std::ostringstream text;
    text << in.rdbuf();
    return text.str();
}

const char* text(How how) {
    return how == How::once ? "once" : how == How::onward ? "onward" : "kill";
}

std::string with(std::string word, const std::string& folder) {
    for (auto at = word.find('@'); at != std::string::npos; at = word.find('@', at + folder.size()))
        word.replace(at, 1, folder);
    return word;
}

[[noreturn]] void become(const std::string& program, const std::string& library, const fs::path& folder, const Job& job,
                         const Fault& fault, const std::string& log) {
    const fs::path beside = folder.parent_path();
    const auto set = [](const char* name, const std::string& value) { setenv(name, value.c_str(), 1); };
    set("LD_PRELOAD", library);
    set("HAMMERLINE_CALLS_IN", folder.string());
    set("HAMMERLINE_CALLS_COUNT", (beside / "calls").string());
    if (fault.at > 0)
        set("HAMMERLINE_CALLS_FAIL",
            std::to_string(fault.at) + ' ' + text(fault.how) + ' ' + std::to_string(fault.error));
    if (!log.empty()) set("HAMMERLINE_CALLS_LOG", log);
    set("LC_ALL", "C.UTF-8");
    set("QT_QPA_PLATFORM", "offscreen");
    set("XDG_RUNTIME_DIR", beside.string());
    set("XDG_CONFIG_HOME", beside.string());
    set("ASAN_OPTIONS", "detect_leaks=0:verify_asan_link_order=0");
    std::vector<std::string> words = {program};
    for (const std::string& word : job.words)
        words.push_back(with(word, folder.string()));
    std::vector<char*> arguments;
    for (std::string& word : words)
        arguments.push_back(word.data());
    arguments.push_back(nullptr);
    const auto to = [&](const char* name, int number) {
        dup2(open((beside / name).c_str(), O_WRONLY | O_CREAT | O_TRUNC, 0600), number);
    };
    to("said", STDOUT_FILENO);
    to("refused", STDERR_FILENO);
    dup2(open("/dev/null", O_RDONLY), STDIN_FILENO);
    execv(arguments[0], arguments.data());
    _exit(127);
}

} // namespace

std::string text(const Fault& fault) {
    if (fault.at == 0) return "no fault";
    const char* error = fault.how == How::kill ? ""
                        : fault.error == EIO   ? " EIO"
                        : fault.error == EINTR ? " EINTR"
                                               : " ENOSPC";
    return "call " + std::to_string(fault.at) + ' ' + text(fault.how) + error;
}

Ran run(const std::string& program, const std::string& library, const fs::path& folder, const Job& job,
        const Fault& fault, const std::string& log) {
    const fs::path beside = folder.parent_path();
    auto seen = std::make_unique<CallsSeen>();
    std::ofstream(beside / "calls", std::ios::binary).write(reinterpret_cast<const char*>(seen.get()), sizeof *seen);
    const pid_t child = fork();
    if (child == 0) become(program, library, folder, job, fault, log);
    int status = 0;
    waitpid(child, &status, 0);
    std::ifstream(beside / "calls", std::ios::binary).read(reinterpret_cast<char*>(seen.get()), sizeof *seen);
    Ran ran;
    ran.killed = WIFSIGNALED(status) && WTERMSIG(status) == SIGKILL && fault.how == How::kill;
    ran.status = WIFEXITED(status) ? WEXITSTATUS(status) : -1;
    ran.said = readAll(beside / "said");
    ran.refused = readAll(beside / "refused");
    ran.calls = static_cast<long>(seen->calls);
    for (std::uint64_t call = 1; call <= std::min(seen->calls, CallsSeen::kMost - 1); ++call)
        if (seen->turning[call]) ran.turning.push_back(static_cast<long>(call));
    ran.struck = seen->struck;
    return ran;
}

std::optional<Acts> actsOf(const fs::path& path) {
    if (!fs::exists(path)) return std::nullopt;
    Acts found;
    {
        const auto book = BenchBook::open(path.string(), OpenMode::readOnly); // rolls a journal back that was left
        if (!book) return Acts{{}, std::string(key(book.error().code)) + ' ' + book.error().detail};
        const auto verified = book->verify();
        if (!verified) return Acts{{}, std::string(key(verified.error().code)) + ' ' + verified.error().detail};
        if (!verified->sound) found.unsound = verified->problems.front().what;
    }
    sqlite3* db = nullptr;
    sqlite3_stmt* query = nullptr;
    sqlite3_open_v2(path.c_str(), &db, SQLITE_OPEN_READONLY, nullptr);
    sqlite3_prepare_v2(db,
                       "SELECT s.uuid || ' ' || a.seq || ' ' || a.kind FROM act a JOIN session s "
                       "ON s.id = a.session_id ORDER BY a.id",
                       -1, &query, nullptr);
    while (sqlite3_step(query) == SQLITE_ROW) {
        const auto* bytes = static_cast<const char*>(sqlite3_column_blob(query, 0));
        found.acts.emplace_back(bytes, static_cast<std::size_t>(sqlite3_column_bytes(query, 0)));
    }
    sqlite3_finalize(query);
    sqlite3_close(db);
    return found;
}

State stateOf(const fs::path& folder, const Job& job) {
    State state;
    if (!job.book.empty()) state.book = actsOf(folder / job.book);
    if (job.document.empty()) return state;
    const std::string bytes = readAll(folder / job.document);
    state.size = bytes.size();
    state.end = bytes.substr(bytes.size() - std::min<std::size_t>(bytes.size(), 5));
    return state;
}

namespace {

/// Whether `now` holds what `before` held, in its order, and how many acts more; -1: something is lost.
long actsMore(const std::optional<Acts>& before, const std::optional<Acts>& now) {
    if (!before) return now ? static_cast<long>(now->acts.size()) : 0;
    if (!now || now->acts.size() < before->acts.size()) return -1;
    const bool holds = std::equal(before->acts.begin(), before->acts.end(), now->acts.begin());
    return holds ? static_cast<long>(now->acts.size() - before->acts.size()) : -1;
}

/// Files of a name "….WORD-…" in the folder that are sound books.
bool keptCopy(const fs::path& folder, const State& before) {
    for (const auto& entry : fs::directory_iterator(folder)) {
        if (entry.path().filename().string().find(".replaced-") == std::string::npos) continue;
        const auto acts = actsOf(entry.path());
        if (acts && acts->unsound.empty() && actsMore(before.book, acts) == 0) return true;
    }
    return false;
}

bool isDocumentOf(const State& state, const State& now) {
    const auto apart = state.size > now.size ? state.size - now.size : now.size - state.size;
    return now.end == state.end && apart <= 64; // a date or a number may be longer by some letters
}

bool leftBehind(const fs::path& folder) {
    for (const auto& entry : fs::directory_iterator(folder))
        if (entry.path().filename().string().find(".part-") != std::string::npos) return true;
    return false;
}

enum class Done : std::uint8_t { no, yes, half };

Done bookDone(const Job& job, const State& before, const State& after, const State& now, const fs::path& folder) {
    if (job.book.empty()) return Done::no;
    // restored: another book stands there, and the one before is kept
    if (actsMore(before.book, after.book) < 0) {
        const bool asAfter = now.book && now.book->acts == after.book->acts;
        if (asAfter) return keptCopy(folder, before) ? Done::yes : Done::half;
        return actsMore(before.book, now.book) == 0 ? Done::no : Done::half;
    }
    const bool madeNow = now.book.has_value() && !before.book;
    const long more = actsMore(before.book, now.book), whole = actsMore(before.book, after.book);
    if (more == whole && now.book.has_value() == after.book.has_value()) return Done::yes;
    return more == 0 && !madeNow ? Done::no : Done::half;
}

bool changes(const Job& job, const State& before, const State& after) {
    const auto acts = [](const State& state) { return state.book ? state.book->acts : std::vector<std::string>{}; };
    return !job.book.empty() && acts(before) != acts(after);
}

Done doneOf(const Job& job, const State& before, const State& after, const State& now, const fs::path& folder) {
    if (!job.document.empty())
        return isDocumentOf(after, now) ? Done::yes : isDocumentOf(before, now) ? Done::no : Done::half;
    return changes(job, before, after) ? bookDone(job, before, after, now, folder) : Done::no;
}

} // namespace

bool isDone(const Job& job, const State& before, const State& after, const State& now, const fs::path& folder) {
    const bool nothingToSee = !changes(job, before, after) && job.document.empty();
    return nothingToSee || doneOf(job, before, after, now, folder) == Done::yes;
}

std::string wrongWith(const Job& job, const Fault& fault, const Ran& ran, const State& before, const State& after,
                      const State& now, const fs::path& folder) {
    if (now.book && !now.book->unsound.empty()) return "the book is not sound: " + now.book->unsound;
    if (before.book && !now.book) return "the book is gone";
    const bool changesBook = changes(job, before, after);
    if (!changesBook && now.book && before.book && now.book->acts != before.book->acts) return "the book has changed";
    const Done done = doneOf(job, before, after, now, folder);
    if (done == Done::half) return "half done";
    if (ran.killed) return {};
    if (ran.status < 0 || ran.status > 2) return "it ended with " + std::to_string(ran.status);
    const bool nothingToSee = !changesBook && job.document.empty(); // a backup beside
    if (ran.status < 2) {
        if (done == Done::no && !nothingToSee) return "it says done, and nothing was done";
    } else {
        const std::string& said = ran.refused;
        if (said.empty()) return "refused without a sentence";
        const bool unsure = said.find("look at it again") != std::string::npos;
        if (done == Done::yes && !unsure) return "it was done, and the sentence says otherwise";
    }
    const bool couldClear = fault.how == How::once && ran.struck != "unlink" && ran.struck != "remove";
    if (couldClear && leftBehind(folder)) return "a passing file is left behind";
    return {};
}

} // namespace hammerline::soak
