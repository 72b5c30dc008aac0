#include "core/survey/goods.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace hammerline {
namespace {

constexpr std::array<std::string_view, 7> kStrips = {"rest-rail-cloth", "back-rail-cloth", "spring-rail-felt",
                                                     "muffler-felt",    "name-board-felt", "rest-felt",
                                                     "player-tubes"};

struct Companion {
    std::string_view supply, with;
    int each;
    std::string_view unit;
};
/// A side of a bushed hole takes 20 mm of cloth (common practice, no source).
constexpr std::array kCompanions = {
    Companion{"butt-plate", "butt-plate-screw", 1, "piece"},
    Companion{"centre-pin", "centre-bushing", 2, "piece"},
    Companion{"front-bushing", "bushing-cloth", 20, "mm"},
    Companion{"balance-bushing", "bushing-cloth", 20, "mm"},
};

/// Sizes of one piece, mm (common practice, no source): an old piece is measured before anything is ordered.
constexpr std::array kCutPieces = {
    CutPiece{"butt-leather", "butt-leather-sheet", {10, 30}},
    CutPiece{"catcher-leather", "catcher-leather-sheet", {10, 25}},
    CutPiece{"wippen-heel-cloth", "heel-cloth-sheet", {10, 20}},
    CutPiece{"damper-lever-cloth", "lever-cloth-sheet", {8, 15}},
    CutPiece{"back-check", "check-felt-sheet", {11, 20}},
};
constexpr double kEdges = 1.1; // what the edges of a sheet cost (common practice, no source)

int sheetArea(int pieces, const std::array<double, 2>& size) {
    const double cm2 = pieces * size[0] * size[1] / 100 * kEdges;
    return static_cast<int>(std::ceil(cm2 / 10 - 1e-9)) * 10;
}

PartsLine accompanying(const PartsLine& line, std::string_view part, int needed, std::string_view unit) {
    PartsLine out = line;
    out.part = part;
    out.with = line.part;
    out.size.clear();
    out.unit = unit;
    out.needed = needed;
    return out;
}

} // namespace

std::span<const CutPiece> cutPieces() {
    return kCutPieces;
}

std::array<double, 2> cutSize(const CutPiece& piece, const Spares& spares) {
    const auto own = spares.cut.find(std::string(piece.supply));
    return own != spares.cut.end() ? own->second : piece.size;
}

bool isStrip(std::string_view supply) {
    return std::find(kStrips.begin(), kStrips.end(), supply) != kStrips.end();
}

std::vector<PartsLine> companionsOf(const PartsLine& line, const Spares& spares) {
    std::vector<PartsLine> out;
    for (const auto& [supply, with, each, unit] : kCompanions)
        if (line.part == supply) out.push_back(accompanying(line, with, line.needed * each, unit));
    for (const CutPiece& piece : kCutPieces) {
        if (line.part != piece.supply) continue;
        const auto size = cutSize(piece, spares);
        out.push_back(accompanying(line, piece.sheet, sheetArea(line.needed, size), "cm2"));
        out.back().size = fmt::format("{:g} x {:g}", size[0], size[1]);
    }
    return out;
}

} // namespace hammerline
