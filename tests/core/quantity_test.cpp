// Typed quantities (computation 2). Expected values come from the reference tables (exact rationals, each file names
// its source), from situations of practice, or are worked out in the comment.
#include "core/units/quantity.h"

#include <catch2/catch.hpp>
#include <nlohmann/json.hpp>
#include <rapidcheck.h>

#include <cmath>
#include <fstream>
#include <limits>
#include <sstream>

using namespace hammerline;

namespace {

std::ifstream reference(const std::string& name) {
    std::ifstream in(HAMMERLINE_SOURCE_DIR "/tests/reference/" + name);
    REQUIRE(in);
    return in;
}

std::vector<std::vector<std::string>> referenceRows(const std::string& name) {
    auto in = reference(name);
    std::vector<std::vector<std::string>> rows;
    for (std::string line; std::getline(in, line);) {
        if (line.empty() || line[0] == '#' || !(std::isdigit(static_cast<unsigned char>(line[0])) || line[0] == '-'))
            continue;
        std::istringstream fields(line);
        rows.emplace_back();
        for (std::string field; std::getline(fields, field, ',');)
            rows.back().push_back(field);
    }
    REQUIRE_FALSE(rows.empty());
    return rows;
}

/// Whole nanometres of a decimal text in mm, by moving the mark (the tables have at most six decimals).
std::int64_t nmOf(const std::string& mm) {
    const auto mark = mm.find('.');
    std::string digits = mm.substr(0, mark);
    std::string decimals = mark == std::string::npos ? "" : mm.substr(mark + 1);
    REQUIRE(decimals.size() <= 6);
    decimals.resize(6, '0');
    return std::stoll(digits + decimals);
}

TypedQuantity typed(std::string_view text, Unit bare = Unit::mm) {
    INFO(text);
    const auto quantity = parseQuantity(text, bare);
    REQUIRE(quantity.has_value());
    return *quantity;
}

std::int64_t count(std::string_view text, Unit bare = Unit::mm) {
    return typed(text, bare).count;
}

RefusalCode refusedWith(std::string_view text, Unit bare = Unit::mm) {
    INFO(text);
    const auto quantity = parseQuantity(text, bare);
    REQUIRE_FALSE(quantity.has_value());
    CHECK(quantity.error().offending == text);
    return quantity.error().code;
}

} // namespace

