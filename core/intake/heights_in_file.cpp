#include "core/intake/heights_in_file.h"

#include "core/intake/outcome_rows.h"
#include "core/pass/height_datum.h"

#include <algorithm>

namespace hammerline {
namespace {

using namespace dimension;

bool isNumber(const Sound& sound) {
    return !sound.reading.word;
}

bool onBed(const Sound& sound) {
    return isNumber(sound) && isFromBed(sound.cell.dimension, sound.reading.count);
}

/// Takes the readings that `doubtful` names out of the sound ones and asks about them.
template <class Test>
void askAbout(Intake& intake, std::string_view slip, bool mayTake, Test doubtful) {
    std::vector<Sound> kept;
    kept.reserve(intake.sound.size());
    for (Sound& sound : intake.sound) {
        if (!doubtful(sound)) {
            kept.push_back(std::move(sound));
            continue;
        }
        intake.questions.push_back(asQuestion(sound, 0, Doubt::outOfRange, slip));
        intake.questions.back().mayTake = mayTake;
    }
    intake.sound = std::move(kept);
}

/// The datum of most of the file's heights; empty where it has none.
std::string_view commonestDatum(const Intake& intake) {
    std::map<std::string_view, std::size_t> counts;
    for (const Sound& sound : intake.sound)
        if (sound.cell.dimension == keyHeight && isNumber(sound)) ++counts[datumOf(sound.reading.count)];
    std::string_view most;
    for (const std::string_view datum : {"bed", "slip", "line"})
        if (counts[datum] > counts[most]) most = datum;
    return most;
}

void askAboutMixedDatum(Intake& intake, const TableOptions& options) {
    const std::string_view found = commonestDatum(intake);
    if (found.empty()) return;
    const auto said = options.references.find(keyHeight);
    const bool isSaid = said != options.references.end();
    const std::string datum{options.datumHolds ? (isSaid ? std::string_view{said->second} : "line") : found};
    askAbout(intake, "mixed-datum", false,
             [&](const Sound& each) { return isOverAnotherDatum(each.cell, each.reading, datum); });
    if (datum != "line" || isSaid)
        intake.references[keyHeight] = datum;
    else
        intake.references.erase(keyHeight);
}

void askAboutSharps(Intake& intake, const Piano& piano) {
    std::map<NoteNumber, std::int64_t> naturals;
    for (const Sound& sound : intake.sound)
        if (onBed(sound) && colourOf(sound.cell.note, piano) == KeyColour::natural)
            naturals[sound.cell.note] = sound.reading.count;
    const Dimension& over = row(sharpHeight);
    askAbout(intake, "sharp-against-naturals", true, [&](const Sound& sound) {
        if (!onBed(sound) || colourOf(sound.cell.note, piano) == KeyColour::natural) return false;
        std::int64_t sum = 0;
        std::int64_t count = 0;
        for (const NoteNumber natural : neighbouringNaturals(sound.cell.note, piano))
            if (const auto found = naturals.find(natural); found != naturals.end()) {
                sum += found->second;
                ++count;
            }
        if (count == 0) return false;
        const std::int64_t height = sound.reading.count - sum / count;
        return height < over.askLow || height > over.askHigh;
    });
}

} // namespace

DimensionId heightAsMeant(std::string_view typed, NoteNumber note, DimensionId ofColumn, const CellContext& context) {
    if (ofColumn != keyHeight && ofColumn != sharpHeight) return ofColumn;
    const auto quantity = readQuantityOf(typed, ofColumn, context);
    if (!quantity) return ofColumn;
    if (isFromBed(keyHeight, quantity->count)) return keyHeight;
    // 8 to 40 over the slip; a column that says "over the naturals" stays one
    const bool overSlip = context.heightsFromSlip && ofColumn == keyHeight && datumOf(quantity->count) == "slip";
    if (overSlip) return keyHeight;
    return colourOf(note, *context.piano) == KeyColour::sharp ? sharpHeight : ofColumn;
}

void askAboutHeights(Intake& intake, const Piano& piano, const TableOptions& options) {
    askAboutMixedDatum(intake, options);
    askAboutSharps(intake, piano);
}

} // namespace hammerline
