#include "ui/find_dialog.h"

#include "ui/widgets/look.h"
#include "ui/words/survey_names.h"
#include "ui/words/words.h"

#include <QCoreApplication>
#include <QDialogButtonBox>
#include <QKeyEvent>
#include <QLabel>
#include <QLineEdit>
#include <QListWidget>
#include <QPushButton>
#include <QVBoxLayout>

#include <algorithm>

namespace hammerline {

namespace {

struct FindText {
    Q_DECLARE_TR_FUNCTIONS(Find)
};

bool holds(const QString& line, const QStringList& wanted) {
    return std::ranges::all_of(wanted, [&](const QString& word) { return line.contains(word, Qt::CaseInsensitive); });
}

QString lineOf(const Finding& finding, const Piano& piano) {
    QStringList parts{finding.note ? words::noteName(*finding.note, piano) : FindText::tr("whole piano"),
                      words::partOfActionName(finding.part)};
    if (!finding.fault.empty()) parts << words::faultName(finding.fault);
    if (!finding.remedy.empty()) parts << words::surveyRemedyName(finding.remedy);
    if (!finding.remark.empty()) parts << QString::fromStdString(finding.remark);
    return parts.join(QStringLiteral(" · "));
}

} // namespace

std::vector<Found> findInBook(const Workbench& bench, const QString& typed, std::size_t most) {
    std::vector<Found> found;
    const QStringList wanted = typed.split(u' ', Qt::SkipEmptyParts);
    if (wanted.isEmpty()) return found;
    for (const PianoLine& line : bench.pianos())
        if (const QString name = QString::fromStdString(line.name); found.size() < most && holds(name, wanted))
            found.push_back({FindText::tr("Piano: %1").arg(name), line.uuid, {}, {}});
    const Piano* piano = bench.piano();
    if (!piano) return found;
    if (const auto note = parseNote(typed.trimmed().toStdString(), *piano))
        found.push_back({FindText::tr("Note: %1").arg(words::noteName(*note, *piano)), {}, *note, {}});
    for (const Finding& finding : bench.record()->findings)
        if (const QString line = lineOf(finding, *piano); found.size() < most && holds(line, wanted))
            found.push_back({line, {}, finding.note, QStringLiteral("survey")});
    return found;
}

FindDialog::FindDialog(const Workbench& bench, QWidget* parent) : QDialog(parent), m_bench(bench) {
    setWindowTitle(tr("Find"));
    auto* label = new QLabel(tr("&Piano, note, part, fault or remark:"), this);
    m_typed = new QLineEdit(this);
    label->setBuddy(m_typed);
    m_list = new QListWidget(this);
    m_list->setAccessibleName(tr("What was found"));
    auto* buttons = new QDialogButtonBox(this);
    QPushButton* go = buttons->addButton(tr("Go there"), QDialogButtonBox::AcceptRole);
    buttons->addButton(tr("Close"), QDialogButtonBox::RejectRole);
    go->setDefault(true);
    auto* column = new QVBoxLayout(this);
    column->addWidget(label);
    column->addWidget(m_typed);
    column->addWidget(m_list, 1);
    column->addWidget(buttons);
    connect(m_typed, &QLineEdit::textChanged, this, &FindDialog::look);
    connect(m_list, &QListWidget::itemDoubleClicked, this, &QDialog::accept);
    connect(buttons, &QDialogButtonBox::accepted, this, &QDialog::accept);
    connect(buttons, &QDialogButtonBox::rejected, this, &QDialog::reject);
    m_typed->installEventFilter(this);
    m_typed->setFocus();
    resize(u(130), u(100));
}

void FindDialog::look() {
    m_found = findInBook(m_bench, m_typed->text());
    m_list->clear();
    for (const Found& each : m_found)
        m_list->addItem(each.line);
    if (m_found.empty() && !m_typed->text().trimmed().isEmpty()) {
        m_list->addItem(tr("Nothing in this book holds these words."));
        m_list->item(0)->setFlags(Qt::NoItemFlags);
    }
    if (!m_found.empty()) m_list->setCurrentRow(0);
}

std::optional<Found> FindDialog::chosen() const {
    const auto row = static_cast<std::size_t>(m_list->currentRow());
    return m_list->currentRow() >= 0 && row < m_found.size() ? std::optional(m_found[row]) : std::nullopt;
}

/// The arrows move in the list while the hands stay in the field.
bool FindDialog::eventFilter(QObject* object, QEvent* event) {
    if (object != m_typed || event->type() != QEvent::KeyPress) return QDialog::eventFilter(object, event);
    const auto* key = static_cast<QKeyEvent*>(event);
    const int by = key->key() == Qt::Key_Down ? 1 : key->key() == Qt::Key_Up ? -1 : 0;
    if (by == 0 || m_list->count() == 0) return false;
    m_list->setCurrentRow(std::clamp(m_list->currentRow() + by, 0, m_list->count() - 1));
    return true;
}

} // namespace hammerline
