#include "ui/widgets/doing/pieces.h"

namespace hammerline::doing {

std::vector<Drawing> grandDrawings() {
    return {};
}

} // namespace hammerline::doing
