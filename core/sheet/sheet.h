// Documents as codes and numbers: what a printed sheet says, before any words. Also the JSON and CSV of commands.md.
#pragma once

#include "core/comparison/comparison.h"
#include "core/intake/intake.h"
#include "core/plan/plan.h"
#include "core/sheet/export_reading.h"
#include "core/sheet/pass_view.h"

namespace hammerline {

/// Lines of one operation under one access heading, in order along the keyboard from the bass end.
struct OperationGroup {
    OperationId operation{};
    std::vector<const Step*> steps;
    double minutes = 0;
    bool learned = false;
};
struct AccessGroup {
    Access access{};
    double minutesToGetThere = 0;
    std::vector<OperationGroup> operations;
};
/// The steps of a plan grouped by access and operation, keeping the order of work.
std::vector<AccessGroup> groupSteps(const Plan&, const Piano&);

// JSON of commands.md, as text. `pretty` indents by two.
std::string checkJson(const PianoRecord&, const PassView&, const FinishLine&);
std::string planJson(const Plan&, const PianoRecord&);
std::string comparisonJson(const Comparison&, const FinishLine&);
std::string importJson(const Intake&, int pass, std::size_t taken);
std::string surveyJson(const PianoRecord&);
std::string idsJson();
std::string refusalJson(const Refusal&, std::string_view sentence);

/// The readings. Long form: piano;pass;note;dimension;trial;text;unit;state;at (UTF-8 with BOM, CRLF, formula text
/// neutralised). A pass without readings is a row of its own, state "pass", its label as text: so the passes keep their
/// numbers. What else belongs to a pass, and all that belongs to the piano, is in the JSON alone.
std::string exportCsv(const std::vector<PianoRecord>&);
/// With `digest` each piano carries what proves it (see readExport): only for a book whose own digests fit.
std::string exportJson(const std::vector<PianoRecord>&, const DigestText& digest = {});

} // namespace hammerline
