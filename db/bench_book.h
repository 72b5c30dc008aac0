// The bench book: one SQLite file with any number of pianos. Only what a person entered is kept; every write is one
// immediate transaction and one act. No SQLite type leaves this folder; every refusal is a value.
#pragma once

#include "core/experience/experience.h"
#include "core/history/merging.h"
#include "core/history/record.h"
#include "core/history/work_done.h"
#include "core/refusal/go_on.h"

#include <memory>

namespace hammerline {

/// Who writes: told once when the book is opened, so that tests and commands can say so. Time is given from outside.
struct Writer {
    std::string program = "hammerline";
    std::function<std::int64_t()> now; // microseconds since 1970 UTC; empty: the system clock
};

enum class OpenMode : std::uint8_t { readWrite, readOnly };

struct PianoLine {
    std::string uuid, name;
    ActionKind action{};
    int notes = 0;
    struct PassLine {
        int number = 0;
        std::string label;
        std::size_t readings = 0;
    };
    std::vector<PassLine> passes;
    Identity identity;
};

struct NewPass {
    std::string label;
    std::optional<double> temperature, humidity;
    bool stackIn = false;
    bool weightsOn = false;
    std::map<DimensionId, std::string> references;
    std::string lineSag{}; // as Pass::lineSag
    bool onBench = false;
};

/// One reading to store. `replaces` is implied: the current one of the same cell and trial, as this book sees it.
struct NewReading {
    Cell cell;
    Reading reading; // trial 0: a further trial (repeat); otherwise that trial
};

struct Problem {
    std::string what; // integrity, foreign-key, pragma, schema, value ... with the detail
};
struct Verification {
    bool sound = true;
    std::vector<Problem> problems;
    std::int64_t olderAt = 0; // what was written before this time (microseconds since 1970 UTC) has no earlier proof
};

class Importing; // db/importing.h

/// The act a write made; 0 where nothing had to be written.
using ActId = std::int64_t;

enum class Change : std::uint8_t { none, dataChanged, fileReplaced, fileGone };

class BenchBook {
public:
    /// Refuses fileExists, cannotWrite, diskFull.
    static Outcome<BenchBook> create(const std::string& path, Writer = {});
    /// Filled before it gets its name: it is there with all that `fill` writes, or not at all.
    static Outcome<BenchBook> createFilled(const std::string& path,
                                           const std::function<Outcome<void>(BenchBook&)>& fill, Writer = {});
    /// Reads the header by hand first. Refuses cannotRead, notABook, damagedBook, lockedBook; a newer book opens
    /// read-only (see newer()). An older one is migrated after a verified dated backup beside it, or, where it is to be
    /// read only, is read as it was then and left as it is.
    static Outcome<BenchBook> open(const std::string& path, OpenMode = OpenMode::readWrite, Writer = {},
                                   const GoOn& = {});
    BenchBook(BenchBook&&) noexcept;
    BenchBook& operator=(BenchBook&&) noexcept;
    ~BenchBook();

    const std::string& path() const;
    bool readOnly() const;
    /// opened-read-only, file or folder (write-protected); empty where the book can be written.
    const std::string& whyReadOnly() const;
    bool newer() const;

    Outcome<std::vector<PianoLine>> pianos() const;
    /// By name (exact, then without case) or uuid; empty: the only piano that is not archived. Refuses noSuchPiano,
    /// severalPianos.
    Outcome<std::string> findPiano(std::string_view nameOrUuid) const;
    Outcome<PianoRecord> load(std::string_view pianoUuid) const;
    /// What other pianos of this book can teach this one (core/experience): of its kind, the forty of them that were
    /// worked on last. It takes a load of each: keep it.
    Outcome<std::vector<Lesson>> lessonsFor(const PianoRecord&) const;
    /// Number of a pass by number or label, empty: the last. Refuses noSuchPass.
    Outcome<int> findPass(std::string_view pianoUuid, std::string_view numberOrLabel) const;

