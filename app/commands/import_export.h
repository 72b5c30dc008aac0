// import of the program's own JSON: whole pianos.
#pragma once

#include "app/arguments.h"
#include "app/commands/file_pieces.h"

namespace hammerline::app {

int importExport(const ImportRequest&, FilePieces&, bool json);

/// The refusal of a file's content, with the file named.
Refusal ofFile(Refusal, const std::string& path);

} // namespace hammerline::app
