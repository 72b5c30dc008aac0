// One row a drawing. Figures are those of the step's text.
#include "ui/words/doing.h"

#include <QCoreApplication>

namespace hammerline::words {

namespace {

#define T(text) QT_TRANSLATE_NOOP("doing", text)
constexpr std::array kDoingTexts{
    DoingText{.step = "set-dip-naturals",
              .kinds = "UBDG",
              .view = T("the key is off: the pin on the front rail"),
              .test = T("Press firmly, the block on the key: flush with its neighbours."),
              .figure = T("9.5 to 10.9 mm, a step under 0.25"),
              .sentence = T("The felt on the front pin is lifted, and a paper is laid under it with tweezers: the key "
                            "goes less deep.")},
    DoingText{.step = "set-dip-sharps",
              .kinds = "UBDG",
              .view = T("the sharp is off: the pin on the front rail"),
              .test = T("Press the sharp: it must stand above the naturals."),
              .figure = T("proud by 1.5 to 3.5 mm"),
              .sentence = T("The felt on the front pin is lifted, and a paper is laid under it with tweezers: the "
                            "sharp goes less deep.")},
    DoingText{.step = "level-naturals",
              .kinds = "UBDG",
              .view = T("the key is off: the pin on the balance rail"),
              .test = T("A bar on two proved keys: which paper passes under it?"),
              .figure = T("a step under 0.25 mm"),
              .sentence = T("The felt on the balance pin is lifted, and a paper is laid under it with tweezers: the "
                            "key's front goes up.")},
    DoingText{.step = "level-sharps",
              .kinds = "UBDG",
              .view = T("the sharp is off: the pin on the balance rail"),
              .test = T("The step block on the naturals beside it."),
              .figure = T("12 to 12.7 mm, in one line"),
              .sentence = T("The felt on the balance pin is lifted, and a paper is laid under it with tweezers: the "
                            "sharp's front goes up.")},
    DoingText{.step = "take-up-lost-motion",
              .kinds = "UB",
              .view = T("the back end of the key, seen from the bass"),
              .test = T("Push the rest rail a hair: every hammer moves at once."),
              .figure = T("no play felt, and the jack comes home"),
              .sentence = T("A rod stands in the hole of the capstan under the wippen; a hand turns it an eighth "
                            "anticlockwise, seen from above: the capstan rises and takes up play.")},
    DoingText{.step = "set-let-off",
              .kinds = "UB",
              .view = T("one note, seen from the bass"),
              .test = T("Press slowly: the smallest gap before it falls back."),
              .figure = T("about 3 mm in the bass to 2 at the top"),
              .sentence = T("A hook holds the eye of the let-off screw above its rail; a hand turns it an eighth "
                            "clockwise: the button goes down to the jack's toe, and the hammer lets go earlier.")},
    DoingText{.step = "set-checks",
              .kinds = "UB",
              .view = T("one note, seen from the bass"),
              .test = T("A firm blow, key held: from crown to string."),
              .figure = T("13 to 18 mm, all in a line"),
              .sentence = T("Two slotted bars on the check's wire: one holds it at its foot, the other bends it below "
                            "the head toward the catcher.")},
    DoingText{.step = "set-rest-rail",
              .kinds = "UB",
              .view = T("one hammer at rest, seen from the bass"),
              .test = T("From crown to string, at both ends of each rail piece."),
              .figure = T("44 to 48 mm, the heads in a line"),
              .sentence = T("A hand puts a pad between the rest rail and its bracket: the rail comes nearer the "
                            "strings, and the blow is shorter.")},
    DoingText{.step = "set-bridle-wires",
              .kinds = "UB",
              .view = T("one note, seen from the bass"),
              .test = T("Soft pedal down: the strap just tight, and no key dips. Pedal up: slack."),
              .figure = T("all wires in a line"),
              .sentence = T("A slotted bar at the foot of the bridle wire bends it toward the player, away from the "
                            "butt: the strap hangs less slack.")},
    DoingText{.step = "seat-action",
              .kinds = "UB",
              .view = T("one bracket, its foot and its top, seen from the bass"),
              .test = T("Press each bracket: nothing moves."),
              .figure = T("it rocks nowhere, the rods are free"),
              .sentence = T("The socket of a bracket is lowered onto the ball of its stud; its top stands at the bolt "
                            "from the plate, and a hand turns the knob.")},
    DoingText{.step = "time-dampers-by-key",
              .kinds = "UB",
              .view = T("the back end of the wippen, seen from the bass"),
              .test = T("Half the blow blocked: hammer and damper stir together."),
              .figure = T("at 16 to 25 mm of the hammer's way"),
              .sentence = T("A slotted rod reaches under the wippen to its spoon and bends the tip toward the foot of "
                            "the damper lever: the damper lifts earlier.")},
    DoingText{.step = "space-hammers",
              .kinds = "UD",
              .view = T("three hammers, seen by the player; shanks drawn short"),
              .test = T("From above: equal felt at both sides of the strings."),
              .figure = T("no string missed, none of a neighbour's met"),
              .sentence = T("A screwdriver has loosened the screw of the middle hammer's flange; the foot of the shank "
                            "is tapped over until the head stands before its three strings.")},
    DoingText{.step = "travel-hammers",
              .kinds = "UD",
              .view = T("three flanges on their rail, seen from above, strings at the top"),
              .test = T("Lift ten together, slowly."),
              .figure = T("the row rises like one board"),
              .sentence = T("A slip of paper lies between the rail and one side of the middle flange: the hammer now "
                            "travels toward that side.")},
    DoingText{.step = "square-hammers",
              .kinds = "UBDG",
              .view = T("three hammers, seen by the player; shanks drawn short"),
              .test = T("Lift every second one and look at the gaps."),
              .figure = T("parallel at crown and tail"),
              .sentence = T("Hot air warms the middle of a shank, a metal shield behind it; a hand twists the leaning "
                            "head a little beyond upright.")},
    DoingText{.step = "ease-keys",
              .kinds = "UBDG",
              .view = T("the key turned over, its front to the right"),
              .test = T("Lift the front 50 mm and let go."),
              .figure = T("it falls by its own weight"),
              .sentence = T("Padded pliers with one jaw in the bushed hole of a key and one on its side; a hand "
                            "squeezes the cloth once, lightly.")},
    DoingText{.step = "square-keys",
              .kinds = "UBDG",
              .view = T("three keys at the balance rail, seen by the player"),
              .test = T("Look along the gaps from front to sharp."),
              .figure = T("gaps parallel"),
              .sentence = T("A forked bar at the foot of the balance pin bends it by a hair against the lean of the "
                            "key, until the key stands upright.")},
    DoingText{.step = "space-keys",
              .kinds = "UBDG",
              .view = T("three key fronts at the front rail, seen by the player"),
              .test = T("Look at the gaps at the fronts."),
              .figure = T("gaps even, sharps in the middle"),
              .sentence =
                  T("A forked bar at the foot of the front pin bends it toward where the front of the key should go.")},
    DoingText{.step = "file-hammers",
              .kinds = "UBDG",
              .view = T("one head, seen from the side, its crown to the right"),
              .test = T("Felt over the wood, before and after."),
              .figure = T("at most a third taken off, all times together"),
              .sentence = T("A lath with abrasive lies on the shoulder of the head; a hand strokes from the shoulder "
                            "up and stops before the crown.")},
    DoingText{.step = "set-drop",
              .kinds = "G",
              .view = T("one note on its stack, seen from the bass"),
              .test = T("Press on slowly after the let-off: how far does the hammer sink?"),
              .figure = T("0.8 to 2.2 mm, about 1.5"),
              .sentence = T("A screwdriver turns the drop screw in the flange of the hammer clockwise: it meets the "
                            "repetition lever sooner, and the hammer drops farther.")},
    DoingText{.step = "set-grand-let-off",
              .kinds = "G",
              .view = T("one note on its stack, seen from the bass"),
              .test = T("Press slowly: the smallest gap under the string."),
              .figure = T("2.4 mm in the bass to 1.4 at the top"),
              .sentence = T("A hook turns the let-off screw an eighth clockwise: its button goes down to the toe of "
                            "the jack, and the hammer lets go earlier.")},
    DoingText{.step = "rough-springs",
              .kinds = "G",
              .view = T("one note on its stack, seen from the bass"),
              .test = T("Hammer in check: ease the key."),
              .figure = T("it rises slowly by itself"),
              .sentence = T(
                  "A small hook under the arm of the repetition spring draws it up a little, so that it is stronger.")},
    DoingText{.step = "fine-springs",
              .kinds = "G",
              .view = T("one note on its stack, seen from the bass"),
              .test = T("Hammer in check: ease the key. No bump in the finger."),
              .figure = T("it rises like a nod, without a jump"),
              .sentence = T(
                  "A small hook under the arm of the repetition spring draws it up a little, so that it is stronger.")},
    DoingText{.step = "lever-height",
              .kinds = "G",
              .view = T("one note on its stack, seen from the bass"),
              .test = T("A fingernail along the lever, over the top of the jack."),
              .figure = T("the jack a paper lower: 0.1 to 0.2 mm"),
              .sentence = T("A screwdriver turns the small screw at the rear end of the repetition lever: screwed in, "
                            "the front of the lever goes lower.")},
};
#undef T

} // namespace

std::span<const DoingText> doingTexts() {
    return kDoingTexts;
}

} // namespace hammerline::words
