#include "ui/piano/spec_panel.h"

#include "ui/widgets/dialogs.h"
#include "ui/words/words.h"

#include <QKeyEvent>
#include <QLabel>
#include <QVBoxLayout>

namespace hammerline {

namespace {

constexpr int kOverrideKeys = 100000; // keys of the rows of single notes start here

/// The notes of a row as the sheet groups them; the last letters are those of bench-practice 2.1.
QString placeText(const ZoneRow& row, const Piano& piano) {
    QStringList parts;
    if (row.colour) parts << (*row.colour == KeyColour::natural ? SpecPanel::tr("naturals") : SpecPanel::tr("sharps"));
    if (row.place.empty()) return parts.join(QStringLiteral(", "));
    int first = 0, last = 0;
    for (int n = 1; n <= piano.notes; ++n)
        if (placeNames(row.place, {n}, piano)) {
            if (first == 0) first = n;
            last = n;
        }
    if (first == 0) return {}; // no note of this piano
    parts << SpecPanel::tr("notes %1–%2").arg(first).arg(last);
    return parts.join(QStringLiteral(", "));
}

bool namesANote(const ZoneRow& row, const Piano& piano) {
    for (int n = 1; n <= piano.notes; ++n)
        if (placeNames(row.place, {n}, piano) && fitted(row.dimension, {n}, piano) &&
            (!row.colour || *row.colour == colourOf({n}, piano)))
            return true;
    return false;
}

QString limitShown(DimensionId dimension, const std::optional<std::int64_t>& first,
                   const std::optional<std::int64_t>& last) {
    if (!first) return QStringLiteral("·");
    const QString text = words::shown(dimension, *first);
    return last && *last != *first ? text + QStringLiteral(" … ") + words::shown(dimension, *last) : text;
}

ListRow zoneListRow(const QString& name, const QString& where, DimensionId dimension, const Zone& first,
                    const Zone& last, std::optional<std::int64_t> step, Unit unit) {
    RowCell place(where);
    place.soft = true;
    ListRow row;
    row.cells = {RowCell(words::shortName(dimension)),
                 place,
                 RowCell(limitShown(dimension, first.low, last.low)),
                 RowCell(limitShown(dimension, first.nominal, last.nominal), true),
                 RowCell(limitShown(dimension, first.high, last.high)),
                 RowCell(step ? words::shown(dimension, *step).remove(QLatin1Char('+')) : QStringLiteral("·"))};
    row.cells.back().soft = true;
    row.sentence =
        SpecPanel::tr("%1 %2: low %3, aim %4, high %5; a bare number is meant in %6")
            .arg(name, where, row.cells[2].text, row.cells[3].text, row.cells[4].text, words::unitName(unit));
    return row;
}

} // namespace

SpecPanel::SpecPanel(Workbench& bench, QWidget* parent)
    : Panel({}, new QWidget, parent)
    , m_bench(bench)
    , m_table(new RowTable(tr("Zones"),
                           {{tr("dimension"), 0},
                            {tr("of"), 24},
                            {tr("low"), 16, Qt::AlignRight},
                            {tr("aim"), 16, Qt::AlignRight},
                            {tr("high"), 16, Qt::AlignRight},
                            {tr("step"), 11, Qt::AlignRight}},
                           5.75, this))
    , m_source(makeText(this)) {
    auto* column = new QVBoxLayout;
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(0);
    column->addWidget(m_table, 1);
    column->addWidget(m_source);
    layout()->itemAt(0)->widget()->setLayout(column);
    connect(m_table, &RowTable::chosen, this, &SpecPanel::change);
    connect(m_table, &RowTable::moved, this, &SpecPanel::showSource);
    m_table->setKeys([this](QKeyEvent* event) {
        if (event->key() == Qt::Key_Delete)
            takeBack();
        else if (event->key() == Qt::Key_U && event->modifiers() == Qt::NoModifier)
            nextUnit();
        else
            return false;
        return true;
    });
    setFocusProxy(m_table);
    refresh();
}

void SpecPanel::refresh() {
    std::vector<ListRow> rows;
    const PianoRecord* record = m_bench.record();
    if (record) {
        const SpecSheet& sheet = m_bench.sheet();
        for (std::size_t i = 0; i < sheet.zones.size(); ++i) {
            const ZoneRow& zone = sheet.zones[i];
            if (!namesANote(zone, record->piano)) continue;
            const auto step = sheet.step.find(zone.dimension);
            rows.push_back(zoneListRow(
                words::name(zone.dimension), placeText(zone, record->piano), zone.dimension, zone.first, zone.last,
                step == sheet.step.end() ? std::nullopt : std::optional(step->second), m_bench.unitOf(zone.dimension)));
            rows.back().key = static_cast<int>(i);
        }
        if (!record->overrides.empty()) {
            ListRow heading;
            heading.heading = tr("Notes with a zone of their own");
            heading.headingRight = tr("Del takes it back");
            heading.height = 5.75;
            rows.push_back(heading);
        }
        for (std::size_t i = 0; i < record->overrides.size(); ++i) {
            const Override& own = record->overrides[i];
            rows.push_back(zoneListRow(words::name(own.cell.dimension),
                                       tr("note %1").arg(words::noteName(own.cell.note, record->piano)),
                                       own.cell.dimension, own.zone, own.zone, {}, m_bench.unitOf(own.cell.dimension)));
            rows.back().key = kOverrideKeys + static_cast<int>(i);
        }
        setTitle(tr("Zones: %1").arg(words::specName(sheet.name)),
                 tr("Enter: change  ·  U: unit typed  ·  step: to a neighbour"));
    }
    m_table->setRows(std::move(rows));
    showSource();
}

std::optional<DimensionId> SpecPanel::currentDimension() const {
    const PianoRecord* record = m_bench.record();
    const int key = m_table->currentKey();
    if (!record || key < 0) return {};
    if (key < kOverrideKeys) return m_bench.sheet().zones.at(static_cast<std::size_t>(key)).dimension;
    return record->overrides.at(static_cast<std::size_t>(key - kOverrideKeys)).cell.dimension;
}

/// The unit that a bare number has, when it is typed for this dimension.
void SpecPanel::nextUnit() {
    const auto dimension = currentDimension();
    if (!dimension) return;
    const std::vector<Unit> units = unitsOf(row(*dimension).kind);
    const auto now = std::ranges::find(units, m_bench.unitOf(*dimension)) - units.begin();
    const Unit next = units[static_cast<std::size_t>(now + 1) % units.size()];
    if (const auto set = m_bench.setUnit(*dimension, next); !set) Q_EMIT refused(set.error());
}

void SpecPanel::showSource() {
    const PianoRecord* record = m_bench.record();
    if (!record) return m_source->setText({});
    const int key = m_table->currentKey();
    const SpecSheet& sheet = m_bench.sheet();
    QString source = QString::fromStdString(sheet.source);
    if (key >= kOverrideKeys) {
        const auto at = static_cast<std::size_t>(key - kOverrideKeys);
        if (at < record->overrides.size()) source = QString::fromStdString(record->overrides[at].reason);
    } else if (key >= 0 && static_cast<std::size_t>(key) < sheet.zones.size()) {
        const std::string& own = sheet.zones[static_cast<std::size_t>(key)].source;
        if (!own.empty()) source = QString::fromStdString(own);
    }
    const auto dimension = currentDimension();
    const QString typed =
        dimension ? tr("<b>Typed in %1.</b> ").arg(words::unitName(m_bench.unitOf(*dimension))) : QString();
    m_source->setText(
        typed +
        tr("<b>Source of this row:</b> %1. %2").arg(source.toHtmlEscaped(), words::caution("specs").toHtmlEscaped()));
}

void SpecPanel::change(int key) {
    const PianoRecord* record = m_bench.record();
    if (!record || key < 0) return;
    const SpecSheet& sheet = m_bench.sheet();
    ZoneRow row;
    QString notes, reason;
    auto rowOfSheet = static_cast<std::size_t>(key);
    if (key >= kOverrideKeys) {
        const Override& own = record->overrides.at(static_cast<std::size_t>(key - kOverrideKeys));
        row = {own.cell.dimension, {}, {}, own.zone, own.zone};
        notes = QString::number(own.cell.note.value);
        reason = QString::fromStdString(own.reason);
        rowOfSheet = sheet.zones.size();
    } else {
        row = sheet.zones.at(rowOfSheet);
    }
    ZoneDialog dialog(row, m_bench.unitOf(row.dimension), record->piano, this);
    if (!notes.isEmpty()) dialog.fill({}, notes, reason);
    if (!Dialogs::now().run(dialog)) return;
    const auto change = dialog.change();
    if (!change) return Q_EMIT refused(change.error());
    if (const auto kept = keep(*change, rowOfSheet); !kept) Q_EMIT refused(kept.error());
}

/// A whole row makes a sheet of this piano's own; single notes get overrides.
Outcome<void> SpecPanel::keep(const ZoneDialog::Change& change, std::size_t rowOfSheet) {
    const Piano& piano = m_bench.record()->piano;
    if (change.notes.empty()) {
        SpecSheet own = m_bench.sheet();
        if (rowOfSheet >= own.zones.size()) return refuse(RefusalCode::unknownNote);
        own.zones[rowOfSheet] = change.row;
        return m_bench.changePiano(piano, m_bench.record()->specName, own);
    }
    for (const NoteNumber note : change.notes)
        if (!fitted(change.row.dimension, note, piano))
            return refuse(RefusalCode::notFitted, std::string(key(change.row.dimension)));
    for (const NoteNumber note : change.notes) {
        const auto set = m_bench.setOverride({{note, change.row.dimension}, change.row.first, change.reason, {}});
        if (!set) return set;
    }
    return {};
}

void SpecPanel::takeBack() {
    const PianoRecord* record = m_bench.record();
    const int key = m_table->currentKey();
    if (!record || key < kOverrideKeys) return;
    const Cell cell = record->overrides.at(static_cast<std::size_t>(key - kOverrideKeys)).cell;
    if (const auto done = m_bench.removeOverride(cell); !done) Q_EMIT refused(done.error());
}

} // namespace hammerline
