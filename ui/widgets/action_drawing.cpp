#include "ui/widgets/action_drawing.h"

#include "ui/widgets/action_sketch.h"
#include "ui/words/words.h"

#include <QCoreApplication>
#include <QImage>

#include <algorithm>

namespace hammerline {

namespace {

struct ActionText {
    Q_DECLARE_TR_FUNCTIONS(ActionDrawing)
};

/// How the action stands while a dimension is read. Distances are drawn larger than they are.
ActionPose poseFor(DimensionId id, bool grand) {
    using namespace dimension;
    ActionPose pose;
    if (id == keyDip) pose = {15, 24, 12, 10, 0, -1};
    if (id == lostMotion) pose = {8, -1, 0, 0, 0, 0};
    if (id == letOff) pose = {10, 11, 9, 9, 0, -1};
    if (id == dimension::drop) pose = {11, 22, 9, 9, 0, -1};
    if (id == aftertouch) pose = {16, 22, 14, 10, 0, -1};
    if (id == checking) pose = {15, grand ? 22.0 : 25.0, 14, 10, 0, -1};
    if (id == damperStart) pose = {6, grand ? 21.0 : 23.0, 0, 2.5, 0, -1};
    if (id == damperRise) pose.damperOff = 15;
    if (id == halfBlow) pose.railForward = 0.45;
    return pose;
}

/// Distances at the key front are named at the left, those at string and hammer at the right: room is made there only.
QRectF world(DimensionId id, ActionKind kind) {
    using namespace dimension;
    const bool front = id == keyHeight || id == keyDip || id == lostMotion || id == aftertouch;
    const double left = front ? -110 : -28, right = front ? 462 : 505;
    return {left, -42, right - left, kind == ActionKind::grand ? 300.0 : 385.0};
}

class Drawing {
public:
    Drawing(QPainter& painter, const QRectF& place, DimensionId id, ActionKind kind, const Look& look)
        : m_grand(kind == ActionKind::grand), m_sketch(painter, place, world(id, kind), look), m_id(id) {}

    void paint() {
        const ActionPose pose = poseFor(m_id, m_grand);
        const bool moved = pose.gap >= 0 || pose.railForward > 0;
        if (moved) {
            m_sketch.setGhost(true);
            m_rest = draw({}, true);
            m_sketch.setGhost(false);
        }
        m_now = draw(pose, false);
        if (!moved) m_rest = m_now;
        labels();
        mark(pose);
    }

    const Sketch& sketch() const { return m_sketch; }

private:
    ActionPoints draw(const ActionPose& pose, bool ghost) {
        return m_grand ? drawGrand(m_sketch, pose, ghost) : drawUpright(m_sketch, pose, ghost);
    }

    void labels() {
        m_sketch.label({m_grand ? 240.0 : 428, m_grand ? 217.0 : 330}, ActionText::tr("string"));
        m_sketch.label({100, 6}, ActionText::tr("key"));
        if (m_grand) {
            m_sketch.label({292, 42}, ActionText::tr("wippen"));
            m_sketch.label({366, 118}, ActionText::tr("check"));
            m_sketch.label({176, 101}, ActionText::tr("let-off button"), true);
            m_sketch.label({428, 232}, ActionText::tr("damper"));
            m_sketch.label({200, 74}, ActionText::tr("jack"), true);
            m_sketch.label({366, 170}, ActionText::tr("hammer"));
        } else {
            m_sketch.label({256, 64}, ActionText::tr("wippen"), true);
            m_sketch.label({266, 172}, ActionText::tr("check"), true);
            m_sketch.label({256, 108}, ActionText::tr("let-off button"), true);
            m_sketch.reference({258, 110}, {310, 105});
            m_sketch.label({428, 262}, ActionText::tr("damper"));
            m_sketch.label({362, 118}, ActionText::tr("jack"));
            m_sketch.label({286, 262}, ActionText::tr("rest rail"), true);
            m_sketch.label({300, 322}, ActionText::tr("hammer"), true);
        }
        m_sketch.label({-24, m_grand ? 246.0 : 330.0}, ActionText::tr("player's side at the left; not to scale"));
    }

