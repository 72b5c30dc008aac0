#include "core/history/record.h"

#include <algorithm>
#include <tuple>

namespace hammerline {

bool showTheSame(const Photo& a, const Photo& b) {
    const auto shown = [](const Photo& p) { return std::tie(p.hash, p.caption, p.who, p.on); };
    return shown(a) == shown(b) && a.about == b.about;
}

std::vector<std::size_t> photosOfPlace(const PianoRecord& record, const About& place) {
    const auto shows = [&](const About& about) {
        const bool sameNote = !about.note || !place.note || *about.note == *place.note;
        if (!place.part.empty()) return about.part == place.part && sameNote;
        if (place.note) return about.note == place.note;
        return about.part.empty() && !about.note;
    };
    std::vector<std::size_t> found;
    for (std::size_t i = 0; i < record.photos.size(); ++i)
        if (shows(record.photos[i].about)) found.push_back(i);
    std::ranges::stable_sort(found, {}, [&](std::size_t i) {
        const Photo& photo = record.photos[i];
        return std::tuple(photo.on, photo.about.pass.value_or(0), photo.order);
    });
    return found;
}

} // namespace hammerline
