// Gauges on paper are as long as they say: the PDF is rendered by another house's reader (pdftoppm of poppler) at 600
// dots an inch and measured there, to 0.1 mm.
#include <catch2/catch.hpp>

#include "program.h"

using namespace hammerline::test;

namespace {

constexpr double kDotsPerMm = 600 / 25.4;
constexpr double kWithin = 0.1; // mm

/// A page in grey.
struct Scan {
    int width = 0, height = 0;
    std::string grey;
    bool dark(int x, int y) const {
        return static_cast<unsigned char>(
                   grey[static_cast<std::size_t>(y) * static_cast<std::size_t>(width) + static_cast<std::size_t>(x)]) <
               128;
    }
};

Scan scanOf(const std::string& pdf, const std::string& stem) {
    const Answer made = runWords({"pdftoppm", "-r", "600", "-gray", "-f", "1", "-l", "1", "-singlefile", pdf, stem});
    REQUIRE(made.status == 0);
    std::istringstream in(readAll(stem + ".pgm"));
    std::string magic;
    int most = 0;
    Scan scan;
    in >> magic >> scan.width >> scan.height >> most;
    REQUIRE(magic == "P5");
    in.get();
    scan.grey.resize(static_cast<std::size_t>(scan.width) * static_cast<std::size_t>(scan.height));
    in.read(scan.grey.data(), static_cast<std::streamsize>(scan.grey.size()));
    return scan;
}

/// Lengths, mm, of the dark runs of a row (or column) that are near `mm`.
std::vector<double> runsNear(const Scan& scan, int at, bool row, double mm, double near) {
    std::vector<double> out;
    int run = 0;
    const int end = row ? scan.width : scan.height;
    for (int i = 0; i <= end; ++i) {
        const bool dark = i < end && (row ? scan.dark(i, at) : scan.dark(at, i));
        if (dark) {
            ++run;
            continue;
        }
        if (std::abs(run / kDotsPerMm - mm) < near) out.push_back(run / kDotsPerMm);
        run = 0;
    }
    return out;
}

/// Bands of rows that hold a run of that length: first and last row of each, in dots.
std::vector<std::pair<int, int>> bandsOf(const Scan& scan, double mm, double near = 0.15) {
    std::vector<std::pair<int, int>> out;
    for (int y = 0; y < scan.height; ++y) {
        if (runsNear(scan, y, true, mm, near).empty()) continue;
        if (!out.empty() && out.back().second == y - 1)
            out.back().second = y;
        else
            out.emplace_back(y, y);
    }
    return out;
}

double outer(const std::pair<int, int>& first, const std::pair<int, int>& last) {
    return (last.second - first.first + 1) / kDotsPerMm;
}

double longest(const Scan& scan, bool row, double mm, double near) {
    double best = 0;
    for (int at = 0; at < (row ? scan.height : scan.width); ++at)
        for (const double each : runsNear(scan, at, row, mm, near))
            best = std::max(best, each);
    return best;
}

struct Piano {
    Folder folder;
    std::string book = folder / "hall.hammerline";
    explicit Piano(const std::string& action) {
        REQUIRE(program({"new", book, "--piano", "Hall", "--action", action}).status == 0);
    }
    Scan gauges(const std::string& paper, const std::string& measured = "100") {
        const Answer made = program({"print", book, "gauges", "--paper", paper, "--measured", measured, "--out",
                                     folder / "gauges.pdf", "--json"});
        INFO(made.err);
        REQUIRE(made.status == 0);
        CHECK(made.json().at("pages") == 1);
        return scanOf(folder / "gauges.pdf", folder / "gauges");
    }
};

} // namespace

TEST_CASE("gauges on A4 and Letter are to scale") {
    const std::string paper = GENERATE("A4", "Letter");
    INFO(paper);
    Piano piano("upright");
    const Scan scan = piano.gauges(paper);
    CHECK(scan.width / kDotsPerMm == Approx(paper == "A4" ? 210 : 215.9).margin(0.2));
    CHECK(longest(scan, true, 100, 5) == Approx(100).margin(kWithin));
    CHECK(longest(scan, false, 100, 5) == Approx(100).margin(kWithin));
    // The aims of the customary upright (resources/spec/upright.json): dip 10.2 and 9.6, blow 46, let-off 3.2 in the
    // bass.
    const auto dip = bandsOf(scan, 64);
    REQUIRE(dip.size() == 2);
    CHECK(outer(dip[0], dip[1]) == Approx(10.2).margin(kWithin));
    const auto sharps = bandsOf(scan, 54);
    REQUIRE(sharps.size() == 2);
    CHECK(outer(sharps[0], sharps[1]) == Approx(9.6).margin(kWithin));
    CHECK(longest(scan, true, 46, 0.5) == Approx(46).margin(kWithin));
    // The step of the sharps (12.3) stands under an arm of 6; half the blow, for the dampers, 21; the check ruler 60.
    CHECK(longest(scan, false, 18.3, 0.3) == Approx(18.3).margin(kWithin));
    CHECK(longest(scan, false, 6, 0.3) == Approx(6).margin(kWithin));
    CHECK(longest(scan, true, 21, 0.3) == Approx(21).margin(kWithin));
    CHECK(longest(scan, true, 60, 0.5) == Approx(60).margin(kWithin));
    // The black strip of the aim, measured down through it, ten millimetres from the left edge of the gauges.
    const auto strip = runsNear(scan, static_cast<int>((14 + 10) * kDotsPerMm), false, 3.2, kWithin);
    CHECK_FALSE(strip.empty());
}

TEST_CASE("a printer that draws too small is answered by what its line measured") {
    Piano piano("grand");
    const Scan scan = piano.gauges("A4", "98.7");
    CHECK(longest(scan, true, 101.3, 0.6) == Approx(100 / 0.987).margin(kWithin));
    CHECK(longest(scan, false, 101.3, 0.6) == Approx(100 / 0.987).margin(kWithin));
}

TEST_CASE("a measured line that no printer makes is refused") {
    Piano piano("upright");
    const Answer refused =
        program({"print", piano.book, "gauges", "--measured", "50", "--out", piano.folder / "g.pdf", "--json"});
    CHECK(refused.status == 2);
    CHECK_FALSE(fs::exists(piano.folder / "g.pdf"));
}
