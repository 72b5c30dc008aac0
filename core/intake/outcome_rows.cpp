#include "core/intake/outcome_rows.h"

#include <algorithm>
#include <tuple>

namespace hammerline {

Doubt doubtOf(RefusalCode code) {
    switch (code) {
    case RefusalCode::wrongUnit:
        return Doubt::unitMismatch;
    case RefusalCode::outOfRange:
    case RefusalCode::otherDatum:
    case RefusalCode::upNotBelowDown:
        return Doubt::outOfRange;
    case RefusalCode::unknownNote:
    case RefusalCode::notFitted:
        return Doubt::unknownNote;
    case RefusalCode::unknownDimension:
    case RefusalCode::unknownColumn:
    case RefusalCode::noSuchPiano:
        return Doubt::unknownColumn;
    default:
        return Doubt::unreadable;
    }
}

bool sameReading(const Reading& a, const Reading& b) {
    return std::tie(a.count, a.upper, a.relation, a.word) == std::tie(b.count, b.upper, b.relation, b.word);
}

Question asQuestion(const Sound& sound, int column, Doubt doubt, std::string_view slip) {
    Question asked;
    asked.place.line = sound.line;
    asked.place.column = column;
    asked.cell = sound.cell;
    asked.text = sound.reading.typed;
    asked.doubt = doubt;
    asked.slip = slip;
    asked.asTyped = sound.reading;
    asked.asTyped->taken = true;
    return asked;
}

void sortByPlace(Intake& intake) {
    std::stable_sort(intake.questions.begin(), intake.questions.end(), [](const Question& a, const Question& b) {
        return std::tie(a.place.line, a.place.column) < std::tie(b.place.line, b.place.column);
    });
    std::stable_sort(intake.refused.begin(), intake.refused.end(), [](const RefusedRow& a, const RefusedRow& b) {
        return std::tie(a.line, a.column) < std::tie(b.line, b.column);
    });
}

} // namespace hammerline