    void across(QPointF from, QPointF to) {
        // crown and string: the arrow lies along the hammer's way, its name above it
        if (m_grand)
            m_sketch.distance(from, {from.x(), to.y()}, name(), {-26, 0}, true);
        else
            m_sketch.distance(from, {to.x(), from.y()}, name(), {(to.x() - from.x()) / 2 + 9, 0});
    }

    QString name() const { return words::name(m_id); }

    void front(double fromY, double toY) {
        m_sketch.reference({-30, fromY}, {0, fromY});
        m_sketch.reference({-30, toY}, {0, toY});
        m_sketch.distance({-18, fromY}, {-18, toY}, name(), {-8, 0}, true);
    }

    void weight(bool down) {
        m_sketch.wood(QPolygonF{{QPointF(2, 22), QPointF(24, 22), QPointF(24, 46), QPointF(2, 46)}});
        m_sketch.label({7, 31}, QStringLiteral("g"));
        m_sketch.push({13, down ? 84.0 : 54}, {13, down ? 54.0 : 84});
        m_sketch.distance({0, 100}, {13, 100}, ActionText::tr("13 mm"), {14, 0});
        m_sketch.label({30, 62}, name());
    }

    void mark(const ActionPose& pose) {
        using namespace dimension;
        const double y = m_rest.keyFront.y();
        if (m_id == keyHeight) {
            m_sketch.wood(QPolygonF{{QPointF(2, 40), QPointF(14, 40), QPointF(14, 62), QPointF(2, 62)}});
            m_sketch.label({20, 46}, ActionText::tr("straight bar on proved keys"));
            m_sketch.reference({-30, 40}, {60, 40});
            m_sketch.distance({-18, y}, {-18, 40}, name(), {-8, 6}, true);
            m_sketch.distance({-52, -30}, {-52, y}, ActionText::tr("from bed"), {-4, -6}, true);
        } else if (m_id == sharpHeight) {
            m_sketch.reference({20, 22}, {64, 22});
            m_sketch.reference({20, 36}, {66, 36});
            m_sketch.distance({38, 22}, {38, 36}, name(), {-2, 22}, false);
        } else if (m_id == sharpProud) {
            m_sketch.reference({20, 27}, {64, 27});
            m_sketch.distance({38, 22}, {38, 36}, name(), {-2, 22}, false);
            m_sketch.push({100, 72}, {100, 40});
        } else if (m_id == keyDip) {
            front(y, 22 - pose.keyDown);
            m_sketch.push({14, 62}, {14, 34 - pose.keyDown});
        } else if (m_id == lostMotion) {
            front(y + (m_grand ? 0 : 8), 22 - (m_grand ? 1.0 : 0.0));
            m_sketch.label({m_now.crown.x() - 20, m_now.crown.y() + 24}, ActionText::tr("has not stirred"), true);
        } else if (m_id == aftertouch) {
            front(22 - 8, 22 - pose.keyDown);
            m_sketch.label({-106, 34}, ActionText::tr("from the escape on"));
        } else if (m_id == blow || m_id == letOff || m_id == checking) {
            across(m_now.crown, m_now.string);
        } else if (m_id == dimension::drop) {
            m_sketch.reference({m_now.crown.x() - 20, m_now.string.y() - 9},
                               {m_now.crown.x() + 30, m_now.string.y() - 9});
            m_sketch.distance({m_now.crown.x(), m_now.string.y() - 9}, m_now.crown, name(), {-12, 0}, true);
        } else if (m_id == damperStart || m_id == halfBlow) {
            if (m_grand)
                m_sketch.distance({m_now.crown.x() + 30, m_rest.crown.y()}, {m_now.crown.x() + 30, m_now.crown.y()},
                                  name(), {8, 0});
            else
                m_sketch.distance({m_rest.crown.x(), m_rest.crown.y() + 16}, {m_now.crown.x(), m_rest.crown.y() + 16},
                                  name(), {-8, 18}, true);
        } else if (m_id == damperRise) {
            if (m_grand)
                m_sketch.distance({432, m_now.string.y()}, {432, m_now.damper.y()}, name(), {-30, 14}, true);
            else
                m_sketch.distance(m_now.damper, {421, m_now.damper.y()}, name(), {14, -16}, false);
        } else if (m_id == strap) {
            m_sketch.strong(uprightStrap(-1, 14), 3.5);
            m_sketch.label({252, 140}, name(), true);
        } else if (m_id == capstanReserve) {
            m_sketch.distance({m_now.capstan.x() + 16, 22}, {m_now.capstan.x() + 16, m_now.capstan.y()},
                              ActionText::tr("standing out"), {-2, -36}, false);
        } else if (m_id == downWeight || m_id == upWeight) {
            weight(m_id == downWeight);
        } else if (m_id == playerClearance) {
            const double x = m_grand ? 300 : 296;
            m_sketch.metal(QPolygonF{{QPointF(x, -18), QPointF(x, 40)}}, 4);
            m_sketch.felt(QPolygonF{{QPointF(x - 8, 40), QPointF(x + 8, 40), QPointF(x + 8, 46), QPointF(x - 8, 46)}});
            m_sketch.label({x - 12, 34}, ActionText::tr("player's finger"), true);
            m_sketch.distance({x, 46}, {x, m_grand ? 58.0 : 65}, name(), {-16, 12}, true);
        } else if (m_id == feltLeft) {
            m_sketch.distance(m_now.coreTip, m_now.crown, name(), {m_grand ? 26.0 : -34.0, m_grand ? 0.0 : 30.0},
                              !m_grand);
        } else {
            wordMark();
        }
    }

