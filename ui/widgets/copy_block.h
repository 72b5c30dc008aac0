// A block of any table for the clipboard: as text with tabs, and as a table for a letter or a sheet of figures.
#pragma once

#include <QMimeData>

#include <memory>

class QTableView;

namespace hammerline {

/// The selected cells from corner to corner; of a list without a selection all of it. The text of a selected block has
/// no headings, so that it can be pasted back where it came from; a whole list has them, and so has the table (HTML).
/// Null where there is nothing.
std::unique_ptr<QMimeData> blockOf(const QTableView&);

} // namespace hammerline
