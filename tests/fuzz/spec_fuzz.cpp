// Spec sheets in JSON: never a crash; a sheet that was read is written and read back the same.
#include "core/spec/spec.h"
#include "tests/fuzz/fuzz.h"

using namespace hammerline;
using fuzz::require;

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* bytes, std::size_t size) {
    const auto sheet = readSpecSheet(fuzz::text(bytes, size));
    if (!sheet) return 0;
    const auto again = readSpecSheet(writeSpecSheet(*sheet));
    require(again.has_value(), "a written sheet is read back");
    require(*again == *sheet, "unchanged");
    static const Piano piano = *makePiano(ActionKind::grand);
    const Zones zones(*sheet, piano);
    for (const Dimension& each : dimensions())
        for (const int note : {1, 44, 88})
            (void)zones.at(Cell{{note}, each.id});
    return 0;
}
