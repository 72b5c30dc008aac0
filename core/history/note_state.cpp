#include "core/history/note_state.h"

#include <algorithm>
#include <cmath>

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
}

} // namespace

void weigh(Known& known, const Told& told) {
    if (!known.known) {
        known = readAlone(told);
        return;
    }
    // Beyond four standard deviations of both it is not the same thing any more: wood moved, felt settled, or something
    // was done that nobody ticked. What is read now then stands alone.
    if (std::pow(told.value - known.value, 2) > 16 * (known.variance + told.variance)) {
        known = readAlone(told);
        return;
    }
    known.own = (known.readings * known.own + told.readings * told.value) / (known.readings + told.readings);
    known.readings += told.readings;
    known.latest = told.value;
    const double k = known.variance / (known.variance + told.variance);
    known.value += k * (told.value - known.value);
    known.variance *= 1 - k;
    known.expected = false;
    known.weighed = true;
    known.derived = false;
}

/// r = D - M - (B-O)/R - A is zero in truth. Its variance S is the sum of c^2 V with c = (1, -1, -1/R, 1/R, -1) and of
/// ((B-O) s_R / R^2)^2. Each takes its share: x -= V c r / S, V -= (V c)^2 / S (the covariances it leaves between the
/// five are not kept: the next reading of any of them mends that).
void useRelation(NoteState& note, double ratio, double ratioSpread, bool vertical) {
    constexpr std::array five = {keyDip, lostMotion, blow, letOff, aftertouch};
    const std::array c = {1.0, -1.0, -1 / ratio, 1 / ratio, -1.0};
    // A grand's keys have no lost motion: known to be none.
    Known none{0, 0, true};
    std::array<Known*, 5> at{};
    std::size_t unknown = 0, missing = 0;
    for (std::size_t i = 0; i < five.size(); ++i) {
        at[i] = !vertical && five[i] == lostMotion ? &none : &note.of(five[i]);
        if (at[i]->known) continue;
        ++unknown;
        missing = i;
    }
    if (unknown > 1) return;
    double residual = 0, variance = 0;
    for (std::size_t i = 0; i < five.size(); ++i) {
        if (!at[i]->known) continue;
        residual += c[i] * at[i]->value;
        variance += c[i] * c[i] * at[i]->variance;
    }
    // Where blow or let-off itself is the one to be found, the spread of R enters with the customary run to let-off.
    const double run = at[2]->known && at[3]->known ? at[2]->value - at[3]->value : 43.0;
    variance += std::pow(run * ratioSpread / (ratio * ratio), 2);
    if (unknown == 1) {
        *at[missing] = {-residual / c[missing], variance / (c[missing] * c[missing]), true, true};
        at[missing]->derived = true;
        return;
    }
    if (variance <= 0 || residual * residual > 16 * variance) return;
    for (std::size_t i = 0; i < five.size(); ++i) {
        const double gain = at[i]->variance * c[i] / variance;
        at[i]->value -= gain * residual;
        at[i]->variance -= gain * c[i] * at[i]->variance;
    }
}

double handSd(OperationId id, double amount, AmountUnit unit) {
    if (id == operation::checkBend || id == operation::spoonBend) return 0.12 * std::abs(amount) + 0.25 / 3;
    if (unit == AmountUnit::turn) return 0.05 * std::abs(amount) + 0.02;
    return 0.03 * std::abs(amount) + 0.005;
}

void move(NoteState& note, const Response& response, double amount, AmountUnit unit) {
    const double hand = handSd(response.operation, amount, unit);
    for (const Effect& effect : response.effects) {
        Known& known = note.of(effect.dimension);
        if (!known.known) continue;
        known.value += effect.perUnit * amount;
        known.variance += std::pow(effect.sd * amount, 2) + std::pow(effect.perUnit * hand, 2);
        disturb(known);
    }
}

void setToAim(NoteState& note, const Response& response, std::optional<double> aim, double u) {
    const Effect& first = response.effects.front();
    Known& served = note.of(first.dimension);
    const bool follows = aim && served.known && first.perUnit != 0;
    const double amount = follows ? (*aim - served.value) / first.perUnit : 0;
    const double amountSd = follows ? std::sqrt(served.variance) / std::abs(first.perUnit) : 0;
    for (const Effect& effect : response.effects) {
        Known& known = note.of(effect.dimension);
        if (!known.known || &known == &served) continue;
        known.known = follows;
        known.value += effect.perUnit * amount;
        known.variance += std::pow(effect.perUnit * amountSd, 2);
        disturb(known);
    }
    served = {aim.value_or(0), u * u, aim.has_value(), true, true};
    // Whoever set it by looking read it there.
    served.readings = aim ? 1 : 0;
    served.own = served.latest = aim.value_or(0);
}

} // namespace hammerline
