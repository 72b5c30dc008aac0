// Readings of one note that cannot all be true (computation 6).
#pragma once

#include "core/judge/escapement.h"
#include "core/judge/evenness.h"
#include "core/judge/judge.h"

namespace hammerline {

/// The residual r = D - M - (B - O)/R - A of every note with all five readings, against
///   u_r^2 = u_D^2 + u_M^2 + u_A^2 + (u_B^2 + u_O^2)/R^2 + ((B - O) s_R/R^2)^2,
/// s_R the spread of R between notes; the mean of n trials has u/sqrt(n). Doubtful: |r| beyond max(3 u_r, 1.0 mm), 0.6
/// mm where all five were read twice, or modified z of r over the colour beyond 3.5 and |r| beyond max(0.6, 2 u_r).
/// Suspect: the q with the least |e_q - r/c_q| / max(u_q, 0.1 |r/c_q|), e_q its unevenness, c_q the weight of q in r: a
/// slip of delta in q leaves e_q = delta and r = c_q delta. A word is a bound: `blocks` alarms only below zero, `no
/// let-off` only above.
/// Then what the geometry of one note forbids: let-off, checking and damper start beyond the blow, checking or drop
/// inside the let-off, an up weight not below the down weight.
std::vector<DoubtfulNote> doubtfulNotes(const Piano&, const PassTable&, const Evenness&,
                                        const std::array<Ratio, 2>& ratio);

} // namespace hammerline
