// One of a row of choices, all seen at once: a word, and above it a small drawing where the thing has a shape.
#pragma once

#include "core/piano/piano.h"

#include <QAbstractButton>

#include <optional>

namespace hammerline {

class PickButton : public QAbstractButton {
    Q_OBJECT
public:
    PickButton(const QString& text, std::optional<ActionKind> drawn, QWidget* parent);
    QSize sizeHint() const override;

protected:
    void paintEvent(QPaintEvent*) override;

private:
    std::optional<ActionKind> m_drawn;
};

} // namespace hammerline
