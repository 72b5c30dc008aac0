#include "core/history/photo.h"

#include <tuple>

namespace hammerline {

bool showTheSame(const Photo& a, const Photo& b) {
    const auto shown = [](const Photo& p) { return std::tie(p.hash, p.caption, p.who, p.on); };
    return shown(a) == shown(b) && a.about == b.about;
}

} // namespace hammerline
