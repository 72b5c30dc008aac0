#include "core/history/season_of.h"

#include "core/spec/season.h"

namespace hammerline {
namespace {

/// Of the room when it was read.
std::optional<double> humidityAt(const PianoRecord& record, int number) {
    const Pass* pass = record.pass(number);
    if (!pass) return std::nullopt;
    return pass->climate ? std::optional(pass->climate->humidity) : pass->humidity;
}

} // namespace

SpecSheet sheetInSeason(SpecSheet sheet, const PianoRecord& record, int pass) {
    return withSeasonsAim(std::move(sheet), yearOfHumidity(record.preferences), humidityAt(record, pass));
}

} // namespace hammerline
