// How each step is done, in our own words (common practice, no source).
#include "ui/words/step_texts.h"

namespace hammerline::words {
namespace {

#define T(text) QT_TRANSLATE_NOOP("work", text)
constexpr std::array kGrandSteps = {
    StepText{.id = "bed-key-frame",
             .name = T("Bed the key frame"),
             .whatFor = T("A frame that knocks gives a false dip, a mushy touch and noise. It is always done first."),
             .tools = T("Knuckle and ear; strip of thin paper; tool for the studs."),
             .how = T("Turn all balance studs up until none touches. Tap along the front rail and press the fronts of "
                      "the keys: a knock is a gap, and cheek blocks or bed are for a specialist. Do the same at the "
                      "back rail. Then go stud by stud from the middle outward: turn each down until the tap at its "
                      "place just stops. Go over all again, and once more with the shift pedal half down."),
             .way = T("Stud clockwise from above = down = presses harder; too far and it lifts the rails."),
             .goodWhen = T("No tap anywhere; paper under front and back rail still held beside every stud."),
             .mistake = T("Studs set on the bench; one stud carrying all."),
             .takes = T("20 / 60."),
             .records = T("Word frame-bed per stud.")},
    StepText{.id = "wippens-under-hammers",
             .name = T("Bring the wippens under their hammers"),
             .whatFor = T("Each jack stands in the middle of its knuckle, each wippen on its capstan."),
             .tools = T("Long screwdriver, lamp."),
             .how = T("Look from the front between the shanks: is each jack under the middle of its knuckle, the "
                      "lever's window clear? Loosen the wippen's flange screw, shift, tighten. Check: not rubbing its "
                      "neighbour; heel covers the capstan."),
             .way = T(""),
             .goodWhen = T("Jack centred within 0.5 mm."),
             .mistake = T("Moving the hammer to the wippen."),
             .takes = T("0.5 / 1."),
             .records = T("Finding wippen off-travel; tick.")},
    StepText{
        .id = "jacks-fore-and-aft",
        .name = T("Set the jacks fore and aft"),
        .whatFor = T("The jack pushes under the core of the knuckle and slips out cleanly."),
        .tools = T("Small screwdriver or key for the button; lamp from the side."),
        .how = T("Lift the lever a hair and look from the side: the jack's rear face (toward the hammer) in line with "
                 "the rear of the knuckle's wooden core. Turn its small button a quarter and look which way it goes. "
                 "Tight in its thread: if it wanders, that is the fault."),
        .way = T("Too deep (toward the hammer): late, heavy escape; too shallow (toward you): slips on a hard blow."),
        .goodWhen = T("Faces flush by eye."),
        .mistake = T("Setting it by the worn leather instead of the core."),
        .takes = T("0.4 / 1."),
        .records = T("Word jack-position.")},
    StepText{.id = "lever-height",
             .name = T("Set the height of the repetition levers"),
             .whatFor = T("The hammer rests on the lever, and the jack slips under without scraping."),
             .tools = T("Small screwdriver, fingernail."),
             .how = T("Fingernail along the lever over the jack's top: the jack lies a paper (0.1 to 0.2 mm) below the "
                      "wood. Worn knuckles: prove it: trip the jack at its foot and let it go slowly: it must come "
                      "home by itself; then press the lever down beside the jack: the hammer may sink only a hair "
                      "before the jack carries it: that hair is the play. Small screw at the lever's rear end."),
             .way = T("Screw in (its button longer) = front of the lever lower; out = higher, on most; trial. Lever "
                      "too high: play, weak; too low: jack scrapes and does not return."),
             .goodWhen = T("Jack returns, no play felt."),
             .mistake = T("Judging it with weak springs."),
             .takes = T("0.5 / 1.2."),
             .records = T("Word “Lever height”; jack-return.")},
    StepText{.id = "rough-springs",
             .name = T("Set the repetition springs roughly"),
             .whatFor = T("Hammers must stand on their levers before anything is read."),
             .tools = T("Small hook: a needle in a dowel, its tip bent."),
             .how =
                 T("With the hammer in check ease the key: the hammer must rise slowly by itself. Where it stays, draw "
                   "the spring up a little; where it jumps, press it down. Clean the slots; use dry lubricant only."),
             .way = T("More arch = stronger; less = weaker (screw type: in = stronger on most)."),
             .goodWhen = T("None dead."),
             .mistake = T("Bending until it jumps."),
             .takes = T("0.3 / 0.8."),
             .records = T("Word repetition-spring.")},
    StepText{
        .id = "set-grand-blow",
        .name = T("Set the blow"),
        .whatFor = T("A grand's blow is set note by note at the capstan."),
        .tools = T("A stick of the wanted length held from string to crown, or a gauge on the shank rail; capstan rod; "
                   "bar and blocks for the line."),
        .how = T("Read from the crown to the under side of the string at each section's ends and write it down. With "
                 "the action drawn out set those notes as guides and lay the others in line between them with bar and "
                 "eye. Slide the action in again and prove it."),
        .way = T("Capstan anticlockwise from above = up = blow shorter, aftertouch more; an eighth turn at a time."),
        .goodWhen = T("{blow}; line within 0.7 mm."),
        .mistake = T("Pressing a key while sliding in to look."),
        .takes = T("0.5 / 1.2."),
        .records = T("Blow.")},
    StepText{.id = "set-grand-rest",
             .name = T("Set the hammer rest"),
             .whatFor = T("Shanks hang free above the rest felt but near enough to be caught."),
             .tools = T("Strips of 2, 4, 8 mm; spanner."),
             .how = T("Look from the side: 2 to 8 mm between shank and felt (about a shank's thickness). Raise or "
                      "lower the rail, or renew felt."),
             .way = T("Felt never touches a shank at rest; more than 8 and the hammer falls too far to repeat."),
             .goodWhen = T("Even gap."),
             .mistake = T("Using the rail to set the blow."),
             .takes = T("20 / 40."),
             .records = T("Information row; tick.")},
    StepText{
        .id = "set-grand-let-off",
        .name = T("Set the let-off"),
        .whatFor = T("The jack lets go just before the string, so that the hammer flies free."),
        .tools = T("Offset hook or screwdriver; strips; on the bench a bar at string height on two posts."),
        .how = T("First turn the drop screws back, so that they hide nothing. Press each key very slowly and read the "
                 "smallest gap under the string. Turn an eighth."),
        .way =
            T("Clockwise seen from above = button lower = earlier = farther from the string; anticlockwise = nearer."),
        .goodWhen = T("2.4 bass to 1.4 top."),
        .mistake = T("Reading while the drop screw stops the hammer."),
        .takes = T("0.5 / 1.2."),
        .records = T("Let-off.")},
    StepText{.id = "set-drop",
             .name = T("Set the drop"),
             .whatFor = T("After letting go the hammer settles a little and rests on the lever."),
             .tools = T("Screwdriver; strips."),
             .how = T("Go on pressing slowly: how far does the hammer sink below its let-off? A weak spring looks like "
                      "too much drop: set the spring first."),
             .way = T("Drop screw clockwise from above = more drop; anticlockwise = less."),
             .goodWhen = T("{drop}, about {drop aim}."),
             .mistake = T("No drop: the lever carries the hammer up against the string."),
             .takes = T("0.4 / 0.8."),
             .records = T("Drop.")},
    StepText{.id = "set-grand-checks",
             .name = T("Set the back checks"),
             .whatFor = T("The hammer is caught near the string and does not bounce."),
             .tools = T("Slotted bar; stick."),
             .how = T("Sight the row of checks and bend each at its foot, holding its head square. Slide the action "
                      "in, strike a firm blow and read. On a slow press the tail must not rub on its way up."),
             .way = T("Check toward the tail = nearer the string."),
             .goodWhen = T("{checking}."),
             .mistake = T("Rubbing tail felt as a heavy key."),
             .takes = T("0.5 / 1.2."),
             .records = T("Checking.")},
    StepText{
        .id = "fine-springs",
        .name = T("Set the repetition springs finely"),
        .whatFor = T("Quick repetition without a kick."),
        .tools = T("The small hook of the rough setting: a needle in a dowel, its tip bent."),
        .how = T("Let the hammer check, ease the key until it frees: it rises at a steady pace. A bump in the finger: "
                 "too strong. Slow or stays: too weak. If it does not rise at all, look at the drop screw first."),
        .way = T("Too strong: double strike, kick, heavy escape; too weak: second blow fails, high drop that the screw "
                 "cannot cure. Top octaves a trace stronger."),
        .goodWhen = T("The hammer rises like a nod, without a jump."),
        .mistake = T("All as strong as they will go."),
        .takes = T("0.5 / 1.2."),
        .records = T("Word repetition-spring.")},
    StepText{.id = "seat-and-line-grand-dampers",
             .name = T("Line the dampers by the tray"),
             .whatFor = T("Dampers fall silently and rise together."),
             .tools = T("Screwdriver that fits the block screw, straight bar, wedge under the tray."),
             .how = T("Levers in one line at rest (this line also serves the sostenuto tabs). Tray up by hand a hair: "
                      "all heads stir together. One that differs: loosen the screw in the lever's block, slide the "
                      "lever on the wire, tighten."),
             .way = T("Lever lower on the wire (nearer the key end and tray) = earlier; higher = later. With a "
                      "sostenuto: levers stay level; timing by the lifter felts instead."),
             .goodWhen = T("Heads stir as one."),
             .mistake = T("Tightening so that the wire twists the head."),
             .takes = T("2 / 5."),
             .records = T("Words damper-line, damper-seat.")},
    StepText{.id = "time-grand-dampers-by-key",
             .name = T("Time the dampers by the key"),
             .whatFor = T("The key lifts its damper in the middle of its way."),
             .tools = T("Strips of 4 and 6 mm under the key front as stops; felt of known thickness."),
             .how = T("Key slowly: head stirs when the front is 4 to 6 mm down. All early or late: thickness of the "
                      "felt on the key ends (or the frame's line). Single ones: felt, or lever on its wire where no "
                      "sostenuto stands in the way."),
             .way = T("Thicker key-end felt = earlier."),
             .goodWhen = T("4 to 6 mm of the key, alike; that is {damper-start} of the hammer's way."),
             .mistake = T("Bending wires for timing."),
             .takes = T("1 / 3."),
             .records = T("Damper-start.")},
    StepText{.id = "damper-stop-rail",
             .name = T("Set the damper stop rail"),
             .whatFor = T("Dampers do not jump off on a hard blow."),
             .tools = T("Screwdriver, 1.2 mm strip."),
             .how = T("With the key fully down 1 to 1.5 mm stay between lever and stop rail, and the pedal alone does "
                      "not jam against it. On a hard blow the lever just meets it."),
             .way = T("Rail lower = less jump; too low: key bottoms on it and feels hard."),
             .goodWhen = T("No jump, no early stop."),
             .mistake = T("Setting it by the pedal alone."),
             .takes = T("15 / 40."),
             .records = T("Tick; damper-rise.")},
    StepText{.id = "grand-pedals",
             .name = T("Set the pedals"),
             .whatFor = T("Pedals do all and only their own work."),
             .tools = T("Spanner, lamp, cushion."),
             .how = T("Damper pedal: 3 to 8 mm free, then all stir together; rise 4 to 7 by one nut, by the middle "
                      "reading. Shift: stop so that each three-string note leaves one string and no hammer touches the "
                      "next note; comes back by itself. Sostenuto: last; tabs in one line, knife clears them at rest."),
             .way = T("Nut or rod longer = less free play, higher."),
             .goodWhen = T("No squeak, no jump."),
             .mistake = T("Shift so far that it strikes the neighbour."),
             .takes = T("30 / 60."),
             .records = T("Damper-rise at three notes; free play; tick.")},
    StepText{.id = "key-upstop-rail",
             .name = T("Set the key stop rail"),
             .whatFor = T("Keys do not jump off their pins on a hard blow or in a move."),
             .tools = T("2.5 mm strip, spanner."),
             .how = T("Set it 2 to 3 mm over the backs of the resting keys; it touches none."),
             .way = T(""),
             .goodWhen = T("No click on release."),
             .mistake = T("Screwed down on the keys: they bind."),
             .takes = T("10 / 20."),
             .records = T("Tick.")},
};
#undef T

} // namespace

std::span<const StepText> grandSteps() {
    return kGrandSteps;
}

} // namespace hammerline::words
