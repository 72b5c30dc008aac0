// A single typed cell, with the pass around it.
#include "core/intake/cell.h"

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

} // namespace

Outcome<Entry> readEntry(std::string_view typed, Cell cell, const EntryContext& around) {
    CellContext context;
    context.piano = around.piano;
    context.bare = bareUnit(cell.dimension, around);
    if (around.pass) {
        context.known = knownOf(cell, *around.pass);
        context.dropFromString = around.pass->referenceOf(dimension::drop) == "string";
    }
    return readCell(typed, cell, context);
}

} // namespace hammerline
