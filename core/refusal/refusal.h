// What a person caused and the program will not do, as data. Sentences are made in ui/words; tests compare codes.
#pragma once

#include <tl/expected.hpp>

#include <span>
#include <string>
#include <string_view>

namespace hammerline {

enum class RefusalCode {
    // typed quantities
    unreadable,
    twoDecimalMarks,
    zeroDenominator,
    wrongUnit,
    outOfRange,
    likelySlip,
    unknownWord,
    // notes and catalogues
    unknownNote,
    notFitted,
    unknownDimension,
    unknownColumn,
    unknownOperation,
    unknownPart,
    unknownFault,
    unknownRemedy,
    unknownState,
    unknownSymptom,
    unknownCause,
    unknownLook,
    unknownReference,
    badLineSag,
    otherDatum,
    unknownAttribute,
    badAttribute,
    badCompass,
    badSections,
    badIdentity,
    badDate,
    kindMeasured,
    noSuchRemark,
    noSuchPhoto,
    otherPiano,
    badPicture,
    badZone,
    badSpecSheet,
    reasonMissing,
    // files
    cannotRead,
    cannotWrite,
    emptyFile,
    badTable,
    badJson,
    tooLarge,
    fileExists,
    // the book
    notABook,
    newerBook,
    damagedBook,
    lockedBook,
    readOnlyBook,
    replacedFile,
    diskFull,
    noSuchPiano,
    pianoExists,
    severalPianos,
    noSuchPass,
    passExists,
    noSuchStep,
    noPlan,
    nothingToUndo,
    nothingToRedo,
    goneOnSince,
    cancelled,
    // the command line
    usage,
    upNotBelowDown,
};

/// The stable kebab-case id of a code (JSON, tests), and all of them in order.
std::string_view key(RefusalCode);
std::span<const RefusalCode> refusalCodes();

/// Where the offending thing stands: a file with line and column (from 1; 0 = not known), or a field.
struct Place {
    std::string source;
    int line = 0;
    int column = 0;
    std::string field;
    friend bool operator==(const Place&, const Place&) = default;
};

/// `offending` is the text as it was typed or read; `detail` a number, range or cause that the sentence quotes
/// (machine text, never a sentence).
struct Refusal {
    RefusalCode code{};
    Place place;
    std::string offending;
    std::string detail;
    friend bool operator==(const Refusal&, const Refusal&) = default;
};

template <class T>
using Outcome = tl::expected<T, Refusal>;

inline tl::unexpected<Refusal> refuse(RefusalCode code, std::string offending = {}, std::string detail = {},
                                      Place place = {}) {
    return tl::unexpected<Refusal>(Refusal{code, std::move(place), std::move(offending), std::move(detail)});
}

} // namespace hammerline
