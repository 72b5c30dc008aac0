// How old parts are measured to order new ones. Numbers of centre pins: a repairer's published table, from memory
// (18 = 1.17 mm, 19 = 1.22, 20 = .050 in = 1.27, 20 1/2 = 1.30, 21 = 1.32, 22 = 1.37, 23 = 1.42, 24 = 1.47).
#include "core/survey/job.h"
#include "core/survey/sizes.h"
#include "tests/core/survey_bench.h"

using namespace hammerline;
using namespace hammerline::survey_bench;

namespace {

std::vector<Finding> upright(std::initializer_list<const char*> found, const Piano& piano) {
    std::vector<Finding> out;
    for (const char* each : found) {
        const auto findings = parseFindings(each, piano);
        REQUIRE(findings);
        out.insert(out.end(), findings->begin(), findings->end());
    }
    return out;
}

Spares measured(std::initializer_list<std::pair<const char*, const char*>> sizes) {
    Spares spares;
    for (const auto& [name, value] : sizes)
        spares.sizes.push_back(*parseSize(name, value));
    return spares;
}

} // namespace

TEST_CASE("the trade's numbers of centre pins and their diameters") {
    for (const auto& [number, mm] : {std::pair{18.0, 1.17},
                                     {19.0, 1.22},
                                     {20.0, 1.27},
                                     {20.5, 1.30},
                                     {21.0, 1.32},
                                     {22.0, 1.37},
                                     {23.0, 1.42},
                                     {24.0, 1.47}}) {
        CHECK(pinNumber(mm) == number);
        CHECK(pinDiameter(number) == Approx(mm).margin(0.006));
    }
}

TEST_CASE("a size is typed in mm, in inches with their sign, as a number or a word") {
    CHECK(parseSize("centre-pin.diameter", "1,27")->value == "1.27");
    CHECK(parseSize("centre-pin.diameter", "0.050in")->value == "1.27");
    CHECK(parseSize("centre-pin.number", "20 1/2")->value == "20.5");
    CHECK(parseSize("bridle-strap.kind", "cork")->value == "cork");
    const auto some = parseSize("damper-felt-clip.width@1-12", "11");
    CHECK(some->notes == NoteRange{1, 12});
    CHECK(sizeName(*some) == "damper-felt-clip.width@1-12");
    CHECK(parseSize("no-such.width", "1").error().code == RefusalCode::unknownPart);
    for (const char* name : {"centre-pin", "centre-pin.colour", "centre-pin.diameter@0-3", "centre-pin.diameter@9-3"})
        CHECK(parseSize(name, "1.2").error().code == RefusalCode::usage);
    for (const char* value : {"thick", "-1", "9999 m", "1.2.3"})
        CHECK(parseSize("centre-pin.diameter", value).error().code == RefusalCode::usage);
}

TEST_CASE("a figure outside the customary range is asked about, one without a range never") {
    CHECK(sizeIsOdd(*parseSize("centre-pin.diameter", "12.7")));
    CHECK_FALSE(sizeIsOdd(*parseSize("centre-pin.diameter", "1.27")));
    CHECK(sizeIsOdd(*parseSize("bridle-strap.length", "60")));
    CHECK_FALSE(sizeIsOdd(*parseSize("hammer-head.bore", "60")));
    CHECK_FALSE(sizeIsOdd(*parseSize("front-felt.outside", "7/8 in"))); // 22.2 mm, a published size
}

TEST_CASE("one line for each size, and what is not measured cannot be ordered") {
    const Piano piano = pianoOf(ActionKind::upright);
    const auto findings = upright({"1-12 damper-felt-clip hard renew-by-width", "40,41 jack-spring broken"}, piano);
    const auto plain = partsList(findings, piano);
    REQUIRE(plain.size() == 2);
    CHECK(plain[0].bySize);
    CHECK(plain[0].measured.empty());
    CHECK(whyNotOrdered("jack-spring", plain) == "size");
    CHECK(whyNotOrdered("bridle-strap", plain) == "unknown");
    const auto sized = partsList(findings, piano,
                                 measured({{"damper-felt-clip.depth", "9.5"},
                                           {"damper-felt-clip.width@1-4", "9"},
                                           {"damper-felt-clip.width@5-12", "11"},
                                           {"jack-spring.length", "17"}}));
    std::map<std::string, int> widths;
    int whole = 0;
    for (const PartsLine& line : sized)
        if (line.part == "damper-felt-clip") {
            widths[line.measured.at("width")] = line.needed;
            CHECK(line.measured.at("depth") == "9.5");
            CHECK(line.quantity == line.needed + line.spare);
            whole += line.needed;
        }
    CHECK(widths == std::map<std::string, int>{{"9", 4}, {"11", 8}});
    CHECK(whole == plain[1].needed + plain[0].needed - 2);
    CHECK(whyNotOrdered("jack-spring", sized).empty());
    CHECK(whyNotOrdered("damper-felt-clip", sized).empty());
}

TEST_CASE("sizes and orders are settings of the job") {
    const auto term = parseTerm("size.centre-pin.diameter=0.050in");
    REQUIRE(term);
    CHECK(term->first == "size.centre-pin.diameter");
    CHECK(term->second == "1.27");
    CHECK(parseTerm("ordered.centre-pin=yes"));
    CHECK(parseTerm("ordered.no-such=yes").error().code == RefusalCode::unknownPart);
    const JobTerms terms = jobTerms({{"size.centre-pin.diameter", "1.27"}, {"ordered.centre-pin", "yes"}});
    CHECK(terms.spares.sizes.size() == 1);
    CHECK(terms.ordered.contains("centre-pin"));
}

TEST_CASE("every supply that has sizes can be ordered on some piano") {
    std::set<std::string_view> supplies{"centre-bushing", "butt-plate-screw", "bushing-cloth"};
    for (const Part& part : parts())
        for (const Remedy& remedy : part.remedies)
            if (!remedy.supply.empty()) supplies.insert(remedy.supply);
    for (const SizeRow& row : sizeRows()) {
        INFO(row.supply);
        CHECK(supplies.contains(row.supply));
        CHECK_FALSE(row.fields.empty());
    }
}
