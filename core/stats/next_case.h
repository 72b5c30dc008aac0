// What the next case is likely to be, by cases that truly differ, where they are too few to tell how far.
#pragma once

#include "core/stats/random_effects.h"

namespace hammerline {

/// Mean and standard deviation of the next case: y_i ~ N(theta_i, sd_i^2), theta_i ~ N(mu, tau^2), mu flat, tau
/// half-normal with `scale` (what is believed of the spread beforehand, > 0). With w_i = 1/(sd_i^2 + tau^2) and
/// V = 1/sum w, p(tau | y) ~ p(tau) sqrt(V) prod sqrt(w_i) exp(-w_i (y_i - y_w)^2 / 2), and mu given tau is N(y_w, V)
/// (Gelman et al., Bayesian Data Analysis, 3rd edition, section 5.4); tau is summed over a grid up to three times the
/// scale. An estimate of tau alone is often 0 with few cases, and would promise too much. No case: 0 +- scale.
CaseEstimate nextCase(std::span<const CaseEstimate>, double scale);

} // namespace hammerline
