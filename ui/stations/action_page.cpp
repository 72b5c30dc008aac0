#include "ui/stations/action_page.h"

#include "ui/widgets/look.h"

#include <QEvent>
#include <QPainter>
#include <QScrollArea>

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

void ActionPage::resizeEvent(QResizeEvent* event) {
    QWidget::resizeEvent(event);
    fit();
}

void ActionPage::changeEvent(QEvent* event) {
    QWidget::changeEvent(event);
    if (event->type() == QEvent::FontChange) fit();
}

void ActionPage::fit() {
    setMinimumHeight(m_desk.ready() ? wantedHeight(width()) : 0);
}

namespace {

QScrollArea* areaOf(const QWidget* page) {
    QWidget* viewport = page->parentWidget();
    return viewport ? qobject_cast<QScrollArea*>(viewport->parentWidget()) : nullptr;
}

} // namespace

QRect ActionPage::wholeWidth() const {
    const QScrollArea* area = areaOf(this);
    return {0, 0, area ? area->width() : width(), height()};
}

void ActionPage::reveal(const QRect& part) {
    if (QScrollArea* area = areaOf(this)) area->ensureVisible(part.center().x(), part.center().y(), 0, part.height());
}

void ActionPage::refresh() {
    if (!isVisible()) return;
    fit();
    setAccessibleName(title());
    setAccessibleDescription(m_desk.ready() ? sentence() : QString());
    refreshPage();
}

} // namespace hammerline