    /// Said by words alone: where the eye goes.
    void wordMark() {
        const MeasuredAt at = row(m_id).at;
        const QPointF place = at == MeasuredAt::hammer     ? QPointF(m_now.crown.x() - 20, m_now.crown.y() + 24)
                              : at == MeasuredAt::keyFront ? QPointF(-18, m_rest.keyFront.y() + 20)
                                                           : QPointF(m_now.capstan.x() + 16, m_now.capstan.y() + 20);
        m_sketch.label(place, name(), at != MeasuredAt::other);
    }

    bool m_grand;
    Sketch m_sketch;
    DimensionId m_id;
    ActionPoints m_now, m_rest;
};

} // namespace

void paintAction(QPainter& painter, const QRectF& place, DimensionId id, ActionKind kind, const Look& look) {
    // Large type in a small place: the action gives way until every word has room beside it.
    QRectF inside = place;
    for (int tries = 0; tries < 6; ++tries) {
        QImage scratch(1, 1, QImage::Format_RGB32);
        QPainter nowhere(&scratch);
        Drawing trial(nowhere, inside, id, kind, look);
        trial.paint();
        const double left = std::max(0.0, place.left() + 2 - trial.sketch().textLeft()),
                     right = std::max(0.0, trial.sketch().textRight() + 2 - place.right());
        if (left + right <= 0 || inside.width() - left - right < place.width() / 3) break;
        inside.adjust(left + 1, 0, -right - 1, 0);
    }
    painter.save();
    Drawing(painter, inside, id, kind, look).paint();
    painter.restore();
}

ActionDrawing::ActionDrawing(QWidget* parent) : QWidget(parent) {
    setAccessibleName(ActionText::tr("Drawing of the distance"));
    setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Expanding);
}

void ActionDrawing::setSubject(DimensionId id, ActionKind kind) {
    m_dimension = id;
    m_kind = kind;
    setAccessibleDescription(words::name(id));
    update();
}

QSize ActionDrawing::sizeHint() const {
    return {u(130), u(98)};
}

void ActionDrawing::paintEvent(QPaintEvent*) {
    QPainter painter(this);
    const Look& look = lookOf(*this);
    painter.fillRect(rect(), QColor::fromRgb(look.paper));
    paintAction(painter, QRectF(rect()).adjusted(units(2), units(2), -units(2), -units(2)), m_dimension, m_kind, look);
}

} // namespace hammerline
