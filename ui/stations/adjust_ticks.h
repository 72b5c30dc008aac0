// What a person does at a line of the adjustment list: ticks it off as set to the aim or with what was really done, or
// says that the screw does not turn.
#pragma once

#include "ui/workbench.h"

class QWidget;

namespace hammerline {

/// Ticks a step of the bench's plan; without an amount it was set to the aim. The first tick freezes the plan in the
/// same act. Refuses what the book refuses.
Outcome<void> tickOff(Workbench&, const Step&, std::optional<double> amount);

struct ReallyDone {
    std::optional<double> amount; // signed in the sense of the operation's row; none: nothing was typed
    QString refused;              // a sentence about what was typed
};
/// Asks for what was really done, in turns or mm, in the direction of the line; `first` is the key that began it.
ReallyDone askReallyDone(QWidget* parent, const Step&, const Piano&, const QString& first);

/// A screw that does not turn is a finding: to be mended before the note is regulated. Steps without a screw are left.
Outcome<void> noteSeized(Workbench&, const Step&);

} // namespace hammerline
