// The public face: every function is one guarded read or one act; the work stands in the stores.
#include "db/bench_book.h"

#include "db/backup.h"
#include "db/checks_at_end.h"
#include "db/disputes.h"
#include "db/headway.h"
#include "db/importing.h"
#include "db/loading.h"
#include "db/merging.h"
#include "db/opening.h"
#include "db/picture_store.h"
#include "db/polling.h"
#include "db/stores.h"
#include "db/verification.h"

#include <algorithm>
#include <cctype>

namespace hammerline {
namespace {

bool sameWithoutCase(std::string_view a, std::string_view b) {
    return std::equal(a.begin(), a.end(), b.begin(), b.end(),
                      [](unsigned char x, unsigned char y) { return std::tolower(x) == std::tolower(y); });
}

std::string chosenPiano(const std::vector<PianoLine>& pianos, std::string_view wanted) {
    const auto only = [&](auto matches) -> std::string {
        std::vector<std::string> found;
        for (const PianoLine& piano : pianos)
            if (matches(piano)) found.push_back(piano.uuid);
        if (found.size() > 1) fail(RefusalCode::severalPianos, std::string(wanted), std::to_string(found.size()));
        return found.empty() ? std::string() : found.front();
    };
    std::string uuid;
    if (wanted.empty()) uuid = only([](const PianoLine& piano) { return !isArchived(piano.identity); });
    if (wanted.empty() && uuid.empty()) uuid = only([](const PianoLine&) { return true; });
    if (uuid.empty()) uuid = only([&](const PianoLine& piano) { return piano.uuid == wanted; });
    if (uuid.empty()) uuid = only([&](const PianoLine& piano) { return piano.name == wanted; });
    if (uuid.empty()) uuid = only([&](const PianoLine& piano) { return sameWithoutCase(piano.name, wanted); });
    if (uuid.empty()) fail(RefusalCode::noSuchPiano, std::string(wanted));
    return uuid;
}

} // namespace

struct BenchBook::Inner {
    std::unique_ptr<OpenBook> book;
};

BenchBook::BenchBook(std::unique_ptr<Inner> inner) : m_inner(std::move(inner)) {}
BenchBook::BenchBook(BenchBook&&) noexcept = default;
BenchBook& BenchBook::operator=(BenchBook&&) noexcept = default;
BenchBook::~BenchBook() = default;

Outcome<BenchBook> BenchBook::create(const std::string& path, Writer writer) {
    return guarded(path, Doing::writing,
                   [&] { return BenchBook(std::make_unique<Inner>(Inner{createBook(path, std::move(writer))})); });
}

Outcome<BenchBook> BenchBook::createFilled(const std::string& path,
                                           const std::function<Outcome<void>(BenchBook&)>& fill, Writer writer) {
    return guarded(path, Doing::writing, [&] {
        return BenchBook(
            std::make_unique<Inner>(Inner{createBook(path, std::move(writer), [&](std::unique_ptr<OpenBook> made) {
                BenchBook book(std::make_unique<Inner>(Inner{std::move(made)}));
                if (const auto filled = fill(book); !filled) throw Refused{filled.error()};
            })}));
    });
}

Outcome<BenchBook> BenchBook::open(const std::string& path, OpenMode mode, Writer writer, const GoOn& goOn) {
    return guarded(path, Doing::reading, [&] {
        return BenchBook(std::make_unique<Inner>(Inner{openBook(path, mode, std::move(writer), Headway(goOn))}));
    });
}

const std::string& BenchBook::path() const {
    return m_inner->book->path;
}
bool BenchBook::readOnly() const {
    return m_inner->book->readOnly;
}
const std::string& BenchBook::whyReadOnly() const {
    return m_inner->book->whyReadOnly;
}
bool BenchBook::newer() const {
    return m_inner->book->newer;
}

Outcome<std::vector<PianoLine>> BenchBook::pianos() const {
    OpenBook& book = *m_inner->book;
    return reading(book, [&] { return pianoLines(book); });
}

Outcome<std::string> BenchBook::findPiano(std::string_view nameOrUuid) const {
    OpenBook& book = *m_inner->book;
    return reading(book, [&] { return chosenPiano(pianoNames(book), nameOrUuid); });
}

Outcome<PianoRecord> BenchBook::load(std::string_view pianoUuid) const {
    OpenBook& book = *m_inner->book;
    return reading(book, [&] { return loadPiano(book, pianoUuid); });
}

Outcome<std::vector<Lesson>> BenchBook::lessonsFor(const PianoRecord& record) const {
    constexpr std::size_t kMost = 40;
    OpenBook& book = *m_inner->book;
    const auto others = reading(book, [&] { return pianosThatTeach(book, record.piano.action, record.uuid, kMost); });
    if (!others) return tl::unexpected(others.error());
    std::vector<Lesson> lessons;
    for (const std::string& uuid : *others)
        if (const auto other = load(uuid))
            lessons.push_back(lessonOf(*other)); // one that cannot be read teaches nothing
    return lessons;
}

Outcome<int> BenchBook::findPass(std::string_view pianoUuid, std::string_view numberOrLabel) const {
    OpenBook& book = *m_inner->book;
    return reading(book, [&] { return passRow(book, pianoRow(book, pianoUuid), numberOrLabel).number; });
}

Outcome<std::string> BenchBook::addPiano(const Piano& piano, std::string_view specName,
                                         const std::optional<SpecSheet>& spec, const Identity& identity) {
    return writing(*m_inner->book, "setup", {},
                   [&](ActUnderWay& act) { return hammerline::addPiano(act, piano, specName, spec, identity); });
}

Outcome<ActId> BenchBook::changePiano(std::string_view uuid, const Piano& piano, std::string_view specName,
                                      const std::optional<SpecSheet>& spec, const Identity& changes) {
    return writing(*m_inner->book, "setup", {}, [&](ActUnderWay& act) {
        return hammerline::changePiano(act, pianoRow(act.book(), uuid), piano, specName, spec, changes);
    });
}

Outcome<int> BenchBook::addPass(std::string_view pianoUuid, const NewPass& pass) {
    return writing(*m_inner->book, "pass", {}, [&](ActUnderWay& act) {
        return hammerline::addPass(act, pianoRow(act.book(), pianoUuid), pass).number;
    });
}

namespace {
/// A write into one pass of a piano.
template <class F>
Outcome<ActId> inPass(OpenBook& book, std::string_view kind, std::string_view source, std::string_view piano, int pass,
                      F&& work) {
    return writing(book, kind, source, [&](ActUnderWay& act) {
        return work(act, passRow(act.book(), pianoRow(act.book(), piano), pass).id);
    });
}
/// A write that belongs to a piano.
template <class F>
Outcome<ActId> ofPiano(OpenBook& book, std::string_view kind, std::string_view piano, F&& work) {
    return writing(book, kind, {}, [&](ActUnderWay& act) { return work(act, pianoRow(act.book(), piano)); });
}
} // namespace

Outcome<ActId> BenchBook::setIdentity(std::string_view uuid, const Identity& changes) {
    return ofPiano(*m_inner->book, "setup", uuid,
                   [&](ActUnderWay& act, std::int64_t piano) { return hammerline::setIdentity(act, piano, changes); });
}

Outcome<ActId> BenchBook::addRemarks(std::string_view pianoUuid, std::span<const Remark> remarks) {
    return ofPiano(*m_inner->book, "survey", pianoUuid,
                   [&](ActUnderWay& act, std::int64_t piano) { return hammerline::addRemarks(act, piano, remarks); });
}

Outcome<ActId> BenchBook::addPhotos(std::string_view pianoUuid, std::span<const NewPhoto> photos) {
    return ofPiano(*m_inner->book, "survey", pianoUuid, [&](ActUnderWay& act, std::int64_t piano) {
        int item = 0;
        for (const NewPhoto& each : photos) {
            keepPicture(act.book(), each.picture);
            insertPhoto(act, piano, each.photo, {++item, {}, {}});
        }
        return act.idOrNone();
    });
}

Outcome<ActId> BenchBook::removePhoto(std::string_view pianoUuid, const Photo& photo) {
    return ofPiano(*m_inner->book, "survey", pianoUuid, [&](ActUnderWay& act, std::int64_t) {
        return hammerline::removePhoto(act, photo.saidIn, photo.item);
    });
}

Outcome<std::optional<Picture>> BenchBook::picture(const std::string& hash) const {
    OpenBook& book = *m_inner->book;
    return reading(book, [&] { return loadPicture(book, hash); });
}

Outcome<std::optional<std::string>> BenchBook::thumb(const std::string& hash) const {
    OpenBook& book = *m_inner->book;
    return reading(book, [&] { return loadThumb(book, hash); });
}

Outcome<void> BenchBook::loadPictures(PianoRecord& record) const {
    for (const Photo& photo : record.photos) {
        if (record.pictures.contains(photo.hash)) continue;
        auto found = picture(photo.hash);
        if (!found) return tl::unexpected(found.error());
        if (*found) record.pictures[photo.hash] = std::move(**found);
    }
    return {};
}

Outcome<ActId> BenchBook::removeRemark(std::string_view pianoUuid, const Remark& remark) {
    return ofPiano(*m_inner->book, "survey", pianoUuid, [&](ActUnderWay& act, std::int64_t) {
        return hammerline::removeRemark(act, remark.saidIn, remark.item);
    });
}

Outcome<ActId> BenchBook::decideAdvice(std::string_view pianoUuid, const Remark& remark, std::string_view accepted) {
    return ofPiano(*m_inner->book, "survey", pianoUuid, [&](ActUnderWay& act, std::int64_t) {
        return hammerline::decideAdvice(act, remark.saidIn, remark.item, accepted);
    });
}

Outcome<ActId> BenchBook::setReferences(std::string_view pianoUuid, int pass,
                                        const std::map<DimensionId, std::string>& references) {
    return inPass(*m_inner->book, "pass", {}, pianoUuid, pass,
                  [&](ActUnderWay& act, std::int64_t row) { return hammerline::setReferences(act, row, references); });
}

Outcome<ActId> BenchBook::store(std::string_view pianoUuid, int pass, std::span<const NewReading> readings,
                                std::string_view kind, std::string_view source) {
    return inPass(*m_inner->book, kind, source, pianoUuid, pass,
                  [&](ActUnderWay& act, std::int64_t row) { return storeReadings(act, row, readings); });
}

Outcome<ActId> BenchBook::importInto(std::string_view pianoUuid, std::string_view source,
                                     const std::function<Outcome<void>(Importing&)>& work, std::string_view kind) {
    return writing(*m_inner->book, kind, source, [&](ActUnderWay& act) {
        ChecksAtEnd checks(act.book());
        Importing importing(act, pianoRow(act.book(), pianoUuid));
        if (const auto done = work(importing); !done) throw Refused{done.error()};
        importing.finish();
        checks.ask();
        return act.idOrNone();
    });
}

Outcome<ActId> BenchBook::importRecords(std::span<const Incoming> pianos, std::string_view source, const GoOn& goOn) {
    return writing(*m_inner->book, "import", source,
                   [&](ActUnderWay& act) { return hammerline::importRecords(act, pianos, Headway(goOn)); });
}

Outcome<ActId> BenchBook::withdraw(std::string_view pianoUuid, int pass, Cell cell) {
    return inPass(*m_inner->book, "entry", {}, pianoUuid, pass,
                  [&](ActUnderWay& act, std::int64_t row) { return withdrawCell(act, row, cell); });
}

Outcome<ActId> BenchBook::markNotFitted(std::string_view pianoUuid, int pass, Cell cell) {
    return inPass(*m_inner->book, "entry", {}, pianoUuid, pass,
                  [&](ActUnderWay& act, std::int64_t row) { return markCellNotFitted(act, row, cell); });
}

Outcome<ActId> BenchBook::setOverride(std::string_view pianoUuid, const Override& set) {
    return setOverrides(pianoUuid, {&set, 1});
}

Outcome<ActId> BenchBook::setOverrides(std::string_view pianoUuid, std::span<const Override> all) {
    return ofPiano(*m_inner->book, "override", pianoUuid, [&](ActUnderWay& act, std::int64_t row) {
        ActId last = act.idOrNone();
        for (const Override& each : all)
            last = hammerline::setOverride(act, row, each);
        return last;
    });
}

Outcome<ActId> BenchBook::removeOverride(std::string_view pianoUuid, Cell cell) {
    return ofPiano(*m_inner->book, "override", pianoUuid,
                   [&](ActUnderWay& act, std::int64_t row) { return hammerline::removeOverride(act, row, cell); });
}

Outcome<ActId> BenchBook::addFindings(std::string_view pianoUuid, std::span<const Finding> findings) {
    return ofPiano(*m_inner->book, "survey", pianoUuid,
                   [&](ActUnderWay& act, std::int64_t row) { return hammerline::addFindings(act, row, findings); });
}

Outcome<ActId> BenchBook::addSymptom(std::string_view pianoUuid, const Symptom& symptom) {
    return ofPiano(*m_inner->book, "survey", pianoUuid,
                   [&](ActUnderWay& act, std::int64_t row) { return hammerline::addSymptom(act, row, symptom); });
}

Outcome<ActId> BenchBook::addSurvey(std::string_view pianoUuid, const Surveyed& told) {
    return ofPiano(*m_inner->book, "survey", pianoUuid, [&](ActUnderWay& act, std::int64_t row) {
        hammerline::addFindings(act, row, told.findings);
        for (const Symptom& symptom : told.symptoms)
            hammerline::addSymptom(act, row, symptom);
        for (const auto& [name, value] : told.preferences)
            hammerline::setPreference(act, row, name, value);
        return act.idOrNone();
    });
}

Outcome<ActId> BenchBook::tick(std::string_view pianoUuid, std::span<const Done> done,
                               const std::optional<FrozenPlan>& plan) {
    return ofPiano(*m_inner->book, "tick", pianoUuid,
                   [&](ActUnderWay& act, std::int64_t row) { return hammerline::tick(act, row, done, plan); });
}

Outcome<ActId> BenchBook::tickAnew(std::string_view pianoUuid, std::span<const Done> done,
                                   const std::optional<FrozenPlan>& plan) {
    return ofPiano(*m_inner->book, "tick", pianoUuid, [&](ActUnderWay& act, std::int64_t row) {
        for (const Done& each : done)
            hammerline::untick(act, each.plan, each.step);
        return hammerline::tick(act, row, done, plan);
    });
}

Outcome<ActId> BenchBook::untick(std::string_view pianoUuid, std::string_view planUuid,
                                 std::span<const std::string> steps) {
    return ofPiano(*m_inner->book, "tick", pianoUuid, [&](ActUnderWay& act, std::int64_t) {
        for (const std::string& step : steps)
            hammerline::untick(act, std::string(planUuid), step);
        return act.idOrNone();
    });
}

Outcome<ActId> BenchBook::sayWork(std::string_view pianoUuid, const WorkDone& work) {
    return ofPiano(*m_inner->book, "tick", pianoUuid, [&](ActUnderWay& act, std::int64_t row) {
        hammerline::sayWork(act, row, work.said);
        if (!work.mended.empty()) hammerline::addFindings(act, row, work.mended);
        if (!work.done.empty()) hammerline::tick(act, row, work.done, work.plan);
        return act.idOrNone();
    });
}

Outcome<ActId> BenchBook::freezePlan(std::string_view pianoUuid, const FrozenPlan& plan) {
    return ofPiano(*m_inner->book, "plan", pianoUuid,
                   [&](ActUnderWay& act, std::int64_t row) { return hammerline::freezePlan(act, row, plan); });
}

Outcome<ActId> BenchBook::setPreference(std::string_view pianoUuid, std::string_view key, std::string_view value) {
    return ofPiano(*m_inner->book, "preference", pianoUuid,
                   [&](ActUnderWay& act, std::int64_t row) { return hammerline::setPreference(act, row, key, value); });
}

Outcome<BenchBook::Undone> BenchBook::undo() {
    return writing(*m_inner->book, "undo", {}, [](ActUnderWay& act) { return hammerline::undo(act); });
}

Outcome<BenchBook::Undone> BenchBook::redo() {
    return writing(*m_inner->book, "redo", {}, [](ActUnderWay& act) { return hammerline::redo(act); });
}

Outcome<std::vector<Reading>> BenchBook::trail(std::string_view pianoUuid, int pass, Cell cell) const {
    OpenBook& book = *m_inner->book;
    return reading(book, [&] { return readingTrail(book, passRow(book, pianoRow(book, pianoUuid), pass).id, cell); });
}

Outcome<Merged> BenchBook::merge(const std::string& other, const GoOn& goOn) {
    return guarded(m_inner->book->path, Doing::writing,
                   [&] { return mergeBook(*m_inner->book, other, Headway(goOn)); });
}

Outcome<std::vector<Dispute>> BenchBook::disputes() const {
    OpenBook& book = *m_inner->book;
    return reading(book, [&] { return disputesIn(book); });
}

Outcome<Verification> BenchBook::verify(const GoOn& goOn) const {
    OpenBook& book = *m_inner->book;
    return reading(book, [&] { return verifyAll(book.db, kSchemaVersion, Headway(goOn)); });
}

Outcome<std::string> BenchBook::backUp(const std::string& path, const GoOn& goOn) const {
    return guarded(m_inner->book->path, Doing::writing,
                   [&] { return backUpBook(*m_inner->book, path, Headway(goOn)); });
}

Change BenchBook::poll() {
    return pollBook(*m_inner->book);
}

} // namespace hammerline
