// The acts of a workbench that are not readings, and what follows every act: the record is read again from the book.
#include "core/history/entry_pass.h"
#include "db/storing_intake.h"
#include "ui/workbench.h"

#include <QDir>
#include <QFileInfo>

namespace hammerline {

namespace {
constexpr std::size_t kReadingsBetweenLooks = 2000;

/// Progress lets time pass, and a book in the middle of an act is not to be read again.
class NoPolling {
public:
    explicit NoPolling(QTimer& poll) : m_poll(poll), m_was(poll.isActive()) { m_poll.stop(); }
    NoPolling(const NoPolling&) = delete;
    NoPolling& operator=(const NoPolling&) = delete;
    ~NoPolling() {
        if (m_was) m_poll.start();
    }

private:
    QTimer& m_poll;
    bool m_was;
};
} // namespace

template <class T>
Outcome<void> Workbench::settle(const Outcome<T>& written) {
    if (!written) {
        const auto code = written.error().code;
        if (code == RefusalCode::lockedBook || code == RefusalCode::diskFull || code == RefusalCode::replacedFile ||
            code == RefusalCode::damagedBook)
            setTrouble(written.error());
        return tl::unexpected(written.error());
    }
    if (m_trouble && m_trouble->code != RefusalCode::replacedFile) setTrouble({});
    const auto loaded = reload();
    justSaved();
    return loaded;
}
template Outcome<void> Workbench::settle(const Outcome<ActId>&);

Outcome<void> Workbench::needPiano() const {
    if (!m_book || !m_record) return refuse(RefusalCode::noSuchPiano);
    return needBook();
}

Outcome<void> Workbench::needBook() const {
    if (!m_book) return refuse(RefusalCode::noSuchPiano);
    if (m_trouble && m_trouble->code == RefusalCode::replacedFile) return tl::unexpected(*m_trouble);
    return {};
}

bool Workbench::joinsPass() const {
    const bool atLast = m_pass == static_cast<int>(m_record->passes.size());
    return pass() && (!atLast || passForEntry(*m_record));
}

Outcome<void> Workbench::needPass() {
    if (const auto ready = needPiano(); !ready) return ready;
    if (joinsPass()) return {};
    return addPass(nextPass(*m_record));
}

Outcome<void> Workbench::chooseAnother() {
    m_record.reset();
    m_pass = 0;
    m_plan.reset();
    forget();
    m_pianos.reset();
    Q_EMIT bookChanged();
    if (!pianos().empty()) return choosePiano(firstPiano().uuid);
    Q_EMIT pianoChanged();
    Q_EMIT passChanged();
    Q_EMIT recordChanged();
    return {};
}

Outcome<void> Workbench::reload() {
    if (!m_record) return chooseAnother();
    auto record = m_book->load(m_record->uuid);
    if (!record && record.error().code == RefusalCode::noSuchPiano) return chooseAnother();
    if (!record) return tl::unexpected(record.error());
    const bool otherKind = record->piano.action != m_record->piano.action;
    if (otherKind) m_lessons = m_book->lessonsFor(*record).value_or(std::vector<Lesson>{});
    teach(*record, m_lessons);
    const bool setUpChanged = record->piano != m_record->piano || record->specName != m_record->specName ||
                              record->spec != m_record->spec || record->overrides != m_record->overrides;
    const bool identityChanged = record->identity != m_record->identity;
    const bool passesChanged = record->passes.size() != m_record->passes.size();
    const bool plansChanged = record->plans != m_record->plans;
    m_record = std::move(*record);
    const int last = static_cast<int>(m_record->passes.size());
    m_pass = m_pass == 0 ? last : std::min(m_pass, last);
    if (setUpChanged) forget();
    m_views.clear();
    for (auto& [number, glance] : m_glances)
        glance.sure = false;
    if (m_note.value > m_record->piano.notes) m_note.value = m_record->piano.notes;
    if (plansChanged) choosePlan();
    if (identityChanged) pianosChanged(); // the list tells whose they are and leaves out what is put away
    if (setUpChanged) Q_EMIT pianoChanged();
    if (passesChanged) Q_EMIT passChanged();
    Q_EMIT recordChanged();
    return {};
}

void Workbench::justSaved() {
    m_savedAt = QDateTime::currentDateTime();
    Q_EMIT saved();
}

Refusal Workbench::troubleWith(RefusalCode code, std::string detail) const {
    return {code, {}, m_book->path(), std::move(detail)};
}

std::optional<Refusal> Workbench::standingTrouble() const {
    if (m_book->newer()) return troubleWith(RefusalCode::newerBook);
    if (m_book->readOnly()) return troubleWith(RefusalCode::readOnlyBook, m_book->whyReadOnly());
    return std::nullopt;
}

void Workbench::setTrouble(std::optional<Refusal> trouble) {
    if (trouble == m_trouble) return;
    m_trouble = std::move(trouble);
    Q_EMIT troubleChanged();
}

Outcome<BenchBook::Undone> Workbench::undo() {
    if (const auto ready = needBook(); !ready) return tl::unexpected(ready.error());
    auto undone = m_book->undo();
    if (!undone) return undone;
    (void)settle(Outcome<ActId>(undone->act));
    if (undone->kind == "import") pianosChanged();
    return undone;
}

Outcome<BenchBook::Undone> Workbench::redo() {
    if (const auto ready = needBook(); !ready) return tl::unexpected(ready.error());
    auto redone = m_book->redo();
    if (!redone) return redone;
    (void)settle(Outcome<ActId>(redone->act));
    if (redone->kind == "import") pianosChanged();
    return redone;
}

Outcome<void> Workbench::addPiano(const Piano& piano, const std::string& specName,
                                  const std::optional<SpecSheet>& sheet, const Identity& identity) {
    if (!m_book) return refuse(RefusalCode::cannotWrite);
    const auto uuid = m_book->addPiano(piano, specName, sheet, identity);
    if (!uuid) return tl::unexpected(uuid.error());
    m_pianos.reset();
    Q_EMIT bookChanged();
    const auto chosen = choosePiano(*uuid);
    justSaved();
    return chosen;
}

Outcome<void> Workbench::changePiano(const Piano& piano, const std::string& specName,
                                     const std::optional<SpecSheet>& sheet) {
    if (const auto ready = needPiano(); !ready) return ready;
    return settle(m_book->changePiano(m_record->uuid, piano, specName, sheet));
}

Outcome<void> Workbench::setIdentity(const Identity& changes) {
    if (const auto ready = needPiano(); !ready) return ready;
    return settle(m_book->setIdentity(m_record->uuid, changes));
}

Outcome<void> Workbench::addRemark(const Remark& remark) {
    if (const auto ready = needPiano(); !ready) return ready;
    return settle(m_book->addRemarks(m_record->uuid, std::span(&remark, 1)));
}

Outcome<void> Workbench::addRemarks(std::span<const Remark> remarks) {
    if (const auto ready = needPiano(); !ready) return ready;
    return settle(m_book->addRemarks(m_record->uuid, remarks));
}

Outcome<void> Workbench::decideAdvice(const Remark& remark, std::string_view accepted) {
    if (const auto ready = needPiano(); !ready) return ready;
    return settle(m_book->decideAdvice(m_record->uuid, remark, accepted));
}

Outcome<PianoRecord> Workbench::recordWithPictures() const {
    if (const auto ready = needPiano(); !ready) return tl::unexpected(ready.error());
    PianoRecord record = *m_record;
    if (const auto read = m_book->loadPictures(record); !read) return tl::unexpected(read.error());
    return record;
}

Outcome<void> Workbench::removeRemark(const Remark& remark) {
    if (const auto ready = needPiano(); !ready) return ready;
    return settle(m_book->removeRemark(m_record->uuid, remark));
}

Outcome<void> Workbench::addPhotos(std::span<const BenchBook::NewPhoto> photos) {
    if (const auto ready = needPiano(); !ready) return ready;
    return settle(m_book->addPhotos(m_record->uuid, photos));
}

Outcome<void> Workbench::removePhoto(const Photo& photo) {
    if (const auto ready = needPiano(); !ready) return ready;
    return settle(m_book->removePhoto(m_record->uuid, photo));
}

std::optional<Picture> Workbench::picture(const std::string& hash) const {
    if (!m_book) return std::nullopt;
    return m_book->picture(hash).value_or(std::nullopt);
}

std::optional<std::string> Workbench::thumb(const std::string& hash) const {
    if (!m_book) return std::nullopt;
    return m_book->thumb(hash).value_or(std::nullopt);
}

Outcome<void> Workbench::addPass(const NewPass& pass) {
    if (const auto ready = needPiano(); !ready) return ready;
    const auto number = m_book->addPass(m_record->uuid, pass);
    if (!number) return settle(Outcome<ActId>(tl::unexpected(number.error())));
    const auto loaded = reload();
    if (!loaded) return loaded;
    m_pass = *number;
    choosePlan();
    Q_EMIT passChanged();
    Q_EMIT recordChanged();
    justSaved();
    return {};
}

Outcome<void> Workbench::importAll(const Intake& intake, const std::string& source,
                                   const std::function<bool(std::size_t)>& goOn) {
    if (const auto ready = needPiano(); !ready) return ready;
    int number = m_pass;
    const auto write = [&](Importing& into) -> Outcome<void> {
        StoringIntake storing(into, *m_record, joinsPass() ? std::optional(m_pass) : std::nullopt, true);
        storing.expect(intake.passes);
        for (const Sound& each : intake.sound) {
            storing.take(each);
            const bool look = storing.taken() % kReadingsBetweenLooks == 0;
            if (look && goOn && !goOn(storing.taken())) return refuse(RefusalCode::cancelled);
        }
        Intake rest = intake;
        rest.sound.clear();
        rest.passes.clear();
        const auto finished = storing.finish(rest);
        if (storing.lastPass() > 0) number = storing.lastPass();
        return finished;
    };
    const auto act = [&] {
        const NoPolling still(m_poll);
        return m_book->importInto(m_record->uuid, source, write);
    }();
    if (act && number != m_pass) {
        if (const auto loaded = reload(); !loaded) return loaded;
        m_pass = number;
        choosePlan();
        Q_EMIT passChanged();
    }
    return settle(act);
}

void Workbench::pianosChanged() {
    m_pianos.reset();
    Q_EMIT bookChanged();
}

Outcome<void> Workbench::importRecords(std::span<const BenchBook::Incoming> incoming, const std::string& source,
                                       const GoOn& goOn) {
    if (const auto ready = needBook(); !ready) return ready;
    if (incoming.empty()) return {};
    const auto act = [&] {
        const NoPolling still(m_poll);
        return m_book->importRecords(incoming, source, goOn);
    }();
    const auto settled = settle(act);
    if (!act) return settled;
    pianosChanged();
    const auto& first = incoming.front();
    const std::string chosen = first.into.empty() ? first.record.piano.name : first.into;
    return m_record && m_record->uuid == chosen ? settled : choosePiano(chosen);
}

Outcome<void> Workbench::setReferences(const std::map<DimensionId, std::string>& references) {
    if (const auto ready = needPass(); !ready) return ready;
    return settle(m_book->setReferences(m_record->uuid, m_pass, references));
}

Outcome<void> Workbench::setOverride(const Override& override) {
    if (const auto ready = needPiano(); !ready) return ready;
    return settle(m_book->setOverride(m_record->uuid, override));
}

Outcome<void> Workbench::removeOverride(Cell cell) {
    if (const auto ready = needPiano(); !ready) return ready;
    return settle(m_book->removeOverride(m_record->uuid, cell));
}

Outcome<void> Workbench::addFindings(std::span<const Finding> findings) {
    if (const auto ready = needPiano(); !ready) return ready;
    return settle(m_book->addFindings(m_record->uuid, findings));
}

Outcome<void> Workbench::addSymptom(const Symptom& symptom) {
    if (const auto ready = needPiano(); !ready) return ready;
    return settle(m_book->addSymptom(m_record->uuid, symptom));
}

Outcome<void> Workbench::tick(std::span<const Done> done, const std::optional<FrozenPlan>& plan) {
    if (const auto ready = needPiano(); !ready) return ready;
    return settle(m_book->tick(m_record->uuid, done, plan));
}

Outcome<void> Workbench::tickAnew(std::span<const Done> done, const std::optional<FrozenPlan>& plan) {
    if (const auto ready = needPiano(); !ready) return ready;
    return settle(m_book->tickAnew(m_record->uuid, done, plan));
}

Outcome<void> Workbench::untick(std::span<const std::string> steps) {
    if (const auto ready = needPiano(); !ready) return ready;
    if (!m_plan || m_plan->uuid.empty()) return {};
    return settle(m_book->untick(m_record->uuid, m_plan->uuid, steps));
}

Outcome<void> Workbench::sayWork(const WorkDone& work) {
    if (const auto ready = needPiano(); !ready) return ready;
    return settle(m_book->sayWork(m_record->uuid, work));
}

Outcome<void> Workbench::freezePlan(const FrozenPlan& plan) {
    if (const auto ready = needPiano(); !ready) return ready;
    return settle(m_book->freezePlan(m_record->uuid, plan));
}

Outcome<void> Workbench::setPreference(std::string_view name, std::string_view value) {
    if (const auto ready = needPiano(); !ready) return ready;
    return settle(m_book->setPreference(m_record->uuid, name, value));
}

Outcome<QString> Workbench::backUp(const QString& path, const GoOn& goOn) {
    if (!m_book) return refuse(RefusalCode::cannotRead);
    const NoPolling still(m_poll);
    return m_book->backUp(QDir::toNativeSeparators(path).toStdString(), goOn).map([](const std::string& made) {
        return QString::fromStdString(made);
    });
}

Outcome<Merged> Workbench::merge(const QString& other, const GoOn& goOn) {
    if (!m_book) return refuse(RefusalCode::cannotRead);
    auto merged = [&] {
        const NoPolling still(m_poll);
        return m_book->merge(QDir::toNativeSeparators(other).toStdString(), goOn);
    }();
    if (!merged) {
        (void)settle(Outcome<ActId>(tl::unexpected(merged.error())));
        return merged;
    }
    m_pianos.reset();
    Q_EMIT bookChanged();
    if (m_record)
        (void)reload();
    else if (!pianos().empty())
        (void)choosePiano(firstPiano().uuid);
    justSaved();
    return merged;
}

Outcome<QString> Workbench::restore(const QString& path, const QString& from, const GoOn& goOn) {
    const auto kept = [&] {
        const NoPolling still(m_poll);
        return restoreBook(QDir::toNativeSeparators(path).toStdString(), QDir::toNativeSeparators(from).toStdString(),
                           goOn);
    }();
    if (!kept) return tl::unexpected(kept.error());
    const bool same = m_book && QFileInfo(this->path()) == QFileInfo(path);
    if (const auto opened = same ? reopen() : openBook(path); !opened) return tl::unexpected(opened.error());
    return QString::fromStdString(*kept);
}

Outcome<Verification> Workbench::verify(const GoOn& goOn) const {
    if (!m_book) return refuse(RefusalCode::cannotRead);
    return m_book->verify(goOn);
}

Outcome<std::vector<PianoRecord>> Workbench::allRecords() const {
    std::vector<PianoRecord> records;
    if (!m_book) return records;
    for (const PianoLine& line : pianos()) {
        auto record = m_book->load(line.uuid);
        if (!record) return tl::unexpected(record.error());
        if (const auto read = m_book->loadPictures(*record); !read) return tl::unexpected(read.error());
        records.push_back(std::move(*record));
    }
    return records;
}

void Workbench::look() {
    if (!m_book) return;
    switch (m_book->poll()) {
    case Change::none:
        if (m_trouble && m_trouble->code == RefusalCode::replacedFile) setTrouble(standingTrouble());
        break;
    case Change::dataChanged:
        m_pianos.reset();
        Q_EMIT bookChanged();
        if (m_record)
            (void)reload();
        else if (!pianos().empty())
            (void)choosePiano(firstPiano().uuid);
        break;
    case Change::fileReplaced:
        setTrouble(troubleWith(RefusalCode::replacedFile));
        break;
    case Change::fileGone:
        setTrouble(troubleWith(RefusalCode::replacedFile, "gone"));
        break;
    }
}

} // namespace hammerline
