#include "ui/piano/arm_field.h"

#include "ui/widgets/look.h"

#include <QPainter>

namespace hammerline {

ArmField::ArmField(const QString& letter, const QString& spoken, QWidget* parent)
    : QLineEdit(parent), m_letter(letter) {
    setAccessibleName(spoken);
    setAlignment(Qt::AlignRight);
    setTextMargins(u(4), 0, u(0.5), 0);
    setMaxLength(8);
    setFixedSize(size());
    connect(this, &QLineEdit::textChanged, this,
            [this](const QString& text) { setFont(text.isEmpty() ? expectedFace(Text::label) : face(Text::label)); });
    setFont(expectedFace(Text::label));
}

QSize ArmField::size() {
    return {u(17), u(6)};
}

void ArmField::paintEvent(QPaintEvent* event) {
    QLineEdit::paintEvent(event);
    QPainter painter(this);
    painter.setFont(face(Text::label, true));
    painter.setPen(ink(lookOf(*this).ink));
    painter.drawText(rect().adjusted(u(2), 0, 0, 0), Qt::AlignLeft | Qt::AlignVCenter, m_letter);
}

} // namespace hammerline
