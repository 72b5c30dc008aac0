// The JSON export: never a crash; what was read is written and read back the same.
#include "core/sheet/export_reading.h"
#include "core/sheet/sheet.h"
#include "tests/fuzz/fuzz.h"

using namespace hammerline;
using fuzz::require;

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* bytes, std::size_t size) {
    const auto text = fuzz::text(bytes, size);
    const auto read = readExport(text, (size & 1U) != 0);
    if (!read) return 0;
    const std::string written = exportJson(read->pianos);
    const auto again = readExport(written);
    require(again.has_value(), "a written export is read back");
    require(exportJson(again->pianos) == written, "unchanged");
    return 0;
}
