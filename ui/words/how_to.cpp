#include "ui/words/how_to.h"

#include "ui/words/how_to_words.h"

#include <QCoreApplication>

#include <algorithm>
#include <array>

namespace hammerline::words {

namespace {

using namespace dimension;

#define T(text) QT_TRANSLATE_NOOP("howTo", text)
// Common practice, in our own words; no source.
constexpr std::array kRows{
    HowToRow{
        keyHeight,
        T("From the line of this piano's own naturals to the top of the key, at the front edge. From the key bed where "
          "the pass is measured from the bed."),
        T("Prove one natural at each end of each section from the key bed with a small square. Lay a straight bar on "
          "those two keys and turn it round to prove it. Slide a paper strip under each natural between them: what "
          "lets it pass is low by that paper, what lifts the bar is high."),
        T("Small square, straight bar, paper strips of known thickness."),
        T("Keys at rest with the action in, or with the same weights at the back each time. Pedals free. A stretched "
          "line "
          "hangs in its middle: say by how much when the pass begins (a steel wire of 0.5 mm pulled with 10 N sags "
          "0.28). "
          "Before the keys go to the bench, read height and dip of one note in every section, and the same notes "
          "there."),
        T("A gap typed as a height: a gap means low. The bar's own weight pressing its end keys; a chipped corner; the "
          "fallboard touching.")},
    HowToRow{
        sharpHeight, T("From the top of the naturals beside it to the top of the sharp, at its front edge."),
        T("After the naturals are level: stand a step block on the two neighbours and feel the sharp against its step, "
          "or lay the bar on the sharps and pass paper under it."),
        T("Step block of 12 mm, or bar and paper."), T("Both neighbours at rest and themselves in the line."),
        T("Neighbours that are out: then the sharp seems out.")},
    HowToRow{
        keyDip, T("From the top of the key at rest to its top when pressed, at the front edge."),
        T("Press until the key stops, always with the same force: 250 g near the front edge, or one steady finger. It "
          "stops on the felt and is not forced into it. Read the fall between the neighbours, both at rest. With a "
          "block: its lower ledge on the pressed key, its top flush with the neighbours."),
        T("Dip block or depth gauge; a weight of 250 g."),
        T("The two neighbours at rest; sharps at their own front edge."),
        T("Pressing harder each time; a neighbour that is out taken as reference; tape, lead or dust under the key.")},
    HowToRow{
        lostMotion, T("The fall of the key front before the hammer stirs."),
        T("Look first: draw the rest rail gently toward you. Every hammer must follow at once; one that stays behind "
          "is "
          "off the rail. Then press the key slowly and watch the hammer, not the wippen: the fall of the key front "
          "until it stirs is the lost motion. Lift the dampers with the pedal, so that they take no part."),
        T("Thin strip under the key front, or a depth gauge on it."),
        T("Soft pedal up; nothing else hangs on the wippens or presses on the keys."),
        T("Soft pedal half down, or wippens that something holds up: all notes then look tight. A tight strap; the "
          "neighbour's hammer "
          "that sticks."),
        T("None is measured at the key: the hammer rises as soon as the key falls."),
        T("Press slowly: hammer and key must stir together, with the jack under the knuckle.")},
    HowToRow{
        blow, T("From the crown of the resting hammer to the nearest string, along the hammer's path."),
        T("Hold a stick with a nick at each 2 mm level at the strike point. One note at each end of each section and "
          "of "
          "each piece of the rest rail; then sight along the line of heads from the bass end."),
        T("Stick cut to the aim, or a rule."),
        T("Hammers at rest on the rail, soft pedal fully up, nothing else touching them."),
        T("Measured to a string that is missing or low; into a worn groove instead of to the crown; the muffler rail "
          "in "
          "the way."),
        T("From the crown of the resting hammer to the under side of the string."),
        T("Stand a gauge on the shank rail, or pass a stick between the strings. Then bring the line level by eye.")},
    HowToRow{
        letOff, T("The smallest gap between crown and string when the hammer, raised slowly, falls away by itself."),
        T("Damper pedal down. Press the key very slowly until the hammer stops just before the string and falls back: "
          "read the smallest gap. A strip of known thickness beside the string: if it passes, the gap is larger than "
          "it. A hammer that presses on the string: type B, blocks. One that never falls away: L, no let-off."),
        T("Strips, drill shanks or wire of 2 and 3 mm; a light from the side at string height."),
        T("The nearest string of the note; the key pressed through to the end of the jack's trip."),
        T("A fast stroke, which throws the hammer; a string that moves; an action that is not seated."), nullptr,
        T("From the front, over the line of hammers, drop screws backed off: press the key very slowly and read the "
          "smallest gap below the string before the hammer sinks.")},
    HowToRow{
        drop, T("How far below the point of let-off the hammer comes to rest, the key still held."),
        T("Go on with the slow press: after the escape the hammer sinks a little and rests on the repetition lever. "
          "Read how far. Say for the whole pass whether it is counted from let-off or from the string."),
        T("The strips of the let-off, one thicker."), T("Let-off of the same note; repetition spring roughly right."),
        T("Letting the key up, so that the check takes part; a low let-off hides it.")},
    HowToRow{
        aftertouch, T("The fall of the key front that is left after the escape."),
        T("With a spacer as thick as the low limit on the front felt, press slowly: the jack must just escape. With "
          "one "
          "as thick as the high limit it must not. Or read the dip at the moment of the escape and at the bottom, and "
          "take the difference. Type a pair that holds it as 0.8..1.6."),
        T("Spacers of 0.8 and 1.6 mm, or a depth gauge."),
        T("Damper pedal down; dip and let-off of this note as they are."),
        T("Judging by the feel of the felt; counting the travel before the escape; felts that are new or damp.")},
    HowToRow{
        checking, T("From the string to the crown of the hammer when it is caught, the key held down."),
        T("A firm blow, mezzo-forte, and hold the key: read crown to string. Three times; the middle one counts. Then "
          "a "
          "soft one: does it still hold? One that does not: C, no check."),
        T("Stick or rule."), T("Damper pedal down, soft pedal up."),
        T("One hard blow only; the key half let go; the rest rail moved by the soft pedal."), nullptr,
        T("As the others say; besides, press slowly: the tail must not rub on the check as it rises.")},
    HowToRow{
        damperStart, T("How far the hammer has gone from its rest when the damper begins to stir."),
        T("Damper pedal up. Press the key very slowly with the damper felt against a lamp; when it stirs, read the "
          "hammer's way. With a block of half the blow between shanks and rail, hammer and damper must move together. "
          "By eye alone: E early, K right, L late."),
        T("Lamp; block of half the blow, or a rule."), T("The hammer's rest; pedal rod free, its play not lost."),
        T("A rod that holds the dampers up; a weak spring; felt that sticks to the string."),
        T("How far the hammer has gone when the damper head begins to stir."),
        T("Damper pedal up. Press slowly: the head stirs when the key front is down 4 to 6 mm, the hammer near half "
          "its "
          "way. Then sight along the heads.")},
    HowToRow{
        damperRise, T("From the string to the damper felt, the damper pedal fully down."),
        T("Pedal down: read the gap at the lowest, a middle and the highest damper. All must stir within 1 mm of the "
          "pedal: sight along the heads."),
        T("Rule or strips."), T("The free play of the pedal first: 3 to 9 mm before any damper stirs."),
        T("A damper that touches its neighbour's string; pedal not quite down.")},
    HowToRow{halfBlow, T("The way that the soft pedal takes from the blow, as a share of it."),
             T("Read crown to string with the pedal up and with it down, at both ends of the rail."),
             T("The stick of the blow."), T("Pedal up, the rod has a little play: the rail lies on its stops."),
             T("One end of the rail only; a rail that sticks.")},
    HowToRow{
        strap, T("The bridle strap between the hammer butt and the wire on the wippen."),
        T("Soft pedal down: the straps may just be tight, no key may dip. Soft pedal up: each hangs with a little "
          "slack, "
          "and no wippen drops free of its jack when the action is out. One key each: K ok, T tight, S slack, X torn."),
        T("Eyes."), T("Rest rail up and down."),
        T("Looking only with the pedal up: a short strap shows with it down.")},
    HowToRow{playerClearance, T("From the player's finger to the part that it will push, at rest."),
             T("A strip of 0.8 mm passes, one of 1.6 mm does not. Sweep over all notes with the same two."),
             T("Two strips."),
             T("Stack in and bolted, tubes off, motor off; the piano's own lost motion already taken out."),
             T("Suction on; stack not seated.")},
    HowToRow{capstanReserve, T("The thread in the wood: the screw's length less what stands out of the key."),
             T("Take one screw out in each section, a sound one that turns: count its turns, measure it from under its "
               "head to its tip, and put it back by as many turns. At the others read from the top of the key to the "
               "under side of the head. The length less that is the thread in the wood. Say in the set-up how long the "
               "screw is, and here that it is read as it stands out; or reckon and say it as it is in the wood. A "
               "button on a wire: the free thread on the wire."),
             T("Rule or caliper."),
             T("In the wood, or standing out of the key: then the length of the screw is asked. Without it nothing is "
               "known of the thread."),
             T("What stands out taken for what is in the wood; a screw taken out of a dry, crumbling key.")},
    HowToRow{downWeight,
             T("The smallest weight, 13 mm from the front edge, that takes the key slowly down to the escape."),
             T("Add weights, tapping the board lightly, until the key goes down slowly and evenly."),
             T("A set of weights in grams."),
             T("Dampers lifted by the pedal. Down with pedal up less down with pedal down shows the damper spring."),
             T("A key thrown by the tapping; a weight that is set too far back.")},
    HowToRow{upWeight, T("The greatest weight, 13 mm from the front edge, that the returning key lifts."),
             T("Press the key down with the weight on it and let it come back slowly; tap the board lightly."),
             T("A set of weights in grams."),
             T("Dampers lifted by the pedal. It says less than it would without the return spring, which takes part."),
             T("Letting the key fly; bushings that rub."), nullptr, nullptr, T("Dampers lifted by the pedal.")},
    HowToRow{sharpProud, T("From the top of the resting naturals to the top of the pressed sharp."),
             T("Press the sharp to its bottom and read what still stands above the naturals beside it."),
             T("Rule, or strips under a small bar."), T("The naturals beside it at rest."),
             T("Naturals pressed with it.")},
    HowToRow{
        feltLeft, T("From the tip of the wooden core to the crown of the hammer."),
        T("Caliper from the mark of the core, seen from the side, to the crown: the worst hammer of each section."),
        T("Caliper."), T("The core's tip, not the end of the staple."),
        T("Measured in the groove of one string only.")},
};
#undef T

QString howToText(const char* text) {
    return QCoreApplication::translate("howTo", text);
}

} // namespace

HowTo howTo(DimensionId id, ActionKind kind) {
    HowTo out;
    out.beforeAll = howToText(QT_TRANSLATE_NOOP(
        "howTo", "Before any reading: three quick blows, then let the note rest; hands off the neighbours."));
    const auto fill = [&](const HowToRow& row) {
        if (row.id != id) return;
        const bool grand = kind == ActionKind::grand;
        out.fromTo = howToText(grand && row.grandFromTo ? row.grandFromTo : row.fromTo);
        out.how = howToText(grand && row.grandHow ? row.grandHow : row.how);
        out.with = howToText(row.with);
        out.reference = howToText(grand && row.grandReference ? row.grandReference : row.reference);
        out.mistake = howToText(row.mistake);
    };
    std::ranges::for_each(kRows, fill);
    std::ranges::for_each(kWordHowTo, fill);
    return out;
}

} // namespace hammerline::words
