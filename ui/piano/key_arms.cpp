#include "ui/piano/key_arms.h"

#include "core/operation/operation.h"
#include "ui/piano/key_drawing.h"
#include "ui/stations/station_words.h"
#include "ui/widgets/look.h"
#include "ui/words/said.h"
#include "ui/words/set_up_answers.h"

#include <QKeyEvent>
#include <QLabel>
#include <QLineEdit>
#include <QVBoxLayout>

namespace hammerline {

namespace {

constexpr std::array kColours = {KeyColour::natural, KeyColour::sharp};
constexpr double kUsualLever[] = {1.8, 3.0}; // (F+T)/T of keys as they are made: common practice, no source

std::string_view attributeOf(KeyColour colour) {
    return colour == KeyColour::natural ? "arms-natural" : "arms-sharp";
}

} // namespace

KeyArmsPage::KeyArmsPage(QWidget* parent) : QWidget(parent), m_drawing(new KeyDrawing(this)), m_below(makeText(this)) {
    setBackgroundRole(QPalette::Base);
    setAutoFillBackground(true);
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(0, u(2), 0, u(1));
    column->setSpacing(u(1));
    column->addWidget(m_drawing);
    column->addWidget(m_below);
    column->addStretch(1);
    for (const KeyColour colour : kColours)
        for (std::size_t arm = 0; arm < kArms.size(); ++arm) {
            QLineEdit* each = field(colour, arm);
            each->installEventFilter(this);
            connect(each, &QLineEdit::textEdited, this, [this, colour] { preview(colour); });
            connect(each, &QLineEdit::editingFinished, this, [this, colour, each] {
                if (each->isModified() && !m_refused) keep(colour);
            });
        }
}

QLineEdit* KeyArmsPage::field(KeyColour colour, std::size_t arm) const {
    return m_drawing->field(colour, arm);
}

QString KeyArmsPage::typed(KeyColour colour) const {
    QStringList all;
    for (std::size_t arm = 0; arm < kArms.size(); ++arm)
        all += field(colour, arm)->text().trimmed().replace(u',', u'.');
    return all.join(u',');
}

/// The drawn key follows as soon as the numbers are arms.
void KeyArmsPage::preview(KeyColour colour) {
    if (!m_piano) return;
    m_refused = false;
    Piano tried = *m_piano;
    if (!hammerline::setAttribute(tried, attributeOf(colour), typed(colour).toStdString())) return;
    m_drawing->setPiano(tried);
    sayBelow(tried);
}

void KeyArmsPage::keep(KeyColour colour) {
    for (std::size_t arm = 0; arm < kArms.size(); ++arm)
        field(colour, arm)->setModified(false);
    const QString all = typed(colour);
    const bool nothing = all == QStringLiteral(",,,");
    Q_EMIT said(words::utf8(attributeOf(colour)), nothing ? QString() : all);
}

void KeyArmsPage::show(const Piano& piano) {
    m_piano = piano;
    if (!m_refused) restore();
}

void KeyArmsPage::restore() {
    m_refused = false;
    if (!m_piano) return;
    m_drawing->setPiano(*m_piano);
    const auto usual = makePiano(m_piano->action, m_piano->notes, m_piano->lowestMidi);
    for (const KeyColour colour : kColours) {
        const KeyArms& arms = m_piano->armsOf(colour);
        for (std::size_t arm = 0; arm < kArms.size(); ++arm) {
            QLineEdit* each = field(colour, arm);
            const bool beingTyped = each->hasFocus() && each->isModified();
            if (beingTyped) continue;
            if (usual) each->setPlaceholderText(words::number((usual->armsOf(colour).*kArms[arm]).mm(), 0));
            const double mm = (arms.*kArms[arm]).mm();
            each->setText(arms.measured[arm] ? QLocale().toString(mm, 'g', 6) : QString());
            each->setModified(false);
        }
    }
    sayBelow(*m_piano);
}

void KeyArmsPage::refuse(const QString& why) {
    m_refused = true;
    m_below->setText(QStringLiteral("▲ %1").arg(why.toHtmlEscaped()));
}

void KeyArmsPage::forget() {
    if (m_refused) restore();
}

void KeyArmsPage::sayBelow(const Piano& piano) {
    const auto two = [](double value) { return words::number(value, 2); };
    const KeyArms& arms = piano.armsOf(KeyColour::natural);
    const KeyLever natural = keyLever(arms), sharp = keyLever(piano.armsOf(KeyColour::sharp));
    QString text = tr("1 mm of paper under the key at the balance pin lifts a natural's front <b>%1 mm</b>, a sharp's "
                      "<b>%2</b>. What a capstan rises is felt at a natural's front <b>%3 times</b>.")
                       .arg(two(natural.heightPerBalance), two(sharp.heightPerBalance), two(natural.lostPerCapstan));
    const auto isUnusual = [](double lever) { return lever < kUsualLever[0] || lever > kUsualLever[1]; };
    if (isUnusual(natural.heightPerBalance) || isUnusual(sharp.heightPerBalance))
        text += tr(" <b>That is unusual:</b> were F and T both measured from the balance pin?");
    m_below->setText(text);
}

/// Enter keeps an arm and goes to the next; Esc brings back what is in force.
bool KeyArmsPage::eventFilter(QObject* watched, QEvent* event) {
    if (event->type() != QEvent::KeyPress) return QWidget::eventFilter(watched, event);
    auto* pressed = static_cast<QKeyEvent*>(event);
    auto* each = static_cast<QLineEdit*>(watched);
    const bool enter = pressed->key() == Qt::Key_Return || pressed->key() == Qt::Key_Enter;
    if (enter) {
        Q_EMIT each->editingFinished();
        if (!m_refused) focusNextChild();
        return true;
    }
    const bool back = pressed->key() == Qt::Key_Escape && (m_refused || each->isModified());
    if (!back) return QWidget::eventFilter(watched, event);
    each->setModified(false);
    restore();
    return true;
}

} // namespace hammerline
