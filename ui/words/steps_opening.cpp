// How each step is done, in our own words (common practice, no source).
#include "ui/words/step_texts.h"

namespace hammerline::words {
namespace {

#define T(text) QT_TRANSLATE_NOOP("work", text)
constexpr std::array kOpeningSteps = {
    StepText{.id = "open-case",
             .name = T("Open case"),
             .whatFor = T("To reach the action without a scratch or a split."),
             .tools = T("Two screwdrivers that fit the slots, blanket."),
             .how = T("Lid back, top panel unhooked and tipped out. Fallboard and its hinge screws, then key slip. "
                      "Bottom panel: press its spring up, tip it out. Put screws in their bag at once. Look at the "
                      "pedal rods and draw which goes where."),
             .way = T(""),
             .goodWhen = T("Panels stand upright on felt against a wall."),
             .mistake = T("A fallboard that hangs on one hinge."),
             .takes = T("10 / 20."),
             .records = T("Tick.")},
    StepText{
        .id = "take-stack-out",
        .name = T("Take stack out"),
        .whatFor = T("The piano's own action is never regulated with the stack in."),
        .tools = T("Screwdrivers, tape and marker, a blanket on two trestles."),
        .how =
            T("Let it play first and write what works. Unplug the pump (electric). Mark and pull each tube off with a "
              "twist; old rubber is cut, not pulled. Undo linkages and the brace to the plate, then the end screws "
              "while a helper holds. Two people lift it straight forward and clear of the wippens or stickers."),
        .way = T(""),
        .goodWhen = T("Fingers were never rested on."),
        .mistake = T("Not testing first: later nobody knows who broke it."),
        .takes = T("60 / 150."),
        .records = T("Event; findings player-stack, player-tubes.")},
    StepText{.id = "prop-the-wippens",
             .name = T("Prop the wippens"),
             .whatFor =
                 T("With rotten straps the wippens swing down when the action leaves the keys, catch and break."),
             .tools = T("Thin batten or strong tape the length of a section, soft string."),
             .how = T("Pull three straps per section lightly: do they hold? If one tears, treat all as torn. Slide a "
                      "batten under the row of wippens, or run tape from wippen to wippen, and tie it to the brackets. "
                      "Tie loose hammers back against the rest rail."),
             .way = T("The wippen's free end is held up."),
             .goodWhen = T("Rock the batten: nothing hangs below it."),
             .mistake = T("Trusting straps of 50 years."),
             .takes = T("5 / 15."),
             .records = T("Strap word; tick.")},
    StepText{
        .id = "take-action-out",
        .name = T("Take action out"),
        .whatFor = T("Survey, cleaning and repairs are done on the bench."),
        .tools = T("Screwdriver; two blocks or a cradle; an amateur nails two uprights to a board, each with a slot "
                   "for a bracket."),
        .how =
            T("Lift off or unhook damper rod, soft rod and muffler linkage. Undo the knobs at the top of the brackets "
              "while one hand holds the rail. Tip the top toward you just clear of the bolts, look that nothing hooks, "
              "take the brackets near both ends (never the rails of hammers or let-off) and lift straight up off the "
              "studs, then out. Set it on its feet in the cradle, never on hammers, dampers or spoons."),
        .way = T("First toward you, then up. Bass dampers and the plate's edge: watch them; let the bass end come a "
                 "little farther toward you. Drop action: lifters or stickers first: unhook and number each, tie them "
                 "up; on some the wires stay and only the four bracket bolts come off: look. Overdamper: lift it with "
                 "the damper cage on; the cage's wires and felts meet strings and plate on the way: tip a hand "
                 "farther, a second person at the bass end."),
        .goodWhen = T("No part was heard to click; no felt fell."),
        .mistake = T("Lifting by the hammer rail; forgetting the soft-pedal tie."),
        .takes = T("10 / 25 out and in (D 40 / 90, O 20 / 45)."),
        .records = T("Event; findings that it caused.")},
    StepText{.id = "draw-grand-action",
             .name = T("Draw grand action"),
             .whatFor = T("Everything but let-off and trial on a grand is done with the action on a bench."),
             .tools = T("Screwdriver; a level bench as high as the key bed, close to it."),
             .how = T("Key slip, fallboard, cheek blocks off; note which screw goes where. Put fallboard and music "
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
             .name = T("Lift grand stack"),
             .whatFor = T("Keys, capstans' cloth and balance papers are under the stack."),
             .tools = T("Screwdriver, two blocks as high as the brackets' feet need."),
             .how = T("Undo the bracket screws, bass to treble, and keep their order. Hammers down, two people lift "
                      "straight up; look that no tail hangs in its back check. Set it on its brackets on blocks."),
             .way = T(""),
             .goodWhen = T("No check was bent."),
             .mistake = T("One person, and the treble end drags."),
             .takes = T("10 / 25 off and on."),
             .records = T("Event.")},
    StepText{.id = "take-keys-off",
             .name = T("Take keys off"),
             .whatFor = T("Cleaning, easing, felts, balance papers."),
             .tools = T("A board 1.5 m long with a ledge, in tens."),
             .how = T("Check the stamped numbers; pencil missing ones. Lift each key by its middle straight up off the "
                      "balance pin, wriggling front to back, not sideways. Lay them in order on a board in tens. Leave "
                      "punchings on their pins until they have been looked at."),
             .way = T("Front first, then balance. Drop action: the key hangs on its lifter: see “Take action out”."),
             .goodWhen = T("No splinter at the balance hole."),
             .mistake = T("Prising a tight key sideways: the hole splits (ease it later)."),
             .takes =
                 T("15 / 30 off and on (D 40 / 90, one trip with “Take action out”; grand 15 / 30 after the stack)."),
             .records = T("Event.")},
};
#undef T

} // namespace

std::span<const StepText> openingSteps() {
    return kOpeningSteps;
}

} // namespace hammerline::words
