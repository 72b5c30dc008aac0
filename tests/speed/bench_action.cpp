// One frame of the action drawn to scale, and the wide note's pages while a handle is moved: what is repainted must be
// done within a frame. In the size of a window of 1280x800. Prints NAME VALUE UNIT goal GOAL ok|short.
#include "core/stroke/moments.h"
#include "ui/stations/action_page.h"
#include "ui/widgets/linkage_painter.h"

#include <QApplication>
#include <QImage>
#include <QTemporaryDir>
#include <fmt/format.h>

#include <algorithm>
#include <cstdio>
#include <ctime>

using namespace hammerline;

namespace {

constexpr int kFrames = 200;
constexpr double kFrameGoal = 4, kLiveGoal = 16; // ms

double cpuMs() {
    return static_cast<double>(std::clock()) * 1000.0 / CLOCKS_PER_SEC;
}

double median(std::vector<double> values) {
    std::ranges::sort(values);
    return values[values.size() / 2];
}

void line(const char* name, double value, double goal) {
    fmt::print("{} {:.3g} ms goal {:.3g} {}\n", name, value, goal, value <= goal ? "ok" : "short");
}

PianoRecord recordOf(ActionKind kind) {
    PianoRecord record;
    record.piano = *makePiano(kind);
    record.specName = std::string(defaultSheet(kind));
    record.passes.emplace_back();
    record.passes.back().number = 1;
    return record;
}

/// The whole stroke, frame by frame.
double frameOf(ActionKind kind) {
    const PianoRecord record = recordOf(kind);
    const auto view = viewPass(record, 1);
    const ActionReckoning reckoning(record, *view, nullptr);
    const auto drawn =
        drawnNote(record.piano, PassTable(record.piano, view->pass), reckoning.zones(), reckoning.ratioOf({40}), {40});
    if (!drawn) return 1e9;
    // the page and, in it, the drawing as they are in a window of 1280x800
    QImage image(1192, 526, QImage::Format_ARGB32_Premultiplied);
    const QWidget widget;
    const DrawnStyle style = screenStyle(widget);
    std::vector<double> times;
    for (int i = 0; i < kFrames; ++i) {
        const double before = cpuMs();
        QPainter painter(&image);
        painter.fillRect(image.rect(), ink(style.look.paper));
        const double travel = drawn->linkage.distances().dip * i / kFrames;
        paintLinkage(painter, QRectF(16, 36, 792, 422),
                     {.body = &*drawn, .outline = &*drawn, .travel = travel, .travelOfOutline = travel}, style);
        painter.end();
        times.push_back(cpuMs() - before);
    }
    return median(times);
}

} // namespace

int main(int argc, char** argv) {
    qputenv("QT_QPA_PLATFORM", "offscreen");
    QApplication app(argc, argv);
    dress(Theme::light, 100);
    line("action-drawn-frame-upright", frameOf(ActionKind::upright), kFrameGoal);
    line("action-drawn-frame-grand", frameOf(ActionKind::grand), kFrameGoal);

    Workbench bench;
    const QTemporaryDir folder;
    const auto made = bench.createBook(folder.filePath(QStringLiteral("b.hammerline")));
    Piano piano = *makePiano(ActionKind::upright);
    piano.name = "bench";
    const auto added = bench.addPiano(piano, "upright");
    std::vector<NewReading> readings;
    for (int n = 1; n <= 88; ++n)
        for (const auto& [id, mm] : {std::pair{dimension::keyDip, 10.0},
                                     {dimension::lostMotion, 0.3},
                                     {dimension::blow, 46.0},
                                     {dimension::letOff, 3.0 + n % 5}}) {
            Reading reading;
            reading.count = fromTrade(mm, Kind::length);
            readings.push_back({{{n}, id}, reading});
        }
    const auto stored = bench.enterAll(readings, "entry");
    if (!made || !added || !stored) return 2;
    ActionDesk desk(bench);
    bench.setNote({40});
    for (auto* make : {&makeAccountPage, &makeStrokePage, &makeDrawnPage}) {
        ActionPage* page = make(desk, nullptr);
        page->setAttribute(Qt::WA_DontShowOnScreen);
        page->resize(1192, 526);
        page->show();
        QImage image(page->size(), QImage::Format_ARGB32_Premultiplied);
        std::vector<double> times;
        for (int i = 0; i < kFrames / 4; ++i) {
            const double before = cpuMs();
            desk.suppose(dimension::letOff, 2 + 0.05 * i);
            page->render(&image);
            times.push_back(cpuMs() - before);
        }
        line(qPrintable(QStringLiteral("what-if-live-") +
                        QString(page->title()).replace(QLatin1Char(' '), QLatin1Char('-')).toLower()),
             median(times), kLiveGoal);
        delete page;
    }
    return 0;
}
