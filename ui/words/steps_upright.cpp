// How each step is done, in our own words (common practice, no source).
#include "ui/words/step_texts.h"

namespace hammerline::words {
namespace {

#define T(text) QT_TRANSLATE_NOOP("work", text)
constexpr std::array kUprightSteps = {
    StepText{.id = "trial-notes",
             .name = T("Regulate the trial notes"),
             .whatFor = T("A few notes fully regulated show how this piano wants to be set, and what one turn does."),
             .tools = T("All gauges of the following steps; chalk."),
             .how = T("In each section take the second natural from each end and the sharp nearest the middle.\n"
                      "UDBO|Set them completely, from the blow to the checks.\nG|Set them completely, from wippen, "
                      "jack, lever and spring to the checks, in the order of the steps that follow.\nWrite down each "
                      "turn with the reading before and "
                      "after it. Play them against each other."),
             .way = T("If other notes were read, those are the trial notes."),
             .goodWhen = T("They feel alike and agree within the limits of evenness."),
             .mistake = T("All in the middle two octaves."),
             .takes = T("90 / 240."),
             .records = T("Readings, ticks with amounts: ratio, responses, recipe.")},
    StepText{
        .id = "set-rest-rail",
        .name = T("Set the rest rail"),
        .whatFor = T("The blow is how far the hammers travel; one rail sets it for all notes."),
        .tools = T("Stick with nicks each 2 mm; firm felt or card for pads."),
        .how = T("Read crown to string at both ends of each rail piece and each section, soft pedal up. Put the "
                 "same pad between rail and bracket at every bracket, thicker toward one end where the line "
                 "slopes. Read again, sight along the heads."),
        .way = T("Thicker pad = rail toward the strings = blow shorter, lost motion more, dampers earlier. 1 mm "
                 "of pad is about 1.28 mm of blow."),
        .goodWhen = T("{blow}. The heads stand in a line within 1 mm."),
        .mistake =
            T("Forcing a figure from a book with a ruler: then all notes want more or less play taken up, and there is "
              "too much aftertouch. Where one hammer has a longer blow, look for a worn head, shank or cloth."),
        .takes = T("35 / 60 a piece."),
        .records = T("Blow at ends; pads.")},
    StepText{
        .id = "level-naturals",
        .name = T("Level the naturals"),
        .whatFor = T("It is the line the hand feels, and all later readings of the key start from it."),
        .tools = T("Straight bar no longer than a section (a long one hides or shows a crown), paper strips of known "
                   "thickness."),
        .how =
            T("Prove one natural at each end of the section from the bed and lay the bar on those two. A key "
              "that lets the strip pass is low by its thickness. Where many share a hollow, put card under the "
              "balance rail beside its screws. For the rest put paper under the felt at the balance pin.\nD|Unhook the "
              "keys for it, or do it before the action goes back.\nMatch "
              "what is there: straight, or crowned by 0.5 to 1 mm in the middle."),
        .way = T("Add: the front goes up and the dip gets deeper.\nUDBO|1 mm under the pin is about 2.65 mm at "
                 "the front.\nG|1 mm under the pin is about 2.1 mm at the front."),
        .goodWhen = T("A step to the neighbour under {key-height step}. Then leave it: no balance paper is moved "
                      "afterwards for any other reason than height."),
        .mistake = T("Paper on top of the felt; fallboard touching; levelling with crushed felts."),
        .takes = T("1.2 / 2.5 a key that needs it; rail shim 45 / 90."),
        .records = T("Key-height; crown.")},
    StepText{.id = "level-sharps",
             .name = T("Level the sharps"),
             .whatFor = T("The sharps stand at one height over the naturals."),
             .tools = T("Step block of 12 mm: planed hardwood on two feet."),
             .how =
                 T("Set the step block of 12 mm on the two naturals beside it. Put paper at the balance pin as before. "
                   "Only here may the balance paper serve a sharp that buries although its naturals are right."),
             .way = T(""),
             .goodWhen = T("{sharp-height} over the naturals, in one line."),
             .mistake = T("Beginning before the naturals are level."),
             .takes = T("1.2 / 2.5."),
             .records = T("Sharp-height.")},
    StepText{
        .id = "take-up-lost-motion",
        .name = T("Take up the lost motion"),
        .whatFor = T("The hammer starts when the key starts, and the jack still comes home."),
        .tools = T("UB|Capstan pin or a 2 mm steel rod bent at the end; square head: a slotted bar.\nD|Pliers with "
                   "padded jaws for the button on its wire, and a second pair that holds the wire."),
        .how = T("Rail test first, all notes, one minute: push the rest rail a hair toward the strings: every hammer "
                 "must move at once; one that waits stands off its rail. Draw it 1 mm back: how far each crown follows "
                 "is its play (1 mm at the crown = 0.2 mm at the key). Then the key: a light press must stir the "
                 "wippen a hair before the hammer. Turn a quarter at most, play three firm blows, test again. Last the "
                 "slow release: the jack comes home (jack-return)."),
        .way = T("UBO|Capstan anticlockwise, seen from above: up, less play. Clockwise: down, more play. A rocker: "
                 "ease one screw and tighten the other; try which.\nD|Button clockwise, seen from above: less play, "
                 "then a touch back. Anticlockwise: more play."),
        .goodWhen = T("The hammer rests on its rail and no play is felt.\nUBO|None is right as long as both tests "
                      "pass; at most {lost-motion high}.\nD|{lost-motion}, never quite none.\nIn the damp "
                      "season as little as the jack allows, in the dry season a trace."),
        .mistake = T("Turning until the hammer rises; soft pedal half down; a damp month (wait)."),
        .takes = T("0.5 / 1.2."),
        .records = T("Lost-motion (number or word), jack-return.")},
    StepText{.id = "set-let-off",
             .name = T("Set the let-off"),
             .whatFor = T("The jack lets go just before the string, so that the hammer flies free."),
             .tools = T("Hook or cup on a handle; wire or drill shanks of 2 and 3 mm as strips."),
             .how = T("Hold the damper pedal down. Press the key very slowly: the hammer rises, stops and falls back. "
                      "Read the smallest gap. Turn an eighth and look. Go on to the next; look back often."),
             .way = T("In (clockwise, looking at the eye or the head of the screw): the hammer lets go earlier, "
                      "farther from the string. Out: nearer."),
             .goodWhen = T("About 3 mm in the bass to 2 at the top; a step to the neighbour under {let-off step}."),
             .mistake = T("Fast stroke; string low; closer than a string's swing: it blocks. Grooved felt: the effect "
                          "of a turn is not even."),
             .takes = T("0.5 / 1.2."),
             .records = T("Let-off.")},
    StepText{.id = "set-dip-naturals",
             .name = T("Set the dip of the naturals"),
             .whatFor = T("The dip is how far the key goes; it makes room for the escape."),
             .tools = T("Dip block; a block of wood planed to the aim, {key-dip natural aim}, and 250 g."),
             .how = T("Press with a weight or one steady finger, always the same. Read between resting neighbours. Put "
                      "paper under the felt at the front pin, or take it out."),
             .way = T("Add = shallower; take out = deeper (1 mm of paper is about 1.1 mm of dip)."),
             .goodWhen = T("{key-dip natural}; a step to the neighbour under {key-dip step}."),
             .mistake = T("Pressing into the felt; paper on top."),
             .takes = T("0.8 / 1.5."),
             .records = T("Key-dip.")},
    StepText{.id = "set-dip-sharps",
             .name = T("Set the dip of the sharps"),
             .whatFor = T("Sharps escape like naturals and do not bury."),
             .tools = T("The natural beside it, a 2 mm strip."),
             .how = T("Set it by the feel of the aftertouch, against a natural beside it. Then press it: at least 1 "
                      "mm, better 2, still stands above a resting natural."),
             .way = T("As for the naturals. Where a sharp goes below them, first see whether the naturals are too "
                      "deep, then put front paper under the sharp, and only then paper at its balance pin."),
             .goodWhen = T("So much of it still stands above a resting natural: {sharp-proud}."),
             .mistake = T("Taking front papers out to gain aftertouch: then the sharps go below the naturals."),
             .takes = T("0.8 / 1.5."),
             .records = T("Key-dip of sharps, sharp-proud.")},
    StepText{.id = "prove-aftertouch",
             .name = T("Prove the aftertouch"),
             .whatFor = T("The jack clears with a little to spare."),
             .tools = T("Two spacers with a slot for the pin, as thick as the least and the most: {aftertouch}."),
             .how = T("Lay the thin spacer on the front felt and press slowly: the jack must just go. With the thick "
                      "one it must not. Decide for the whole piano which of dip, blow and aftertouch may give."),
             .way = T("Too little on all notes: take front papers out, or set the let-off a little farther from the "
                      "string, or shorten the blow. Too much: the reverse. On one note look first at its front paper, "
                      "then its let-off.\nUBDO|Then its lost motion.\nG|Then its blow.\nNever at the balance pin."),
             .goodWhen = T("{aftertouch}, alike under the finger."),
             .mistake = T("Judging over a soft front felt."),
             .takes = T("1 / 2 a note asked; go / no-go of all 10 / 20."),
             .records = T("Aftertouch (pair).")},
    StepText{.id = "set-checks",
             .name = T("Set the back checks"),
             .whatFor = T("The hammer is caught near the string and does not bounce."),
             .tools = T("Two benders: slotted bars; one holds the wire at its foot, one bends below the head."),
             .how = T("Strike a firm blow, hold the key and read from crown to string, three times. Bend the wire a "
                      "little with both tools, and see that the check stands square to the catcher. After a soft blow "
                      "the hammer must still be held. Sight the checks along the row."),
             .way = T("Check toward the catcher = caught nearer the string; away = farther."),
             .goodWhen = T("{checking}, all in a line; no touch on the way up."),
             .mistake = T("Bending without holding: the wippen splits; a wire bent twice is spent."),
             .takes = T("0.5 / 1.2."),
             .records = T("Checking.")},
    StepText{.id = "set-damper-pedal",
             .name = T("Set the damper pedal"),
             .whatFor = T("All dampers leave together, high enough, and rest when the pedal is up."),
             .tools = T("Rule or strips, spanner; a wedge under the pedal."),
             .how = T("Free play first: 3 to 9 mm at the toe before any stirs. Pedal down: read the gap at the lowest, "
                      "a middle, the highest damper. Take the middle one of the readings: it alone decides rod or nut. "
                      "What stands off it is the wire of that damper; a slope from end to end is a rod hanger, a bent "
                      "or two-piece rod, its joint: look there."),
             .way = T("Rod longer (or its nut turned so that the slack shrinks) = less free play, dampers higher; "
                      "shorter = the reverse. One turn, read all three again."),
             .goodWhen = T("The middle one {damper-rise}; ends alike within 1.5 mm, free play there."),
             .mistake = T("Turning one rod both ways in one go; leaving no free play, so that everything rings."),
             .takes = T("15 / 30."),
             .records = T("Damper-rise at three notes; free play.")},
    StepText{.id = "line-dampers",
             .name = T("Line the dampers by the pedal"),
             .whatFor = T("By the pedal every damper stirs at the same moment. It is done before the spoons, for "
                          "bending a wire shifts both timings."),
             .tools = T("Two slotted benders, or one and a finger."),
             .how = T("Wedge the pedal so that dampers are just about to stir. Sight along the heads; press the pedal "
                      "a hair: which leaves first, which last? Bend its wire below the head by half a millimetre; keep "
                      "the felt flat on the strings."),
             .way = T("Head toward the strings = stirs later; away = earlier (by pedal and by key)."),
             .goodWhen = T(
                 "All stir within 1 mm of pedal; string pushed with a finger finds no pressure at the neutral wedge."),
             .mistake = T("Felt no longer flat; wire bent twice."),
             .takes = T("2 / 5 a damper that needs it."),
             .records = T("Word damper-line.")},
    StepText{
        .id = "time-dampers-by-key",
        .name = T("Time the dampers by the key"),
        .whatFor = T("By the key the damper leaves when the hammer is half way."),
        .tools = T("Spoon bender: a rod with a slot, bent to reach behind the wippen; block half the blow."),
        .how = T("Set three notes by eye in the piano first. Then put a block of half the blow between rail and "
                 "shanks, so that the hammers stand half way. Lift each wippen slowly: its hammer and its damper must "
                 "stir at the same moment. Hold the tool still and move the wippen."),
        .way = T("Spoon toward the damper lever = earlier; away = later. A hair at the tip is millimetres of hammer."),
        .goodWhen = T("It leaves after {damper-start} of the hammer's way; neighbours within {damper-start step}."),
        .mistake =
            T("Bending spoons before the wires and the blow are right; bending one so far that the note never damps."),
        .takes = T("0.7 / 2 a note (keys on and off extra)."),
        .records = T("Damper-start (number or E K L).")},
    StepText{
        .id = "time-overdampers",
        .name = T("Time the overdampers"),
        .whatFor = T(
            "By key and by pedal an overdamper leaves when the hammer is half way, and no wire holds it off at rest."),
        .tools = T("Small pliers with padded jaws for the button, or a screwdriver where it is a screw; two benders "
                   "where it is only a bent wire."),
        .how = T("Key at rest: each wire must have a trace of up-and-down play under its damper lever; without play it "
                 "holds the damper off. Press slowly: damper rises when the hammer is half way. Turn button or nut a "
                 "half; where none is, bend the wire's crook. Lift rail: must not touch any at rest."),
        .way = T("Button up (anticlockwise from above) = play less = earlier; down = later. Wire bent longer = "
                 "earlier. Heads are never bent for timing."),
        .goodWhen = T("A trace of play at rest; each starts near half blow, and all together by the pedal."),
        .mistake = T("Bending the heads; an action that is not seated hard against its bolts."),
        .takes = T("1 / 3 a note."),
        .records = T("Damper-start word, damper-line word.")},
    StepText{.id = "set-soft-pedal",
             .name = T("Set the soft pedal"),
             .whatFor = T("The rail takes about half the blow away, and the keys do not sink."),
             .tools = T("The blow stick, spanner."),
             .how = T("Rod to rail, pedal up: 1 to 4 mm of play. Pedal down: read crown to string at both ends of each "
                      "piece. The mean decides the rod; a difference between the ends is the rail's hinge or hook."),
             .way = T("Rod longer = rail goes farther; shorter = less."),
             .goodWhen = T("So much of the blow is gone: {half-blow}. The ends alike within 1.5 mm."),
             .mistake = T("Rod holding the rail off its stops: false blow."),
             .takes = T("15 / 30."),
             .records = T("Half-blow at two notes a piece.")},
    StepText{.id = "set-bridle-wires",
             .name = T("Set the bridle wires"),
             .whatFor = T("The straps help the jack home and hold nothing back."),
             .tools = T("Finger, or a slotted bar."),
             .how = T("With the soft pedal down the straps may just be tight, and no key dips. With the pedal up they "
                      "are slack. Bend the wire at its foot."),
             .way = T("Wire away from the butt = tighter; toward = slacker."),
             .goodWhen = T("All wires in a line, no wink."),
             .mistake = T("Tight strap felt as a heavy key."),
             .takes = T("0.2 / 0.5."),
             .records = T("Strap word.")},
    StepText{.id = "set-muffler",
             .name = T("Set the muffler"),
             .whatFor = T("The felt strip hangs clear when off."),
             .tools = T("Screwdriver, rule."),
             .how = T("When off, the strip is 5 mm clear of hammers and strings at rest and in play. When on, the "
                      "felt's lower edge stands at the crown."),
             .way = T(""),
             .goodWhen = T("No brush heard."),
             .mistake = T("Felt that still touches in loud play."),
             .takes = T("10 / 20."),
             .records = T("Finding muffler-rail.")},
    StepText{.id = "weigh-touch",
             .name = T("Weigh the touch"),
             .whatFor = T("Two weighings tell friction from weight, before anyone adds lead."),
             .tools = T("Coins or brass weights of known grams."),
             .how = T("Weigh two naturals and a sharp in each section at 13 mm from the front edge, with the damper "
                      "pedal held down: first the weight that just takes the key down, then the one it just lifts. "
                      "Weigh again with the pedal up: the difference is the damper."),
             .way = T("Half the difference of the two is friction, half their sum is the mean weight."),
             .goodWhen = T("Friction 6 to 16 g, samples alike within 4."),
             .mistake = T("Adding lead for friction."),
             .takes = T("1 / 2 a note."),
             .records = T("Down-weight, up-weight.")},
    StepText{
        .id = "play-in",
        .name = T("Play it in"),
        .whatFor = T("Felts and threads settle here and not at the owner's."),
        .tools = T("Fingers; a padded stick to strike several keys at once."),
        .how = T("Play firmly 15 minutes, every note, chords and repeated notes; or let a helper do it. Wait an hour."),
        .way = T(""),
        .goodWhen = T("Nothing shifted by sight."),
        .mistake = T("Regulating again before it has settled."),
        .takes = T("15 / 20."),
        .records = T("Event.")},
    StepText{
        .id = "second-look",
        .name = T("Take a second look"),
        .whatFor = T("The work itself has disturbed the work a little."),
        .tools = T("Gauge strips; lamp."),
        .how =
            T("UDBO|Look at lost motion, let-off, aftertouch and checking only.\nG|Look at blow, let-off, aftertouch "
              "and checking only.\nGo by sight and feel, with numbers where the eye says so. Touch nothing else."),
        .way = T(""),
        .goodWhen = T("No block, no double strike, nothing silent; at most 5 % outside; no step over the limit."),
        .mistake = T("Beginning again at key height."),
        .takes = T("45 / 100."),
        .records = T("Pass.")},
};
#undef T

} // namespace

std::span<const StepText> uprightSteps() {
    return kUprightSteps;
}

} // namespace hammerline::words
