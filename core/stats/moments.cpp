#include "core/stats/moments.h"

#include <cmath>

namespace hammerline {
namespace {

struct Deviations {
    double mean{}, sum{}, squares{};
};

Deviations deviationsFromMean(std::span<const double> values) {
    const double m = *mean(values);
    Deviations out{m, 0, 0};
    for (const double x : values) {
        out.sum += x - m;
        out.squares += (x - m) * (x - m);
    }
    return out;
}

} // namespace

std::optional<double> mean(std::span<const double> values) {
    if (values.empty()) return std::nullopt;
    const auto n = static_cast<double>(values.size());
    double shifted = 0;
    for (const double x : values)
        shifted += x - values.front();
    const double first = values.front() + shifted / n;
    double rest = 0; // what rounding of the first pass left over
    for (const double x : values)
        rest += x - first;
    return first + rest / n;
}

std::optional<double> variance(std::span<const double> values) {
    if (values.size() < 2) return std::nullopt;
    const Deviations d = deviationsFromMean(values);
    const auto n = static_cast<double>(values.size());
    return (d.squares - d.sum * d.sum / n) / (n - 1);
}

std::optional<double> standardDeviation(std::span<const double> values) {
    const auto v = variance(values);
    return v ? std::optional(std::sqrt(*v)) : std::nullopt;
}

std::optional<double> lagOneCorrelation(std::span<const double> values) {
    if (values.size() < 2) return std::nullopt;
    const Deviations d = deviationsFromMean(values);
    if (d.squares <= 0) return std::nullopt;
    double products = 0;
    for (std::size_t i = 1; i < values.size(); ++i)
        products += (values[i] - d.mean) * (values[i - 1] - d.mean);
    return products / d.squares;
}

std::optional<PooledDeviation> pooledDeviation(std::span<const std::vector<double>> groups) {
    double squares = 0;
    int degrees = 0;
    for (const auto& group : groups) {
        if (group.size() < 2) continue;
        const int each = static_cast<int>(group.size()) - 1;
        squares += *variance(group) * each;
        degrees += each;
    }
    if (degrees == 0) return std::nullopt;
    return PooledDeviation{std::sqrt(squares / degrees), degrees};
}

} // namespace hammerline
