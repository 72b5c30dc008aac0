#include "core/causes/cause_ids.h"
#include "core/causes/rule.h"

#include <algorithm>

namespace hammerline {
namespace {

using namespace std::string_view_literals;
using Checks = std::span<const DecidingCheck>;

constexpr DecidingCheck kSunk[] = {{"straightedge-on-rail", "key-frame", true},
                                   {"three-felts-compared", "balance-felt", true}};
constexpr DecidingCheck kFelts[] = {{"three-felts-compared", "balance-felt", true}};
constexpr DecidingCheck kBackCloth[] = {{"back-cloth-thickness", "back-rail-cloth", true}};
constexpr DecidingCheck kPacked[] = {{"action-bolts", "action-bolts", false},
                                     {"heel-cloth", "wippen-heel-cloth", true},
                                     {"back-cloth", "back-rail-cloth", true}};
constexpr DecidingCheck kBacks[] = {{"action-bolts", "action-bolts", false}, {"capstan-reserve", "", true}};
constexpr DecidingCheck kWood[] = {{"room-humidity", "", true}, {"hammers-follow-rail", "", false}};
constexpr DecidingCheck kFiled[] = {{"felt-left", "hammer-head", true}};
constexpr DecidingCheck kCushions[] = {{"rest-rail-cushions", "rest-rail-cushions", true},
                                       {"rest-rail-cloth", "rest-rail-cloth", true}};
constexpr DecidingCheck kRailEnd[] = {{"rest-rail-cushions", "rest-rail-cushions", true},
                                      {"action-bolts", "action-bolts", false},
                                      {"action-brackets", "action-brackets", false}};
constexpr DecidingCheck kShort[] = {{"rest-rail-pads", "rest-rail-cushions", true}};
constexpr DecidingCheck kJack[] = {{"wink-slow-press", "", false}, {"action-bolts", "action-bolts", false}};
constexpr DecidingCheck kLetOffRail[] = {{"let-off-rail-screws", "let-off-rail", true}};
constexpr DecidingCheck kChecks[] = {{"dip-first", "", true}};
constexpr DecidingCheck kPart[] = {{"inspect-check-and-catcher", "back-check", true},
                                   {"inspect-check-wire", "back-check-wire", true},
                                   {"inspect-catcher", "catcher", true},
                                   {"inspect-damper-spring", "damper-lever-spring", true}};
constexpr DecidingCheck kOnlyABlock[] = {{"action-brackets", "action-brackets", true},
                                         {"hammer-set", "hammer-head", true},
                                         {"flange-screws", "flange-screws", true}};
constexpr DecidingCheck kCapstan[] = {{"capstan-threads", "capstan", true}, {"mark-capstan", "", true}};
constexpr DecidingCheck kRest[] = {{"butt-spring", "butt-spring", true},
                                   {"jack-spring", "jack-spring", true},
                                   {"hammer-centre", "hammer-flange", true}};
constexpr DecidingCheck kFinger[] = {{"stack-out", "player-stack", true}};
constexpr DecidingCheck kNothing[] = {{"symptom-checks", "", true}};

constexpr DimensionId kHeights[] = {dimension::keyHeight, dimension::sharpHeight};
constexpr DimensionId kKeyLine[] = {dimension::keyHeight, dimension::sharpHeight, dimension::keyDip,
                                    dimension::aftertouch};
constexpr DimensionId kBackLine[] = {dimension::keyHeight, dimension::sharpHeight, dimension::keyDip,
                                     dimension::lostMotion};
constexpr DimensionId kLost[] = {dimension::lostMotion, dimension::aftertouch, dimension::checking};
constexpr DimensionId kLostOnly[] = {dimension::lostMotion};
constexpr DimensionId kCrown[] = {dimension::blow, dimension::letOff, dimension::checking};
constexpr DimensionId kBlow[] = {dimension::blow};
constexpr DimensionId kBlowAfter[] = {dimension::blow, dimension::aftertouch, dimension::damperStart};
constexpr DimensionId kAfter[] = {dimension::aftertouch, dimension::letOff};
constexpr DimensionId kLetOffOnly[] = {dimension::letOff};
constexpr DimensionId kChecking[] = {dimension::checking};
constexpr DimensionId kNone[] = {dimension::sharpProud};

constexpr std::string_view kToBackCloth[] = {"thick-back-cloth"sv};
constexpr std::string_view kToFelts[] = {"crushed-balance-felts"sv};
constexpr std::string_view kToKeyBack[] = {"thick-back-cloth"sv, "finger-holds-wippen"sv};
constexpr std::string_view kToFiled[] = {"hammers-filed"sv};
constexpr std::string_view kToCushions[] = {"crushed-rest-cushions"sv};
constexpr std::string_view kToShortage[] = {"packed-cloths"sv, "low-key-backs"sv, "sunk-balance-rail"sv};
constexpr std::string_view kToRail[] = {"rail-end-or-piece"sv, "checks-after-dip"sv};
constexpr std::span<const std::string_view> kToNothing{};

/// The rows of computation 14, the widest first; a row yields only to rows above it.
constexpr CauseRule kRules[] = {
    {"finger-holds-wippen", fingerHoldsWippen, "read-stack-out", kFinger, kLostOnly, kToNothing, 0, 0.85},
    {"crushed-balance-felts", crushedBalanceFelts, "replace-set", kFelts, kHeights, kToNothing, 3, 0.7},
    {"thick-back-cloth", thickBackCloth, "back-rail-shim", kBackCloth, kBackLine, kToNothing, 3, 0.7},
    {"sunk-balance-rail", sunkBalanceRail, "balance-rail-shim", kSunk, kKeyLine, kToFelts, 3, 0.8},
    {"packed-cloths", packedCloths, "capstans", kPacked, kLost, kToBackCloth, 3, 0.7},
    {"low-key-backs", lowKeyBacks, "shims", kBacks, kLost, kToBackCloth, 3, 0.7},
    {"moved-wood", movedWood, "wait", kWood, kLostOnly, kToKeyBack, 0, 0.6},
    {"hammers-filed", hammersFiled, "restore-blow", kFiled, kCrown, kToNothing, 3, 0.85},
    {"blow-too-short", blowTooShort, "lengthen-blow", kShort, kBlowAfter, kToNothing, 3, 0.7},
    {"crushed-rest-cushions", crushedRestCushions, "rest-rail-shim", kCushions, kBlow, kToNothing, 3, 0.7},
    {"rail-end-or-piece", railEndOrPiece, "rest-rail-shim", kRailEnd, kBlow, kToCushions, 3, 0.7},
    {"jack-cannot-escape", jackCannotEscape, "needs-dip", kJack, kAfter, kToShortage, 0, 0.9},
    {"loose-let-off-rail", looseLetOffRail, "tighten-rail", kLetOffRail, kLetOffOnly, kToNothing, 3, 0.7},
    {"checks-after-dip", checksAfterDip, "dip-first", kChecks, kChecking, kToFiled, 3, 0.7},
    {"section-block", sectionBlock, "inspect", kOnlyABlock, kBlow, kToRail, 3, 0.6},
    {"isolated-part", isolatedPart, "inspect", kPart, kChecking, kToNothing, 0, 0.6},
    {"loose-capstan", looseCapstan, "inspect", kCapstan, kLostOnly, kToNothing, 0, 0.7},
    {"unstable-rest", unstableRest, "inspect", kRest, kBlow, kToNothing, 0, 0.7},
    {"nothing-measurable", nothingMeasurable, "inspect", kNothing, kNone, kToNothing, 0, 0.9},
};

/// Every listed id has one row, and every row is listed.
constexpr bool rulesAreListed() {
    if (std::size(kRules) != kCauseKeys.size()) return false;
    return std::ranges::all_of(
        kCauseKeys, [](std::string_view listed) { return std::ranges::count(kRules, listed, &CauseRule::key) == 1; });
}
static_assert(rulesAreListed());

bool yields(const CauseRule& rule, const std::vector<Cause>& found) {
    return std::any_of(found.begin(), found.end(), [&](const Cause& cause) {
        return std::find(rule.yieldsTo.begin(), rule.yieldsTo.end(), cause.key) != rule.yieldsTo.end();
    });
}

std::optional<Cause> causeOf(const CauseRule& rule, const Match& match, const Keyboard& keyboard) {
    const double certainty = match.certainty > 0 ? match.certainty : rule.certainty;
    const auto weighed = weigh(certainty, rule.checks, *keyboard.input->record, *keyboard.input->pass);
    if (!weighed) return {};
    Cause cause;
    cause.key = rule.key;
    for (const int note : match.notes)
        cause.notes.push_back(NoteNumber{note});
    cause.remedy = match.remedy.empty() ? rule.remedy : match.remedy;
    cause.amount = match.amount;
    cause.amounts = match.amounts;
    cause.beside = match.beside;
    cause.unit = match.amount ? AmountUnit::mm : AmountUnit::none;
    cause.certainty = weighed->certainty;
    cause.checks = weighed->open;
    const std::span<const DimensionId> dimensions = match.only.empty() ? rule.explains : std::span(match.only);
    cause.explains = keyboard.outsideCells(dimensions, match.notes);
    if (cause.explains.size() < rule.leastExplained) return {};
    return cause;
}

} // namespace

std::span<const CauseRule> causeRules() {
    return kRules;
}

std::vector<Cause> findCauses(const CauseInput& input) {
    std::vector<Cause> found;
    if (!input.record || !input.pass || !input.review) return found;
    const Keyboard keyboard = keyboardOf(input);
    for (const CauseRule& rule : causeRules()) {
        if (yields(rule, found)) continue;
        for (const Match& match : rule.pattern(keyboard))
            if (auto cause = causeOf(rule, match, keyboard)) found.push_back(std::move(*cause));
    }
    return found;
}

} // namespace hammerline
