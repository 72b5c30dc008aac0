// The customary zones against what is published: a source may stand beside a zone only if its figure lies inside.
#include "core/judge/judge.h"
#include "core/spec/spec.h"

#include <catch2/catch.hpp>

#include <regex>

using namespace hammerline;

namespace {

double trade(std::int64_t count, DimensionId id) {
    return toTrade(count, row(id).kind);
}

/// "(9.5 to 10.4 mm)", "(3 mm in the bass)": the figures before a unit inside brackets.
std::vector<double> figuresOf(const std::string& source) {
    static const std::regex bracket(R"(\(([^)]*)\))"), figure(R"(([0-9]+(?:\.[0-9]+)?)(?= (?:to|mm|g|%)))");
    std::vector<double> out;
    for (std::sregex_iterator in(source.begin(), source.end(), bracket), end; in != end; ++in) {
        const std::string inside = (*in)[1];
        for (std::sregex_iterator number(inside.begin(), inside.end(), figure); number != end; ++number)
            out.push_back(std::stod((*number)[1]));
    }
    return out;
}

Measured read(double mm) {
    Reading reading;
    reading.count = fromMm(mm).nm;
    Measured measured;
    measured.trials = {reading};
    return measured;
}

} // namespace

TEST_CASE("every source of a zone names a figure, and the figure lies inside the zone") {
    int sources = 0;
    for (const std::string& name : builtInSheets()) {
        const SpecSheet sheet = *builtInSheet(name);
        for (const ZoneRow& zone : sheet.zones) {
            INFO(name << ", " << key(zone.dimension) << " " << zone.place << ": " << zone.source);
            const auto agrees = zone.source.find("agrees with ");
            if (agrees == std::string::npos) {
                CHECK(zone.source.rfind("common practice, no source", 0) == 0);
                continue;
            }
            ++sources;
            const std::vector<double> figures = figuresOf(zone.source);
            REQUIRE_FALSE(figures.empty());
            const bool bound = zone.source.find("less than") != std::string::npos;
            for (const double each : figures) {
                if (zone.first.low) CHECK(each >= trade(*zone.first.low, zone.dimension));
                if (!zone.first.high) continue;
                if (bound)
                    CHECK(trade(*zone.first.high, zone.dimension) < each);
                else
                    CHECK(each <= trade(*zone.first.high, zone.dimension));
            }
        }
    }
    CHECK(sources > 40);
}

TEST_CASE("round published figures are within on an upright, new or old, and no aftertouch is wanted") {
    // Dip 3/8 in, blow 1 7/8 in, let-off 1/8 in, check 5/8 in: the figures of howtotunepianos.com, depianotuner.com and
    // thepianomechanic.blogspot.com 2011/12 that the sheets name; lost motion and heights: common practice, no source.
    using namespace dimension;
    for (const char* name : {"upright", "old-upright"}) {
        const Piano piano = *makePiano(ActionKind::upright);
        const Zones zones(*builtInSheet(name), piano);
        for (int n = 1; n <= piano.notes; ++n) {
            struct Figure {
                DimensionId id;
                double mm;
            };
            for (const auto& [id, mm] : {Figure{keyHeight, 0}, Figure{keyDip, 9.525}, Figure{lostMotion, 0.2},
                                         Figure{blow, 47.625}, Figure{letOff, 3.175}, Figure{checking, 15.875}}) {
                const Cell cell{NoteNumber{n}, id};
                const auto& zone = zones.at(cell);
                if (!fitted(id, cell.note, piano) || !zone) continue;
                INFO(name << ", note " << n << ", " << key(id));
                CHECK(judge(cell, read(mm), zone, 0, Rule::plain).verdict == Verdict::within);
            }
        }
    }
}

TEST_CASE("the high treble begins at a pitch, not so many notes from the end") {
    // G6 is note 71 of 88 keys from A0, and of 85 keys from A0 too; F7 is note 81 of both. Common practice, no source.
    for (const int notes : {88, 85}) {
        const Piano piano = *makePiano(ActionKind::upright, notes);
        CHECK(placeOf(NoteNumber{70}, piano) != 'h');
        CHECK(placeOf(NoteNumber{71}, piano) == 'h');
        CHECK_FALSE(placeNames("x", NoteNumber{80}, piano));
        CHECK(placeNames("x", NoteNumber{81}, piano));
        CHECK(placeNames("h", NoteNumber{81}, piano));
    }
}
