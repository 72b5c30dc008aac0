// Punchings from the stock for a thickness (computation 9a), exact in whole nanometres.
#include "core/plan/plan.h"

#include <algorithm>
#include <numeric>

namespace hammerline {

namespace {

struct Stock {
    std::int64_t thickness{};
    int count{}; // pieces at hand, at most the piece limit
};

/// Depth first over stacks of falling thickness, with a given number of pieces. What is left to place bounds the sum
/// from above (all of the next thickness) and the overshoot from below, so most branches end at once.
class Search {
public:
    Search(std::int64_t target, std::vector<Stock> stock) : m_target(target), m_stock(std::move(stock)) {
        for (const Stock& each : m_stock)
            m_grain = std::gcd(m_grain, each.thickness);
        const std::int64_t over = m_grain > 0 ? m_target % m_grain : 0;
        m_leastError = m_grain > 0 ? std::min(over, m_grain - over) : m_target;
        m_error = m_target; // the empty stack
    }

    std::vector<std::int64_t> best(int mostPieces) {
        for (int pieces = 1; pieces <= mostPieces && m_error > m_leastError; ++pieces) {
            m_pieces = pieces;
            // More pieces must be strictly better than fewer; among as many the order of place() decides.
            place(0, pieces, 0);
        }
        return m_best;
    }

private:
    void place(std::size_t from, int left, std::int64_t sum) {
        if (left == 0) {
            consider(sum);
            return;
        }
        if (sum - m_target > m_error) return;
        for (std::size_t i = from; i < m_stock.size(); ++i) {
            Stock& stock = m_stock[i];
            if (m_target - (sum + left * stock.thickness) > m_error) return; // even the thickest falls short
            if (stock.count == 0) continue;
            --stock.count;
            m_stack.push_back(stock.thickness);
            place(i, left - 1, sum + stock.thickness);
            m_stack.pop_back();
            ++stock.count;
        }
    }

    /// Least error; then fewest pieces; then not above the target; then the larger pieces first.
    void consider(std::int64_t sum) {
        const std::int64_t error = std::abs(sum - m_target);
        if (error > m_error) return;
        if (error == m_error) {
            if (m_best.size() < static_cast<std::size_t>(m_pieces)) return;
            if (sum > m_target) return;
            if (m_bestSum <= m_target && m_best >= m_stack) return;
        }
        m_error = error;
        m_best = m_stack;
        m_bestSum = sum;
    }

    std::int64_t m_target;
    std::vector<Stock> m_stock;
    std::int64_t m_grain = 0, m_leastError = 0, m_error = 0, m_bestSum = 0;
    int m_pieces = 0;
    std::vector<std::int64_t> m_stack, m_best;
};

} // namespace

ShimStack shimStack(Length target, std::span<const Length> stock, std::span<const int> counts, int mostPieces) {
    ShimStack result{{}, Length{-target.nm}};
    if (target.nm <= 0) return result;
    std::vector<Stock> pieces;
    for (std::size_t i = 0; i < stock.size(); ++i)
        if (stock[i].nm > 0) pieces.push_back({stock[i].nm, i < counts.size() ? counts[i] : mostPieces});
    std::sort(pieces.begin(), pieces.end(), [](auto& a, auto& b) { return a.thickness > b.thickness; });
    std::int64_t sum = 0;
    for (const std::int64_t thickness : Search(target.nm, std::move(pieces)).best(mostPieces)) {
        result.pieces.push_back(Length{thickness});
        sum += thickness;
    }
    result.error = Length{sum - target.nm};
    return result;
}

} // namespace hammerline
