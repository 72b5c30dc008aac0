#include "ui/stations/measure_acts.h"

#include "ui/words/words.h"

#include <QCoreApplication>

#include <algorithm>

namespace hammerline {

std::span<const WordKey> wordKeys() {
    static constexpr std::array kKeys{
        WordKey{Qt::Key_B, word::blocks},
        WordKey{Qt::Key_L, word::noLetOff},
        WordKey{Qt::Key_C, word::doesNotCheck},
        WordKey{Qt::Key_O, word::offRail},
        WordKey{Qt::Key_K, word::ok},
        WordKey{Qt::Key_T, word::tight},
        WordKey{Qt::Key_S, word::slack},
        WordKey{Qt::Key_X, word::torn},
        WordKey{Qt::Key_E, word::early},
        WordKey{Qt::Key_K, word::right},
        WordKey{Qt::Key_L, word::late},
        WordKey{Qt::Key_S, word::slow},
        WordKey{Qt::Key_X, word::staysOut},
        WordKey{Qt::Key_X, word::stays},
        WordKey{Qt::Key_B, word::driftsToBass},
        WordKey{Qt::Key_T, word::driftsToTreble},
        WordKey{Qt::Key_R, word::rubsNeighbour},
        WordKey{Qt::Key_B, word::towardBass},
        WordKey{Qt::Key_T, word::towardTreble},
        WordKey{Qt::Key_B, word::topLeansToBass},
        WordKey{Qt::Key_T, word::topLeansToTreble},
        WordKey{Qt::Key_B, word::bassStringOpen},
        WordKey{Qt::Key_M, word::middleOpen},
        WordKey{Qt::Key_T, word::trebleOpen},
        WordKey{Qt::Key_N, word::twoOpen},
        WordKey{Qt::Key_D, word::tooDeep},
        WordKey{Qt::Key_S, word::tooShallow},
        WordKey{Qt::Key_H, word::leverHigh},
        WordKey{Qt::Key_L, word::leverLow},
        WordKey{Qt::Key_W, word::weak},
        WordKey{Qt::Key_S, word::kicks},
        WordKey{Qt::Key_X, word::noSpring},
        WordKey{Qt::Key_S, word::sticks},
        WordKey{Qt::Key_L, word::loose},
        WordKey{Qt::Key_B, word::leansToBass},
        WordKey{Qt::Key_T, word::leansToTreble},
        WordKey{Qt::Key_R, word::rubs},
        WordKey{Qt::Key_E, word::earlyByPedal},
        WordKey{Qt::Key_L, word::lateByPedal},
        WordKey{Qt::Key_R, word::oneStringRings},
        WordKey{Qt::Key_X, word::leaks},
        WordKey{Qt::Key_N, word::touchesNeighbour},
        WordKey{Qt::Key_T, word::taps},
        WordKey{Qt::Key_P, word::lifts},
        WordKey{Qt::Key_H, word::tooNearTheEnd},
        WordKey{Qt::Key_F, word::tooFarFromTheEnd},
    };
    return kKeys;
}

namespace {

bool hasWord(DimensionId dimension, WordId id) {
    const auto allowed = row(dimension).words;
    return std::find(allowed.begin(), allowed.end(), id) != allowed.end();
}

struct ActsText {
    Q_DECLARE_TR_FUNCTIONS(Acts)
};

} // namespace

std::optional<WordId> wordFor(Qt::Key key, Cell current) {
    // the particular word before the general ok: K at the damper is "right"
    for (const bool general : {false, true})
        for (const WordKey& row : wordKeys())
            if (row.key == key && (row.word == word::ok) == general && hasWord(current.dimension, row.word))
                return row.word;
    return {};
}

QString wordElsewhere(const Workbench& bench, Qt::Key key, Cell current) {
    const QString letter(QChar(static_cast<char16_t>(key)));
    for (const DimensionId id : bench.columns())
        if (const auto word = wordFor(key, {current.note, id}); word && canTake(bench, {current.note, id}))
            return ActsText::tr("%1 belongs to %2 (%3): nothing was entered.")
                .arg(letter, words::name(id).toLower(), words::name(*word));
    return ActsText::tr("%1 is no word of %2: nothing was entered.")
        .arg(letter, words::name(current.dimension).toLower());
}

Cell cellToType(const Workbench& bench, Cell cell) {
    const Piano* piano = bench.piano();
    if (!piano || !piano->contains(cell.note) || fitted(cell.dimension, cell.note, *piano)) return cell;
    const bool sharps = cell.dimension == dimension::sharpHeight || cell.dimension == dimension::sharpProud;
    if (cell.dimension != dimension::keyHeight && !sharps) return cell;
    const Cell other{cell.note, sharps ? dimension::keyHeight : dimension::sharpHeight};
    const auto columns = bench.columns();
    const bool shown = std::ranges::find(columns, other.dimension) != columns.end();
    return shown && fitted(other.dimension, other.note, *piano) ? other : cell;
}

bool namesWordHere(Qt::Key key, Cell current) {
    return row(current.dimension).wordsOnly && std::ranges::any_of(wordKeys(), [&](const WordKey& each) {
               return each.key == key && hasWord(current.dimension, each.word);
           });
}

std::vector<NewReading> restOfColumnRight(const Workbench& bench, Cell from) {
    std::vector<NewReading> found;
    if (!bench.piano() || !hasWord(from.dimension, word::right)) return found;
    for (int n = 1; n <= bench.piano()->notes; ++n) {
        const Cell cell{NoteNumber{n}, from.dimension};
        const Measured* measured = bench.pass() ? bench.pass()->at(cell) : nullptr;
        const bool empty = !measured || measured->missing();
        if (empty && canTake(bench, cell)) found.push_back({cell, wordReading(word::right)});
    }
    return found;
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
