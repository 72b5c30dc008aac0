// The symptom table of bench-practice 5 as rows.
#pragma once

#include "core/piano/dimension.h"

#include <optional>
#include <span>

namespace hammerline {

enum class AftertouchGain : std::uint8_t { none, atKey, atHammer };

/// One check: a reading that decides (dimension and side, a limit in trade units where the row names one), or a part
/// of the survey that decides, or neither: then it is only looked at.
struct SymptomCheck {
    std::string_view id;
    std::optional<DimensionId> dimension = {};
    bool above = true; // what shows the fault: high, or low
    std::optional<double> limit = {};
    std::optional<WordId> word = {};
    AftertouchGain gain = AftertouchGain::none;
    double step = 0; // mm of the customary remedy
    std::span<const std::string_view> sideEffects = {};
    bool grandOnly = false;
    std::string_view part = {};  // of the survey, several by |: a fault there answers the check
    std::string_view fault = {}; // the one that does; empty: any
    bool verticalOnly = false;
};

struct SymptomRow {
    std::string_view key;
    std::span<const SymptomCheck> checks;
};

std::span<const SymptomRow> symptomRows();

} // namespace hammerline
