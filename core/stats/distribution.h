// Normal, Student's t and F, with full relative accuracy in the tails.
#pragma once

namespace hammerline {

/// Phi(z) of the standard normal, by erfc: small tails keep their digits.
double normalCdf(double z);
/// z with Phi(z) = p; -+infinity at 0 and 1.
double normalQuantile(double p);

/// t with P(T <= t) = p for `degrees` >= 1 degrees of freedom; -+infinity at p 0 and 1.
double studentQuantile(double p, double degrees);
/// P(|T| >= |t|), two-sided.
double studentTwoSided(double t, double degrees);

/// P(F >= f) for `above`, `below` >= 1 degrees of freedom.
double fisherUpper(double f, double above, double below);

} // namespace hammerline
