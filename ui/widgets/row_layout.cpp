// How wide the columns of a list are: in a usual window, in a narrow one or with large type, in a very wide one.
#include "ui/widgets/row_paint.h"

#include <QHeaderView>

#include <algorithm>
#include <numeric>

namespace hammerline {

namespace {

/// A title may break between its words.
int widestWord(const QString& title) {
    const QFontMetrics metrics(face(Text::label));
    int widest = 0;
    for (const QString& word : title.split(u' '))
        widest = std::max(widest, metrics.horizontalAdvance(word));
    return widest;
}

} // namespace

/// What each column needs for its texts to be read whole; a long sentence may end in dots.
std::vector<int> RowTable::needs() const {
    constexpr double kMostNeed = 44;
    std::vector<int> need;
    for (const RowColumn& column : m_model.columns())
        need.push_back(widestWord(column.title));
    for (const ListRow& row : m_model.rows())
        for (std::size_t i = 0; i < std::min(row.cells.size(), need.size()); ++i)
            need[i] = std::max(need[i], neededWidth(row.cells[i]));
    for (std::size_t i = 0; i < need.size(); ++i) {
        need[i] += u(4);
        if (!m_model.columns()[i].whole) need[i] = std::min(need[i], u(kMostNeed));
    }
    return need;
}

/// Columns are as wide as they like to be where there is room, and in a very wide window all grow, so that a name and
/// its figures stay together. Where there is too little (large type, a narrow window) each gives way down to what its
/// texts need; what then still has no room is reached by scrolling.
std::vector<int> RowTable::widths() const {
    constexpr double kLeastStretch = 34, kMostStretch = 70;
    const auto& columns = m_model.columns();
    const auto all = [](const std::vector<int>& each) { return std::accumulate(each.begin(), each.end(), 0); };
    const int room = viewport()->width();
    std::vector<int> wide;
    for (const RowColumn& column : columns)
        wide.push_back(u(column.width > 0 ? column.width : kLeastStretch));
    const std::vector<int> need = needs();
    for (std::size_t i = 0; i < wide.size(); ++i)
        if (columns[i].whole) wide[i] = std::max(wide[i], need[i]);
    if (const int wished = all(wide); wished > room) {
        const int needed = all(need);
        const double share = std::clamp(static_cast<double>(room - needed) / std::max(1, wished - needed), 0.0, 1.0);
        for (std::size_t i = 0; i < wide.size(); ++i)
            wide[i] = need[i] + static_cast<int>((wide[i] - need[i]) * share);
    }
    const auto stretch = std::ranges::find_if(columns, [](const RowColumn& c) { return c.width <= 0; });
    if (stretch == columns.end()) return wide;
    int& grows = wide[static_cast<std::size_t>(stretch - columns.begin())];
    grows += std::max(0, room - all(wide));
    if (grows > u(kMostStretch)) {
        int longest = u(kMostStretch);
        const auto column = static_cast<std::size_t>(stretch - columns.begin());
        for (const ListRow& row : m_model.rows())
            if (column < row.cells.size()) longest = std::max(longest, neededWidth(row.cells[column]) + u(4));
        grows = std::min(grows, longest);
        const double factor = static_cast<double>(room) / all(wide);
        for (int& each : wide)
            each = static_cast<int>(each * factor);
        grows += room - all(wide);
    }
    return wide;
}

/// Done again where the scroll bars that come of it leave another width.
void RowTable::layOut() {
    if (m_layingOut) return;
    m_layingOut = true;
    for (int i = 0, room = -1; i < 3 && room != viewport()->width(); ++i) {
        room = viewport()->width();
        layOutOnce();
        updateGeometries();
    }
    m_layingOut = false;
}

void RowTable::layOutOnce() {
    const auto& columns = m_model.columns();
    const std::vector<int> wide = widths();
    for (std::size_t i = 0; i < wide.size(); ++i)
        setColumnWidth(static_cast<int>(i), wide[i]);
    const bool scrolls = std::accumulate(wide.begin(), wide.end(), 0) > viewport()->width();
    if (const auto policy = scrolls ? Qt::ScrollBarAlwaysOn : Qt::ScrollBarAlwaysOff;
        policy != horizontalScrollBarPolicy())
        setHorizontalScrollBarPolicy(policy);
    clearSpans();
    for (int i = 0; i < m_model.rowCount(); ++i) {
        const ListRow& row = m_model.row(i);
        setRowHeight(i, u(row.height > 0 ? row.height : m_rowHeight));
        if (!row.heading.isEmpty() && columns.size() > 1) setSpan(i, 0, 1, static_cast<int>(columns.size()));
    }
}

} // namespace hammerline
