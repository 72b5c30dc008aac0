// What the window works on: the open bench book, the chosen piano and pass, the current note and dimension, and the
// pass as it is looked at. Every edit goes through here, is written first and shown then; nothing else in ui touches
// the book.
#pragma once

#include "core/intake/intake.h"
#include "core/plan/plan.h"
#include "core/sheet/pass_view.h"
#include "db/bench_book.h"

#include <QDateTime>
#include <QObject>
#include <QTimer>

namespace hammerline {

class Workbench : public QObject {
    Q_OBJECT
public:
    explicit Workbench(Writer writer = {}, QObject* parent = nullptr);
    ~Workbench() override;

    // --- the book
    Outcome<void> createBook(const QString& path);
    /// Opens a book and chooses a piano: the one named, else the first.
    Outcome<void> openBook(const QString& path, const std::string& piano = {}, const GoOn& = {});
    /// The file that lies at the book's path now, with the same piano, pass and cell where it has them: what is being
    /// typed stays in its field.
    Outcome<void> reopen();
    bool hasBook() const { return m_book.has_value(); }
    /// False where the book is read-only, newer, or its file was replaced.
    bool canWrite() const;
    QString path() const;
    /// Read when first asked for: a shop's book may hold thousands.
    const std::vector<PianoLine>& pianos() const;
    /// A refusal that holds until solved (locked, read-only, replaced, full disk); none where all is well.
    const std::optional<Refusal>& trouble() const { return m_trouble; }
    QDateTime savedAt() const { return m_savedAt; }

    // --- what is chosen
    Outcome<void> choosePiano(const std::string& nameOrUuid);
    void choosePass(int number);
    /// Null where no piano is chosen.
    const PianoRecord* record() const { return m_record ? &*m_record : nullptr; }
    const Piano* piano() const { return m_record ? &m_record->piano : nullptr; }
    int passNumber() const { return m_pass; }
    const Pass* pass() const;
    NoteNumber note() const { return m_note; }
    DimensionId dimension() const { return m_dimension; }
    Cell cell() const { return {m_note, m_dimension}; }
    void setNote(NoteNumber);
    void setDimension(DimensionId);
    void setCell(Cell);

    // --- what is reckoned, when first asked for and kept until the record changes
    /// Null where there is no pass.
    const PassView* view() const { return view(m_pass); }
    const PassView* view(int pass) const;
    /// A reading of any pass, judged; null where that pass has none there.
    const Judged* judged(int pass, Cell) const;
    const SpecSheet& sheet() const;
    const Zones& zones() const;
    /// Dimensions shown for this piano, in catalogue order: the usual ones, those asked for, those with readings.
    std::vector<DimensionId> columns() const;
    Outcome<void> showColumn(DimensionId);
    /// The plan in force: the last one frozen for this pass, or the one that the Work station is thinking of.
    const Plan* plan() const { return m_plan ? &*m_plan : nullptr; }
    void setPlan(std::optional<Plan>);

    // --- entering
    EntryContext entryContext(DimensionId) const;
    Outcome<Entry> understand(std::string_view typed, Cell) const;
    /// Unit that a bare number has, as chosen for the dimension in this book.
    Unit unitOf(DimensionId) const;
    Outcome<void> setUnit(DimensionId, Unit);
    /// Stores a reading over the present one (trial 1, or the trial named in the reading); makes the pass "as found"
    /// where there is none. An equal reading is no act.
    Outcome<void> enter(Cell, Reading);
    /// A further trial of the same cell.
    Outcome<void> repeat(Cell, Reading);
    Outcome<void> enterAll(std::span<const NewReading>, std::string_view kind, const std::string& source = {});
    /// A file's sound readings and marks as one act: each into the pass it names, where it names one, else into the
    /// pass shown or the next one. `goOn` hears how many were written; false: nothing is kept (cancelled).
    Outcome<void> importAll(const Intake&, const std::string& source,
                            const std::function<bool(std::size_t)>& goOn = {});
    /// Whole pianos of an export as one act; the first of them is chosen then.
    Outcome<void> importRecords(std::span<const BenchBook::Incoming>, const std::string& source, const GoOn& = {});
    /// Whether a reading taken now joins the pass shown; else it begins one.
    bool joinsPass() const;
    Outcome<void> withdraw(Cell);
    Outcome<void> markNotFitted(Cell);
    Outcome<std::vector<Reading>> trail(Cell) const;

