#include "ui/stations/survey_model.h"

#include "ui/words/survey_names.h"

#include <algorithm>

namespace hammerline {

SurveyModel::SurveyModel(Workbench& bench, QObject* parent) : QAbstractTableModel(parent), m_bench(bench) {
    connect(&m_bench, &Workbench::recordChanged, this, &SurveyModel::rebuild);
    connect(&m_bench, &Workbench::pianoChanged, this, &SurveyModel::rebuild);
    rebuild();
}

void SurveyModel::show(Shown shown) {
    m_shown = shown;
    rebuild();
}

/// A set-up that changed, or rows that come and go, are a new table; a new finding leaves the cursor where it is.
void SurveyModel::rebuild() {
    const auto before = m_rows;
    const int columns = m_blocked.empty() ? 0 : static_cast<int>(m_blocked.size());
    const Piano* piano = m_bench.piano();
    m_findings = piano ? m_bench.record()->findings : std::vector<Finding>{};
    m_standing.reset();
    if (piano) m_standing.emplace(m_findings, *piano);
    std::vector<const Part*> rows;
    m_fitted = 0;
    for (const Part& each : parts()) {
        if (!piano || notesOf(each, *piano).empty()) continue;
        ++m_fitted;
        if (wanted(each)) rows.push_back(&each);
    }
    const bool same = rows == before && piano && columns == piano->notes;
    if (!same) beginResetModel();
    m_rows = std::move(rows);
    reckon();
    if (!same)
        endResetModel();
    else if (rowCount() > 0)
        Q_EMIT dataChanged(index(0, 0), index(rowCount() - 1, columnCount() - 1));
}

void SurveyModel::reckon() {
    m_counts = {};
    m_places.clear();
    m_blocked.clear();
    m_keyMarks.clear();
    const Piano* piano = m_bench.piano();
    if (!piano) return;
    for (int i = 1; i <= piano->notes; ++i) {
        m_blocked.push_back(!m_standing->blockersOf(NoteNumber{i}).empty());
        m_counts.blocked += m_blocked.back();
    }
    m_keyMarks.resize(m_blocked.size());
    for (const Part& each : parts())
        for (const NoteNumber n : notesOf(each, *piano)) {
            const FindingState state = m_standing->state(each, n);
            auto& mark = m_keyMarks[static_cast<std::size_t>(n.value - 1)];
            if (state == FindingState::toDo) mark = StripMarks::KeyMark::faulty;
            if (state == FindingState::mended && !mark) mark = StripMarks::KeyMark::mended;
            if (each.unit == PartUnit::piano && n.value > 1 && !m_standing->at(each, n)) continue;
            m_counts.toDo += state == FindingState::toDo;
            m_counts.watch += state == FindingState::watch;
            m_counts.mended += state == FindingState::mended;
            m_counts.notLookedAt += state == FindingState::notLookedAt;
        }
    for (const Part* part : m_rows) {
        auto& row = m_places.emplace_back();
        for (int i = 1; i <= piano->notes; ++i)
            row.push_back(placeOf(*part, NoteNumber{i}));
    }
}

SurveyModel::Place SurveyModel::placeOf(const Part& part, NoteNumber note) const {
    if (!fitted(part, note, m_standing->piano())) return Place::notFitted;
    if (!damperFeltSize(part).empty()) {
        const Part* felt = m_standing->damperFeltAt(note);
        if (felt && felt != &part) return Place::notFitted;
    }
    const Finding* finding = m_standing->at(part, note);
    if (!finding) return Place::notLookedAt;
    switch (finding->state) {
    case FindingState::notLookedAt:
        return Place::notLookedAt;
    case FindingState::sound:
        return Place::sound;
    case FindingState::watch:
        return Place::watch;
    case FindingState::mended:
        return Place::mended;
    case FindingState::toDo:
        break;
    }
    return m_standing->blocks(*finding) ? Place::blocks : Place::toDo;
}

bool SurveyModel::wanted(const Part& part) const {
    if (m_shown == Shown::all) return true;
    const auto notes = notesOf(part, m_standing->piano());
    return std::any_of(notes.begin(), notes.end(), [&](NoteNumber n) {
        const Place place = placeOf(part, n);
        if (m_shown == Shown::notLookedAt) return place == Place::notLookedAt;
        if (m_shown == Shown::blocking) return place == Place::blocks;
        return place == Place::toDo || place == Place::blocks || place == Place::watch;
    });
}

int SurveyModel::rowCount(const QModelIndex& parent) const {
    return parent.isValid() ? 0 : static_cast<int>(m_rows.size());
}

int SurveyModel::columnCount(const QModelIndex& parent) const {
    return parent.isValid() ? 0 : static_cast<int>(m_blocked.size());
}

SurveyModel::Place SurveyModel::place(int row, int column) const {
    return m_places[static_cast<std::size_t>(row)][static_cast<std::size_t>(column)];
}

bool SurveyModel::blockedNote(NoteNumber note) const {
    const auto i = static_cast<std::size_t>(note.value - 1);
    return i < m_blocked.size() && m_blocked[i];
}

std::optional<StripMarks::KeyMark> SurveyModel::keyMark(NoteNumber note) const {
    const auto i = static_cast<std::size_t>(note.value - 1);
    return i < m_keyMarks.size() ? m_keyMarks[i] : std::nullopt;
}

int SurveyModel::rowOf(std::string_view part) const {
    const auto found = std::find_if(m_rows.begin(), m_rows.end(), [&](const Part* p) { return p->key == part; });
    return found == m_rows.end() ? -1 : static_cast<int>(found - m_rows.begin());
}

namespace {
/// What a person wrote is no markup: a tool tip would take it for some.
QString shownAs(int role, const QString& text) {
    return role == Qt::ToolTipRole ? text.toHtmlEscaped() : text;
}
} // namespace

QVariant SurveyModel::data(const QModelIndex& index, int role) const {
    if (!index.isValid() || !m_standing) return {};
    if (role != Qt::AccessibleTextRole && role != Qt::ToolTipRole) return {};
    const NoteNumber note{index.column() + 1};
    const Part& row = part(index.row());
    if (place(index.row(), index.column()) == Place::notFitted)
        return tr("%1, note %2: not fitted").arg(words::partOfActionName(row.key)).arg(note.value);
    if (const Finding* finding = m_standing->at(row, note))
        return shownAs(role, words::findingSentence(*finding, m_standing->piano()));
    return tr("%1, note %2: not looked at").arg(words::partOfActionName(row.key)).arg(note.value);
}

QVariant SurveyModel::headerData(int section, Qt::Orientation orientation, int role) const {
    if (role != Qt::DisplayRole && role != Qt::AccessibleTextRole && role != Qt::ToolTipRole) return {};
    if (orientation == Qt::Horizontal) return section + 1;
    return words::partOfActionName(part(section).key);
}

} // namespace hammerline
