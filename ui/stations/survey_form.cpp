#include "ui/stations/survey_form.h"

#include "ui/stations/survey_letters.h"
#include "ui/widgets/look.h"
#include "ui/words/said.h"
#include "ui/words/survey_names.h"

#include <QComboBox>
#include <QGridLayout>
#include <QHBoxLayout>
#include <QKeyEvent>
#include <QLabel>
#include <QLineEdit>
#include <QPushButton>
#include <QScrollArea>

#include <set>

namespace hammerline {

namespace {

using words::utf8;

constexpr std::array kStates = {FindingState::toDo, FindingState::watch, FindingState::mended, FindingState::sound};

/// A word above its field; Alt and its letter reach the field.
void placeField(QGridLayout* grid, const QString& word, QWidget* field, int row, int column) {
    auto* label = new QLabel(word, field->parentWidget());
    label->setFont(face(Text::label));
    label->setBuddy(field);
    field->setFont(face(Text::body));
    field->setFixedHeight(u(7));
    field->setAccessibleName(QString(word).remove(QLatin1Char('&')));
    grid->addWidget(label, row * 2, column);
    grid->addWidget(field, row * 2 + 1, column);
}

QComboBox* combo(QWidget* parent) {
    auto* box = new QComboBox(parent);
    box->setSizeAdjustPolicy(QComboBox::AdjustToMinimumContentsLengthWithIcon);
    box->setMinimumContentsLength(8);
    return box;
}

} // namespace

SurveyForm::SurveyForm(Workbench& bench, QWidget* parent) : QWidget(parent), m_bench(bench) {
    setObjectName(QStringLiteral("finding"));
    build();
    connect(m_notesField, &QLineEdit::textEdited, this, &SurveyForm::readNotes);
    connect(m_part, &QComboBox::activated, this, [this] {
        fillFaults();
        readNotes();
        Q_EMIT partChosen(m_part->currentData().toString());
    });
    connect(m_fault, &QComboBox::activated, this, [this] {
        if (const Part* p = part())
            if (const Fault* f = findFault(*p, m_fault->currentData().toString().toStdString()))
                m_remedy->setCurrentIndex(m_remedy->findData(utf8(f->usualRemedy)));
        showWords();
    });
    for (QComboBox* box : {m_state, m_remedy})
        connect(box, &QComboBox::activated, this, &SurveyForm::showWords);
    connect(m_add, &QPushButton::clicked, this, &SurveyForm::add);
    connect(m_same, &QPushButton::clicked, this, &SurveyForm::sameAskedFor);
    connect(&m_bench, &Workbench::pianoChanged, this, &SurveyForm::fillParts);
    fillParts();
}

void SurveyForm::build() {
    auto* grid = new QGridLayout(this);
    grid->setContentsMargins(u(3), u(1.5), u(3), u(2));
    grid->setHorizontalSpacing(u(3));
    grid->setVerticalSpacing(u(0.5));
    m_notesField = new QLineEdit(this);
    m_part = combo(this);
    m_fault = combo(this);
    m_state = combo(this);
    m_remedy = combo(this);
    m_remark = new QLineEdit(this);
    placeField(grid, tr("N&otes"), m_notesField, 0, 0);
    placeField(grid, tr("Par&t"), m_part, 0, 1);
    placeField(grid, tr("&What is wrong"), m_fault, 0, 2);
    placeField(grid, tr("How ba&d"), m_state, 1, 0);
    placeField(grid, tr("What &is done"), m_remedy, 1, 1);
    placeField(grid, tr("&Remark"), m_remark, 1, 2);
    m_amount = new QLineEdit(this);
    m_amountLabel = new QLabel(tr("Taken o&ff, mm"), this);
    m_amountLabel->setFont(face(Text::label));
    m_amountLabel->setBuddy(m_amount);
    m_amount->setFont(face(Text::body));
    m_amount->setFixedHeight(u(7));
    m_amount->setFixedWidth(u(16));
    m_amount->setAccessibleName(tr("Taken off, mm"));
    grid->addWidget(m_amountLabel, 2, 3);
    grid->addWidget(m_amount, 3, 3);
    m_notesFault = new QLabel(this);
    m_notesFault->setFont(face(Text::label));
    m_notesFault->setForegroundRole(QPalette::BrightText);
    m_notesFault->setWordWrap(true);
    grid->addWidget(m_notesFault, 4, 0, 1, 3);
    m_words = new QLabel(this);
    m_words->setFont(face(Text::label));
    m_words->setWordWrap(true);
    m_words->setAlignment(Qt::AlignTop | Qt::AlignLeft);
    m_same = new QPushButton(tr("Same as last  *"), this);
    m_add = new QPushButton(tr("&Add"), this);
    m_add->setDefault(true);
    auto* foot = new QHBoxLayout;
    foot->setSpacing(u(2));
    auto* words = new QScrollArea(this);
    words->setWidget(m_words);
    words->setWidgetResizable(true);
    words->setFrameShape(QFrame::NoFrame);
    words->setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    words->setFocusPolicy(Qt::NoFocus);
    words->setBackgroundRole(QPalette::Base);
    m_words->setBackgroundRole(QPalette::Base);
    foot->addWidget(words, 1);
    for (QPushButton* button : {m_same, m_add}) {
        button->setFont(face(Text::body, button == m_add));
        button->setFixedHeight(u(7));
        foot->addWidget(button, 0, Qt::AlignTop);
    }
    grid->addLayout(foot, 5, 0, 1, 3);
    grid->setRowStretch(5, 1);
    for (int column = 0; column < 3; ++column)
        grid->setColumnStretch(column, 1);
    for (const FindingState state : kStates)
        m_state->addItem(words::surveyStateName(state), static_cast<int>(state));
}

const Part* SurveyForm::part() const {
    return findPart(m_part->currentData().toString().toStdString());
}

void SurveyForm::fillParts() {
    m_part->clear();
    const Piano* piano = m_bench.piano();
    setEnabled(piano != nullptr);
    for (const Part& each : parts())
        if (piano && !notesOf(each, *piano).empty()) m_part->addItem(words::partOfActionName(each.key), utf8(each.key));
    fillFaults();
}

void SurveyForm::fillFaults() {
    m_fault->clear();
    m_remedy->clear();
    const Part* p = part();
    if (!p) return;
    for (const auto& [letter, fault] : faultLetters(*p))
        m_fault->addItem(tr("%1   %2").arg(words::faultName(fault->key)).arg(letter), utf8(fault->key));
    for (const Remedy& remedy : p->remedies)
        m_remedy->addItem(words::surveyRemedyName(remedy.key), utf8(remedy.key));
    m_remedy->setCurrentIndex(m_remedy->findData(utf8(p->faults.front().usualRemedy)));
    showWords();
}

void SurveyForm::take(const Part& p, const std::vector<NoteNumber>& notes, const Finding* standing) {
    m_notesField->setText(QString::fromStdString(writeNotes(notes)));
    if (part() != &p) {
        m_part->setCurrentIndex(m_part->findData(utf8(p.key)));
        fillFaults();
    }
    if (standing && !standing->fault.empty()) sameAs(*standing);
    readNotes();
}

void SurveyForm::sameAs(const Finding& finding) {
    const Remedy* remedy = remedyOf(finding);
    m_fault->setCurrentIndex(std::max(0, m_fault->findData(utf8(finding.fault))));
    if (remedy) m_remedy->setCurrentIndex(m_remedy->findData(utf8(remedy->key)));
    m_state->setCurrentIndex(std::max(0, m_state->findData(static_cast<int>(finding.state))));
    showWords();
}

void SurveyForm::takeFocus() {
    m_notesField->setFocus();
    m_notesField->selectAll();
}

/// Item by item: what cannot be had is named, the rest is kept.
void SurveyForm::readNotes() {
    const Piano* piano = m_bench.piano();
    const Part* p = part();
    std::set<NoteNumber> kept;
    QStringList wrong;
    for (const QString& item : m_notesField->text().split(QLatin1Char(','), Qt::SkipEmptyParts)) {
        if (!piano || !p) break;
        const auto notes = parseNotes(item.trimmed().toStdString(), *piano);
        if (!notes) {
            wrong << tr("%1: this piano has no such note (1 to %2).").arg(item.trimmed()).arg(piano->notes);
            continue;
        }
        std::vector<NoteNumber> without;
        for (const NoteNumber n : *notes) {
            if (fitted(*p, n, *piano))
                kept.insert(n);
            else
                without.push_back(n);
        }
        if (!without.empty()) wrong << tr("%1: not fitted there.").arg(QString::fromStdString(writeNotes(without)));
    }
    m_notes.assign(kept.begin(), kept.end());
    if (!wrong.isEmpty() && !kept.empty())
        wrong << tr("The other %n are kept.", nullptr, static_cast<int>(kept.size()));
    m_notesFault->setText(wrong.join(QLatin1Char(' ')));
    m_notesFault->setVisible(!wrong.isEmpty());
    m_add->setEnabled(!m_notes.empty());
    showWords();
    Q_EMIT namedChanged();
}

/// What the choice means: whether it is mended first, what goes stale, what to take care of.
void SurveyForm::showWords() {
    const Part* p = part();
    const Piano* piano = m_bench.piano();
    if (!p || !piano) return m_words->clear();
    const auto state = static_cast<FindingState>(m_state->currentData().toInt());
    const bool filed = p->key == "hammer-head" && m_remedy->currentData().toString() == QLatin1String("reshape");
    m_amountLabel->setVisible(filed);
    m_amount->setVisible(filed);
    Finding finding;
    finding.part = p->key;
    finding.fault = m_fault->currentData().toString().toStdString();
    finding.remedy = m_remedy->currentData().toString().toStdString();
    finding.state = state;
    QStringList out{tr("<b>%1</b>").arg(words::partOfActionName(p->key).toHtmlEscaped())};
    if (blocks(finding)) out << tr("Mend first.");
    out << words::staleSentence(*p, *piano);
    if (p->minutes[0] > 0) out << tr("%1 customary.").arg(words::hours(p->minutes[0]));
    if (!p->caution.empty()) out << words::caution(p->caution, *piano).toHtmlEscaped();
    out.removeAll(QString());
    m_words->setText(out.join(QLatin1Char(' ')));
    m_words->setToolTip(m_words->text());
}

std::optional<Finding> SurveyForm::pattern() {
    const Part* p = part();
    if (!p) return std::nullopt;
    Finding finding;
    finding.part = p->key;
    finding.state = static_cast<FindingState>(m_state->currentData().toInt());
    finding.remark = m_remark->text().trimmed().toStdString();
    if (finding.state == FindingState::sound) return finding;
    finding.fault = m_fault->currentData().toString().toStdString();
    finding.remedy = m_remedy->currentData().toString().toStdString();
    const QString filed = m_amount->text().trimmed();
    if (filed.isEmpty() || !m_amount->isVisibleTo(this)) return finding;
    const auto read = parseFindings("1 hammer-head deep-grooves reshape " + filed.toStdString(), *m_bench.piano());
    if (!read) {
        Q_EMIT refused(read.error());
        m_amount->setFocus();
        return std::nullopt;
    }
    finding.amount = read->front().amount;
    return finding;
}

bool SurveyForm::add() {
    readNotes();
    if (m_notes.empty() || !m_bench.piano()) {
        m_notesField->setFocus();
        return false;
    }
    auto finding = pattern();
    if (!finding) return false;
    const Part& p = *part();
    std::vector<Finding> findings;
    if (p.unit == PartUnit::piano && m_notes.size() == notesOf(p, *m_bench.piano()).size()) {
        findings.push_back(*finding);
    } else {
        for (const NoteNumber n : m_notes) {
            findings.push_back(*finding);
            findings.back().note = n;
        }
    }
    if (const auto stored = m_bench.addFindings(findings); !stored) {
        Q_EMIT refused(stored.error());
        return false;
    }
    m_remark->clear();
    Q_EMIT added(*finding);
    return true;
}

void SurveyForm::keyPressEvent(QKeyEvent* event) {
    const bool enter = event->key() == Qt::Key_Return || event->key() == Qt::Key_Enter;
    if (enter && !m_notes.empty())
        add();
    else
        QWidget::keyPressEvent(event);
}

} // namespace hammerline
