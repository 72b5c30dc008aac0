// Parts 1 to 33 (bench-practice 3; common practice, no source, where trade-facts 5 does not agree).
#include "core/survey/catalogue_text.h"

namespace hammerline::survey {
namespace {

using enum Must;
using enum JobStage;
constexpr auto perSection = PartUnit::section;
constexpr auto perPin = PartUnit::bushing;
constexpr auto aSet = PartUnit::set;

bool brassRail(const Piano& p) {
    return p.butt == Butt::brassRail;
}
bool letOffScrew(const Piano& p) {
    return p.letOff != LetOffScrew::none;
}

// The rows stand as on the page they come from.
// clang-format off
constexpr std::array kActionRows = {
    Row{1, "action-bolts", "UD", "loose>tighten foot-off-its-stud bracket-bent", "seat tighten pack-with-card", set, "",
        "all", perPiano, {10, 20}, false, beforeTilting, "tipping"},
    Row{2, "action-brackets", "UDG", "crack loose-screw>screw wood-rail-warped>refer", "glue screw refer", set, "",
        "all", perPiano, {30, 90}, false, action, "solvents"},
    Row{3, "flange-screws", "UDG", "loose stripped>plug", "tighten plug=", set, "", "B O P M A K S", perSection,
        {15, 30}, false, action},
    Row{4, "brass-flange-rail", "U", "tongue-cracked", "clip= replace-rail-section=", Must::note, "", "B O K", perNote,
        {10, 25}, false, action, "force", brassRail},
    Row{5, "butt-plate", "U", "split-at-the-hole swaybacked loose>tighten screw-stripped>new-screw",
        "new-plate= new-screw=butt-plate-screw tighten", Must::note, "", "B O K", perNote, {6, 15}, false, action,
        "force", brassRail},
    Row{6, "hammer-flange", "UDG", "tight loose>repin click>repin wear>rebush green-pin>repin",
        "ease repin=centre-pin rebush=centre-pin", Must::note, "", "M B O K", perPin, {5, 10}, false, action,
        "solvents"},
    Row{7, "butt-leather", "UD", "dished worn-through glue-off>glue moth", "releather= refelt= glue butt-replaced=butt",
        set, "", "M A K", perNote, {6, 15}, true, action, "dust"},
    Row{8, "butt-cushion", "UD", "hard click-on-return", "renew=", no, "", "M", perNote, {2, 5}, true, action},
    Row{9, "butt-spring", "UD", "loop-broken>new-cord spring-tired>new-spring off-its-slot>seat-spring",
        "new-cord=spring-cord new-spring= seat-spring", Must::note, "", "M B", perNote, {3, 7}, true, action,
        "springs"},
    Row{10, "spring-rail", "UD", "rail-loose spring-off felt-gone>renew-felt", "refit renew-felt=spring-rail-felt", set,
        "", "B", perSection, {40, 90}, false, rails, "springs"},
    Row{11, "hammer-shank", "UDG",
        "crack>replace warp>burn-in-small-twist glue-joint-loose rotated>burn-in-small-twist",
        "glue replace= burn-in-small-twist", Must::note, "", "B O S K", perNote, {8, 20}, false, action, "solvents"},
    Row{12, "hammer-head", "UDG",
        "deep-grooves hard felt-split>reglue wood-shows>replace-section loose-on-shank>reglue moth>replace-section "
        "filed-1 filed-2 filed-3 filed-4 filed-5 filed-6",
        "reshape reglue replace-section=", set, "replace-section loose-on-shank", "B O K felt-left", perNote, {1, 2},
        false, hammers, "dust"},
    Row{13, "catcher", "UD", "leather-bare hard dowel-loose>glue broken>replace", "releather=catcher-leather glue",
        Must::note, "dowel-loose loose broken", "K", perNote, {4, 8}, false, action},
    Row{14, "back-check", "UDG", "hard grooved moth", "refelt-set=", set, "", "K", perNote, {3, 6}, true, action,
        "dust"},
    Row{15, "back-check-wire", "UDG", "loose-in-wippen loose-in-key bent-twice>replace rusty>replace",
        "glue replace= bend-once", Must::note, "loose-in-wippen loose-in-key loose broken", "K", perNote, {4, 10},
        false, action, "force"},
    Row{16, "bridle-strap", "UD", "rotted torn tab-gone length-mixed", "replace-set=", Must::note, "", "strap", aSet,
        {90, 180}, true, action},
    Row{17, "bridle-wire", "UD", "loose bent-into-catcher>straighten broken>replace too-tight>bend-back", "glue straighten bend-back", Must::note,
        "loose broken", "strap", perNote, {1, 3}, false, action},
    Row{18, "wippen", "UDG", "split-at-check split-at-spoon loose-pin>pin off-travel>pin",
        "glue pin=centre-pin replace=", Must::note, "", "M A K S", perNote, {8, 15}, false, action, "solvents"},
    Row{19, "wippen-heel-cloth", "UDG", "crushed-hole moth glue-off", "renew-set=", set, "", "M A K", perNote, {2, 4},
        true, action, "dust"},
    Row{20, "sticker", "U", "loose-joint felt-bottom-gone hinge-cloth", "renew=", Must::note, "", "M", perNote, {5, 10},
        false, action},
    Row{21, "jack", "UDG", "slow tight loose>repin tip-worn>replace tip-chipped>replace glue-joint-off>glue",
        "ease repin=centre-pin glue", Must::note, "", "M O A", perNote, {7, 15}, false, action, "solvents"},
    Row{22, "jack-spring", "UDG", "broken weak out-of-its-seat>clean-seat-hole corroded", "new-spring= clean-seat-hole",
        Must::note, "", "O M", perNote, {5, 10}, false, action, "springs"},
    Row{23, "jack-stop-felt", "UDG", "gone click", "renew=", no, "", "O A", perNote, {2, 4}, false, action},
    Row{24, "let-off-rail", "UDG", "loose bent>straighten", "tighten straighten", set, "", "O P A", perSection,
        {15, 30}, false, action, "force"},
    Row{25, "let-off-screw", "UDG", "seized>warm eye-broken stripped", "new-screw= warm free", Must::note, "", "O",
        perNote, {3, 8}, false, action, "force", letOffScrew},
    Row{26, "let-off-button", "UDG", "packed grooved hard off", "new-felt-set=", set, "", "O A", perNote, {2, 4}, true,
        action},
    Row{27, "drop-screw", "G", "worn loose", "renew=", Must::note, "", "P", perNote, {3, 6}, false, action},
    Row{28, "repetition-lever", "G", "weak strong loose-pin>repin worn-leather>releather",
        "regulate repin=centre-pin releather=repetition-leather", Must::note, "", "P", perNote, {5, 10}, false, action,
        "springs"},
    Row{29, "knuckle", "G", "flat hard moved>replace", "tease replace=", set, "", "O A P", perNote, {4, 10}, false,
        action},
    Row{30, "rest-rail-cloth", "UD", "grooved moth loose-screws>tighten two-pieces", "recover=", set, "", "B",
        perSection, {60, 120}, true, rails, "dust"},
    Row{31, "rest-rail-cushions", "UD", "crushed missing", "new-felt=", set, "", "B M S", perPiano, {35, 60}, true,
        rails},
    Row{32, "rail-lift-rod", "UD", "bent no-clearance squeaks tie-cords", "adjust", no, "", "half-blow B", perPiano,
        {15, 30}, false, pedals},
    Row{33, "rest-felt", "G", "collapsed", "renew= set", no, "", "B", perPiano, {20, 40}, false, rails},
};
// clang-format on

} // namespace

std::span<const Row> actionRows() {
    return kActionRows;
}

} // namespace hammerline::survey
