#include "ui/glossary_dialog.h"

#include "ui/widgets/look.h"
#include "ui/words/glossary.h"

#include <QAbstractButton>
#include <QAbstractItemView>
#include <QDialogButtonBox>
#include <QKeyEvent>
#include <QLabel>
#include <QLineEdit>
#include <QScrollBar>
#include <QTextEdit>
#include <QVBoxLayout>

namespace hammerline {

GlossaryDialog::GlossaryDialog(QWidget* parent) : QDialog(parent) {
    setWindowTitle(tr("What words mean"));
    auto* label = new QLabel(tr("&Word, or part of one:"), this);
    m_typed = new QLineEdit(this);
    label->setBuddy(m_typed);
    m_text = new QTextEdit(this);
    m_text->setReadOnly(true);
    m_text->setTextInteractionFlags(Qt::TextSelectableByMouse | Qt::TextSelectableByKeyboard);
    m_text->setTabChangesFocus(true);
    m_text->setFrameShape(QFrame::NoFrame);
    m_text->setFont(face(Text::body));
    m_text->document()->setDocumentMargin(u(4));
    m_text->setAccessibleName(windowTitle());
    auto* buttons = new QDialogButtonBox(this);
    buttons->addButton(tr("Close"), QDialogButtonBox::RejectRole);
    connect(buttons, &QDialogButtonBox::rejected, this, &QDialog::reject);
    connect(m_typed, &QLineEdit::textChanged, this, &GlossaryDialog::look);
    auto* column = new QVBoxLayout(this);
    column->addWidget(label);
    column->addWidget(m_typed);
    column->addWidget(m_text, 1);
    column->addWidget(buttons);
    m_typed->installEventFilter(this);
    m_typed->setFocus();
    look();
    resize(u(150), u(130));
}

QString GlossaryDialog::shownText() const {
    return m_text->toPlainText();
}

/// Words that begin so stand first, then those whose meaning speaks of it.
void GlossaryDialog::look() {
    const QString typed = m_typed->text().trimmed();
    std::vector<const words::Term*> named, meant;
    for (const words::Term& term : words::terms())
        if (words::termName(term).contains(typed, Qt::CaseInsensitive))
            named.push_back(&term);
        else if (words::termText(term).contains(typed, Qt::CaseInsensitive))
            meant.push_back(&term);
    named.insert(named.end(), meant.begin(), meant.end());
    m_text->setHtml(named.empty() ? tr("No word here has these letters.") : words::termsAsHtml(named));
}

/// The arrows and pages move the text while the hands stay in the field.
bool GlossaryDialog::eventFilter(QObject* object, QEvent* event) {
    if (object != m_typed || event->type() != QEvent::KeyPress) return QDialog::eventFilter(object, event);
    QScrollBar* bar = m_text->verticalScrollBar();
    switch (static_cast<QKeyEvent*>(event)->key()) {
    case Qt::Key_Down:
        bar->triggerAction(QAbstractSlider::SliderSingleStepAdd);
        return true;
    case Qt::Key_Up:
        bar->triggerAction(QAbstractSlider::SliderSingleStepSub);
        return true;
    case Qt::Key_PageDown:
        bar->triggerAction(QAbstractSlider::SliderPageStepAdd);
        return true;
    case Qt::Key_PageUp:
        bar->triggerAction(QAbstractSlider::SliderPageStepSub);
        return true;
    default:
        return false;
    }
}

QString wordsAt(const QWidget* focus) {
    if (!focus) return {};
    QStringList said{focus->accessibleName()};
    if (const auto* button = qobject_cast<const QAbstractButton*>(focus)) said << button->text().remove(u'&');
    for (const QLabel* label : focus->window()->findChildren<QLabel*>())
        if (label->buddy() == focus) said << label->text().remove(u'&');
    if (const auto* view = qobject_cast<const QAbstractItemView*>(focus); view && view->model()) {
        const int column = view->currentIndex().column();
        if (column >= 0) said << view->model()->headerData(column, Qt::Horizontal).toString();
    }
    return said.join(QStringLiteral("; "));
}

} // namespace hammerline
