// A pencil for the drawings of the action: coordinates in mm of the action, y upward; wood, felt, metal, and ghosts for
// where a part lay before.
#pragma once

#include "ui/widgets/look.h"

#include <QPainter>
#include <QPainterPath>

namespace hammerline {

class Sketch {
public:
    /// `world`: the part of the action that is seen, in mm.
    Sketch(QPainter&, const QRectF& place, const QRectF& world, const Look&);

    /// Ghosts are dashed outlines without a fill.
    void setGhost(bool on) { m_ghost = on; }
    void wood(const QPolygonF&, const QTransform& pose = {});
    void felt(const QPainterPath&, const QTransform& pose = {});
    void felt(const QPolygonF&, const QTransform& pose = {});
    void metal(const QPolygonF& line, double width, const QTransform& pose = {});
    void disc(QPointF centre, double radius, const QTransform& pose = {});
    /// Fixed ground: hatched below.
    void ground(double left, double right, double y);
    /// The string, drawn through.
    void string(QPointF from, QPointF to);
    /// A key top of ivory or ebony.
    void keyTop(const QPolygonF&, bool sharp, const QTransform& pose = {});
    void label(QPointF at, const QString&, bool right = false);
    /// The distance: witness lines, arrow heads, its name beside it in bold.
    void distance(QPointF from, QPointF to, const QString& name, QPointF nameOffset = {8, 0}, bool right = false);
    /// A thin dashed line of reference (the line of the naturals).
    void reference(QPointF from, QPointF to);
    /// A part that is meant, drawn strongly.
    void strong(const QPainterPath&, double width);
    void push(QPointF from, QPointF to);

    /// From the left end of what was written so far to its right end.
    double textLeft() const { return m_textLeft; }
    double textRight() const { return m_textRight; }

    static QTransform turned(double degrees, QPointF about);

private:
    QPointF at(QPointF p) const { return m_map.map(p); }
    QPen outline(double width = 1.3) const;
    void wrote(double left, double width);
    QPainter& m_painter;
    const Look& m_look;
    QTransform m_map;
    double m_scale = 1;
    double m_textLeft, m_textRight;
    bool m_ghost = false;
};

/// The action in one pose. All in mm at the place that a person looks at.
struct ActionPose {
    double keyDown = 0; // at the front edge
    double gap = -1;    // crown to string; below 0: the hammer rests
    double jackTilt = 0;
    double damperOff = 0;
    double railForward = 0; // share of the blow that the rest rail takes
    double lift = -1;       // of the wippen at the capstan; below 0: as the key lifts it
};

// Upright: ui/widgets/action_upright.cpp; grand: ui/widgets/action_grand.cpp.
struct ActionPoints {
    QPointF keyFront; // top of the natural at its front edge
    QPointF crown;
    QPointF string; // point of the string that the crown comes to
    QPointF damper; // middle of the damper felt's face
    QPointF capstan, keyAtCapstan;
    QPointF coreTip;
};
ActionPoints drawUpright(Sketch&, const ActionPose&, bool ghostOfMoving = false);
ActionPoints drawGrand(Sketch&, const ActionPose&, bool ghostOfMoving = false);
QPainterPath uprightStrap(double gap, double slack);

} // namespace hammerline
