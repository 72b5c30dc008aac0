#include "ui/stations/measure_intake.h"

#include "ui/stations/measure_understanding.h"
#include "ui/widgets/look.h"
#include "ui/words/words.h"

#include <QComboBox>
#include <QDialogButtonBox>
#include <QHBoxLayout>
#include <QHeaderView>
#include <QLabel>
#include <QPushButton>
#include <QSignalBlocker>
#include <QTextDocument>
#include <QVBoxLayout>

namespace hammerline {

namespace {
constexpr std::size_t kShown = 500; // of each kind: nobody reads on, and a million rows would take minutes
namespace intake {
enum Column { line, pass, note, dimension, typed, answer, understood, count };
}
} // namespace

IntakeDialog::IntakeDialog(Workbench& bench, const QByteArray& bytes, const QString& source, QWidget* parent)
    : QDialog(parent), m_bench(bench), m_bytes(bytes), m_source(source) {
    build();
    read();
}

IntakeDialog::IntakeDialog(Workbench& bench, Intake laidDown, QWidget* parent)
    : QDialog(parent), m_bench(bench), m_intake(std::move(laidDown)), m_bare(true) {
    build();
    fill();
}

void IntakeDialog::build() {
    setWindowTitle(m_source.isEmpty() ? tr("Paste readings") : tr("Import readings from %1").arg(m_source));
    setObjectName(QStringLiteral("intake"));
    resize(u(220), u(150));
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(u(4), u(4), u(4), u(4));
    column->setSpacing(u(2.5));
    m_summary = new QLabel(this);
    m_summary->setWordWrap(true);
    m_summary->setTextFormat(Qt::PlainText);
    m_summary->setFont(face(Text::listDigits));
    column->addWidget(m_summary);
    auto* bar = new QWidget(this);
    auto* choices = new QHBoxLayout(bar);
    choices->setContentsMargins(0, 0, 0, 0);
    choices->addWidget(new QLabel(tr("Decimal mark"), bar));
    m_decimal = new QComboBox(bar);
    m_decimal->addItems({tr("as found"), tr("point"), tr("comma")});
    choices->addWidget(m_decimal);
    m_pass = new QComboBox(bar);
    m_pass->setVisible(false);
    choices->addWidget(m_pass);
    choices->addStretch(1);
    bar->setVisible(!m_bare); // a column alone has no heads and no dialect to choose
    column->addWidget(bar);
    connect(m_decimal, &QComboBox::activated, this, [this](int i) {
        m_options.decimal = i == 1 ? std::optional('.') : i == 2 ? std::optional(',') : std::nullopt;
        read();
    });
    connect(m_pass, &QComboBox::activated, this, &IntakeDialog::fill);
    m_columns = new QTableWidget(0, 2, this);
    m_columns->setHorizontalHeaderLabels({tr("Column of the table"), tr("Means")});
    m_columns->setAccessibleName(tr("What the columns mean"));
    m_rows = new QTableWidget(0, intake::count, this);
    m_rows->setHorizontalHeaderLabels(
        {tr("Line"), tr("Pass"), tr("Note"), tr("Dimension"), tr("As typed"), tr("Answer"), tr("Understood")});
    m_rows->setAccessibleName(tr("Readings found"));
    for (QTableWidget* table : {m_columns, m_rows}) {
        table->verticalHeader()->hide();
        table->verticalHeader()->setDefaultSectionSize(u(7));
        table->horizontalHeader()->setStretchLastSection(true);
        table->horizontalHeader()->setDefaultAlignment(Qt::AlignLeft | Qt::AlignVCenter);
        table->setEditTriggers(QAbstractItemView::NoEditTriggers);
        table->setShowGrid(false);
        table->setSelectionBehavior(QAbstractItemView::SelectRows);
    }
    m_columns->setVisible(!m_bare);
    column->addWidget(m_columns, 1);
    column->addWidget(m_rows, 3);
    auto* buttons = new QDialogButtonBox(this);
    m_take = buttons->addButton(tr("Take them"), QDialogButtonBox::AcceptRole);
    buttons->addButton(tr("Leave it"), QDialogButtonBox::RejectRole);
    m_take->setDefault(true);
    connect(buttons, &QDialogButtonBox::accepted, this, &QDialog::accept);
    connect(buttons, &QDialogButtonBox::rejected, this, &QDialog::reject);
    column->addWidget(buttons);
}

void IntakeDialog::mapColumn(const QString& header, std::optional<DimensionId> dimension) {
    if (dimension)
        m_options.columns[header.toStdString()] = *dimension;
    else
        m_options.columns.erase(header.toStdString());
    read();
}

void IntakeDialog::buildColumns() {
    m_columns->setRowCount(static_cast<int>(m_intake.columns.size()));
    for (int r = 0; r < m_columns->rowCount(); ++r) {
        const ColumnUse& use = m_intake.columns[static_cast<std::size_t>(r)];
        const QString header = QString::fromStdString(use.header);
        m_columns->setItem(r, 0, new QTableWidgetItem(header));
        if (use.use == ColumnUse::Use::note) {
            m_columns->setItem(r, 1, new QTableWidgetItem(tr("Note")));
            continue;
        }
        auto* choice = new QComboBox(m_columns);
        choice->addItem(use.use == ColumnUse::Use::ambiguous ? tr("which one?") : tr("left out"));
        for (const Dimension& dimension : dimensions()) {
            if (!fittedAnywhere(dimension.id, *m_bench.piano())) continue;
            choice->addItem(words::name(dimension.id), dimension.id.row);
            if (use.dimension == dimension.id) choice->setCurrentIndex(choice->count() - 1);
        }
        connect(
            choice, &QComboBox::activated, this,
            [this, header, choice](int i) {
                const QVariant row = choice->itemData(i);
                mapColumn(header, row.isValid() ? std::optional(DimensionId{static_cast<std::uint8_t>(row.toUInt())})
                                                : std::nullopt);
            },
            Qt::QueuedConnection); // the table is made anew: not while its own box is speaking
        m_columns->setCellWidget(r, 1, choice);
    }
    m_columns->resizeColumnToContents(0);
}

/// One choice a doubtful text, beside it.
void IntakeDialog::offerAnswers(int row, std::size_t i) {
    const Question& question = m_intake.questions[i];
    auto* choice = new QComboBox(m_rows);
    choice->setAccessibleName(tr("What to do with %1").arg(QString::fromStdString(question.text)));
    choice->addItem(tr("leave it out"), static_cast<int>(Answer::leave));
    if (answered(question, Answer::suggested))
        choice->addItem(tr("take %1").arg(QString::fromStdString(question.suggestion)),
                        static_cast<int>(Answer::suggested));
    if (answered(question, Answer::asTyped))
        choice->addItem(tr("take %1 as typed").arg(QString::fromStdString(question.text)),
                        static_cast<int>(Answer::asTyped));
    choice->setEnabled(choice->count() > 1);
    connect(choice, &QComboBox::activated, this,
            [this, i, choice](int at) { answer(i, static_cast<Answer>(choice->itemData(at).toInt())); });
    m_rows->setCellWidget(row, intake::answer, choice);
}

QString IntakeDialog::summary() const {
    if (!m_readable) return m_refusal;
    QStringList said{tr("%n reading(s) to take.", nullptr, static_cast<int>(takenCount()))};
    if (m_intake.questions.size() > m_answers.size())
        said << tr("%n doubtful one(s) stay out unless answered below.", nullptr,
                   static_cast<int>(m_intake.questions.size() - m_answers.size()));
    if (!m_intake.refused.empty()) said << tr("%n cannot be read.", nullptr, static_cast<int>(m_intake.refused.size()));
    if (!m_bare) {
        const Dialect& dialect = m_intake.dialect;
        const QString separator = dialect.separator == '\t'  ? tr("tabs")
                                  : dialect.separator == ';' ? tr("semicolons")
                                  : dialect.separator == ',' ? tr("commas")
                                                             : QString(QLatin1Char(dialect.separator));
        said << tr("Read as %1, columns parted by %2, with a decimal %3.")
                    .arg(QString::fromStdString(dialect.encoding), separator,
                         dialect.decimal == ',' ? tr("comma") : tr("point"));
    }
    return said.join(u' ');
}

void IntakeDialog::fill() {
    m_answers.clear(); // read afresh: what was answered was another text
    m_summary->setText(summary());
    m_take->setEnabled(takenCount() > 0 || !m_intake.notFitted.empty());
    m_rows->setRowCount(0);
    m_rows->setColumnHidden(intake::pass, !m_pass->isVisibleTo(this));
    const auto add = [this](int line, const std::string& pass, const QString& note, const QString& dimension,
                            const QString& typed, const QString& remark) {
        const int r = m_rows->rowCount();
        m_rows->insertRow(r);
        const std::array<QString, intake::count> texts{line > 0 ? QString::number(line) : QString(),
                                                       QString::fromStdString(pass),
                                                       note,
                                                       dimension,
                                                       typed,
                                                       QString(),
                                                       remark};
        for (int c = 0; c < intake::count; ++c) {
            auto* item = new QTableWidgetItem(texts[static_cast<std::size_t>(c)]);
            item->setToolTip(Qt::convertFromPlainText(item->text(), Qt::WhiteSpaceNormal));
            m_rows->setItem(r, c, item);
        }
    };
    const Piano& piano = *m_bench.piano();
    std::size_t shown = 0;
    const auto room = [&] {
        if (++shown == kShown + 1) add(0, {}, {}, {}, {}, tr("and more: %1 are shown").arg(kShown));
        return shown <= kShown;
    };
    // what needs a person stands first
    for (std::size_t i = 0; i < m_intake.questions.size(); ++i) {
        const Question& question = m_intake.questions[i];
        if (!wanted(question.pass) || !room()) continue;
        add(question.place.line, question.pass, question.cell ? words::noteName(question.cell->note, piano) : QString(),
            question.cell ? words::name(question.cell->dimension) : QString(), QString::fromStdString(question.text),
            words::sentence(question, piano));
        offerAnswers(m_rows->rowCount() - 1, i);
    }
    shown = 0;
    for (const RefusedRow& refused : m_intake.refused)
        if (room())
            add(refused.line, {}, QString::fromStdString(refused.note),
                refused.dimension ? words::name(*refused.dimension) : QString(), QString::fromStdString(refused.text),
                words::sentence(refused));
    shown = 0;
    for (const Sound& sound : m_intake.sound)
        if (wanted(sound.pass) && room())
            add(sound.line, sound.pass, words::noteName(sound.cell.note, piano), words::name(sound.cell.dimension),
                QString::fromStdString(sound.reading.typed), inBothUnits(sound.reading, sound.cell.dimension));
    for (int c = 0; c < intake::understood; ++c)
        m_rows->resizeColumnToContents(c);
}

} // namespace hammerline
