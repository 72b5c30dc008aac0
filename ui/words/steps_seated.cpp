// How each step is done, in our own words (common practice, no source).
#include "ui/words/step_texts.h"

namespace hammerline::words {
namespace {

#define T(text) QT_TRANSLATE_NOOP("work", text)
constexpr std::array kSeatedSteps = {
    StepText{
        .id = "seat-action",
        .name = T("Seat action"),
        .whatFor = T("An unseated action mimics lost motion, loose dampers, everything."),
        .tools = T("Lamp, screwdriver; a mirror for the feet."),
        .how = T("Lower it onto all studs; look into each foot. Push the top back onto its bolts without force. Knobs "
                 "finger-tight, then a little. Press each bracket: nothing moves. On two-bracket actions a screw "
                 "behind the rail may bear on the plate: it must just touch. Hook up rods; each must have play."),
        .way = T("If one bolt has to be forced, a stud is bent or a foot is off: stop."),
        .goodWhen = T("Rocks nowhere; the rods are free."),
        .mistake = T("Knobs tightened with one foot beside its stud."),
        .takes = T("10 / 25 (in “Take action out”)."),
        .records = T("Tick; findings action-bolts.")},
    StepText{.id = "seat-grand-action",
             .name = T("Seat grand action"),
             .whatFor = T("Hammers strike where they did; the keys feel the bed."),
             .tools = T("Screwdriver, clean brush."),
             .how = T("Clean bed; slide in straight, no key pressed. Cheek blocks on, screws as before. Shift pedal: "
                      "moves and comes back to its stop by itself. Play the end notes."),
             .way = T(""),
             .goodWhen = T("Key block touches its stop at rest, no rattle."),
             .mistake = T("A screw or pencil left on the bed."),
             .takes = T("In “Draw grand action”."),
             .records = T("Tick.")},
    StepText{.id = "strike-line",
             .name = T("Strike line"),
             .whatFor = T("A treble hammer 2 mm off its place sounds like wood."),
             .tools = T("Thin card, rule; ears."),
             .how = T("Play the top notes while the action is moved a little: upright up and down (card under the "
                      "studs or bolts), grand in and out (cheek blocks loose, frame moved 1 mm). Listen at the highest "
                      "five and one note at each break. Mark the best, set stud or block there."),
             .way = T("Upright: top note 2.0 to 2.7 mm from the end of its string as a start, then by ear. Whole "
                      "action moves; single hammers are not reglued for it."),
             .goodWhen = T("Top notes clear, no thud."),
             .mistake = T("Moving one end only and twisting the action."),
             .takes = T("10 / 30."),
             .records = T("Word “Strike line” at ends; mm moved.")},
    StepText{
        .id = "space-hammers",
        .name = T("Space hammers"),
        .whatFor = T("The crown meets all its strings and no other's."),
        .tools = T("Long thin screwdriver, finger."),
        .how = T("Bring hammers near the strings with the soft pedal or lift: mark each that stands aside. Loosen its "
                 "flange screw a little, tap the shank's foot over, tighten, look. Straightness of travel again."),
        .way = T("Brass rail: only by the plate screw and pin seating; never bend the tongue."),
        .goodWhen = T("Each crown covers its strings with equal felt at both sides."),
        .mistake = T("Spacing on the bench by eye only."),
        .takes = T("0.5 / 1."),
        .records = T("Word hammer-space.")},
    StepText{.id = "fit-hammers-to-strings",
             .name = T("Fit hammers to strings"),
             .whatFor = T("All strings of a note are struck at once."),
             .tools = T("Fine abrasive on a narrow block (finer than for filing), wooden plectrum, chalk."),
             .how = T("Press the key so that the hammer lies on the strings (Upright: push the hammer; Grand: lift by "
                      "the jack's foot). Pluck each string: one that rings is not touched: it is \"open\". Check that "
                      "a string is not itself low. Rub the crown a little where strings are silent, not where one "
                      "rings. Two strokes, try again."),
             .way = T("Felt comes off the touching side."),
             .goodWhen = T("No string rings, firm touch at each."),
             .mistake = T("Filing for a string that stands low (a technician levels strings); heavy filing here."),
             .takes = T("0.7 / 2."),
             .records = T("Word string-fit.")},
    StepText{.id = "seat-dampers",
             .name = T("Seat dampers"),
             .whatFor = T("Felt must lie in its strings before its timing means anything."),
             .tools = T("Glue that sets slowly, small brush, two benders, wooden plectrum."),
             .how = T("Wedges and clips are glued with the action in, on the strings: little glue, slide the felt down "
                      "along the strings with the block drawn back, let it go, look from above, leave overnight. "
                      "Flats: parallel to the strings, upper end clear of the hammer. Then pluck each string with the "
                      "damper on: silent. Twist or bend the wire so that the head lies flat."),
             .way = T("Upright: higher on the string damps a little better, but the hammer must not touch the felt on "
                      "its way. Overdamper: heads are not bent for timing; felts sit by the rail and the block's "
                      "angle; the damper rail can be shifted a little toward the strings. Grand: wire bent at the head "
                      "and above the guide so that it drops straight; ten dampers side by side fall without sound."),
             .goodWhen = T("Every string is silent at once on release."),
             .mistake = T("Box sizes assumed; glue on the string."),
             .takes = T("3 / 6 a felt; look 20 / 40."),
             .records = T("Word damper-seat; felt kind and width.")},
};
#undef T

} // namespace

std::span<const StepText> seatedSteps() {
    return kSeatedSteps;
}

} // namespace hammerline::words
