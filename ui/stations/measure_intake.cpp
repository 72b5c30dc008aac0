#include "ui/stations/measure_intake.h"

#include "core/intake/long_form.h"
#include "db/storing_intake.h"
#include "ui/stations/measure_understanding.h"
#include "ui/widgets/long_work.h"
#include "ui/widgets/look.h"
#include "ui/words/words.h"

#include <QComboBox>
#include <QDialogButtonBox>
#include <QHBoxLayout>
#include <QHeaderView>
#include <QLabel>
#include <QPushButton>
#include <QSignalBlocker>
#include <QVBoxLayout>

#include <algorithm>
#include <set>

namespace hammerline {

namespace {
constexpr std::size_t kLongFile = std::size_t{1} << 20, kPiece = std::size_t{1} << 18;
constexpr std::size_t kShown = 500; // of each kind: nobody reads on, and a million rows would take minutes
namespace intake {
enum Column { line, pass, note, dimension, typed, answer, understood, count };
}
} // namespace

bool isBareBlock(const QString& text) {
    const QString first = text.section(u'\n', 0, 0);
    return std::none_of(first.begin(), first.end(), [](QChar c) { return c.isLetter(); }) || !text.contains(u'\n') ||
           first.split(u'\t').size() == 1;
}

Intake layDown(const Workbench& bench, const QString& block, Cell from, const std::vector<DimensionId>& columns) {
    Intake intake;
    const Piano& piano = *bench.piano();
    const auto start = std::find(columns.begin(), columns.end(), from.dimension) - columns.begin();
    QStringList lines = block.split(u'\n');
    while (!lines.isEmpty() && lines.last().trimmed().isEmpty())
        lines.removeLast();
    std::map<std::size_t, int> notes; // next note of each column
    for (qsizetype l = 0; l < lines.size(); ++l) {
        const QStringList fields = lines[l].remove(u'\r').split(u'\t');
        for (qsizetype f = 0; f < fields.size(); ++f) {
            const auto column = static_cast<std::size_t>(start + f);
            const std::string text = fields[f].trimmed().toStdString();
            if (column >= columns.size()) break;
            // a single column skips the notes that have no such part; several keep their rows together
            int& note = notes.try_emplace(column, from.note.value).first->second;
            if (fields.size() > 1)
                note = from.note.value + static_cast<int>(l);
            else
                while (note <= piano.notes && !fitted(columns[column], {note}, piano))
                    ++note;
            const Cell cell{{note}, columns[column]};
            const Place place{"", static_cast<int>(l) + 1, static_cast<int>(f) + 1, ""};
            ++note;
            if (text.empty()) continue;
            if (!piano.contains(cell.note) || !fitted(cell.dimension, cell.note, piano)) {
                intake.refused.push_back({place.line, place.column, std::to_string(cell.note.value), cell.dimension,
                                          text, Doubt::unknownNote, RefusalCode::notFitted});
                continue;
            }
            auto entry = bench.understand(text, cell);
            if (!entry)
                intake.refused.push_back({place.line, place.column, std::to_string(cell.note.value), cell.dimension,
                                          text, Doubt::unreadable, entry.error().code});
            else if (entry->question)
                entry->question->place = place, intake.questions.push_back(*entry->question);
            else if (entry->sound)
                intake.sound.push_back({cell, *entry->sound, place.line, {}});
        }
    }
    return intake;
}

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

/// A long file of the program's own form is read piece by piece, so that it can be stopped; all else at once.
Outcome<Intake> IntakeDialog::readTable() {
    const std::string_view bytes(m_bytes.constData(), static_cast<std::size_t>(m_bytes.size()));
    const bool wide = bytes.starts_with("\xFF\xFE") || bytes.starts_with("\xFE\xFF");
    const auto whole = [&] { return readReadings(bytes, *m_bench.piano(), m_options); };
    if (bytes.size() < kLongFile || wide || !isLongForm(bytes.substr(0, kPiece))) return whole();
    LongWork work(this, tr("Reading %1").arg(m_source), m_bytes.size());
    PianoNames names(m_bench.piano()->name, m_options.separator.value_or(separatorOfHead(bytes.substr(0, kPiece))));
    names.add(bytes);
    std::vector<Sound> sound;
    LongFormReader reader(
        *m_bench.piano(), [&](Sound&& each) { sound.push_back(std::move(each)); }, names.found(), m_options.separator);
    for (std::size_t at = 0; at < bytes.size(); at += kPiece) {
        if (!work.at(static_cast<std::int64_t>(at))) return refuse(RefusalCode::cancelled);
        const auto added = reader.add(bytes.substr(at, kPiece));
        if (!added && added.error().detail == "encoding") return whole();
        if (!added) return tl::unexpected(added.error());
    }
    auto intake = reader.finish();
    if (intake) intake->sound = std::move(sound);
    return intake;
}

void IntakeDialog::read() {
    // what the pass was asked once holds for the file as well
    speakAsThePass(*m_bench.record(), m_bench.joinsPass() ? std::optional(m_bench.passNumber()) : std::nullopt,
                   m_options);
    auto found = readTable();
    m_readable = found.has_value();
    m_refusal.clear();
    if (found)
        m_intake = std::move(*found);
    else
        m_intake = {}, m_refusal = words::sentence(found.error());
    std::set<std::string> passes;
    for (const Sound& sound : m_intake.sound)
        passes.insert(sound.pass);
    for (const SaidNotFitted& mark : m_intake.notFitted)
        passes.insert(mark.pass);
    for (const Question& question : m_intake.questions)
        passes.insert(question.pass);
    m_pass->clear();
    passes.erase(std::string{});
    if (!passes.empty()) m_pass->addItem(tr("each into the pass it names"), QString());
    for (const std::string& pass : passes)
        m_pass->addItem(tr("only pass %1, into the pass shown").arg(QString::fromStdString(pass)),
                        QString::fromStdString(pass));
    m_pass->setVisible(!passes.empty());
    buildColumns();
    m_columns->setVisible(!m_intake.columns.empty()); // the long form says itself what each is
    fill();
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

bool IntakeDialog::wanted(const std::string& pass) const {
    const QString only = m_pass->currentData().toString();
    return only.isEmpty() || pass == only.toStdString();
}

Intake IntakeDialog::taken() const {
    Intake out;
    out.longForm = m_intake.longForm;
    out.references = m_intake.references;
    const bool each = m_pass->currentData().toString().isEmpty();
    const auto add = [&](auto& list, const auto& item) {
        list.push_back(item);
        if (!each) list.back().pass.clear();
    };
    for (const Sound& sound : m_intake.sound)
        if (wanted(sound.pass)) add(out.sound, sound);
    for (const auto& [i, said] : m_answers) {
        const Question& question = m_intake.questions[i];
        if (!wanted(question.pass)) continue;
        if (const auto reading = answered(question, said))
            add(out.sound, Sound{*question.cell, *reading, question.place.line, question.pass});
    }
    for (const SaidNotFitted& mark : m_intake.notFitted)
        if (wanted(mark.pass)) add(out.notFitted, mark);
    return out;
}

std::size_t IntakeDialog::takenCount() const {
    const auto ours = [&](const auto& item) { return wanted(item.pass); };
    const auto answers = std::count_if(m_answers.begin(), m_answers.end(),
                                       [&](const auto& each) { return wanted(m_intake.questions[each.first].pass); });
    return static_cast<std::size_t>(std::count_if(m_intake.sound.begin(), m_intake.sound.end(), ours) + answers);
}

void IntakeDialog::choosePass(const QString& name) {
    m_pass->setCurrentIndex(std::max(0, m_pass->findData(name)));
    fill();
}

std::optional<Reading> IntakeDialog::answered(const Question& question, Answer said) const {
    if (!question.cell || said == Answer::leave) return {};
    if (said == Answer::asTyped) {
        if (!question.mayTake || !question.asTyped) return {};
        Reading reading = *question.asTyped;
        reading.taken = true;
        return reading;
    }
    if (question.suggestion.empty()) return {};
    const auto entry = m_bench.understand(question.suggestion, *question.cell);
    return entry ? entry->sound : std::nullopt;
}

bool IntakeDialog::answer(std::size_t question, Answer said) {
    if (question >= m_intake.questions.size()) return false;
    if (said == Answer::leave) {
        m_answers.erase(question);
    } else {
        if (!answered(m_intake.questions[question], said)) return false;
        m_answers[question] = said;
    }
    m_summary->setText(summary());
    m_take->setEnabled(takenCount() > 0 || !m_intake.notFitted.empty());
    return true;
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
            item->setToolTip(texts[static_cast<std::size_t>(c)]);
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
