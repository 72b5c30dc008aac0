#include "core/judge/key_line.h"

#include "core/stats/robust.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <numeric>

namespace hammerline {
namespace {

constexpr std::size_t kWindow = 7;      // naturals in the running median, about an octave
constexpr double kSunkTogether = 0.2;   // mm below the line that a running median must lie to count as sunk
constexpr double kNoiseFactor = 1.5;    // ... and in standard deviations of single keys
constexpr double kSmallestNoise = 0.03; // mm, so that perfect data have a scale
constexpr double kTukey = 4.685;        // 95 % efficiency on Gaussian data
constexpr int kMostRounds = 20;

std::vector<double> runningMedian(std::span<const NaturalHeight> keys) {
    const std::size_t half = kWindow / 2;
    std::vector<double> out;
    for (std::size_t i = 0; i < keys.size(); ++i) {
        std::vector<double> window;
        for (std::size_t j = i > half ? i - half : 0; j < std::min(keys.size(), i + half + 1); ++j)
            window.push_back(keys[j].height);
        out.push_back(*median(std::move(window)));
    }
    return out;
}

/// Standard deviation of single keys about their neighbours; a smooth hump does not enter it.
double noiseOf(std::span<const NaturalHeight> keys, const std::vector<double>& smooth) {
    std::vector<double> off;
    for (std::size_t i = 0; i < keys.size(); ++i)
        off.push_back(std::abs(keys[i].height - smooth[i]));
    return std::max(kSmallestNoise, kMadToDeviation * *median(std::move(off)));
}

double medianSlope(std::span<const NaturalHeight> keys) {
    std::vector<double> slopes;
    for (std::size_t i = 0; i < keys.size(); ++i)
        for (std::size_t j = i + 1; j < keys.size(); ++j)
            if (keys[j].place != keys[i].place)
                slopes.push_back((keys[j].height - keys[i].height) / (keys[j].place - keys[i].place));
    return median(std::move(slopes)).value_or(0.0);
}

KeyLine straightByMedians(std::span<const NaturalHeight> keys) {
    KeyLine line;
    line.tilt = keys.size() < 3 ? 0.0 : medianSlope(keys);
    std::vector<double> levels;
    for (const auto& key : keys)
        levels.push_back(key.height - line.tilt * (key.place - 0.5));
    line.level = median(std::move(levels)).value_or(0.0);
    line.trusted = static_cast<int>(keys.size());
    return line;
}

/// Solves the symmetric system of weighted least squares for the first `terms` of (1, place - 1/2, 4 place (1 -
/// place)).
KeyLine solveWeighted(std::span<const NaturalHeight> keys, const std::vector<double>& weights, int terms,
                      double fixedCrown) {
    std::array<std::array<double, 4>, 3> m{};
    for (std::size_t i = 0; i < keys.size(); ++i) {
        const double p = keys[i].place;
        const std::array<double, 3> basis = {1.0, p - 0.5, 4 * p * (1 - p)};
        const double y = keys[i].height - fixedCrown * basis[2];
        for (std::size_t r = 0; r < 3; ++r) {
            for (std::size_t c = 0; c < 3; ++c)
                m[r][c] += weights[i] * basis[r] * basis[c];
            m[r][3] += weights[i] * basis[r] * y;
        }
    }
    const auto n = static_cast<std::size_t>(terms);
    for (std::size_t pivot = 0; pivot < n; ++pivot) {
        if (std::abs(m[pivot][pivot]) < 1e-12) continue;
        for (std::size_t r = 0; r < n; ++r) {
            if (r == pivot) continue;
            const double factor = m[r][pivot] / m[pivot][pivot];
            for (std::size_t c = 0; c < 4; ++c)
                m[r][c] -= factor * m[pivot][c];
        }
    }
    const auto solved = [&](std::size_t r) { return std::abs(m[r][r]) < 1e-12 ? 0.0 : m[r][3] / m[r][r]; };
    return {solved(0), solved(1), terms == 3 ? solved(2) : fixedCrown, 0};
}

/// The crown kept between none and the greatest that is legitimate.
KeyLine solveCrowned(std::span<const NaturalHeight> keys, const std::vector<double>& weights, double greatest) {
    const KeyLine free = solveWeighted(keys, weights, 3, 0);
    if (free.crown >= 0 && free.crown <= greatest) return free;
    return solveWeighted(keys, weights, 2, std::clamp(free.crown, 0.0, greatest));
}

KeyLine fitRobustly(std::span<const NaturalHeight> keys, double noise, double greatestCrown) {
    KeyLine line = straightByMedians(keys);
    for (int round = 0; round < kMostRounds; ++round) {
        std::vector<double> off;
        for (const auto& key : keys)
            off.push_back(std::abs(key.height - line.at(key.place)));
        const double scale = kTukey * std::max(noise, kMadToDeviation * *median(off));
        std::vector<double> weights;
        for (const double e : off) {
            const double u = e / scale;
            weights.push_back(u < 1 ? (1 - u * u) * (1 - u * u) : 0.0);
        }
        const KeyLine next = solveCrowned(keys, weights, greatestCrown);
        const double moved =
            std::max(std::abs(next.at(0.0) - line.at(0.0)),
                     std::max(std::abs(next.at(0.5) - line.at(0.5)), std::abs(next.at(1.0) - line.at(1.0))));
        line = next;
        if (moved < 1e-6) break;
    }
    line.trusted = static_cast<int>(keys.size());
    return line;
}

KeyLine levelAtItsTop(const std::vector<double>& smooth, double tolerance) {
    KeyLine line;
    line.level = *std::max_element(smooth.begin(), smooth.end());
    line.trusted = static_cast<int>(
        std::count_if(smooth.begin(), smooth.end(), [&](double h) { return h >= line.level - tolerance; }));
    return line;
}

double crownAt(double crown, double place) {
    return crown * 4 * place * (1 - place);
}

KeyLine fitLine(std::vector<NaturalHeight> keys, double greatestCrown) {
    std::sort(keys.begin(), keys.end(), [](const auto& a, const auto& b) { return a.place < b.place; });
    if (keys.size() < kWindow) return straightByMedians(keys);
    const std::vector<double> smooth = runningMedian(keys);
    const double noise = noiseOf(keys, smooth);
    const double tolerance = std::max(kSunkTogether, kNoiseFactor * noise);

    std::vector<NaturalHeight> trusted = keys;
    KeyLine line = fitRobustly(trusted, noise, greatestCrown);
    for (int round = 0; round < kMostRounds; ++round) {
        std::vector<NaturalHeight> next;
        for (std::size_t i = 0; i < keys.size(); ++i)
            if (smooth[i] >= line.at(keys[i].place) - tolerance) next.push_back(keys[i]);
        if (next.size() * 2 < keys.size()) return levelAtItsTop(smooth, tolerance);
        const bool settled = next.size() == trusted.size();
        trusted = std::move(next);
        line = fitRobustly(trusted, noise, greatestCrown);
        if (settled) break;
    }
    return line;
}

} // namespace

double KeyLine::at(double place) const {
    return level + tilt * (place - 0.5) + crownAt(crown, place);
}

KeyLine fitKeyLine(std::span<const NaturalHeight> given, std::optional<double> crown) {
    std::vector<NaturalHeight> keys(given.begin(), given.end());
    if (!crown) return fitLine(std::move(keys), kGreatestCrown);
    for (NaturalHeight& key : keys) // what is left without the crown is straight
        key.height -= crownAt(*crown, key.place);
    KeyLine line = fitLine(std::move(keys), 0);
    line.crown = *crown;
    return line;
}

} // namespace hammerline
