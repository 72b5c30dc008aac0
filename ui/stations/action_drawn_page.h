// Page 3 of the wide note: its action drawn to scale, with a slider through the stroke and the moments beside it.
#pragma once

#include "core/stroke/moments.h"
#include "ui/stations/action_page.h"
#include "ui/stations/stroke_slider.h"
#include "ui/widgets/drawn_head.h"
#include "ui/widgets/kept_picture.h"
#include "ui/widgets/linkage_painter.h"

#include <QElapsedTimer>
#include <QTimer>

namespace hammerline {

class DrawnPage : public ActionPage {
    Q_OBJECT
public:
    explicit DrawnPage(ActionDesk&, QWidget* parent = nullptr);

    QString title() const override;
    QString sentence() const override;
    QList<KeyHint> pageHints() const override;
    DimensionId stripDimension() const override { return dimension::letOff; }
    int wantedHeight(int width) const override;
    bool useKey(int key, Qt::KeyboardModifiers) override;

    Moment moment() const { return m_moment; }
    double travel() const { return m_travel; }
    bool plays() const { return m_play.isActive(); }
    const std::optional<DrawnNote>& body() const { return m_body; }

protected:
    void refreshPage() override;
    void changeEvent(QEvent*) override;
    void resizeEvent(QResizeEvent*) override;
    void hideEvent(QHideEvent*) override;
    void paintEvent(QPaintEvent*) override;
    void mousePressEvent(QMouseEvent*) override;
    void mouseMoveEvent(QMouseEvent*) override;

private:
    void place();
    void toMoment(Moment);
    void toTravel(double mm);
    void stepMoment(int by);
    void play();
    void playOn();
    bool beside(int width) const;
    int drawingWide() const;
    int drawingBottom() const;
    DrawnHead head() const;
    double headHigh(int width) const;
    QRectF sliderBox() const;
    StrokeSlider slider() const;
    QRectF drawingBox() const;
    LinkageScene scene() const;
    QRectF momentBox(std::size_t i, std::size_t count) const;
    void paintUndrawn(QPainter&, const DrawnStyle&) const;
    void paintStill(QPainter&, const DrawnStyle&) const;
    void paintMoments(QPainter&, const DrawnStyle&);

    std::optional<DrawnNote> m_body, m_outline;
    KeptPicture m_still;
    QString m_refused;
    Moment m_moment = Moment::letOff;
    double m_travel = 0, m_travelOfOutline = 0;
    QTimer m_play;
    QElapsedTimer m_clock;
};

} // namespace hammerline
