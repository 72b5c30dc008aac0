// A file's readings on their way into the book: which pass each belongs to, and what is said only when all is read.
#pragma once

#include "core/history/record.h"
#include "core/intake/intake.h"
#include "db/importing.h"

namespace hammerline {

/// The pass to start next: the last one's way of measuring until somebody says otherwise, for passes are compared only
/// like with like.
NewPass nextPass(const PianoRecord&);

/// What the pass that a table goes to was asked once (none: as the next one will be) holds for the table as well.
void speakAsThePass(const PianoRecord&, std::optional<int> pass, TableOptions&);

class StoringIntake {
public:
    /// `pass`: for readings that name none (empty: a new one). `byName`: a pass that the file names is the one meant.
    StoringIntake(Importing&, const PianoRecord&, std::optional<int> pass, bool byName);

    /// After a refusal nothing more is taken; outcome() keeps it.
    void take(const Sound&);
    /// A pass without readings: made where the book has none of that name, before those that come after it.
    void take(const SaidPass&);
    /// Passes of a file that was read as a whole: each comes before the first reading that stands behind it there.
    void expect(std::vector<SaidPass> passes);
    /// The passes, the marks, the references, and the sound readings that were not given away while reading.
    Outcome<void> finish(const Intake&);

    Outcome<void> outcome() const;
    std::size_t taken() const { return m_taken; }
    /// The latest pass that was written to; 0: none.
    int lastPass() const { return m_lastPass; }

private:
    Outcome<int> passFor(const std::string& named);
    void passesBefore(int line);

    Importing& m_into;
    const PianoRecord& m_record;
    std::optional<int> m_pass;
    bool m_byName;
    std::map<int, std::string_view> m_datum; // by pass: of the key heights that came
    std::vector<SaidPass> m_expected;        // the next one last
    std::optional<Refusal> m_refusal;
    std::size_t m_taken = 0;
    int m_lastPass = 0;
};

} // namespace hammerline
