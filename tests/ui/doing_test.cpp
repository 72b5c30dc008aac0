// Drawings of doing: each belongs to a step and says what it shows; its words lie inside and beside one another.
#include "core/work/work.h"
#include "ui/widgets/doing/doing_drawing.h"
#include "ui/words/doing.h"

#include <QtTest>

#include <set>

using namespace hammerline;

namespace {

constexpr int kSizes[]{80, 100, 150, 200};
constexpr double kWidths[]{120, 154, 156, 200, 300}; // units; the test comes to stand beside between the middle ones
constexpr double kHeights[]{45, 63};
constexpr double kWide = 155, kLeastWide = 36; // beside its test a drawing may be lower

bool ofGrand(const doing::Drawing& drawing) {
    return drawing.kinds.find('U') == std::string_view::npos;
}

QImage painted(const doing::Drawing& drawing, QSize size, double scale) {
    QImage image(size * scale, QImage::Format_RGB32);
    image.setDevicePixelRatio(scale);
    QWidget widget;
    const DrawnStyle style = screenStyle(widget);
    image.fill(ink(style.look.paper));
    QPainter painter(&image);
    doing::paintDrawing(painter, style, drawing, doing::layDrawing(QRectF({}, QSizeF(size)), style, drawing));
    return image;
}

/// Share of the pixels in a place that are not paper.
double inkIn(const QImage& image, const QRectF& place) {
    int dark = 0;
    const QRect box = place.toAlignedRect().intersected(image.rect());
    for (int y = box.top(); y <= box.bottom(); ++y)
        for (int x = box.left(); x <= box.right(); ++x)
            dark += image.pixel(x, y) != ink(lookOf(qApp->palette()).paper).rgb();
    return static_cast<double>(dark) / std::max(1, box.width() * box.height());
}

QString nameOf(const doing::Drawing& drawing) {
    return QString::fromUtf8(drawing.step.data(), static_cast<qsizetype>(drawing.step.size())) +
           (ofGrand(drawing) ? QStringLiteral("-grand") : QString());
}

} // namespace

class DoingTest : public QObject {
    Q_OBJECT

private Q_SLOTS:
    void everyDrawingBelongsToAStep() {
        std::set<std::string_view> steps;
        for (const StepOfWork& each : allSteps())
            steps.insert(each.drawing);
        QVERIFY(doing::drawings().size() >= 23);
        for (const doing::Drawing& each : doing::drawings())
            QVERIFY2(steps.contains(each.step), qPrintable(nameOf(each)));
        for (const words::DoingText& each : words::doingTexts())
            QVERIFY2(doing::drawingOf(each.step, each.kinds) != nullptr, each.step.data());
    }

    /// A drawing that serves one kind alone is not shown for the other.
    void aDrawingIsOfTheKindsOfItsStep() {
        for (const doing::Drawing& each : doing::drawings())
            for (const StepOfWork& step : allSteps()) {
                if (step.drawing != each.step) continue;
                for (const char kind : each.kinds)
                    QVERIFY2(step.kinds.find(kind) != std::string_view::npos, qPrintable(nameOf(each)));
            }
    }

    void everyDrawingSaysWhatItShows() {
        for (const doing::Drawing& each : doing::drawings()) {
            QVERIFY2(!words::doingSentence(each.step, each.kinds).isEmpty(), qPrintable(nameOf(each)));
            QVERIFY2(!words::doingTest(each.step, each.kinds).isEmpty(), qPrintable(nameOf(each)));
            QVERIFY2(!each.act.arrows.empty(), qPrintable(nameOf(each)));
            int verbs = 0;
            for (const doing::Named& name : each.act.names) {
                QVERIFY2(!words::doingName(name.text).isEmpty(), name.text.data());
                QVERIFY2(each.act.world.contains(name.part), name.text.data());
                verbs += name.strong;
            }
            QVERIFY2(verbs == 1, qPrintable(nameOf(each)));
        }
    }

