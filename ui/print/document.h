// A document before it is cut into pages: blocks over the full width, and tables whose rows run in columns read down,
// then across. Rows and blocks are never split.
#pragma once

#include "ui/print/canvas.h"

#include <functional>
#include <variant>

namespace hammerline::print {

using Paint = std::function<void(Canvas&, const QRectF&)>; // the place in mm

struct Solid {
    double height = 0;
    Paint paint;
    bool keepWithNext = false; // headings
    bool ownPage = false;      // begins a page
};

struct TableRow {
    double height = 8;
    QString group; // section heading above it; empty: none
    Paint paint;
    QString name; // "note 25", for the foot of the page before
};

struct Table {
    int columns = 2;
    double gap = 4;        // between columns, mm
    double headHeight = 6; // column heads, over each column
    Paint head;
    double groupHeight = 5.5;
    std::vector<TableRow> rows;
    /// Painted at the top of the next page where the table goes on: what it belongs to, "continued".
    Solid again;
};

using Block = std::variant<Solid, Table>;

struct Document {
    QString title;
    Paragraph subtitle; // piano, pass, what it is
    QString specLine;   // the zones used and their source
    QString date;
    std::vector<Block> blocks;
    Solid foot;        // signs and conventions, at the foot of every page
    Paragraph leftOut; // named above the foot of every page; empty: nothing
    QString rowWord;   // what is counted in the head; empty: rows
    std::size_t rowCount() const;
};

struct PaperSize {
    double width = 210, height = 297, margin = 14; // mm
    double innerWidth() const { return width - 2 * margin; }
    double innerHeight() const { return height - 2 * margin; }
};

/// One page: what to paint, in mm from the corner inside the margins.
struct Page {
    std::vector<std::function<void(Canvas&)>> marks;
    std::size_t firstRow = 0, lastRow = 0; // from 1; 0: no row on this page
    QString firstName;                     // of its first row
};

/// Cuts the document into pages; always at least one.
std::vector<Page> compose(const Document&, const PaperSize&);

// Blocks that every sheet uses (blocks.cpp).
Solid gap(double mm);
Solid paragraphBlock(const Paragraph&, double points, double width, bool keepWithNext = false);
Solid headingBlock(const QString& number, const QString& text, const QString& right);
/// The access that the following work needs, between two strong lines.
Solid accessBar(const QString& access, const QString& remark, const QString& right);
Solid cautionBox(const Paragraph&, double width);
/// "OUT = …: nearer." gets its first part up to the colon in bold.
Paragraph boldBeforeColon(const QString&);

} // namespace hammerline::print
