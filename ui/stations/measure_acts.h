// What a person does to readings besides typing a number, the same in the grid and in the entry at the bench: words by
// one key, "this note is right", the same as at the note before.
#pragma once

#include "ui/workbench.h"

#include <QString>

namespace hammerline {

/// Keys that enter a word at once, in the grid and in the empty field of the bench entry.
struct WordKey {
    Qt::Key key;
    WordId word;
};
std::span<const WordKey> wordKeys();
/// The word that a key enters in this dimension; a letter never enters anything in another one.
std::optional<WordId> wordFor(Qt::Key, Cell current);
/// What is said of a letter that is a word elsewhere: "B belongs to let-off (blocks): nothing was entered."
QString wordElsewhere(const Workbench&, Qt::Key, Cell current);
/// The cell of the same note that takes what is typed: key height for a natural, sharp height for a sharp. The cell
/// itself where it takes readings or nothing else would.
Cell cellToType(const Workbench&, Cell);
/// Whether the key is a word of this dimension, which is said by words alone: its letters come before those of the
/// grid.
bool namesWordHere(Qt::Key, Cell current);
/// "right" for every empty cell of the dimension: what was looked over with a fingertip, the odd ones said already.
std::vector<NewReading> restOfColumnRight(const Workbench&, Cell from);
Reading wordReading(WordId);

/// A note that blocks or never lets off has no aftertouch and no checking to measure.
bool isUnmeasurable(const Workbench&, Cell);
/// A cell that can take a reading: fitted, and not said to be missing in this pass.
bool canTake(const Workbench&, Cell);
/// "This note is right": ok (or right) in every one of these dimensions that can take a reading and has none.
std::vector<NewReading> rightNote(const Workbench&, NoteNumber, std::span<const DimensionId>);
/// The reading of the nearest lower note that has one, as a first trial; none where there is no such note.
std::optional<Reading> sameAsBefore(const Workbench&, Cell);

} // namespace hammerline
