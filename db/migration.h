// Schema steps: numbered, all in one transaction with their version; a step that fails leaves the file as it was.
#pragma once

#include "db/headway.h"
#include "db/schema_steps.h"

#include <SQLiteCpp/Database.h>

#include <span>

namespace hammerline {

/// Runs in order every step above the version that the book has once it is locked. Throws on the first that fails or is
/// stopped, with all of them rolled back. False: there was none to run.
bool runSteps(SQLite::Database&, std::span<const SchemaStep>, const Headway& = {});

} // namespace hammerline
