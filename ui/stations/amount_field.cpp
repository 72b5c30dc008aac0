#include "ui/stations/amount_field.h"

#include "ui/widgets/row_table.h"
#include "ui/words/said.h"
#include "ui/words/words.h"

#include <QKeyEvent>
#include <QLabel>

#include <cmath>

namespace hammerline {

namespace {

constexpr double kWidth = 22; // units; a mixed fraction in the digits of a list has room

} // namespace

AmountField::AmountField(RowTable& table, const Step& step, const Piano& piano, const QString& first)
    : QLineEdit(first, table.viewport())
    , m_table(table)
    , m_step(step)
    , m_piano(piano)
    , m_echo(new QLabel(table.viewport())) {
    setAccessibleName(tr("Really done"));
    setFont(face(Text::listDigits, true));
    setAlignment(Qt::AlignRight);
    m_echo->setObjectName(QStringLiteral("amountEcho"));
    m_echo->setFont(face(Text::label));
    m_echo->setAutoFillBackground(true);
    m_echo->setMargin(u(1));
    m_echo->setFrameShape(QFrame::Box);

    const QModelIndex row = table.currentIndex();
    const QRect cell = table.visualRect(row.siblingAtColumn(table.model()->columnCount() - 1));
    const int width = std::max(cell.width(), u(kWidth));
    setGeometry(cell.right() + 1 - width, cell.top(), width, cell.height());
    deselect();
    setCursorPosition(static_cast<int>(text().size()));
    connect(this, &QLineEdit::textEdited, this, [this] {
        m_asked = false;
        echo();
    });
    show();
    setFocus();
    echo();
    m_echo->show();
}

AmountField::~AmountField() {
    delete m_echo;
}

/// Typed as a size; its sign is that of the line's direction, a minus turns it round.
std::optional<double> AmountField::typed() const {
    const auto read = parseAmount(text().trimmed().toStdString(), unitOf(m_step.operation, m_piano));
    if (!read) return std::nullopt;
    return m_step.positive.value_or(true) ? *read : -*read;
}

bool AmountField::beyondCap() const {
    const auto amount = typed();
    const double cap = capOf(m_step.operation, m_piano);
    constexpr double kExact = 1e-6; // amounts are kept to a millionth
    return amount && cap > 0 && std::abs(*amount) > cap + kExact;
}

void AmountField::echo() {
    const bool turns = unitOf(m_step.operation, m_piano) == AmountUnit::turn;
    const auto amount = typed();
    QString said;
    if (text().trimmed().isEmpty()) {
        said = turns ? tr("turns, such as 1/8 or .25") : tr("millimetres, such as 0.4");
    } else if (!amount) {
        said = turns ? tr("\"%1\" is no amount of turns yet, such as 1/8 or .25. The line is as it was.").arg(text())
                     : tr("\"%1\" is no length yet, such as 0.4. The line is as it was.").arg(text());
    } else {
        const double size = std::abs(*amount);
        const QString many = turns ? words::turnText(size) : words::number(size, 2);
        const bool asPlanned = (*amount >= 0) == m_step.positive.value_or(true);
        const QString way = words::directionWord(m_step.direction, m_step.operation, m_piano);
        const QString unit = turns ? tr("%1 turn").arg(many) : tr("%1 mm").arg(many);
        said = asPlanned ? tr("= %1 %2").arg(unit, way) : tr("= %1, against %2").arg(unit, way);
        if (beyondCap()) {
            const double cap = capOf(m_step.operation, m_piano);
            const QString most = turns ? words::turnText(cap) : tr("%1 mm").arg(words::number(cap, 2));
            said += QLatin1Char('\n') + (m_asked ? tr("Enter again keeps it. Not more than %1 a go is the rule.")
                                                 : tr("More than %1, the most in one go."))
                                            .arg(most);
        }
    }
    m_echo->setText(said);
    m_echo->adjustSize();
    const QRect field = geometry();
    const bool below = field.bottom() + m_echo->height() < m_table.viewport()->height();
    const int left = std::max(0, field.right() + 1 - m_echo->width());
    m_echo->move(left, below ? field.bottom() + 1 : field.top() - m_echo->height());
    m_echo->raise();
    setAccessibleDescription(said);
}

void AmountField::take() {
    const auto amount = typed();
    if (!amount) return echo();
    if (beyondCap() && !m_asked) {
        m_asked = true;
        return echo();
    }
    leave();
    Q_EMIT taken(*amount);
}

void AmountField::leave() {
    if (m_leaving) return;
    m_leaving = true;
    hide();
    m_echo->hide();
    m_table.setFocus();
    deleteLater();
}

void AmountField::keyPressEvent(QKeyEvent* event) {
    switch (event->key()) {
    case Qt::Key_Return:
    case Qt::Key_Enter:
        return take();
    case Qt::Key_Escape:
        return leave();
    case Qt::Key_Up:
    case Qt::Key_Down:
        return; // an amount that is being typed belongs to its line
    default:
        QLineEdit::keyPressEvent(event);
    }
}

void AmountField::focusOutEvent(QFocusEvent* event) {
    QLineEdit::focusOutEvent(event);
    const bool toElsewhere = event->reason() != Qt::ActiveWindowFocusReason && event->reason() != Qt::PopupFocusReason;
    if (toElsewhere) leave();
}

} // namespace hammerline
