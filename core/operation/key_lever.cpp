// The key as a lever about its balance pin, and about its punchings (computation 5).
#include "core/operation/operation.h"

namespace hammerline {

/// Small angles, all arms from the balance pin: F front edge, P front pin, T back-rail contact, C capstan.
///
/// At rest the key lies on the back rail (at -T) and on the balance punching (at 0). A punching of thickness s lifts
/// the pin's place by s while the back stays: a point at x rises by s (T + x)/T. So the front edge (x = F) rises s
/// (F+T)/T and the capstan (x = -C) rises s (T-C)/T. Pressed, it lies on the front punching (at P) and on the balance
/// punching: x rises by s (P - x)/P. The front edge *falls* by s (F-P)/P and the capstan rises by s (P+C)/P. Dip is
/// rest less pressed at the front edge: s [(F+T)/T + (F-P)/P] = s F (1/T + 1/P). Lost motion: the capstan's rise at
/// rest seen at the front (times F/C) takes up s F (T-C)/(T C) = s F (1/C - 1/T). Aftertouch, from D = M + (B-O)/R + A
/// with B and O unchanged: dA = dD - dM = s F (1/P + 1/C). The same from the pressed capstan: it ends s (P+C)/P higher,
/// times F/C = s F (P+C)/(P C). Both agree. Front punching f: the pressed key turns about the balance pin, front edge
/// up f F/P. Back rail b with the balance fixed: the key turns about the balance pin: front down b F/T, capstan up b
/// C/T, which at the front is b F/T of lost motion. A pressed key does not touch the back rail, so A stays. Source:
/// lever geometry; the customary 2.65 and 2.1 of bench-practice 2.6 follow from its arms.
KeyLever keyLever(const KeyArms& arms) {
    const double F = arms.F(), P = arms.P(), T = arms.T(), C = arms.C();
    KeyLever lever{};
    lever.heightPerBalance = (F + T) / T;
    lever.dipPerBalance = F * (1 / T + 1 / P);
    lever.capstanPerBalance = (T - C) / T;
    lever.lostPerBalance = F * (1 / C - 1 / T);
    lever.afterPerBalance = F * (1 / P + 1 / C);
    lever.dipPerFront = F / P;
    lever.heightPerBack = F / T;
    lever.capstanPerBack = C / T;
    lever.lostPerCapstan = F / C;
    return lever;
}

/// Front height kept means s (F+T)/T = b F/T, so s = b F/(F+T). The capstan then rises by
/// c = b C/T + s (T-C)/T, and c is to be lostMotion C/F; hence b = c / (C/T + (F/(F+T)) (T-C)/T).
/// Check: F 235, T 142, C 127, lost motion 3.2 give 1.80 at the back rail and 1.12 at the balance rail.
std::pair<double, double> frameShims(const KeyArms& arms, double lostMotion) {
    const double F = arms.F(), T = arms.T(), C = arms.C();
    const double share = F / (F + T);
    const double back = lostMotion * C / F / (C / T + share * (T - C) / T);
    return {back, back * share};
}

} // namespace hammerline
