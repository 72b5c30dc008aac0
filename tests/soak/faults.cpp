// Every command that writes, with a fault at each of its file calls: killed there, or told by the system that the disk
// failed (EIO), is full (ENOSPC) or was interrupted (EINTR), once or from then on. Afterwards the book is there, whole
// and sound, with all or nothing of what was to be done, and what was said agrees with what lies on the disk. And the
// power is cut after each of its calls: what was not synced is gone (see power_cut.h).
//   faults PROGRAM LIBRARY all|STRIKES [NAME]
// all: every call with every fault. STRIKES: as many calls of each command with each fault, other ones each time; one
// of them makes bytes last or changes a name. A command with many thousand calls takes no longer than another then.
#include "tests/soak/fault_bench.h"
#include "tests/soak/power_cut.h"

#include <algorithm>
#include <array>
#include <cerrno>
#include <cstdio>
#include <cstdlib>

using namespace hammerline::soak;
namespace fs = std::filesystem;

namespace {

constexpr std::array kFaults = {
    Fault{0, How::kill, 0},        Fault{0, How::once, EIO},    Fault{0, How::onward, EIO},
    Fault{0, How::onward, ENOSPC}, Fault{0, How::once, ENOSPC}, Fault{0, How::once, EINTR},
};

constexpr long kMostCuts = 32; // of a command, in short

class Faults {
public:
    Faults(std::string program, std::string library, long strikes)
        : m_program(fs::absolute(program)), m_library(fs::absolute(library)), m_strikes(strikes) {
        std::string pattern = (fs::temp_directory_path() / "hammerline-faults-XXXXXX").string();
        m_root = fs::canonical(mkdtemp(pattern.data()));
        fs::create_directory(m_root / "base");
        layOut(m_program, m_root / "base");
    }
    ~Faults() {
        std::error_code ignored;
        fs::remove_all(m_root, ignored);
    }
    Faults(const Faults&) = delete;
    Faults& operator=(const Faults&) = delete;

    void all(const Job& job) {
        afresh();
        const State before = stateOf(now(), job);
        PowerCut disk(now());
        fs::remove(log());
        const Ran whole = run(m_program, m_library, now(), job, {}, log().string());
        const State after = stateOf(now(), job);
        if (whole.status > 1) return wrong(job, {}, whole, "it does not work without a fault");
        for (std::size_t kind = 0; kind < kFaults.size(); ++kind)
            for (const long call : chosen(whole, kind))
                strike(job, {call, kFaults[kind].how, kFaults[kind].error}, before, after);
        cuts(disk, job, whole, before, after);
        ++m_jobs;
    }

    long cutsTried() const { return m_cuts; }
    long runs() const { return m_runs; }
    long wrongs() const { return m_wrongs; }
    long leftBehind() const { return m_left; }

private:
    fs::path now() const { return m_root / "now"; }
    fs::path log() const { return m_root / "log"; }
    void afresh() {
        fs::remove_all(now());
        fs::copy(m_root / "base", now());
    }
    /// The calls of a command that one kind of fault strikes.
    std::vector<long> chosen(const Ran& whole, std::size_t kind) const {
        const long step = m_strikes == 0 ? 1 : std::max(whole.calls / m_strikes, 1L);
        const auto turn = static_cast<long>(kind * 7 + m_jobs * 3);
        std::vector<long> calls;
        for (long call = 1 + turn % step; call <= whole.calls; call += step)
            calls.push_back(call);
        if (m_strikes == 0 || whole.turning.empty()) return calls;
        calls.resize(std::min(calls.size(), static_cast<std::size_t>(m_strikes - 1)));
        calls.push_back(whole.turning[static_cast<std::size_t>(turn) % whole.turning.size()]);
        return calls;
    }
    void strike(const Job& job, const Fault& fault, const State& before, const State& after) {
        afresh();
        const Ran ran = run(m_program, m_library, now(), job, fault);
        ++m_runs;
        const std::string found = wrongWith(job, fault, ran, before, after, stateOf(now(), job), now());
        if (!found.empty()) wrong(job, fault, ran, found);
        if (const std::string untold = ran.killed ? untoldLeaving(job) : ""; !untold.empty())
            wrong(job, fault, ran, untold + " is left behind, and the next opening does not name it");
    }
    /// A passing file of the book that a killed program has left and that `list` does not tell a person of.
    std::string untoldLeaving(const Job& job) {
        const fs::path book = job.book;
        std::vector<std::string> left;
        for (const auto& entry : fs::directory_iterator(now())) {
            const std::string name = entry.path().filename().string();
            const bool passing = name.find(book.extension().string() + ".part-") != std::string::npos;
            const bool ofBook = name.starts_with('.' + book.stem().string() + '.');
            if (passing && ofBook && !name.ends_with("-journal")) left.push_back(name);
        }
        if (left.empty()) return {};
        const Job look{.name = "list", .words = {"list", "@/" + job.book}, .book = job.book, .document = {}};
        const Ran told = run(m_program, m_library, now(), look, {});
        for (const std::string& name : left) {
            ++m_left;
            if (told.refused.find(name) == std::string::npos) return name;
        }
        return {};
    }
    /// Every state that the disk may be in when the power goes, and at the end: what was said to be done is there.
    void cuts(PowerCut& disk, const Job& job, const Ran& ran, const State& before, const State& after) {
        const long every = m_strikes == 0 ? 1 : 1 + static_cast<long>(ran.turning.size()) / kMostCuts;
        disk.replay(log(), m_strikes != 0, every, [&](const std::string& when) {
            disk.layOut(now());
            ++m_cuts;
            Ran killed;
            killed.killed = true;
            const std::string found =
                wrongWith(job, {0, How::kill, 0}, killed, before, after, stateOf(now(), job), now());
            if (!found.empty()) wrong(job, {}, ran, "power cut " + when + ": " + found);
        });
        disk.layOut(now());
        if (!isDone(job, before, after, stateOf(now(), job), now()))
            wrong(job, {}, ran, "power cut at the end: what was done is lost");
    }
    void wrong(const Job& job, const Fault& fault, const Ran& ran, const std::string& what) {
        ++m_wrongs;
        std::printf("%s, %s (%s): %s\n    status %d, %s%s\n", job.name.c_str(), text(fault).c_str(), ran.struck.c_str(),
                    what.c_str(), ran.status, ran.said.c_str(), ran.refused.c_str());
        std::fflush(stdout);
    }

    std::string m_program, m_library;
    std::size_t m_jobs = 0;
    long m_strikes = 0, m_runs = 0, m_wrongs = 0, m_cuts = 0, m_left = 0;
    fs::path m_root;
};

} // namespace

int main(int argc, char** argv) {
    const std::string strikes = argc > 3 ? argv[3] : "";
    const bool all = strikes == "all";
    if (!all && std::atol(strikes.c_str()) < 1) {
        std::fprintf(stderr, "faults PROGRAM LIBRARY all|STRIKES [NAME]\n");
        return 2;
    }
    Faults faults(argv[1], argv[2], all ? 0 : std::atol(strikes.c_str()));
    for (const Job& job : jobs())
        if (argc < 5 || job.name == argv[4]) faults.all(job);
    std::printf("faults: %zu commands, %ld runs, %ld power cuts, %ld left behind and told, %ld wrong\n", jobs().size(),
                faults.runs(), faults.cutsTried(), faults.leftBehind(), faults.wrongs());
    return faults.wrongs() == 0 ? 0 : 1;
}
