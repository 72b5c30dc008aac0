// Rows under one heading, aligned for people who read a terminal. Scripts read --json.
#pragma once

#include <QStringList>

#include <vector>

namespace hammerline::app {

struct TableColumn {
    QString heading;
    bool right = false; // numbers stand at their right edge
};

class TextTable {
public:
    explicit TextTable(std::vector<TableColumn> columns, int indent = 0);
    /// One cell a column; what is missing at the end is empty.
    void add(const QStringList& cells);
    bool empty() const { return m_rows.empty(); }
    /// The heading and the rows, columns two blanks apart, no blank at a line's end. Empty without rows; a column that
    /// is empty in all rows is left out.
    QStringList lines() const;

private:
    QString line(const QStringList& cells, const std::vector<qsizetype>& widths) const;

    std::vector<TableColumn> m_columns;
    std::vector<QStringList> m_rows;
    int m_indent;
};

/// Every line to standard output; nothing with --json.
void say(const TextTable&, bool json);

} // namespace hammerline::app
