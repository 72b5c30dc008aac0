// Cutting a document into pages (look.md 10): head and foot on every page, rows never split, headings with their rows.
#include "ui/print/document.h"
#include "ui/words/said.h"

#include <QCoreApplication>

#include <algorithm>

namespace hammerline::print {

namespace {

using words::onPaper;

constexpr Type kTitle{19, true}, kSub{10}, kSmall{8.5}, kPageNumber{13, true};
constexpr double kHeadHeight = 21.5, kHeadRight = 44; // mm; the second is for page, date and rows at the right
constexpr std::size_t kRowsWithHeading = 3;

class Cutter {
public:
    Cutter(const Document& document, const PaperSize& size) : m_document(document), m_size(size) {
        m_foot = document.foot.height;
        // what the sheet is of goes on in a second line where one is not enough
        m_more =
            std::max(0.0, paragraphHeight(document.subtitle, kSub, size.innerWidth() - kHeadRight) - lineHeight(kSub));
        for (const auto& part : document.subtitle) { // the pages after it say what fits in one
            m_short.push_back(part);
            if (paragraphHeight(m_short, kSub, size.innerWidth() - kHeadRight) < 1.5 * lineHeight(kSub)) continue;
            m_short.pop_back();
            break;
        }
        if (m_short.empty()) { // a name that fills a line and more
            m_short = document.subtitle;
            m_shortMore = m_more;
        }
        m_out = document.leftOut.empty() ? lineHeight(kSmall)
                                         : paragraphHeight(document.leftOut, kSmall, size.innerWidth() - kNextWidth);
        m_bottom = size.innerHeight() - m_foot - m_out - 4;
        newPage();
    }

    std::vector<Page> cut() {
        const std::vector<Block>& blocks = m_document.blocks;
        for (std::size_t i = 0; i < blocks.size(); ++i) {
            const Solid* solid = std::get_if<Solid>(&blocks[i]);
            const bool begins = solid && solid->ownPage;
            if (m_y > head() && (begins || m_y + together(i) > m_bottom)) newPage();
            std::visit([this](const auto& block) { place(block); }, blocks[i]);
        }
        for (std::size_t i = 0; i < m_pages.size(); ++i)
            frame(i);
        return std::move(m_pages);
    }

private:
    static constexpr double kNextWidth = 46; // at the right of the line above the foot

    void newPage() {
        m_pages.emplace_back();
        m_y = head();
    }
    double head() const { return kHeadHeight + (m_pages.size() > 1 ? m_shortMore : m_more); }

    /// Height that has to stay on one page from this block on.
    double together(std::size_t i) const {
        double height = 0;
        for (; i < m_document.blocks.size(); ++i) {
            if (const Solid* solid = std::get_if<Solid>(&m_document.blocks[i])) {
                height += solid->height;
                if (!solid->keepWithNext) break;
                continue;
            }
            const Table& table = std::get<Table>(m_document.blocks[i]);
            height += columnHeight(table, 0, std::min(kRowsWithHeading, table.rows.size()));
            break;
        }
        return height;
    }

    static double columnHeight(const Table& table, std::size_t first, std::size_t count) {
        double height = table.headHeight;
        for (std::size_t i = first; i < first + count && i < table.rows.size(); ++i)
            height += table.rows[i].height + (newGroup(table, first, i) ? table.groupHeight : 0);
        return height;
    }
    static bool newGroup(const Table& table, std::size_t first, std::size_t i) {
        const QString& group = table.rows[i].group;
        return !group.isEmpty() && (i == first || table.rows[i - 1].group != group);
    }
    /// How many rows from `first` on go into a column of that height.
    static std::size_t rowsIn(const Table& table, std::size_t first, double height) {
        std::size_t count = 0;
        while (first + count < table.rows.size() && columnHeight(table, first, count + 1) <= height + 1e-9)
            ++count;
        return count;
    }
    /// Where each column ends when all have that height.
    static std::vector<std::size_t> ends(const Table& table, std::size_t first, double height) {
        std::vector<std::size_t> list;
        for (int c = 0; c < table.columns; ++c)
            list.push_back(first += rowsIn(table, first, height));
        return list;
    }
    /// The least height that takes all rows left, if the page has it; else all of the page.
    double fittingHeight(const Table& table, std::size_t first) const {
        const double all = m_bottom - m_y;
        if (ends(table, first, all).back() < table.rows.size()) return all;
        const std::size_t left = table.rows.size() - first;
        const auto columns = static_cast<std::size_t>(table.columns);
        for (std::size_t count = (left + columns - 1) / columns; count < left; ++count)
            for (const double extra : {0.0, table.groupHeight})
                if (const double height = columnHeight(table, first, count) + extra;
                    height <= all && ends(table, first, height).back() == table.rows.size())
                    return height;
        return all;
    }

