// How the dimensions that are said by words alone are looked at. Common practice, in our own words; no source.
// For how_to.cpp only.
#pragma once

#include "core/piano/dimension.h"

#include <QCoreApplication>

#include <array>

namespace hammerline::words {

/// One text; `grand` where it differs for a grand, else null.
struct HowToRow {
    DimensionId id;
    const char *fromTo, *how, *with, *reference, *mistake;
    const char *grandFromTo = nullptr, *grandHow = nullptr, *grandReference = nullptr;
};

inline constexpr std::array kWordHowTo{
    HowToRow{
        dimension::jackReturn,
        QT_TRANSLATE_NOOP("howTo",
                          "Whether the jack slips back under the hammer butt by itself on a very slow release."),
        QT_TRANSLATE_NOOP("howTo", "Damper pedal down. Press slowly through the let-off, then let the key up as "
                                   "slowly: the jack must be home before the key is quite up. Touch its tail if in "
                                   "doubt: it must not spring home only then. K returns, S slow, X stays out."),
        QT_TRANSLATE_NOOP("howTo", "A finger and the lamp."),
        QT_TRANSLATE_NOOP("howTo", "Straps not tight, soft pedal up. Read it at a few notes of each section, and at "
                                   "every note whose lost motion is under 0.1 mm."),
        QT_TRANSLATE_NOOP("howTo", "Letting the key fly: a fast release brings every jack home."),
        QT_TRANSLATE_NOOP("howTo", "Whether the jack slips back under the knuckle by itself on a very slow release."),
        nullptr,
        QT_TRANSLATE_NOOP("howTo", "Soft pedal up. Read it at a few notes of each section, and at every note that "
                                   "fails a soft second blow.")},
    HowToRow{
        dimension::hammerReturn, QT_TRANSLATE_NOOP("howTo", "Whether the hammer falls back to its rest by itself."),
        QT_TRANSLATE_NOOP(
            "howTo", "Action in or out: lift each hammer with a fingertip and let go, along the whole row. It falls "
                     "back without a stop: K. It creeps: S. It stays: X. Then Shift and Y for all the others."),
        QT_TRANSLATE_NOOP("howTo", "A fingertip."),
        QT_TRANSLATE_NOOP("howTo", "Its spring in its place; no neighbour touched."),
        QT_TRANSLATE_NOOP("howTo", "Pushing the neighbour along; judging a damp day's action as worn out."), nullptr,
        QT_TRANSLATE_NOOP(
            "howTo", "Action drawn out: lift each hammer with a fingertip and let go, along the whole row. It falls "
                     "back without a stop: K. It creeps: S. It stays: X. Then Shift and Y for all the others.")},
    HowToRow{dimension::hammerTravel, QT_TRANSLATE_NOOP("howTo", "Whether the hammer rises straight to its strings."),
             QT_TRANSLATE_NOOP(
                 "howTo",
                 "On the bench: raise a few hammers together slowly to the string line and watch the gaps between the "
                 "heads. A gap that stays even: K. B drifts to the bass, T to the treble, R rubs its neighbour."),
             QT_TRANSLATE_NOOP("howTo", "A batten under a group of hammers, light from behind."),
             QT_TRANSLATE_NOOP("howTo", "Flange screws tight first."),
             QT_TRANSLATE_NOOP("howTo", "Watching the gap at rest only: that is spacing."), nullptr,
             QT_TRANSLATE_NOOP(
                 "howTo",
                 "On the bench: raise a few hammers together slowly to string height and watch the gaps between the "
                 "heads. A gap that stays even: K. B drifts to the bass, T to the treble, R rubs its neighbour.")},
    HowToRow{dimension::hammerSpace,
             QT_TRANSLATE_NOOP("howTo", "Whether the hammer meets all strings of its note, seen across."),
             QT_TRANSLATE_NOOP("howTo", "Action in: bring each hammer slowly to its strings. All strings covered, the "
                                        "same at both edges: K. Too far to the bass: B, to the treble: T."),
             QT_TRANSLATE_NOOP("howTo", "Eyes, lamp."),
             QT_TRANSLATE_NOOP("howTo", "Action bolted in its place; travel first."),
             QT_TRANSLATE_NOOP("howTo", "Spacing by the shanks: the heads count."), nullptr,
             QT_TRANSLATE_NOOP(
                 "howTo", "Action in its place, soft pedal up: bring each hammer slowly to its strings. All strings "
                          "covered, the same at both edges: K. Too far to the bass: B, to the treble: T.")},
    HowToRow{
        dimension::hammerSquare, QT_TRANSLATE_NOOP("howTo", "Whether the head stands straight on its way."),
        QT_TRANSLATE_NOOP("howTo", "On the bench: look along the row of heads from the end, at rest and raised. In "
                                   "line with its neighbours: K. Top to the bass: B, to the treble: T."),
        QT_TRANSLATE_NOOP("howTo", "Eyes, a small square."),
        QT_TRANSLATE_NOOP("howTo", "The head is tight on its shank."),
        QT_TRANSLATE_NOOP("howTo", "A head that is bored askew on purpose in the bass: compare with its neighbours."),
        nullptr, nullptr},
    HowToRow{
        dimension::stringFit, QT_TRANSLATE_NOOP("howTo", "Whether the crown meets all strings of the note at once."),
        QT_TRANSLATE_NOOP(
            "howTo",
            "Hold the hammer against the strings by its jack, lightly, damper lifted, and pluck each string: all "
            "choked alike: K. One that rings is open: B the bass one, M the middle, T the treble, N two of them."),
        QT_TRANSLATE_NOOP("howTo", "A fingernail, a hook to hold the hammer."),
        QT_TRANSLATE_NOOP("howTo",
                          "After spacing and squaring; a rough fit before regulating, the fine one after a tuning."),
        QT_TRANSLATE_NOOP("howTo", "Pressing hard: soft felt then closes every string."), nullptr,
        QT_TRANSLATE_NOOP(
            "howTo",
            "Lift the hammer to the strings with a hook at its tail, lightly, damper lifted, and pluck each string: "
            "all choked alike: K. One that rings is open: B the bass one, M the middle, T the treble, N two of them.")},
    HowToRow{dimension::jackPosition,
             QT_TRANSLATE_NOOP("howTo", "Where the jack stands under the knuckle, seen from the side."),
             QT_TRANSLATE_NOOP("howTo",
                               "Action drawn out: the jack's back edge stands in line with the back of the knuckle's "
                               "core: K. Nearer the hammer: D, too deep. Nearer you: S, too shallow."),
             QT_TRANSLATE_NOOP("howTo", "Lamp, a thin mirror."),
             QT_TRANSLATE_NOOP("howTo", "Jack at rest on its button felt."),
             QT_TRANSLATE_NOOP("howTo", "Judging by a worn knuckle's flat."), nullptr, nullptr},
    HowToRow{dimension::leverHeight,
             QT_TRANSLATE_NOOP("howTo", "How high the repetition lever lies over the jack's top."),
             QT_TRANSLATE_NOOP("howTo",
                               "Fingernail along the lever over the jack: the jack lies a paper (0.1 to 0.2 mm) below "
                               "the wood: K. Lever too high, play between jack and knuckle: H. Jack stands proud: L."),
             QT_TRANSLATE_NOOP("howTo", "A fingernail, strips of paper."),
             QT_TRANSLATE_NOOP("howTo", "Springs that lift: with weak ones it cannot be judged."),
             QT_TRANSLATE_NOOP("howTo", "Lowering it until a worn knuckle feels right: prove by jack return."), nullptr,
             nullptr},
    HowToRow{dimension::repetitionSpring,
             QT_TRANSLATE_NOOP("howTo", "How the hammer rises out of the check when the key is let up a little."),
             QT_TRANSLATE_NOOP(
                 "howTo",
                 "Action drawn out: a firm blow, held in check; let the key up by a hair. The hammer rises steadily: "
                 "K. Late or not at all: W, weak. It jumps and is felt in the finger: S, kicks. No spring: X."),
             QT_TRANSLATE_NOOP("howTo", "A finger."), QT_TRANSLATE_NOOP("howTo", "Hammer centre free; checks catch."),
             QT_TRANSLATE_NOOP("howTo", "Bending springs for a hammer whose centre is tight."), nullptr, nullptr},
    HowToRow{
        dimension::keyFit, QT_TRANSLATE_NOOP("howTo", "Whether the key moves freely on its two pins."),
        QT_TRANSLATE_NOOP("howTo", "Action out or the wippen held up: lift each key front 5 mm and let it fall. It "
                                   "falls by itself: K. It hangs: S, sticks. It rattles sideways: L, loose."),
        QT_TRANSLATE_NOOP("howTo", "A finger."), QT_TRANSLATE_NOOP("howTo", "Key slip off or clear of the fronts."),
        QT_TRANSLATE_NOOP("howTo", "Judging with the action on the keys: its weight hides a sticking key."), nullptr,
        QT_TRANSLATE_NOOP("howTo", "Stack off the keys: lift each key front 5 mm and let it fall. It falls by itself: "
                                   "K. It hangs: S, sticks. It rattles sideways: L, loose.")},
    HowToRow{dimension::keySquare, QT_TRANSLATE_NOOP("howTo", "Whether the key top lies level across."),
             QT_TRANSLATE_NOOP("howTo",
                               "Look along the fronts from the end with the eye at the height of the tops, or lay "
                               "a small bar over three keys. Level: K. Leans to the bass: B, to the treble: T."),
             QT_TRANSLATE_NOOP("howTo", "Eyes, a small bar."),
             QT_TRANSLATE_NOOP("howTo", "Key fit first: a loose key leans where it is pushed."),
             QT_TRANSLATE_NOOP("howTo", "Bending the pin of a key that is warped."), nullptr, nullptr},
    HowToRow{dimension::keySpace, QT_TRANSLATE_NOOP("howTo", "Whether the gaps on both sides of the key are alike."),
             QT_TRANSLATE_NOOP("howTo", "Look straight down on the fronts, section by section. Even: K. Toward the "
                                        "bass: B, toward the treble: T. It rubs its neighbour: R."),
             QT_TRANSLATE_NOOP("howTo", "Eyes, a strip as thick as the gap."),
             QT_TRANSLATE_NOOP("howTo", "Square keys first."),
             QT_TRANSLATE_NOOP("howTo", "Spacing naturals and sharps by different pins without looking at both."),
             nullptr, nullptr},
    HowToRow{dimension::damperLine,
             QT_TRANSLATE_NOOP("howTo", "When this damper leaves the string, by the pedal, against the rest."),
             QT_TRANSLATE_NOOP("howTo", "Press the damper pedal slowly and sight along the heads: all stir together. "
                                        "With the rest: K. Before them: E, early. After them: L, late."),
             QT_TRANSLATE_NOOP("howTo", "Lamp, eyes."),
             QT_TRANSLATE_NOOP("howTo", "The pedal has its free play; the rod is straight."),
             QT_TRANSLATE_NOOP("howTo", "Judging by the key: that is damper lift timing."), nullptr, nullptr},
    HowToRow{dimension::damperSeat, QT_TRANSLATE_NOOP("howTo", "Whether the damper stops its strings."),
             QT_TRANSLATE_NOOP("howTo",
                               "Play the note loud and let go; then pluck each of its strings. Silent: K. One string "
                               "rings on: R. The whole note leaks: X. The felt touches a neighbour's string: N."),
             QT_TRANSLATE_NOOP("howTo", "A fingernail."),
             QT_TRANSLATE_NOOP("howTo", "Damper pedal up, its free play there; action hard in its place."),
             QT_TRANSLATE_NOOP("howTo", "A sympathetic string taken for a leak: hold the neighbours' dampers."),
             nullptr, nullptr},
    HowToRow{dimension::frameBed, QT_TRANSLATE_NOOP("howTo", "Whether the key frame rests on its bed at this place."),
             QT_TRANSLATE_NOOP(
                 "howTo", "At each stud, knock on the rail beside it with a knuckle, and lift at the front rail's "
                          "ends. Dead: K, it touches. A tapping sound: T, it stands off. The stud lifts the frame: P."),
             QT_TRANSLATE_NOOP("howTo", "Knuckles, a strip of thin paper."),
             QT_TRANSLATE_NOOP("howTo", "Action in its place, cheek blocks on, soft pedal not used."),
             QT_TRANSLATE_NOOP("howTo", "Turning all studs down until nothing taps: then they carry the frame."),
             nullptr, nullptr},
    HowToRow{
        dimension::strikeLine, QT_TRANSLATE_NOOP("howTo", "Where along the string the hammer strikes."),
        QT_TRANSLATE_NOOP("howTo",
                          "Play the highest notes while you slide or hold the action by a hair inward and outward: the "
                          "clearest tone is the right place. Right: K. Too near the end: H. Too far from the end: F."),
        QT_TRANSLATE_NOOP("howTo", "Ears; a rule from the string's end."),
        QT_TRANSLATE_NOOP("howTo", "Hammers square; action on its place."),
        QT_TRANSLATE_NOOP("howTo", "Moving the action for one note: hang that hammer again."), nullptr,
        QT_TRANSLATE_NOOP(
            "howTo", "Play the highest notes while the action is moved by a hair in and out, stop block loose: the "
                     "clearest tone is the right place. Right: K. Too near the end: H. Too far from the end: F.")},
};

} // namespace hammerline::words
