#include "ui/stations/measure_model.h"

#include "core/survey/standing.h"
#include "ui/stations/measure_acts.h"
#include "ui/stations/measure_understanding.h"
#include "ui/words/words.h"

#include <algorithm>
#include <utility>

namespace hammerline {

MeasureModel::MeasureModel(Workbench& bench, QObject* parent) : QAbstractTableModel(parent), m_bench(bench) {
    connect(&m_bench, &Workbench::pianoChanged, this, &MeasureModel::refresh);
    connect(&m_bench, &Workbench::bookChanged, this, &MeasureModel::refresh); // no reset under an open field
    connect(&m_bench, &Workbench::recordChanged, this, &MeasureModel::refresh);
    connect(&m_bench, &Workbench::planChanged, this, &MeasureModel::refresh);
    rebuild();
}

void MeasureModel::rebuild() {
    beginResetModel();
    m_columns = m_bench.columns();
    m_looks = reckonAll();
    endResetModel();
}

void MeasureModel::refresh() {
    const Piano* piano = m_bench.piano();
    const std::size_t rows = piano ? static_cast<std::size_t>(piano->notes) : 0;
    if (m_columns.empty() || rows == 0 || m_looks.size() != rows * m_columns.size()) return rebuild();
    fitColumnsTo(m_bench.columns());
    if (m_columns.empty()) return rebuild();
    const auto mendBefore = m_mendFirst;
    const auto startsBefore = m_startsSection;
    auto looks = reckonAll();
    std::vector<QModelIndex> changed;
    for (std::size_t i = 0; i < looks.size(); ++i) {
        const int r = static_cast<int>(i / m_columns.size()), c = static_cast<int>(i % m_columns.size());
        if (looks[i] != m_looks[i] ||
            mendBefore[static_cast<std::size_t>(r)] != m_mendFirst[static_cast<std::size_t>(r)])
            changed.push_back(index(r, c));
    }
    m_looks = std::move(looks);
    tell(changed);
    if (mendBefore != m_mendFirst || startsBefore != m_startsSection)
        Q_EMIT headerDataChanged(Qt::Vertical, 0, rowCount() - 1);
}

/// A reading changes its own cell and a few neighbours': each is told by itself, so that no view paints the rest. Many
/// are told as the rectangle that holds them all.
void MeasureModel::tell(const std::vector<QModelIndex>& changed) {
    constexpr std::size_t kOneByOne = 24;
    const QList<int> roles{Qt::DisplayRole, Qt::EditRole, LookRole, MendFirstRole};
    if (changed.size() <= kOneByOne) {
        for (const QModelIndex& each : changed)
            Q_EMIT dataChanged(each, each, roles);
        return;
    }
    const auto [top, bottom] = std::ranges::minmax(changed, {}, &QModelIndex::row);
    const auto [left, right] = std::ranges::minmax(changed, {}, &QModelIndex::column);
    Q_EMIT dataChanged(index(top.row(), left.column()), index(bottom.row(), right.column()), roles);
}

/// Columns come and go one by one: a reset would take a field that is open with what is typed in it.
void MeasureModel::fitColumnsTo(const std::vector<DimensionId>& wanted) {
    const auto rows = static_cast<std::size_t>(rowCount());
    const auto lookOf = [&](std::size_t row, std::size_t column) {
        return m_looks.begin() + static_cast<std::ptrdiff_t>(row * m_columns.size() + column);
    };
    for (std::size_t c = m_columns.size(); c-- > 0;) {
        if (std::ranges::find(wanted, m_columns[c]) != wanted.end()) continue;
        beginRemoveColumns({}, static_cast<int>(c), static_cast<int>(c));
        for (std::size_t r = rows; r-- > 0;)
            m_looks.erase(lookOf(r, c));
        m_columns.erase(m_columns.begin() + static_cast<std::ptrdiff_t>(c));
        endRemoveColumns();
    }
    // both lists stand in the order of the catalogue
    for (std::size_t c = 0; c < wanted.size(); ++c) {
        if (c < m_columns.size() && m_columns[c] == wanted[c]) continue;
        beginInsertColumns({}, static_cast<int>(c), static_cast<int>(c));
        for (std::size_t r = rows; r-- > 0;)
            m_looks.insert(lookOf(r, c), CellLook{});
        m_columns.insert(m_columns.begin() + static_cast<std::ptrdiff_t>(c), wanted[c]);
        endInsertColumns();
    }
}

std::vector<CellLook> MeasureModel::reckonAll() {
    std::vector<CellLook> looks;
    const PianoRecord* record = m_bench.record();
    m_mendFirst.clear();
    m_startsSection.clear();
    if (!record) return looks;
    const Standing standing(record->findings, record->piano); // once: it looks through every part
    looks.reserve(static_cast<std::size_t>(record->piano.notes) * m_columns.size());
    for (int n = 1; n <= record->piano.notes; ++n) {
        m_mendFirst.push_back(!record->findings.empty() && !standing.blockersOf({n}).empty());
        m_startsSection.push_back(n > 1 &&
                                  sectionIndexOf({n}, record->piano) != sectionIndexOf({n - 1}, record->piano));
        for (const DimensionId dimension : m_columns)
            looks.push_back(reckon({{n}, dimension}));
    }
    return looks;
}

CellLook MeasureModel::reckon(Cell cell) const {
    CellLook look;
    const Piano& piano = *m_bench.piano();
    if (!fitted(cell.dimension, cell.note, piano)) {
        // the other key colour's column stays blank paper; a missing part is hatched
        const bool otherColour = cell.dimension == dimension::keyHeight || cell.dimension == dimension::sharpHeight ||
                                 cell.dimension == dimension::sharpProud;
        look.state = otherColour ? CellLook::State::blank : CellLook::State::notFitted;
        return look;
    }
    const PassView* view = m_bench.view();
    const Measured* measured = m_bench.pass() ? m_bench.pass()->at(cell) : nullptr;
    if (measured && measured->notFitted) {
        look.state = CellLook::State::notFitted;
        return look;
    }
    if (measured) {
        look.superseded = measured->superseded > 0;
        look.disputed = measured->disputed;
    }
    if (const Judged* judged = view ? view->review.at(cell) : nullptr) {
        look.state = judged->word ? CellLook::State::word : CellLook::State::number;
        look.marks = judged->marks();
        look.high = judged->verdict == Verdict::high;
        look.undecided = judged->verdict == Verdict::undecided;
        look.uneven = judged->uneven || judged->step;
        look.stale = judged->stale;
        Reading shown;
        shown.word = judged->word;
        shown.relation = judged->relation;
        shown.count = judged->value.value_or(0);
        shown.upper = judged->upper.value_or(0);
        look.text = words::shown(cell.dimension, shown);
        // a height over the bed or the slip: what was typed is read, its place over the line of the keys beside it
        const bool converted = measured && judged->value && measured->value() && *measured->value() != *judged->value;
        if (converted && !judged->word) {
            look.aside = std::exchange(look.text, words::shown(cell.dimension, measured->trials.back()));
            if (look.text.startsWith(u'+')) look.text.remove(0, 1); // a height, not a deviation
            if (*judged->value > 0) look.aside.prepend(u'+');
            look.aside.replace(QStringLiteral("++"), QStringLiteral("+"));
        }
        return look;
    }
    if (measured && !measured->missing()) {
        look.state = CellLook::State::number;
        look.text = words::shown(cell.dimension, measured->trials.back());
        return look;
    }
    if (const auto expected = expectedAfterPlan(m_bench, cell)) {
        look.state = CellLook::State::expected;
        look.text = words::shown(cell.dimension, fromTrade(expected->value, row(cell.dimension).kind));
        return look;
    }
    if (isUnmeasurable(m_bench, cell)) look.state = CellLook::State::dash;
    return look;
}

int MeasureModel::rowCount(const QModelIndex& parent) const {
    return parent.isValid() || m_columns.empty() ? 0 : static_cast<int>(m_looks.size() / m_columns.size());
}

int MeasureModel::columnCount(const QModelIndex& parent) const {
    return parent.isValid() ? 0 : static_cast<int>(m_columns.size());
}

Cell MeasureModel::cellAt(const QModelIndex& index) const {
    return {{index.row() + 1}, m_columns[static_cast<std::size_t>(index.column())]};
}

QModelIndex MeasureModel::indexOf(Cell cell) const {
    const auto column = std::find(m_columns.begin(), m_columns.end(), cell.dimension);
    return column == m_columns.end() ? QModelIndex()
                                     : index(cell.note.value - 1, static_cast<int>(column - m_columns.begin()));
}

const CellLook& MeasureModel::lookAt(const QModelIndex& index) const {
    return m_looks[static_cast<std::size_t>(index.row()) * m_columns.size() + static_cast<std::size_t>(index.column())];
}

bool MeasureModel::mendFirst(int row) const {
    return m_mendFirst[static_cast<std::size_t>(row)];
}
bool MeasureModel::startsSection(int row) const {
    return m_startsSection[static_cast<std::size_t>(row)];
}

bool MeasureModel::canHold(const QModelIndex& index) const {
    if (!index.isValid()) return false;
    const auto state = lookAt(index).state;
    return state != CellLook::State::blank && state != CellLook::State::notFitted;
}

QString MeasureModel::sentence(Cell cell) const {
    if (const PassView* view = m_bench.view())
        if (const Judged* judged = view->review.at(cell)) return words::cellSentence(*judged, *m_bench.piano());
    Judged nothing;
    nothing.cell = cell;
    const Measured* measured = m_bench.pass() ? m_bench.pass()->at(cell) : nullptr;
    const bool missingPart = !fitted(cell.dimension, cell.note, *m_bench.piano()) || (measured && measured->notFitted);
    nothing.verdict = missingPart ? Verdict::notFitted : Verdict::missing;
    return words::cellSentence(nothing, *m_bench.piano());
}

QVariant MeasureModel::data(const QModelIndex& index, int role) const {
    if (!checkIndex(index, CheckIndexOption::IndexIsValid)) return {};
    const CellLook& look = lookAt(index);
    switch (role) {
    case Qt::DisplayRole:
        return look.text;
    case Qt::EditRole: {
        const Measured* measured = m_bench.pass() ? m_bench.pass()->at(cellAt(index)) : nullptr;
        if (!measured || measured->missing()) return QString();
        const Reading& latest = measured->trials.back();
        return QString::fromStdString(latest.typed);
    }
    case Qt::AccessibleTextRole:
        return sentence(cellAt(index));
    case Qt::TextAlignmentRole:
        return QVariant::fromValue(Qt::AlignRight | Qt::AlignVCenter);
    case LookRole:
        return QVariant::fromValue(look);
    case MendFirstRole:
        return mendFirst(index.row());
    case SectionStartRole:
        return startsSection(index.row());
    default:
        return {};
    }
}

QVariant MeasureModel::headerData(int section, Qt::Orientation orientation, int role) const {
    if (section < 0 || section >= (orientation == Qt::Horizontal ? columnCount() : rowCount())) return {};
    if (role != Qt::DisplayRole && role != Qt::AccessibleTextRole) return {};
    if (orientation == Qt::Vertical) return words::noteName({section + 1}, *m_bench.piano());
    const DimensionId dimension = dimensionAt(section);
    return role == Qt::DisplayRole ? words::shortName(dimension) : words::name(dimension);
}

Qt::ItemFlags MeasureModel::flags(const QModelIndex& index) const {
    if (!index.isValid()) return Qt::NoItemFlags;
    Qt::ItemFlags flags = Qt::ItemIsEnabled | Qt::ItemIsSelectable | Qt::ItemNeverHasChildren;
    if (m_bench.canWrite() && canHold(index)) flags |= Qt::ItemIsEditable;
    return flags;
}

} // namespace hammerline