    void place(const Solid& solid) {
        if (solid.paint) {
            const QRectF where(0, m_y, m_size.innerWidth(), solid.height);
            m_pages.back().marks.emplace_back([&solid, where](Canvas& canvas) { solid.paint(canvas, where); });
        } else if (m_y == head()) {
            return; // no empty space at the top of a page
        }
        m_y += solid.height;
    }

    void place(const Table& table) {
        std::size_t first = 0;
        while (first < table.rows.size()) {
            if (first > 0) {
                newPage();
                place(table.again);
            }
            const std::vector<std::size_t> columnEnds = ends(table, first, fittingHeight(table, first));
            // A row higher than a page is placed all the same: nothing is left out.
            const std::size_t last = std::max(columnEnds.back(), first + 1);
            placeColumns(table, first, columnEnds);
            first = last;
        }
    }

    void placeColumns(const Table& table, std::size_t first, const std::vector<std::size_t>& columnEnds) {
        countRows(table, first, std::max(columnEnds.back(), first + 1));
        const double width = (m_size.innerWidth() - table.gap * (table.columns - 1)) / table.columns;
        double lowest = m_y, x = 0;
        for (const std::size_t end : columnEnds) {
            if (end > first) lowest = std::max(lowest, column(table, first, end, x, width));
            first = std::max(first, end);
            x += width + table.gap;
        }
        m_y = lowest;
    }

    double column(const Table& table, std::size_t first, std::size_t end, double x, double width) {
        auto& marks = m_pages.back().marks;
        double y = m_y;
        const QRectF head(x, y, width, table.headHeight);
        if (table.head) marks.emplace_back([&table, head](Canvas& c) { table.head(c, head); });
        y += table.headHeight;
        for (std::size_t i = first; i < end; ++i) {
            const TableRow& row = table.rows[i];
            if (newGroup(table, first, i)) {
                const bool continued = i == first && i > 0 && table.rows[i - 1].group == row.group;
                groupHead(row.group, continued, {x, y, width, table.groupHeight});
                y += table.groupHeight;
            }
            const QRectF place(x, y, width, row.height);
            marks.emplace_back([&row, place](Canvas& c) { row.paint(c, place); });
            y += row.height;
        }
        return y;
    }

    void groupHead(const QString& group, bool continued, const QRectF& r) {
        QString text = continued ? onPaper(QT_TRANSLATE_NOOP("paper", "%1, continued")).arg(group) : group;
        if (textWidth(text, {9, true}) > r.width()) text = group; // a narrow column
        m_pages.back().marks.emplace_back([text, r](Canvas& c) {
            c.textWithin(r.x(), r.bottom() - 1.5, r.width(), text, {9, true});
            c.line(r.x(), r.bottom(), r.right(), r.bottom(), 0.45);
        });
    }

    void countRows(const Table& table, std::size_t first, std::size_t last) {
        Page& page = m_pages.back();
        if (page.firstRow == 0) {
            page.firstRow = m_rows + 1;
            page.firstName = table.rows[first].name;
        }
        m_rows += last - first;
        page.lastRow = m_rows;
    }

