// Text to rows of fields: RFC 4180 and the dialects of spreadsheets. The files and what they should give are
// tests/reference/csv_cases (expected.json names the rule of each).
#include "core/intake/intake.h"

#include <catch2/catch.hpp>
#include <nlohmann/json.hpp>
#include <rapidcheck.h>

#include <fstream>
#include <sstream>

using namespace hammerline;
using Json = nlohmann::json;

namespace {

std::string fileBytes(const std::string& name) {
    std::ifstream in(HAMMERLINE_SOURCE_DIR "/tests/reference/csv_cases/" + name, std::ios::binary);
    REQUIRE(in);
    std::ostringstream bytes;
    bytes << in.rdbuf();
    return bytes.str();
}

Table table(std::string_view bytes, const TableOptions& options = {}) {
    const auto read = readTable(bytes, options);
    REQUIRE(read.has_value());
    return *read;
}

Refusal refusal(std::string_view bytes) {
    const auto read = readTable(bytes);
    REQUIRE_FALSE(read.has_value());
    return read.error();
}

std::string hexOf(const std::string& bytes) {
    constexpr std::string_view digits = "0123456789abcdef";
    std::string hex;
    for (const char c : bytes) {
        hex += digits[static_cast<unsigned char>(c) >> 4U];
        hex += digits[static_cast<unsigned char>(c) & 15U];
    }
    return hex;
}

using Rows = std::vector<std::vector<std::string>>;

} // namespace

namespace {

/// What becomes of each file of the reference: its rows as expected.json has them, a refusal with line and column, or
/// rows of our own where our policy differs. The files are made for RFC 4180 (October 2005, section 2) and the dialects
/// of spreadsheets; expected.json names the rule of each.
struct CaseRow {
    std::string_view file;
    enum { asExpected, refused, ours } what = asExpected;
    std::string_view detail = {};
    int line = 0, column = 0;
    Rows rows = {};
    std::string_view why = {};
};

const std::vector<CaseRow>& referenceCases() {
    using enum RefusalCode;
    static const std::vector<CaseRow> rows = {
        {"01_basic_crlf.csv"},
        {"02_no_final_newline.csv"},
        {"03_lf_only.csv"},
        {"04_cr_only.csv"},
        {"05_quoted_comma.csv"},
        {"06_quoted_crlf.csv"},
        {"07_double_quote.csv"},
        {"08_empty_fields.csv"},
        {"09_spaces_kept.csv"},
        {"10_utf8_bom.csv"},
        {"11_bom_quoted_header.csv"},
        {"12_semicolon_decimal_comma.csv"},
        {"13_tab.tsv"},
        {"14_sep_line.csv"},
        {"15_utf16le_bom.csv"},
        {"16_utf16be_bom.csv"},
        {"17_windows1252.csv"},
        {"18_thousands.csv"},
        {"19_thousands_de.csv"},
        {"20_nbsp_group.csv"},
        {"21_ragged.csv",
         CaseRow::ours,
         {},
         0,
         0,
         {{"a", "b", "c"}, {"1", "2"}, {"1", "2", "3", "4"}},
         "the reference proposes to refuse the file; spreadsheets leave trailing empty cells out, and eighty good rows "
         "are not lost for one: the import refuses the one cell that has no column, with its line"},
        {"22_unterminated_quote.csv", CaseRow::refused, "unterminated-quote", 2, 1},
        {"23_quote_in_unquoted.csv",
         CaseRow::asExpected,
         {},
         0,
         0,
         {},
         "the lenient of its two readings: an inch sign in a bare field is what people type"},
        {"24_text_after_quote.csv", CaseRow::refused, "text-after-quote", 2, 4},
        {"25_blank_lines.csv"},
        {"26_formula_injection.csv"},
        {"27_nul_byte.csv", CaseRow::refused, "zero-byte", 2, 3},
        {"28_nan_inf.csv",
         CaseRow::ours,
         {},
         0,
         0,
         {{"note", "v"},
          {"A0", "nan"},
          {"B0", "inf"},
          {"C1", "1e3"},
          {"D1", "0x10"},
          {"E1", "1_0"},
          {"F1", "+5"},
          {"G1", ".5"},
          {"H1", "5."}},
         "the reference speaks of the numbers only: see below"},
        {"29_empty_file.csv", CaseRow::refused, ""},
        {"30_only_header.csv"},
        {"31_duplicate_header.csv",
         CaseRow::ours,
         {},
         0,
         0,
         {{"note", "mm", "mm"}, {"A0", "1", "2"}},
         "error or warning is left open: two columns of one dimension are two writings of one reading, which the "
         "import "
         "asks about where they differ; a column that means nothing is named as left out"},
        {"32_duplicate_note.csv",
         CaseRow::ours,
         {},
         0,
         0,
         {{"note", "mm"}, {"A0", "1"}, {"A0", "2"}, {"Bb0", "3"}, {"A#0", "4"}},
         "error or warning is left open: the same reading twice is one reading, differing ones are asked about"},
    };
    return rows;
}

} // namespace

