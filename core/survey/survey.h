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

/// Where in the whole job a part is put right, in this order.
enum class JobStage : std::uint8_t { beforeTilting, action, hammers, rails, keyFrame, keys, dampers, pedals, player };
std::string_view key(JobStage);

/// What may be wrong with a part, and the remedy that is customary for it.
struct Fault {
    std::string_view key; // rotted
    std::string_view usualRemedy;
    operator std::string_view() const { return key; }
};

/// What can be done. `supply`: id of what has to be ordered for it ("" nothing, the part's own key, "centre-pin").
struct Remedy {
    std::string_view key; // replace-set
    std::string_view supply;
    bool set = false; // always the whole set
    operator std::string_view() const { return key; }
};

struct Part {
    int number = 0;                           // row of bench-practice 3
    std::string_view key;                     // bridle-strap
    std::string_view kinds;                   // U upright, D drop, G grand, P player, O overdamper
    std::span<const Fault> faults;            // the row's words, then the general ones
    std::span<const Remedy> remedies;         // likewise
    Must must = Must::no;                     //
    std::span<const std::string_view> mustIf; // faults or remedies that alone make it a must; empty: all
    bool mustOverTenth = false;               // a must only once more than a tenth is faulty
    std::span<const DimensionId> stale;       // readings to forget once it is mended
    bool staleAll = false;                    //
    PartUnit unit = PartUnit::note;           //
    std::array<double, 2> minutes{};          // per unit, practised and beginner; 0: done by a specialist
    bool wholeSet = false;                    // proposed as a set when more than a tenth is faulty
    JobStage stage = JobStage::action;        //
    std::string_view caution;                 // id of a caution, may be empty
    bool (*has)(const Piano&) = nullptr;      // a condition beyond the kind
    bool damper = false;                      // only up to the last damper
};

std::span<const Part> parts();
const Part* findPart(std::string_view key);
const Fault* findFault(const Part&, std::string_view);
const Remedy* findRemedy(const Part&, std::string_view);
/// Whether this piano has the part at all (by kind, attributes, player).
bool fitted(const Part&, const Piano&);
bool fitted(const Part&, NoteNumber, const Piano&);
/// The notes at which the part is fitted; all notes for a part of the whole piano.
std::vector<NoteNumber> notesOf(const Part&, const Piano&);

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

/// The finding that says how a part stands at a note: the newer of the note's own and that of the whole piano; of
/// equal age the note's own. None: not looked at (never sound).
const Finding* standingAt(std::string_view part, NoteNumber, std::span<const Finding>);
FindingState stateAt(std::string_view part, NoteNumber, std::span<const Finding>);
/// The remedy that was chosen, else the customary one of the fault.
const Remedy* remedyOf(const Finding&);

/// True where the finding is open (to-do) and must be done before the note is regulated, whatever else was found.
bool blocks(const Finding&);
/// The same with the rule of the tenth: some parts are a must only once many of a set are faulty.
bool blocks(const Finding&, std::span<const Finding>, const Piano&);
/// The open must-do-first findings at a note (the note's own and those of the whole piano's set or section).
std::vector<Finding> blockersOf(NoteNumber, std::span<const Finding>, const Piano&);
/// Whether more than a tenth of the fitted ones of a part are to do.
bool overTenth(const Part&, std::span<const Finding>, const Piano&);
/// The readings that mending this finding disturbs (its note; its section, set or piano).
std::vector<Cell> disturbedBy(const Finding&, const Piano&);

struct Symptom {
    std::string key; // kebab-case of bench-practice 5
    NoteRange notes;
    std::int64_t order = 0;
    friend bool operator==(const Symptom&, const Symptom&) = default;
};
std::span<const std::string_view> symptomKeys();
/// Those that this piano can have: no straps wink on a grand, no key frame knocks on an upright, none comes from a
/// player that is not there.
std::vector<std::string_view> symptomsOf(const Piano&);

/// "20,23,31-40 bridle-strap rotted replace-set": notes, part, fault, optional remedy, optional mm for a reshaped
/// hammer. The fault `hammers-filed` is the event: reshaped, done, by so many mm. Refuses unknownPart, unknownFault,
/// unknownRemedy, unknownNote, notFitted (naming the notes). Notes by name ("all", "bass") mean the fitted ones.
Outcome<std::vector<Finding>> parseFindings(std::string_view, const Piano&);
/// "1-88 action-bolts sound": notes, part, state.
Outcome<std::vector<Finding>> parseFindingStates(std::string_view, const Piano&);
/// "1-44 double-strike".
Outcome<Symptom> parseSymptom(std::string_view, const Piano&);

struct PartsLine {
    std::string part; // id of what is ordered: a part's key, "centre-pin", "butt-plate-screw", ...
    std::string size; // "clip", "bichord", "flat", "50 + 35", "10 x 30" (mm, cut from a sheet), or empty
    int needed = 0;
    int spare = 0;
    int quantity = 0;
    std::string unit;      // piece, set, mm, cm2
    bool wholeSet = false; // proposed as a set
    int found = 0;         // faulty ones
    int of = 0;            // of so many fitted
    std::string from;      // the part of the survey it comes from
    std::string with;      // the supply it comes with or is the material of; empty: ordered for itself
    std::vector<NoteNumber> notes;
    std::map<std::string, std::string> measured{}; // by field: of old ones at these notes, mm, number or word
    bool bySize = false;                           // is ordered by size: what is not measured cannot be ordered
    friend bool operator==(const PartsLine&, const PartsLine&) = default;
};
/// What was measured at an old part to order a new one.
struct PartSize {
    std::string supply, field;
    std::optional<NoteRange> notes; // none: holds for all
    std::string value;              // mm as a number, a number, or a word
    friend bool operator==(const PartSize&, const PartSize&) = default;
};

struct Spares {
    double percent = 5;
    int atLeast = 1;
    std::vector<std::string> onlyThese;               // parts whose whole set was declined
    std::map<std::string, std::array<double, 2>> cut; // by supply: width and length of a piece, mm, where measured
    std::vector<PartSize> sizes{};                    // of other supplies
};

/// A supply that can be cut from a sheet: the sheet's id, and width and length of one piece in mm.
struct CutPiece {
    std::string_view supply, sheet;
    std::array<double, 2> size; // customary
};
std::span<const CutPiece> cutPieces();
std::array<double, 2> cutSize(const CutPiece&, const Spares&);

std::vector<PartsLine> partsList(std::span<const Finding>, const Piano&, Spares = {});

/// Customary minutes of all open work (practised).
double minutesOf(std::span<const Finding>, const Piano&);

} // namespace hammerline
