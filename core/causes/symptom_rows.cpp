#include "core/causes/symptom_rows.h"

namespace hammerline {
namespace {

using namespace std::string_view_literals;

constexpr std::string_view kRemoveLost[] = {"checks-nearer"sv, "hammers-off-rail-in-damp"sv};
constexpr std::string_view kFartherLetOff[] = {"weaker-soft-blow"sv};
constexpr std::string_view kShorterBlow[] = {"less-power"sv, "lost-motion-opens"sv, "dampers-earlier"sv};
constexpr std::string_view kDeeperDip[] = {"pressed-key-below-neighbours"sv, "sharps-bury"sv};
constexpr std::string_view kRaiseKeys[] = {"lost-motion-less"sv, "checks-nearer"sv, "sharp-height-stale"sv};
constexpr std::string_view kMoreDrop[] = {"repetition-slower"sv};

constexpr double kLostMotionShows = 0.8, kAftertouchShows = 0.3, kLetOffShows = 1.5,
                 kDropShows = 0.5; // bench-practice 5

constexpr SymptomCheck lostMotion{
    "lost-motion", dimension::lostMotion, true, kLostMotionShows, {}, AftertouchGain::atKey, 0.5, kRemoveLost};
constexpr SymptomCheck aftertouch{"aftertouch", dimension::aftertouch, false, kAftertouchShows, {}};
constexpr SymptomCheck letOffNear{"let-off-too-near", dimension::letOff,        false, kLetOffShows,
                                  word::blocks,       AftertouchGain::atHammer, 1.0,   kFartherLetOff};
constexpr SymptomCheck blowLong{"blow-long", dimension::blow,          true, {},
                                {},          AftertouchGain::atHammer, 2.0,  kShorterBlow};
constexpr SymptomCheck dipShallow{"dip-shallow", dimension::keyDip, false, {}, {}, AftertouchGain::atKey,
                                  0.25,          kDeeperDip};
constexpr SymptomCheck heightLow{"key-height-low", dimension::keyHeight, false, {}, {}, AftertouchGain::atKey, 0.25,
                                 kRaiseKeys};
constexpr SymptomCheck checkFar{"check-far", dimension::checking, true, {}, word::doesNotCheck};
constexpr SymptomCheck checkNear{"check-too-near", dimension::checking, false, {}, {}};
constexpr SymptomCheck dampersEarly{"dampers-early", dimension::damperStart, false, {}, word::early};
constexpr SymptomCheck dampersLate{"dampers-late", dimension::damperStart, true, {}, word::late};
constexpr SymptomCheck offRail{"hammers-off-rail", dimension::lostMotion, false, -0.1, word::offRail};
constexpr SymptomCheck clearance{"player-clearance", dimension::playerClearance, false, {}, {}};
constexpr SymptomCheck halfBlow{"half-blow", dimension::halfBlow, true, {}, {}};
constexpr SymptomCheck halfBlowShort{"half-blow", dimension::halfBlow, false, {}, {}};
constexpr SymptomCheck strapTight{"straps-tight", dimension::strap, false, {}, word::tight};
constexpr SymptomCheck strapTorn{"strap-torn", dimension::strap, true, {}, word::torn};
constexpr SymptomCheck heavyDown{"down-weight-high", dimension::downWeight, true, {}, {}};
constexpr SymptomCheck lightUp{"up-weight-low", dimension::upWeight, false, {}, {}};
constexpr SymptomCheck letOffFar{"let-off-far", dimension::letOff, true, {}, word::noLetOff};
constexpr SymptomCheck blowShort{"blow-short", dimension::blow, false, {}, {}};
constexpr SymptomCheck afterLarge{"aftertouch-large", dimension::aftertouch, true, {}, {}};
constexpr SymptomCheck dipDeep{"naturals-deep", dimension::keyDip, true, {}, {}};
constexpr SymptomCheck sharpLow{"sharp-height-low", dimension::sharpHeight, false, {}, {}};
constexpr SymptomCheck sharpProud{"sharp-proud", dimension::sharpProud, false, 1.0, {}};
constexpr SymptomCheck dropClose{
    "drop-too-close", dimension::drop, false, kDropShows, {}, AftertouchGain::none, 0, kMoreDrop, true};
constexpr SymptomCheck letOffClose{"let-off-too-near", dimension::letOff,        false, {},
                                   word::blocks,       AftertouchGain::atHammer, 1.0,   kFartherLetOff};

/// What a word of a dimension that is said by words alone shows.
constexpr SymptomCheck said(std::string_view id, DimensionId dimension, WordId word, std::string_view part = {},
                            std::string_view fault = {}) {
    SymptomCheck check{id};
    check.dimension = dimension;
    check.word = word;
    check.part = part;
    check.fault = fault;
    return check;
}
constexpr SymptomCheck hammerSlow = said("hammer-centre", dimension::hammerReturn, word::slow, "hammer-flange");
constexpr SymptomCheck jackStaysOut =
    said("jack-not-home", dimension::jackReturn, word::staysOut, "jack-spring|bridle-strap");
constexpr SymptomCheck springKicks =
    said("repetition-spring-strong", dimension::repetitionSpring, word::kicks, "repetition-lever", "strong");
constexpr SymptomCheck springWeak =
    said("repetition-spring-weak", dimension::repetitionSpring, word::weak, "repetition-lever", "weak");
constexpr SymptomCheck leverTooHigh = said("lever-too-high", dimension::leverHeight, word::leverHigh);
constexpr SymptomCheck leverTooLow = said("lever-too-low", dimension::leverHeight, word::leverLow);
constexpr SymptomCheck keySticks =
    said("key-bushing", dimension::keyFit, word::sticks, "front-bushing|balance-bushing");
constexpr SymptomCheck frameTaps = said("frame-not-bedded", dimension::frameBed, word::taps, "key-frame");

constexpr SymptomCheck look(std::string_view id, std::string_view part = {}) {
    SymptomCheck check{id};
    check.part = part;
    return check;
}
constexpr SymptomCheck grand(std::string_view id, std::string_view part = {}) {
    SymptomCheck check = look(id, part);
    check.grandOnly = true;
    return check;
}

constexpr SymptomCheck vertical(std::string_view id) {
    SymptomCheck check{id};
    check.verticalOnly = true;
    return check;
}

constexpr SymptomCheck kDouble[] = {lostMotion,
                                    aftertouch,
                                    letOffNear,
                                    blowLong,
                                    heightLow,
                                    dipShallow,
                                    checkFar,
                                    look("jack-spring", "jack-spring"),
                                    look("damper-spring", "damper-lever-spring"),
                                    look("jack-centre", "jack"),
                                    look("butt-spring", "butt-spring")};
constexpr SymptomCheck kDoubleOne[] = {look("jack-tip-pin-spring", "jack|jack-spring"),
                                       look("butt-spring", "butt-spring"), strapTight,
                                       look("check-wire", "back-check-wire")};
constexpr SymptomCheck kByPlayer[] = {clearance, look("player-stop-rail", "player-stop-rail"),
                                      look("finger-stroke", "player-stack")};
constexpr SymptomCheck kBlocks[] = {letOffNear, checkNear, dipShallow, look("button-felt", "let-off-button"),
                                    look("let-off-rail-screws", "let-off-rail")};
// The tight centre is the commonest by far (pianohq.com, hammers that do not return; from memory of an earlier
// reading).
constexpr SymptomCheck kNoReturn[] = {hammerSlow, look("hammer-rubs-neighbour"),
                                      strapTorn,  look("butt-spring", "butt-spring"),
                                      offRail,    look("room-humidity")};
constexpr SymptomCheck kRepeats[] = {
    vertical("normal-within-limits"),   lostMotion, look("key-bushing", "front-bushing|balance-bushing"),
    look("butt-spring", "butt-spring"), checkNear,  lightUp};
constexpr SymptomCheck kNotChecking[] = {
    look("check-felt", "back-check"),     look("check-wire", "back-check-wire"), dipShallow, aftertouch, checkFar,
    look("hammer-shank", "hammer-shank"), look("catcher-tilt", "catcher")};
constexpr SymptomCheck kChecksNear[] = {checkNear, look("check-wire", "back-check-wire"), look("capstan-raised"),
                                        grand("tail-rough")};
constexpr SymptomCheck kWeak[] = {letOffFar, blowShort, look("felt-worn", "hammer-head"), aftertouch};
constexpr SymptomCheck kWeakOne[] = {look("hammer-shank", "hammer-shank"),
                                     look("butt-loose", "butt-plate|hammer-flange"), look("string", "string-fit"),
                                     letOffFar};
constexpr SymptomCheck kClickReturn[] = {look("butt-cushion", "butt-cushion"), look("name-board-felt", "key-slip"),
                                         look("heel-cloth", "wippen-heel-cloth"),
                                         look("jack-stop-felt", "jack-stop-felt")};
constexpr SymptomCheck kClickBottom[] = {look("front-felt", "front-felt"), look("capstan-loose", "capstan"),
                                         look("key-lead", "key")};
constexpr SymptomCheck kBuzz[] = {look("flange-screws", "flange-screws"), look("plate", "strings-soundboard"),
                                  look("muffler-rail", "muffler-rail"),   look("loose-hinge"),
                                  look("damper-wire", "damper-wire"),     look("butt-plate", "butt-plate")};
constexpr SymptomCheck kSticks[] = {look("foreign-object"),
                                    look("key-rubs", "key-slip"),
                                    keySticks,
                                    look("balance-hole", "balance-hole"),
                                    look("lead-swollen", "key"),
                                    look("key-warped", "key"),
                                    look("spoon-groove", "damper-lever-cloth"),
                                    look("pin-rusty", "front-rail-pin|balance-rail-pin"),
                                    heavyDown,
                                    lightUp};
constexpr SymptomCheck kHeavy[] = {look("damp-centres", "moth-rust"),
                                   dampersEarly,
                                   look("damper-spring", "damper-lever-spring"),
                                   afterLarge,
                                   offRail,
                                   heavyDown};
constexpr SymptomCheck kHeavyMiddle[] = {dampersEarly, look("damper-spring", "damper-lever-spring")};
constexpr SymptomCheck kRings[] = {
    look("damper-felt", "damper-felt-wedge|damper-felt-clip|damper-felt-flat|damper-felt-split-wedge"),
    look("spoon-too-far-in", "spoon"),
    look("pedal-free-play", "trapwork"),
    look("damper-wire", "damper-wire"),
    look("damper-spring", "damper-lever-spring"),
    look("damper-wedge", "damper-felt-wedge")};
constexpr SymptomCheck kRingsAll[] = {look("pedal-free-play", "trapwork"), look("damper-rod", "damper-rod"),
                                      look("action-seated", "action-bolts")};
constexpr SymptomCheck kLiftsUnevenly[] = {
    look("damper-wire", "damper-wire"), look("damper-rod-hanger", "damper-rod"),
    look("damper-felt", "damper-felt-wedge|damper-felt-clip|damper-felt-flat|damper-felt-split-wedge"), dampersLate};
constexpr SymptomCheck kAllLow[] = {heightLow, dipShallow, offRail, look("three-felts-compared", "balance-felt"),
                                    look("straightedge-on-rail", "key-frame")};
constexpr SymptomCheck kOffRail[] = {offRail, look("room-humidity")};
constexpr SymptomCheck kRattle[] = {look("key-bushing", "front-bushing|balance-bushing"),
                                    look("pin-turned", "front-rail-pin"), look("balance-hole", "balance-hole")};
constexpr SymptomCheck kWink[] = {strapTight, look("soft-rod-too-long", "rail-lift-rod"), halfBlow};
constexpr SymptomCheck kNoSoft[] = {look("soft-rod", "rail-lift-rod"), look("pedal-free-play", "trapwork"),
                                    halfBlowShort};
constexpr SymptomCheck kBury[] = {dipDeep, sharpProud, sharpLow, look("sharp-front-felt", "front-felt")};
constexpr SymptomCheck kWorse[] = {look("capstan-threads", "capstan"), look("rest-rail-loose", "rest-rail-cloth"),
                                   look("felts-settling"), look("action-seated", "action-bolts")};
constexpr SymptomCheck kBlockOfNotes[] = {look("let-off-rail-screws", "let-off-rail"), letOffClose, letOffFar};
// A spring that is too strong is the classic one (mmdigest 1997.02.09.22; depianotuner.com, repetition lever).
constexpr SymptomCheck kBubbling[] = {springKicks,
                                      letOffClose,
                                      dropClose,
                                      checkFar,
                                      blowLong,
                                      dipShallow,
                                      aftertouch,
                                      heightLow,
                                      springWeak,
                                      leverTooHigh,
                                      grand("knuckle-flat", "knuckle"),
                                      grand("repetition-lever-pin", "repetition-lever")};
// Drop of more than 2.5 mm is too much; string thrown hammers: list post 2000-Aug/068660, from memory.
constexpr SymptomCheck dropMuch{"drop-too-much", dimension::drop, true, 2.5, {}, AftertouchGain::none, 0, {}, true};
constexpr SymptomCheck kSecondBlow[] = {springWeak,
                                        leverTooLow,
                                        dropMuch,
                                        dropClose,
                                        letOffClose,
                                        checkNear,
                                        hammerSlow,
                                        grand("repetition-lever-pin", "repetition-lever"),
                                        look("shank-far-over-rest")};
constexpr SymptomCheck kSluggish[] = {hammerSlow, look("wippen-centre", "wippen|jack"), keySticks,
                                      lightUp,    look("butt-spring", "butt-spring"),   look("room-humidity")};
constexpr SymptomCheck kTwoNotes[] = {said("hammer-drifts-to-bass", dimension::hammerTravel, word::driftsToBass),
                                      said("hammer-drifts-to-treble", dimension::hammerTravel, word::driftsToTreble),
                                      look("flange-loose", "hammer-flange|hammer-shank|hammer-head"),
                                      said("key-pushes-neighbour", dimension::keySpace, word::rubs),
                                      said("damper-touches-neighbour", dimension::damperSeat, word::touchesNeighbour)};
constexpr SymptomCheck kNoSound[] = {jackStaysOut, offRail, look("jack-joint", "jack"),
                                     look("hammer-shank", "hammer-shank|hammer-head"),
                                     look("capstan-off-heel", "capstan|sticker|lifter|wippen-heel-cloth")};
constexpr SymptomCheck kSqueak[] = {look("key-bushing", "front-bushing|balance-bushing"),
                                    look("pedal-squeaks", "trapwork"), look("butt-leather-dry", "butt-leather|knuckle"),
                                    look("damper-lever-cloth", "damper-lever-cloth"),
                                    look("rail-hinge-squeaks", "rest-rail-cloth")};
constexpr SymptomCheck kOneString[] = {look("string", "string-fit|strings-soundboard"),
                                       said("hammer-misses-to-bass", dimension::hammerSpace, word::towardBass),
                                       said("hammer-misses-to-treble", dimension::hammerSpace, word::towardTreble),
                                       said("string-open", dimension::stringFit, word::bassStringOpen)};
constexpr SymptomCheck kLeaksOne[] = {
    said("damper-off-string", dimension::damperSeat, word::oneStringRings,
         "damper-felt-wedge|damper-felt-clip|damper-felt-flat|damper-felt-split-wedge"),
    look("damper-wire", "damper-wire"), look("spoon-too-far-in", "spoon"), look("damper-spring", "damper-lever-spring"),
    look("overdamper-no-play", "overdamper")};
constexpr SymptomCheck kLeaksAll[] = {look("action-seated", "action-bolts"), look("pedal-free-play", "trapwork"),
                                      look("damper-rod", "damper-rod")};
constexpr SymptomCheck kHeavyAfter[] = {offRail, look("room-humidity"), dampersEarly, look("players-hand")};
constexpr SymptomCheck kHardBottom[] = {look("damper-stop-rail", "damper-underlever"),
                                        look("player-stop-rail", "player-stop-rail"), look("front-felt", "front-felt")};
constexpr SymptomCheck kFrameKnocks[] = {frameTaps};
constexpr SymptomCheck kThud[] = {said("strikes-too-far-in", dimension::strikeLine, word::tooFarFromTheEnd),
                                  said("strikes-too-near-end", dimension::strikeLine, word::tooNearTheEnd)};

constexpr SymptomRow kSymptomRows[] = {
    {"double-strike", kDouble},
    {"double-strike-one-note", kDoubleOne},
    {"bobbling-only-by-player", kByPlayer},
    {"blocks", kBlocks},
    {"hammer-does-not-come-back", kNoReturn},
    {"repeats-only-if-key-comes-all-the-way-up", kRepeats},
    {"not-checking", kNotChecking},
    {"checks-too-near", kChecksNear},
    {"weak-tone", kWeak},
    {"weak-on-one-note", kWeakOne},
    {"click-on-key-return", kClickReturn},
    {"click-at-the-bottom", kClickBottom},
    {"buzz", kBuzz},
    {"key-sticks-down", kSticks},
    {"heavy-touch-all", kHeavy},
    {"heavy-touch-middle-of-stroke", kHeavyMiddle},
    {"note-rings-after-release", kRings},
    {"ringing-all", kRingsAll},
    {"damper-lifts-unevenly-by-pedal", kLiftsUnevenly},
    {"all-keys-front-low", kAllLow},
    {"hammers-stand-off-the-rail", kOffRail},
    {"keys-rattle-sideways", kRattle},
    {"soft-pedal-keys-wink", kWink},
    {"soft-pedal-does-nothing", kNoSoft},
    {"sharps-bury", kBury},
    {"notes-get-fast-worse-after-a-pass", kWorse},
    {"one-contiguous-block-wrong", kBlockOfNotes},
    {"grand-bubbling-all", kBubbling},
    {"grand-second-blow-fails", kSecondBlow},
    {"sluggish-return", kSluggish},
    {"two-notes-at-once", kTwoNotes},
    {"no-sound-key-light", kNoSound},
    {"squeak", kSqueak},
    {"one-string-silent", kOneString},
    {"damper-leaks-one-note", kLeaksOne},
    {"all-dampers-leak-after-work", kLeaksAll},
    {"heavy-after-lost-motion", kHeavyAfter},
    {"key-feels-hard-at-bottom", kHardBottom},
    {"frame-knocks", kFrameKnocks},
    {"loud-thud-in-treble", kThud},
};

} // namespace

std::span<const SymptomRow> symptomRows() {
    return kSymptomRows;
}

} // namespace hammerline
