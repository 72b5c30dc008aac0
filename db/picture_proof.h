// The bytes of a picture are proven by the hash that names them. What stands beside them in its row (kind, size, the
// small JPEG) is proven by a digest that stands behind the small JPEG: whoever reads a JPEG stops before it.
#pragma once

#include "core/history/photo.h"

namespace hammerline {

/// The small JPEG as it is kept: with the proof of the whole row.
std::string thumbToKeep(const Picture&);
/// The small JPEG itself of what is kept.
std::string thumbOfKept(std::string kept);

/// Whether the bytes have the hash they are named by and the rest of the row fits its proof. `kept`: with its thumb as
/// it is kept. A row from before there were proofs has to look like what it says: the kind and size of its bytes, and a
/// small JPEG from its first mark to its last (ITU-T T.81, annex B; PNG, ISO/IEC 15948, 5.2 and 11.2.2).
bool isAsKept(const Picture& kept);

} // namespace hammerline
