#include "core/history/note_state.h"

#include "core/history/linked.h"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace hammerline {

using namespace dimension;

double NoteState::shownBlow(double ratio) const {
    const Known& lost = of(lostMotion);
    return of(blow).value + (lost.known ? ratio * std::min(lost.value, 0.0) : 0.0);
}

void NoteState::takeShownBlow(double shown, double ratio) {
    const Known& lost = of(lostMotion);
    of(blow).value = shown - (lost.known ? ratio * std::min(lost.value, 0.0) : 0.0);
}

namespace {

struct Bound {
    WordId word;
    DimensionId dimension;
    double value, sd;
};
// Words in place of a number: the bound they say, with room on the far side. The numbers are guesses, no source.
constexpr std::array kBounds = {
    Bound{word::offRail, lostMotion, -0.4, 0.4},
    Bound{word::blocks, letOff, 0.0, 0.5},
};

} // namespace

std::optional<Told> tell(DimensionId id, const Measured& measured, double u) {
    if (measured.missing()) return std::nullopt;
    const Kind kind = row(id).kind;
    if (const auto value = measured.value()) {
        const auto plain = std::count_if(measured.trials.begin(), measured.trials.end(),
                                         [](const Reading& r) { return !r.word && r.relation == Relation::equal; });
        const int readings = std::max(static_cast<int>(plain), 1);
        return Told{toTrade(*value, kind), u * u / readings, readings};
    }
    const Reading& latest = *measured.latest();
    if (latest.word) {
        for (const Bound& bound : kBounds)
            if (bound.word == *latest.word && bound.dimension == id) return Told{bound.value, bound.sd * bound.sd};
        return std::nullopt;
    }
    if (latest.relation != Relation::between) return std::nullopt;
    const double low = toTrade(latest.count, kind), high = toTrade(latest.upper, kind);
    return Told{(low + high) / 2, (high - low) * (high - low) / 12 + u * u};
}

namespace {

Known readAlone(const Told& told) {
    Known known{told.value, told.variance, true};
    known.readings = told.readings;
    known.own = known.latest = told.value;
    return known;
}

/// Something was done to it: what was read before says no more what is there.
void disturb(Known& known) {
    known.expected = true;
    known.readings = 0;
    known.onRail = false;
}

} // namespace

namespace {

constexpr double kFarOff = 16; // squared standard deviations

/// Beyond four standard deviations of both it is not the same thing any more: wood moved, felt settled, or something
/// was done that nobody ticked. What is read now then stands alone.
bool standsAlone(const Known& known, const Told& told) {
    return !known.known || std::pow(told.value - known.value, 2) > kFarOff * (known.variance + told.variance);
}

void count(Known& known, const Told& told) {
    known.own = (known.readings * known.own + told.readings * told.value) / (known.readings + told.readings);
    known.readings += told.readings;
    known.latest = told.value;
    known.expected = false;
    known.weighed = true;
    known.derived = false;
}

void weigh(Known& known, const Told& told) {
    if (standsAlone(known, told)) {
        known = readAlone(told);
        return;
    }
    count(known, told);
    const double k = known.variance / (known.variance + told.variance);
    known.value += k * (told.value - known.value);
    known.variance *= 1 - k;
}

void readLinked(NoteState& note, DimensionId id, std::size_t place, const Told& told) {
    Known& known = note.of(id);
    if (standsAlone(known, told)) {
        // An aftertouch that was read before is weighed with it like any other reading.
        known = readAlone(told);
        linked::alone(note, place, told.variance);
        return;
    }
    count(known, told);
    LinkedRow row{};
    row[place] = 1;
    linked::learn(note, row, told.value - known.value, told.variance);
}

void readAftertouch(NoteState& note, const Told& told) {
    Known& after = note.of(aftertouch);
    const double off = told.value - after.value, run = linked::aftertouchRow(note)[linked::kOwnRatio];
    const bool farOff = off * off > kFarOff * (after.variance + told.variance);
    if (farOff) note.together[linked::kOwnRatio][linked::kOwnRatio] += off * off / (run * run);
    count(after, told);
    linked::learn(note, linked::aftertouchRow(note), off, told.variance);
}

} // namespace

