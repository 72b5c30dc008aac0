// What is said of a step of the order of work.
#pragma once

#include "core/piano/piano.h"

#include <QCoreApplication>
#include <QString>

#include <array>
#include <span>
#include <string_view>

namespace hammerline::words {

struct StepText {
    std::string_view id;
    const char *name, *whatFor, *tools, *how, *way, *goodWhen, *mistake, *takes, *records;
};

/// Null: there is no such step.
const StepText* stepText(std::string_view id);
/// One of its texts, as shown on this piano; empty where the step has none. A line that begins with letters of kinds
/// and a bar ("UDBO|...") is for those kinds alone; {key-dip natural} is the figure of the kind's spec sheet.
QString ofStep(const char* text, const Piano&);
/// Where the work is done: "action in", "drawn out onto a bench".
QString workAccessName(std::string_view access);

// One part of the job each.
std::span<const StepText> beforeSteps();
std::span<const StepText> openingSteps();
std::span<const StepText> keysSteps();
std::span<const StepText> benchSteps();
std::span<const StepText> seatedSteps();
std::span<const StepText> uprightSteps();
std::span<const StepText> grandSteps();
std::span<const StepText> playerSteps();
std::span<const StepText> afterSteps();

} // namespace hammerline::words