    // --- everything else a person does
    Outcome<BenchBook::Undone> undo();
    Outcome<BenchBook::Undone> redo();
    Outcome<void> addPiano(const Piano&, const std::string& specName, const std::optional<SpecSheet>& = {},
                           const Identity& = {});
    /// Fields of the record by key, `archived` among them; an empty value takes the field back.
    Outcome<void> setIdentity(const Identity& changes);
    Outcome<void> addRemark(const Remark&);
    /// Several as one act.
    Outcome<void> addRemarks(std::span<const Remark>);
    /// "yes", "no", or empty: not decided.
    Outcome<void> decideAdvice(const Remark&, std::string_view accepted);
    /// The record with its pictures read into it, for a page or an export.
    Outcome<PianoRecord> recordWithPictures() const;
    Outcome<void> addPhotos(std::span<const BenchBook::NewPhoto>);
    Outcome<void> removePhoto(const Photo&);
    /// Read from the book when looked at; none where it has no such picture.
    std::optional<Picture> picture(const std::string& hash) const;
    std::optional<std::string> thumb(const std::string& hash) const;
    Outcome<void> removeRemark(const Remark&);
    Outcome<void> changePiano(const Piano&, const std::string& specName, const std::optional<SpecSheet>& = {});
    Outcome<void> addPass(const NewPass&);
    Outcome<void> setReferences(const std::map<DimensionId, std::string>&);
    Outcome<void> setOverride(const Override&);
    Outcome<void> removeOverride(Cell);
    Outcome<void> addFindings(std::span<const Finding>);
    Outcome<void> addSymptom(const Symptom&);
    Outcome<void> tick(std::span<const Done>, const std::optional<FrozenPlan>& = {});
    /// In the place of what was said before of these steps.
    Outcome<void> tickAnew(std::span<const Done>, const std::optional<FrozenPlan>& = {});
    /// These steps of the plan in force were not done after all.
    Outcome<void> untick(std::span<const std::string> steps);
    Outcome<void> sayWork(const WorkDone&);
    Outcome<void> freezePlan(const FrozenPlan&);
    Outcome<void> setPreference(std::string_view key, std::string_view value);
    Outcome<QString> backUp(const QString& path = {}, const GoOn& = {});
    /// Takes in what another book knows.
    Outcome<Merged> merge(const QString& other, const GoOn& = {});
    /// Puts a backup in the place of a book, which is opened then; gives where the former file is kept.
    Outcome<QString> restore(const QString& path, const QString& from, const GoOn& = {});
    Outcome<Verification> verify(const GoOn& = {}) const;
    /// All pianos of the book, for export.
    Outcome<std::vector<PianoRecord>> allRecords() const;

    /// Looks whether another window or program wrote to the book; runs by itself every 250 ms.
    void look();

Q_SIGNALS:
    void bookChanged();      // another book or another list of pianos
    void pianoChanged();     // another piano is chosen, or its set-up changed
    void passChanged();      // another pass is chosen
    void recordChanged();    // anything of the record changed; comes after the two above
    void noteChanged();      // current note
    void dimensionChanged(); // current dimension
    void planChanged();
    void saved();
    void troubleChanged();

private:
    template <class T>
    Outcome<void> settle(const Outcome<T>&);
    bool wanted(const Dimension&) const;
    Outcome<void> needPiano() const;
    Outcome<void> needBook() const;
    void pianosChanged();
    Outcome<void> needPass();
    Outcome<void> reload();
    /// The first that is not put away, else the first.
    const PianoLine& firstPiano() const;
    /// The first piano of the book, or none: the one that was chosen is gone.
    Outcome<void> chooseAnother();
    void forget();
    void choosePlan();
    Refusal troubleWith(RefusalCode, std::string detail = {}) const;
    /// What holds for the book as it was opened: newer, read-only.
    std::optional<Refusal> standingTrouble() const;
    void setTrouble(std::optional<Refusal>);
    void justSaved();

    Writer m_writer;
    std::optional<BenchBook> m_book;
    std::vector<Lesson> m_lessons; // of the other pianos, gathered when this one was opened
    mutable std::optional<std::vector<PianoLine>> m_pianos;
    std::optional<PianoRecord> m_record;
    int m_pass = 0;
    NoteNumber m_note{1};
    DimensionId m_dimension{};
    /// The review alone of a pass that is only glanced at, with what it was reckoned from: it outlives a reading of
    /// another pass.
    struct Glance {
        Pass pass;
        std::vector<Cell> stale;
        Review review;
        bool sure = true; // nothing was written since
    };
    mutable std::map<int, PassView> m_views;
    mutable std::map<int, Glance> m_glances;
    mutable std::optional<SpecSheet> m_sheet;
    mutable std::optional<Zones> m_zones;
    std::optional<Plan> m_plan;
    std::optional<Refusal> m_trouble;
    QDateTime m_savedAt;
    QTimer m_poll;
};

} // namespace hammerline
