// A person who sets the type larger, or has a very large screen, loses nothing: no text is cut, no control is pushed
// out of the window, no name stands far from its figures.
#include "ui/stations/how_to.h"
#include "ui/stations/work_next.h"
#include "ui/widgets/action_drawing.h"
#include "ui/widgets/row_paint.h"
#include "ui/widgets/station_rail.h"
#include "ui/words/words.h"

#include <QAbstractButton>
#include <QLabel>
#include <QPainter>
#include <QScrollBar>
#include <QTest>

#include "window_bench.h"

using namespace hammerline;

namespace {

constexpr std::array kStations{"piano", "survey", "measure", "review", "work", "passes"};

QString where(const char* station, const QWidget& widget, const QString& what) {
    const auto* label = qobject_cast<const QLabel*>(&widget);
    const auto* button = qobject_cast<const QAbstractButton*>(&widget);
    return QStringLiteral("%1: %2 %3 \"%4\": %5")
        .arg(QLatin1String(station), QLatin1String(widget.metaObject()->className()), widget.accessibleName(),
             label    ? label->text()
             : button ? button->text()
                      : QString(),
             what);
}

} // namespace

class LargeTypeTest : public QObject, protected WindowBench {
    Q_OBJECT
private Q_SLOTS:
    void cleanup() { close(); }

    void nothingIsCutAtLargeType() {
        for (const int size : {100, 125, 150}) {
            openFilled(size, QSize(1280, 800));
            nothingIsCut(size);
        }
    }

    /// Set larger while every station is open, and smaller again, it looks as if it had been so from the start.
    void enlargedWhileItIsOpenItIsLaidOutAnew() {
        openFilled(100, QSize(1280, 800));
        const auto places = [&] {
            QStringList all;
            for (const char* station : kStations) {
                show(station);
                m_bench->setCell({{1}, dimension::letOff});
                show(station);
                for (const QWidget* widget : m_window->station()->findChildren<QWidget*>()) {
                    if (!widget->isVisible()) continue;
                    const QRect at(widget->mapTo(m_window.get(), QPoint()), widget->size());
                    all << where(
                        station, *widget,
                        QStringLiteral("%1 %2 %3 %4").arg(at.x()).arg(at.y()).arg(at.width()).arg(at.height()));
                }
            }
            all.sort();
            return all;
        };
        places(); // a plan is made
        const QStringList usual = places();
        m_window->setTextSize(150);
        nothingIsCut(150);
        m_window->setTextSize(100);
        QCOMPARE(places(), usual);
        const auto toolsWidth = [&] { return m_window->station()->tools()->width(); };
        show("work"); // in front while the type changes
        const int wide = toolsWidth();
        m_window->setTextSize(150);
        m_window->setTextSize(100);
        show("work");
        QCOMPARE(toolsWidth(), wide);
    }

private:
    void nothingIsCut(int size) {
        for (const char* station : kStations) {
            show(station);
            QCOMPARE(m_window->size(), QSize(1280, 800));
            const QSize least = m_window->centralWidget()->minimumSizeHint();
            QVERIFY2(least.width() <= 1280 && least.height() <= m_window->centralWidget()->height(),
                     qPrintable(QStringLiteral("%1 at %2 %: needs %3 by %4")
                                    .arg(QLatin1String(station))
                                    .arg(size)
                                    .arg(least.width())
                                    .arg(least.height())));
            for (const QWidget* widget : m_window->findChildren<QWidget*>()) {
                if (!widget->isVisible()) continue;
                const QString cut = cutOf(*widget);
                QVERIFY2(cut.isEmpty(), qPrintable(where(station, *widget, cut)));
            }
        }
    }

private Q_SLOTS:

    /// At the usual size nothing has to be scrolled sideways.
    void listsFitAtTheUsualSize() {
        openFilled(100, QSize(1280, 800));
        for (const char* station : kStations) {
            show(station);
            for (const RowTable* list : m_window->findChildren<RowTable*>())
                if (list->isVisible())
                    QVERIFY2(list->horizontalScrollBarPolicy() == Qt::ScrollBarAlwaysOff,
                             qPrintable(where(station, *list, QStringLiteral("scrolls sideways"))));
        }
    }

    void aNameStaysByItsFiguresOnAVeryLargeScreen() {
        openFilled(100, QSize(3840, 2160));
        int looked = 0;
        for (const char* station : kStations) {
            show(station);
            for (const RowTable* list : m_window->findChildren<RowTable*>()) {
                const int columns = list->model()->columnCount();
                if (!list->isVisible() || columns < 5 || list->viewport()->width() < u(300)) continue;
                int widest = 0;
                for (int c = 0; c < columns; ++c)
                    widest = std::max(widest, list->columnWidth(c));
                QVERIFY2(widest < list->viewport()->width() * 0.55,
                         qPrintable(where(station, *list, QStringLiteral("a column of %1 pixels").arg(widest))));
                ++looked;
            }
        }
        QVERIFY(looked >= 3);
    }

