// The passes of an export and their readings, read back.
#pragma once

#include "core/sheet/export_reading.h"
#include "core/sheet/export_walk.hpp"

namespace hammerline::sheet {

/// Into the record, whose set-up is known. Doubtful readings are asked about in `out`, or taken on purpose.
void readPasses(ExportWalk&, const ExportWalk::At& piano, PianoRecord&, bool takeDoubtful, ReadExport& out);

} // namespace hammerline::sheet
