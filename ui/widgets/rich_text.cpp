#include "ui/widgets/rich_text.h"

#include <QAbstractTextDocumentLayout>
#include <QEvent>
#include <QPainter>

#include <cmath>

namespace hammerline {

RichText::RichText(QWidget* parent) : QWidget(parent) {
    m_document.setDocumentMargin(0);
    m_document.setUndoRedoEnabled(false);
    m_document.setDefaultFont(font());
}

void RichText::setMargin(int margin) {
    m_margin = margin;
    layOut();
}

void RichText::setHtml(const QString& html) {
    if (html == m_html) return;
    m_html = html;
    m_document.setHtml(html);
    setAccessibleDescription(m_document.toPlainText());
    layOut();
    update();
}

void RichText::layOut() {
    m_document.setTextWidth(std::max(1, width() - 2 * m_margin));
    const int height = static_cast<int>(std::ceil(m_document.size().height())) + 2 * m_margin;
    if (height == m_height) return;
    m_height = height;
    updateGeometry();
}

void RichText::resizeEvent(QResizeEvent* event) {
    QWidget::resizeEvent(event);
    if (event->size().width() != event->oldSize().width()) layOut();
}

void RichText::changeEvent(QEvent* event) {
    QWidget::changeEvent(event);
    if (event->type() != QEvent::FontChange) return;
    m_document.setDefaultFont(font());
    layOut();
}

void RichText::paintEvent(QPaintEvent* event) {
    QPainter painter(this);
    painter.translate(m_margin, m_margin);
    QAbstractTextDocumentLayout::PaintContext context;
    context.palette = palette();
    context.clip = QRectF(event->rect()).translated(-m_margin, -m_margin);
    m_document.documentLayout()->draw(&painter, context);
}

} // namespace hammerline
