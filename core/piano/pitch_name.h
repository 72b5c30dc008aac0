// Note names as technicians write them: scientific, Helmholtz, and letter with key number (situation 68).
#pragma once

#include <optional>
#include <string_view>

namespace hammerline {

/// A name read as far as it can be without a piano.
struct PitchName {
    int pitchClass{};          // 0 = C, may lie outside 0..11: Cb is -1, B# is 12
    std::optional<int> octave; // the octave of the letter, middle C's octave is 4
    std::optional<int> number; // plain digits behind the letter: an octave, or the key number (C40)
    int midi() const { return 12 * (octave.value_or(0) + 1) + pitchClass; }
};

/// C4, C#4, Db4, C♯4, H3, cis', c', A,,, A₂, a¹, A-0. None where the text is no such name.
std::optional<PitchName> readPitchName(std::u32string_view text);

} // namespace hammerline
