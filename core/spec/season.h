// The aim of lost motion by the season: what stands tight in a dry month hangs off its rail in a damp one.
#pragma once

#include "core/piano/year_of_humidity.h"
#include "core/spec/spec.h"

namespace hammerline {

/// The sheet with the aim of lost motion moved by (0.5 - p) s, where p is the place of `now` in the year (0 driest, 1
/// dampest) and s 0.1 mm for a swing under 20 points, 0.2 to 40, 0.3 above: in the damp season as tight as the jack
/// returns, "a little, not much, even" in the driest months (list post 2000-Dec/077271; the amounts: common practice,
/// no source). Never under 0.05 mm (0.1 where the sheet has its low limit above nothing), never nearer than 0.1 to the
/// high limit. Limits stay, and so does the sheet where the year or the day is not known.
SpecSheet withSeasonsAim(SpecSheet, std::optional<YearOfHumidity>, std::optional<double> now);

} // namespace hammerline
