#include "core/plan/rail_lines.h"

#include <algorithm>

namespace hammerline {

namespace {

constexpr double kEndsTouch = 1e-9; // mm

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

} // namespace

bool BlowNote::inside(double change) const {
    return value + change >= low - kEndsTouch && value + change <= high + kEndsTouch;
}

int insideBy(const std::vector<BlowNote>& notes, const RailLine& line) {
    return static_cast<int>(
        std::count_if(notes.begin(), notes.end(), [&](const BlowNote& b) { return b.inside(line.at(b.note)); }));
}

RailLine mostInside(const std::vector<BlowNote>& notes, double length) {
    RailLine best;
    int most = insideBy(notes, best);
    const auto consider = [&](const RailLine& line, int inside) {
        if (inside <= most) return;
        most = inside;
        best = line;
    };
    for (const BlowNote& note : notes)
        for (const double end : {note.low, note.nominal, note.high}) {
            const RailLine level{end - note.value, 0};
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

} // namespace hammerline
