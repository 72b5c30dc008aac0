// How far a long command has come, and whether the person wants it to stop.
#pragma once

#include <QString>

#include <chrono>
#include <csignal>
#include <cstdint>
#include <optional>

namespace hammerline::app {

/// While it lives, Ctrl-C asks for a stop instead of ending the program. After half a second it says on standard error
/// how far the work has come (on a terminal in one line that is written over; nothing with --json).
class Progress {
public:
    Progress(std::optional<std::int64_t> size, bool json);
    explicit Progress(bool json) : Progress(std::nullopt, json) {}
    ~Progress();
    Progress(const Progress&) = delete;
    Progress& operator=(const Progress&) = delete;

    bool cancelled() const;
    void at(std::int64_t position, std::size_t readings);
    /// For work on a whole book: its share from 0 to 1. False: it is to stop.
    bool goesOn(double share);

private:
    bool due();
    void say(const QString& line);

    using Clock = std::chrono::steady_clock;
    std::optional<std::int64_t> m_size;
    bool m_silent, m_terminal;
    bool m_said = false;
    Clock::time_point m_next;
    struct sigaction m_before {};
};

} // namespace hammerline::app
