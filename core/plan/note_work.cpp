#include "core/plan/note_work.h"

#include <algorithm>
#include <bit>
#include <cmath>

namespace hammerline {

DimensionId dimensionOf(Core core, KeyColour colour) {
    using namespace dimension;
    constexpr std::array ids = {keyHeight, keyDip, lostMotion, blow, letOff, aftertouch};
    if (core == Core::height && colour == KeyColour::sharp) return sharpHeight;
    return ids[place(core)];
}

namespace {

constexpr double kIn = 1 + 1e-9;

double minutesOf(std::span<const CoreMove> moves, unsigned taken) {
    double minutes = 0;
    for (std::size_t j = 0; j < moves.size(); ++j)
        if (taken >> j & 1U) minutes += moves[j].minutes;
    return minutes;
}

/// Solves the square system by elimination with the largest pivot; false where it has no single answer.
bool solveSquare(std::array<std::array<double, kMostMoves + 1>, kMostMoves>& m, std::size_t n) {
    for (std::size_t c = 0; c < n; ++c) {
        std::size_t best = c;
        for (std::size_t r = c + 1; r < n; ++r)
            if (std::abs(m[r][c]) > std::abs(m[best][c])) best = r;
        if (std::abs(m[best][c]) < 1e-9) return false;
        std::swap(m[c], m[best]);
        for (std::size_t r = 0; r < n; ++r) {
            if (r == c) continue;
            const double factor = m[r][c] / m[c][c];
            for (std::size_t k = c; k <= n; ++k)
                m[r][k] -= factor * m[c][k];
        }
    }
    for (std::size_t r = 0; r < n; ++r)
        m[r][n] /= m[r][r];
    return true;
}

} // namespace

NoteWorker::NoteWorker(std::span<const CoreMove> moves) : m_moves(moves) {
    for (unsigned taken = 1; taken < 1U << moves.size(); ++taken)
        m_subsets.push_back(taken);
    std::stable_sort(m_subsets.begin(), m_subsets.end(), [&](unsigned a, unsigned b) {
        const double x = minutesOf(moves, a), y = minutesOf(moves, b);
        return std::abs(x - y) > 1e-12 ? x < y : std::popcount(a) < std::popcount(b);
    });
}

bool NoteWorker::met(const CoreNote& note) {
    for (std::size_t i = 0; i < kCoreCount; ++i)
        if (note.goal[i] && (note.value[i] < note.goal[i]->low - 1e-6 || note.value[i] > note.goal[i]->high + 1e-6))
            return false;
    return true;
}

/// A dimension that is out and that none of the moves changes ends the matter before any arithmetic.
bool NoteWorker::couldReach(const CoreNote& note, unsigned taken) const {
    for (std::size_t i = 0; i < kCoreCount; ++i) {
        if (!note.goal[i] || (note.value[i] >= note.goal[i]->low - 1e-9 && note.value[i] <= note.goal[i]->high + 1e-9))
            continue;
        bool moved = false;
        for (std::size_t j = 0; j < m_moves.size(); ++j)
            moved = moved || ((taken >> j & 1U) && std::abs(m_moves[j].effects[i]) > 1e-12);
        if (!moved) return false;
    }
    return true;
}

NoteWork NoteWorker::by(const CoreNote& note, unsigned taken) {
    std::array<std::size_t, kMostMoves> column{};
    std::array<Bounds, kMostMoves> bounds{};
    std::size_t columns = 0;
    for (std::size_t j = 0; j < m_moves.size(); ++j)
        if (taken >> j & 1U) {
            bounds[columns] = m_moves[j].bounds;
            column[columns++] = j;
        }
    std::array<DeviationRow, kCoreCount> rows;
    std::size_t count = 0;
    for (std::size_t i = 0; i < kCoreCount; ++i) {
        if (!note.goal[i]) continue;
        for (std::size_t c = 0; c < columns; ++c)
            m_effects[i][c] = m_moves[column[c]].effects[i];
        const Goal& goal = *note.goal[i];
        rows[count++] = {note.value[i] - goal.nominal, goal.high - goal.nominal, goal.nominal - goal.low,
                         std::span(m_effects[i]).first(columns)};
    }
    NoteWork work;
    work.taken = taken;
    work.minutes = minutesOf(m_moves, taken);
    work.largest = m_programme.solve(std::span(rows).first(count), std::span(bounds).first(columns));
    for (std::size_t c = 0; c < columns; ++c)
        work.amounts[column[c]] = m_programme.amounts()[c];
    if (columns > 0) towardNominal(note, work);
    return work;
}

/// Puts each taken move's own dimension at its nominal, all at once; false where they have no single answer.
bool NoteWorker::nominal(const CoreNote& note, NoteWork& work, bool dipFloats) const {
    std::array<std::array<double, kMostMoves + 1>, kMostMoves> system{};
    std::array<std::size_t, kMostMoves> column{};
    std::size_t n = 0;
    for (std::size_t j = 0; j < m_moves.size(); ++j)
        if (work.taken >> j & 1U) column[n++] = j;
    for (std::size_t r = 0; r < n; ++r) {
        Core own = m_moves[column[r]].own;
        if (!note.goal[place(own)] || (own == Core::dip && dipFloats)) own = Core::aftertouch;
        if (!note.goal[place(own)]) return false;
        for (std::size_t c = 0; c < n; ++c)
            system[r][c] = m_moves[column[c]].effects[place(own)];
        system[r][n] = note.goal[place(own)]->nominal - note.value[place(own)];
    }
    if (!solveSquare(system, n)) return false;
    for (std::size_t c = 0; c < n; ++c)
        work.amounts[column[c]] = system[c][n];
    return true;
}

NoteWork NoteWorker::toNominal(const CoreNote& note, unsigned taken, bool dipFloats) const {
    NoteWork work;
    work.taken = taken;
    work.minutes = minutesOf(m_moves, taken);
    nominal(note, work, dipFloats);
    return work;
}

/// The least largest deviation is often held by one dimension that the moves hardly reach; the others are then free.
/// From the solution as far as possible along the straight line to "each move's own dimension at its nominal" without
/// passing that largest deviation: deviations are convex along it, so the farthest point is found dimension by
/// dimension.
void NoteWorker::towardNominal(const CoreNote& note, NoteWork& work) const {
    NoteWork nominalWork = work;
    if (!nominal(note, nominalWork, false)) return;
    double farthest = 1;
    const auto limit = [&](double here, double there, double low, double high) {
        if (there > high) farthest = std::min(farthest, std::max(high - here, 0.0) / (there - here));
        if (there < low) farthest = std::min(farthest, std::max(here - low, 0.0) / (here - there));
    };
    const auto here = after(note, work);
    const auto there = after(note, nominalWork);
    for (std::size_t j = 0; j < m_moves.size(); ++j)
        if (work.taken >> j & 1U)
            limit(work.amounts[j], nominalWork.amounts[j], m_moves[j].bounds.least, m_moves[j].bounds.most);
    for (std::size_t i = 0; i < kCoreCount; ++i) {
        if (!note.goal[i]) continue;
        const Goal& goal = *note.goal[i];
        limit(here[i], there[i], goal.nominal - work.largest * (goal.nominal - goal.low),
              goal.nominal + work.largest * (goal.high - goal.nominal));
    }
    for (std::size_t j = 0; j < m_moves.size(); ++j)
        if (work.taken >> j & 1U) work.amounts[j] += farthest * (nominalWork.amounts[j] - work.amounts[j]);
}

std::array<double, kCoreCount> NoteWorker::after(const CoreNote& note, const NoteWork& work) const {
    auto value = note.value;
    for (std::size_t j = 0; j < m_moves.size(); ++j)
        if (work.taken >> j & 1U)
            for (std::size_t i = 0; i < kCoreCount; ++i)
                value[i] += m_moves[j].effects[i] * work.amounts[j];
    return value;
}

std::optional<NoteWork> NoteWorker::bringIn(const CoreNote& note, unsigned taken) {
    if (!couldReach(note, taken)) return std::nullopt;
    NoteWork work = by(note, taken);
    if (work.largest > kIn) return std::nullopt;
    // What is promised is looked at once more: rounding in the programme must not reach the bench.
    CoreNote done = note;
    done.value = after(note, work);
    return met(done) ? std::optional(work) : std::nullopt;
}

std::optional<NoteWork> NoteWorker::leastWork(const CoreNote& note, unsigned allowed) {
    std::optional<NoteWork> best;
    for (const unsigned taken : m_subsets) {
        if ((taken & ~allowed) != 0) continue;
        if (best && minutesOf(m_moves, taken) > best->minutes + 1e-12) break;
        const auto work = bringIn(note, taken);
        if (work && (!best || work->largest < best->largest - 1e-9)) best = work;
    }
    return best;
}

std::optional<double> NoteWorker::leastMinutes(const CoreNote& note, unsigned allowed) {
    for (const unsigned taken : m_subsets)
        if ((taken & ~allowed) == 0 && bringIn(note, taken)) return minutesOf(m_moves, taken);
    return std::nullopt;
}

} // namespace hammerline
