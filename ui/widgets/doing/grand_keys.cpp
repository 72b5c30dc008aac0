#include "ui/widgets/doing/pieces.h"

namespace hammerline::doing {

std::vector<Drawing> grandKeyDrawings() {
    return {};
}

} // namespace hammerline::doing
