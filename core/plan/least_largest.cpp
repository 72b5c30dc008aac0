#include "core/plan/least_largest.h"

#include <algorithm>
#include <cmath>
#include <limits>

namespace hammerline {

namespace {
constexpr double kTiny = 1e-11;
constexpr double kThinnest = 1e-3; // a zone side of no width: any miss is then very large
} // namespace

/// With t the largest |d| and s = t0 - t >= 0 the gain over doing nothing, every row i reads
///   effects.a + s up <= t0 up - start,   -effects.a + s down <= t0 down + start,
/// all right sides >= 0 by the choice of t0; so the slack basis is feasible and s is maximised. Amounts are free:
/// a = a' - a'', columns 2j and 2j + 1. Last column the right side, last row the objective.
void LeastLargest::build(std::span<const DeviationRow> rows, std::span<const Bounds> bounds, double start) {
    const std::size_t amounts = bounds.size(), gain = 2 * amounts;
    m_width = 2 * amounts + 2;
    m_rows = 0;
    m_table.clear();
    const auto add = [&](auto fill) {
        m_table.resize((m_rows + 1) * m_width, 0.0);
        std::fill_n(m_table.begin() + static_cast<std::ptrdiff_t>(m_rows * m_width), m_width, 0.0);
        fill(m_table.data() + m_rows * m_width);
        ++m_rows;
    };
    for (const DeviationRow& row : rows)
        for (const double sign : {1.0, -1.0}) {
            const double width = sign > 0 ? row.up : row.down;
            if (std::isinf(width)) continue;
            add([&](double* line) {
                for (std::size_t j = 0; j < amounts; ++j) {
                    line[2 * j] = sign * row.effects[j];
                    line[2 * j + 1] = -sign * row.effects[j];
                }
                line[gain] = std::max(width, kThinnest);
                line[gain + 1] = std::max(start * std::max(width, kThinnest) - sign * row.start, 0.0);
            });
        }
    for (std::size_t j = 0; j < amounts; ++j) {
        if (std::isfinite(bounds[j].most))
            add([&](double* line) {
                line[2 * j] = 1;
                line[2 * j + 1] = -1;
                line[gain + 1] = std::max(bounds[j].most, 0.0);
            });
        if (std::isfinite(bounds[j].least))
            add([&](double* line) {
                line[2 * j] = -1;
                line[2 * j + 1] = 1;
                line[gain + 1] = std::max(-bounds[j].least, 0.0);
            });
    }
    add([&](double* line) { // t >= 0
        line[gain] = 1;
        line[gain + 1] = start;
    });
    add([&](double* line) { line[gain] = 1; }); // objective: the gain
    --m_rows;
    m_basic.resize(m_rows);
    m_free.resize(m_width - 1);
    for (std::size_t j = 0; j < m_free.size(); ++j)
        m_free[j] = j;
    for (std::size_t i = 0; i < m_rows; ++i)
        m_basic[i] = m_free.size() + i;
}

bool LeastLargest::step() {
    const std::size_t right = m_width - 1;
    std::size_t entering = right;
    for (std::size_t j = 0; j < right; ++j)
        if (at(m_rows, j) > kTiny && (entering == right || m_free[j] < m_free[entering])) entering = j;
    if (entering == right) return false;
    std::size_t leaving = m_rows;
    double least = std::numeric_limits<double>::infinity();
    for (std::size_t i = 0; i < m_rows; ++i) {
        if (at(i, entering) <= kTiny) continue;
        const double ratio = at(i, right) / at(i, entering);
        if (ratio < least - kTiny || (ratio < least + kTiny && leaving < m_rows && m_basic[i] < m_basic[leaving])) {
            least = std::min(least, ratio);
            leaving = i;
        }
    }
    if (leaving == m_rows) return false;
    pivot(leaving, entering);
    return true;
}

void LeastLargest::pivot(std::size_t leaving, std::size_t entering) {
    const double by = 1 / at(leaving, entering);
    for (std::size_t i = 0; i <= m_rows; ++i) {
        if (i == leaving) continue;
        const double factor = at(i, entering) * by;
        if (factor == 0) continue;
        for (std::size_t j = 0; j < m_width; ++j)
            if (j != entering) at(i, j) -= factor * at(leaving, j);
        at(i, entering) = -factor;
    }
    for (std::size_t j = 0; j < m_width; ++j)
        if (j != entering) at(leaving, j) *= by;
    at(leaving, entering) = by;
    std::swap(m_basic[leaving], m_free[entering]);
}

double LeastLargest::solve(std::span<const DeviationRow> rows, std::span<const Bounds> bounds) {
    double start = 0;
    for (const DeviationRow& row : rows) {
        const double width = row.start > 0 ? row.up : row.down;
        if (!std::isinf(width)) start = std::max(start, std::abs(row.start) / std::max(width, kThinnest));
    }
    build(rows, bounds, start);
    const std::size_t most = 20 * (m_rows + m_width); // Bland's rule ends; rounding might not
    for (std::size_t i = 0; i < most && step(); ++i) {
    }
    m_amounts.assign(bounds.size(), 0.0);
    double gain = 0;
    for (std::size_t i = 0; i < m_rows; ++i) {
        const double value = at(i, m_width - 1);
        if (m_basic[i] == 2 * bounds.size())
            gain = value;
        else if (m_basic[i] < 2 * bounds.size())
            m_amounts[m_basic[i] / 2] += m_basic[i] % 2 == 0 ? value : -value;
    }
    return std::max(start - gain, 0.0);
}

} // namespace hammerline
