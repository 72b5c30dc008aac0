// What a typed text means in a cell, in words for the plate beside the field: shared by the grid and the bench entry.
#pragma once

#include "ui/workbench.h"

#include <QString>

namespace hammerline {

struct Understanding {
    enum class Kind { empty, sound, question, refused };
    Kind kind = Kind::empty;
    /// sound: what it will be stored as. question: as typed, where that may be taken.
    std::optional<Reading> reading;
    /// As one would type the likely meaning; empty: none.
    QString suggestion;
    /// The value as understood in both units, or the bold sentence of a question or refusal.
    QString headline;
    /// What to do: verdict and expected value, or what to type.
    QString more;
    /// How the value would be judged; only of sound ones.
    std::optional<Judged> judged;
};

/// `repeat`: a further trial of the cell; in another unit, or far from those before it, it is asked about.
Understanding understand(const Workbench&, const QString& typed, Cell, bool repeat = false);

/// "46.04 mm = 1.813 in"; the other unit first where that was typed.
QString inBothUnits(const TypedQuantity&, DimensionId);
QString inBothUnits(const Reading&, DimensionId);
/// The verdict in the trade's words: "within", "too far", "blocks".
QString verdictWords(const Judged&);
/// By how much a value lies outside its zone, in its own unit: "1.4 mm outside". Empty where it lies inside or is a
/// word. Never the share of the zone, which reads like millimetres.
QString excessText(const Judged&, const std::optional<Zone>&);
/// What the plan leads one to expect at this cell in the pass after it.
std::optional<Expected> expectedAfterPlan(const Workbench&, Cell);

} // namespace hammerline
