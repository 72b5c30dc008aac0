// An import under way: readings go into the book as they are read, in one transaction and one act. Nothing is kept
// unless all of it is.
#pragma once

#include "db/bench_book.h"

namespace hammerline {

class ActUnderWay;

/// What an import writes through. Every call answers at once, so that the reader can stop; after a refusal the import
/// as a whole is refused.
class Importing {
public:
    Importing(ActUnderWay&, std::int64_t piano);
    ~Importing();
    Importing(const Importing&) = delete;
    Importing& operator=(const Importing&) = delete;

    /// The pass of a file, as this book had it when the import began, by number or label; made where there is none,
    /// with that label, or one after its name.
    Outcome<int> passNamed(std::string_view numberOrLabel, std::string_view label = {});
    Outcome<int> addPass(const NewPass&);
    /// A reading with a time of its own keeps it. One that stands in the book just so, time and all, is not written
    /// again. Trial 0: a further trial.
    Outcome<void> put(int pass, const NewReading&);
    /// After the readings: a cell that was given one is fitted.
    Outcome<void> markNotFitted(int pass, Cell);
    Outcome<void> setReferences(int pass, const std::map<DimensionId, std::string>&);
    /// What can only be settled when all has been read. Called by the book.
    void finish();

private:
    struct State;
    std::unique_ptr<State> m_state;
};

} // namespace hammerline
