// The keys that work now, as key caps with a word each, and a remark at the right end.
#pragma once

#include "ui/stations/station.h"
#include "ui/widgets/look.h"

#include <QPixmap>

namespace hammerline {

class HintBar : public QWidget {
    Q_OBJECT
public:
    explicit HintBar(QWidget* parent = nullptr);
    void setHints(QList<KeyHint>, const QString& remark);
    QSize sizeHint() const override;
    QSize minimumSizeHint() const override { return {0, sizeHint().height()}; }

protected:
    void paintEvent(QPaintEvent*) override;
    void resizeEvent(QResizeEvent*) override;
    void changeEvent(QEvent*) override;

private:
    struct Line {
        QList<KeyHint> hints;
        QString remark;
        QPixmap picture; // null: not painted yet
    };
    void forgetPictures();
    void paintLine(QPainter&) const;
    /// Typing goes to and fro between the keys of the grid and those of its field, twice a reading: the one shown, and
    /// the one before it.
    Line m_now, m_before;
};

/// Draws one key cap at `left`, centred on `middle`; gives its right edge. Used by buttons too.
double paintKeyCap(QPainter&, double left, double middle, const QString& key, const Look&);

} // namespace hammerline
