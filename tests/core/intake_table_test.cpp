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

TEST_CASE("every table of the reference comes out as it says") {
    const auto cases = Json::parse(fileBytes("expected.json"));
    int tables = 0;
    for (const auto& each : cases["cases"]) {
        const std::string name = each["file"];
        INFO(name);
        const std::string bytes = fileBytes(name);
        CHECK(hexOf(bytes) == each["hex"].get<std::string>()); // the copy is byte-exact
        const Json expected = each["expect"].is_object() && each["expect"].contains("lenient")
                                  ? each["expect"]["lenient"]
                                  : each["expect"];
        if (!expected.is_array()) continue;
        ++tables;
        CHECK(table(bytes).rows == expected.get<Rows>());
        const auto& dialect = each["dialect"];
        if (dialect.is_null()) continue;
        if (dialect.contains("delimiter"))
            CHECK(std::string(1, table(bytes).dialect.separator) == dialect["delimiter"].get<std::string>());
        if (dialect.contains("decimal"))
            CHECK(std::string(1, table(bytes).dialect.decimal) == dialect["decimal"].get<std::string>());
    }
    CHECK(tables == 24);
}

TEST_CASE("the encoding is found out") {
    CHECK(table(fileBytes("01_basic_crlf.csv")).dialect.encoding == "UTF-8");
    CHECK(table(fileBytes("10_utf8_bom.csv")).dialect.encoding == "UTF-8-BOM");
    CHECK(table(fileBytes("15_utf16le_bom.csv")).dialect.encoding == "UTF-16LE");
    CHECK(table(fileBytes("16_utf16be_bom.csv")).dialect.encoding == "UTF-16BE");
    CHECK(table(fileBytes("17_windows1252.csv")).dialect.encoding == "Windows-1252");
}

TEST_CASE("a malformed file is refused with line and column") {
    const auto open = refusal(fileBytes("22_unterminated_quote.csv"));
    CHECK(open.code == RefusalCode::badTable);
    CHECK(open.detail == "unterminated-quote");
    CHECK(open.place.line == 2);
    CHECK(open.place.column == 1);
    const auto behind = refusal(fileBytes("24_text_after_quote.csv"));
    CHECK(behind.detail == "text-after-quote");
    CHECK(behind.place.line == 2);
    CHECK(behind.place.column == 4);
    const auto zero = refusal(fileBytes("27_nul_byte.csv"));
    CHECK(zero.detail == "zero-byte");
    CHECK(zero.place.line == 2);
    CHECK(zero.place.column == 3);
    CHECK(refusal(fileBytes("29_empty_file.csv")).code == RefusalCode::emptyFile);
    CHECK(refusal("\r\n\r\n").code == RefusalCode::emptyFile);
    CHECK(refusal(std::string_view{"\xFF\xFE\x41", 3}).detail == "half-character");
    CHECK(refusal(std::string_view{"\xFF\xFE\x00\xDC", 4}).detail == "half-character");
    CHECK(refusal("a,b\n1,\x81").detail == "encoding"); // no character of Windows-1252
    CHECK(refusal("sep=;\na;b\n\"x").place.line == 3);
}

TEST_CASE("rows of uneven length are kept") {
    // the reference proposes to refuse the file; spreadsheets leave trailing empty cells out, and eighty good rows
    // are not lost for one: readReadings refuses the cells that have no column
    CHECK(table(fileBytes("21_ragged.csv")).rows == Rows{{"a", "b", "c"}, {"1", "2"}, {"1", "2", "3", "4"}});
}

TEST_CASE("a column head twice is kept twice") {
    // the reference leaves it open; two columns of one dimension are two writings of one reading (see the readings)
    CHECK(table(fileBytes("31_duplicate_header.csv")).rows.front() == std::vector<std::string>{"note", "mm", "mm"});
    CHECK(table(fileBytes("32_duplicate_note.csv")).rows.size() == 5);
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
