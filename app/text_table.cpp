#include "app/text_table.h"

#include "app/console.h"

#include <algorithm>

namespace hammerline::app {

TextTable::TextTable(std::vector<TableColumn> columns, int indent) : m_columns(std::move(columns)), m_indent(indent) {}

void TextTable::add(const QStringList& cells) {
    m_rows.push_back(cells);
}

QString TextTable::line(const QStringList& cells, const std::vector<qsizetype>& widths) const {
    QString out(m_indent, u' ');
    bool first = true;
    for (std::size_t i = 0; i < m_columns.size(); ++i) {
        if (widths[i] == 0) continue;
        if (!first) out += QStringLiteral("  ");
        first = false;
        const QString cell = cells.value(static_cast<qsizetype>(i));
        out += m_columns[i].right ? cell.rightJustified(widths[i]) : cell.leftJustified(widths[i]);
    }
    while (out.endsWith(u' '))
        out.chop(1);
    return out;
}

QStringList TextTable::lines() const {
    if (empty()) return {};
    QStringList headings;
    std::vector<qsizetype> widths(m_columns.size(), 0);
    for (const QStringList& row : m_rows)
        for (std::size_t i = 0; i < widths.size(); ++i)
            widths[i] = std::max(widths[i], row.value(static_cast<qsizetype>(i)).size());
    for (std::size_t i = 0; i < widths.size(); ++i) {
        headings << m_columns[i].heading;
        if (widths[i] > 0) widths[i] = std::max(widths[i], m_columns[i].heading.size());
    }
    QStringList out;
    const bool headed = std::ranges::any_of(headings, [](const QString& each) { return !each.isEmpty(); });
    if (headed) out << line(headings, widths);
    for (const QStringList& row : m_rows)
        out << line(row, widths);
    return out;
}

void say(const TextTable& table, bool json) {
    for (const QString& line : table.lines())
        say(line, json);
}

} // namespace hammerline::app
