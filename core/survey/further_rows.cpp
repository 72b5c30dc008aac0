// Parts 34 to 70 (bench-practice 3; common practice, no source, where trade-facts 5 does not agree).
#include "core/survey/catalogue_text.h"

namespace hammerline::survey {
namespace {

using enum Must;
using enum JobStage;

bool underdamper(const Piano& p) {
    return p.damping == Damping::underdamper;
}
bool overdamper(const Piano& p) {
    return p.damping == Damping::overdamper;
}
bool plainCapstan(const Piano& p) {
    return p.capstan == Capstan::holed || p.capstan == Capstan::square || p.capstan == Capstan::dowel;
}
bool rockerOrNail(const Piano& p) {
    return p.capstan == Capstan::rocker || p.capstan == Capstan::fixed;
}
bool hasStack(const Piano& p) {
    return p.hasPlayer();
}

// The rows stand as on the page they come from.
// clang-format off
constexpr std::array kFurtherRows = {
    Row{34, "damper-lever", "UDO", "loose slow sticking-at-rest", "repin=centre-pin", Must::note, "", "S", perNote,
        {5, 10}, false, dampers, "solvents", nullptr, true},
    Row{35, "damper-lever-spring", "U", "broken weak over-strong wrong-length cord-broken>new-cord",
        "new-spring= new-cord=spring-cord", Must::note, "", "S down-weight", perNote, {8, 15}, false, dampers,
        "springs", underdamper, true},
    Row{36, "spoon", "UD", "rusty cut-a-groove>new-felt loose-in-wippen>glue broken>replace",
        "polish new-felt=damper-lever-cloth glue", Must::note, "loose-in-wippen loose broken", "S", perNote, {5, 12},
        false, dampers, "force", underdamper, true},
    Row{37, "damper-lever-cloth", "UD", "grooved gone", "renew=", set, "", "S", perNote, {2, 5}, true, dampers, "",
        underdamper, true},
    Row{38, "damper-wire", "UDGO", "bent head-twisted loose-screw-in-head>tighten", "bend tighten", no, "", "S",
        perNote, {2, 5}, false, dampers, "force", nullptr, true},
    Row{39, "damper-felt-wedge", "UDG", "hard off-one-side not-between-strings moth", "renew-by-size=", no, "", "",
        perNote, {3, 6}, true, dampers, "dust", nullptr, true},
    Row{40, "damper-felt-clip", "UDG", "hard split", "renew-by-width=", no, "", "", perNote, {3, 6}, true, dampers,
        "dust", nullptr, true},
    Row{41, "damper-felt-flat", "UDG", "hard bevelled off", "renew-set=", no, "", "", perNote, {3, 6}, true, dampers,
        "dust", nullptr, true},
    Row{42, "damper-felt-split-wedge", "UDG", "hard off-one-side not-between-strings moth", "renew=", no, "", "",
        perNote, {4, 8}, true, dampers, "dust", nullptr, true},
    Row{43, "damper-rod", "UD", "slop felt-gone>felt one-end-low", "rebush= felt=", set, "", "S damper-rise", perPiano,
        {40, 80}, false, dampers, "", underdamper},
    Row{44, "damper-underlever", "G", "loose>rebush sticking felt-packed>rebush", "ease rebush=centre-pin set",
        Must::note, "", "S", perNote, {5, 10}, false, dampers, "solvents", nullptr, true},
    Row{45, "overdamper", "UD", "buttons-turned wires-bent>straighten felt-hard>refelt damper-rail-off>set-rail",
        "set-buttons straighten refelt=overdamper-felt set-rail", no, "", "S", perNote, {3, 8}, false, dampers, "",
        overdamper, true},
    Row{46, "muffler-rail", "UD", "felt-moth>refelt spring-lost rubs-hammers", "repair refelt=muffler-felt", no, "",
        "B", perPiano, {20, 40}, false, pedals, "dust"},
    Row{47, "key", "UDG",
        "warped>refer cracked-at-pin-hole cracked-at-capstan split-at-mortise lead-loose>tighten-lead",
        "glue sister tighten-lead", Must::note, "", "H D M", perNote, {6, 20}, false, keys, "lead"},
    Row{48, "key-top", "UDG", "loose chipped>fit sharp-worn>fit", "reglue fit=", no, "", "H", perNote, {3, 10}, false,
        keys, "ivory"},
    Row{49, "balance-hole", "UDG", "loose split-button>new-button tight-hole>ease", "size new-button=key-button ease",
        Must::note, "", "H D", perNote, {4, 8}, false, keys},
    Row{50, "front-bushing", "UDG", "loose hard moth rattles tight>ease", "rebush-set= rebush= ease", set,
        "over-a-tenth", "D", perNote, {2, 4}, true, keys, "dust"},
    Row{51, "balance-bushing", "UDG", "loose hard moth rattles tight>ease", "rebush-set= rebush= ease", set, "", "H D",
        perNote, {2, 4}, true, keys, "dust"},
    Row{52, "front-rail-pin", "UDG", "rusty leaning>straighten turned>straighten rough", "polish straighten",
        Must::note, "leaning", "D", perNote, {1, 3}, false, keyFrame},
    Row{53, "balance-rail-pin", "UDG", "rusty bent>straighten loose-in-rail>bush", "polish straighten bush", Must::note,
        "", "H D", perNote, {1, 4}, false, keyFrame},
    Row{54, "balance-felt", "UDG", "crushed moth cut missing", "new-set= replace=", set, "", "H D M A", perNote, {1, 2},
        true, keyFrame, "dust"},
    Row{55, "front-felt", "UDG", "hard thin missing moth", "new-set= replace=", set, "", "D A K", perNote, {1, 2}, true,
        keyFrame, "dust"},
    Row{56, "back-rail-cloth", "UDG", "putty moth packed cut", "new-strip=", set, "", "H D M A", perPiano, {60, 120},
        true, keyFrame, "dust"},
    Row{57, "paper-punchings", "UDG", "lost mixed on-top-of-felt>under-the-felt", "collect under-the-felt", no, "",
        "H D", perNote, {1, 2}, false, keys},
    Row{58, "key-frame", "UDG", "sunk split>refer twisted loose-screw>screw glue-joint>refer", "shim screw bed", set,
        "", "H D M A", perPiano, {60, 150}, false, keyFrame},
    Row{59, "key-slip", "UDG", "keys-rub felt-gone>felt", "clearance-card felt=name-board-felt", no, "", "H", perPiano,
        {20, 40}, false, keyFrame},
    Row{60, "capstan", "UDG", "loose-in-wood>sleeve rusty head-rough reserve-short>refer", "polish tighten sleeve",
        Must::note, "", "M A K", perNote, {4, 8}, false, keys, "force", plainCapstan},
    Row{61, "rocker", "UDG", "stripped shrunk", "shim-face", Must::note, "", "M", perNote, {5, 10}, false, keys,
        "force", rockerOrNail},
    Row{62, "lifter", "D", "crumbled slack-thread missing-nut>replace", "replace-set=", Must::note, "", "M", perNote,
        {5, 10}, true, action},
    Row{63, "trapwork", "UDG", "squeak slop lost-nut>adjust", "bush=trapwork-felt felt=trapwork-felt adjust", no, "",
        "damper-rise half-blow", perPiano, {40, 90}, false, pedals, "springs"},
    Row{64, "strings-soundboard", "UDG", "loose-pin rust cracks", "refer", no, "", "", perPiano, {20, 20}, false,
        beforeTilting, "tension"},
    Row{65, "string-fit", "UDG", "one-missing wrong-gauge", "refer", Must::note, "", "O S", perNote, {0, 0}, false,
        beforeTilting, "tension"},
    Row{66, "case", "UDG", "cracked castor-gone", "fix-before-any-tilting", set, "", "", perPiano, {30, 30}, false,
        beforeTilting, "tipping"},
    Row{67, "player-stack", "P", "felt-gone finger-bent stuck-pneumatic loose", "service recover-pneumatics", set, "",
        "player-clearance M", perPiano, {60, 150}, false, JobStage::player, "tipping", hasStack},
    Row{68, "player-stop-rail", "P", "lost loose blocks", "set-after-clearance", no, "", "player-clearance", perPiano,
        {30, 60}, false, JobStage::player, "springs", hasStack},
    Row{69, "player-tubes", "P", "oxide-dust motor-spring crumbling-rubber", "outdoors-mask-gloves refer", no, "", "",
        perPiano, {0, 0}, false, JobStage::player, "lead", hasStack},
    Row{70, "moth-rust", "UDG", "holes dust green-pins>repin-set", "treat repin-set=centre-pin", set, "", "all",
        perPiano, {60, 60}, false, action, "dust"},
};
// clang-format on

} // namespace

std::span<const Row> furtherRows() {
    return kFurtherRows;
}

} // namespace hammerline::survey