TEST_CASE("every file of the reference comes out as it says, or as our policy says and why") {
    const auto reference = Json::parse(fileBytes("expected.json"))["cases"];
    REQUIRE(reference.size() == 32);
    REQUIRE(referenceCases().size() == 32);
    for (std::size_t i = 0; i < reference.size(); ++i) {
        const auto& each = reference[i];
        const CaseRow& row = referenceCases()[i];
        INFO(row.file);
        CHECK(each["file"] == row.file);
        const std::string bytes = fileBytes(std::string(row.file));
        CHECK(hexOf(bytes) == each["hex"].get<std::string>()); // the copy is byte-exact
        const auto& expect = each["expect"];
        if (row.what == CaseRow::refused) {
            CHECK(expect.contains("error"));
            const auto found = refusal(bytes);
            CHECK(found.code == (bytes.empty() ? RefusalCode::emptyFile : RefusalCode::badTable));
            CHECK(found.detail == row.detail);
            CHECK(found.place.line == row.line);
            CHECK(found.place.column == row.column);
            continue;
        }
        const Json& rows = expect.is_object() && expect.contains("lenient") ? expect["lenient"] : expect;
        const auto read = table(bytes);
        CHECK(read.rows == (row.what == CaseRow::ours ? row.rows : rows.get<Rows>()));
        const auto& dialect = each["dialect"];
        if (dialect.is_null()) continue;
        if (dialect.contains("delimiter"))
            CHECK(std::string(1, read.dialect.separator) == dialect["delimiter"].get<std::string>());
        if (dialect.contains("decimal"))
            CHECK(std::string(1, read.dialect.decimal) == dialect["decimal"].get<std::string>());
    }
}

