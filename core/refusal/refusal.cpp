#include "core/refusal/refusal.h"

#include <array>
#include <utility>

namespace hammerline {
namespace {

using enum RefusalCode;

constexpr std::array kKeys = {
    std::pair{unreadable, std::string_view{"unreadable"}},
    std::pair{twoDecimalMarks, std::string_view{"two-decimal-marks"}},
    std::pair{zeroDenominator, std::string_view{"zero-denominator"}},
    std::pair{wrongUnit, std::string_view{"wrong-unit"}},
    std::pair{outOfRange, std::string_view{"out-of-range"}},
    std::pair{likelySlip, std::string_view{"likely-slip"}},
    std::pair{unknownWord, std::string_view{"unknown-word"}},
    std::pair{unknownNote, std::string_view{"unknown-note"}},
    std::pair{notFitted, std::string_view{"not-fitted"}},
    std::pair{unknownDimension, std::string_view{"unknown-dimension"}},
    std::pair{unknownColumn, std::string_view{"unknown-column"}},
    std::pair{unknownOperation, std::string_view{"unknown-operation"}},
    std::pair{unknownPart, std::string_view{"unknown-part"}},
    std::pair{unknownFault, std::string_view{"unknown-fault"}},
    std::pair{unknownRemedy, std::string_view{"unknown-remedy"}},
    std::pair{unknownState, std::string_view{"unknown-state"}},
    std::pair{unknownSymptom, std::string_view{"unknown-symptom"}},
    std::pair{unknownCause, std::string_view{"unknown-cause"}},
    std::pair{unknownReference, std::string_view{"unknown-reference"}},
    std::pair{badLineSag, std::string_view{"bad-line-sag"}},
    std::pair{otherDatum, std::string_view{"other-datum"}},
    std::pair{unknownAttribute, std::string_view{"unknown-attribute"}},
    std::pair{badAttribute, std::string_view{"bad-attribute"}},
    std::pair{badCompass, std::string_view{"bad-compass"}},
    std::pair{badSections, std::string_view{"bad-sections"}},
    std::pair{badIdentity, std::string_view{"bad-identity"}},
    std::pair{badDate, std::string_view{"bad-date"}},
    std::pair{kindMeasured, std::string_view{"kind-measured"}},
    std::pair{noSuchRemark, std::string_view{"no-such-remark"}},
    std::pair{noSuchPhoto, std::string_view{"no-such-photo"}},
    std::pair{otherPiano, std::string_view{"other-piano"}},
    std::pair{badPicture, std::string_view{"bad-picture"}},
    std::pair{badZone, std::string_view{"bad-zone"}},
    std::pair{badSpecSheet, std::string_view{"bad-spec-sheet"}},
    std::pair{reasonMissing, std::string_view{"reason-missing"}},
    std::pair{cannotRead, std::string_view{"cannot-read"}},
    std::pair{cannotWrite, std::string_view{"cannot-write"}},
    std::pair{emptyFile, std::string_view{"empty-file"}},
    std::pair{badTable, std::string_view{"bad-table"}},
    std::pair{badJson, std::string_view{"bad-json"}},
    std::pair{tooLarge, std::string_view{"too-large"}},
    std::pair{fileExists, std::string_view{"file-exists"}},
    std::pair{notABook, std::string_view{"not-a-book"}},
    std::pair{newerBook, std::string_view{"newer-book"}},
    std::pair{damagedBook, std::string_view{"damaged-book"}},
    std::pair{lockedBook, std::string_view{"locked-book"}},
    std::pair{readOnlyBook, std::string_view{"read-only-book"}},
    std::pair{replacedFile, std::string_view{"replaced-file"}},
    std::pair{diskFull, std::string_view{"disk-full"}},
    std::pair{noSuchPiano, std::string_view{"no-such-piano"}},
    std::pair{pianoExists, std::string_view{"piano-exists"}},
    std::pair{severalPianos, std::string_view{"several-pianos"}},
    std::pair{noSuchPass, std::string_view{"no-such-pass"}},
    std::pair{passExists, std::string_view{"pass-exists"}},
    std::pair{noSuchStep, std::string_view{"no-such-step"}},
    std::pair{noPlan, std::string_view{"no-plan"}},
    std::pair{nothingToUndo, std::string_view{"nothing-to-undo"}},
    std::pair{nothingToRedo, std::string_view{"nothing-to-redo"}},
    std::pair{goneOnSince, std::string_view{"gone-on-since"}},
    std::pair{cancelled, std::string_view{"cancelled"}},
    std::pair{usage, std::string_view{"usage"}},
    std::pair{upNotBelowDown, std::string_view{"up-not-below-down"}},
};

constexpr auto kCodes = [] {
    std::array<RefusalCode, kKeys.size()> codes{};
    for (std::size_t i = 0; i < kKeys.size(); ++i)
        codes[i] = kKeys[i].first;
    return codes;
}();

} // namespace

std::string_view key(RefusalCode code) {
    for (const auto& [each, text] : kKeys)
        if (each == code) return text;
    return "unreadable";
}

std::span<const RefusalCode> refusalCodes() {
    return kCodes;
}

} // namespace hammerline
