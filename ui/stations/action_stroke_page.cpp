// Page 2 of the wide note: its stroke large, and below it those of all notes as read and after the plan.
#include "ui/stations/action_page.h"
#include "ui/widgets/drawn_head.h"
#include "ui/widgets/stroke_columns.h"
#include "ui/widgets/stroke_painter.h"
#include "ui/words/stroke_labels.h"

#include <QMouseEvent>
#include <QPainter>

namespace hammerline {

namespace {

constexpr double kStrokeMargin = 4, kColumnsTop = 6, kColumnsFoot = 4, kColumnsHigh = 42; // units

class StrokePage : public ActionPage {
public:
    using ActionPage::ActionPage;

    QString title() const override { return tr("Stroke"); }
    QString sentence() const override {
        const NoteAction& action = desk().note();
        QString out = words::strokeSentence(action.stroke, *desk().bench().piano());
        if (action.strokeAfter)
            out += QLatin1Char(' ') +
                   tr("After the plan: %1").arg(words::strokeSentence(*action.strokeAfter, *desk().bench().piano()));
        return out;
    }
    QList<KeyHint> pageHints() const override {
        return {{QStringLiteral("left right"), tr("note")},
                {QStringLiteral("Home End"), tr("first, last of the section")},
                {QStringLiteral("Z"), m_how.lastOfWay ? tr("whole way") : tr("the last 4 mm")},
                {QStringLiteral("N"), tr("naturals, sharps, all")}};
    }
    DimensionId stripDimension() const override { return dimension::letOff; }
    int wantedHeight(int wide) const override {
        const DrawnStyle style = screenStyle(*this);
        const double one = strokeHeight(style, desk().note().strokeAfter.has_value());
        const double rows = anyPlanned() ? 2 : 1;
        return qRound(head().height(style, wide - 2 * units(kStrokeMargin)) + one + units(2 + rows * kColumnsHigh));
    }
    bool useKey(int key, Qt::KeyboardModifiers) override {
        if (key == Qt::Key_Z)
            m_how.lastOfWay = !m_how.lastOfWay;
        else if (key == Qt::Key_N)
            m_how.keys = m_how.keys == StrokeKeys::all        ? StrokeKeys::naturals
                         : m_how.keys == StrokeKeys::naturals ? StrokeKeys::sharps
                                                              : StrokeKeys::all;
        else
            return false;
        update();
        return true;
    }

protected:
    void paintEvent(QPaintEvent*) override {
        QPainter painter(this);
        const DrawnStyle style = screenStyle(*this);
        painter.fillRect(rect(), ink(style.look.paper));
        if (!desk().ready()) return paintNothing(painter);
        painter.setRenderHint(QPainter::Antialiasing);
        const NoteAction& action = desk().note();
        const Piano& piano = *desk().bench().piano();
        const double left = units(kStrokeMargin), room = width() - 2 * left;
        const DrawnHead above = head();
        above.paint(painter, style, left, room);
        const double top = above.height(style, room);
        const double high = strokeHeight(style, action.strokeAfter.has_value());
        paintStroke(painter, QRectF(left, top, width() - left, high), action, piano, style);
        paintAll(painter, style, top + high + units(2));
    }
    void mousePressEvent(QMouseEvent* event) override {
        setFocus();
        const Workbench& bench = desk().bench();
        if (bench.piano()) desk().bench().setNote(NoteAxis(wholeWidth(), *bench.piano()).at(event->pos().x()));
    }

private:
    static DrawnHead head() {
        return {tr("As the finger meets it"), tr("key travel in mm, from rest to the bottom; zones shaded")};
    }
    bool anyPlanned() const {
        return std::ranges::any_of(desk().all(), [](const NoteAction& a) { return a.strokeAfter.has_value(); });
    }
    void paintAll(QPainter& painter, const DrawnStyle& style, double top) {
        const NoteAxis notes(wholeWidth(), *desk().bench().piano());
        const StrokeAxis axis = StrokeAxis::of(notes);
        const bool plan = anyPlanned();
        const double room = height() - top, each = plan ? room / 2 : room;
        for (const bool after : {false, true}) {
            if (after && !plan) continue;
            const double at = top + (after ? each : 0);
            painter.fillRect(QRectF(0, at, width(), 1), ink(style.look.line));
            StrokeColumns how = m_how;
            how.afterPlan = after;
            how.current = desk().bench().note();
            const QRectF box(0, at + units(kColumnsTop), width(), each - units(kColumnsTop + kColumnsFoot));
            paintStrokeColumns(painter, box, axis, desk().all(), *desk().bench().piano(), how, style);
            paintLegendOfAll(painter, style, at, after);
        }
    }
    void paintLegendOfAll(QPainter& painter, const DrawnStyle& style, double top, bool after) {
        painter.setPen(ink(style.look.ink));
        drawnText(painter, style, style.bold, {units(kStrokeMargin), top + units(7)},
                  words::strokeAllName(after, m_how.keys == StrokeKeys::all        ? 0
                                              : m_how.keys == StrokeKeys::naturals ? 1
                                                                                   : 2));
        if (after) return;
        painter.setPen(ink(style.look.ink2));
        double y = top + units(12);
        for (const QString& line : words::strokeLegend(*desk().bench().piano())) {
            drawnText(painter, style, style.plain, {units(kStrokeMargin), y}, line);
            y += units(4.4);
        }
    }

    StrokeColumns m_how;
};

} // namespace

ActionPage* makeStrokePage(ActionDesk& desk, QWidget* parent) {
    return new StrokePage(desk, parent);
}

} // namespace hammerline