    void wordsLieInsideAndApart() {
        for (const int size : kSizes) {
            dress(Theme::light, size);
            QWidget widget;
            const DrawnStyle style = screenStyle(widget);
            for (const double wide : kWidths)
                for (const double high : kHeights)
                    for (const doing::Drawing& each : doing::drawings())
                        inside(each, style, QRectF(0, 0, u(wide), u(high)));
            for (const double wide : {kWide + 5, 196.0, 300.0})
                for (const doing::Drawing& each : doing::drawings())
                    inside(each, style, QRectF(0, 0, u(wide), u(kLeastWide)));
        }
        dress(Theme::light, 100);
    }

    void everyDrawingPaintsInk() {
        for (const Theme theme : {Theme::light, Theme::dark})
            for (const int size : {80, 200}) {
                dress(theme, size);
                QWidget widget;
                const DrawnStyle style = screenStyle(widget);
                for (const doing::Drawing& each : doing::drawings()) {
                    const QSize place(u(180), u(63));
                    const doing::Laid laid = doing::layDrawing(QRectF({}, QSizeF(place)), style, each);
                    const QImage image = painted(each, place, 1);
                    QVERIFY2(inkIn(image, laid.actPlace) > 0.03, qPrintable(nameOf(each)));
                    for (const doing::PlacedText& text : laid.texts)
                        QVERIFY2(inkIn(image, text.place) > 0.02, qPrintable(text.lines.join(QLatin1Char(' '))));
                }
            }
        dress(Theme::light, 100);
    }

    void theWidgetSpeaksAndTakesNoRoomWithoutADrawing() {
        DoingDrawing drawing;
        QVERIFY(drawing.setSubject("set-let-off", "U"));
        QVERIFY(drawing.accessibleDescription().contains(QStringLiteral("let-off screw")));
        QVERIFY(drawing.sizeHint().height() > 0);
        QVERIFY(!drawing.setSubject("hand-over", "U"));
        QVERIFY(drawing.accessibleDescription().isEmpty());
        QCOMPARE(drawing.sizeHint(), QSize(0, 0));
    }

    /// Not a check: the pictures, for whoever wants to look at them.
    void picturesWhereAsked() {
        const QString folder = qEnvironmentVariable("HAMMERLINE_DOING_PICTURES");
        if (folder.isEmpty()) return;
        for (const Theme theme : {Theme::light, Theme::dark})
            for (const doing::Drawing& each : doing::drawings()) {
                dress(theme, 100);
                const QString dark = theme == Theme::dark ? QStringLiteral("dark-") : QString();
                QVERIFY(painted(each, {u(185), u(theme == Theme::dark ? 45 : 63)}, 2)
                            .save(folder + QLatin1Char('/') + dark + nameOf(each) + QStringLiteral(".png")));
            }
        dress(Theme::light, 100);
    }

private:
    static void inside(const doing::Drawing& each, const DrawnStyle& style, const QRectF& place) {
        const doing::Laid laid = doing::layDrawing(place, style, each);
        const QString where = QStringLiteral("%1 at %2 x %3").arg(nameOf(each)).arg(place.width()).arg(place.height());
        QVERIFY2(place.contains(laid.actPlace), qPrintable(where));
        QVERIFY2(laid.actPlace.height() >= style.u(14), qPrintable(where + QStringLiteral(" is small")));
        for (std::size_t i = 0; i < laid.texts.size(); ++i) {
            const doing::PlacedText& text = laid.texts[i];
            const QString said = where + QStringLiteral(": ") + text.lines.join(QLatin1Char(' '));
            QVERIFY2(place.contains(text.place), qPrintable(said));
            QVERIFY2(!text.place.intersects(laid.actPlace), qPrintable(said + QStringLiteral(" lies on the drawing")));
            for (const QString& line : text.lines)
                QVERIFY2(drawnWidth(text.face == doing::PlacedText::Face::strong ? style.bold : style.plain, line) <=
                             text.place.width() + 0.5,
                         qPrintable(said));
            for (std::size_t j = i + 1; j < laid.texts.size(); ++j)
                QVERIFY2(!text.place.intersects(laid.texts[j].place),
                         qPrintable(said + QStringLiteral(" on ") + laid.texts[j].lines.join(QLatin1Char(' '))));
        }
    }
};

QTEST_MAIN(DoingTest)
#include "doing_test.moc"
