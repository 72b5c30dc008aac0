#include "ui/piano/fact_row.h"

#include "ui/widgets/look.h"

#include <QComboBox>
#include <QGridLayout>
#include <QKeyEvent>
#include <QLabel>
#include <QLineEdit>
#include <QPainter>

namespace hammerline {

namespace {

constexpr double kLabelWide = 22, kEditorLeast = 24; // units

} // namespace

FactRow::FactRow(const QString& label, const QString& decides, Answer answer, QWidget* parent)
    : QWidget(parent), m_label(new QLabel(this)), m_below(new QLabel(this)), m_decides(decides) {
    if (answer == Answer::typed) {
        m_field = new QLineEdit(this);
        listenToField();
    } else {
        m_choice = new QComboBox(this);
        m_choice->setSizeAdjustPolicy(QComboBox::AdjustToMinimumContentsLengthWithIcon);
        connect(m_choice, qOverload<int>(&QComboBox::activated), this,
                [this] { Q_EMIT said(m_choice->currentData().toString()); });
    }
    build(label);
}

void FactRow::listenToField() {
    connect(m_field, &QLineEdit::textEdited, this, [this] {
        m_refused = false;
        m_field->setFont(face(Text::body));
        sayBelow();
    });
    connect(m_field, &QLineEdit::editingFinished, this, [this] {
        if (!m_field->isModified() || m_refused) return;
        m_field->setModified(false);
        Q_EMIT said(m_field->text().trimmed());
    });
}

/// The name beside its field; above it where the column is narrow beside the size of the type.
void FactRow::build(const QString& label) {
    QWidget* editor = this->editor();
    auto* grid = new QGridLayout(this);
    grid->setContentsMargins(u(3), u(1.75), u(3), u(1.75));
    grid->setHorizontalSpacing(u(2));
    grid->setVerticalSpacing(u(0.75));
    m_label->setText(label);
    m_label->setWordWrap(true);
    m_label->setMinimumHeight(u(7));
    m_label->setAlignment(Qt::AlignLeft | Qt::AlignVCenter);
    m_label->setFixedWidth(u(kLabelWide));
    m_label->setBuddy(editor);
    editor->setAccessibleName(label);
    editor->setAccessibleDescription(m_decides);
    editor->setMinimumWidth(u(kEditorLeast));
    editor->installEventFilter(this);
    m_below->setWordWrap(true);
    m_below->setFont(face(Text::label));
    m_below->setTextFormat(Qt::PlainText);
    grid->addWidget(m_label, 0, 0, Qt::AlignTop);
    grid->addWidget(editor, 0, 1);
    grid->addWidget(m_below, 1, 1);
    grid->setColumnStretch(1, 1);
    sayBelow();
}

QWidget* FactRow::editor() const {
    return m_field ? static_cast<QWidget*>(m_field) : m_choice;
}

void FactRow::show(const QString& said, const QString& customary) {
    if (!m_field) return;
    m_inForce = said;
    m_field->setPlaceholderText(customary);
    if (m_refused) return;
    const bool beingTyped = m_field->hasFocus() && m_field->isModified();
    if (beingTyped) return;
    restore();
}

void FactRow::setChoices(const Choices& choices) {
    if (!m_choice) return;
    m_choice->clear();
    for (const auto& [text, value] : choices)
        m_choice->addItem(text, value);
}

void FactRow::choose(const QVariant& value) {
    if (m_choice) m_choice->setCurrentIndex(m_choice->findData(value));
}

/// What is in force: italic where it is the customary answer, which is not this piano's own.
void FactRow::restore() {
    m_refused = false;
    m_field->setText(m_inForce);
    m_field->setModified(false);
    m_field->setCursorPosition(0); // long ones from their beginning
    m_field->setFont(m_inForce.isEmpty() ? expectedFace(Text::body) : face(Text::body));
    sayBelow();
}

void FactRow::refuse(const QString& why) {
    m_refused = true;
    m_why = why;
    sayBelow();
}

void FactRow::forget() {
    if (m_refused) restore();
}

void FactRow::setDecides(const QString& decides) {
    m_decides = decides;
    editor()->setAccessibleDescription(decides);
    sayBelow();
}

void FactRow::hold(const QString& why) {
    m_held = why;
    editor()->setEnabled(why.isEmpty());
    sayBelow();
}

QString FactRow::summary() const {
    return m_field ? m_inForce : m_choice->currentText();
}

void FactRow::sayBelow() {
    const QString text = m_refused ? m_why : !m_held.isEmpty() ? m_held : m_decides;
    m_below->setText(m_refused ? QStringLiteral("▲ %1").arg(text) : text);
    m_below->setForegroundRole(m_refused ? QPalette::BrightText : QPalette::PlaceholderText);
    m_below->setVisible(!text.isEmpty());
}

bool FactRow::eventFilter(QObject* watched, QEvent* event) {
    const bool focus = event->type() == QEvent::FocusIn || event->type() == QEvent::FocusOut;
    if (focus) update();
    if (event->type() != QEvent::KeyPress || !m_field) return QWidget::eventFilter(watched, event);
    auto* pressed = static_cast<QKeyEvent*>(event);
    const bool enter = pressed->key() == Qt::Key_Return || pressed->key() == Qt::Key_Enter;
    if (pressed->key() == Qt::Key_Escape && (m_refused || m_field->isModified())) {
        restore();
        return true;
    }
    if (enter && !m_refused) { // kept, and on to the next fact; what is refused keeps the hand
        Q_EMIT m_field->editingFinished();
        if (!m_refused) focusNextChild();
        return true;
    }
    return QWidget::eventFilter(watched, event);
}

/// The row at hand stands out.
void FactRow::paintEvent(QPaintEvent*) {
    if (!editor()->hasFocus()) return;
    QPainter painter(this);
    painter.fillRect(rect(), ink(lookOf(*this).sel));
}

} // namespace hammerline
