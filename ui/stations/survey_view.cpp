#include "ui/stations/survey_view.h"

#include "ui/stations/survey_letters.h"
#include "ui/stations/survey_paint.h"

#include <QKeyEvent>

namespace hammerline {

SurveyView::SurveyView(Workbench& bench, QWidget* parent)
    : QTableView(parent), m_bench(bench), m_model(new SurveyModel(bench, this)) {
    setObjectName(QStringLiteral("survey"));
    setAccessibleName(tr("Parts by notes"));
    setFrameShape(NoFrame);
    setShowGrid(false);
    setCornerButtonEnabled(false);
    setTabKeyNavigation(false);
    setEditTriggers(NoEditTriggers);
    setSelectionMode(ContiguousSelection);
    setHorizontalScrollMode(ScrollPerPixel);
    setHorizontalHeader(new NoteNumberHeader(*this));
    setVerticalHeader(new PartHeader(*this));
    setItemDelegate(new PlaceDelegate(*this));
    setModel(m_model);
    connect(m_model, &QAbstractItemModel::modelReset, this, [this] {
        layOut();
        follow();
    });
    connect(&m_bench, &Workbench::noteChanged, this, &SurveyView::follow);
    layOut();
    follow();
}

/// Columns from the note axis: each runs to the next note's left, so the gaps at section breaks are in them.
void SurveyView::layOut() {
    const Piano* piano = m_bench.piano();
    if (!piano) return;
    m_axis = NoteAxis(0, width(), *piano);
    for (int i = 1; i <= piano->notes; ++i) {
        const NoteNumber note{i};
        const int end = i < piano->notes ? m_axis.left(NoteNumber{i + 1}) : m_axis.right(note);
        setColumnWidth(i - 1, end - m_axis.left(note));
    }
    for (int row = 0; row < m_model->rowCount(); ++row)
        setRowHeight(row, u(4.25));
    verticalHeader()->setFixedWidth(m_axis.begin());
    updateGeometries();
}

void SurveyView::resizeEvent(QResizeEvent* event) {
    QTableView::resizeEvent(event);
    layOut();
}

void SurveyView::changeEvent(QEvent* event) {
    QTableView::changeEvent(event);
    if (event->type() == QEvent::FontChange || event->type() == QEvent::ApplicationFontChange) layOut();
}

void SurveyView::follow() {
    if (m_following || m_model->rowCount() == 0 || m_model->columnCount() == 0) return;
    m_following = true;
    const int row = std::clamp(currentIndex().row(), 0, m_model->rowCount() - 1);
    const QModelIndex wanted = m_model->index(row, std::min(m_bench.note().value, m_model->columnCount()) - 1);
    if (wanted != currentIndex()) setCurrentIndex(wanted);
    m_following = false;
}

void SurveyView::currentChanged(const QModelIndex& now, const QModelIndex& before) {
    // the base tells a screen reader of the cell as if the hand were here, also behind the entry at the bench
    hasFocus() ? QTableView::currentChanged(now, before) : QAbstractItemView::currentChanged(now, before);
    if (now.isValid() && !m_following) {
        m_following = true;
        m_bench.setNote(NoteNumber{now.column() + 1});
        m_following = false;
    }
    viewport()->update();
    horizontalHeader()->viewport()->update();
    verticalHeader()->viewport()->update();
    Q_EMIT chosenChanged();
}

void SurveyView::selectionChanged(const QItemSelection& now, const QItemSelection& before) {
    QTableView::selectionChanged(now, before);
    Q_EMIT chosenChanged();
}

const Part* SurveyView::currentPart() const {
    return currentIndex().isValid() ? &m_model->part(currentIndex().row()) : nullptr;
}

std::vector<NoteNumber> SurveyView::chosenNotes(int row) const {
    std::vector<NoteNumber> out;
    if (row < 0 || !currentIndex().isValid()) return out;
    for (int column = 0; column < m_model->columnCount(); ++column) {
        const bool current = row == currentIndex().row() && column == currentIndex().column();
        if (current || selectionModel()->isSelected(m_model->index(row, column))) out.push_back(NoteNumber{column + 1});
    }
    return out;
}

std::vector<int> SurveyView::chosenRows() const {
    std::vector<int> out;
    for (int row = 0; row < m_model->rowCount(); ++row)
        if (row == currentIndex().row() || selectionModel()->rowIntersectsSelection(row)) out.push_back(row);
    return out;
}

void SurveyView::setCurrentPart(std::string_view part) {
    const int row = m_model->rowOf(part);
    if (row < 0 || row == currentIndex().row()) return;
    setCurrentIndex(m_model->index(row, std::max(0, currentIndex().column())));
}

/// What is said of one note of a part of the whole piano is said of the piano; of a range it stays where it was seen.
std::vector<Finding> SurveyView::spread(Finding pattern, const std::vector<NoteNumber>& notes, int row) const {
    std::vector<Finding> out;
    if (row < 0 || row >= m_model->rowCount() || notes.empty()) return out;
    const Part* part = &m_model->part(row);
    pattern.part = part->key;
    const bool whole = part->unit == PartUnit::piano &&
                       (notes.size() == 1 || static_cast<int>(notes.size()) == m_model->columnCount());
    if (whole) return {pattern};
    for (const NoteNumber n : notes) {
        if (m_model->place(row, n.value - 1) == SurveyModel::Place::notFitted) continue;
        pattern.note = n;
        out.push_back(pattern);
    }
    return out;
}

/// One key is one act, however many notes it speaks of.
void SurveyView::store(const std::vector<Finding>& findings) {
    if (findings.empty()) return;
    if (const auto added = m_bench.addFindings(findings); !added) Q_EMIT refused(added.error());
}

void SurveyView::sayFault(const Fault& fault) {
    if (chosenRows().size() > 1) {
        Q_EMIT told(tr("Several parts are chosen and a fault is of one part: nothing was entered. Choose one row."));
        return;
    }
    Finding finding;
    finding.fault = fault.key;
    const auto findings = spread(finding, chosenNotes(), currentIndex().row());
    if (!findings.empty()) m_last = findings.front();
    store(findings);
}

/// Mended or watched keeps what was found, and says nothing where nothing was; sound forgets it.
void SurveyView::sayState(FindingState state) {
    const Standing* standing = m_model->standing();
    if (!standing || !currentIndex().isValid()) return;
    const bool ofFound = state == FindingState::watch || state == FindingState::mended;
    const bool forgets = state == FindingState::notLookedAt;
    Finding plain;
    plain.state = state;
    std::vector<Finding> all;
    for (const int row : chosenRows()) {
        const Part& part = m_model->part(row);
        for (Finding& each : spread(plain, chosenNotes(row), row)) {
            const Finding* was = standing->at(part, each.note.value_or(m_bench.note()));
            const bool found = was && !was->fault.empty() && was->state != FindingState::notLookedAt;
            // one place may be watched before anything is named there
            const bool watchesPlace = state == FindingState::watch && chosenRows().size() == 1;
            if ((ofFound && !found && !watchesPlace) || (forgets && !was)) continue;
            if (ofFound && found) {
                each.fault = was->fault;
                each.remedy = was->remedy;
                each.amount = was->amount;
                if (part.unit == PartUnit::piano) each.note = was->note; // said of the piano, mended in the piano
            }
            if (std::ranges::find(all, each) == all.end()) all.push_back(each);
        }
    }
    if (all.empty() && ofFound) {
        Q_EMIT told(tr("Nothing was found here: there is nothing to mend or to watch."));
        return;
    }
    store(all);
    const int places = static_cast<int>(all.size());
    if (state == FindingState::mended) Q_EMIT told(tr("%n place(s) mended.", nullptr, places));
    if (state == FindingState::watch) Q_EMIT told(tr("%n place(s) to watch.", nullptr, places));
    if (forgets && places > 0) Q_EMIT told(tr("%n place(s) not looked at again.", nullptr, places));
}

void SurveyView::sayRestSound() {
    std::vector<NoteNumber> rest;
    const int row = currentIndex().row();
    for (int column = 0; row >= 0 && column < m_model->columnCount(); ++column)
        if (m_model->place(row, column) == SurveyModel::Place::notLookedAt) rest.push_back(NoteNumber{column + 1});
    Finding finding;
    finding.state = FindingState::sound;
    store(spread(finding, rest, row));
}

void SurveyView::saySameAsLast() {
    const Part* part = currentPart();
    if (!m_last || !part || !findFault(*part, m_last->fault)) return;
    Finding finding = *m_last;
    if (!findRemedy(*part, finding.remedy)) finding.remedy.clear();
    store(spread(finding, chosenNotes(), currentIndex().row()));
}

bool SurveyView::letter(const QKeyEvent& event) {
    const Part* part = currentPart();
    if (!part || event.text().size() != 1) return false;
    const QChar typed = event.text().at(0).toUpper();
    if (typed == QLatin1Char('Y')) {
        if (event.modifiers().testFlag(Qt::ShiftModifier))
            sayRestSound();
        else
            sayState(FindingState::sound);
        return true;
    }
    if (typed == QLatin1Char('M')) return sayState(FindingState::mended), true;
    if (typed == QLatin1Char('W')) return sayState(FindingState::watch), true;
    if (typed == QLatin1Char('*')) return saySameAsLast(), true;
    const Fault* fault = typed.isLetter() ? faultOf(*part, typed) : nullptr;
    if (fault) sayFault(*fault);
    return typed.isLetter();
}

void SurveyView::keyPressEvent(QKeyEvent* event) {
    const auto held = event->modifiers() & ~(Qt::ShiftModifier | Qt::KeypadModifier);
    if (event->key() == Qt::Key_Delete && !held) return sayState(FindingState::notLookedAt);
    if ((event->key() == Qt::Key_Return || event->key() == Qt::Key_Enter) && !held) {
        const int step = event->modifiers().testFlag(Qt::ShiftModifier) ? -1 : 1;
        const QModelIndex next = m_model->index(currentIndex().row(), currentIndex().column() + step);
        if (next.isValid()) setCurrentIndex(next);
        return;
    }
    if (!held && letter(*event)) return;
    QTableView::keyPressEvent(event);
}

} // namespace hammerline
