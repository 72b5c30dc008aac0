// How each step is done, in our own words (common practice, no source).
#include "ui/words/step_texts.h"

namespace hammerline::words {
namespace {

#define T(text) QT_TRANSLATE_NOOP("work", text)
constexpr std::array kAfterSteps = {
    StepText{.id = "before-tuning",
             .name = T("Have it tuned"),
             .whatFor = T("A technician tunes it now that the action no longer moves."),
             .tools = T("Pencil."),
             .how = T("Tell the tuner what was changed: hammers, dampers, strike line. After the tuning look again at "
                      "string fit, damper seat and the let-off of the notes that moved."),
             .way = T(""),
             .goodWhen =
                 T("The tuner knows what was changed, and what is fitted finely after the tuning is written down."),
             .mistake = T("Tuning first, dampers and hammers after."),
             .takes = T("10 / 15."),
             .records = T("Event \"tuned\" with name.")},
    StepText{.id = "hand-over",
             .name = T("Hand it over"),
             .whatFor = T("The owner knows what was done, what was not, and when to call."),
             .tools = T("Card, pen; the program's record."),
             .how = T("Play five notes before and after side by side where they were kept. Write in the owner's words. "
                      "A card inside the lid: date, what, humidity and temperature. Say what will settle."),
             .way = T(""),
             .goodWhen = T("The next date is written."),
             .mistake = T("Words of the trade."),
             .takes = T("15 / 20."),
             .records = T("Owner's record; next date.")},
    StepText{
        .id = "come-back",
        .name = T("Come back after some weeks"),
        .whatFor = T("New felts pack and new pins ease."),
        .tools = T("Small square, dip block, blow stick, let-off strips."),
        .how = T(
            "After 4 to 8 weeks with new felts: height at section ends, dip samples, checks.\nUBDO|Lost motion as "
            "well.\nG|Blow and let-off as well.\nAfter 6 to 12 months: dampers again.\nUBDO|In the other season: lost "
            "motion only.\nG|In the other season: let-off and springs only.\nCompare at like humidity."),
        .way = T(""),
        .goodWhen = T("Nothing is outside, or the list is short."),
        .mistake = T("Comparing a damp month with a dry one."),
        .takes = T("60 / 120."),
        .records = T("Pass with climate; event.")},
};
#undef T

} // namespace

std::span<const StepText> afterSteps() {
    return kAfterSteps;
}

} // namespace hammerline::words
