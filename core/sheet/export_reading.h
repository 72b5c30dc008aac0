// The JSON export read back: everything of its pianos, checked before anything is stored.
#pragma once

#include "core/history/record.h"
#include "core/intake/intake.h"
#include "core/refusal/go_on.h"

namespace hammerline {

struct ExportQuestion {
    std::string piano;
    Question question; // `place.field`: the path of the reading, such as /pianos/0/passes/1/readings/17
};

struct ReadExport {
    std::vector<PianoRecord> pianos; // `order` as the file says, else the time
    std::vector<ExportQuestion> questions;
    std::size_t readings = 0;
};

/// Refuses badJson with line and column where it is no JSON, else with the path of the offending value as field and the
/// cause as detail ("missing", "type", "unknown", "range", "no-such-pass", "text-and-value", "twice", "version" ...).
/// A doubtful reading that nobody took on purpose is left out and asked about, or taken with `takeDoubtful`. Refuses
/// cancelled where it is stopped.
Outcome<ReadExport> readExport(std::string_view bytes, bool takeDoubtful = false, const GoOn& = {});
/// Whether it begins as an object of JSON.
bool looksLikeJson(std::string_view head);

} // namespace hammerline
