// How far each piece of the rest rail is to move: a straight line over its brackets that brings the most hammers inside
// their blow, and of those the largest deviation down (computation 9.2).
#include "core/plan/common_moves.h"

#include <algorithm>
#include <cmath>

namespace hammerline {

namespace {

// Two ends that touch count as inside, whatever the last bit says.
constexpr double kEndsTouch = 1e-9;

struct BlowNote {
    double note{};        // place along the piece, 0 at its first note
    double value{};       // blow of the rail
    double low{}, high{}; // where it may end
    double nominal{};
    bool inside(double change) const {
        return value + change >= low - kEndsTouch && value + change <= high + kEndsTouch;
    }
};

struct Line {
    double level{}, slope{}; // change of the blow, mm, and per note
    double at(double note) const { return level + slope * note; }
};

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

int insideBy(const std::vector<BlowNote>& notes, const Line& line) {
    return static_cast<int>(
        std::count_if(notes.begin(), notes.end(), [&](const BlowNote& b) { return b.inside(line.at(b.note)); }));
}

/// How many notes each line through one point brings inside: of every note the slopes that bring it in are an interval,
/// so that a slope's count is the intervals begun less those ended, and a sort does for all slopes at once.
class LinesThrough {
public:
    /// The point: a change of the blow at one note.
    LinesThrough(const std::vector<BlowNote>& notes, const BlowNote& at, double change) {
        m_begins.reserve(notes.size());
        m_ends.reserve(notes.size());
        for (const BlowNote& each : notes) {
            const double far = each.note - at.note;
            const double low = each.low - kEndsTouch - each.value - change,
                         high = each.high + kEndsTouch - each.value - change;
            if (far == 0) {
                m_always += low <= 0 && high >= 0;
                continue;
            }
            m_begins.push_back(std::min(low / far, high / far));
            m_ends.push_back(std::max(low / far, high / far));
        }
        std::ranges::sort(m_begins);
        std::ranges::sort(m_ends);
    }
    int inside(double slope) const {
        const auto begun = std::ranges::upper_bound(m_begins, slope) - m_begins.begin();
        const auto ended = std::ranges::lower_bound(m_ends, slope) - m_ends.begin();
        return m_always + static_cast<int>(begun - ended);
    }

private:
    int m_always = 0;
    std::vector<double> m_begins, m_ends;
};

/// The line with the most notes inside among level ones and those through two interval ends, one in the first third and
/// one in the last.
Line mostInside(const std::vector<BlowNote>& notes, double length) {
    Line best;
    int most = insideBy(notes, best);
    const auto consider = [&](const Line& line, int inside) {
        if (inside <= most) return;
        most = inside;
        best = line;
    };
    for (const BlowNote& note : notes)
        for (const double end : {note.low, note.nominal, note.high}) {
            const Line level{end - note.value, 0};
            consider(level, insideBy(notes, level));
        }
    for (const BlowNote& one : notes) {
        if (one.note > length / 3) continue;
        for (const double from : {one.low, one.high}) {
            const double change = from - one.value;
            const LinesThrough lines(notes, one, change);
            for (const BlowNote& other : notes) {
                if (other.note < length * 2 / 3) continue;
                for (const double to : {other.low, other.high}) {
                    const double slope = (to - other.value - change) / (other.note - one.note);
                    consider({change - slope * one.note, slope}, lines.inside(slope));
                }
            }
        }
    }
    return best;
}

/// Among the lines that bring these same notes inside, the one of the least largest deviation; level where the tilt is
/// too small to shim.
Line leastLargest(const std::vector<BlowNote>& notes, const Line& chosen, double length) {
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
        if (const Line flat{programme.amounts()[0], 0}; std::abs(chosen.slope) * length < kLeastTilt) return flat;
    programme.solve(rows, open);
    const Line line{programme.amounts()[0], programme.amounts()[1]};
    if (std::abs(line.slope) * length >= kLeastTilt) return line;
    programme.solve(levelRows, std::span(open).first(1));
    const Line flat{programme.amounts()[0], 0};
    return insideBy(notes, flat) >= insideBy(notes, line) ? flat : line;
}

std::optional<CommonMove> fitPiece(const Bench& bench, std::size_t index) {
    const NoteRange piece = bench.piano().restRail[index];
    const auto notes = notesOf(bench, piece);
    const int outside = static_cast<int>(notes.size()) - insideBy(notes, {});
    if (outside < kFewestOutside) return std::nullopt;
    const double length = piece.last - piece.first;
    const Line chosen = mostInside(notes, length);
    if (insideBy(notes, chosen) <= insideBy(notes, {})) return std::nullopt;
    const Line line = leastLargest(notes, chosen, length);
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
