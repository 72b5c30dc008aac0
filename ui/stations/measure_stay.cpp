// Where the hand stays on a cell: at the end of an order, at the edge of the grid, at a cell that takes nothing. What
// is typed there would overwrite a reading or be lost, so that it is refused with a sentence until a person chooses.
#include "ui/stations/measure_acts.h"
#include "ui/stations/measure_delegate.h"
#include "ui/stations/measure_view.h"
#include "ui/widgets/plate.h"
#include "ui/words/words.h"

#include <QKeyEvent>

namespace hammerline {

const Plate* MeasureView::word() const {
    return m_word && m_word->isVisible() ? m_word : nullptr;
}

void MeasureView::tell(bool refusal, const QString& headline, const QString& more) {
    if (!m_word) m_word = new Plate(viewport());
    m_word->say(refusal ? Plate::Kind::refusal : Plate::Kind::echo, headline, more);
    m_word->standBy(ReadingDelegate::cellRect(visualRect(currentIndex()), currentIndex()), viewport()->rect());
}

/// A person chose this cell: what is typed is meant for it.
void MeasureView::chosen() {
    m_stays = false;
    if (m_word) m_word->hide();
}

/// To the cell that follows one just left by Enter or an arrow; where there is none the hand stays, and says so.
void MeasureView::goOn(const QModelIndex& next) {
    if (next.isValid() && next != currentIndex()) return moveTo(next);
    m_stays = true;
    const auto [headline, more] = endOf(m_order, m_walk);
    const Measured* measured = m_bench.pass() ? m_bench.pass()->at(m_model->cellAt(currentIndex())) : nullptr;
    if (m_walk.size() == 0 || (measured && !measured->missing())) tell(false, headline, more);
}

/// A key that would enter something where nothing is to be entered.
bool MeasureView::refuses(const QKeyEvent& event) {
    const QModelIndex here = currentIndex();
    if (!here.isValid() || !m_bench.piano()) return false;
    if (event.modifiers() & ~(Qt::ShiftModifier | Qt::KeypadModifier)) return false;
    const bool types = !event.text().isEmpty() && event.text().front().isPrint() && event.text() != QLatin1String(" ");
    if (!types) return false;
    const Cell cell = m_model->cellAt(here);
    const int key = event.key();
    const bool asks = key == Qt::Key_H || key == Qt::Key_R || key == Qt::Key_BracketLeft || key == Qt::Key_BracketRight;
    if (asks && !namesWordHere(static_cast<Qt::Key>(key), cell)) return false;
    if (!m_bench.canWrite()) {
        tell(true, tr("This bench book cannot be written now: nothing was entered."), {});
        return true;
    }
    if (!m_model->canHold(here)) {
        tell(true,
             tr("%1 has no %2: nothing was entered.")
                 .arg(words::noteName(cell.note, *m_bench.piano()), words::name(cell.dimension).toLower()),
             tr("Choose another cell. Del takes back “not fitted” where it was said in error."));
        return true;
    }
    const Measured* measured = m_bench.pass() ? m_bench.pass()->at(cell) : nullptr;
    const bool overwrites = measured && !measured->missing();
    if (!m_stays || (m_walk.size() > 0 && !overwrites)) return false;
    const auto [headline, more] = endOf(m_order, m_walk);
    tell(true, tr("%1 Nothing was entered.").arg(headline), more);
    return true;
}

} // namespace hammerline
