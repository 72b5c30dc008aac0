// The pictures of the stroke are at the places that the stroke tells, measured in the picture itself.
#include "core/sheet/note_action.h"
#include "ui/widgets/stroke_columns.h"
#include "ui/widgets/stroke_painter.h"

#include <QDir>
#include <QImage>
#include <QTest>

namespace hammerline {
namespace {

constexpr double kPxPerMm = 80;

/// A note of the customary upright with its readings, mm.
struct Read {
    double dip = 10, lostMotion = 0.5, blow = 46, letOff = 3, damperStart = 22;
};

PianoRecord bookOf(const std::map<int, Read>& notes, ActionKind kind = ActionKind::upright) {
    PianoRecord record;
    record.piano = *makePiano(kind);
    record.piano.ratio = {5.0, 5.0};
    record.specName = std::string(defaultSheet(kind));
    Pass pass;
    pass.number = 1;
    for (const auto& [note, read] : notes)
        for (const auto& [id, mm] : {std::pair{dimension::keyDip, read.dip},
                                     {dimension::lostMotion, read.lostMotion},
                                     {dimension::blow, read.blow},
                                     {dimension::letOff, read.letOff},
                                     {dimension::damperStart, read.damperStart}}) {
            Reading reading;
            reading.count = fromTrade(mm, Kind::length);
            if (fitted(id, {note}, record.piano)) pass.cells[{{note}, id}].trials = {reading};
        }
    record.passes.push_back(pass);
    return record;
}

DrawnStyle lightStyle() {
    QFont font;
    font.setPixelSize(12);
    return {.look = lookOf(Theme::light), .plain = font, .bold = font, .strong = font, .unit = 4};
}

/// Middle of the run of ink in the row `y` around `x`; far away where there is none near.
double inkNear(const QImage& image, double x, double y) {
    const QRgb wanted = lookOf(Theme::light).ink;
    double sum = 0;
    int count = 0;
    for (int at = qRound(x) - 12; at <= qRound(x) + 12; ++at)
        if (image.pixel(at, qRound(y)) == wanted) {
            sum += at + 0.5;
            ++count;
        }
    return count > 0 ? sum / count : -1e6;
}

} // namespace

class ActionTest : public QObject {
    Q_OBJECT
private Q_SLOTS:
    void initTestCase() { dress(Theme::light, 100); }

    // By hand: let-off at 0.5 + (46 - 3)/5 = 9.1, bottom at 10.
    void theLargeStrokeIsToScale() {
        const PianoRecord record = bookOf({{40, {}}});
        const auto view = viewPass(record, 1);
        QVERIFY(view.has_value());
        const NoteAction action = ActionReckoning(record, *view, nullptr).at({40});
        QVERIFY(action.stroke.letOff.has_value());
        QVERIFY(std::abs(*action.stroke.letOff - 9.1) < 1e-9);
        const DrawnStyle style = lightStyle();
        const double left = 25.5 * 4, right = left + 12 * kPxPerMm;
        QCOMPARE(KeyWay::over(0, 1, action).most, 12.0); // the sheet's deepest dip is 11
        QImage image(static_cast<int>(right) + 16, 200, QImage::Format_RGB32);
        image.fill(ink(style.look.paper));
        QPainter painter(&image);
        paintStroke(painter, QRectF(0, 10, image.width(), 180), action, record.piano, style);
        painter.end();
        const double above = 10 + 3 * 4 - 2; // just over the bar only let-off and bottom stand out
        QVERIFY(std::abs(inkNear(image, left + 9.1 * kPxPerMm, above) - (left + 9.1 * kPxPerMm)) <= 1);
        QVERIFY(std::abs(inkNear(image, left + 10 * kPxPerMm, above) - (left + 10 * kPxPerMm)) <= 1);
        QVERIFY(inkNear(image, left + 5 * kPxPerMm, above) < 0);
        // the damper's tip stands at 0.5 + 22/5 = 4.9
        QVERIFY(std::abs(inkNear(image, left + 4.9 * kPxPerMm, 10 + 3 * 4 + 10.5 * 4 - 5) - (left + 4.9 * kPxPerMm)) <=
                1);
    }

    void aJackThatDoesNotEscapeIsDrawnBroken() {
        const PianoRecord sound = bookOf({{40, {}}}), shallow = bookOf({{40, {.dip = 8.5}}});
        const auto imageOf = [](const PianoRecord& record) {
            const auto view = viewPass(record, 1);
            const NoteAction action = ActionReckoning(record, *view, nullptr).at({40});
            QImage image(1000, 120, QImage::Format_RGB32);
            image.fill(Qt::white);
            QPainter painter(&image);
            paintStroke(painter, QRectF(0, 0, 1000, 120), action, record.piano, lightStyle());
            return image;
        };
        const auto faults = [](const QImage& image) { // nothing else in the picture is red
            int count = 0;
            for (int y = 0; y < image.height(); ++y)
                for (int x = 0; x < image.width(); ++x) {
                    const QColor pixel = image.pixelColor(x, y);
                    count += pixel.red() > pixel.green() + 40 && pixel.red() > pixel.blue() + 20 ? 1 : 0;
                }
            return count;
        };
        QCOMPARE(faults(imageOf(sound)), 0);
        QVERIFY(faults(imageOf(shallow)) > 10);
    }

    // Key travel runs down the page: the black of the lost motion ends at its reading in every column.
    void theColumnsAreToScale() {
        std::map<int, Read> notes;
        for (int n = 1; n <= 88; ++n)
            notes[n] = {.lostMotion = 0.2 + 0.02 * n};
        const PianoRecord record = bookOf(notes);
        const auto view = viewPass(record, 1);
        const auto actions = ActionReckoning(record, *view, nullptr).all();
        const DrawnStyle style = lightStyle();
        QImage image(1100, 440, QImage::Format_RGB32);
        image.fill(ink(style.look.paper));
        QPainter painter(&image);
        const StrokeAxis axis = StrokeAxis::across(60, 1090, 10, record.piano);
        paintStrokeColumns(painter, QRectF(0, 10, 1100, 420), axis, actions, record.piano, {.nameWorst = false}, style);
        painter.end();
        double most = 10;
        for (const NoteAction& each : actions)
            most = std::max({most, *each.stroke.bottom, *each.stroke.letOff});
        most = std::ceil(most * 2 + 0.5) / 2;
        for (const int n : {1, 20, 44, 88}) {
            const auto [left, right] = axis.columns.at(static_cast<std::size_t>(n) - 1);
            const int x = qRound((left + right) / 2 + 2);
            int y = 10;
            while (image.pixel(x, y) == style.look.ink || y == 10)
                ++y;
            const double mm = (y - 10) * most / 420;
            QVERIFY2(std::abs(mm - notes[n].lostMotion) < 0.06, qPrintable(QStringLiteral("%1: %2").arg(n).arg(mm)));
        }
    }
};

} // namespace hammerline

QTEST_MAIN(hammerline::ActionTest)
#include "action_test.moc"