    Outcome<std::string> addPiano(const Piano&, std::string_view specName, const std::optional<SpecSheet>& = {},
                                  const Identity& = {});
    /// Refuses kindMeasured: another kind of action once something was read.
    Outcome<ActId> changePiano(std::string_view uuid, const Piano&, std::string_view specName,
                               const std::optional<SpecSheet>& = {}, const Identity& changes = {});
    /// Fields by key, all as one act; an empty value takes the field back.
    Outcome<ActId> setIdentity(std::string_view uuid, const Identity& changes);
    Outcome<ActId> addRemarks(std::string_view pianoUuid, std::span<const Remark>);
    struct NewPhoto {
        Photo photo;
        Picture picture;
    };
    /// All of them as one act; a picture that the book has already is not kept twice.
    Outcome<ActId> addPhotos(std::string_view pianoUuid, std::span<const NewPhoto>);
    /// Refuses noSuchPhoto. The picture stays: undo brings the photograph back.
    Outcome<ActId> removePhoto(std::string_view pianoUuid, const Photo&);
    /// By hash; none where the book has no such picture.
    Outcome<std::optional<Picture>> picture(const std::string& hash) const;
    Outcome<std::optional<std::string>> thumb(const std::string& hash) const;
    /// Reads the pictures of the record's photographs into it, for an export.
    Outcome<void> loadPictures(PianoRecord&) const;
    /// By its name in this book. Both refuse noSuchRemark.
    Outcome<ActId> removeRemark(std::string_view pianoUuid, const Remark&);
    Outcome<ActId> decideAdvice(std::string_view pianoUuid, const Remark&, std::string_view accepted);
    Outcome<int> addPass(std::string_view pianoUuid, const NewPass&);
    Outcome<ActId> setReferences(std::string_view pianoUuid, int pass, const std::map<DimensionId, std::string>&);
    /// All or nothing, one act. `kind`: entry, paste or import; `source`: a file's name for the log.
    Outcome<ActId> store(std::string_view pianoUuid, int pass, std::span<const NewReading>,
                         std::string_view kind = "entry", std::string_view source = {});
    /// Runs `work` in one transaction and one act of that kind, in which it may write a file's readings as it reads
    /// them. A refusal of the work is the import's, and nothing is kept.
    Outcome<ActId> importInto(std::string_view pianoUuid, std::string_view source,
                              const std::function<Outcome<void>(Importing&)>& work, std::string_view kind = "import");
    /// A piano of an export, into one of this book (by uuid) or as a new one (empty).
    struct Incoming {
        PianoRecord record;
        std::string into;
    };
    /// All of them as one act. What came earlier than what stands here stays under it; what stands here just so is not
    /// written again. The set-up of a piano that is here already is left as it is.
    Outcome<ActId> importRecords(std::span<const Incoming>, std::string_view source, const GoOn& = {});
    /// Takes a cell's current readings back (appends, never erases), or marks it not fitted.
    Outcome<ActId> withdraw(std::string_view pianoUuid, int pass, Cell);
    Outcome<ActId> markNotFitted(std::string_view pianoUuid, int pass, Cell);
    Outcome<ActId> setOverride(std::string_view pianoUuid, const Override&);
    /// Several as one act.
    Outcome<ActId> setOverrides(std::string_view pianoUuid, std::span<const Override>);
    Outcome<ActId> removeOverride(std::string_view pianoUuid, Cell);
    Outcome<ActId> addFindings(std::string_view pianoUuid, std::span<const Finding>);
    Outcome<ActId> addSymptom(std::string_view pianoUuid, const Symptom&);
    /// What one look at the piano told, all of it as one act.
    struct Surveyed {
        std::vector<Finding> findings;
        std::vector<Symptom> symptoms;
        std::vector<std::pair<std::string, std::string>> preferences;
    };
    Outcome<ActId> addSurvey(std::string_view pianoUuid, const Surveyed&);
    /// What was done; with a plan not yet in the book it is frozen in the same act.
    Outcome<ActId> tick(std::string_view pianoUuid, std::span<const Done>, const std::optional<FrozenPlan>& = {});
    /// The same, in the place of what was said before of these steps of their plan: a slip is corrected, not added to.
    Outcome<ActId> tickAnew(std::string_view pianoUuid, std::span<const Done>, const std::optional<FrozenPlan>& = {});
    /// These steps of a plan were not done after all: what was said of them is taken back, and stays in the history.
    Outcome<ActId> untick(std::string_view pianoUuid, std::string_view planUuid, std::span<const std::string> steps);
    /// What was said of a step of the work, with the findings it mended and the lines it carried out, as one act.
    Outcome<ActId> sayWork(std::string_view pianoUuid, const WorkDone&);
    Outcome<ActId> freezePlan(std::string_view pianoUuid, const FrozenPlan&);
    Outcome<ActId> setPreference(std::string_view pianoUuid, std::string_view key, std::string_view value);

    struct Undone {
        ActId act{};
        std::string kind; // of what was undone or redone
    };
    /// The newest own act (of this session; else of this bench book) not yet undone. Refuses nothingToUndo,
    /// goneOnSince.
    Outcome<Undone> undo();
    Outcome<Undone> redo();

    /// Earlier readings of a cell in this pass, oldest first, the current ones included.
    Outcome<std::vector<Reading>> trail(std::string_view pianoUuid, int pass, Cell) const;

    /// Takes in what another book knows (union by UUID; the other is only read), in one transaction, after a verified
    /// dated copy of this one. Refuses what `open` refuses of the other.
    Outcome<Merged> merge(const std::string& other, const GoOn& = {});
    Outcome<std::vector<Dispute>> disputes() const;

    Outcome<Verification> verify(const GoOn& = {}) const;
    /// A dated verified copy; empty path: beside the book, rotated. Gives the path. Never overwrites a good one by a
    /// bad.
    Outcome<std::string> backUp(const std::string& path = {}, const GoOn& = {}) const;
    /// To be polled (250 ms): busy means none.
    Change poll();

private:
    struct Inner;
    explicit BenchBook(std::unique_ptr<Inner>);
    std::unique_ptr<Inner> m_inner;
};

/// Puts a backup in the place of a book (which must not be open), keeping the present file beside it.
Outcome<std::string> restoreBook(const std::string& path, const std::string& from, const GoOn& = {});
/// Row by row, what can still be read of a damaged book, into a new file (empty: beside it, dated); the damaged one is
/// only read. A flipped bit that leaves a possible value cannot be known. Refuses damagedBook where nothing is left.
Outcome<Rescued> rescueBook(const std::string& damaged, std::string& into, const GoOn& = {});

} // namespace hammerline
