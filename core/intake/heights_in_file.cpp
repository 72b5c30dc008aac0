#include "core/intake/heights_in_file.h"

#include "core/intake/outcome_rows.h"

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
void askAbout(Intake& intake, std::string_view slip, Test doubtful) {
    std::vector<Sound> kept;
    kept.reserve(intake.sound.size());
    for (Sound& sound : intake.sound) {
        if (doubtful(sound))
            intake.questions.push_back(asQuestion(sound, 0, Doubt::outOfRange, slip));
        else
            kept.push_back(std::move(sound));
    }
    intake.sound = std::move(kept);
}

void askAboutMixedDatum(Intake& intake) {
    const auto relative = [](const Sound& s) { return s.cell.dimension == keyHeight && isNumber(s) && !onBed(s); };
    const auto bed = std::count_if(intake.sound.begin(), intake.sound.end(), onBed);
    const auto line = std::count_if(intake.sound.begin(), intake.sound.end(), relative);
    if (bed == 0 || line == 0) return;
    if (bed >= line) {
        askAbout(intake, "mixed-datum", relative);
        return;
    }
    askAbout(intake, "mixed-datum", onBed);
    intake.references.erase(keyHeight);
}

void askAboutSharps(Intake& intake, const Piano& piano) {
    std::map<NoteNumber, std::int64_t> naturals;
    for (const Sound& sound : intake.sound)
        if (onBed(sound) && colourOf(sound.cell.note, piano) == KeyColour::natural)
            naturals[sound.cell.note] = sound.reading.count;
    const Dimension& over = row(sharpHeight);
    askAbout(intake, "sharp-against-naturals", [&](const Sound& sound) {
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
    return colourOf(note, *context.piano) == KeyColour::sharp ? sharpHeight : ofColumn;
}

void askAboutHeights(Intake& intake, const Piano& piano) {
    askAboutMixedDatum(intake);
    askAboutSharps(intake, piano);
}

} // namespace hammerline
