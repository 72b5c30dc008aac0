// How each step is done, in our own words (common practice, no source).
#include "ui/words/step_texts.h"

namespace hammerline::words {
namespace {

#define T(text) QT_TRANSLATE_NOOP("work", text)
constexpr std::array kKeysSteps = {
    StepText{.id = "clean-bed-and-keys",
             .name = T("Clean the key bed and the keys"),
             .whatFor = T("Dirt under a key is a false height."),
             .tools =
                 T("Mask, gloves, damp cloth, soft brush, vacuum with a fine filter and a stocking over the nozzle."),
             .how = T("Look first: what lies there may be old, or somebody's ring. Photograph the punchings and count "
                      "papers of three keys a section. Wipe damp, brush toward the nozzle. Wipe key tops with a cloth "
                      "barely damp, dry at once. Leave the keys' sides dry. Lay the screws of the frame aside."),
             .way = T("G|Clean the bed under the frame and the frame's slides too."),
             .goodWhen = T("A white cloth stays white on bed and frame."),
             .mistake = T("Water in wood and on felt; solvent on white tops."),
             .takes = T("60 / 120 the piano."),
             .records = T("Event (what was found); findings moth-rust.")},
    StepText{
        .id = "note-odd-parts",
        .name = T("Keep parts that no list knows"),
        .whatFor = T("An old piano has parts no list knows; taken off unrecorded, nobody can put them back."),
        .tools = T("Camera, bags, labels."),
        .how = T("Photograph any part that the list has no name for (key lock, stop rail, half rails, mute strip, "
                 "weights). Write what it touches and does. Keep it with its screws. Decide later whether it returns."),
        .way = T(""),
        .goodWhen = T("Each has a name, a place and a bag."),
        .mistake = T("Throwing it away because nobody knew it."),
        .takes = T("5 / 10."),
        .records = T("Free part.")},
    StepText{.id = "tighten-frame",
             .name = T("Tighten the key frame"),
             .whatFor = T("A key frame that moves makes every height false."),
             .tools = T("Stout screwdriver, straight bar of 600 mm, card."),
             .how = T("Turn each frame screw until it just stops; note which was loose. Press each rail beside its "
                      "screws: does it dip? Lay a straight bar along the balance rail from pin to pin. Where it is low "
                      "between screws, put card under the rail beside the screw, not papers under the keys."),
             .way = T("Screw clockwise = frame down on the bed."),
             .goodWhen = T("Bar and rail touch within 0.3 mm, and tapped with a finger the rail sounds dead."),
             .mistake = T("Screwing a bowed rail down so that it cracks."),
             .takes = T("10 / 25."),
             .records = T("Finding key-frame; note numbers of the screws.")},
    StepText{.id = "polish-key-pins",
             .name = T("Polish the key pins"),
             .whatFor = T("A rough pin eats its bushing and makes a key slow."),
             .tools = T("Metal polish on a strip of felt, drawn round the pin; a slotted stick keeps it off the wood."),
             .how = T("Polish front and balance pins up and down, not round only. Wipe every trace off. Look along the "
                      "row: a pin that leans is straightened by a small bend at its foot. Oval pins stand with their "
                      "long side along the key."),
             .way = T(""),
             .goodWhen = T("Pins feel like glass."),
             .mistake = T("Oil or polish left on the pin; turning oval pins to take up play."),
             .takes = T("30 / 60 the piano."),
             .records = T("Findings front-rail-pin, balance-rail-pin.")},
    StepText{.id = "renew-key-cloths",
             .name = T("Renew the cloths under the keys"),
             .whatFor = T("Height, dip and quiet rest on three cloths; crushed or eaten ones cannot be regulated."),
             .tools = T("Caliper; a rod and two blocks to press punchings."),
             .how = T("Measure the old ones: diameter, hole, thickness pressed lightly, of the least worn place (end "
                      "keys). Press the new set: thread all on a rod between two blocks, clamp two days; they lose 15 "
                      "to 20 % that they would lose in the piano. New back cloth: glue along its rear edge only, no "
                      "wrinkle. Papers go under the felt. Read ten keys before going on."),
             .way = T("Thicker back cloth: key fronts lower, dip shallower.\nUDBO|Lost motion less as well.\nG|The "
                      "blow shorter as well.\nThicker balance felt: "
                      "fronts higher, dip deeper. Thicker front felt: dip shallower."),
             .goodWhen = T("One thickness over the whole set; keys ride even within 1 mm before any paper."),
             .mistake = T("A set of mixed thickness; glue soaked through; papers on top of the felt."),
             .takes = T("Back cloth 60 / 120; punchings 45 / 90."),
             .records = T("Findings; sizes; event with thickness new, needed by the settling forecast.")},
    StepText{
        .id = "mend-keys",
        .name = T("Mend keys"),
        .whatFor = T("A cracked key, or one with loose wood, gives false readings."),
        .tools = T("Glue, two clamps with soft jaws, thin veneer."),
        .how =
            T("UBG|Flex each key lightly: does a crack open at the balance hole or the capstan?\nD|Flex each key "
              "lightly: does a "
              "crack open at the balance hole or where its lifter hooks on?\nGlue and clamp it; where "
              "it breaks again, glue a thin strip of wood beside it. Reglue a loose button square, and loose tops. A "
              "lead that has swollen and rubs its neighbour is referred to a technician: the dust is poison."),
        .way = T(""),
        .goodWhen = T("The key rings when it is tapped, and nothing rattles."),
        .mistake = T("Glue in the balance hole."),
        .takes = T("See the remedies table."),
        .records = T("Findings key, key-top, balance-hole.")},
    StepText{.id = "rebush-keys",
             .name = T("Rebush the keys"),
             .whatFor = T("Side play makes a keyboard rattle; hard bushings make keys stick."),
             .tools = T("Cauls a little thicker than the pin, steam or damp cloth to loosen the old, sharp knife."),
             .how = T("Damp the old cloth, wait, and lift it out whole. Choose cloth so that pin plus two cloths just "
                      "fit the hole; try three keys. Put hot glue on the wood, then the cloth, then the caul. Let it "
                      "dry and cut it flush."),
             .way = T(""),
             .goodWhen = T("Key moves sideways just perceptibly and does not bounce."),
             .mistake = T("A whole set glued before three were tried; soaked mortise."),
             .takes = T("1.5 / 5 a bushing."),
             .records = T("Findings front-bushing, balance-bushing; sizes: pin, cloth.")},
    StepText{.id = "ease-keys",
             .name = T("Ease the keys"),
             .whatFor = T("A key that sticks spoils every later reading."),
             .tools =
                 T("Flat-jawed easing pliers for bushings; an amateur pads smooth pliers with two thin metal strips. "
                   "For the balance hole a tapered oval pin, or the shank of a drill polished to the pin's size."),
             .how = T("Lift the front 50 mm and let go: it must fall by its own weight. If not: first the front "
                      "bushing: one gentle squeeze each side. Then the balance bushing. Last the balance hole: open it "
                      "along the key's sides, not front to back, a breath at a time."),
             .way = T("Squeezing gives play sideways; it cannot be taken back."),
             .goodWhen = T("Falls freely, side play just felt at front and button."),
             .mistake = T("Easing the hole front to back: the key wanders and its height jumps."),
             .takes = T("1 / 2 a key."),
             .records = T("Word key-fit.")},
    StepText{.id = "square-keys",
             .name = T("Square the keys"),
             .whatFor = T("A key that leans looks low on one side and rubs."),
             .tools = T("Forked bender for round pins: a steel bar with a slot as wide as the pin."),
             .how = T("Look along the tops from the end: which leans? Take the key off and bend the balance pin at its "
                      "foot by a hair. Put the key back and look again."),
             .way = T("A key that leans to the treble: pin's top to the bass; and the other way round."),
             .goodWhen = T("Gaps between naturals parallel from front to sharp."),
             .mistake = T("Bending the front pin for a lean."),
             .takes = T("0.5 / 1 a key that needs it."),
             .records = T("Word key-square.")},
    StepText{.id = "space-keys",
             .name = T("Space the keys"),
             .whatFor = T("Even gaps look right, and no key rubs its neighbour."),
             .tools = T("Forked bender for front pins: a bar with a slot, wrapped in tape."),
             .how = T("Look at the gaps at the fronts. Bend the front pin toward where the front end should go, at its "
                      "foot. Then look at the sharps between naturals."),
             .way = T("Front pin toward the bass = key front toward the bass."),
             .goodWhen =
                 T("Gaps even by eye, sharps in the middle of theirs; key slip, name-board and cheek blocks clear."),
             .mistake = T("Turning the oval pin."),
             .takes = T("0.5 / 1."),
             .records = T("Word key-space.")},
};
#undef T

} // namespace

std::span<const StepText> keysSteps() {
    return kKeysSteps;
}

} // namespace hammerline::words
