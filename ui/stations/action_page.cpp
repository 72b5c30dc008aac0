#include "ui/stations/action_page.h"

#include "ui/widgets/look.h"

#include <QPainter>

namespace hammerline {

ActionPage::ActionPage(ActionDesk& desk, QWidget* parent) : QWidget(parent), m_desk(desk) {
    setFocusPolicy(Qt::StrongFocus);
    connect(&m_desk, &ActionDesk::changed, this, &ActionPage::refresh);
}

void ActionPage::paintNothing(QPainter& painter) const {
    painter.setFont(face(Text::body));
    painter.setPen(ink(lookOf(*this).ink2));
    painter.drawText(rect().adjusted(u(4), u(6), -u(4), 0), Qt::AlignLeft | Qt::TextWordWrap,
                     tr("No pass yet: the first reading begins it. Dip, lost motion, blow and let-off of a note are "
                        "what its account needs."));
}

void ActionPage::showEvent(QShowEvent* event) {
    QWidget::showEvent(event);
    refresh();
}

void ActionPage::refresh() {
    if (!isVisible()) return;
    setAccessibleName(title());
    setAccessibleDescription(m_desk.ready() ? sentence() : QString());
    refreshPage();
}

} // namespace hammerline