TEST_CASE("every inch text of the reference is read or refused as it says") {
    // tests/reference/inch_parse_cases.json, exact rational arithmetic
    const auto cases = nlohmann::json::parse(reference("inch_parse_cases.json"));
    int read = 0;
    for (const auto& each : cases["parse"]) {
        const std::string text = each["text"];
        INFO(text);
        if (text == "0.5 mm") { // metric, so without an inch in the table
            CHECK(count(text, Unit::inch) == 500'000);
        } else if (each["mm"].is_null()) {
            CHECK_FALSE(parseQuantity(text, Unit::mm).has_value());
        } else {
            ++read;
            CHECK(static_cast<double>(count(text)) == Approx(each["mm"].get<double>() * 1e6).epsilon(1e-15));
        }
    }
    CHECK(read == 16);
}

TEST_CASE("0 to 128 sixty-fourths of an inch are exact, in and out") {
    // tests/reference/inch_fractions_64.csv: 25.4 n/64 mm, international inch of 1959
    for (const auto& row : referenceRows("inch_fractions_64.csv")) {
        const std::int64_t nm = nmOf(row.at(3));
        INFO(row.at(1));
        CHECK(count(row.at(1) + "\"") == nm);
        CHECK(count(row.at(2), Unit::inch) == nm);
        CHECK(count(row.at(3)) == nm);
        CHECK(formatCount(nm, {Unit::inch, 0, 64}) == row.at(1));
        CHECK(nmOf(exactText(nm, Kind::length)) == nm);
    }
}

TEST_CASE("a length is shown as the nearest sixty-fourth, reduced") {
    const auto cases = nlohmann::json::parse(reference("inch_parse_cases.json"));
    for (const auto& each : cases["nearest_64th"])
        CHECK(formatCount(nmOf(each["mm"].get<std::string>()), {Unit::inch, 0, 64}) == each["text"].get<std::string>());
    CHECK(formatCount(-1'587'500, {Unit::inch, 0, 64}) == "-1/16");
    CHECK(formatCount(-26'987'500, {Unit::inch, 0, 64}) == "-1 1/16");
    CHECK(formatCount(1'587'500, {Unit::inch, 0, 64, 1, true}) == "+1/16");
    CHECK(formatCount(-100'000, {Unit::inch, 0, 64}) == "0"); // under half a sixty-fourth: no minus sign
}

TEST_CASE("values are rounded once, half away from zero, from the decimal and not from a double") {
    // tests/reference/rounding_cases.csv, column half_away: rule B of ISO 80000-1:2009 annex B
    for (const auto& row : referenceRows("rounding_cases.csv")) {
        INFO(row.at(0) << " to " << row.at(1));
        CHECK(formatCount(nmOf(row.at(0)) * (row.at(0)[0] == '-' && nmOf(row.at(0)) > 0 ? -1 : 1),
                          {Unit::mm, std::stoi(row.at(1))}) == row.at(3));
    }
}

TEST_CASE("a value is shown by the steps that the hand can read") {
    const Shown halves{Unit::mm, 1, 0, 5};
    CHECK(formatCount(46'240'000, halves) == "46.0");
    CHECK(formatCount(46'250'000, halves) == "46.5"); // a quarter is half a step: away from zero
    CHECK(formatCount(-250'000, halves) == "-0.5");
    CHECK(formatCount(-249'999, halves) == "0.0");
    CHECK(formatCount(1'016'000, {Unit::thou, 0}) == "40");
    CHECK(formatCount(1'016'000, {Unit::inch, 3}) == "0.040");
    CHECK(formatCount(52'000, {Unit::gram, 0}) == "52");
    CHECK(formatCount(48'500, {Unit::percent, 0}) == "49");
    CHECK(formatCount(28'350, {Unit::ounce, 3}) == "1.000"); // 28.349523125 g
    CHECK(formatCount(300'000, {Unit::mm, 1, 0, 1, true}) == "+0.3");
    CHECK(formatCount(0, {Unit::mm, 1, 0, 1, true}) == "0.0");
}

TEST_CASE("the exact text of a count has no trailing zeros and loses nothing") {
    CHECK(exactText(10'318'750, Kind::length) == "10.31875");
    CHECK(exactText(46'000'000, Kind::length) == "46");
    CHECK(exactText(-1, Kind::length) == "-0.000001");
    CHECK(exactText(0, Kind::mass) == "0");
    CHECK(exactText(52'500, Kind::mass) == "52.5");
}

TEST_CASE("a mixed number is read whole, in every writing") { // situation 63
    for (const auto* text : {"1 7/8", "1-7/8", "1⅞", "1 ⅞", "1 7/8 in", "1\u00a07/8"})
        CHECK(count(text) == 47'625'000);
    CHECK(count("⅞") == 22'225'000);
    CHECK(count("7/16\"") == 11'112'500);
    CHECK(count("1 13/16 in") == 46'037'500);
    CHECK(count("10 3/8 IN") == 263'525'000); // 10.375 x 25.4 = 263.525
    CHECK(count("4⅑") == 104'422'222);        // 37/9 x 25.4 = 104.42222.. mm: rounded to the nanometre
    CHECK(count("2 1/3") == 59'266'667);      // 7/3 x 25.4 = 59.26666..
    CHECK(count("½") == 12'700'000);
    CHECK(typed("1-7/8").count > 0);
    CHECK(typed("1 7/8").fraction);
}

TEST_CASE("a slash slip stays a number of its own, for the dimension to ask about") { // situation 61
    CHECK(count("1/6") == 4'233'333);
    CHECK(count("0.30\"") == 7'620'000);
    CHECK(count(".060\"") == 1'524'000);
}

TEST_CASE("every unit holds where it is typed") { // situations 59, 62
    CHECK(count("6 cm") == 60'000'000);
    CHECK(typed("6 cm").unit == Unit::cm);
    CHECK(count(".040", Unit::inch) == 1'016'000);
    CHECK(count("40 thou") == 1'016'000);
    CHECK(count("40 mil") == 1'016'000);
    CHECK(count("0.040in") == 1'016'000);
    CHECK(count("1,0 mm", Unit::inch) == 1'000'000);
    CHECK(count("1.5 Zoll") == 38'100'000);
    CHECK(count("1.5″") == 38'100'000);
    CHECK(count("1.5''") == 38'100'000);
    CHECK(count("52", Unit::gram) == 52'000);
    CHECK(count("52 g", Unit::gram) == 52'000);
    CHECK(count("1 oz", Unit::gram) == 28'350); // 28.349523125 g
    CHECK(count("48 %", Unit::percent) == 48'000);
    CHECK_FALSE(typed("46").unitTyped);
    CHECK(typed("46 mm").unitTyped);
}

TEST_CASE("what the bench types is read as it is meant") { // bench-practice S13
    CHECK(count("46") == 46'000'000);
    CHECK(count("46,5") == 46'500'000);
    CHECK(count("1 13/16") == 46'037'500);
    CHECK(count(".040in") == 1'016'000);
    CHECK(typed("gap .6").count == -600'000);
    CHECK(typed("gap .6").gap);
    CHECK(typed("<1.2").relation == Relation::less);
    CHECK(count("<1.2") == 1'200'000);
    CHECK(typed("> 1.2 mm").relation == Relation::more);
    const auto pair = typed("0.8..1.2");
    CHECK(pair.relation == Relation::between);
    CHECK(pair.count == 800'000);
    CHECK(pair.upper == 1'200'000);
    CHECK(typed("1 13/16 mm").askUnit);
    CHECK(count("3/8") == 9'525'000);
}

TEST_CASE("a unit behind one end of a pair holds for both") {
    for (const auto* text : {"1/16..1/8 in", "1/16 in..1/8", "1/16..1/8", "1/16 in .. 1/8 in"}) {
        const auto pair = typed(text);
        CHECK(pair.count == 1'587'500);
        CHECK(pair.upper == 3'175'000);
    }
    CHECK(typed("0.8 … 1.2").upper == 1'200'000);
    CHECK(typed("0.8mm..1.2", Unit::inch).upper == 1'200'000);
}

TEST_CASE("a gap turns its inequality and its pair round") {
    const auto less = typed("gap < 0.3"); // less than 0.3 low: above -0.3
    CHECK(less.relation == Relation::more);
    CHECK(less.count == -300'000);
    const auto pair = typed("gap 0.3..0.5");
    CHECK(pair.count == -500'000);
    CHECK(pair.upper == -300'000);
    CHECK(typed("gap -0.6").count == 600'000); // for the dimension to ask about
}

TEST_CASE("one mark before three digits may be thousands, and says so") { // situation 65
    CHECK(typed("1,250").askGrouping);
    CHECK(typed("1.250").askGrouping);
    CHECK(typed("12,345").askGrouping);
    CHECK(count("1,250") == 1'250'000);
    for (const auto* text : {"0,250", ".250", "46,5", "46.25", "1.2500", "1234,567", "250"})
        CHECK_FALSE(typed(text).askGrouping);
}

TEST_CASE("signs, look-alikes and spaces of keyboards and spreadsheets") {
    CHECK(count("-0.3") == -300'000);
    CHECK(count("\u22120,3") == -300'000); // minus sign
    CHECK(count("\u20130,3") == -300'000); // en dash of an autocorrection
    CHECK(count("+5") == 5'000'000);
    CHECK(count(" 46 ") == 46'000'000);
    CHECK(count("\u00a046\u00a0mm") == 46'000'000);
    CHECK(count("1\u00a0234,5") == 1'234'500'000);
    CHECK(count("1\u202f234,5") == 1'234'500'000);
    CHECK(count("1\u00a0101/128") == 45'442'188); // no group: 229/128 x 25.4 = 45.4421875
    CHECK(count("5.") == 5'000'000);
    CHECK(count(".5") == 500'000);
    CHECK(count("1e3") == 1'000'000'000);
    CHECK(count("4,0E-2", Unit::inch) == 1'016'000);
}

TEST_CASE("what is not a number is refused with its reason") {
    for (const auto* text :
         {"",      " ",      "abc",      "nan",  "inf",    "0x10",       "1_0", "1/",    "/8",   "1 2 3/4",
          "1 / 8", "1⁄ 8",   "1.5/8",    "1½/2", "--5",    "5-",         "1..", "..5",   ".",    ",",
          "mm",    "46 m",   "46 mm mm", "5 e",  "1 13/6", "½½",         "<",   "<>1",   "gap",  "1..2..3",
          "46..5", ".8...9", "46 mm 3",  "=1+1", "8-Mar",  "2026-03-08", "1'",  "(0.3)", "\xff", "46\xc3"})
        CHECK(refusedWith(text) == RefusalCode::unreadable);
    CHECK(refusedWith("46.5.2") == RefusalCode::twoDecimalMarks);
    CHECK(refusedWith("46,5.2") == RefusalCode::twoDecimalMarks);
    CHECK(refusedWith("1,234.5") == RefusalCode::twoDecimalMarks); // nothing in an action reaches a thousand
    CHECK(refusedWith("1/0") == RefusalCode::zeroDenominator);
    CHECK(refusedWith("1 1/0 in") == RefusalCode::zeroDenominator);
    CHECK(refusedWith("52 g") == RefusalCode::wrongUnit);
    CHECK(refusedWith("46 mm", Unit::gram) == RefusalCode::wrongUnit);
    CHECK(refusedWith("48 %") == RefusalCode::wrongUnit);
    CHECK(refusedWith("gap 5", Unit::gram) == RefusalCode::wrongUnit);
    CHECK(refusedWith("99999999999999") == RefusalCode::outOfRange); // 1e14 mm = 1e20 nm
    CHECK(refusedWith("1234567890123456789") == RefusalCode::outOfRange);
    CHECK(refusedWith("1e99") == RefusalCode::outOfRange);
}

TEST_CASE("a text too long to be a number is refused without being kept") {
    const auto quantity = parseQuantity(std::string(100'000, '1'), Unit::mm);
    REQUIRE_FALSE(quantity.has_value());
    CHECK(quantity.error().offending.size() <= 200);
}

TEST_CASE("any mixed number is its exact inches to half a nanometre") {
    CHECK(rc::check([] {
        const auto whole = *rc::gen::inRange<std::int64_t>(0, 100);
        const auto below = *rc::gen::inRange<std::int64_t>(2, 200);
        const auto above = *rc::gen::inRange<std::int64_t>(1, below);
        const auto text = std::to_string(whole) + " " + std::to_string(above) + "/" + std::to_string(below);
        const auto quantity = parseQuantity(text, Unit::mm);
        RC_ASSERT(quantity.has_value());
        // |count - exact| <= 1/2, multiplied out: in whole numbers, apart from the parser's way of rounding
        const std::int64_t exact = (whole * below + above) * kNmPerInch;
        RC_ASSERT(2 * std::abs(quantity->count * below - exact) <= below);
    }));
}

TEST_CASE("any count comes back from its exact text") {
    CHECK(rc::check([](std::int64_t count) {
        if (count == std::numeric_limits<std::int64_t>::min()) return;
        const auto length = parseQuantity(exactText(count, Kind::length), Unit::mm);
        if (exactText(count, Kind::length).size() < 18) RC_ASSERT(length && length->count == count);
        const auto mass = parseQuantity(exactText(count / 1000, Kind::mass), Unit::gram);
        if (exactText(count / 1000, Kind::mass).size() < 18) RC_ASSERT(mass && mass->count == count / 1000);
    }));
}

TEST_CASE("a shown value is never farther from its count than half its last step") {
    CHECK(rc::check([] {
        const auto count = *rc::gen::inRange<std::int64_t>(-100'000'000, 100'000'001);
        const auto decimals = *rc::gen::inRange(0, 7);
        const auto text = formatCount(count, {Unit::mm, decimals});
        const auto back = parseQuantity(text, Unit::mm);
        RC_ASSERT(back.has_value());
        RC_ASSERT(static_cast<double>(std::abs(back->count - count)) <= 0.5 * std::pow(10.0, 6 - decimals));
        RC_ASSERT(text.find(',') == std::string::npos);
        RC_ASSERT(!(back->count == 0 && text[0] == '-'));
    }));
}

TEST_CASE("trade doubles go to the smallest unit and back") {
    CHECK(fromTrade(46.0375, Kind::length) == 46'037'500);
    CHECK(fromTrade(-0.0000005, Kind::length) == -1);
    CHECK(toTrade(46'037'500, Kind::length) == Approx(46.0375));
    CHECK(fromTrade(52.5, Kind::mass) == 52'500);
    CHECK(fromTrade(1e300, Kind::length) > 9'000'000'000'000'000'000);
}

TEST_CASE("unit keys are read back") {
    for (const auto unit : {Unit::mm, Unit::cm, Unit::inch, Unit::thou, Unit::gram, Unit::ounce, Unit::percent})
        CHECK(parseUnit(key(unit)) == unit);
    CHECK(parseUnit(" INCHES ") == Unit::inch);
    CHECK_FALSE(parseUnit("furlong").has_value());
    CHECK(kindOf(Unit::thou) == Kind::length);
}
