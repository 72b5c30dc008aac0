// The condition survey: parts, faults, remedies, findings; what blocks a note; parts to order (bench-practice 3, 5).
#pragma once

#include "core/piano/dimension.h"

namespace hammerline {

enum class Must : std::uint8_t { note, set, no }; // Y, S, n
enum class PartUnit : std::uint8_t { note, piano, set, section, bushing };
enum class FindingState : std::uint8_t { notLookedAt, sound, watch, toDo, mended };
std::string_view key(Must);
std::string_view key(PartUnit);
std::string_view key(FindingState);
Outcome<FindingState> parseFindingState(std::string_view);

struct Remedy {
    std::string_view key; // replace-set
    bool blocksUntilDone; // overrides the part's must where the row says so
};

struct Part {
    int number;                               // row of bench-practice 3
    std::string_view key;                     // bridle-strap
    std::string_view kinds;                   // "UDGPO" as the table
    std::span<const std::string_view> faults; // kebab-case
    std::span<const std::string_view> remedies;
    Must must;
    std::span<const DimensionId> stale;
    bool staleAll;
    PartUnit unit;
    std::array<double, 2> minutes; // practised, beginner
    bool wholeSet;                 // proposed as a set when more than a tenth is faulty
    std::string_view caution;      // id of a caution, may be empty
};

std::span<const Part> parts();
const Part* findPart(std::string_view key);
/// Whether this piano has the part at all (by kind, attributes, player).
bool fitted(const Part&, const Piano&);
bool fitted(const Part&, NoteNumber, const Piano&);

/// One finding: a part at a note (or of the whole piano: no note), with what was seen and what is to be done.
struct Finding {
    std::optional<NoteNumber> note;
    std::string part;
    std::string fault; // empty where sound
    std::string remedy;
    FindingState state = FindingState::toDo;
    std::string remark;
    double amount = 0;      // mm, for reshape (hammers filed)
    std::int64_t order = 0; // act order in the book
    std::int64_t at = 0;
    friend bool operator==(const Finding&, const Finding&) = default;
};

/// True where the finding is open (to-do) and must be done before the note is regulated.
bool blocks(const Finding&);
/// The open must-do-first findings at a note (the note's own and those of the whole piano's set or section).
std::vector<Finding> blockersOf(NoteNumber, std::span<const Finding>, const Piano&);

struct Symptom {
    std::string key; // kebab-case of bench-practice 5
    NoteRange notes;
    std::int64_t order = 0;
    friend bool operator==(const Symptom&, const Symptom&) = default;
};
std::span<const std::string_view> symptomKeys();

/// "20,23,31-40 bridle-strap rotted replace-set": notes, part, fault, optional remedy. Refuses unknownPart,
/// unknownFault, unknownRemedy, unknownNote, notFitted.
Outcome<std::vector<Finding>> parseFindings(std::string_view, const Piano&);
/// "1-88 action-bolts sound": notes, part, state.
Outcome<std::vector<Finding>> parseFindingStates(std::string_view, const Piano&);
/// "1-44 double-strike".
Outcome<Symptom> parseSymptom(std::string_view, const Piano&);

struct PartsLine {
    std::string part;
    std::string size; // "clip", "bichord", "flat", "52 + 36", mm, or empty
    int needed = 0;
    int spare = 0;
    int quantity = 0;
    std::string unit;      // piece, set, mm
    bool wholeSet = false; // proposed as a set
};
struct Spares {
    double percent = 5;
    int atLeast = 1;
};
std::vector<PartsLine> partsList(std::span<const Finding>, const Piano&, Spares = {});

/// Customary minutes of all open work (practised).
double minutesOf(std::span<const Finding>, const Piano&);

} // namespace hammerline
