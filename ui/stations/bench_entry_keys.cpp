// The keys of the entry at the bench.
#include "ui/stations/bench_entry.h"
#include "ui/stations/bench_field.h"
#include "ui/stations/measure_acts.h"
#include "ui/stations/measure_editor.h"

#include <QKeyEvent>

#include <algorithm>

namespace hammerline {

bool BenchEntry::key(QKeyEvent* event) {
    if (!m_bench.piano()) return false;
    if (!m_notice.isEmpty()) say({});
    if (answer(event)) return true;
    if (refuses(*event)) return true;
    const bool empty = m_field->text().isEmpty();
    const bool shift = event->modifiers() & Qt::ShiftModifier;
    if (event->matches(QKeySequence::Undo)) {
        if (empty) return Q_EMIT undoAsked(), true;
        m_field->clear(); // what is half typed is taken back first
        return true;
    }
    if (event->matches(QKeySequence::Redo) ||
        (event->key() == Qt::Key_Y && event->modifiers() == Qt::ControlModifier)) {
        if (empty) Q_EMIT redoAsked();
        return true;
    }
    switch (event->key()) {
    case Qt::Key_Escape:
        if (empty && !m_repeat) return Q_EMIT left(), true;
        m_repeat = false;
        m_field->clear();
        refresh();
        return true;
    case Qt::Key_Return:
    case Qt::Key_Enter:
        if (commit()) go(shift ? -1 : 1);
        return true;
    case Qt::Key_Up:
        if (commit()) goNote(-1);
        return true;
    case Qt::Key_Down:
        if (commit()) goNote(1);
        return true;
    case Qt::Key_Tab:
        if (commit() && !goDimension(1)) stay();
        return true;
    case Qt::Key_Backtab:
        if (commit() && !goDimension(-1)) stay();
        return true;
    default:
        return empty && keyWhileEmpty(event);
    }
}

/// One key answers a doubtful value: Enter takes the suggestion, F9 what was typed.
bool BenchEntry::answer(QKeyEvent* event) {
    if (!m_asking || m_meaning.kind != Understanding::Kind::question) return false;
    if (event->key() == kTakeAsTyped && m_meaning.reading) {
        Reading taken = *m_meaning.reading;
        taken.taken = true;
        if (store(taken)) go(1);
        return true;
    }
    if ((event->key() == Qt::Key_Return || event->key() == Qt::Key_Enter) && !m_meaning.suggestion.isEmpty()) {
        m_field->setText(m_meaning.suggestion);
        if (m_meaning.kind == Understanding::Kind::sound && commit()) go(1);
        return true;
    }
    return false;
}

bool BenchEntry::keyWhileEmpty(QKeyEvent* event) {
    if (event->modifiers() & ~(Qt::ShiftModifier | Qt::KeypadModifier)) return false;
    const auto key = static_cast<Qt::Key>(event->key());
    if (namesWordHere(key, m_bench.cell())) return enterWord(key), true;
    switch (key) {
    case Qt::Key_Asterisk:
        if (const auto same = sameAsBefore(m_bench, m_bench.cell()); same && store(*same)) go(1);
        return true;
    case Qt::Key_R:
        m_repeat = canTake(m_bench, m_bench.cell());
        m_stays = false; // a further trial is meant for this very cell
        refresh();
        return true;
    case Qt::Key_N:
        if (const auto marked = m_bench.markNotFitted(m_bench.cell()); !marked)
            Q_EMIT refused(marked.error());
        else
            go(1);
        return true;
    case Qt::Key_Y:
        return quickLook(), true;
    case Qt::Key_H:
        return Q_EMIT howToAsked(), true;
    case Qt::Key_BracketLeft:
        return goDimension(-1), true;
    case Qt::Key_BracketRight:
        return goDimension(1), true;
    case Qt::Key_Left:
        return goDimension(-1), true;
    case Qt::Key_Right:
        return goDimension(1), true;
    case Qt::Key_Delete:
    case Qt::Key_Backspace:
        return takeBack(), true;
    default:
        break;
    }
    // a letter that is no word here would only be refused later
    const bool letter = event->text().size() == 1 && event->text().front().isLetter();
    if (!letter) return false;
    if (wordFor(key, m_bench.cell()))
        enterWord(key);
    else
        say(wordElsewhere(m_bench, key, m_bench.cell()) + u' ' + tr("Tab goes to the next dimension."));
    return true;
}

bool BenchEntry::store(const Reading& reading) {
    const Cell cell = m_bench.cell();
    const auto stored = m_repeat ? m_bench.repeat(cell, reading) : m_bench.enter(cell, reading);
    if (!stored) {
        Q_EMIT refused(stored.error());
        return false;
    }
    m_repeat = false;
    m_last = cell;
    m_field->clear();
    return true;
}

void BenchEntry::enterWord(Qt::Key key) {
    const Cell here = m_bench.cell();
    const auto meant = wordFor(key, here);
    if (!meant || !canTake(m_bench, here)) return;
    if (const auto stored = m_bench.enter(here, wordReading(*meant)); !stored) {
        Q_EMIT refused(stored.error());
        return;
    }
    m_last = here;
    go(1);
}

/// "This note is right" in everything that has no reading yet; then the next note.
void BenchEntry::quickLook() {
    const NoteNumber note = m_bench.note();
    const auto columns = m_bench.columns();
    const auto found = rightNote(m_bench, note, columns);
    if (!found.empty()) {
        if (const auto stored = m_bench.enterAll(found, "entry"); !stored) {
            Q_EMIT refused(stored.error());
            return;
        }
        const auto here = std::find_if(found.begin(), found.end(), [this](const NewReading& each) {
            return each.cell.dimension == m_bench.dimension();
        });
        m_last = here == found.end() ? found.front().cell : here->cell;
    }
    goNote(1);
}

void BenchEntry::takeBack() {
    const Measured* measured = m_bench.pass() ? m_bench.pass()->at(m_bench.cell()) : nullptr;
    if (!measured || (measured->missing() && !measured->notFitted)) return;
    if (const auto taken = m_bench.withdraw(m_bench.cell()); !taken) Q_EMIT refused(taken.error());
}

// --- moving

void BenchEntry::goTo(std::optional<Cell> cell) {
    if (!cell) return;
    m_repeat = false;
    m_bench.setCell(*cell);
    refresh();
}

void BenchEntry::go(int by) {
    const auto next = m_walk.step(m_bench.cell(), by);
    goTo(next);
    speak();
    if (!next) stay();
}

/// The order leads no further: the hand stays, and what is typed then is not for this cell.
void BenchEntry::stay() {
    m_stays = true;
    refresh(); // the last card says so too
    const Measured* measured = m_bench.pass() ? m_bench.pass()->at(m_bench.cell()) : nullptr;
    if (m_walk.size() == 0 || (measured && !measured->missing())) sayEnd();
}

void BenchEntry::sayEnd(bool refused) {
    const auto [headline, more] = endOf(m_order, m_walk);
    say((refused ? tr("%1 Nothing was entered.").arg(headline) : headline) + u' ' + more);
}

/// A key that would enter something where nothing is to be entered: at the end of the order, at a part that is not
/// there.
bool BenchEntry::refuses(const QKeyEvent& event) {
    if (event.modifiers() & ~(Qt::ShiftModifier | Qt::KeypadModifier)) return false;
    const bool types = !event.text().isEmpty() && event.text().front().isPrint();
    if (!types || !m_field->text().isEmpty()) return false;
    const Cell cell = m_bench.cell();
    const int key = event.key();
    const bool asks = key == Qt::Key_H || key == Qt::Key_R || key == Qt::Key_BracketLeft || key == Qt::Key_BracketRight;
    if (asks && !namesWordHere(static_cast<Qt::Key>(key), cell)) return false;
    const Measured* measured = m_bench.pass() ? m_bench.pass()->at(cell) : nullptr;
    const bool overwrites = measured && !measured->missing() && !m_repeat;
    if (!m_stays || (m_walk.size() > 0 && !overwrites)) return false;
    sayEnd(true);
    return true;
}

/// To the next cell of the order that is at another note.
void BenchEntry::goNote(int by) {
    const Cell from = m_bench.cell();
    std::optional<Cell> next = m_walk.step(from, by);
    while (next && next->note == from.note)
        next = m_walk.step(*next, by);
    goTo(next);
    speak();
    if (!next) stay();
}

/// The dimension beside that this note has.
bool BenchEntry::goDimension(int by) {
    const auto columns = m_bench.columns();
    const auto here = std::find(columns.begin(), columns.end(), m_bench.dimension());
    auto at = (here == columns.end() ? 0 : here - columns.begin()) + by;
    for (; at >= 0 && at < static_cast<std::ptrdiff_t>(columns.size()); at += by) {
        const Cell cell{m_bench.note(), columns[static_cast<std::size_t>(at)]};
        if (canTake(m_bench, cell)) return goTo(cell), true;
    }
    return false;
}

} // namespace hammerline
