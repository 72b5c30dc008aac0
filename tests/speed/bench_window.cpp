// The window's speed and weight, on a book of 2,000 pianos with three passes each: ratios against an empty QMainWindow
// and against one commit, all measured in the same run. Prints NAME VALUE UNIT goal GOAL ok|short.
//   bench_window                      everything (some minutes: it writes the book first)
//   bench_window --write BOOK PIANOS  writes such a book; --type BOOK PIANO types into it
//   bench_window --start BOOK PIANO INI   opens the window on the book it had last, to its first painted grid
//   bench_window --empty              an empty window
//   bench_window --word               a window that says one word: what its typeface costs
#include "ui/main_window.h"
#include "ui/stations/measure_editor.h"
#include "ui/stations/measure_view.h"

#include <QApplication>
#include <QFile>
#include <QKeyEvent>
#include <QLabel>
#include <QProcess>
#include <QTemporaryDir>
#include <fmt/format.h>

#include <algorithm>
#include <chrono>
#include <cstdio>
#include <cstdlib>
#include <ctime>

using namespace hammerline;

namespace {

constexpr int kPianos = 2000, kPasses = 3, kStarts = 9;
constexpr double kEchoGoal = 8, kEnterGoal = 8; // ms; the second is on top of one commit
constexpr double kStartGoal = 2, kStartMoreGoal = 100, kGrowthGoal = 1.2, kMemoryGoal = 1.5;

double nowMs() {
    return std::chrono::duration<double, std::milli>(std::chrono::steady_clock::now().time_since_epoch()).count();
}

/// Of all threads of this process: what a busy machine does not change.
double cpuMs() {
    return static_cast<double>(std::clock()) * 1000.0 / CLOCKS_PER_SEC;
}

double quantile(std::vector<double> values, double share) {
    std::sort(values.begin(), values.end());
    return values[std::min(values.size() - 1, static_cast<std::size_t>(share * static_cast<double>(values.size())))];
}

void line(std::string_view name, double value, std::string_view unit, double goal) {
    fmt::print("{} {:.3g} {} goal {:.3g} {}\n", name, value, unit, goal, value <= goal ? "ok" : "short");
    std::fflush(stdout);
}

[[noreturn]] void stop(const char* why) {
    fmt::print(stderr, "bench_window: {}\n", why);
    std::exit(2);
}

Reading letOff(int tenths) {
    Reading reading;
    reading.count = tenths * (kNmPerMm / 10);
    reading.typed = fmt::format("{}.{}", tenths / 10, tenths % 10);
    reading.typedUnit = "mm";
    return reading;
}

/// Gives the uuid of the last piano.
std::string writeBook(const std::string& path, int pianos) {
    auto book = BenchBook::create(path);
    if (!book) stop("the book could not be written");
    std::string last;
    for (int i = 0; i < pianos; ++i) {
        auto piano = makePiano(ActionKind::upright);
        piano->name = fmt::format("Piano {}", i + 1);
        const auto uuid = book->addPiano(*piano, "upright");
        if (!uuid) stop("a piano could not be written");
        for (int pass = 1; pass <= kPasses; ++pass) {
            std::vector<NewReading> all;
            for (int n = 1; n <= 88; ++n)
                all.push_back({{{n}, dimension::letOff}, letOff(20 + (n * 7 + i + pass) % 25)});
            if (!book->addPass(*uuid, {}) || !book->store(*uuid, pass, all, "entry"))
                stop("a pass could not be written");
        }
        last = *uuid;
    }
    return last;
}

/// The peak of the resident set, kB.
double peakMemory() {
    QFile status(QStringLiteral("/proc/self/status"));
    if (!status.open(QIODevice::ReadOnly)) return 0;
    for (const QByteArray& row : status.readAll().split('\n'))
        if (row.startsWith("VmHWM:")) return row.mid(6).trimmed().split(' ').front().toDouble();
    return 0;
}

/// A window that says when it was painted.
template <class Window>
class Watched : public Window {
public:
    using Window::Window;
    bool painted = false;
    double paintedAt = 0, cpuThen = 0; // the first time since `painted` was last put out

protected:
    bool event(QEvent* event) override {
        const bool done = Window::event(event);
        if (!painted && (event->type() == QEvent::UpdateRequest || event->type() == QEvent::Paint)) {
            painted = true;
            paintedAt = nowMs();
            cpuThen = cpuMs();
        }
        return done;
    }
};

template <class Window>
int reportStart(Window& window) {
    window.resize(1280, 800);
    window.show();
    while (!window.painted)
        QApplication::processEvents(QEventLoop::AllEvents);
    const double seen = nowMs(); // the whole window: what is painted comes before what is only due
    QApplication::processEvents();
    fmt::print("{:.3f} {:.0f}\n", seen, peakMemory());
    return 0;
}

int startEmpty() {
    Watched<QMainWindow> window;
    return reportStart(window);
}

int startWord() {
    Watched<QMainWindow> window;
    window.setCentralWidget(new QLabel(QStringLiteral("let-off")));
    return reportStart(window);
}

int startWindow(const QString& path, const QString& piano, const QString& ini) {
    dress(Theme::light, 100);
    Settings settings(ini);
    Workbench bench;
    Watched<MainWindow> window(bench, settings);
    window.openBook(path, piano.toStdString());
    if (!bench.hasBook() || !window.showStation(QStringLiteral("measure"))) return 2;
    return reportStart(window);
}

struct Start {
    double ms = 0, kB = 0;
};

/// Of a process of its own, from before it is started to its first painted window: the median of several.
class Starts {
public:
    explicit Starts(QStringList arguments) : m_arguments(std::move(arguments)) {}
    void once() {
        QProcess child;
        const double before = nowMs();
        child.start(QCoreApplication::applicationFilePath(), m_arguments);
        if (!child.waitForFinished(60'000) || child.exitCode() != 0) stop("a window did not start");
        const QList<QByteArray> said = child.readAllStandardOutput().trimmed().split(' ');
        m_ms.push_back(said.front().toDouble() - before);
        m_kB.push_back(said.back().toDouble());
    }
    Start median() const { return {quantile(m_ms, 0.5), quantile(m_kB, 0.5)}; }

private:
    QStringList m_arguments;
    std::vector<double> m_ms, m_kB;
};

void benchStarts(const QString& big, const QString& bigPiano, const QString& small, const QString& smallPiano) {
    const auto lastOpened = [](const QString& book) { // what the window wrote when it was last closed
        const QString ini = book + QStringLiteral(".ini");
        Settings settings(ini);
        settings.rememberBook(book);
        return ini;
    };
    Starts empty({QStringLiteral("--empty")}), word({QStringLiteral("--word")}),
        full({QStringLiteral("--start"), big, bigPiano, lastOpened(big)}),
        little({QStringLiteral("--start"), small, smallPiano, lastOpened(small)});
    for (int i = 0; i < kStarts; ++i) // in turn, so that what else the machine does falls on all alike
        for (Starts* each : {&empty, &word, &full, &little})
            each->once();
    const Start e = empty.median(), w = word.median(), f = full.median(), l = little.median();
    fmt::print(
        "# start: empty window {:.0f} ms {:.0f} MB, window of one word {:.0f} ms {:.0f} MB, 2,000 pianos {:.0f} ms "
        "{:.0f} MB, one piano {:.0f} ms\n",
        e.ms, e.kB / 1024, w.ms, w.kB / 1024, f.ms, f.kB / 1024, l.ms);
    line("start-to-grid-over-empty-window", f.ms / e.ms, "ratio", kStartGoal);
    line("start-to-grid-more-than-empty-window", f.ms - e.ms, "ms", kStartMoreGoal);
    line("start-2000-pianos-over-1", f.ms / l.ms, "ratio", kGrowthGoal);
    line("peak-memory-over-empty-window", f.kB / e.kB, "ratio", kMemoryGoal);
}

/// How long something took, each time: by the clock and of the processor.
struct Times {
    std::vector<double> ms, cpu;
    template <class F>
    void of(F&& done) {
        const double before = nowMs(), cpuBefore = cpuMs();
        done();
        ms.push_back(nowMs() - before);
        cpu.push_back(cpuMs() - cpuBefore);
    }
};

/// From the key to the picture that answers it; `rest`: to where nothing is left to be done (the note card).
void press(Watched<MainWindow>& window, Times& times, Times& rest, QWidget* to, int key, const QString& text) {
    const double before = nowMs(), cpuBefore = cpuMs();
    window.painted = false;
    rest.of([&] {
        QKeyEvent down(QEvent::KeyPress, key, Qt::NoModifier, text);
        QCoreApplication::sendEvent(to, &down);
        QApplication::processEvents();
    });
    if (!window.painted) stop("a key was not answered by a picture");
    times.ms.push_back(window.paintedAt - before);
    times.cpu.push_back(window.cpuThen - cpuBefore);
}

void benchTyping(const QString& path, const QString& piano) {
    const QTemporaryDir folder;
    Settings settings(folder.filePath(QStringLiteral("s.ini")));
    Workbench bench;
    Watched<MainWindow> window(bench, settings);
    window.openBook(path, piano.toStdString());
    if (!bench.hasBook() || !window.showStation(QStringLiteral("measure"))) stop("the window did not open the book");
    window.resize(1280, 800);
    window.show();
    QApplication::processEvents();
    MeasureView& grid = *window.findChild<MeasureView*>();
    // one commit of one reading by nothing but the book, into a file of its own beside it, in turn with the keys
    const QString beside = path + QStringLiteral(".beside");
    if (!QFile::copy(path, beside)) stop("the book could not be copied");
    auto book = BenchBook::open(beside.toStdString());
    if (!book) stop("the book does not open");
    Times echo, echoRest, enter, enterRest, commit;
    for (const DimensionId id : {dimension::letOff, dimension::blow, dimension::aftertouch}) {
        bench.setCell({{1}, id});
        grid.setFocus();
        QApplication::processEvents();
        for (int n = 1; n <= 88; ++n) {
            const QString typed = id == dimension::blow         ? QStringLiteral("46.%1").arg(n % 10)
                                  : id == dimension::aftertouch ? QStringLiteral("1.%1").arg(n % 10)
                                                                : QStringLiteral("2.%1").arg(n % 10);
            for (const QChar c : typed) {
                QWidget* to = grid.editor() ? static_cast<QWidget*>(grid.editor()) : &grid;
                press(window, echo, echoRest, to, c.toUpper().unicode(), QString(c));
            }
            if (!grid.editor()) stop("no field opened");
            press(window, enter, enterRest, grid.editor(), Qt::Key_Return, QStringLiteral("\r"));
            if (grid.editor()) stop("a reading was not taken");
            const NewReading one{{{n}, id}, letOff(160 + n % 10)};
            commit.of([&] {
                if (!book->store(piano.toStdString(), kPasses, {&one, 1}, "entry")) stop("a commit failed");
            });
        }
    }
    QFile::remove(beside);
    for (const auto& [what, times] : {std::pair{"key to echo", &echo},
                                      {"Enter to next cell", &enter},
                                      {"Enter to nothing left to do", &enterRest},
                                      {"commit", &commit}})
        fmt::print("# {} p50 {:.2f} p99 {:.2f} ms; of the processor {:.2f} and {:.2f} ms\n", what,
                   quantile(times->ms, 0.5), quantile(times->ms, 0.99), quantile(times->cpu, 0.5),
                   quantile(times->cpu, 0.99));
    line("key-to-painted-echo-p50", quantile(echo.ms, 0.5), "ms", kEchoGoal);
    line("key-to-painted-echo-p99", quantile(echo.ms, 0.99), "ms", kEchoGoal);
    line("enter-to-next-cell-painted-p50", quantile(enter.ms, 0.5), "ms", kEnterGoal + quantile(commit.ms, 0.5));
    line("enter-to-next-cell-painted-p99", quantile(enter.ms, 0.99), "ms", kEnterGoal + quantile(commit.ms, 0.99));
}

} // namespace

int main(int argc, char** argv) {
    qputenv("QT_QPA_PLATFORM", "offscreen");
    QApplication app(argc, argv);
    const QStringList arguments = QApplication::arguments();
    if (arguments.size() == 2 && arguments[1] == QLatin1String("--empty")) return startEmpty();
    if (arguments.size() == 2 && arguments[1] == QLatin1String("--word")) return startWord();
    if (arguments.size() == 5 && arguments[1] == QLatin1String("--start"))
        return startWindow(arguments[2], arguments[3], arguments[4]);
    if (arguments.size() == 4 && arguments[1] == QLatin1String("--write")) {
        fmt::print("{}\n", writeBook(arguments[2].toStdString(), arguments[3].toInt()));
        return 0;
    }
    dress(Theme::light, 100);
    if (arguments.size() == 4 && arguments[1] == QLatin1String("--type")) {
        benchTyping(arguments[2], arguments[3]);
        return 0;
    }
    const QTemporaryDir folder;
    const QString big = folder.filePath(QStringLiteral("big.hammerline")),
                  small = folder.filePath(QStringLiteral("small.hammerline"));
    std::string bigPiano;
    { // thousands of commits: written in memory where the system has such a place, measured on the disk
        const QTemporaryDir memory(QStringLiteral("/dev/shm/hammerline-XXXXXX"));
        const QString at = memory.isValid() ? memory.filePath(QStringLiteral("big.hammerline")) : big;
        bigPiano = writeBook(at.toStdString(), kPianos);
        if (at != big && !QFile::copy(at, big)) stop("the book could not be copied");
    }
    const std::string smallPiano = writeBook(small.toStdString(), 1);
    benchTyping(big, QString::fromStdString(bigPiano));
    benchStarts(big, QString::fromStdString(bigPiano), small, QString::fromStdString(smallPiano));
    return 0;
}
