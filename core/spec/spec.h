// Tolerance zones: by dimension, section and key colour, tapering where asked (computation 3, bench-practice 2.1, 2.2).
#pragma once

#include "core/piano/dimension.h"

namespace hammerline {

/// Limits in the dimension's smallest unit. An absent side is open: no deviation there, nothing is out on it.
struct Zone {
    std::optional<std::int64_t> low;
    std::int64_t nominal{};
    std::optional<std::int64_t> high;
    friend bool operator==(const Zone&, const Zone&) = default;
};

/// One row of a sheet. `place` says for which notes: "" = all, one or more of the letters b, t, m, h, x ("tmh"; see
/// placeOf, x is the part of h from F7 up), or "27-52". The zone tapers linearly from `first` (at the first note of the
/// place) to `last`. Where two rows speak of a note, the later one holds.
struct ZoneRow {
    DimensionId dimension;
    std::optional<KeyColour> colour;
    std::string place;
    Zone first, last;
    std::string source = {}; // of this row; empty: the sheet's
    friend bool operator==(const ZoneRow&, const ZoneRow&) = default;
};

struct SpecSheet {
    std::string name;   // "old-upright"
    std::string source; // never empty: a published source, or "common practice, no source"
    std::vector<ZoneRow> zones;
    std::map<DimensionId, std::int64_t> step; // greatest step to a neighbour that still counts as even
    friend bool operator==(const SpecSheet&, const SpecSheet&) = default;
};

/// A note's target set by a person, with its reason (computation 15): printed, not counted as a fault.
struct Override {
    Cell cell;
    Zone zone;
    std::string reason;
    std::string reviewOn; // ISO date or empty
    friend bool operator==(const Override&, const Override&) = default;
};

/// Which of b, t, m, h the note belongs to: b the first section, t the second, m from there on, h from G6 up, whatever
/// section reaches into it and however many keys the piano has.
char placeOf(NoteNumber, const Piano&);
/// Whether a row's place names the note.
bool placeNames(std::string_view place, NoteNumber, const Piano&);
/// Whether low <= nominal <= high holds where the sides exist.
bool ordered(const Zone&);

/// The sheet resolved for one piano: the zone of a cell, override first. None where the sheet says nothing.
class Zones {
public:
    Zones(const SpecSheet&, const Piano&, std::span<const Override> = {});
    const std::optional<Zone>& at(Cell) const;
    bool overridden(Cell) const;
    const Override* overrideAt(Cell) const;
    /// Step limit of a dimension, none where the sheet has none.
    std::optional<std::int64_t> step(DimensionId) const;
    const std::string& sheet() const { return m_sheet; }
    const std::string& source() const { return m_source; }

private:
    void lay(const ZoneRow&, const Piano&, std::string_view letters);
    std::optional<Zone>* slot(Cell);

    int m_notes;
    std::vector<std::optional<Zone>> m_zones; // [dimension * notes + note - 1]
    std::map<Cell, Override> m_overrides;
    std::map<DimensionId, std::int64_t> m_step;
    std::string m_sheet, m_source;
};

/// Reads a sheet from its JSON (resources/spec/*.json document the form; lengths in mm, masses in g, shares in %; an
/// optional "to" beside low, nominal, high is the zone at the last note of the place). Refuses badJson, badSpecSheet,
/// badZone with the place inside the document in Place::field; an unknown key is refused, not passed over.
Outcome<SpecSheet> readSpecSheet(std::string_view json);
std::string writeSpecSheet(const SpecSheet&);

/// The sheets of resources/spec, compiled in. Refuses badSpecSheet for an unknown name (offending).
Outcome<SpecSheet> builtInSheet(std::string_view name);
std::vector<std::string> builtInSheets();

/// The name of the built-in sheet that fits the action: upright, drop, grand (old-upright by choice).
std::string_view defaultSheet(ActionKind);

/// The built-in sheets that speak of this kind of action, the usual one first.
std::vector<std::string> sheetsFor(ActionKind);

} // namespace hammerline
