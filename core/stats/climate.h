// How much water wood holds in a room's air.
#pragma once

#include <optional>

namespace hammerline {

/// Equilibrium moisture content of wood, per cent of dry weight, at `celsius` and relative `humidity` in per cent:
///   1800/W [K h/(1 - K h) + (K1 K h + 2 K1 K2 (K h)^2)/(1 + K1 K h + K1 K2 (K h)^2)],  h = humidity/100,
///   W = 349 + 1.29 T + 0.0135 T^2, K = 0.805 + 0.000736 T - 0.00000273 T^2,
///   K1 = 6.27 - 0.00938 T - 0.000303 T^2, K2 = 1.91 + 0.0407 T - 0.000293 T^2
/// (Simpson 1998, FPL-RN-0268, two-hydrate form of Hailwood and Horrobin). None outside 0..100 % or -30..100 degrees.
std::optional<double> equilibriumMoisture(double celsius, double humidity);

} // namespace hammerline
