#include "ui/first/new_piano_form.h"

#include "core/spec/spec.h"
#include "ui/first/pick_button.h"
#include "ui/widgets/look.h"
#include "ui/words/words.h"

#include <QButtonGroup>
#include <QComboBox>
#include <QDialogButtonBox>
#include <QGridLayout>
#include <QKeyEvent>
#include <QLabel>
#include <QLineEdit>
#include <QPushButton>
#include <QVBoxLayout>

namespace hammerline {

namespace {

constexpr int kLabelWide = 24; // u, of the column of questions

QLabel* smallWords(const QString& text, QWidget* parent) {
    auto* label = new QLabel(text, parent);
    label->setWordWrap(true);
    label->setFont(face(Text::label));
    label->setForegroundRole(QPalette::PlaceholderText);
    return label;
}

} // namespace

NewPianoForm::NewPianoForm(QWidget* parent)
    : QWidget(parent)
    , m_kinds(new QButtonGroup(this))
    , m_players(new QButtonGroup(this))
    , m_keys(lineIn(tr("Number of keys"), QStringLiteral("88")))
    , m_lowest(lineIn(tr("Lowest key"), QStringLiteral("A0")))
    , m_name(lineIn(tr("Name of the piano")))
    , m_highest(new QLabel(this))
    , m_refused(new QLabel(this))
    , m_sheet(new QComboBox(this)) {
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(u(2));
    buildQuestions(column);
    m_refused->setWordWrap(true);
    m_refused->setForegroundRole(QPalette::BrightText);
    column->addWidget(m_refused);
    connect(m_kinds, &QButtonGroup::buttonClicked, this, [this] { fitKind(); });
    for (PickButton* choice : findChildren<PickButton*>())
        choice->installEventFilter(this);
    m_sheet->installEventFilter(this);
    for (QLineEdit* field : findChildren<QLineEdit*>())
        connect(field, &QLineEdit::textChanged, this, [this] { check(); });
    fitKind();
}

QLineEdit* NewPianoForm::lineIn(const QString& name, const QString& shown) {
    auto* field = new QLineEdit(shown, this);
    field->setAccessibleName(name);
    return field;
}

/// A question at the left, its answers beside it and a line on what they decide below them.
QVBoxLayout* NewPianoForm::question(QVBoxLayout* column, const QString& name, const QString& decides) {
    auto* row = new QHBoxLayout;
    row->setSpacing(u(2));
    auto* label = new QLabel(name, this);
    label->setFont(face(Text::body, true));
    label->setFixedWidth(u(kLabelWide));
    row->addWidget(label, 0, Qt::AlignTop);
    auto* answers = new QVBoxLayout;
    answers->setSpacing(u(1));
    row->addLayout(answers, 1);
    answers->addWidget(smallWords(decides, this));
    column->addLayout(row);
    return answers;
}

void NewPianoForm::buildQuestions(QVBoxLayout* column) {
    const auto choices = [this](QButtonGroup* group, const auto& rows, bool drawn) {
        auto* line = new QHBoxLayout;
        line->setSpacing(u(2));
        for (const auto& [id, text] : rows) {
            const auto shape = drawn ? std::optional(static_cast<ActionKind>(id)) : std::nullopt;
            auto* button = new PickButton(text, shape, this);
            group->addButton(button, static_cast<int>(id));
            line->addWidget(button);
        }
        line->addStretch(1);
        group->buttons().first()->setChecked(true);
        return line;
    };
    const std::array kinds{std::pair(ActionKind::upright, words::actionName(ActionKind::upright)),
                           std::pair(ActionKind::drop, words::actionName(ActionKind::drop)),
                           std::pair(ActionKind::grand, words::actionName(ActionKind::grand))};
    question(column, tr("Kind"),
             tr("Decides which parts, steps and direction words exist. Drop action: the keys pull up an action that "
                "lies below them."))
        ->insertLayout(0, choices(m_kinds, kinds, true));

    auto* compass = new QHBoxLayout;
    m_keys->setFixedWidth(u(16));
    m_lowest->setFixedWidth(u(16));
    compass->addWidget(m_keys);
    compass->addWidget(new QLabel(tr("from"), this));
    compass->addWidget(m_lowest);
    compass->addWidget(m_highest);
    compass->addStretch(1);
    question(column, tr("Keys"), tr("Decides how long the line of hammers is. Count them if unsure."))
        ->insertLayout(0, compass);

    const std::array players{std::pair(PlayerStack::none, tr("none")),
                             std::pair(PlayerStack::above, tr("above the keys")),
                             std::pair(PlayerStack::below, tr("below the keys"))};
    m_playerRow = new QWidget(this);
    auto* playerColumn = new QVBoxLayout(m_playerRow);
    playerColumn->setContentsMargins(0, 0, 0, 0);
    question(playerColumn, tr("Player"), tr("Decides whether a step speaks of a stack."))
        ->insertLayout(0, choices(m_players, players, false));
    column->addWidget(m_playerRow);

    m_sheet->setAccessibleName(tr("Spec sheet"));
    auto* sheet = new QHBoxLayout;
    sheet->addWidget(m_sheet);
    sheet->addStretch(1);
    question(column, tr("Spec sheet"),
             tr("Decides what counts as right. A maker's own figures win over it. Change it whenever you like: no "
                "reading changes."))
        ->insertLayout(0, sheet);

    auto* whose = new QGridLayout;
    whose->setSpacing(u(1.5));
    whose->addWidget(m_name, 0, 0, 1, 2);
    const std::array fields{
        std::pair(std::string_view("owner"), tr("owner")), std::pair(std::string_view("place"), tr("place")),
        std::pair(std::string_view("maker"), tr("maker")), std::pair(std::string_view("serial"), tr("serial number"))};
    for (std::size_t i = 0; i < fields.size(); ++i) {
        QLineEdit* field = lineIn(fields[i].second);
        field->setPlaceholderText(fields[i].second);
        whose->addWidget(field, 1 + static_cast<int>(i) / 2, static_cast<int>(i) % 2);
        m_whose[fields[i].first] = field;
    }
    question(
        column, tr("Whose"),
        tr("Only the name is needed, and one is put there. The rest stands on the owner's record; leave it empty."))
        ->insertLayout(0, whose);
}

ActionKind NewPianoForm::kind() const {
    return static_cast<ActionKind>(m_kinds->checkedId());
}

/// What the kind brings: its sheets, a name as long as none was typed, and no player in a grand.
void NewPianoForm::fitKind() {
    m_sheet->clear();
    for (const std::string& name : sheetsFor(kind()))
        m_sheet->addItem(words::specName(name), QString::fromStdString(name));
    m_playerRow->setVisible(kind() != ActionKind::grand);
    if (!m_name->isModified()) m_name->setText(tr("%1 1", "Upright 1").arg(words::actionName(kind())));
    check();
}

Outcome<Piano> NewPianoForm::piano() const {
    const auto lowest = parseLowest(m_lowest->text().trimmed().toStdString());
    if (!lowest) return tl::unexpected(lowest.error());
    auto piano = makePiano(kind(), m_keys->text().trimmed().toInt(), *lowest);
    if (!piano) return piano;
    piano->name = m_name->text().trimmed().toStdString();
    if (kind() != ActionKind::grand) piano->player = static_cast<PlayerStack>(m_players->checkedId());
    return piano;
}

std::string NewPianoForm::specName() const {
    return m_sheet->currentData().toString().toStdString();
}

Outcome<Identity> NewPianoForm::identity() const {
    Identity said;
    for (const auto& [key, field] : m_whose) {
        const auto value = readIdentity(key, field->text().toStdString());
        if (!value) return tl::unexpected(value.error());
        if (!value->empty()) said[std::string(key)] = *value;
    }
    return said;
}

void NewPianoForm::check() {
    const auto made = piano();
    const auto said = identity();
    m_highest->setText(made ? tr("to %1").arg(QString::fromStdString(pitchName(NoteNumber{made->notes}, *made)))
                            : QString());
    m_refused->setText(!made ? words::sentence(made.error()) : !said ? words::sentence(said.error()) : QString());
    m_refused->setVisible(!m_refused->text().isEmpty());
    Q_EMIT changed();
}

void NewPianoForm::begin() {
    m_kinds->checkedButton()->setFocus(Qt::TabFocusReason);
}

/// On some desktops Enter presses a button and opens a list; here it goes on.
bool NewPianoForm::eventFilter(QObject* watched, QEvent* event) {
    if (event->type() != QEvent::KeyPress) return false;
    auto* pressed = static_cast<QKeyEvent*>(event);
    const bool enter = pressed->key() == Qt::Key_Return || pressed->key() == Qt::Key_Enter;
    if (enter) keyPressEvent(pressed);
    return enter || QWidget::eventFilter(watched, event);
}

void NewPianoForm::keyPressEvent(QKeyEvent* event) {
    const bool enter = event->key() == Qt::Key_Return || event->key() == Qt::Key_Enter;
    if (!enter) return QWidget::keyPressEvent(event);
    const QWidget* at = focusWidget();
    const bool atLast = at == m_name || std::ranges::any_of(m_whose, [&](const auto& row) { return row.second == at; });
    if (atLast) return Q_EMIT answered();
    QWidget* const afterKeys = m_playerRow->isVisible() ? static_cast<QWidget*>(m_players->checkedButton()) : m_sheet;
    const auto isOneOf = [at](const QButtonGroup* group) {
        return std::ranges::any_of(group->buttons(), [at](const QAbstractButton* each) { return each == at; });
    };
    QWidget* then = m_name;
    if (isOneOf(m_kinds)) then = m_keys;
    if (at == m_keys || at == m_lowest) then = afterKeys;
    if (isOneOf(m_players)) then = m_sheet;
    then->setFocus(Qt::TabFocusReason);
}

NewPianoDialog::NewPianoDialog(QWidget* parent) : QDialog(parent), m_form(new NewPianoForm(this)) {
    setWindowTitle(tr("New piano"));
    auto* column = new QVBoxLayout(this);
    column->addWidget(m_form);
    auto* buttons = new QDialogButtonBox(this);
    QPushButton* enter = buttons->addButton(tr("Enter it"), QDialogButtonBox::AcceptRole);
    QPushButton* leave = buttons->addButton(tr("Leave it"), QDialogButtonBox::RejectRole);
    for (QPushButton* each : {enter, leave})
        each->setAutoDefault(false); // Enter belongs to the questions
    connect(buttons, &QDialogButtonBox::accepted, this, &QDialog::accept);
    connect(buttons, &QDialogButtonBox::rejected, this, &QDialog::reject);
    connect(m_form, &NewPianoForm::answered, this, &QDialog::accept);
    connect(m_form, &NewPianoForm::changed, enter,
            [this, enter] { enter->setEnabled(m_form->piano().has_value() && m_form->identity().has_value()); });
    column->addWidget(buttons);
    m_form->begin();
}

} // namespace hammerline
