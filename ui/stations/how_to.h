// How to measure: a drawing with the distance marked, and the words for it; one dimension after another, upright or
// grand.
#pragma once

#include "ui/workbench.h"

#include <QDialog>

class QComboBox;
class QLabel;

namespace hammerline {

class ActionDrawing;

class HowToDialog : public QDialog {
    Q_OBJECT
public:
    /// `dimensions`: those that can be gone through, in order.
    HowToDialog(std::vector<DimensionId> dimensions, DimensionId first, ActionKind, QWidget* parent);

    DimensionId dimension() const { return m_dimensions[m_at]; }
    void step(int by);
    void setKind(ActionKind);
    QString text() const;

protected:
    void keyPressEvent(QKeyEvent*) override;

private:
    void refresh();

    std::vector<DimensionId> m_dimensions;
    std::size_t m_at = 0;
    ActionKind m_kind;
    ActionDrawing* m_drawing = nullptr;
    QLabel *m_title = nullptr, *m_text = nullptr;
    QComboBox *m_which = nullptr, *m_action = nullptr;
};

/// The dimensions of a piano in catalogue order; of any piano where none is chosen.
std::vector<DimensionId> dimensionsToShow(const Piano*);

} // namespace hammerline
