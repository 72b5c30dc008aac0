// How far each piece of the rest rail is to move: a straight line over its brackets that brings the most hammers inside
// their blow, and of those the largest deviation down (computation 9.2).
#include "core/plan/common_moves.h"
#include "core/plan/rail_lines.h"

#include <algorithm>
#include <cmath>

namespace hammerline {

namespace {

// Fewer notes outside are no matter of the rail.
constexpr int kFewestOutside = 3;
// A tilt of less than this over the piece is not shimmed: cards of the customary kind are thicker.
constexpr double kLeastTilt = 0.4;
constexpr double kLeastPad = 0.1;

std::vector<BlowNote> notesOf(const Bench& bench, NoteRange piece) {
    std::vector<BlowNote> notes;
    for (int n = std::max(piece.first, 1); n <= std::min(piece.last, bench.piano().notes); ++n) {
        const Known& known = bench.state({n}).of(dimension::blow);
        const auto& zone = bench.zones.at({{n}, dimension::blow});
        const NoteStanding& standing = bench.stand({n});
        if (!known.known || !zone || standing.blocked || standing.held[dimension::blow.row] ||
            standing.accepted[dimension::blow.row])
            continue;
        const Goal goal = shrunk(zoneOf(*zone, dimension::blow), bench.u(dimension::blow));
        notes.push_back({double(n - piece.first), known.value, goal.low, goal.high, goal.nominal});
    }
    return notes;
}

/// Among the lines that bring these same notes inside, the one of the least largest deviation; level where the tilt is
/// too small to shim.
RailLine leastLargest(const std::vector<BlowNote>& notes, const RailLine& chosen, double length) {
    const std::array<double, 1> level = {1.0};
    std::vector<std::array<double, 2>> effects;
    std::vector<DeviationRow> rows, levelRows;
    effects.reserve(notes.size());
    for (const BlowNote& note : notes) {
        if (!note.inside(chosen.at(note.note))) continue;
        effects.push_back({1.0, note.note});
        DeviationRow row{note.value - note.nominal, note.high - note.nominal, note.nominal - note.low, level};
        levelRows.push_back(row);
        row.effects = effects.back();
        rows.push_back(row);
    }
    const std::array<Bounds, 2> open = {Bounds{-INFINITY, INFINITY}, Bounds{-INFINITY, INFINITY}};
    LeastLargest programme;
    if (programme.solve(levelRows, std::span(open).first(1)) <= 1)
        if (const RailLine flat{programme.amounts()[0], 0}; std::abs(chosen.slope) * length < kLeastTilt) return flat;
    programme.solve(rows, open);
    const RailLine line{programme.amounts()[0], programme.amounts()[1]};
    if (std::abs(line.slope) * length >= kLeastTilt) return line;
    programme.solve(levelRows, std::span(open).first(1));
    const RailLine flat{programme.amounts()[0], 0};
    return insideBy(notes, flat) >= insideBy(notes, line) ? flat : line;
}

std::optional<CommonMove> fitPiece(const Bench& bench, std::size_t index) {
    const NoteRange piece = bench.piano().restRail[index];
    const auto notes = notesOf(bench, piece);
    const int outside = static_cast<int>(notes.size()) - insideBy(notes, {});
    if (outside < kFewestOutside) return std::nullopt;
    const double length = piece.last - piece.first;
    const RailLine chosen = mostInside(notes, length);
    if (insideBy(notes, chosen) <= insideBy(notes, {})) return std::nullopt;
    const RailLine line = leastLargest(notes, chosen, length);
    CommonMove move{operation::restRailShim, {}, {}, "rest-rail"};
    std::vector<int> brackets;
    if (index < bench.piano().brackets.size()) brackets = bench.piano().brackets[index];
    if (brackets.empty()) brackets = {piece.first, piece.last};
    for (const int bracket : brackets)
        move.amounts[bracket] = -line.at(bracket - piece.first) / bench.piano().railFactor;
    if (std::abs(move.largest()) < kLeastPad) return std::nullopt;
    for (int n = piece.first; n <= piece.last; ++n)
        move.notes.push_back({n});
    return move;
}

} // namespace

void fitRestRail(Bench& bench, CoreWork& work) {
    if (!applies(operation::restRailShim, bench.piano())) return;
    for (std::size_t i = 0; i < bench.piano().restRail.size(); ++i) {
        const NoteRange piece = bench.piano().restRail[i];
        const bool moved = std::any_of(bench.common.begin(), bench.common.end(), [&](const CommonMove& move) {
            return move.operation == operation::restRailShim && !move.notes.empty() &&
                   piece.contains(move.notes.front());
        });
        if (moved) continue;
        if (const auto move = fitPiece(bench, i)) carryOutWhereCheaper(bench, work, std::span(&*move, 1), false);
    }
}

} // namespace hammerline
