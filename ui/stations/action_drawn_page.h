// Page 3 of the wide note: its action drawn to scale, with a slider through the stroke and the moments beside it.
#pragma once

#include "core/stroke/moments.h"
#include "ui/stations/action_page.h"
#include "ui/widgets/drawn_head.h"

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
    double sliderX(double mm) const;
    double sliderMost() const;
    QRectF momentBox(std::size_t i, std::size_t count) const;
    void paintSlider(QPainter&, const DrawnStyle&);
    void paintMoments(QPainter&, const DrawnStyle&);

    std::optional<DrawnNote> m_body, m_outline;
    QString m_refused;
    Moment m_moment = Moment::letOff;
    double m_travel = 0, m_travelOfOutline = 0;
    QTimer m_play;
    QElapsedTimer m_clock;
};

} // namespace hammerline
