// The letters by which a fault is named at the keyboard: of each part's own, an initial where it is free.
#pragma once

#include "core/survey/survey.h"

#include <QChar>

#include <utility>
#include <vector>

namespace hammerline {

/// Y, M and W are kept for sound, mended and watch.
std::vector<std::pair<QChar, const Fault*>> faultLetters(const Part&);
/// Null: no fault has this letter.
const Fault* faultOf(const Part&, QChar letter);

} // namespace hammerline
