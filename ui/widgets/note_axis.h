// Where each note stands along the window. Notes are at equal distances, as the hammers are, with a gap at each section
// break; keyboard strip, profile and survey share this to the pixel, so that a note is always straight above itself.
#pragma once

#include "core/piano/piano.h"

#include <QRect>

namespace hammerline {

class NoteAxis {
public:
    NoteAxis() = default;
    /// Notes lie between `left` + 29.5 u and `left` + `width` - 4 u. A pitch under 7 px is not used: the axis is then
    /// wider than asked and its users scroll.
    NoteAxis(int left, int width, const Piano&);
    NoteAxis(const QRect& rect, const Piano& piano) : NoteAxis(rect.left(), rect.width(), piano) {}

    int notes() const { return static_cast<int>(m_edges.size()) / 2; }
    /// First pixel of a note, and the first one after it.
    int left(NoteNumber) const;
    int right(NoteNumber) const;
    int width(NoteNumber n) const { return right(n) - left(n); }
    double centre(NoteNumber) const;
    int begin() const;
    int end() const;
    /// The note at x; the nearest one where x is in a gap or outside.
    NoteNumber at(int x) const;
    /// Gaps at the section breaks: pixels from .first to before .second, after note `after`.
    struct Gap {
        NoteNumber after;
        int first, last;
    };
    const std::vector<Gap>& gaps() const { return m_gaps; }
    /// Section ranges as drawn, in order.
    const std::vector<NoteRange>& sections() const { return m_sections; }
    bool scrolls() const { return m_scrolls; }

private:
    std::vector<int> m_edges; // left and right of each note
    std::vector<Gap> m_gaps;
    std::vector<NoteRange> m_sections;
    bool m_scrolls = false;
};

} // namespace hammerline