void link(NoteState& note, const EscapementLink& linkage) {
    note.linkage = linkage;
    linked::alone(note, linked::kOwnRatio, std::pow(linkage.spread / (linkage.ratio * linkage.ratio), 2));
}

void readAt(NoteState& note, DimensionId id, const Told& told) {
    const bool wasReckoned = linked::reckoned(note);
    const auto place = linked::placeOf(note, id);
    if (id == aftertouch) note.aftertouchRead = true;
    if (place)
        readLinked(note, id, *place, told);
    else if (id == aftertouch && wasReckoned)
        readAftertouch(note, told);
    else
        weigh(note.of(id), told);
    // An aftertouch that stood alone up to now is a reading like any other.
    const Known after = note.of(aftertouch);
    if (!wasReckoned && linked::reckoned(note) && after.known) {
        linked::settle(note);
        readAftertouch(note, {after.value, after.variance, 1});
        Known& now = note.of(aftertouch);
        now.readings = after.readings;
        now.own = after.own;
        now.expected = after.expected;
        now.weighed = after.weighed;
    }
    linked::settle(note);
}

namespace {

constexpr double kGapIsFelt = -0.03; // mm at the key

/// Mean and variance of a standard normal above `from` (Johnson, Kotz and Balakrishnan 1994, 10.1); beyond five
/// standard deviations as at five.
std::pair<double, double> above(double from) {
    const double a = std::min(from, 5.0);
    const double density = std::exp(-a * a / 2) / std::sqrt(2 * std::numbers::pi);
    const double mean = density / (0.5 * std::erfc(a / std::numbers::sqrt2));
    return {mean, 1 + a * mean - mean * mean};
}

} // namespace

void seeOnRail(NoteState& note) {
    Known& lost = note.of(lostMotion);
    lost.onRail = true;
    const auto place = linked::placeOf(note, lostMotion);
    if (!lost.known || !place || lost.variance <= 0) return;
    const double variance = note.together[*place][*place], sd = std::sqrt(variance);
    const auto [mean, left] = above((kGapIsFelt - lost.value) / sd);
    // As a reading of M that leaves this mean and this variance.
    LinkedRow row{};
    row[*place] = 1;
    const double ofReading = variance * left / std::max(1 - left, 1e-9);
    linked::learn(note, row, sd * mean * (variance + ofReading) / variance, ofReading);
    linked::settle(note);
}

void begin(NoteState& note, DimensionId id, double value, double variance) {
    note.of(id) = {value, variance, true};
    if (const auto place = linked::placeOf(note, id)) linked::alone(note, *place, variance);
    linked::settle(note);
}

void forget(NoteState& note, DimensionId id) {
    // What is reckoned from it goes with it.
    if (linked::placeOf(note, id) && linked::reckoned(note) && id != note.linkage.height)
        note.of(aftertouch).known = false;
    note.of(id).known = false;
    if (const auto place = linked::placeOf(note, id)) linked::alone(note, *place, 0);
    if (id == aftertouch && note.linkage.ratio > 0) {
        note.e = 0;
        link(note, note.linkage);
    }
}

void shift(NoteState& note, DimensionId id, double by, double variance) {
    Known& known = note.of(id);
    known.value += by;
    known.variance += variance;
    if (const auto place = linked::placeOf(note, id)) {
        LinkedRow row{};
        row[*place] = 1;
        linked::spread(note, row, variance);
    }
    disturb(known);
    linked::settle(note);
}

double handSd(OperationId id, double amount, AmountUnit unit) {
    if (id == operation::checkBend || id == operation::spoonBend) return 0.12 * std::abs(amount) + 0.25 / 3;
    if (unit == AmountUnit::turn) return 0.05 * std::abs(amount) + 0.02;
    return 0.03 * std::abs(amount) + 0.005;
}