    QString rowText(const Page& page) const {
        if (page.firstRow == 0) return {};
        const QString word =
            m_document.rowWord.isEmpty() ? onPaper(QT_TRANSLATE_NOOP("paper", "rows")) : m_document.rowWord;
        return onPaper(QT_TRANSLATE_NOOP("paper", "%1 %2 to %3 of %4"))
            .arg(word)
            .arg(page.firstRow)
            .arg(page.lastRow)
            .arg(m_rows);
    }

    QString nextText(std::size_t i) const {
        if (i + 1 >= m_pages.size()) return {};
        const QString& name = m_pages[i + 1].firstName;
        return name.isEmpty() ? onPaper(QT_TRANSLATE_NOOP("paper", "Continued on page %1")).arg(i + 2)
                              : onPaper(QT_TRANSLATE_NOOP("paper", "Next: %1 on page %2")).arg(name).arg(i + 2);
    }

    /// Head and foot, once all pages are known.
    void frame(std::size_t i) {
        Page& page = m_pages[i];
        const Document* document = &m_document;
        const QString count = rowText(page), next = nextText(i);
        const QString number = QString::number(i + 1), total = QString::number(m_pages.size());
        page.marks.emplace_back([document, width = m_size.innerWidth(), more = i > 0 ? m_shortMore : m_more,
                                 subtitle = i > 0 ? m_short : document->subtitle, count, number, total](Canvas& c) {
            paintHead(c, *document, subtitle, width, more, count, number, total);
        });
        page.marks.emplace_back([document, foot = m_foot, out = m_out, size = m_size, next](Canvas& c) {
            paintFoot(c, *document, size, foot, out, next);
        });
    }

    static void paintHead(Canvas& c, const Document& d, const Paragraph& subtitle, double width, double more,
                          const QString& count, const QString& number, const QString& total) {
        c.textWithin(0, 7, width - kHeadRight, d.title, kTitle);
        const QString of = onPaper(QT_TRANSLATE_NOOP("paper", "of %1")).arg(total);
        double x = width - c.text(width, 6.5, of, kSub, Align::right) - 1.2;
        x -= c.text(x, 6.5, number, kPageNumber, Align::right) + 1.2;
        c.text(x, 6.5, onPaper(QT_TRANSLATE_NOOP("paper", "page")), kSub, Align::right);
        c.text(width, 12.2, d.date, kSub, Align::right);
        c.text(width, 16.8, count, kSmall, Align::right);
        // the base line of its first line stands at 12.2
        c.paragraph(0, 12.2 - lineHeight(kSub) * 0.785, width - kHeadRight, subtitle, kSub);
        c.textWithin(0, 16.8 + more, width - 50, d.specLine, kSmall);
        c.line(0, 18.8 + more, width, 18.8 + more, 0.8);
    }

    static void paintFoot(Canvas& c, const Document& d, const PaperSize& size, double foot, double out,
                          const QString& next) {
        const double rule = size.innerHeight() - foot - 1.2;
        const double width = size.innerWidth();
        if (!d.leftOut.empty()) c.paragraph(0, rule - out - 1, width - kNextWidth, d.leftOut, kSmall);
        c.text(width, rule - 2.4, next, {kSmall.points, true}, Align::right);
        c.line(0, rule, width, rule, 0.45);
        if (d.foot.paint) d.foot.paint(c, {0, rule + 1, width, foot});
    }

    const Document& m_document;
    PaperSize m_size;
    std::vector<Page> m_pages;
    double m_y = 0, m_bottom = 0, m_foot = 0, m_out = 0, m_more = 0, m_shortMore = 0;
    Paragraph m_short;
    std::size_t m_rows = 0;
};

} // namespace

std::size_t Document::rowCount() const {
    std::size_t count = 0;
    for (const Block& block : blocks)
        if (const Table* table = std::get_if<Table>(&block)) count += table->rows.size();
    return count;
}

std::vector<Page> compose(const Document& document, const PaperSize& size) {
    return Cutter(document, size).cut();
}

} // namespace hammerline::print
