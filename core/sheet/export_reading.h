// The JSON export read back: everything of its pianos, checked before anything is stored.
#pragma once

#include "core/history/record.h"
#include "core/intake/intake.h"
#include "core/refusal/go_on.h"

#include <functional>

namespace hammerline {

/// A digest of bytes as text: the caller's, since this floor has none. All exports are made and read with the same one.
using DigestText = std::function<std::string(std::string_view)>;

struct ExportQuestion {
    std::string piano;
    Question question; // `place.field`: the path of the reading, such as /pianos/0/passes/1/readings/17
};

struct ReadExport {
    std::vector<PianoRecord> pianos; // `order` as the file says, else the time
    std::vector<ExportQuestion> questions;
    std::size_t readings = 0;
    std::size_t proven = 0; // of the pianos: they are as they were exported
};

/// Refuses badJson with line and column where it is no JSON, else with the path of the offending value as field and the
/// cause as detail ("missing", "type", "unknown", "range", "no-such-pass", "text-and-value", "twice", "version" ...).
/// A doubtful reading that nobody took on purpose is left out and asked about, or taken with `takeDoubtful`. Refuses
/// cancelled where it is stopped. With `digest` a piano that carries a proof has to fit it: else badJson, "proof", with
/// what first does not fit ("set_up", or the time at which it was written) as the offending text. One without a proof
/// is taken as it stands.
Outcome<ReadExport> readExport(std::string_view bytes, bool takeDoubtful = false, const GoOn& = {},
                               const DigestText& digest = {});
/// The next piece of a text; empty: its end.
using NextPiece = std::function<Outcome<std::string_view>()>;
/// Looks a text over without keeping any of it: what is no JSON, too deep or too wide is refused in the memory of one
/// piece, as readExport would.
Outcome<void> skimExport(const NextPiece&);
/// Whether it begins as an object of JSON.
bool looksLikeJson(std::string_view head);

} // namespace hammerline
