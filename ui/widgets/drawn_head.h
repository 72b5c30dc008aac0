// The head of a drawing: what it is, bold, and beside it a remark; below it, wrapped, where the type is large.
#pragma once

#include "ui/widgets/drawn_style.h"

namespace hammerline {

struct DrawnHead {
    QString title, remark;

    /// Of the whole head in a width of `room`, with the gap to what follows.
    double height(const DrawnStyle&, double room) const;
    void paint(QPainter&, const DrawnStyle&, double left, double room) const;
};

/// Lines of text under each other, as many as they need; returns where the next would begin.
double drawnParagraph(QPainter&, const DrawnStyle&, const QFont&, const QRectF&, const QString&);
double paragraphHigh(const QFont&, double room, const QString&);

} // namespace hammerline
