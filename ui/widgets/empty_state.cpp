#include "ui/widgets/empty_state.h"

#include "ui/widgets/look.h"

namespace hammerline {

EmptyState::EmptyState(const QString& sentence, QWidget* parent) : QLabel(sentence, parent) {
    setAlignment(Qt::AlignTop | Qt::AlignLeft);
    setWordWrap(true);
    setFont(face(Text::listDigits));
    setContentsMargins(u(3), u(3), u(3), u(3));
    setBackgroundRole(QPalette::Base);
    setAutoFillBackground(true);
}

} // namespace hammerline
