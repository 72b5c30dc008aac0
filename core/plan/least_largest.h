// The least largest deviation: a small linear programme (computation 9.2, 9.3).
#pragma once

#include <span>
#include <vector>

namespace hammerline {

/// Deviations |d_i|, d_i = (start_i + sum_j effect_ij a_j)/up_i above zero and over down_i below, are to be least in
/// their largest. `up` or `down` infinite: open on that side.
struct DeviationRow {
    double start{};                  // distance from the nominal before anything is done
    double up = 1, down = 1;         // width of the zone above and below the nominal
    std::span<const double> effects; // per unit of each amount
};

struct Bounds {
    double least, most; // 0 lies between
};

/// Solved by the simplex method from "nothing is done", which is always allowed; Bland's rule, so it always ends.
/// The rows' effects, bounds and amounts have the same number of columns.
class LeastLargest {
public:
    /// The least largest |d|; amounts() then holds what reaches it.
    double solve(std::span<const DeviationRow> rows, std::span<const Bounds> bounds);
    std::span<const double> amounts() const { return m_amounts; }

private:
    void build(std::span<const DeviationRow> rows, std::span<const Bounds> bounds, double start);
    bool step();
    void pivot(std::size_t leaving, std::size_t entering);
    double& at(std::size_t row, std::size_t column) { return m_table[row * m_width + column]; }

    std::size_t m_rows = 0, m_width = 0;
    std::vector<double> m_table, m_amounts;
    std::vector<std::size_t> m_basic, m_free; // variable of each row, of each column
};

} // namespace hammerline
