// Note names and sets of notes: never a crash, never a note outside the piano, sets come back from their writing.
#include "core/piano/piano.h"
#include "tests/fuzz/fuzz.h"

using namespace hammerline;
using fuzz::require;

namespace {

const Piano kPianos[] = {*makePiano(ActionKind::upright), *makePiano(ActionKind::upright, 85),
                         *makePiano(ActionKind::grand, 73, 28)};

} // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* bytes, std::size_t size) {
    if (size < 1) return 0;
    const Piano& piano = kPianos[bytes[0] % 3];
    const auto text = fuzz::text(bytes + 1, size - 1);
    if (const auto note = parseNote(text, piano)) {
        require(piano.contains(*note), "a note of the piano");
        require(parseNote(pitchName(*note, piano), piano) == *note, "its name is read back");
    }
    if (const auto notes = parseNotes(text, piano); notes && !notes->empty())
        require(parseNotes(writeNotes(*notes), piano) == *notes, "a set is read back");
    if (const auto lowest = parseLowest(text)) require(*lowest >= 0 && *lowest < 128, "a MIDI number");
    return 0;
}
