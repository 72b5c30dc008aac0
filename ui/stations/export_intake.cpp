#include "ui/stations/export_intake.h"

#include "db/digest.h"
#include "db/incoming.h"
#include "ui/widgets/long_work.h"
#include "ui/widgets/look.h"
#include "ui/words/words.h"

#include <QCheckBox>
#include <QComboBox>
#include <QDialogButtonBox>
#include <QHeaderView>
#include <QLabel>
#include <QPushButton>
#include <QStandardItemModel>
#include <QTableWidget>
#include <QTextDocument>
#include <QVBoxLayout>

#include <map>
#include <utility>

namespace hammerline {

namespace {

std::size_t readingsOf(const PianoRecord& record) {
    std::size_t count = 0;
    for (const Pass& pass : record.passes)
        count += pass.readingCount();
    return count;
}

QTableWidget* listOf(const QStringList& heads, const QString& name, QWidget* parent) {
    auto* table = new QTableWidget(0, static_cast<int>(heads.size()), parent);
    table->setHorizontalHeaderLabels(heads);
    table->setAccessibleName(name);
    table->verticalHeader()->hide();
    table->verticalHeader()->setDefaultSectionSize(u(7));
    table->horizontalHeader()->setStretchLastSection(true);
    table->horizontalHeader()->setDefaultAlignment(Qt::AlignLeft | Qt::AlignVCenter);
    table->setEditTriggers(QAbstractItemView::NoEditTriggers);
    table->setShowGrid(false);
    table->setSelectionBehavior(QAbstractItemView::SelectRows);
    return table;
}

void addRow(QTableWidget* table, const QStringList& texts) {
    const int r = table->rowCount();
    table->insertRow(r);
    for (int c = 0; c < texts.size(); ++c) {
        auto* item = new QTableWidgetItem(texts[c]);
        item->setToolTip(Qt::convertFromPlainText(texts[c], Qt::WhiteSpaceNormal));
        table->setItem(r, c, item);
    }
}

} // namespace

ExportIntakeDialog::ExportIntakeDialog(Workbench& bench, const QByteArray& bytes, const QString& source,
                                       QWidget* parent)
    : QDialog(parent), m_bench(bench), m_bytes(bytes), m_source(source) {
    build();
    read();
}

void ExportIntakeDialog::build() {
    setWindowTitle(tr("Import pianos from %1").arg(m_source));
    setObjectName(QStringLiteral("export-intake"));
    resize(u(220), u(150));
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(u(4), u(4), u(4), u(4));
    column->setSpacing(u(2.5));
    m_summary = new QLabel(this);
    m_summary->setWordWrap(true);
    m_summary->setTextFormat(Qt::PlainText);
    m_summary->setFont(face(Text::listDigits));
    column->addWidget(m_summary);
    m_pianos = listOf({tr("Piano of the file"), tr("Goes to"), tr("Passes"), tr("Readings"), tr("Findings")},
                      tr("Pianos of the file"), this);
    column->addWidget(m_pianos, 2);
    m_doubtful = new QCheckBox(tr("Take the doubtful readings as they stand"), this);
    connect(m_doubtful, &QCheckBox::toggled, this, &ExportIntakeDialog::read);
    column->addWidget(m_doubtful);
    m_asked = listOf({tr("Piano"), tr("Note"), tr("Dimension"), tr("As typed"), tr("Understood")},
                     tr("Doubtful readings"), this);
    column->addWidget(m_asked, 2);
    auto* buttons = new QDialogButtonBox(this);
    m_take = buttons->addButton(tr("Take them"), QDialogButtonBox::AcceptRole);
    buttons->addButton(tr("Leave it"), QDialogButtonBox::RejectRole);
    m_take->setDefault(true);
    connect(buttons, &QDialogButtonBox::accepted, this, &QDialog::accept);
    connect(buttons, &QDialogButtonBox::rejected, this, &QDialog::reject);
    column->addWidget(buttons);
}

void ExportIntakeDialog::read() {
    std::vector<std::string> chosen;
    for (const auto& each : m_incoming)
        chosen.push_back(each.into);
    LongWork work(this, tr("Reading %1").arg(m_source));
    auto found = readExport(
        {m_bytes.constData(), static_cast<std::size_t>(m_bytes.size())}, m_doubtful->isChecked(),
        [&work](double share) { return work.share(share); }, digestText);
    m_refusal = found ? std::nullopt : std::optional(found.error());
    m_incoming.clear();
    if (!m_doubtful->isChecked()) m_questions.clear();
    if (found) {
        m_incoming = incomingTo(m_bench.pianos(), std::move(found->pianos));
        if (!m_doubtful->isChecked()) m_questions = std::move(found->questions);
    } else {
        m_refusal->place.source = m_source.toStdString();
    }
    for (std::size_t i = 0; i < chosen.size() && i < m_incoming.size(); ++i)
        m_incoming[i].into = chosen[i];
    fill();
}

void ExportIntakeDialog::put(std::size_t piano, const std::string& into) {
    if (piano >= m_incoming.size()) return;
    m_incoming[piano].into = into;
    fill();
}

void ExportIntakeDialog::takeDoubtful(bool taken) {
    m_doubtful->setChecked(taken);
}

QString ExportIntakeDialog::summary() const {
    if (m_refusal) return words::sentence(*m_refusal);
    std::size_t readings = 0;
    for (const auto& each : m_incoming)
        readings += readingsOf(each.record);
    QStringList said{tr("%n piano(s) to take,", nullptr, static_cast<int>(m_incoming.size())) + QLatin1Char(' ') +
                     tr("with %n reading(s), as one step that can be undone.", nullptr, static_cast<int>(readings))};
    if (!m_questions.empty() && !m_doubtful->isChecked())
        said << tr("%n doubtful one(s) stay out.", nullptr, static_cast<int>(m_questions.size()));
    return said.join(u' ');
}

void ExportIntakeDialog::fill() {
    m_summary->setText(summary());
    m_take->setEnabled(!m_incoming.empty());
    m_doubtful->setVisible(!m_questions.empty());
    m_asked->setVisible(!m_questions.empty());
    fillPianos();
    fillQuestions();
}

void ExportIntakeDialog::fillPianos() {
    m_pianos->setRowCount(0);
    auto* places = new QStandardItemModel(m_pianos); // one list for all: both sides may have thousands
    delete std::exchange(m_places, places);
    const auto offer = [places](const QString& text, const QString& uuid) {
        auto* item = new QStandardItem(text);
        item->setData(uuid, Qt::UserRole);
        places->appendRow(item);
    };
    std::map<std::string, int> rows;
    offer(tr("a new piano"), {});
    for (const PianoLine& line : m_bench.pianos()) {
        rows[line.uuid] = places->rowCount();
        offer(tr("into %1").arg(QString::fromStdString(line.name)), QString::fromStdString(line.uuid));
    }
    for (std::size_t i = 0; i < m_incoming.size(); ++i) {
        const PianoRecord& record = m_incoming[i].record;
        addRow(m_pianos, {QString::fromStdString(record.piano.name), QString(), QString::number(record.passes.size()),
                          QString::number(readingsOf(record)), QString::number(record.findings.size())});
        auto* choice = new QComboBox(m_pianos);
        choice->setAccessibleName(tr("Where %1 goes").arg(QString::fromStdString(record.piano.name)));
        choice->setModel(places);
        const auto into = rows.find(m_incoming[i].into);
        choice->setCurrentIndex(into == rows.end() ? 0 : into->second);
        connect(choice, &QComboBox::activated, this,
                [this, i, choice](int at) { m_incoming[i].into = choice->itemData(at).toString().toStdString(); });
        m_pianos->setCellWidget(static_cast<int>(i), 1, choice);
    }
    m_pianos->resizeColumnToContents(0);
}

void ExportIntakeDialog::fillQuestions() {
    m_asked->setRowCount(0);
    for (const ExportQuestion& each : m_questions)
        for (const auto& incoming : m_incoming) {
            const Piano& piano = incoming.record.piano;
            if (piano.name != each.piano || !each.question.cell) continue;
            addRow(m_asked, {QString::fromStdString(each.piano), words::noteName(each.question.cell->note, piano),
                             words::name(each.question.cell->dimension), QString::fromStdString(each.question.text),
                             words::sentence(each.question, piano)});
            break;
        }
    for (int c = 0; c < 4; ++c)
        m_asked->resizeColumnToContents(c);
}

} // namespace hammerline
