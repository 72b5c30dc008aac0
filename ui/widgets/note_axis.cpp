#include "ui/widgets/note_axis.h"

#include "ui/widgets/look.h"

#include <algorithm>
#include <cmath>

namespace hammerline {

namespace {
constexpr double kLegend = 29.5, kRightMargin = 4, kGap = 2.5;
constexpr double kLeastPitch = 7;
} // namespace

NoteAxis::NoteAxis(int left, int width, const Piano& piano) {
    for (const Section& section : sectionsOf(piano))
        m_sections.push_back(section.range);
    const int gap = u(kGap);
    const int gaps = static_cast<int>(m_sections.size()) - 1;
    const int first = left + u(kLegend);
    const double room = width - u(kLegend) - u(kRightMargin) - gaps * gap;
    double pitch = room / std::max(1, piano.notes);
    m_scrolls = pitch < kLeastPitch;
    pitch = std::max(pitch, kLeastPitch);

    m_edges.reserve(static_cast<std::size_t>(piano.notes) * 2);
    std::size_t section = 0;
    int shift = 0;
    const auto edge = [&](int n) { return static_cast<int>(std::floor(first + n * pitch)) + shift; };
    for (int n = 0; n < piano.notes; ++n) {
        if (section + 1 < m_sections.size() && n + 1 > m_sections[section].last) {
            const int from = edge(n);
            shift += gap;
            m_gaps.push_back({NoteNumber{n}, from, from + gap});
            ++section;
        }
        m_edges.push_back(edge(n));
        m_edges.push_back(edge(n + 1));
    }
}

int NoteAxis::left(NoteNumber n) const {
    return m_edges.at(static_cast<std::size_t>(n.value - 1) * 2);
}
int NoteAxis::right(NoteNumber n) const {
    return m_edges.at(static_cast<std::size_t>(n.value - 1) * 2 + 1);
}
double NoteAxis::centre(NoteNumber n) const {
    return (left(n) + right(n)) / 2.0;
}
int NoteAxis::begin() const {
    return m_edges.empty() ? 0 : m_edges.front();
}
int NoteAxis::end() const {
    return m_edges.empty() ? 0 : m_edges.back();
}

NoteNumber NoteAxis::at(int x) const {
    int best = 1;
    int distance = std::numeric_limits<int>::max();
    for (int n = 1; n <= notes(); ++n) {
        const int l = left({n}), r = right({n});
        const int d = x < l ? l - x : x >= r ? x - r + 1 : 0;
        if (d < distance) distance = d, best = n;
    }
    return {best};
}

} // namespace hammerline