namespace {

// Of R, over the hammer's customary travel: the lever turns while it lifts.
constexpr double kRatioThroughStroke = 0.08 / 43;

/// How the relation of this note changes as blow and let-off are moved, mm.
void doubtRatio(NoteState& note, double moved) {
    LinkedRow row{};
    row[linked::kOwnRatio] = kRatioThroughStroke * moved / note.linkage.ratio;
    linked::spread(note, row, 1);
}

double relativeSd(const Effect& effect) {
    return effect.perUnit == 0 ? 0 : effect.sd / std::abs(effect.perUnit);
}

/// What the effect's own uncertainty has beyond that of the operation as a whole.
double beyond(const Effect& effect, double relative) {
    return std::max(effect.sd * effect.sd - std::pow(relative * effect.perUnit, 2), 0.0);
}

} // namespace

void move(NoteState& note, const Response& response, double amount, AmountUnit unit) {
    const double hand = handSd(response.operation, amount, unit);
    const double relative = relativeSd(response.effects.front());
    const bool reckoned = linked::reckoned(note);
    LinkedRow together{};
    double moved = 0;
    for (const Effect& effect : response.effects) {
        Known& known = note.of(effect.dimension);
        if (!known.known) continue;
        disturb(known);
        const auto place = linked::placeOf(note, effect.dimension);
        if (!place && effect.dimension == aftertouch && reckoned) continue;
        known.value += effect.perUnit * amount;
        if (effect.dimension == blow || effect.dimension == letOff) moved += std::abs(effect.perUnit * amount);
        if (place) {
            together[*place] = effect.perUnit;
            note.together[*place][*place] += beyond(effect, relative) * amount * amount;
        } else {
            known.variance += std::pow(effect.sd * amount, 2) + std::pow(effect.perUnit * hand, 2);
        }
    }
    if (note.linkage.ratio <= 0) return;
    linked::spread(note, together, std::pow(relative * amount, 2) + hand * hand);
    doubtRatio(note, moved);
    linked::settle(note);
}

namespace {

/// x_j moves by g_j (aim + error of the look - x_served): V' = T V T' + g g' u^2 with T = 1 - g e_served'.
void followServed(NoteState& note, std::size_t served, const LinkedRow& g, double u) {
    const LinkedRow old = note.together[served];
    const double variance = old[served];
    for (std::size_t i = 0; i < kLinkedCount; ++i)
        for (std::size_t j = 0; j < kLinkedCount; ++j)
            note.together[i][j] += -g[i] * old[j] - old[i] * g[j] + g[i] * g[j] * (variance + u * u);
}

} // namespace

void setToAim(NoteState& note, const Response& response, std::optional<double> aim, double u) {
    const Effect& first = response.effects.front();
    Known& served = note.of(first.dimension);
    const bool follows = aim && served.known && first.perUnit != 0;
    const double amount = follows ? (*aim - served.value) / first.perUnit : 0;
    const double amountSd = follows ? std::sqrt(served.variance) / std::abs(first.perUnit) : 0;
    const double relative = relativeSd(first);
    const auto servedPlace = linked::placeOf(note, first.dimension);
    const bool reckoned = linked::reckoned(note);
    LinkedRow g{};
    double moved = 0;
    for (const Effect& effect : response.effects) {
        Known& known = note.of(effect.dimension);
        const auto place = linked::placeOf(note, effect.dimension);
        if (effect.dimension == blow || effect.dimension == letOff) moved += std::abs(effect.perUnit * amount);
        if (place && follows && known.known) g[*place] = effect.perUnit / first.perUnit;
        if (!known.known || &known == &served) continue;
        if (!follows) {
            known.known = false;
            if (place) linked::alone(note, *place, 0);
        }
        disturb(known);
        if (effect.dimension == aftertouch && reckoned && follows) continue;
        known.value += effect.perUnit * amount;
        if (place && known.known)
            note.together[*place][*place] += beyond(effect, relative) * amount * amount;
        else
            known.variance += std::pow(effect.perUnit * amountSd, 2);
    }
    if (servedPlace && follows)
        followServed(note, *servedPlace, g, u);
    else if (servedPlace)
        linked::alone(note, *servedPlace, aim ? u * u : 0);
    served = {aim.value_or(0), u * u, aim.has_value(), true, true};
    // Whoever set it by looking read it there.
    served.readings = aim ? 1 : 0;
    served.own = served.latest = aim.value_or(0);
    if (note.linkage.ratio <= 0) return;
    doubtRatio(note, moved);
    linked::settle(note);
}

} // namespace hammerline
