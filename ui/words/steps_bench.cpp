// How each step is done, in our own words (common practice, no source).
#include "ui/words/step_texts.h"

namespace hammerline::words {
namespace {

#define T(text) QT_TRANSLATE_NOOP("work", text)
constexpr std::array kBenchSteps = {
    StepText{.id = "clean-action",
             .name = T("Clean the action"),
             .whatFor = T("Dust is friction, and it hides cracks."),
             .tools = T("Soft brush, vacuum with a fine filter, mask."),
             .how = T("Put the mask on. Brush from above toward the nozzle, section by section, with little suction, "
                      "away from springs and loose felts. Wipe wood dry. Wet no felt, leather or centre. Oil nothing."),
             .way = T(""),
             .goodWhen = T("No grit under a fingertip at rails and flanges."),
             .mistake = T("Compressed air into rotten felt; oil at a centre."),
             .takes = T("30 / 60."),
             .records = T("Event.")},
    StepText{.id = "survey-action",
             .name = T("Survey the action"),
             .whatFor = T("The list of faults decides parts, hours and what must come first."),
             .tools = T("Lamp, mirror, caliper; the keys of the program, or a helper who types."),
             .how = T("Go part by part along the row, not note by note: hammers, shanks, springs, jacks, "
                      "wippens, checks, dampers.\nUDBO|Butts and straps as well.\nMove each centre: does it fall "
                      "freely, does it move sideways? "
                      "Type fault and note. Measure felt over wood at the worst hammer of each section."),
             .way = T(""),
             .goodWhen = T("Every part of the list is \"sound\" or has notes."),
             .mistake = T("Surveying while mending."),
             .takes = T("60 / 120."),
             .records = T("Findings; hammer-return; felt-left.")},
    StepText{.id = "tighten-screws",
             .name = T("Tighten the action's screws"),
             .whatFor = T("A loose flange makes a wandering hammer."),
             .tools = T("Long thin screwdriver, its blade ground to the slot."),
             .how = T("Turn each screw of flanges, rails and brackets until it just stops. Hold the part so that it is "
                      "not twisted out of line. Where a screw keeps turning, plug its hole; do not force it."),
             .way = T("Clockwise."),
             .goodWhen = T("Snug; nothing moved out of its space."),
             .mistake = T("Forcing a screw into old wood.\nB|Forcing a screw into the brass."),
             .takes = T("15 / 30 a section."),
             .records = T("Finding flange-screws.")},
    StepText{.id = "mend-brass-rail",
             .name = T("Mend the brass rail"),
             .whatFor = T("The plate or tongue holds the hammer's centre; cracked, the hammer wobbles."),
             .tools = T("Thin screwdriver, plate holder or tweezers, magnifier. Screws of the old thread."),
             .how = T("Look at the plates (a crack in line with the hole, a hollow back) and the tongues (a crease at "
                      "the pin groove). Loosen the damper lever that is in the way. Undo the screw just enough to slip "
                      "the pin out. Fit the new plate, lay the pin in its groove, drive the screw home and see that "
                      "its end does not touch the butt. A cracked tongue gets a repair clip; where several in a row "
                      "are cracked, renew that section of the rail."),
             .way = T("A screw too long blocks the butt: shorten it."),
             .goodWhen = T("Hammer swings freely and has no side play."),
             .mistake = T("New screws of another thread; tongue bent to space a hammer."),
             .takes = T("Plate 6 / 15, clip 10 / 25 a note; rail section 60 + 3 a note / 150 + 8."),
             .records = T("Findings butt-plate, brass-flange-rail; sizes: screw thread and length, pin.")},
    StepText{
        .id = "free-centres",
        .name = T("Free the centres"),
        .whatFor = T("A tight centre makes a slow note, a loose one a wobbling note."),
        .tools = T("Centre pins by half sizes, reamer or burnishing pin, cutter; micrometer or a drilled gauge."),
        .how = T(
            "O|The damper cage stands before the hammers: number its wires and take it off first.\nFirst find out "
            "which centre it is: try hammer, wippen, jack and damper lever each by itself. Where damp "
            "has made it tight, dry the room and wait. Green pins are renewed in the next size up, and the bushing is "
            "smoothed. A loose centre gets the next size up. Measure the old pin; write size and date under the part."),
        .way = T("Half a size is 0.025 mm (.001 in)."),
        .goodWhen = T("UDBO|The butt, its spring off, swings 3 to 6 times.\nG|The shank swings 4 to 7 times.\nIt falls "
                      "freely and has no side play."),
        .mistake = T("Oil, or heat until the wood chars; one size for all."),
        .takes = T("5 / 10 a pin single, 4 / 8 in a set."),
        .records = T("Findings; size of pin per note.")},
    StepText{
        .id = "mend-butts-and-springs",
        .name = T("Mend butts and springs"),
        .whatFor = T("The butt gives power and repetition."),
        .tools = T("Thin knife, glue, tweezers, small hook; the butt held in a notched block."),
        .how = T("O|The damper cage stands before the hammers: number its wires and take it off first.\nRenew leather "
                 "that the jack has dished, in the same thickness; hard cushions; broken springs "
                 "and their loops; bare catcher leather. See that each spring sits in its slot and groove. Where more "
                 "than a tenth is bad, do the whole set before regulating."),
        .way = T(""),
        .goodWhen = T("The jack's tip slides without a click, and the hammer returns by itself from half way."),
        .mistake = T("Thicker leather on a few notes: those notes play tight."),
        .takes = T("See remedies."),
        .records = T("Findings butt-leather, butt-cushion, butt-spring, catcher.")},
    StepText{.id = "mend-wippens-and-jacks",
             .name = T("Mend wippens and jacks"),
             .whatFor = T("UBG|The jack must return by itself, the wippen must ride its capstan.\nD|The jack must "
                          "return by itself, the wippen must follow its lifter."),
             .tools = T("Tweezers, hook, glue, a holder: two battens with a slot for the wippen."),
             .how =
                 T("Look at each jack's glue joint, spring and pin. Renew heel cloth that has a hole as a set, and "
                   "grooved check felt.\nD|Renew the felts and elbows of the lifters as a whole set where they crumble."
                   "\nUB|Renew the felts of stickers as a whole set where they crumble.\nG|Raise or renew flat "
                   "knuckles; clean the slots of the springs."),
             .way = T(""),
             .goodWhen = T("Trip each jack: it snaps home; wippen falls freely."),
             .mistake = T("One new heel cloth among worn ones."),
             .takes = T("See remedies."),
             .records = T("Findings.")},
    StepText{.id = "try-let-off-screws",
             .name = T("Try the let-off screws"),
             .whatFor = T("Whether the let-off can be set at all."),
             .tools = T("Hook or cup on a handle: a steel rod bent to a small hook, the tip filed flat."),
             .how = T("Try three screws in each section: a quarter turn and back. If the eye twists and the screw "
                      "stands still, stop. Warm a seized screw (not the felt) with the tip of a soldering iron, wait "
                      "and try again; if it stays, leave it and say so. Renew packed or grooved button felt first."),
             .way = T(""),
             .goodWhen = T("All three move in each section."),
             .mistake = T("Twisting the eye off."),
             .takes = T("5 / 10."),
             .records = T("Findings let-off-screw, let-off-button.")},
    StepText{.id = "file-hammers",
             .name = T("File the hammers"),
             .whatFor = T("Grooved felt wraps the string; a clean egg-shaped crown gives tone back. It is done before "
                          "regulating, for it makes blow, let-off and checking larger."),
             .tools = T("Strips of abrasive cloth glued to a thin lath, half a hammer wide, three grades; a batten "
                        "under the tails so that nothing bends; pencil."),
             .how = T("O|The damper cage stands before the hammers: number its wires and take it off first.\nPencil a "
                      "line across the crown. Space hammers to their old grooves first (they show where the "
                      "strings are). Support the head. Stroke from the shoulder up to the crown, stop before it, both "
                      "sides alike; peel layers, do not cut across. Last take the loose fuzz at the crown with one or "
                      "two light strokes from each shoulder, never sideways. Read felt over wood at the sample "
                      "hammers. Stop and photograph it. Where the grooves still show, file again another day."),
             .way = T("Take at most a third of the felt over the wood, all times together, and leave at least 6 mm in "
                      "the bass, 4.5 in the tenor, 3 in the treble, 2.2 and 1.5 at the top."),
             .goodWhen =
                 T("Egg shape, pencil line just gone, grooves gone or faint, both shoulders alike, crown square; top "
                   "octave only a few strokes. Judge from the side against a lamp and by a photograph with a rule."),
             .mistake = T("Flat crown; chasing the last groove; filing after the let-off was set."),
             .takes = T("1 / 2 a hammer and pass."),
             .records = T("Event \"filing pass\": number, date, notes, mm taken (felt-left before less after), photo, "
                          "verdict and whose; sums are kept.")},
    StepText{.id = "mend-hammers",
             .name = T("Mend hammers and shanks"),
             .whatFor = T("A loose head clicks, a cracked shank sounds dead."),
             .tools = T("Glue, a stop block cut to the neighbours' angle; head puller from two wedges."),
             .how = T("O|The damper cage stands before the hammers: number its wires and take it off first.\nKnock "
                      "heads lightly: a click is a loose head. Reglue in its old place: same distance, same "
                      "angle as its neighbours. Cracked shank: new, cut to length, glued in line. A new set is bored "
                      "to the old distance and angle: send the samples of every section end, keep the old heads."),
             .way = T(""),
             .goodWhen = T("Heads in one line, one angle."),
             .mistake = T("Ordering single spares of a set that is bored for its notes."),
             .takes = T("Reglue 4 / 10; shank 8 / 20; set 9 / 25 a hammer."),
             .records = T("Findings; sizes: bore distance, rake, tail.")},
    StepText{.id = "travel-hammers",
             .name = T("Make the hammers travel straight"),
             .whatFor = T("A hammer that drifts as it rises hits a neighbour's string and wears slantwise."),
             .tools = T("Long rod or screwdriver under a row of shanks; gummed paper strip."),
             .how =
                 T("O|The damper cage stands before the hammers: number its wires and take it off first.\nLift ten "
                   "together slowly from rest to striking height: watch which leans toward a neighbour. "
                   "Loosen its flange screw, put a strip of paper under one side of the flange, tighten, look again."),
             .way = T("G|Put the paper under the side toward which the hammer drifts.\nUDO|Put the paper on the side "
                      "away from the drift. Where it gets worse, change sides."),
             .goodWhen = T("A row rises like one board."),
             .mistake = T("Judging with a loose centre; travelling hammers whose old grooves stay: the grooves no "
                          "longer meet the strings."),
             .takes = T("1 / 2.5 a hammer that needs it."),
             .records = T("Word hammer-travel.")},
    StepText{
        .id = "square-hammers",
        .name = T("Square the hammers"),
        .whatFor = T("A hammer head that leans misses one of its strings."),
        .tools = T("Hot-air gun with a narrow nozzle and a metal shield; the other hand as vice."),
        .how = T(
            "Lift every second hammer: is the gap to both neighbours the same at crown and tail? Warm the shank near "
            "its middle, turning it, until the wood gives; twist a little beyond, hold until cool. Small twists only."),
        .way = T("Twist toward where the crown should go."),
        .goodWhen = T("Gaps parallel."),
        .mistake = T("Heat at the joints: the glue lets go; felt singes."),
        .takes = T("1 / 3."),
        .records = T("Word hammer-square.")},
    StepText{.id = "renew-rest-rail",
             .name = T("Renew the rest rail's felts"),
             .whatFor = T("The rest rail makes the blow; its felt and cushions must be right before anything is read."),
             .tools = T("Straight bar, knife, glue, firm felt or card of known thickness."),
             .how = T("Glue a new strip lightly where the cloth is grooved: one thickness, no wrinkle. Put firm felt "
                      "of one thickness at every bracket. See that hinges and hooks have no side play. Where the rail "
                      "is in two pieces, set each for itself."),
             .way = T("Thicker cloth or pad = blow shorter."),
             .goodWhen = T("Rail straight within 0.5 mm, back on all its stops."),
             .mistake = T("Soft felt that sinks in a month."),
             .takes = T("60 / 120 a piece; pads 35 / 60."),
             .records = T("Findings; cloth and pad thickness.")},
    StepText{.id = "fit-straps",
             .name = T("Fit the bridle straps"),
             .whatFor = T("Straps hold the wippens up when the action is out, and help the hammer back."),
             .tools =
                 T("Cork strap: a stick with a blunt pin to push it in; clip: thin pliers; glued cord: fine brush."),
             .how = T("Keep one old strap whole: its length from butt to tab hole is the new one's. Cut the others "
                      "close to the butt. A catcher with a hole takes cork or glued straps, one without takes clips. "
                      "Fit ten, look, then fit the rest. Leave them slack; the wires are set at the end."),
             .way = T(""),
             .goodWhen = T("All tabs hang in one line."),
             .mistake = T("Gluing corks; mixed lengths."),
             .takes = T("1.2 / 4 a note."),
             .records = T("Finding bridle-strap; kind and length.")},
    StepText{
        .id = "mend-dampers-on-bench",
        .name = T("Mend the dampers on the bench"),
        .whatFor = T("Levers, springs and flat felts can be reached only now."),
        .tools = T("Tweezers, hook, spring bender, glue that can be undone with warmth."),
        .how =
            T("See that each lever falls, springs back and has no side play. Renew broken springs or cords, all of one "
              "strength, as a set.\nUBD|Renew lever cloth that has been cut through, as a set.\nO|See that each wire "
              "is straight "
              "and its button or screw firm.\nThe rod and its hangers have no slop. "
              "Flat felts may be glued here, square on the block; wedges and clips are glued later, on the strings."),
        .way = T("Thinner felt makes every damper start later and press less; note old felt depth (9.5 and 11 mm "
                 "were made)."),
        .goodWhen = T("Levers stand in one row under light pressure."),
        .mistake = T("Kit glued by its box, without counting this piano's singles and pairs."),
        .takes = T("See remedies."),
        .records = T("Findings; felt kind and width per note.")},
};
#undef T

} // namespace

std::span<const StepText> benchSteps() {
    return kBenchSteps;
}

} // namespace hammerline::words
