// Schema steps: numbered, each in one transaction with its version; a step that fails leaves the file as it was.
#pragma once

#include "db/headway.h"
#include "db/schema_steps.h"

#include <SQLiteCpp/Database.h>

#include <span>

namespace hammerline {

/// Runs every step above `from` in order. Throws on the first that fails or is stopped, with that step rolled back.
void runSteps(SQLite::Database&, int from, std::span<const SchemaStep>, const Headway& = {});

} // namespace hammerline
