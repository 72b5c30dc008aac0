// The dimensions that are said by words alone: how a part goes, stands or fits, and the words for it. For dimension.cpp
// only. Common practice, no source; the two marks of a slow hammer or jack: both rob a note of its repetition.
#pragma once

#include "core/piano/dimension.h"

namespace hammerline {

inline constexpr std::array kJackReturnWords = {word::right, word::slow, word::staysOut};
inline constexpr std::array kHammerReturnWords = {word::right, word::slow, word::stays};
inline constexpr std::array kHammerTravelWords = {word::right, word::driftsToBass, word::driftsToTreble,
                                                  word::rubsNeighbour};
inline constexpr std::array kHammerSpaceWords = {word::right, word::towardBass, word::towardTreble};
inline constexpr std::array kHammerSquareWords = {word::right, word::topLeansToBass, word::topLeansToTreble};
inline constexpr std::array kStringFitWords = {word::right, word::bassStringOpen, word::middleOpen, word::trebleOpen,
                                               word::twoOpen};
inline constexpr std::array kJackPositionWords = {word::right, word::tooDeep, word::tooShallow};
inline constexpr std::array kLeverHeightWords = {word::right, word::leverHigh, word::leverLow};
inline constexpr std::array kRepetitionSpringWords = {word::right, word::weak, word::kicks, word::noSpring};
inline constexpr std::array kKeyFitWords = {word::right, word::sticks, word::loose};
inline constexpr std::array kKeySquareWords = {word::right, word::leansToBass, word::leansToTreble};
inline constexpr std::array kKeySpaceWords = {word::right, word::towardBass, word::towardTreble, word::rubs};
inline constexpr std::array kDamperLineWords = {word::right, word::earlyByPedal, word::lateByPedal};
inline constexpr std::array kDamperSeatWords = {word::right, word::oneStringRings, word::leaks, word::touchesNeighbour};
inline constexpr std::array kFrameBedWords = {word::right, word::taps, word::lifts};
inline constexpr std::array kStrikeLineWords = {word::right, word::tooNearTheEnd, word::tooFarFromTheEnd};

/// No number is taken (its range is nothing but zero); 3 s a note in practised hands, 6 in a beginner's.
constexpr Dimension wordRow(DimensionId id, std::string_view key, MeasuredAt at, ReadWhere where,
                            std::span<const WordId> words) {
    Dimension row{};
    row.id = id;
    row.key = key;
    row.kind = Kind::length;
    row.entryUnit = Unit::mm;
    row.shown = Shown{Unit::mm, 1, 0, 1, false};
    row.seconds = {3, 6};
    row.at = at;
    row.where = where;
    row.words = words;
    row.wordsOnly = true;
    return row;
}

inline constexpr std::array kWordDimensions = {
    wordRow(dimension::jackReturn, "jack-return", MeasuredAt::other, ReadWhere::endsOfSections, kJackReturnWords),
    wordRow(dimension::hammerReturn, "hammer-return", MeasuredAt::hammer, ReadWhere::everyNote, kHammerReturnWords),
    wordRow(dimension::hammerTravel, "hammer-travel", MeasuredAt::hammer, ReadWhere::everyNote, kHammerTravelWords),
    wordRow(dimension::hammerSpace, "hammer-space", MeasuredAt::hammer, ReadWhere::everyNote, kHammerSpaceWords),
    wordRow(dimension::hammerSquare, "hammer-square", MeasuredAt::hammer, ReadWhere::everyNote, kHammerSquareWords),
    wordRow(dimension::stringFit, "string-fit", MeasuredAt::hammer, ReadWhere::everyNote, kStringFitWords),
    wordRow(dimension::jackPosition, "jack-position", MeasuredAt::other, ReadWhere::everyNote, kJackPositionWords),
    wordRow(dimension::leverHeight, "lever-height", MeasuredAt::other, ReadWhere::everyNote, kLeverHeightWords),
    wordRow(dimension::repetitionSpring, "repetition-spring", MeasuredAt::hammer, ReadWhere::everyNote,
            kRepetitionSpringWords),
    wordRow(dimension::keyFit, "key-fit", MeasuredAt::keyFront, ReadWhere::everyNote, kKeyFitWords),
    wordRow(dimension::keySquare, "key-square", MeasuredAt::keyFront, ReadWhere::everyNote, kKeySquareWords),
    wordRow(dimension::keySpace, "key-space", MeasuredAt::keyFront, ReadWhere::everyNote, kKeySpaceWords),
    wordRow(dimension::damperLine, "damper-line", MeasuredAt::other, ReadWhere::everyNote, kDamperLineWords),
    wordRow(dimension::damperSeat, "damper-seat", MeasuredAt::other, ReadWhere::everyNote, kDamperSeatWords),
    wordRow(dimension::frameBed, "frame-bed", MeasuredAt::other, ReadWhere::endsOfSections, kFrameBedWords),
    wordRow(dimension::strikeLine, "strike-line", MeasuredAt::hammer, ReadWhere::endsOfSections, kStrikeLineWords),
};

} // namespace hammerline
