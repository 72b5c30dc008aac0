#include "core/work/evidence.h"

#include <algorithm>

namespace hammerline {
namespace {

using namespace dimension;

const std::vector<StepEvidence>& evidenceRows() {
    static const std::vector<StepEvidence> rows = {
        {.step = "weigh-the-job", .parts = {"strings-soundboard", "string-fit"}, .dimensions = {}},
        {.step = "stand-it-safe", .parts = {"case"}, .dimensions = {}},
        {.step = "clean-bed-and-keys", .parts = {"moth-rust"}, .dimensions = {}},
        {.step = "tighten-frame", .parts = {"key-frame"}, .dimensions = {}},
        {.step = "polish-key-pins", .parts = {"front-rail-pin", "balance-rail-pin"}, .dimensions = {}},
        {.step = "renew-key-cloths",
         .parts = {"balance-felt", "front-felt", "back-rail-cloth", "paper-punchings"},
         .dimensions = {}},
        {.step = "mend-keys", .parts = {"key", "key-top", "balance-hole", "capstan", "rocker"}, .dimensions = {}},
        {.step = "rebush-keys", .parts = {"front-bushing", "balance-bushing"}, .dimensions = {}},
        {.step = "ease-keys", .parts = {"front-bushing/ease", "balance-bushing/ease"}, .dimensions = {keyFit}},
        {.step = "square-keys", .parts = {}, .dimensions = {keySquare}},
        {.step = "space-keys", .parts = {"key-slip"}, .dimensions = {keySpace}},
        {.step = "tighten-screws", .parts = {"flange-screws", "action-brackets"}, .dimensions = {}},
        {.step = "mend-brass-rail", .parts = {"brass-flange-rail", "butt-plate"}, .dimensions = {}},
        {.step = "free-centres", .parts = {"hammer-flange"}, .dimensions = {hammerReturn, jackReturn}},
        {.step = "mend-butts-and-springs",
         .parts = {"butt-leather", "butt-cushion", "butt-spring", "spring-rail", "catcher"},
         .dimensions = {}},
        {.step = "mend-wippens-and-jacks",
         .parts = {"wippen", "wippen-heel-cloth", "sticker", "jack", "jack-spring", "jack-stop-felt", "back-check",
                   "back-check-wire", "repetition-lever", "drop-screw", "lifter"},
         .dimensions = {}},
        {.step = "try-let-off-screws", .parts = {"let-off-rail", "let-off-screw", "let-off-button"}, .dimensions = {}},
        {.step = "mend-hammers", .parts = {"hammer-shank", "hammer-head", "knuckle"}, .dimensions = {}},
        {.step = "file-hammers", .parts = {"hammer-head/reshape"}, .dimensions = {}},
        {.step = "travel-hammers", .parts = {}, .dimensions = {hammerTravel}},
        {.step = "square-hammers", .parts = {}, .dimensions = {hammerSquare}},
        {.step = "renew-rest-rail", .parts = {"rest-rail-cloth", "rest-rail-cushions"}, .dimensions = {}},
        {.step = "fit-straps", .parts = {"bridle-strap", "bridle-wire"}, .dimensions = {}},
        {.step = "mend-dampers-on-bench",
         .parts = {"damper-lever", "damper-lever-spring", "spoon", "damper-lever-cloth", "damper-rod",
                   "damper-felt-flat", "overdamper"},
         .dimensions = {}},
        {.step = "seat-action", .parts = {"action-bolts"}, .dimensions = {}},
        {.step = "bed-key-frame", .parts = {"key-frame"}, .dimensions = {frameBed}, .sampled = true},
        {.step = "strike-line", .parts = {}, .dimensions = {strikeLine}, .sampled = true},
        {.step = "space-hammers", .parts = {}, .dimensions = {hammerSpace}},
        {.step = "fit-hammers-to-strings", .parts = {}, .dimensions = {stringFit}},
        {.step = "seat-dampers",
         .parts = {"damper-felt-wedge", "damper-felt-clip", "damper-felt-split-wedge", "damper-felt-flat",
                   "damper-underlever"},
         .dimensions = {damperSeat}},
        {.step = "set-rest-rail", .parts = {}, .dimensions = {blow}, .sampled = true},
        {.step = "level-naturals", .parts = {}, .dimensions = {keyHeight}},
        {.step = "level-sharps", .parts = {}, .dimensions = {sharpHeight}},
        {.step = "take-up-lost-motion", .parts = {}, .dimensions = {lostMotion}},
        {.step = "set-let-off", .parts = {}, .dimensions = {letOff}},
        {.step = "wippens-under-hammers", .parts = {}, .dimensions = {}},
        {.step = "jacks-fore-and-aft", .parts = {}, .dimensions = {jackPosition}},
        {.step = "rough-springs", .parts = {}, .dimensions = {}},
        {.step = "lever-height", .parts = {}, .dimensions = {leverHeight}},
        {.step = "set-grand-blow", .parts = {}, .dimensions = {blow}},
        {.step = "set-grand-rest", .parts = {"rest-felt"}, .dimensions = {}},
        {.step = "set-grand-let-off", .parts = {}, .dimensions = {letOff}},
        {.step = "set-drop", .parts = {}, .dimensions = {drop}},
        {.step = "set-dip-naturals", .parts = {}, .dimensions = {keyDip}},
        {.step = "set-dip-sharps", .parts = {}, .dimensions = {keyDip, sharpProud}},
        {.step = "prove-aftertouch", .parts = {}, .dimensions = {aftertouch}},
        {.step = "set-checks", .parts = {}, .dimensions = {checking}},
        {.step = "set-grand-checks", .parts = {}, .dimensions = {checking}},
        {.step = "fine-springs", .parts = {}, .dimensions = {repetitionSpring}},
        {.step = "set-damper-pedal", .parts = {"trapwork"}, .dimensions = {damperRise}, .sampled = true},
        {.step = "line-dampers", .parts = {"damper-wire"}, .dimensions = {damperLine}},
        {.step = "time-dampers-by-key", .parts = {}, .dimensions = {damperStart}},
        {.step = "time-overdampers", .parts = {"damper-wire"}, .dimensions = {damperStart}},
        {.step = "set-soft-pedal", .parts = {"rail-lift-rod"}, .dimensions = {halfBlow}, .sampled = true},
        {.step = "set-bridle-wires", .parts = {}, .dimensions = {strap}},
        {.step = "set-muffler", .parts = {"muffler-rail"}, .dimensions = {}},
        {.step = "seat-and-line-grand-dampers", .parts = {"damper-wire"}, .dimensions = {damperLine}},
        {.step = "time-grand-dampers-by-key", .parts = {}, .dimensions = {damperStart}},
        {.step = "grand-pedals", .parts = {"trapwork"}, .dimensions = {damperRise}, .sampled = true},
        {.step = "weigh-touch", .parts = {}, .dimensions = {downWeight, upWeight}, .sampled = true},
        {.step = "put-stack-in", .parts = {"player-stack", "player-tubes"}, .dimensions = {}},
        {.step = "set-player-clearance", .parts = {}, .dimensions = {playerClearance}},
        {.step = "set-player-stops", .parts = {"player-stop-rail"}, .dimensions = {}},
    };
    return rows;
}

bool holdsPart(const StepEvidence& evidence, const std::string& part) {
    return std::find(evidence.parts.begin(), evidence.parts.end(), part) != evidence.parts.end();
}

/// Of the steps of one colour the other colour's lines are kept away.
bool ofColour(const StepOfWork& step, std::optional<NoteNumber> note, const Piano& piano) {
    if (!note) return !step.id.ends_with("-sharps");
    const bool sharp = colourOf(*note, piano) == KeyColour::sharp;
    if (step.id.ends_with("-sharps")) return sharp;
    return !step.id.ends_with("-naturals") || !sharp;
}

} // namespace

const StepEvidence* evidenceOf(std::string_view step) {
    for (const StepEvidence& each : evidenceRows())
        if (each.step == step) return &each;
    return nullptr;
}

const StepOfWork* stepOf(const Finding& finding, const Piano& piano) {
    const Remedy* remedy = remedyOf(finding);
    const std::string withRemedy = remedy ? finding.part + '/' + std::string(remedy->key) : std::string();
    const StepOfWork* found = nullptr;
    for (const StepOfWork& step : allSteps()) {
        const StepEvidence* evidence = offered(step, piano) ? evidenceOf(step.id) : nullptr;
        if (!evidence) continue;
        if (!withRemedy.empty() && holdsPart(*evidence, withRemedy)) return &step;
        if (!found && holdsPart(*evidence, finding.part)) found = &step;
    }
    return found;
}

const StepOfWork* stepOf(OperationId operation, std::optional<NoteNumber> note, const Piano& piano) {
    for (const StepOfWork& step : allSteps()) {
        const auto& list = step.operations;
        const bool its = std::find(list.begin(), list.end(), key(operation)) != list.end();
        if (its && offered(step, piano) && ofColour(step, note, piano)) return &step;
    }
    return nullptr;
}

std::vector<NoteNumber> notesOf(const StepOfWork& step, DimensionId dimension, const Piano& piano) {
    std::vector<NoteNumber> out;
    for (int n = 1; n <= piano.notes; ++n)
        if (fitted(dimension, {n}, piano) && ofColour(step, NoteNumber{n}, piano)) out.push_back({n});
    return out;
}

} // namespace hammerline
