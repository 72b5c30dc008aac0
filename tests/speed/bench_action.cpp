// A frame of the action drawn to scale while the key is moved, and the pages of the wide note while a handle of "what
// if" is moved: from the key that does it to the painted window, which must be done within a frame of the screen. Time
// of the processor, the median of many; a yardstick of the same run says how fast the machine was just then. The pages
// are as large as they stand in a window of 1280x800. Prints NAME VALUE UNIT goal GOAL ok|short.
#include "ui/stations/action_page.h"
#include "ui/widgets/look.h"

#include <QApplication>
#include <QImage>
#include <QPainter>
#include <QTemporaryDir>
#include <fmt/format.h>

#include <algorithm>
#include <cstdlib>
#include <ctime>
#include <memory>
#include <string>
#include <vector>

using namespace hammerline;

namespace {

constexpr int kFrames = 100;
constexpr QSize kPage{1192, 526};
constexpr double kFrameGoal = 4, kLiveGoal = 16; // ms

double cpuMs() {
    return static_cast<double>(std::clock()) * 1000.0 / CLOCKS_PER_SEC;
}

double median(std::vector<double> values) {
    std::ranges::sort(values);
    return values[values.size() / 2];
}

void line(const std::string& what, const char* kind, double value, double goal, double measure) {
    fmt::print("# {}-{}: {:.2g} yardsticks\n", what, kind, value / measure);
    fmt::print("{}-{} {:.3g} ms goal {:.3g} {}\n", what, kind, value, goal, value <= goal ? "ok" : "short");
}

/// What a frame is compared with: a picture as large as the drawing, filled with two hundred lines.
double yardstick() {
    QImage image(kPage, QImage::Format_ARGB32_Premultiplied);
    std::vector<double> times;
    for (int i = 0; i < kFrames; ++i) {
        const double before = cpuMs();
        QPainter painter(&image);
        painter.setRenderHint(QPainter::Antialiasing);
        painter.fillRect(image.rect(), Qt::white);
        for (int line = 0; line < 200; ++line)
            painter.drawLine(QPointF(0, 2.5 * line), QPointF(kPage.width(), kPage.height() - 2.5 * line));
        painter.end();
        times.push_back(cpuMs() - before);
    }
    return median(times);
}

/// A book of one piano, every note read; let-off is out at many, so that there is a plan and a drawing before it.
void fill(Workbench& bench, const QString& path, ActionKind kind) {
    Piano piano = *makePiano(kind);
    piano.name = "bench";
    std::vector<NewReading> readings;
    for (int n = 1; n <= piano.notes; ++n)
        for (const auto& [id, mm] : {std::pair{dimension::keyDip, 10.0},
                                     {dimension::lostMotion, 0.3},
                                     {dimension::blow, 46.0},
                                     {dimension::letOff, 3.0 + (n + 2) % 5},
                                     {dimension::checking, 15.0}}) {
            if (id == dimension::lostMotion && !piano.vertical()) continue;
            Reading reading;
            reading.count = fromTrade(mm, Kind::length);
            readings.push_back({{{n}, id}, reading});
        }
    const auto made = bench.createBook(path);
    const auto added = bench.addPiano(piano, std::string(defaultSheet(kind)));
    if (!made || !added || !bench.enterAll(readings, "entry")) std::exit(2);
    bench.setNote({40});
}

/// Shown in a window of the page's own; every change is painted by the event loop.
std::unique_ptr<ActionPage> shown(ActionPage* page) {
    page->resize(kPage);
    page->show();
    QApplication::processEvents();
    return std::unique_ptr<ActionPage>(page);
}

template <class Change>
double medianOf(int times, Change change) {
    std::vector<double> all;
    for (int i = 0; i < times; ++i) {
        const double before = cpuMs();
        change(i);
        QApplication::processEvents();
        all.push_back(cpuMs() - before);
    }
    return median(all);
}

void benchKind(ActionKind kind, const char* name, double measure) {
    const QTemporaryDir folder;
    Workbench bench;
    fill(bench, folder.filePath(QStringLiteral("b.hammerline")), kind);
    ActionDesk desk(bench);
    const auto drawn = shown(makeDrawnPage(desk, nullptr));
    for (int i = 0; i < 10; ++i)
        drawn->useKey(Qt::Key_Up, {}); // at rest
    QApplication::processEvents();
    const double frame = medianOf(95, [&](int) { drawn->useKey(Qt::Key_Right, {}); });
    line("action-drawn-frame", name, frame, kFrameGoal, measure);
    drawn->hide();
    for (const auto& [page, what] : {std::pair{makeAccountPage(desk, nullptr), "account"},
                                     {makeStrokePage(desk, nullptr), "stroke"},
                                     {makeDrawnPage(desk, nullptr), "drawing"}}) {
        const auto live = shown(page);
        const double one = medianOf(50, [&](int i) { desk.suppose(dimension::letOff, 2 + 0.05 * i); });
        line(fmt::format("what-if-live-{}", what), name, one, kLiveGoal, measure);
        desk.forgetAll();
        QApplication::processEvents();
        if (!bench.piano()->vertical()) continue;
        const double all = medianOf(50, [&](int i) { desk.supposeRail(0.05 * (i + 1)); });
        line(fmt::format("what-if-live-{}-all-notes", what), name, all, kLiveGoal, measure);
        desk.forgetAll();
        QApplication::processEvents();
    }
}

} // namespace

int main(int argc, char** argv) {
    qputenv("QT_QPA_PLATFORM", "offscreen");
    QApplication app(argc, argv);
    dress(Theme::light, 100);
    const double measure = yardstick();
    fmt::print("# action: the yardstick of this run, a fill and 200 lines: {:.3g} ms\n", measure);
    benchKind(ActionKind::upright, "upright", measure);
    benchKind(ActionKind::grand, "grand", measure);
    return 0;
}
