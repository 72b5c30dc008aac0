// Bytes to rows of fields.
#include "core/intake/dialect.h"
#include "core/intake/encoding.h"
#include "core/intake/intake.h"
#include "core/intake/records.h"
#include "core/units/code_points.h"

namespace hammerline {
namespace {

Outcome<void> readRows(std::string_view text, int firstLine, Table& table) {
    RecordReader reader(text, table.dialect.separator);
    std::vector<std::string> fields;
    std::size_t width = 0, cells = 0;
    while (true) {
        auto more = reader.next(fields, width);
        if (!more) {
            Refusal refusal = more.error();
            refusal.place.line += firstLine - 1;
            return tl::unexpected{std::move(refusal)};
        }
        if (!*more) return {};
        if (width == 0) width = fields.size();
        cells += fields.size();
        if (cells > kMostCells)
            return refuse(RefusalCode::badTable, {}, "too-many-cells", {{}, reader.line() + firstLine - 1, 1, {}});
        table.rows.push_back(fields);
        table.lines.push_back(reader.line() + firstLine - 1);
    }
}

bool namesColumns(const std::vector<std::string>& row, const TableOptions& options) {
    for (const std::string& field : row)
        if (options.columns.contains(field) || headerMeaning(field).use != ColumnUse::Use::ignored) return true;
    return false;
}

} // namespace

Outcome<Table> readTable(std::string_view bytes, const TableOptions& options) {
    const auto decoded = decodeText(bytes);
    if (!decoded) return tl::unexpected{decoded.error()};
    std::string_view text = decoded->view();
    Table table;
    table.dialect.encoding = decoded->encoding;
    int firstLine = 1;
    const auto said = separatorLine(text);
    if (said) {
        text.remove_prefix(said->length);
        firstLine = 2;
    }
    table.dialect.separator = options.separator ? *options.separator : said ? said->separator : findSeparator(text);
    if (auto read = readRows(text, firstLine, table); !read) return tl::unexpected{read.error()};
    if (table.rows.empty()) return refuse(RefusalCode::emptyFile);
    const auto decimal = options.decimal ? options.decimal : findDecimal(table.rows);
    table.dialect.decimal = decimal.value_or('.');
    table.dialect.decimalSeen = decimal.has_value();
    table.dialect.header = namesColumns(table.rows.front(), options);
    return table;
}

} // namespace hammerline
