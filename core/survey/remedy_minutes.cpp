// Minutes by part and remedy. Common practice, no source, but for those that agree with what is published: flanges on
// the bench up to 4 h a set (a shop's page on re-pinning hammer flanges), mildly worn hammers filed in 20 min with a
// strip (list post 2001-May/086723), both rows of key bushings in some 4 h (mmdigest 2005.12.18.10), a stack rebuilt in
// 70 h by a professional and 300 h the first time (mmdigest 2016.03.23.02 and .04; from memory of an earlier reading).
#include "core/survey/remedy_minutes.h"

#include "core/survey/standing.h"

#include <algorithm>
#include <set>

namespace hammerline {
namespace {

using Took = RemedyMinutes;
using Per = RemedyPer;

// clang-format off
constexpr std::array kRemedyMinutes = {
    Took{"action-bolts", "seat", Per::once, {5, 10}, {}, {}},
    Took{"action-bolts", "tighten", Per::once, {5, 10}, {}, {}},
    Took{"action-bolts", "pack-with-card", Per::once, {8, 20}, {}, {}},
    Took{"action-brackets", "glue", Per::piece, {20, 60}, {}, {}},
    Took{"action-brackets", "screw", Per::note, {5, 12}, {}, {}},
    Took{"flange-screws", "tighten", Per::section, {15, 30}, {}, {}},
    Took{"flange-screws", "plug", Per::note, {3, 7}, {}, {}},
    Took{"brass-flange-rail", "clip", Per::note, {10, 25}, {}, {}},
    Took{"brass-flange-rail", "replace-rail-section", Per::note, {}, {3, 8}, {60, 150}, true},
    Took{"butt-plate", "new-plate", Per::note, {6, 15}, {5, 12}, {15, 30}},
    Took{"butt-plate", "new-screw", Per::note, {4, 10}, {}, {}},
    Took{"butt-plate", "tighten", Per::note, {1, 3}, {}, {}},
    Took{"hammer-flange", "ease", Per::note, {3, 7}, {2, 5}, {30, 60}},
    Took{"hammer-flange", "repin", Per::note, {5, 10}, {3, 7}, {30, 60}},
    Took{"hammer-flange", "rebush", Per::note, {9, 20}, {6, 14}, {30, 60}},
    Took{"butt-leather", "releather", Per::note, {10, 22}, {6, 15}, {30, 60}},
    Took{"butt-leather", "refelt", Per::note, {8, 18}, {5, 12}, {30, 60}},
    Took{"butt-leather", "glue", Per::note, {4, 10}, {}, {}},
    Took{"butt-leather", "butt-replaced", Per::note, {14, 35}, {10, 25}, {30, 60}},
    Took{"butt-cushion", "renew", Per::note, {3, 7}, {2, 5}, {30, 60}},
    Took{"butt-spring", "new-cord", Per::note, {5, 12}, {3, 7}, {20, 40}},
    Took{"butt-spring", "new-spring", Per::note, {5, 12}, {3, 8}, {20, 40}},
    Took{"butt-spring", "seat-spring", Per::note, {1, 2}, {}, {}},
    Took{"spring-rail", "refit", Per::section, {15, 35}, {}, {}},
    Took{"spring-rail", "renew-felt", Per::section, {40, 90}, {}, {}},
    Took{"hammer-shank", "glue", Per::note, {5, 12}, {}, {}},
    Took{"hammer-shank", "replace", Per::note, {12, 30}, {9, 25}, {30, 60}},
    Took{"hammer-shank", "burn-in-small-twist", Per::note, {1, 3}, {}, {}},
    Took{"hammer-head", "reshape", Per::note, {1, 2}, {}, {}},
    Took{"hammer-head", "reglue", Per::note, {4, 10}, {}, {}},
    Took{"hammer-head", "replace-section", Per::note, {}, {9, 25}, {60, 180}, true},
    Took{"catcher", "releather", Per::note, {5, 12}, {4, 8}, {10, 20}},
    Took{"catcher", "glue", Per::note, {2, 5}, {}, {}},
    Took{"catcher", "replace", Per::note, {6, 14}, {}, {}},
    Took{"back-check", "refelt-set", Per::note, {}, {3, 6}, {20, 40}},
    Took{"back-check-wire", "glue", Per::note, {3, 7}, {}, {}},
    Took{"back-check-wire", "replace", Per::note, {6, 15}, {}, {}},
    Took{"back-check-wire", "bend-once", Per::note, {0.5, 1.2}, {}, {}},
    Took{"bridle-strap", "replace-set", Per::note, {2, 5}, {1.2, 4}, {15, 30}},
    Took{"bridle-wire", "glue", Per::note, {2, 5}, {}, {}},
    Took{"bridle-wire", "straighten", Per::note, {0.3, 0.8}, {}, {}},
    Took{"bridle-wire", "bend-back", Per::note, {0.2, 0.5}, {}, {}},
    Took{"bridle-wire", "replace", Per::note, {3, 8}, {}, {}},
    Took{"wippen", "glue", Per::note, {6, 12}, {}, {}},
    Took{"wippen", "pin", Per::note, {6, 12}, {3, 7}, {40, 80}},
    Took{"wippen", "replace", Per::note, {12, 25}, {8, 18}, {40, 80}},
    Took{"wippen-heel-cloth", "renew-set", Per::note, {4, 9}, {2, 4}, {40, 80}},
    Took{"sticker", "renew", Per::note, {6, 12}, {5, 10}, {20, 40}},
    Took{"jack", "ease", Per::note, {3, 7}, {}, {}},
    Took{"jack", "repin", Per::note, {7, 15}, {5, 11}, {40, 80}},
    Took{"jack", "glue", Per::note, {5, 12}, {}, {}},
    Took{"jack", "replace", Per::note, {12, 25}, {8, 18}, {40, 80}},
    Took{"jack-spring", "new-spring", Per::note, {6, 12}, {5, 10}, {40, 80}},
    Took{"jack-spring", "clean-seat-hole", Per::note, {2, 4}, {}, {}},
    Took{"jack-stop-felt", "renew", Per::note, {2, 4}, {1.5, 3}, {10, 20}},
    Took{"let-off-rail", "tighten", Per::section, {5, 12}, {}, {}},
    Took{"let-off-rail", "straighten", Per::section, {15, 30}, {}, {}},
    Took{"let-off-screw", "new-screw", Per::note, {6, 15}, {}, {}},
    Took{"let-off-screw", "warm", Per::note, {3, 8}, {}, {}},
    Took{"let-off-screw", "free", Per::note, {3, 8}, {}, {}},
    Took{"let-off-button", "new-felt-set", Per::note, {3, 6}, {2, 4}, {15, 30}},
    Took{"drop-screw", "renew", Per::note, {3, 6}, {2, 4}, {15, 30}},
    Took{"repetition-lever", "regulate", Per::note, {0.5, 1.2}, {}, {}},
    Took{"repetition-lever", "repin", Per::note, {7, 15}, {5, 11}, {60, 120}},
    Took{"repetition-lever", "releather", Per::note, {5, 12}, {4, 9}, {60, 120}},
    Took{"knuckle", "tease", Per::note, {1, 3}, {}, {}},
    Took{"knuckle", "replace", Per::note, {10, 22}, {7, 16}, {60, 120}},
    Took{"rest-rail-cloth", "recover", Per::piece, {60, 120}, {}, {}},
    Took{"rest-rail-cloth", "tighten", Per::piece, {5, 10}, {}, {}},
    Took{"rest-rail-cushions", "new-felt", Per::once, {35, 60}, {}, {}},
    Took{"rail-lift-rod", "adjust", Per::once, {15, 30}, {}, {}},
    Took{"rest-felt", "renew", Per::once, {20, 40}, {}, {}},
    Took{"rest-felt", "set", Per::once, {10, 20}, {}, {}},
    Took{"damper-lever", "repin", Per::note, {6, 12}, {4, 9}, {40, 80}},
    Took{"damper-lever-spring", "new-spring", Per::note, {8, 16}, {5, 12}, {40, 80}},
    Took{"damper-lever-spring", "new-cord", Per::note, {8, 16}, {5, 12}, {40, 80}},
    Took{"spoon", "polish", Per::note, {1, 2}, {0.5, 1}, {20, 40}},
    Took{"spoon", "new-felt", Per::note, {3, 7}, {2, 5}, {20, 40}},
    Took{"spoon", "glue", Per::note, {5, 12}, {}, {}},
    Took{"spoon", "replace", Per::note, {8, 20}, {}, {}},
    Took{"damper-lever-cloth", "renew", Per::note, {3, 7}, {2, 5}, {20, 40}},
    Took{"damper-wire", "bend", Per::note, {2, 5}, {}, {}},
    Took{"damper-wire", "tighten", Per::note, {0.5, 1.5}, {}, {}},
    Took{"damper-felt-wedge", "renew-by-size", Per::note, {4, 9}, {3, 6}, {20, 40}},
    Took{"damper-felt-clip", "renew-by-width", Per::note, {4, 9}, {3, 6}, {20, 40}},
    Took{"damper-felt-flat", "renew-set", Per::note, {4, 8}, {2.5, 5}, {20, 40}},
    Took{"damper-felt-split-wedge", "renew", Per::note, {5, 11}, {4, 8}, {20, 40}},
    Took{"damper-rod", "rebush", Per::once, {40, 80}, {}, {}},
    Took{"damper-rod", "felt", Per::once, {25, 50}, {}, {}},
    Took{"damper-underlever", "ease", Per::note, {4, 9}, {}, {}},
    Took{"damper-underlever", "rebush", Per::note, {8, 18}, {5, 12}, {90, 200}},
    Took{"damper-underlever", "set", Per::note, {2, 5}, {}, {}},
    Took{"overdamper", "set-buttons", Per::note, {1, 3}, {}, {}},
    Took{"overdamper", "straighten", Per::note, {2, 5}, {}, {}},
    Took{"overdamper", "refelt", Per::note, {4, 9}, {3, 7}, {40, 90}},
    Took{"overdamper", "set-rail", Per::once, {20, 50}, {}, {}},
    Took{"muffler-rail", "repair", Per::once, {15, 30}, {}, {}},
    Took{"muffler-rail", "refelt", Per::once, {25, 50}, {}, {}},
    Took{"key", "glue", Per::note, {8, 25}, {}, {}},
    Took{"key", "sister", Per::note, {15, 40}, {}, {}},
    Took{"key", "tighten-lead", Per::note, {2, 6}, {}, {}},
    Took{"key-top", "reglue", Per::note, {4, 12}, {}, {}},
    Took{"key-top", "fit", Per::note, {10, 30}, {6, 20}, {60, 180}},
    Took{"balance-hole", "size", Per::note, {4, 10}, {3, 7}, {20, 40}},
    Took{"balance-hole", "new-button", Per::note, {6, 14}, {4, 9}, {20, 40}},
    Took{"balance-hole", "ease", Per::note, {1, 2}, {}, {}},
    Took{"front-bushing", "rebush-set", Per::note, {}, {1.5, 5}, {30, 90}},
    Took{"front-bushing", "rebush", Per::note, {4, 9}, {}, {}},
    Took{"front-bushing", "ease", Per::note, {0.5, 1}, {}, {}},
    Took{"balance-bushing", "rebush-set", Per::note, {}, {1.5, 5}, {30, 90}},
    Took{"balance-bushing", "rebush", Per::note, {4, 9}, {}, {}},
    Took{"balance-bushing", "ease", Per::note, {0.5, 1}, {}, {}},
    Took{"front-rail-pin", "polish", Per::note, {0.3, 0.6}, {}, {}},
    Took{"front-rail-pin", "straighten", Per::note, {0.5, 1.5}, {}, {}},
    Took{"balance-rail-pin", "polish", Per::note, {0.3, 0.6}, {}, {}},
    Took{"balance-rail-pin", "straighten", Per::note, {0.5, 1.5}, {}, {}},
    Took{"balance-rail-pin", "bush", Per::note, {4, 10}, {}, {}},
    Took{"balance-felt", "new-set", Per::note, {}, {0.3, 0.6}, {20, 40}},
    Took{"balance-felt", "replace", Per::note, {1, 2}, {}, {}},
    Took{"front-felt", "new-set", Per::note, {}, {0.3, 0.6}, {20, 40}},
    Took{"front-felt", "replace", Per::note, {0.8, 1.5}, {}, {}},
    Took{"back-rail-cloth", "new-strip", Per::once, {60, 120}, {}, {}},
    Took{"paper-punchings", "collect", Per::once, {10, 20}, {}, {}},
    Took{"paper-punchings", "under-the-felt", Per::note, {0.5, 1}, {}, {}},
    Took{"key-frame", "shim", Per::note, {8, 18}, {}, {}},
    Took{"key-frame", "screw", Per::once, {10, 25}, {}, {}},
    Took{"key-frame", "bed", Per::once, {20, 60}, {}, {}},
    Took{"key-slip", "clearance-card", Per::once, {10, 20}, {}, {}},
    Took{"key-slip", "felt", Per::once, {30, 60}, {}, {}},
    Took{"capstan", "polish", Per::note, {0.3, 0.6}, {}, {}},
    Took{"capstan", "tighten", Per::note, {3, 7}, {}, {}},
    Took{"capstan", "sleeve", Per::note, {8, 18}, {6, 14}, {20, 40}},
    Took{"rocker", "shim-face", Per::note, {4, 9}, {}, {}},
    Took{"lifter", "replace-set", Per::note, {8, 18}, {5, 10}, {40, 90}},
    Took{"lifter", "replace", Per::note, {8, 18}, {}, {}},
    Took{"trapwork", "bush", Per::once, {10, 25}, {}, {}},
    Took{"trapwork", "felt", Per::once, {5, 12}, {}, {}},
    Took{"trapwork", "adjust", Per::once, {8, 15}, {}, {}},
    Took{"case", "fix-before-any-tilting", Per::once, {30, 90}, {}, {}},
    Took{"player-stack", "service", Per::once, {480, 1800}, {}, {}},
    Took{"player-stack", "recover-pneumatics", Per::once, {4200, 18000}, {}, {}},
    Took{"player-stop-rail", "set-after-clearance", Per::once, {30, 60}, {}, {}},
    Took{"player-tubes", "outdoors-mask-gloves", Per::once, {240, 720}, {}, {}},
    Took{"moth-rust", "treat", Per::once, {60, 120}, {}, {}},
    Took{"moth-rust", "repin-set", Per::pin, {}, {3, 7}, {240, 480}},
};
// clang-format on

struct General {
    std::string_view remedy;
    std::array<double, 2> alone;
};
// What any part may need; a replacement where the part's own renewal has no row.
constexpr std::array kGeneral = {General{"clean", {0.5, 1}},      General{"ease", {2, 4}},
                                 General{"tighten", {0.5, 1.5}},  General{"replace", {5, 12}},
                                 General{"replace-set", {5, 12}}, General{"glue", {5, 12}}};

constexpr std::size_t kSetFrom = 9; // more than eight are worked as a set

const RemedyMinutes* rowFor(const Part& part, std::string_view remedy) {
    for (const RemedyMinutes& row : kRemedyMinutes)
        if (row.part == part.key && row.remedy == remedy) return &row;
    return nullptr;
}

/// The part's own row; replacing it is its renewal, the first remedy for which something is ordered.
const RemedyMinutes* rowOrRenewal(const Part& part, std::string_view remedy) {
    if (const RemedyMinutes* own = rowFor(part, remedy)) return own;
    if (remedy != "replace" && remedy != "replace-set") return nullptr;
    for (const Remedy& each : part.remedies)
        if (!each.supply.empty())
            if (const RemedyMinutes* renewal = rowFor(part, each.key)) return renewal;
    return nullptr;
}

std::size_t piecesOf(const Part& part, std::span<const NoteNumber> notes, const Piano& piano) {
    std::set<std::size_t> pieces;
    for (const NoteNumber note : notes)
        pieces.insert(pieceOf(part, note, piano));
    return pieces.size();
}

std::size_t sectionsIn(std::span<const NoteNumber> notes, const Piano& piano) {
    std::set<std::size_t> sections;
    for (const NoteNumber note : notes)
        sections.insert(sectionIndexOf(note, piano));
    return sections.size();
}

std::size_t countOf(RemedyPer per, const Part& part, std::span<const NoteNumber> notes, const Piano& piano) {
    switch (per) {
    case Per::once:
        return 1;
    case Per::section:
        return sectionsIn(notes, piano);
    case Per::piece:
        return piecesOf(part, notes, piano);
    case Per::pin:
        return static_cast<std::size_t>(centrePinsOf(piano));
    case Per::note:
        break;
    }
    return part.unit == PartUnit::piano ? 1 : notes.size(); // said of the piano: one place
}

} // namespace

int centrePinsOf(const Piano& piano) {
    int dampers = 0;
    for (int i = 1; i <= piano.notes; ++i)
        dampers += hasDamper(NoteNumber{i}, piano);
    return piano.vertical() ? 3 * piano.notes + dampers : 4 * piano.notes + 2 * dampers;
}

std::span<const RemedyMinutes> remedyMinutes() {
    return kRemedyMinutes;
}

double minutesOfRemedy(const Part& part, std::string_view remedy, std::span<const NoteNumber> notes, const Piano& piano,
                       Hand hand, bool wholeSet) {
    if (notes.empty() || remedy == "leave" || remedy == "refer") return 0;
    const auto of = [hand](const std::array<double, 2>& minutes) { return minutes[static_cast<std::size_t>(hand)]; };
    const RemedyMinutes* row = rowOrRenewal(part, remedy);
    if (!row) {
        const auto general = std::ranges::find(kGeneral, remedy, &General::remedy);
        const double each = general == kGeneral.end() ? of(part.minutes) : of(general->alone);
        return each * static_cast<double>(countOf(Per::note, part, notes, piano));
    }
    const auto count = static_cast<double>(countOf(row->per, part, notes, piano));
    const bool noneAlone = of(row->alone) == 0;
    const bool many = wholeSet || notes.size() >= kSetFrom;
    if (of(row->inSet) == 0 || (!many && !noneAlone)) return of(row->alone) * count;
    const double sections = row->onceASection ? static_cast<double>(sectionsIn(notes, piano)) : 1;
    return of(row->once) * sections + of(row->inSet) * count;
}

} // namespace hammerline
