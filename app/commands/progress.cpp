#include "app/commands/progress.h"

#include "ui/words/words.h"

#include <QCoreApplication>
#include <unistd.h>

#include <cstdio>

namespace hammerline::app {
namespace {

using namespace std::chrono_literals;

volatile std::sig_atomic_t stopAsked = 0;

extern "C" void askToStop(int) {
    stopAsked = 1;
}

} // namespace

Progress::Progress(std::optional<std::int64_t> size, bool json)
    : m_size(size), m_silent(json), m_terminal(::isatty(STDERR_FILENO) != 0), m_next(Clock::now() + 500ms) {
    stopAsked = 0;
    struct sigaction stop {};
    stop.sa_handler = askToStop; // without SA_RESTART: a read that waits for a pipe comes back
    sigemptyset(&stop.sa_mask);
    ::sigaction(SIGINT, &stop, &m_before);
}

Progress::~Progress() {
    ::sigaction(SIGINT, &m_before, nullptr);
    if (m_said && m_terminal) std::fputc('\n', stderr);
}

bool Progress::cancelled() const {
    return stopAsked != 0;
}

bool Progress::due() {
    if (m_silent || Clock::now() < m_next) return false;
    m_next = Clock::now() + (m_terminal ? 100ms : 1000ms);
    return true;
}

void Progress::at(std::int64_t position, std::size_t readings) {
    if (!due()) return;
    say(m_size && *m_size > 0
            ? QCoreApplication::translate("progress", "%1 readings, %2 % of the file. Ctrl-C stops and keeps nothing.")
                  .arg(readings)
                  .arg(position * 100 / *m_size)
            : QCoreApplication::translate("progress", "%1 readings. Ctrl-C stops and keeps nothing.").arg(readings));
}

bool Progress::goesOn(double share) {
    if (!cancelled() && due())
        say(QCoreApplication::translate("progress", "%1 % done. Ctrl-C stops and leaves everything as it was.")
                .arg(static_cast<int>(share * 100)));
    return !cancelled();
}

void Progress::say(const QString& line) {
    m_said = true;
    std::fprintf(stderr, m_terminal ? "\r%s" : "%s\n", line.toUtf8().constData());
    std::fflush(stderr);
}

} // namespace hammerline::app
