#include "core/plan/from_samples.h"

#include <algorithm>
#include <cmath>

namespace hammerline {

namespace {

constexpr int kFewest = 5;
constexpr double kTwoSided = 1.959963984540054; // normal quantile, 95 %

const Operation* singleWorkFor(DimensionId dimension, const Piano& piano) {
    const auto all = operations();
    const auto found = std::ranges::find_if(all, [&](const Operation& each) {
        if (each.common || each.id == operation::inspect || !applies(each.id, piano)) return false;
        return servesOf(each.id, KeyColour::natural, piano) == dimension ||
               servesOf(each.id, KeyColour::sharp, piano) == dimension;
    });
    return found == all.end() ? nullptr : &*found;
}

} // namespace

ShareInterval scoreInterval(int hits, int n) {
    const double N = n, p = hits / N, z2 = kTwoSided * kTwoSided;
    const double middle = (p + z2 / (2 * N)) / (1 + z2 / N);
    const double half = kTwoSided * std::sqrt(p * (1 - p) / N + z2 / (4 * N * N)) / (1 + z2 / N);
    return {p, std::max(0.0, middle - half), std::min(1.0, middle + half)};
}

std::vector<FromSamples> fromSamples(const Piano& piano, const Review& review) {
    std::vector<FromSamples> found;
    for (const Dimension& dimension : dimensions()) {
        if (dimension.wordsOnly) continue;
        const Operation* work = singleWorkFor(dimension.id, piano);
        if (!work) continue;
        FromSamples each{dimension.id, work->id};
        for (int n = 1; n <= piano.notes; ++n) {
            if (!fitted(dimension.id, {n}, piano)) continue;
            ++each.all;
            const Judged* judged = review.at({{n}, dimension.id});
            if (!judged || judged->stale || judged->verdict == Verdict::missing) continue;
            ++each.read;
            each.out += judged->verdict == Verdict::low || judged->verdict == Verdict::high;
        }
        if (each.read < kFewest || 2 * each.read >= each.all || each.out == 0) continue;
        const ShareInterval share = scoreInterval(each.out, each.read);
        const double there = minutesToReach(accessOf(work->id, piano), piano)[0];
        const auto minutesAt = [&](double of) { return there + of * each.all * minutesFor(work->id, piano); };
        each.minutes = minutesAt(share.share);
        each.low = minutesAt(share.low);
        each.high = minutesAt(share.high);
        found.push_back(each);
    }
    return found;
}

} // namespace hammerline
