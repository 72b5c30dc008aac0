#include "ui/stations/survey_symptoms.h"

#include "core/sheet/work_order.h"
#include "ui/widgets/look.h"
#include "ui/words/survey_names.h"

#include <QComboBox>
#include <QHBoxLayout>
#include <QKeyEvent>
#include <QLabel>
#include <QLineEdit>
#include <QPushButton>
#include <QTextBrowser>
#include <QVBoxLayout>

namespace hammerline {

SurveySymptoms::SurveySymptoms(Workbench& bench, QWidget* parent) : QWidget(parent), m_bench(bench) {
    setObjectName(QStringLiteral("symptoms"));
    m_notes = new QLineEdit(this);
    m_notes->setPlaceholderText(tr("notes: 1-44"));
    m_notes->setAccessibleName(tr("Notes of the symptom"));
    m_symptom = new QComboBox(this);
    m_symptom->setAccessibleName(tr("Symptom"));
    offer();
    auto* button = new QPushButton(tr("Note it"), this);
    m_answers = new QTextBrowser(this);
    m_answers->setAccessibleName(tr("Where the symptoms come from"));
    m_answers->setFrameShape(QFrame::NoFrame);
    m_answers->setFont(face(Text::label));
    auto* fields = new QHBoxLayout;
    fields->setSpacing(u(2));
    for (QWidget* each :
         {static_cast<QWidget*>(m_notes), static_cast<QWidget*>(m_symptom), static_cast<QWidget*>(button)}) {
        each->setFont(face(Text::body));
        each->setFixedHeight(u(7));
        fields->addWidget(each, each == m_symptom ? 1 : 0);
    }
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(u(3), u(1.5), u(3), u(1));
    column->addLayout(fields);
    column->addWidget(m_answers, 1);
    connect(button, &QPushButton::clicked, this, &SurveySymptoms::add);
    const auto changed = [this] {
        m_old = true;
        if (isVisible()) refresh();
    };
    connect(&m_bench, &Workbench::recordChanged, this, changed);
    connect(&m_bench, &Workbench::pianoChanged, this, changed);
    connect(&m_bench, &Workbench::pianoChanged, this, &SurveySymptoms::offer);
    connect(&m_bench, &Workbench::recordChanged, this, &SurveySymptoms::offer);
}

/// What can be heard on this piano; a choice that stays possible stays chosen.
void SurveySymptoms::offer() {
    const auto offered =
        m_bench.piano() ? symptomsOf(*m_bench.piano()) : std::vector(symptomKeys().begin(), symptomKeys().end());
    if (offered == m_offered) return;
    const QVariant chosen = m_symptom->currentData();
    m_offered = offered;
    m_symptom->clear();
    for (const auto each : m_offered)
        m_symptom->addItem(words::symptomName(each), QString::fromUtf8(each.data(), qsizetype(each.size())));
    m_symptom->setCurrentIndex(std::max(0, m_symptom->findData(chosen)));
}

void SurveySymptoms::takeFocus() {
    m_notes->setFocus();
    m_notes->selectAll();
}

bool SurveySymptoms::add() {
    if (!m_bench.piano()) return false;
    const QString notes = m_notes->text().trimmed();
    const QString typed =
        (notes.isEmpty() ? QStringLiteral("all") : notes) + QLatin1Char(' ') + m_symptom->currentData().toString();
    const auto symptom = parseSymptom(typed.toStdString(), *m_bench.piano());
    if (!symptom) {
        m_notes->setFocus();
        Q_EMIT refused(symptom.error());
        return false;
    }
    if (const auto added = m_bench.addSymptom(*symptom); !added) {
        Q_EMIT refused(added.error());
        return false;
    }
    m_notes->clear();
    return true;
}

QString SurveySymptoms::answers() const {
    return m_answers->toPlainText();
}

void SurveySymptoms::refresh() {
    m_old = false;
    QString html;
    if (m_bench.record())
        for (const Advice& advice : adviceOf(*m_bench.record())) {
            const QString text = words::adviceSentence(advice, *m_bench.piano()).toHtmlEscaped();
            const auto stop = text.indexOf(QLatin1Char('.'));
            html += QStringLiteral("<p><b>%1</b>%2</p>").arg(text.left(stop + 1), text.mid(stop + 1));
        }
    if (html.isEmpty())
        html =
            tr("Nothing noted. What is heard goes to its notes; readings and findings then say where it may come from.")
                .toHtmlEscaped();
    m_answers->setHtml(html);
}

void SurveySymptoms::showEvent(QShowEvent* event) {
    QWidget::showEvent(event);
    if (m_old) refresh();
}

void SurveySymptoms::keyPressEvent(QKeyEvent* event) {
    if (event->key() == Qt::Key_Return || event->key() == Qt::Key_Enter)
        add();
    else
        QWidget::keyPressEvent(event);
}

} // namespace hammerline
