// Where everything stands: names in a column at each side of the picture, so that no word lies on a line of it; the
// test at the right, or below where there is little width.
#include "ui/widgets/doing/doing_drawing.h"
#include "ui/words/doing.h"

#include <algorithm>
#include <numeric>

namespace hammerline::doing {

namespace {

using Face = PlacedText::Face;
constexpr double kBeside = 155;                          // units: from here on the test stands beside
constexpr double kMargin = 3, kGap = 3, kLeast = 12;     // units
constexpr double kColumnShare = 0.22, kTestShare = 0.27; // of the width

double levelOf(const Named& name) {
    return name.level == kAtPart ? name.part.y() : name.level;
}

class Layout {
public:
    Layout(const QRectF& place, const DrawnStyle& style, const Drawing& drawing) : m_style(style), m_drawing(drawing) {
        const double edge = style.u(kMargin);
        m_room = place.adjusted(edge, edge, -edge, -edge);
    }

    Laid lay() {
        if (m_room.width() >= m_style.u(kBeside))
            layTestBeside();
        else
            layTestBelow();
        layView();
        layAct();
        return m_laid;
    }

private:
    QFontMetricsF metrics(Face face) const {
        return QFontMetricsF(face == Face::strong ? m_style.bold : m_style.plain);
    }
    double wide(Face face, const QString& text) const {
        return drawnWidth(face == Face::strong ? m_style.bold : m_style.plain, text);
    }

    /// Broken at blanks; a word longer than the width stands alone.
    QStringList broken(Face face, const QString& text, double width) const {
        QStringList out;
        for (const QString& word : text.split(QLatin1Char(' '), Qt::SkipEmptyParts)) {
            const QString longer = out.isEmpty() ? word : out.last() + QLatin1Char(' ') + word;
            if (!out.isEmpty() && wide(face, longer) <= width)
                out.last() = longer;
            else
                out << word;
        }
        return out;
    }

    double widest(Face face, const QStringList& lines) const {
        double out = 0;
        for (const QString& each : lines)
            out = std::max(out, wide(face, each));
        return out;
    }

    /// Puts a text under the last one of a column; its bottom.
    double putText(double x, double y, double width, Face face, const QString& text) {
        if (text.isEmpty()) return y;
        PlacedText out{.lines = broken(face, text, width), .face = face};
        const double high = metrics(face).height() * static_cast<double>(out.lines.size());
        out.place = {x, y, widest(face, out.lines), high};
        m_laid.texts.push_back(out);
        return y + high;
    }

    double heightOf(Face face, const QString& text, double width) const {
        return metrics(face).height() * static_cast<double>(broken(face, text, width).size());
    }

    void layTestBeside() {
        const QString says = words::doingTest(m_drawing.step, m_drawing.kinds),
                      figure = words::doingFigure(m_drawing.step, m_drawing.kinds);
        if (says.isEmpty() && figure.isEmpty()) return;
        const double width = std::clamp(m_room.width() * kTestShare, m_style.u(44), m_style.u(66));
        const double x = m_room.right() - width;
        const double rule = x - m_style.u(kGap);
        m_laid.rule = {rule, m_room.top(), rule, m_room.bottom()};
        double y = putText(x, m_room.top(), width, Face::strong, words::doingTestHead());
        y = putText(x, y + m_style.u(1), width, Face::plain, says);
        const double high = figure.isEmpty() ? 0 : heightOf(Face::strong, figure, width);
        const double left = m_room.bottom() - high - y - m_style.u(2);
        m_laid.showsTest = !m_drawing.test.shapes.empty() && left >= m_style.u(kLeast);
        if (m_laid.showsTest) {
            const QRectF room(x, y + m_style.u(1), width, std::min(left, m_style.u(26)));
            m_laid.test = fitted(m_drawing.test.world, room, m_laid.testPlace);
            y = m_laid.testPlace.bottom();
        }
        putText(x, y + m_style.u(1), width, Face::strong, figure);
        m_room.setRight(rule - m_style.u(kGap));
    }

    void layTestBelow() {
        const QString says = words::doingTest(m_drawing.step, m_drawing.kinds),
                      figure = words::doingFigure(m_drawing.step, m_drawing.kinds);
        const QString line =
            QStringList{words::doingTestHead() + QLatin1Char(':'), says, figure}.join(QLatin1Char(' ')).simplified();
        if (says.isEmpty() && figure.isEmpty()) return;
        const double high = heightOf(Face::plain, line, m_room.width());
        putText(m_room.left(), m_room.bottom() - high, m_room.width(), Face::plain, line);
        m_room.setBottom(m_room.bottom() - high - m_style.u(1));
    }

