// Whether the bench holds the key frame as the piano did: reference notes, one a section, read in both (computation 15,
// situation 20).
#pragma once

#include "core/history/record.h"

namespace hammerline {

/// Key height or dip of a section in the piano and on the bench, mm: the means over the notes read in both.
struct ReferenceReading {
    std::size_t section{};
    std::vector<NoteNumber> notes;
    DimensionId dimension;
    double inPiano{}, onBench{};
    double limit{}; // what they may differ by
    bool agrees() const;
};

struct BenchSetUp {
    enum class State : std::uint8_t {
        inPiano,     // the pass was read in the piano: nothing is asked
        reproduced,  // every section agrees
        differs,     // some section does not: the plan waits
        notRead,     // references of the piano were not read on the bench: the plan waits
        neverInPiano // no key height and dip were read in the piano: nothing to compare with
    };
    State state = State::inPiano;
    int pianoPass = 0;                      // the last pass in the piano that gave a reference
    std::vector<ReferenceReading> compared; // by section and dimension
    std::vector<Cell> toRead;               // reference notes to read, or to read again
    bool waits() const { return state == State::differs || state == State::notRead; }
};
std::string_view key(BenchSetUp::State);

/// The set-up of the bench that a pass was read on. References are the key heights (of naturals) and dips that a pass
/// in the piano before it has, those that later work or a remedy disturbed left out; they are held against the newest
/// readings of the passes on the bench up to this one, with nothing done in between. A section with several such notes
/// is told by their mean. Limit: 0.1 mm (situation 20) or U of the difference of two readings, 2 sqrt(2) u of the
/// gauge, whichever is larger: with 2u alone most sound benches would be held up by one of their eight comparisons.
/// Repeats make the readings surer, not the limit narrower. Heights count only where both passes count them from the
/// same datum.
BenchSetUp benchSetUp(const PianoRecord&, int pass);

} // namespace hammerline
