// A file of either form.
#include "core/intake/intake.h"
#include "core/intake/wide_form.h"

namespace hammerline {

Outcome<Intake> readReadings(std::string_view bytes, const Piano& piano, const TableOptions& options) {
    if (bytes.size() > kMostWhole) return refuse(RefusalCode::tooLarge, {}, "8 MB");
    if (isLongForm(bytes)) {
        std::vector<Sound> sound;
        auto intake = readLongForm(
            bytes, piano, [&](Sound&& each) { sound.push_back(std::move(each)); }, options);
        if (intake) intake->sound = std::move(sound);
        return intake;
    }
    const auto table = readTable(bytes, options);
    if (!table) return tl::unexpected{table.error()};
    return readWideForm(*table, piano, options);
}

} // namespace hammerline
