#include "ui/stations/measure_acts.h"

#include <algorithm>

namespace hammerline {

std::span<const WordKey> wordKeys() {
    static constexpr std::array kKeys{
        WordKey{Qt::Key_B, word::blocks},  WordKey{Qt::Key_L, word::noLetOff}, WordKey{Qt::Key_C, word::doesNotCheck},
        WordKey{Qt::Key_O, word::offRail}, WordKey{Qt::Key_K, word::ok},       WordKey{Qt::Key_T, word::tight},
        WordKey{Qt::Key_S, word::slack},   WordKey{Qt::Key_X, word::torn},     WordKey{Qt::Key_E, word::early},
        WordKey{Qt::Key_K, word::right},   WordKey{Qt::Key_L, word::late},
    };
    return kKeys;
}

namespace {

bool hasWord(DimensionId dimension, WordId id) {
    const auto allowed = row(dimension).words;
    return std::find(allowed.begin(), allowed.end(), id) != allowed.end();
}

/// Words that say the note does not work at all belong to one dimension and may be entered from any cell of the note.
bool entersFromAnywhere(WordId id) {
    return id == word::blocks || id == word::noLetOff || id == word::doesNotCheck || id == word::offRail;
}

} // namespace

std::optional<std::pair<Cell, WordId>> wordFor(Qt::Key key, Cell current, const Piano& piano) {
    // the particular word before the general ok: K at the damper is "right"
    for (const bool general : {false, true})
        for (const WordKey& row : wordKeys())
            if (row.key == key && (row.word == word::ok) == general && hasWord(current.dimension, row.word))
                return std::pair{current, row.word};
    for (const WordKey& row : wordKeys()) {
        if (row.key != key || !entersFromAnywhere(row.word)) continue;
        for (const Dimension& dimension : dimensions())
            if (hasWord(dimension.id, row.word) && fitted(dimension.id, current.note, piano))
                return std::pair{Cell{current.note, dimension.id}, row.word};
    }
    return {};
}

Reading wordReading(WordId id) {
    Reading reading;
    reading.word = id;
    reading.typed = std::string(row(id).key);
    return reading;
}

bool isUnmeasurable(const Workbench& bench, Cell cell) {
    if (cell.dimension != dimension::aftertouch && cell.dimension != dimension::checking) return false;
    const Measured* letOff = bench.pass() ? bench.pass()->at({cell.note, dimension::letOff}) : nullptr;
    const auto said = letOff ? letOff->word() : std::nullopt;
    return said && row(*said).stopsNote;
}

bool canTake(const Workbench& bench, Cell cell) {
    if (!bench.piano() || !bench.piano()->contains(cell.note) || !fitted(cell.dimension, cell.note, *bench.piano()))
        return false;
    const Measured* measured = bench.pass() ? bench.pass()->at(cell) : nullptr;
    return !measured || !measured->notFitted;
}

std::vector<NewReading> rightNote(const Workbench& bench, NoteNumber note, std::span<const DimensionId> columns) {
    std::vector<NewReading> found;
    for (const DimensionId id : columns) {
        const Cell cell{note, id};
        const Measured* measured = bench.pass() ? bench.pass()->at(cell) : nullptr;
        if (!canTake(bench, cell) || (measured && !measured->missing()) || isUnmeasurable(bench, cell)) continue;
        if (hasWord(id, word::ok))
            found.push_back({cell, wordReading(word::ok)});
        else if (hasWord(id, word::right))
            found.push_back({cell, wordReading(word::right)});
    }
    return found;
}

std::optional<Reading> sameAsBefore(const Workbench& bench, Cell cell) {
    const Pass* pass = bench.pass();
    if (!pass || !canTake(bench, cell)) return {};
    for (int n = cell.note.value - 1; n >= 1; --n) {
        const Measured* before = pass->at({{n}, cell.dimension});
        if (!before || before->missing()) continue;
        Reading same = before->trials.back();
        same.trial = 1;
        return same;
    }
    return {};
}

} // namespace hammerline