    /// Ink at the edge of a drawing is a text that goes on beyond it.
    // Six stations in a low window: a row that has no room for its second line shows none of it, not half.
    void theRailShowsWholeLinesOrNone() {
        dress(Theme::light, 200);
        StationRail rail({QStringLiteral("Piano"), QStringLiteral("Measure")});
        for (const int station : {0, 1})
            rail.setState(station, QStringLiteral("88 notes"));
        rail.setAttribute(Qt::WA_DontShowOnScreen);
        rail.show();
        for (int high = u(15); high <= u(22); ++high) {
            rail.resize(rail.sizeHint().width(), 2 * high + u(2.5));
            QApplication::processEvents();
            for (auto* button : rail.findChildren<QAbstractButton*>()) {
                const QImage seen = button->grab().toImage();
                const QRgb ground = seen.pixel(seen.width() - 2, seen.height() - 1);
                for (int x = u(6); x < seen.width() - 1; ++x)
                    QCOMPARE(seen.pixel(x, seen.height() - 1), ground);
            }
        }
        dress(Theme::light, 100);
    }

    void noDrawingIsCutAtLargeType() {
        QStringList cut;
        for (const int size : {100, 150, 200}) {
            dress(Theme::light, size);
            for (const ActionKind kind : {ActionKind::upright, ActionKind::grand}) {
                const auto piano = makePiano(kind);
                for (const DimensionId id : dimensionsToShow(&*piano)) {
                    QImage image(724, 620, QImage::Format_RGB32);
                    const QRgb paper = lookOf(Theme::light).paper;
                    image.fill(paper);
                    QPainter painter(&image);
                    paintAction(painter, QRectF(image.rect()), id, kind, lookOf(Theme::light));
                    painter.end();
                    int ink = 0;
                    for (int y = 0; y < image.height(); ++y)
                        ink += (image.pixel(0, y) != paper) + (image.pixel(image.width() - 1, y) != paper);
                    if (ink > 0) cut << QStringLiteral("%1 at %2 %").arg(words::name(id)).arg(size);
                }
            }
        }
        QVERIFY2(cut.isEmpty(), qPrintable(cut.join(QStringLiteral("; "))));
    }

private:
    /// Two passes with something out, findings, and so a plan: every list has rows.
    void openFilled(int size, QSize window) {
        m_textSize = size;
        open("old-upright");
        for (int pass = 0; pass < 2; ++pass) {
            QVERIFY(m_bench->addPass({}).has_value());
            std::vector<NewReading> all;
            for (int n = 1; n <= 88; ++n)
                for (const auto& [id, typed] : {std::pair{dimension::letOff, n % 7 == 0 ? "5.6" : "3.0"},
                                                {dimension::lostMotion, n % 9 == 0 && pass == 0 ? "1.4" : "0.3"},
                                                {dimension::keyDip, n % 11 == 0 ? "8.6" : "10.0"},
                                                {dimension::checking, "16.0"}})
                    all.push_back({{{n}, id}, reading(typed)});
            QVERIFY(m_bench->enterAll(all, "entry").has_value());
        }
        const auto findings = parseFindings("1-12 bridle-strap rotted", *m_bench->piano());
        QVERIFY(findings.has_value() && m_bench->addFindings(*findings).has_value());
        m_window->resize(window);
    }

    void show(const char* station) {
        QVERIFY(m_window->showStation(QLatin1String(station)));
        m_window->findChild<NextLine*>()->refresh(); // now, and not in the midst of what is looked at
        for (int i = 0; i < 5; ++i)
            QCoreApplication::processEvents();
    }

    /// What of a widget is cut; empty: nothing.
    static QString cutOf(const QWidget& widget) {
        if (const auto* list = qobject_cast<const RowTable*>(&widget)) return cutOfList(*list);
        if (const auto* button = qobject_cast<const QAbstractButton*>(&widget))
            if (!button->text().isEmpty() && button->width() < button->minimumSizeHint().width())
                return QStringLiteral("narrower than its text");
        const auto* label = qobject_cast<const QLabel*>(&widget);
        if (!label || label->text().isEmpty()) return {};
        const bool endsInDots = label->textFormat() == Qt::PlainText &&
                                label->sizePolicy().horizontalPolicy() == QSizePolicy::Ignored; // the name of the piano
        if (label->wordWrap()) {
            if (label->height() < label->heightForWidth(label->width())) return QStringLiteral("lower than its text");
        } else if (!endsInDots && label->width() < label->sizeHint().width()) {
            return QStringLiteral("narrower than its text");
        }
        return {};
    }

    static QString cutOfList(const RowTable& list) {
        const int columns = list.model()->columnCount();
        int all = 0;
        for (int c = 0; c < columns; ++c)
            all += list.columnWidth(c);
        if (all > list.viewport()->width() && list.horizontalScrollBarPolicy() != Qt::ScrollBarAlwaysOn)
            return QStringLiteral("its columns go on beyond its edge");
        for (const ListRow& row : list.rows())
            for (std::size_t c = 0; c < row.cells.size(); ++c) {
                const int need = std::min(neededWidth(row.cells[c]), u(40)); // a sentence may end in dots
                if (list.columnWidth(static_cast<int>(c)) - u(4) < need - 1) return row.cells[c].text;
            }
        return {};
    }
};

QTEST_MAIN(LargeTypeTest)
#include "large_type_test.moc"
