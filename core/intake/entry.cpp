// A single typed cell, with the pass around it.
#include "core/intake/cell.h"
#include "core/pass/height_datum.h"

#include <algorithm>

namespace hammerline {
namespace {

Unit bareUnit(DimensionId id, const EntryContext& around) {
    if (around.unit) return *around.unit;
    if (const auto chosen = around.units.find(id); chosen != around.units.end()) return chosen->second;
    const bool share = id == dimension::damperStart && around.pass && around.pass->referenceOf(id) == "percent";
    return share ? Unit::percent : row(id).entryUnit;
}

/// What the pass knows of the note, but for the cell that is being typed.
KnownOfNote knownOf(Cell cell, const Pass& pass) {
    KnownOfNote known;
    for (const Dimension& each : dimensions())
        if (each.id != cell.dimension) known[each.id] = pass.value(Cell{cell.note, each.id});
    return known;
}

bool hasOtherHeights(Cell cell, const Pass& pass) {
    return std::any_of(pass.cells.begin(), pass.cells.end(), [&](const auto& each) {
        return each.first.dimension == cell.dimension && each.first != cell && pass.value(each.first);
    });
}

/// A height over one datum among heights over another can only be a mistake: one pass has one datum (computation 15).
/// The first height of a pass may still choose the bed or the line.
bool mixesDatum(const Entry& entry, Cell cell, const Pass& pass) {
    if (cell.dimension != dimension::keyHeight || !entry.sound || entry.sound->word) return false;
    const bool chosen = pass.references.contains(cell.dimension) || hasOtherHeights(cell, pass);
    return chosen && isOverAnotherDatum(cell, *entry.sound, pass.referenceOf(cell.dimension));
}

Question askAboutDatum(Cell cell, const Reading& reading) {
    Question asked;
    asked.cell = cell;
    asked.text = reading.typed;
    asked.doubt = Doubt::outOfRange;
    asked.slip = "mixed-datum";
    asked.mayTake = false;
    return asked;
}

} // namespace

std::optional<Question> askAboutRepeat(Cell cell, const Reading& repeat, const Measured& before, const Piano& piano) {
    constexpr std::int64_t kFarApart = 4; // uncertainties of the gauge; common practice, no source
    const auto plain = [](const Reading& reading) { return !reading.word && reading.relation == Relation::equal; };
    const auto value = before.value();
    if (!plain(repeat) || !value) return std::nullopt;
    const bool otherUnit = std::ranges::any_of(before.trials, [&](const Reading& trial) {
        const bool both = !trial.typedUnit.empty() && !repeat.typedUnit.empty();
        return plain(trial) && both && trial.typedUnit != repeat.typedUnit;
    });
    const bool far = std::abs(repeat.count - *value) > kFarApart * uncertaintyOf(cell.dimension, piano);
    if (!otherUnit && !far) return std::nullopt;
    Question asked;
    asked.cell = cell;
    asked.text = repeat.typed;
    asked.doubt = Doubt::likelySlip;
    asked.slip = far ? "repeat-far" : "repeat-unit";
    asked.asTyped = repeat;
    return asked;
}

Outcome<Entry> readEntry(std::string_view typed, Cell cell, const EntryContext& around) {
    CellContext context;
    context.piano = around.piano;
    context.bare = bareUnit(cell.dimension, around);
    if (around.pass) {
        context.known = knownOf(cell, *around.pass);
        context.dropFromString = around.pass->referenceOf(dimension::drop) == "string";
        context.heightsFromSlip = around.pass->referenceOf(dimension::keyHeight) == "slip";
    }
    auto entry = readCell(typed, cell, context);
    if (entry && around.pass && mixesDatum(*entry, cell, *around.pass)) {
        entry->question = askAboutDatum(cell, *entry->sound);
        entry->sound.reset();
    }
    return entry;
}

} // namespace hammerline
