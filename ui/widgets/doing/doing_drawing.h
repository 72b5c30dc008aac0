// An adjustment as a drawing: the part, the tool at its place, the hand, an arrow with what is done, and beside it the
// test by which it is right.
#pragma once

#include "ui/widgets/doing/scene.h"
#include "ui/widgets/drawn_style.h"

#include <QTransform>
#include <QWidget>

namespace hammerline::doing {

/// A text in its place, already broken into lines.
struct PlacedText {
    enum class Face : std::uint8_t { quiet, plain, strong };
    QRectF place = {};
    QStringList lines = {};
    Face face = Face::plain;
    Qt::Alignment align = Qt::AlignLeft;
    bool leads = false; // a line goes from it to `to`
    QPointF from = {}, to = {};
};

struct Laid {
    QTransform act, test; // mm to the screen
    QRectF actPlace, testPlace;
    bool showsTest = false; // the picture of the test; its words always stand
    QLineF rule;
    std::vector<PlacedText> texts;
};

/// Everything in its place. Texts overlap nothing and lie inside where the place is at least 120 by 45 units.
Laid layDrawing(const QRectF& place, const DrawnStyle&, const Drawing&);
void paintDrawing(QPainter&, const DrawnStyle&, const Drawing&, const Laid&);

} // namespace hammerline::doing

namespace hammerline {

class DoingDrawing : public QWidget {
    Q_OBJECT
public:
    explicit DoingDrawing(QWidget* parent = nullptr);
    /// False: there is no drawing of it, and it takes no room.
    bool setSubject(std::string_view drawing, std::string_view letters);
    const doing::Drawing* subject() const { return m_drawing; }
    QSize sizeHint() const override;

protected:
    void paintEvent(QPaintEvent*) override;

private:
    const doing::Drawing* m_drawing = nullptr;
};

} // namespace hammerline
