#include "core/judge/escapement.h"

#include "core/judge/judge.h"
#include "core/stats/robust.h"

#include <algorithm>
#include <cmath>

namespace hammerline {
namespace {

constexpr int kFewestNotes = 3;                    // for an estimate of the ratio
constexpr double kLeastSpreadShare = 0.012;        // between the notes of one action (a guess, no source)
constexpr double kMedianOverMean = 1.5708;         // variance of a median over that of a mean (normal), pi/2
constexpr double kDefaultSpreadShare = 0.33 / 4.9; // the band 4.3 to 5.6 (bench-practice 2.6) as 2 sd each way

} // namespace

double aftertouchOf(double dip, double lostMotion, double blow, double letOff, double ratio) {
    return dip - std::max(lostMotion, 0.0) - (blow - letOff) / ratio;
}

double dipOf(double lostMotion, double blow, double letOff, double aftertouch, double ratio) {
    return std::max(lostMotion, 0.0) + (blow - letOff) / ratio + aftertouch;
}

double blowOf(double dip, double lostMotion, double letOff, double aftertouch, double ratio) {
    return letOff + ratio * (dip - std::max(lostMotion, 0.0) - aftertouch);
}

std::optional<double> ratioOf(double dip, double lostMotion, double blow, double letOff, double aftertouch) {
    const double travel = dip - std::max(lostMotion, 0.0) - aftertouch;
    if (!(travel > 0)) return std::nullopt;
    return (blow - letOff) / travel;
}

double railBlowOf(double blow, double lostMotion, double ratio) {
    return blow - ratio * std::min(lostMotion, 0.0);
}

double shownBlowOf(double railBlow, double lostMotion, double ratio) {
    return railBlow + ratio * std::min(lostMotion, 0.0);
}

EscapementReading escapementAt(const Piano& piano, const PassTable& table, NoteNumber note) {
    EscapementReading out;
    out.dip = table.value({note, dimension::keyDip});
    out.blow = table.value({note, dimension::blow});
    out.letOff = table.value({note, dimension::letOff});
    out.aftertouch = table.value({note, dimension::aftertouch});
    out.lostMotion = table.value({note, dimension::lostMotion});
    if (!piano.vertical() || table.word({note, dimension::lostMotion}) == word::offRail) out.lostMotion = 0.0;
    const auto letOff = table.word({note, dimension::letOff});
    if (letOff == word::blocks) {
        out.letOff = 0.0;
        out.letOffBound = true;
    }
    if (letOff == word::noLetOff) {
        // At the bottom of the key the hammer has not come as far as the escape, which lies before the string.
        out.letOff = 0.0;
        out.aftertouch = 0.0;
        out.aftertouchBound = true;
    }
    return out;
}

std::array<double, 5> relationWeights(double ratio) {
    return {1, -1, -1 / ratio, 1 / ratio, -1};
}

std::optional<double> relationResidual(const EscapementReading& reading, double ratio) {
    if (!reading.complete() || !(ratio > 0)) return std::nullopt;
    return aftertouchOf(*reading.dip, *reading.lostMotion, *reading.blow, *reading.letOff, ratio) - *reading.aftertouch;
}

namespace {

/// What the readings' uncertainty alone makes of the ratio found at one note: R = (B - O)/(D - M - A), by the
/// derivatives, over a travel T of the key. Variance.
double noiseOfRatio(const Piano& piano, double ratio, double travel) {
    const auto variance = [&](DimensionId id) {
        const double u = toTrade(uncertaintyOf(id, piano), Kind::length);
        return u * u;
    };
    const double lost = piano.vertical() ? variance(dimension::lostMotion) : 0;
    const double atHammer = variance(dimension::blow) + variance(dimension::letOff);
    const double atKey = variance(dimension::keyDip) + lost + variance(dimension::aftertouch);
    return (atHammer + ratio * ratio * atKey) / (travel * travel);
}

} // namespace

Ratio estimateRatio(const Piano& piano, const PassTable& table, KeyColour colour) {
    const auto& entered = piano.ratio[static_cast<std::size_t>(colour)];
    if (entered) return {*entered, kDefaultSpreadShare * *entered, 0, true};
    std::vector<double> found, travels;
    for (int n = 1; n <= piano.notes; ++n) {
        const NoteNumber note{n};
        if (colourOf(note, piano) != colour) continue;
        const EscapementReading reading = escapementAt(piano, table, note);
        if (!reading.complete() || reading.letOffBound || reading.aftertouchBound) continue;
        if (const auto r =
                ratioOf(*reading.dip, *reading.lostMotion, *reading.blow, *reading.letOff, *reading.aftertouch)) {
            found.push_back(*r);
            travels.push_back((*reading.blow - *reading.letOff) / *r);
        }
    }
    if (found.size() < kFewestNotes) {
        const double value = defaultRatio(piano, colour);
        const auto& taught = piano.taught.ratio[static_cast<std::size_t>(colour)];
        return {value, taught ? taught->sd : kDefaultSpreadShare * value, 0, false};
    }
    const auto scale = robustScale(found);
    const double seen = kMadToDeviation * scale->mad;
    const double noise = noiseOfRatio(piano, scale->median, *median(travels));
    const double between = std::sqrt(std::max(seen * seen - noise, 0.0));
    const double ofMedian = std::sqrt(kMedianOverMean / static_cast<double>(found.size())) * seen;
    return {scale->median, std::max(between, kLeastSpreadShare * scale->median), static_cast<int>(found.size()), false,
            ofMedian};
}

Ratio estimateRatio(const Piano& piano, const Pass& pass, KeyColour colour) {
    return estimateRatio(piano, PassTable(piano, pass), colour);
}

Ratio estimateRatio(const Piano& piano, std::span<const Pass> passes, KeyColour colour) {
    Ratio best{defaultRatio(piano, colour), 0, 0, false};
    for (const Pass& pass : passes)
        if (const Ratio ratio = estimateRatio(piano, pass, colour); ratio.entered || ratio.notes >= best.notes)
            best = ratio;
    return best;
}

} // namespace hammerline
