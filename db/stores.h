// What each subject writes: one file a subject. All run inside a write transaction and throw Refused.
#pragma once

#include "db/headway.h"
#include "db/versions.h"

namespace hammerline {

// --- piano_store.cpp
/// Row of a piano that is not taken back. Fails with noSuchPiano.
std::int64_t pianoRow(OpenBook&, std::string_view uuid);
std::string addPiano(ActUnderWay&, const Piano&, std::string_view specName, const std::optional<SpecSheet>&,
                     const Identity& = {});
std::int64_t insertPiano(ActUnderWay&, const Uuid&, const Piano&, std::string_view specName,
                         const std::optional<SpecSheet>&);
ActId changePiano(ActUnderWay&, std::int64_t piano, const Piano&, std::string_view specName,
                  const std::optional<SpecSheet>&, const Identity& changes = {});
ActId setPreference(ActUnderWay&, std::int64_t piano, std::string_view key, std::string_view value);

// --- pass_store.cpp
struct PassRow {
    std::int64_t id{};
    Uuid uuid{};
    int number{};
    std::string label;
};
/// Passes that are not taken back, numbered from 1 by the order in which they were started.
std::vector<PassRow> passRows(OpenBook&, std::int64_t piano);
/// Fails with noSuchPass.
PassRow passRow(OpenBook&, std::int64_t piano, int number);
/// By number, label, label without case; empty: the last.
PassRow passRow(OpenBook&, std::int64_t piano, std::string_view numberOrLabel);
PassRow addPass(ActUnderWay&, std::int64_t piano, const NewPass&);
/// The act that started it gives the pass its place among the others.
struct Start {
    ActId act{};
    std::int64_t at{};
};
std::int64_t insertPass(ActUnderWay&, std::int64_t piano, const NewPass&, const Uuid&, Start);
/// What the pass's key heights are counted from: line, bed or slip.
std::string heightDatum(OpenBook&, std::int64_t pass);
/// Refuses otherDatum where heights of the pass are over another datum (situation 19).
ActId setReferences(ActUnderWay&, std::int64_t pass, const std::map<DimensionId, std::string>&);

// --- reading_store.cpp
/// Trials of a cell that hold a reading, or the word that it is not fitted.
struct CellTrials {
    std::vector<int> current;
    bool notFitted = false;
};
CellTrials trialsOf(OpenBook&, std::int64_t pass, Cell);
bool hasReadings(OpenBook&, std::int64_t pass);
/// Refuses what no CHECK of the table would take.
void requireStorable(const NewReading&);
/// The trial a reading goes to: its own, or for a repeat (0) the next free one.
int trialFor(const NewReading&, const CellTrials&, int lastInBatch);
/// The column `relation` of a reading: = < > .. word.
std::string_view relationText(const Reading&);
struct ReadingLine {
    std::int64_t pass{};
    int trial{};
    std::optional<ActId> replaces, origin;
};
void insertReading(ActUnderWay&, const NewReading&, const ReadingLine&);
/// The key of a trial among the versions.
Key readingKey(OpenBook&, std::int64_t pass, Cell, int trial);
ActId storeReadings(ActUnderWay&, std::int64_t pass, std::span<const NewReading>);
ActId withdrawCell(ActUnderWay&, std::int64_t pass, Cell);
ActId markCellNotFitted(ActUnderWay&, std::int64_t pass, Cell);

// --- survey_store.cpp
ActId setOverride(ActUnderWay&, std::int64_t piano, const Override&);
ActId removeOverride(ActUnderWay&, std::int64_t piano, Cell);
ActId addFindings(ActUnderWay&, std::int64_t piano, std::span<const Finding>);
/// A finding as it stood elsewhere. Beside a fault stands no word about the part as a whole, and "sound" takes the
/// faults away.
void insertFinding(ActUnderWay&, std::int64_t piano, const Finding&, std::optional<ActId> origin);
void insertSymptom(ActUnderWay&, std::int64_t piano, const Symptom&, std::optional<ActId> origin);
ActId addSymptom(ActUnderWay&, std::int64_t piano, const Symptom&);

// --- piano_record_store.cpp
/// Empty values take fields back; what stands just so is not written again.
ActId setIdentity(ActUnderWay&, std::int64_t piano, const Identity& changes);
struct RemarkLine {
    int item{};
    std::optional<std::int64_t> pass; // its row; none: by number, as the remark says
    std::optional<ActId> origin;
};
void insertRemark(ActUnderWay&, std::int64_t piano, const Remark&, const RemarkLine&);
ActId addRemarks(ActUnderWay&, std::int64_t piano, std::span<const Remark>);
/// Both refuse noSuchRemark.
ActId removeRemark(ActUnderWay&, std::int64_t saidIn, int item);
ActId decideAdvice(ActUnderWay&, std::int64_t saidIn, int item, std::string_view accepted);

// --- mark_store.cpp
void sayWork(ActUnderWay&, std::int64_t piano, const WorkSaid&);
/// A mark as it was made elsewhere.
void insertMark(ActUnderWay&, std::int64_t piano, const WorkMark&, std::optional<ActId> origin);

// --- plan_store.cpp
ActId freezePlan(ActUnderWay&, std::int64_t piano, const FrozenPlan&);
ActId tick(ActUnderWay&, std::int64_t piano, std::span<const Done>, const std::optional<FrozenPlan>&);
/// Takes back what was said of a step of a plan; nothing where nothing holds.
void untick(ActUnderWay&, const std::string& plan, const std::string& step);

struct DoneLine {
    int item{};
    std::int64_t pass{};
    std::optional<std::int64_t> plan;
    std::optional<ActId> origin;
};
void insertDone(ActUnderWay&, const Done&, const DoneLine&);

// --- record_import.cpp
ActId importRecords(ActUnderWay&, std::span<const BenchBook::Incoming>, const Headway&);

/// Amounts in the book are whole nanometres or millionths of a turn.
std::int64_t amountCount(double amount);
double amountOf(std::int64_t count);

// --- undo.cpp
BenchBook::Undone undo(ActUnderWay&);
BenchBook::Undone redo(ActUnderWay&);

} // namespace hammerline
