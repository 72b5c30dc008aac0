// How each step is done, in our own words (common practice, no source).
#include "ui/words/step_texts.h"

namespace hammerline::words {
namespace {

#define T(text) QT_TRANSLATE_NOOP("work", text)
constexpr std::array kSeatedSteps = {
    StepText{.id = "seat-action",
             .name = T("Seat the action"),
             .whatFor =
                 T("An action that is not seated mimics lost motion, loose dampers and nearly every other fault."),
             .tools = T("Lamp, screwdriver; a mirror for the feet."),
             .how = T("Lower the action onto all studs; look into each foot. Push the top back onto its bolts without "
                      "force. Turn the knobs finger-tight, then a little more. Press each bracket: nothing moves. On "
                      "two-bracket actions a screw behind the rail may bear on the plate: it must just touch. Hook up "
                      "rods; each must have play."),
             .way = T("If one bolt has to be forced, a stud is bent or a foot is off: stop."),
             .goodWhen = T("The action rocks nowhere, and the rods are free."),
             .mistake = T("Knobs tightened with one foot beside its stud."),
             .takes = T("10 / 25 (in “Take action out”)."),
             .records = T("Tick; findings action-bolts.")},
    StepText{
        .id = "seat-grand-action",
        .name = T("Seat the action"),
        .whatFor = T("The hammers strike where they did, and the key frame lies on its bed."),
        .tools = T("Screwdriver, clean brush."),
        .how = T("Clean the bed. Slide the action in straight, with no key pressed. Put the cheek blocks on with their "
                 "own screws. The shift pedal moves it, and it comes back to its stop by itself. Play the end notes."),
        .way = T(""),
        .goodWhen = T("Key block touches its stop at rest, no rattle."),
        .mistake = T("A screw or pencil left on the bed."),
        .takes = T("In “Draw grand action”."),
        .records = T("Tick.")},
    StepText{
        .id = "strike-line",
        .name = T("Find the strike line"),
        .whatFor = T("A treble hammer 2 mm off its place sounds like wood."),
        .tools = T("Thin card, rule; ears."),
        .how = T("Play the top notes while a helper moves the action a little.\nUDBO|Move it up and down with card "
                 "under the studs or bolts.\nG|Loosen the cheek blocks and move the frame in and out by 1 mm.\nListen "
                 "at the highest five notes and one at each break. Mark the best place and set stud or block there."),
        .way = T("UDBO|As a start the top hammer strikes 2.0 to 2.7 mm from the end of its string; then go by "
                 "ear.\nThe whole action moves; single hammers are not reglued for it."),
        .goodWhen = T("Top notes clear, no thud."),
        .mistake = T("Moving one end only and twisting the action."),
        .takes = T("10 / 30."),
        .records = T("Word “Strike line” at ends; mm moved.")},
    StepText{
        .id = "space-hammers",
        .name = T("Space the hammers"),
        .whatFor = T("The crown meets all its strings and no other's."),
        .tools = T("Long thin screwdriver, finger."),
        .how = T("Bring the hammers near the strings and mark each that stands aside.\nG|Then draw the action out "
                 "and prove it by sliding it in again.\nLoosen its flange screw a "
                 "little, tap the shank's foot over, tighten, look. Then look once more whether it travels straight."),
        .way = T("B|Move it only by the plate screw and the seat of the pin; never bend the tongue."),
        .goodWhen = T("Each crown covers its strings with equal felt at both sides."),
        .mistake = T("Spacing on the bench by eye only."),
        .takes = T("0.5 / 1."),
        .records = T("Word hammer-space.")},
    StepText{
        .id = "fit-hammers-to-strings",
        .name = T("Fit the hammers to the strings"),
        .whatFor = T("All strings of a note are struck at once."),
        .tools = T("Fine abrasive on a narrow block (finer than for filing), wooden plectrum, chalk."),
        .how =
            T("UDBO|Push the hammer onto its strings.\nG|Lift the hammer to its strings by the jack's foot.\nPluck "
              "each string: one that rings is not touched. See that it does not itself stand off its neighbours. Rub "
              "the crown a little where the strings are silent, not where one rings. Try again after two strokes."),
        .way = T("Felt comes off the touching side."),
        .goodWhen = T("No string rings, firm touch at each."),
        .mistake = T("Filing for a string that stands low (a technician levels strings); heavy filing here."),
        .takes = T("0.7 / 2."),
        .records = T("Word string-fit.")},
    StepText{
        .id = "seat-dampers",
        .name = T("Seat the dampers"),
        .whatFor = T("The felt must lie in its strings before its timing means anything."),
        .tools = T("Glue that sets slowly, small brush, two benders, wooden plectrum."),
        .how = T("UDBO|Glue wedges and clips with the action in, on the strings: with little glue and the block drawn "
                 "back, slide the felt along the strings, let it go, look from above and leave it overnight.\nG|Glue a "
                 "felt to its head out of the piano. Set the head on its wire and let it hang free between its strings "
                 "before its screw is tightened.\nLay "
                 "flat felts parallel to the strings.\nUDBO|Keep the upper end clear of the hammer.\nThen pluck each "
                 "string with the damper on: it must be silent. Twist or bend the wire so that the head lies flat."),
        .way = T("UDB|Higher on the string damps a little better, but the hammer must not touch the felt on its "
                 "way.\nO|The felts sit by the rail and the angle of the block. The damper rail can be shifted a "
                 "little toward the strings. Heads are not bent for timing.\nG|Bend the wire at the head and "
                 "above the guide so that it drops straight. Ten dampers side by side fall without a sound."),
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
