// Several estimates of one thing that truly differs from case to case: their mean, how far the cases differ, and what
// the next case is likely to be.
#pragma once

#include <optional>
#include <span>

namespace hammerline {

struct CaseEstimate {
    double value{};
    double sd{}; // of the estimate itself, > 0
};

struct RandomEffects {
    int cases = 0;
    double mean{}, meanSd{};  // of all cases there could be
    double between{};         // standard deviation between cases
    double q{};               // weighted sum of squares about the fixed-effect mean
    double low95{}, high95{}; // where the next case is to be expected
};

/// DerSimonian and Laird (Controlled Clinical Trials 7, 1986, 177-188): with w = 1/sd^2, Q = sum w (y - y_w)^2 and
/// tau^2 = max(0, (Q - (k-1)) / (sum w - sum w^2 / sum w)), then weights 1/(sd^2 + tau^2). The interval of the next
/// case is mean +- t(k-2) sqrt(tau^2 + meanSd^2) (Higgins, Thompson and Spiegelhalter, J. R. Statist. Soc. A 172, 2009,
/// 137-159). None with fewer than three cases, or where a standard deviation is not above zero.
std::optional<RandomEffects> randomEffects(std::span<const CaseEstimate>);

/// What is known of one case once it has an estimate of its own: the two weighed by their variances. Without one
/// (`own` empty) the mean of the others, as uncertain as the next case is.
CaseEstimate weighed(const RandomEffects&, const std::optional<CaseEstimate>& own);

} // namespace hammerline
