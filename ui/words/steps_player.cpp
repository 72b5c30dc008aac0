// How each step is done, in our own words (common practice, no source).
#include "ui/words/step_texts.h"

namespace hammerline::words {
namespace {

#define T(text) QT_TRANSLATE_NOOP("work", text)
constexpr std::array kPlayerSteps = {
    StepText{.id = "put-stack-in",
             .name = T("Put the player stack back"),
             .whatFor = T("The player meets an action that is already right by hand."),
             .tools = T("A helper, the photographs."),
             .how = T("Two people slide it back straight, its fingers clear of the wippens. Fasten screws, brace, "
                      "linkages and tubes by their marks. Play all notes by hand: they feel as before."),
             .way = T(""),
             .goodWhen = T("Soft pedal, dampers and keys move as without it."),
             .mistake = T("Stack not home: held wippens look like no lost motion."),
             .takes = T("30 / 75 (half of the trip)."),
             .records = T("Event.")},
    StepText{
        .id = "set-player-clearance",
        .name = T("Set the player fingers' clearance"),
        .whatFor = T("The finger neither holds the wippen nor arrives late."),
        .tools =
            T("Strips 0.8 and 1.6 mm; a bent wire with a small triangle turns a finger's capstan between neighbours."),
        .how = T("Work without suction. Between the finger and the part it drives the strip of 0.8 mm passes and that "
                 "of 1.6 does not. Try all notes with the same two strips."),
        .way = T("Finger away from the part = more."),
        .goodWhen = T("{player-clearance}, neighbours within {player-clearance step}."),
        .mistake = T("Measuring with suction on."),
        .takes = T("0.4 / 0.8."),
        .records = T("Player-clearance.")},
    StepText{.id = "set-player-stops",
             .name = T("Set the player's stops"),
             .whatFor = T("The pneumatic gives the full stroke and no more; half rails and pedals work."),
             .tools = T("Spanner or pliers for the stop screws; vacuum source if there is no pump."),
             .how = T("Set the stop rail so that a key goes as far by roll as by hand, aftertouch included, and not "
                      "into the bed; alike along the rail. The soft rails are clear at rest. The key lock is off."),
             .way = T(""),
             .goodWhen = T("A slow and a loud roll sound as by hand."),
             .mistake = T("Stop rail too near: no escape, bobbling by roll only."),
             .takes = T("30 / 60."),
             .records = T("Finding player-stop-rail; symptom by roll.")},
    StepText{
        .id = "test-by-hand-and-roll",
        .name = T("Test by hand and by roll"),
        .whatFor = T("Some faults show only with suction."),
        .tools = T("A test roll, or a finger on the tracker bar."),
        .how = T(
            "Play one scale by hand and one by roll or with a finger on the tracker bar. Mark each note that differs."),
        .way = T(""),
        .goodWhen = T("None differs."),
        .mistake = T("Blaming the piano for a leaking pneumatic."),
        .takes = T("20 / 40."),
        .records = T("Symptoms.")},
};
#undef T

} // namespace

std::span<const StepText> playerSteps() {
    return kPlayerSteps;
}

} // namespace hammerline::words
