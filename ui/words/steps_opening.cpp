// How each step is done, in our own words (common practice, no source).
#include "ui/words/step_texts.h"

namespace hammerline::words {
namespace {

#define T(text) QT_TRANSLATE_NOOP("work", text)
constexpr std::array kOpeningSteps = {
    StepText{.id = "open-case",
             .name = T("Open the case"),
             .whatFor = T("To reach the action without a scratch or a split."),
             .tools = T("Two screwdrivers that fit the slots, blanket."),
             .how = T("Open the lid, unhook the top panel and tip it out. Take the fallboard off by its hinge screws, "
                      "then the key slip. Press the bottom panel's spring up and tip the panel out. Put the screws in "
                      "their bag at once. Look at the pedal rods and draw which goes where."),
             .way = T(""),
             .goodWhen = T("Panels stand upright on felt against a wall."),
             .mistake = T("A fallboard that hangs on one hinge."),
             .takes = T("10 / 20."),
             .records = T("Tick.")},
    StepText{
        .id = "take-stack-out",
        .name = T("Take the player stack out"),
        .whatFor = T("The piano's own action is never regulated with the stack in."),
        .tools = T("Screwdrivers, tape and marker, a blanket on two trestles."),
        .how =
            T("Let it play first and write down what works. Unplug an electric pump. Mark and pull each tube off with "
              "a twist; old rubber is cut, not pulled. Undo linkages and the brace to the plate, then the end screws "
              "while a helper holds. Two people lift it straight forward and clear of the wippens or stickers."),
        .way = T(""),
        .goodWhen = T("The stack never rested on its fingers."),
        .mistake = T("Not testing first: later nobody knows who broke it."),
        .takes = T("60 / 150."),
        .records = T("Event; findings player-stack, player-tubes.")},
    StepText{.id = "prop-the-wippens",
             .name = T("Prop the wippens"),
             .whatFor =
                 T("With rotten straps the wippens swing down when the action leaves the keys, catch and break."),
             .tools = T("Thin batten or strong tape the length of a section, soft string."),
             .how = T("Pull three straps in each section lightly. If one tears, treat all of them as torn. Slide a "
                      "batten under the row of wippens, or run tape from wippen to wippen, and tie it to the brackets. "
                      "Tie loose hammers back against the rest rail."),
             .way = T("The wippen's free end is held up."),
             .goodWhen = T("Rock the batten: nothing hangs below it."),
             .mistake = T("Trusting straps that are fifty years old."),
             .takes = T("5 / 15."),
             .records = T("Strap word; tick.")},
    StepText{
        .id = "take-action-out",
        .name = T("Take the action out"),
        .whatFor = T("The survey, the cleaning and the repairs are done on the bench."),
        .tools = T("Screwdriver; a cradle: two posts nailed to a board, each with a slot for a bracket."),
        .how =
            T("D|Unhook and number each lifter or sticker first, and tie it up. On some only the bracket bolts come "
              "off and the "
              "wires stay: look.\nLift off or unhook damper rod, soft rod and muffler linkage. Undo the knobs at the "
              "top of the brackets "
              "while one hand holds the rail. Tip the top toward you just clear of the bolts, see that nothing hooks, "
              "take the brackets near both ends (never the rails of hammers or let-off) and lift straight up off the "
              "studs, then out. Set it on its feet in the cradle, never on hammers or dampers."),
        .way =
            T("First toward you, then up. Watch the bass dampers at the plate's edge: let the bass end come a little "
              "farther toward you.\nO|Lift it with the damper cage on. Its wires and "
              "felts meet strings and plate on the way: tip it a hand farther, with a second person at the bass end."),
        .goodWhen = T("No part was heard to click; no felt fell."),
        .mistake = T("Lifting by the hammer rail; forgetting the soft-pedal tie."),
        .takes = T("10 / 25."),
        .records = T("Event; findings that it caused.")},
    StepText{.id = "draw-grand-action",
             .name = T("Draw the action out"),
             .whatFor = T("All but the reading and the let-off is done with the action on a bench."),
             .tools = T("Screwdriver; a level bench as high as the key bed, close to it."),
             .how = T("Take key slip, fallboard and cheek blocks off; note which screw goes where. Put the fallboard "
                      "away. Hold the key frame, not keys or rails, with both hands at a third from each end. Press no "
                      "key: a pressed key lifts its hammer under the pin block and snaps it. Slide straight toward "
                      "you, slowly; look at both ends; stop at any resistance and feel under the frame (shift lever, "
                      "dowel, pencil). A helper takes the far end as it leaves."),
             .way = T("Straight out, never turned."),
             .goodWhen = T("All hammers passed below the block without touching."),
             .mistake = T("Thumbs on the end keys; pulling the shift pedal while it is out."),
             .takes = T("5 / 15 out and in."),
             .records = T("Event.")},
    StepText{.id = "lift-grand-stack",
             .name = T("Lift the stack off the keys"),
             .whatFor = T("The keys and the papers at their balance pins are under the stack."),
             .tools = T("Screwdriver, two blocks as high as the brackets' feet need."),
             .how =
                 T("Undo the bracket screws, bass to treble, and keep their order. With the hammers down two people "
                   "lift it straight up. See that no tail hangs in its back check. Set it on its brackets on blocks."),
             .way = T(""),
             .goodWhen = T("No check was bent."),
             .mistake = T("One person, and the treble end drags."),
             .takes = T("10 / 25 off and on."),
             .records = T("Event.")},
    StepText{
        .id = "take-keys-off",
        .name = T("Take the keys off"),
        .whatFor = T("Bed, pins, felts and the keys' undersides are reached only with the keys off."),
        .tools = T("A board 1.5 m long with a ledge."),
        .how = T("Check the stamped numbers; pencil missing ones. Lift each key by its middle straight up off the "
                 "balance pin, wriggling front to back, not sideways. Lay them in order on a board in tens. Leave "
                 "punchings on their pins until they have been looked at."),
        .way = T("Off the front pin first, then off the balance pin.\nD|The key hangs on its lifter: unhook it first."),
        .goodWhen = T("No splinter at the balance hole."),
        .mistake = T("Prising a tight key sideways: the hole splits (ease it later)."),
        .takes = T("15 / 30."),
        .records = T("Event.")},
};
#undef T

} // namespace

std::span<const StepText> openingSteps() {
    return kOpeningSteps;
}

} // namespace hammerline::words
