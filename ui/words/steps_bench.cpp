// How each step is done, in our own words (common practice, no source).
#include "ui/words/step_texts.h"

namespace hammerline::words {
namespace {

#define T(text) QT_TRANSLATE_NOOP("work", text)
constexpr std::array kBenchSteps = {
    StepText{.id = "clean-action",
             .name = T("Clean action"),
             .whatFor = T("Dust is friction, and hides cracks."),
             .tools = T("Soft brush, vacuum with a fine filter, mask."),
             .how = T("Mask on. Brush from above toward the nozzle, section by section; low air only, away from "
                      "springs and loose felts. Wipe wood dry. Do not wet felt, leather, centres. Nothing is oiled."),
             .way = T(""),
             .goodWhen = T("No grit under a fingertip at rails and flanges."),
             .mistake = T("Compressed air into rotten felt; oil at a centre."),
             .takes = T("30 / 60."),
             .records = T("Event.")},
    StepText{.id = "survey-action",
             .name = T("Survey action"),
             .whatFor = T("The list of faults decides parts, hours and what must come first."),
             .tools = T("Lamp, mirror, caliper; the keys of the program, or a helper who types."),
             .how = T("Go part by part along the row, not note by note: hammers, shanks, butts, springs, jacks, "
                      "wippens, checks, straps, dampers. Move each centre: does it fall freely, does it move sideways? "
                      "Type fault and note. Measure felt over wood at the worst hammer of each section."),
             .way = T(""),
             .goodWhen = T("Every part of the list is \"sound\" or has notes."),
             .mistake = T("Surveying while mending."),
             .takes = T("60 / 120."),
             .records = T("Findings; hammer-return; felt-left.")},
    StepText{.id = "tighten-screws",
             .name = T("Tighten screws"),
             .whatFor = T("A loose flange is a wandering hammer."),
             .tools = T("Long thin screwdriver, its blade ground to the slot."),
             .how =
                 T("Flange screws of hammers, wippens, dampers, let-off rail, brackets: each until it just stops. Hold "
                   "the part so that it is not twisted out of line. A screw that keeps turning: plug, do not force."),
             .way = T("Clockwise."),
             .goodWhen = T("Snug; nothing moved out of its space."),
             .mistake = T("Brute force into old wood; brass rail screws forced."),
             .takes = T("15 / 30 a section."),
             .records = T("Finding flange-screws.")},
    StepText{.id = "mend-brass-rail",
             .name = T("Mend brass rail"),
             .whatFor = T("The plate or tongue holds the hammer's centre; cracked, the hammer wobbles."),
             .tools = T("Thin screwdriver, plate holder or tweezers, magnifier. Screws of the old thread."),
             .how = T("Look at plates (crack in line with the hole, hollow back) and tongues (crease at the pin "
                      "groove). Loosen the damper lever in the way. Undo the screw just enough to slip the pin out. "
                      "New plate, pin in its groove, screw home, check that its end does not touch the butt. Cracked "
                      "tongue: repair clip; several in a row: the rail section."),
             .way = T("A screw too long blocks the butt: shorten it."),
             .goodWhen = T("Hammer swings freely and has no side play."),
             .mistake = T("New screws of another thread; tongue bent to space a hammer."),
             .takes = T("Plate 6 / 15, clip 10 / 25 a note; rail section 60 + 3 a note / 150 + 8."),
             .records = T("Findings butt-plate, brass-flange-rail; sizes: screw thread and length, pin.")},
    StepText{.id = "free-centres",
             .name = T("Free centres"),
             .whatFor = T("A tight centre is a slow note, a loose one a wobbling note."),
             .tools = T("Centre pins by half sizes, reamer or burnishing pin, cutter; micrometer or a drilled gauge."),
             .how = T("First find out which centre: hammer off its spring, wippen, jack, damper lever, each by itself. "
                      "Tight by damp: dry the room, wait. Tight by green pins: new pins, next size up, bushing "
                      "smoothed. Loose: next size up. Measure the old pin; write size and date under the part."),
             .way = T("Half a size is 0.025 mm (.001 in)."),
             .goodWhen =
                 T("Grand: shank 4 to 7 swings; upright: butt (spring off) 3 to 6; falls freely, no side play."),
             .mistake = T("Oil, or heat until the wood chars; one size for all."),
             .takes = T("5 / 10 a pin single, 4 / 8 in a set."),
             .records = T("Findings; size of pin per note.")},
    StepText{.id = "mend-butts-and-springs",
             .name = T("Mend butts and springs"),
             .whatFor = T("The butt gives power and repetition."),
             .tools = T("Thin knife, glue, tweezers, small hook; the butt held in a notched block."),
             .how = T("Leather dished where the jack pushes: new, same thickness. Cushion hard: new. Cord loop or "
                      "spring broken: new; the spring sits in its slot and groove. Catcher leather bare: new. Do a "
                      "whole set before regulating if more than a tenth is bad."),
             .way = T(""),
             .goodWhen = T("Jack tip slides without a click; hammer returns by itself from half way."),
             .mistake = T("Thicker leather on a few notes: those notes play tight."),
             .takes = T("See remedies."),
             .records = T("Findings butt-leather, butt-cushion, butt-spring, catcher.")},
    StepText{.id = "mend-wippens-and-jacks",
             .name = T("Mend wippens and jacks"),
             .whatFor = T("The jack must return by itself, the wippen must ride its capstan."),
             .tools = T("Tweezers, hook, glue, a holder: two battens with a slot for the wippen."),
             .how = T("Jack glue joint, spring, pin; heel cloth with a hole: renew the set; check felt grooved: renew. "
                      "Sticker and lifter felts, elbows: the whole set if they crumble. Grand: knuckles flat: ease up "
                      "or new; spring slots clean."),
             .way = T(""),
             .goodWhen = T("Trip each jack: it snaps home; wippen falls freely."),
             .mistake = T("One new heel cloth among worn ones."),
             .takes = T("See remedies."),
             .records = T("Findings.")},
    StepText{.id = "try-let-off-screws",
             .name = T("Try let-off screws"),
             .whatFor = T("Whether the let-off can be set at all."),
             .tools = T("Hook or cup on a handle: a steel rod bent to a small hook, the tip filed flat."),
             .how = T("Three screws a section: a quarter turn and back. If the eye twists and the screw stands: stop. "
                      "Seized: warm the screw (not the felt) with a soldering iron's tip, wait, try again; else leave "
                      "and say so. Button felt packed or grooved: renew the set first."),
             .way = T(""),
             .goodWhen = T("Three of three move in each section."),
             .mistake = T("Twisting the eye off."),
             .takes = T("5 / 10."),
             .records = T("Findings let-off-screw, let-off-button.")},
    StepText{.id = "file-hammers",
             .name = T("File hammers"),
             .whatFor = T("Grooved felt wraps the string; a clean egg-shaped crown gives tone back. Before regulating: "
                          "it makes blow, let-off and checking larger."),
             .tools = T("Strips of abrasive cloth glued to a thin lath, half a hammer wide, three grades; a batten "
                        "under the tails so that nothing bends; pencil."),
             .how = T("Pencil a line across the crown. Space hammers to their old grooves first (they show where the "
                      "strings are). Support the head. Stroke from the shoulder up to the crown, stop before it, both "
                      "sides alike; peel layers, do not cut across. Last take the loose fuzz at the crown with one or "
                      "two light strokes from each shoulder, never sideways. Read felt over wood at the sample "
                      "hammers. Stop, photograph, sleep on it; a further pass another day if the grooves still show."),
             .way = T("At most a third of the felt over the wood in all times together, never less than 6 / 4.5 / 3 / "
                      "2.2 / 1.5 mm."),
             .goodWhen =
                 T("Egg shape, pencil line just gone, grooves gone or faint, both shoulders alike, crown square; top "
                   "octave only a few strokes. Judge from the side against a lamp and by a photograph with a rule."),
             .mistake = T("Flat crown; chasing the last groove; filing after the let-off was set."),
             .takes = T("1 / 2 a hammer and pass."),
             .records = T("Event \"filing pass\": number, date, notes, mm taken (felt-left before less after), photo, "
                          "verdict and whose; sums are kept.")},
    StepText{.id = "mend-hammers",
             .name = T("Mend hammers"),
             .whatFor = T("A loose head clicks, a cracked shank sounds dead."),
             .tools = T("Glue, a stop block cut to the neighbours' angle; head puller from two wedges."),
             .how = T("Knock heads lightly: a click is a loose head. Reglue in its old place: same distance, same "
                      "angle as its neighbours. Cracked shank: new, cut to length, glued in line. A new set is bored "
                      "to the old distance and angle: send the samples of every section end, keep the old heads."),
             .way = T(""),
             .goodWhen = T("Heads in one line, one angle."),
             .mistake = T("Spares of a set that is bored for its notes: they do not exist."),
             .takes = T("Reglue 4 / 10; shank 8 / 20; set 9 / 25 a hammer."),
             .records = T("Findings; sizes: bore distance, rake, tail.")},
    StepText{.id = "travel-hammers",
             .name = T("Travel hammers"),
             .whatFor = T("A hammer that drifts as it rises hits a neighbour's string and wears slantwise."),
             .tools = T("Long rod or screwdriver under a row of shanks; gummed paper strip."),
             .how =
                 T("Lift ten together slowly from rest to striking height: watch which leans toward a neighbour. "
                   "Loosen its flange screw, put a strip of paper under one side of the flange, tighten, look again."),
             .way = T("Grand (flange on top of its rail): paper under the side toward which it drifts. Upright (flange "
                      "on the player's side of its rail): paper on the side away from the drift; on the wrong side it "
                      "gets worse, then change sides. Brass rail: no paper; drift means plate, pin or tongue."),
             .goodWhen = T("A row rises like one board."),
             .mistake = T("Judging with a loose centre; travelling hammers whose old grooves stay: the grooves no "
                          "longer meet the strings."),
             .takes = T("1 / 2.5 a hammer that needs it."),
             .records = T("Word hammer-travel.")},
    StepText{
        .id = "square-hammers",
        .name = T("Square hammers"),
        .whatFor = T("A head that leans misses one of its strings."),
        .tools = T("Hot-air gun with a narrow nozzle and a metal shield; the other hand as vice."),
        .how = T(
            "Lift every second hammer: is the gap to both neighbours the same at crown and tail? Warm the shank near "
            "its middle, turning it, until the wood gives; twist a little beyond, hold until cool. Small twists only."),
        .way = T("Twist toward where the crown should go."),
        .goodWhen = T("Gaps parallel."),
        .mistake = T("Heat at head or butt: the glue lets go; felt singes."),
        .takes = T("1 / 3."),
        .records = T("Word hammer-square.")},
    StepText{.id = "renew-rest-rail",
             .name = T("Renew rest rail"),
             .whatFor =
                 T("The upright's blow is the rest rail; its felt and cushions must be right before anything is read."),
             .tools = T("Straight bar, knife, glue, firm felt or card of known thickness."),
             .how = T("Cloth grooved: new strip of one thickness, no wrinkle, glued lightly. Cushions or pads at the "
                      "brackets: firm felt, same on each. Hinges and hooks: no side play. Rail in two pieces: each for "
                      "itself. Grand: rest felt or rail under the shanks: even, firm; shanks do not lie on it."),
             .way = T("Thicker cloth or pad = blow shorter."),
             .goodWhen = T("Rail straight within 0.5 mm, back on all its stops."),
             .mistake = T("Soft felt that sinks in a month."),
             .takes = T("60 / 120 a piece; pads 35 / 60."),
             .records = T("Findings; cloth and pad thickness.")},
    StepText{.id = "fit-straps",
             .name = T("Fit straps"),
             .whatFor = T("They hold wippens up when the action is out and help the hammer back."),
             .tools =
                 T("Cork strap: a stick with a blunt pin to push it in; clip: thin pliers; glued cord: fine brush."),
             .how = T("Cut old ones close to the butt. Keep one whole one: its length from butt to tab hole. Choose "
                      "the kind by the catcher: with a hole: cork or glued; without: clip. Fit ten, look, then the "
                      "rest. Leave them slack; the wires are set at the end."),
             .way = T(""),
             .goodWhen = T("All tabs hang in one line."),
             .mistake = T("Gluing corks; mixed lengths."),
             .takes = T("1.2 / 4 a note."),
             .records = T("Finding bridle-strap; kind and length.")},
    StepText{.id = "mend-dampers-on-bench",
             .name = T("Mend dampers on bench"),
             .whatFor = T("Levers, springs and flats are reached only now."),
             .tools = T("Tweezers, hook, spring bender, glue that can be undone with warmth."),
             .how = T("Each lever: falls, springs back, no side play. Springs or cords broken: new, all of one "
                      "strength. Lever cloth cut by the spoon: new set. Rod and its hangers: no slop. Flat felts may "
                      "be glued here, square on the block; wedges and clips not (“Seat dampers”)."),
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
