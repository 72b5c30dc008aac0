// What each subject writes: one file a subject. All run inside a write transaction and throw Refused.
#pragma once

#include "db/acts.h"

namespace hammerline {

// --- piano_store.cpp
/// Row of a piano that is not taken back. Fails with noSuchPiano.
std::int64_t pianoRow(OpenBook&, std::string_view uuid);
std::string addPiano(ActUnderWay&, const Piano&, std::string_view specName, const std::optional<SpecSheet>&);
ActId changePiano(ActUnderWay&, std::int64_t piano, const Piano&, std::string_view specName,
                  const std::optional<SpecSheet>&);
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
ActId setReferences(ActUnderWay&, std::int64_t pass, const std::map<DimensionId, std::string>&);

// --- reading_store.cpp
ActId storeReadings(ActUnderWay&, std::int64_t pass, std::span<const NewReading>);
ActId withdrawCell(ActUnderWay&, std::int64_t pass, Cell);
ActId markCellNotFitted(ActUnderWay&, std::int64_t pass, Cell);

// --- survey_store.cpp
ActId setOverride(ActUnderWay&, std::int64_t piano, const Override&);
ActId removeOverride(ActUnderWay&, std::int64_t piano, Cell);
ActId addFindings(ActUnderWay&, std::int64_t piano, std::span<const Finding>);
ActId addSymptom(ActUnderWay&, std::int64_t piano, const Symptom&);

// --- plan_store.cpp
ActId freezePlan(ActUnderWay&, std::int64_t piano, const FrozenPlan&);
ActId tick(ActUnderWay&, std::int64_t piano, std::span<const Done>, const std::optional<FrozenPlan>&);

/// Amounts in the book are whole nanometres or millionths of a turn.
std::int64_t amountCount(double amount);
double amountOf(std::int64_t count);

// --- undo.cpp
BenchBook::Undone undo(ActUnderWay&);
BenchBook::Undone redo(ActUnderWay&);

} // namespace hammerline