    void layView() {
        const double y = putText(m_room.left(), m_room.top(), m_room.width(), Face::quiet,
                                 words::doingView(m_drawing.step, m_drawing.kinds));
        m_room.setTop(y + m_style.u(1));
    }

    /// The world as large as it goes, in the middle of a room.
    QTransform fitted(const QRectF& world, const QRectF& room, QRectF& place) const {
        const double scale = std::min(room.width() / world.width(), room.height() / world.height());
        place = QRectF(0, 0, world.width() * scale, world.height() * scale);
        place.moveCenter(room.center());
        QTransform out;
        out.translate(place.left() - scale * world.left(), place.bottom() + scale * world.top());
        out.scale(scale, -scale);
        return out;
    }

    struct Column {
        std::vector<const Named*> names;
        double least = 0, natural = 0, width = 0;
    };

    Column columnOf(Side side) const {
        Column out;
        const double most = m_room.width() * kColumnShare;
        for (const Named& each : m_drawing.act.names) {
            if (each.side != side) continue;
            out.names.push_back(&each);
            const Face face = each.strong ? Face::strong : Face::plain;
            const QString text = words::doingName(each.text);
            out.natural = std::max(out.natural, wide(face, text));
            out.least = std::max(out.least, widest(face, broken(face, text, most)));
        }
        std::ranges::sort(out.names, [](const Named* a, const Named* b) { return levelOf(*a) > levelOf(*b); });
        return out;
    }

    void layAct() {
        Column left = columnOf(Side::left), right = columnOf(Side::right);
        const double gaps = m_style.u(kGap) * ((left.names.empty() ? 0 : 1) + (right.names.empty() ? 0 : 1));
        const QRectF& world = m_drawing.act.world;
        const double atHeight = world.width() * m_room.height() / world.height();
        double spare = std::max(0.0, m_room.width() - gaps - left.least - right.least - atHeight);
        for (Column* each : {&left, &right}) {
            const double more = std::min(spare, each->natural - each->least);
            each->width = each->least + more;
            spare -= more;
        }
        QRectF room = m_room;
        if (!left.names.empty()) room.setLeft(room.left() + left.width + m_style.u(kGap));
        if (!right.names.empty()) room.setRight(room.right() - right.width - m_style.u(kGap));
        m_laid.act = fitted(world, room, m_laid.actPlace);
        layColumn(left, Side::left);
        layColumn(right, Side::right);
    }

    void layColumn(const Column& column, Side side) {
        const bool atLeft = side == Side::left;
        std::vector<PlacedText> out;
        for (const Named* each : column.names) {
            PlacedText text{.face = each->strong ? Face::strong : Face::plain,
                            .align = atLeft ? Qt::AlignRight : Qt::AlignLeft,
                            .leads = true,
                            .to = m_laid.act.map(each->part)};
            text.lines = broken(text.face, words::doingName(each->text), column.width);
            const double width = widest(text.face, text.lines),
                         high = metrics(text.face).height() * static_cast<double>(text.lines.size());
            const double x =
                atLeft ? m_laid.actPlace.left() - m_style.u(kGap) - width : m_laid.actPlace.right() + m_style.u(kGap);
            const double middle = m_laid.act.map(QPointF(0, levelOf(*each))).y();
            text.place = {x, middle - high / 2, width, high};
            out.push_back(text);
        }
        spread(out);
        for (PlacedText& each : out) {
            const double edge = m_style.u(0.8);
            each.from = {atLeft ? each.place.right() + edge : each.place.left() - edge, each.place.center().y()};
            m_laid.texts.push_back(each);
        }
    }

    /// One under the other in their order: first pushed down, then up where the last ones fell out below.
    void spread(std::vector<PlacedText>& texts) const {
        const double between = m_style.u(0.8);
        double from = m_room.top();
        for (PlacedText& each : texts) {
            each.place.moveTop(std::max(each.place.top(), from));
            from = each.place.bottom() + between;
        }
        double to = m_room.bottom();
        for (auto each = texts.rbegin(); each != texts.rend(); ++each) {
            each->place.moveBottom(std::min(each->place.bottom(), to));
            to = each->place.top() - between;
        }
    }

    const DrawnStyle& m_style;
    const Drawing& m_drawing;
    QRectF m_room;
    Laid m_laid;
};

} // namespace

Laid layDrawing(const QRectF& place, const DrawnStyle& style, const Drawing& drawing) {
    return Layout(place, style, drawing).lay();
}

} // namespace hammerline::doing
