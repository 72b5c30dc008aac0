// The keys that work now, as key caps with a word each, and a remark at the right end.
#pragma once

#include "ui/stations/station.h"
#include "ui/widgets/look.h"

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

private:
    QList<KeyHint> m_hints;
    QString m_remark;
};

/// Draws one key cap at `left`, centred on `middle`; gives its right edge. Used by buttons too.
double paintKeyCap(QPainter&, double left, double middle, const QString& key, const Look&);

} // namespace hammerline
