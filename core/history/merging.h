// What a merge and a rescue of bench books have to tell.
#pragma once

#include "core/piano/dimension.h"

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

namespace hammerline {

/// What is said twice of one thing and not alike, as books that grew apart leave it after a merge. Nothing is dropped:
/// the last of `said` holds until a person says it anew.
struct Dispute {
    std::string what;  // reading, setup, pass, override, finding, preference; same-name; brought-back
    std::string piano; // its name
    int pass = 0;      // 0: of the piano as a whole
    int note = 0;      // likewise
    std::optional<DimensionId> dimension;
    std::string name; // part and fault, key of a preference, label of a pass
    std::vector<std::string> said;
    friend bool operator==(const Dispute&, const Dispute&) = default;
};
struct Merged {
    std::int64_t act = 0; // that brought back what others had gone on from; 0: nothing of the kind
    std::size_t acts = 0, pianos = 0, passes = 0, readings = 0; // that came
    std::string kept;                                           // the book as it was before; empty: nothing came
    std::vector<Dispute> disputes;                              // of the whole book
};
struct UnprovenReading {
    std::string piano{}; // its name; empty: of a piano or pass that was taken back
    int pass = 0;
    Cell cell;
    int trial = 1;
    std::string typed;
    friend bool operator==(const UnprovenReading&, const UnprovenReading&) = default;
};
struct Rescued {
    static constexpr std::size_t kMostNamed = 10'000;

    std::size_t rows = 0;                  // that could be read and make sense
    std::size_t lost = 0;                  // at least so many could not
    std::size_t proven = 0, unproven = 0;  // readings that fit the digest of their act; those of which nobody can say
    std::vector<UnprovenReading> doubtful; // which these are, by piano, pass and note: at most kMostNamed
};

} // namespace hammerline
