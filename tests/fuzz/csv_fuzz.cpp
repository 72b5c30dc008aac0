// Tables and files of readings: never a crash; sound readings are on the piano; the long form in pieces reads as whole.
#include "core/intake/long_form.h"
#include "tests/fuzz/fuzz.h"

using namespace hammerline;
using fuzz::require;

namespace {

const Piano kPiano = [] {
    Piano piano = *makePiano(ActionKind::upright);
    piano.name = "Hall";
    return piano;
}();

void inPieces(std::string_view bytes, std::size_t size, const Outcome<Intake>& whole) {
    std::size_t sound = 0;
    LongFormReader reader(kPiano, [&](Sound&& each) {
        require(kPiano.contains(each.cell.note), "a note of the piano");
        ++sound;
    });
    for (std::size_t at = 0; at < bytes.size(); at += size)
        if (!reader.add(bytes.substr(at, size))) return;
    const auto intake = reader.finish();
    // the whole looks for the piano's name first; without other pianos both say the same
    if (intake && whole && whole->longForm && whole->refused.empty() && intake->refused.empty())
        require(whole->sound.size() == sound, "pieces read as the whole");
}

} // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* bytes, std::size_t size) {
    if (size < 1) return 0;
    const auto text = fuzz::text(bytes + 1, size - 1);
    if (const auto table = readTable(text)) require(table->rows.size() == table->lines.size(), "a line for each row");
    const auto whole = readReadings(text, kPiano);
    if (whole)
        for (const Sound& each : whole->sound)
            require(kPiano.contains(each.cell.note), "a note of the piano");
    inPieces(text, bytes[0] % 97U + 1U, whole);
    return 0;
}
