// One reading against its zone (computation 3).
#include "core/judge/judge.h"
#include "core/stats/conformity.h"

#include <algorithm>
#include <array>
#include <cmath>

namespace hammerline {
namespace {

constexpr std::array kVerdicts = {
    std::pair{Verdict::within, std::string_view{"within"}},
    std::pair{Verdict::low, std::string_view{"low"}},
    std::pair{Verdict::high, std::string_view{"high"}},
    std::pair{Verdict::undecided, std::string_view{"undecided"}},
    std::pair{Verdict::missing, std::string_view{"missing"}},
    std::pair{Verdict::notFitted, std::string_view{"not-fitted"}},
};

constexpr std::array kRules = {
    std::pair{Rule::plain, std::string_view{"plain"}},
    std::pair{Rule::guard95, std::string_view{"guard95"}},
    std::pair{Rule::guardU, std::string_view{"guardU"}},
};

double guardBand(Rule rule, double u) {
    return u * (rule == Rule::guardU ? kGuardFactorU : kGuardFactor95);
}

ToleranceLimits limitsOf(const Zone& zone) {
    ToleranceLimits out;
    if (zone.low) out.low = static_cast<double>(*zone.low);
    if (zone.high) out.high = static_cast<double>(*zone.high);
    return out;
}

/// Beyond a limit by less than the gauge can tell: at most u, and never more than an eighth of the zone.
double allowance(const Zone& zone, double u) {
    const auto width = widthOf(zone);
    return width ? std::min(u, *width / 8) : u;
}

Verdict byPlainLimits(std::int64_t x, const Zone& zone, double u) {
    const double slack = allowance(zone, u);
    if (zone.low && x < *zone.low)
        return static_cast<double>(*zone.low - x) <= slack ? Verdict::undecided : Verdict::low;
    if (zone.high && x > *zone.high)
        return static_cast<double>(x - *zone.high) <= slack ? Verdict::undecided : Verdict::high;
    return Verdict::within;
}

Verdict byGuardBand(std::int64_t x, const Zone& zone, double w) {
    switch (decide(static_cast<double>(x), w, limitsOf(zone))) {
    case Conformity::proven:
        return Verdict::within;
    case Conformity::disproven:
        return zone.low && x < *zone.low ? Verdict::low : Verdict::high;
    case Conformity::neither:
        break;
    }
    return Verdict::undecided;
}

void judgeWord(Judged& out, WordId word) {
    out.word = word;
    const double marks = row(word).marks;
    out.deviation = marks;
    out.verdict = marks < -1 ? Verdict::low : marks > 1 ? Verdict::high : Verdict::within;
}

void judgeNumber(Judged& out, const Zone& zone, double u, Rule rule) {
    const std::int64_t x = *out.value;
    const Deviation d = deviationOf(x, zone);
    out.deviation = d.value;
    out.infinite = d.infinite;
    out.verdict = rule == Rule::plain ? byPlainLimits(x, zone, u) : byGuardBand(x, zone, guardBand(rule, u));
    if (out.verdict == Verdict::undecided)
        out.within = probabilityOfConformity(static_cast<double>(x), u, limitsOf(zone));
}

/// An inequality or go / no-go pair says that the value lies between two bounds (open where absent): it is judged only
/// where every value between them would be judged alike.
void judgeBounds(Judged& out, const Reading& reading, const Zone& zone) {
    std::optional<std::int64_t> from;
    std::optional<std::int64_t> to;
    if (reading.relation != Relation::less) from = reading.count;
    if (reading.relation == Relation::less) to = reading.count;
    if (reading.relation == Relation::between) to = reading.upper;

    // "<x" and ">x" leave x itself out, so touching the limit from outside decides already.
    const bool low = zone.low && to && (*to < *zone.low || (*to == *zone.low && reading.relation == Relation::less));
    const bool high =
        zone.high && from && (*from > *zone.high || (*from == *zone.high && reading.relation == Relation::more));
    const bool within = (!zone.low || (from && *from >= *zone.low)) && (!zone.high || (to && *to <= *zone.high));
    out.verdict = low ? Verdict::low : high ? Verdict::high : within ? Verdict::within : Verdict::undecided;

    // The deviation that is certain: that of the bound nearest the zone; of a pair, that of its middle.
    std::optional<std::int64_t> shown;
    if (reading.relation == Relation::between)
        shown = reading.count + (reading.upper - reading.count) / 2;
    else if (low || high)
        shown = reading.count;
    if (!shown) return;
    const Deviation d = deviationOf(*shown, zone);
    out.deviation = d.value;
    out.infinite = d.infinite;
}

} // namespace

std::string_view key(Verdict verdict) {
    for (const auto& [value, text] : kVerdicts)
        if (value == verdict) return text;
    return {};
}

std::string_view key(Rule rule) {
    for (const auto& [value, text] : kRules)
        if (value == rule) return text;
    return {};
}

Outcome<Rule> parseRule(std::string_view text) {
    for (const auto& [value, name] : kRules)
        if (name == text) return value;
    return refuse(RefusalCode::usage, std::string(text), "plain|guard95|guardU");
}

std::optional<double> widthOf(const Zone& zone) {
    if (zone.low && zone.high) return static_cast<double>(*zone.high - *zone.low);
    if (zone.low) return 2.0 * static_cast<double>(zone.nominal - *zone.low);
    if (zone.high) return 2.0 * static_cast<double>(*zone.high - zone.nominal);
    return std::nullopt;
}

Deviation deviationOf(std::int64_t x, const Zone& zone) {
    if (x == zone.nominal) return {0.0, false};
    const bool above = x > zone.nominal;
    const auto& limit = above ? zone.high : zone.low;
    if (!limit) return {};
    const double side = static_cast<double>(above ? *limit - zone.nominal : zone.nominal - *limit);
    if (!(side > 0)) return {std::nullopt, true};
    return {static_cast<double>(x - zone.nominal) / side, false};
}

int Judged::marks() const {
    if (verdict == Verdict::undecided) return 0; // not said to be out
    if (infinite) return 3;
    const double d = std::abs(deviation.value_or(0));
    return d <= 1 ? 0 : d <= 1.5 ? 1 : d <= 2.5 ? 2 : 3;
}

Judged judge(Cell cell, const Measured& measured, const std::optional<Zone>& zone, double u, Rule rule) {
    Judged out;
    out.cell = cell;
    if (measured.notFitted) {
        out.verdict = Verdict::notFitted;
        return out;
    }
    if (measured.missing()) return out;
    if (const auto word = measured.word()) {
        judgeWord(out, *word);
        return out;
    }
    out.value = measured.value();
    const Reading& latest = *measured.latest();
    if (!out.value) {
        out.value = latest.count;
        out.relation = latest.relation;
        if (latest.relation == Relation::between) out.upper = latest.upper;
    }
    if (!zone) {
        out.verdict = Verdict::within; // the sheet asks nothing of it
        return out;
    }
    if (out.relation != Relation::equal) {
        judgeBounds(out, latest, *zone);
        return out;
    }
    judgeNumber(out, *zone, u, rule);
    return out;
}

} // namespace hammerline