TEST_CASE("the numbers of the reference: what is none is refused, what has two meanings is asked about") {
    // 28: not what strtod would take, but what a person types
    const auto numbers = Json::parse(fileBytes("expected.json"))["cases"][27]["expect"]["numeric"];
    const auto rows = table(fileBytes("28_nan_inf.csv")).rows;
    for (std::size_t i = 1; i < rows.size(); ++i) {
        INFO(rows[i][1]);
        const auto read = parseQuantity(rows[i][1], Unit::mm);
        const auto& expected = numbers.at(rows[i][0]);
        REQUIRE(read.has_value() == !expected.is_null());
        if (read) CHECK(toTrade(read->count, Kind::length) == expected.get<double>());
    }
    // 18, 19, 20: nothing on a piano needs a thousands mark, so that no grouping is guessed: refused, or asked about
    // (the reference: 1234.5 and ambiguous)
    CHECK(parseQuantity("1,234.5", Unit::mm).error().code == RefusalCode::twoDecimalMarks);
    CHECK(parseQuantity("1.234,5", Unit::mm).error().code == RefusalCode::twoDecimalMarks);
    CHECK(parseQuantity("12,345", Unit::mm)->askGrouping);
    CHECK(parseQuantity("12.345", Unit::mm)->askGrouping);
    CHECK(parseQuantity("1\u00a0234,5", Unit::mm)->count == 1'234'500'000); // a space cannot be a decimal mark
    CHECK(parseQuantity("\u22120,3", Unit::mm)->count == -300'000);
    CHECK(parseQuantity("-0,3", Unit::mm)->count == -300'000);
}

TEST_CASE("the encoding is found out") {
    CHECK(table(fileBytes("01_basic_crlf.csv")).dialect.encoding == "UTF-8");
    CHECK(table(fileBytes("10_utf8_bom.csv")).dialect.encoding == "UTF-8-BOM");
    CHECK(table(fileBytes("15_utf16le_bom.csv")).dialect.encoding == "UTF-16LE");
    CHECK(table(fileBytes("16_utf16be_bom.csv")).dialect.encoding == "UTF-16BE");
    CHECK(table(fileBytes("17_windows1252.csv")).dialect.encoding == "Windows-1252");
}

TEST_CASE("a malformed file is refused with line and column") {
    CHECK(refusal("\r\n\r\n").code == RefusalCode::emptyFile);
    CHECK(refusal(std::string_view{"\xFF\xFE\x41", 3}).detail == "half-character");
    CHECK(refusal(std::string_view{"\xFF\xFE\x00\xDC", 4}).detail == "half-character");
    CHECK(refusal("a,b\n1,\x81").detail == "encoding"); // no character of Windows-1252
    CHECK(refusal("sep=;\na;b\n\"x").place.line == 3);
}

TEST_CASE("an inch sign inside quotes is read though it was not doubled") {
    const auto read =
        table("\"note\",\"let off\",\"dip\"\n\"1\",\"1/8\"\",\"10\"\n\"2\",\"3\",\"3/8\"\"\n\"3\",\"3\",\"10\"\n");
    CHECK(read.rows.size() == 4);
    CHECK(read.rows[1] == std::vector<std::string>{"1", "1/8\"", "10"});
    CHECK(read.rows[2] == std::vector<std::string>{"2", "3", "3/8\""});
    CHECK(read.lines == std::vector<int>{1, 2, 3, 4});
    // well-formed text keeps its meaning
    CHECK(table("a,b\n\"1/8\"\"\",2\n").rows[1] == std::vector<std::string>{"1/8\"", "2"});
    CHECK(table("a\n\"5\"\",6\"\n").rows[1] == std::vector<std::string>{"5\",6"});
}

TEST_CASE("lines are counted through quoted breaks and blank lines") {
    CHECK(table("a,b\r\n\r\n\"x\r\ny\",1\r\n2,3\r\n").lines == std::vector<int>{1, 3, 5});
    CHECK(table("a,b\r\r1,2\r").lines == std::vector<int>{1, 3});
    CHECK(table("sep=;\r\na;b\r\n1;2").lines == std::vector<int>{2, 3});
}

TEST_CASE("the separator is the one that cuts the records alike") {
    CHECK(table("Taste;H;D\n1;63,65;10,12\n2;76,12;9,27").dialect.separator == ';');
    CHECK(table("16;25,5;50,0").dialect.separator == ';'); // situation 65
    CHECK(table("a\tb\n1,5\t2").dialect.separator == '\t');
    CHECK(table("a|b\n1|2").dialect.separator == '|');
    CHECK(table("note,dip\n1,\"9,8\"").rows[1] == std::vector<std::string>{"1", "9,8"});
    CHECK(table("a\n1\n2").dialect.separator == ',');
    TableOptions options;
    options.separator = ',';
    CHECK(table("a;b,c\n1;2,3", options).rows[0] == std::vector<std::string>{"a;b", "c"});
}

TEST_CASE("the decimal mark is known when a number shows it") {
    CHECK(table("a;b\n1;9,95").dialect.decimal == ',');
    CHECK(table("a;b\n1;9,95").dialect.decimalSeen);
    CHECK(table("a,b\n1,9.5").dialect.decimal == '.');
    CHECK_FALSE(table("a;b\n1;1,250").dialect.decimalSeen); // thousands?
    CHECK_FALSE(table("a;b\n1;9,5\n2;9.5").dialect.decimalSeen);
    CHECK(table("n;v\n1;1.234,5").dialect.decimal == ',');
    TableOptions options;
    options.decimal = ',';
    CHECK(table("a;b\n1;1,250", options).dialect.decimalSeen);
}

TEST_CASE("any table written by the rules of RFC 4180 is read back") {
    CHECK(rc::check([] {
        const auto width = *rc::gen::inRange<std::size_t>(2, 5);
        const auto letters = rc::gen::container<std::string>(rc::gen::elementOf(std::string{"ab1 ,;\t\"\r\n."}));
        const auto row = rc::gen::container<std::vector<std::string>>(width, letters);
        const auto rows = *rc::gen::nonEmpty(rc::gen::container<Rows>(row));
        std::string bytes;
        for (const auto& fields : rows)
            for (std::size_t i = 0; i < width; ++i) {
                bytes += '"';
                for (const char c : fields[i])
                    bytes += c == '"' ? std::string{"\"\""} : std::string(1, c);
                bytes += i + 1 < width ? "\"," : "\"\r\n";
            }
        TableOptions options;
        options.separator = ',';
        const auto read = readTable(bytes, options);
        RC_ASSERT(read.has_value());
        RC_ASSERT(read->rows == rows);
    }));
}

TEST_CASE("a line of separators alone is refused before it is held") {
    const Piano piano = *makePiano(ActionKind::upright, 88, 21);
    const std::string separators(5000, ';');
    for (const std::string& bytes : {"note;let off\n1;3.1\n" + separators + "\n", separators + "\n1;3.1\n"}) {
        const auto intake = readReadings(bytes, piano);
        REQUIRE_FALSE(intake);
        CHECK(intake.error().code == RefusalCode::badTable);
        CHECK(intake.error().detail == "too-many-columns");
    }
}
