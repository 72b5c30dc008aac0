// One job of the command line, run with a fault at one of its file calls, and what lies on the disk afterwards.
#pragma once

#include <cstdint>
#include <filesystem>
#include <optional>
#include <string>
#include <vector>

namespace hammerline::soak {

/// What a job is to do; "@" in a word stands for the folder.
struct Job {
    std::string name;
    std::vector<std::string> words;
    std::string book = "book.hammerline"; // the one that it changes or makes; empty: none
    std::string document;                 // the file for people that it writes over an older one; empty: none
};
const std::vector<Job>& jobs();
/// Files that the jobs begin from.
void layOut(const std::string& program, const std::filesystem::path& folder);

enum class How : std::uint8_t { once, onward, kill };
struct Fault {
    long at = 0; // which call, from 1; 0: none
    How how = How::once;
    int error = 0;
};
std::string text(const Fault&);

struct Ran {
    bool killed = false;
    int status = -1;
    std::string said, refused; // standard output and standard error
    long calls = 0;
    std::vector<long> turning; // those that make bytes last, or give or take a name
    std::string struck;        // the name of the call that failed last
};

/// Starts the program in `folder` with the library preloaded. `log`: the calls with their bytes, where not empty.
Ran run(const std::string& program, const std::string& library, const std::filesystem::path& folder, const Job&,
        const Fault&, const std::string& log = {});

/// What a book says of itself: its acts in their order. Empty optional: no such file.
struct Acts {
    std::vector<std::string> acts;
    std::string unsound; // why it cannot be used; empty: sound
};
std::optional<Acts> actsOf(const std::filesystem::path& book);

/// How a job leaves the folder.
struct State {
    std::optional<Acts> book;
    std::uint64_t size = 0; // of the document
    std::string end;        // its last bytes
};
State stateOf(const std::filesystem::path& folder, const Job&);

/// Whether all that the job does is there (or it does nothing that lasts under a known name).
bool isDone(const Job&, const State& before, const State& after, const State& now, const std::filesystem::path& folder);

/// What is wrong with `now`, in words; empty: nothing. `before` and `after`: without a fault.
std::string wrongWith(const Job&, const Fault&, const Ran&, const State& before, const State& after, const State& now,
                      const std::filesystem::path& folder);

} // namespace hammerline::soak
