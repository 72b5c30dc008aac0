#include "tests/db/bench.h"

#include "db/sha256.h"

#include <unistd.h>

#include <random>

namespace hammerline::bench {

namespace fs = std::filesystem;

Folder::Folder(const fs::path& where) {
    std::string pattern = (where / "hammerline-book-XXXXXX").string();
    REQUIRE(mkdtemp(pattern.data()) != nullptr);
    m_path = pattern;
}
Folder::Folder() : Folder(fs::temp_directory_path()) {}
Folder Folder::quick() {
    const fs::path memory = "/dev/shm";
    return Folder(access(memory.c_str(), W_OK) == 0 ? memory : fs::temp_directory_path());
}
Folder::~Folder() {
    std::error_code ignored;
    fs::remove_all(m_path, ignored);
}
std::vector<std::string> Folder::names() const {
    std::vector<std::string> found;
    for (const auto& entry : fs::directory_iterator(m_path))
        found.push_back(entry.path().filename().string());
    std::sort(found.begin(), found.end());
    return found;
}

Writer writer(std::int64_t start) {
    auto clock = std::make_shared<std::int64_t>(start);
    return {"test", [clock] { return *clock += 1'000'000; }};
}

Piano upright(const std::string& name) {
    Piano piano = ok(makePiano(ActionKind::upright));
    piano.name = name;
    return piano;
}

Cell cell(int note, DimensionId dimension) {
    return {NoteNumber{note}, dimension};
}

NewReading mm(int note, DimensionId dimension, double value, int trial) {
    Reading reading;
    reading.count = fromMm(value).nm;
    reading.typed = formatCount(reading.count, {Unit::mm, 2});
    reading.typedUnit = "mm";
    reading.trial = trial;
    return {cell(note, dimension), reading};
}

NewReading said(int note, DimensionId dimension, WordId word, const std::string& typed) {
    Reading reading;
    reading.word = word;
    reading.typed = typed;
    return {cell(note, dimension), reading};
}

Filled filledBook(const std::string& path, Writer who) {
    using namespace dimension;
    BenchBook book = ok(BenchBook::create(path, std::move(who)));
    const std::string piano = ok(book.addPiano(upright(), "upright"));
    NewPass first{"as found", 19.5, 41.0, false, false, {{keyHeight, "bed"}}};
    const int found = ok(book.addPass(piano, first));
    std::vector<NewReading> readings;
    for (int note = 1; note <= 88; ++note) {
        readings.push_back(mm(note, letOff, 2.5 + 0.01 * note));
        readings.push_back(mm(note, blow, 44.0 + 0.02 * note));
    }
    readings.push_back(said(12, strap, word::torn, "torn"));
    ok(book.store(piano, found, readings, "import", "as_found.csv"));
    ok(book.store(piano, found, std::vector{mm(33, letOff, 4.4)}));
    ok(book.store(piano, found, std::vector{mm(33, letOff, 4.2, 0)}));
    Finding torn;
    torn.note = NoteNumber{20};
    torn.part = "bridle-strap";
    torn.fault = "rotted";
    torn.remedy = "replace-set";
    ok(book.addFindings(piano, std::vector{torn}));
    ok(book.addSymptom(piano, {"double-strike", {1, 44}, 0}));
    ok(book.setOverride(piano,
                        {cell(88, blow), {fromMm(40).nm, fromMm(42).nm, fromMm(43).nm}, "short shank", "2027-01-01"}));
    Done turned;
    turned.operation = operation::letOffTurn;
    turned.notes = {NoteNumber{33}};
    turned.amount = -0.25;
    turned.step = "let-off-turn:33";
    turned.pass = found;
    FrozenPlan plan;
    plan.uuid = "6e0e7f5c-9b5e-4c7f-8f1e-0123456789ab";
    plan.pass = found;
    plan.options = R"({"intent":"touch-up"})";
    plan.content = R"({"steps":[]})";
    ok(book.tick(piano, std::vector{turned}, plan));
    WorkDone work;
    work.said.marks = {{.step = "stand-it-safe", .note = {}, .remark = "on its trolley", .seconds = 600},
                       {.step = "ease-keys", .note = NoteNumber{33}, .remark = {}}};
    ok(book.sayWork(piano, work));
    const int second = ok(book.addPass(piano, {"after let-off", {}, 44.0, true, true, {}, "steel 0.5 mm 10 N", true}));
    ok(book.store(piano, second, std::vector{mm(33, letOff, 3.0)}));
    ok(book.setPreference(piano, "unit.blow", "in"));
    return {std::move(book), piano};
}

std::string fullBook(const Folder& folder) {
    using namespace dimension;
    std::string path = folder.file("full.hammerline");
    Filled filled = filledBook(path);
    Piano described = upright();
    described.lastDamper = 66;
    described.stock = {fromMm(0.1), fromMm(0.5)};
    ok(filled.book.changePiano(filled.piano, described, "upright"));
    ok(filled.book.setPreference(filled.piano, "length-unit", "in"));
    ok(filled.book.setIdentity(filled.piano, {{"maker", "Invented"}, {"room", "parlour"}}));
    Remark remark;
    remark.about = {1, NoteNumber{20}, "bridle-strap", "rotted"};
    remark.text = "smells of moth";
    remark.on = "2026-11-25";
    ok(filled.book.addRemarks(filled.piano, std::vector{remark, remark}));
    BenchBook::NewPhoto photo;
    photo.picture = {sha256("a picture"), "jpeg", 4, 3, "a small picture", "a picture"};
    photo.photo.hash = photo.picture.hash;
    photo.photo.caption = "as found";
    photo.photo.on = "2026-11-25";
    auto another = photo;
    another.picture = {sha256("another picture"), "png", 5, 2, "another small one", "another picture"};
    another.photo.hash = another.picture.hash;
    another.photo.about = remark.about;
    ok(filled.book.addPhotos(filled.piano, std::vector{photo, another}));
    NewReading pair = mm(60, checking, 14.5);
    pair.reading.relation = Relation::between;
    pair.reading.upper = fromMm(16).nm;
    ok(filled.book.store(filled.piano, 1, std::vector{mm(3, letOff, 3.1), pair}));
    ok(filled.book.undo());
    ok(filled.book.redo());
    return path;
}

namespace {

void tell(std::ostream& out, const Measured& measured) {
    out << (measured.notFitted ? "not fitted " : "") << (measured.disputed ? "disputed " : "") << measured.superseded;
    for (const Reading& r : measured.trials)
        out << " [" << r.count << ' ' << r.upper << ' ' << static_cast<int>(r.relation) << ' '
            << (r.word ? r.word->row + 1 : 0) << ' ' << r.typed << ' ' << r.typedUnit << ' ' << r.taken << r.reason
            << ' ' << r.trial << ' ' << r.order << ' ' << r.at << ']';
    out << '\n';
}

void tell(std::ostream& out, const PianoRecord& record) {
    out << record.uuid << ' ' << record.piano.name << ' ' << record.piano.notes << ' ' << record.specName << '\n';
    for (const auto& [name, value] : attributePairs(record.piano))
        out << name << '=' << value << '\n';
    for (const Pass& pass : record.passes) {
        out << "pass " << pass.number << ' ' << pass.uuid << ' ' << pass.label << ' ' << pass.order << '\n';
        for (const auto& [dimension, reference] : pass.references)
            out << key(dimension) << '=' << reference << '\n';
        for (const auto& [cell, measured] : pass.cells)
            if (!measured.missing() || measured.notFitted) {
                out << cell.note.value << ' ' << key(cell.dimension) << ' ';
                tell(out, measured);
            }
    }
    for (const Override& each : record.overrides)
        out << "override " << each.cell.note.value << ' ' << key(each.cell.dimension) << ' ' << each.zone.nominal << ' '
            << each.reason << '\n';
    for (const Finding& each : record.findings)
        out << "finding " << (each.note ? each.note->value : 0) << ' ' << each.part << ' ' << each.fault << ' '
            << each.remedy << ' ' << key(each.state) << ' ' << each.amount << ' ' << each.order << '\n';
    for (const Symptom& each : record.symptoms)
        out << "symptom " << each.key << ' ' << each.notes.first << ' ' << each.order << '\n';
    for (const WorkMark& each : record.marks)
        out << "mark " << each.step << ' ' << (each.note ? each.note->value : 0) << ' ' << key(each.state) << ' '
            << each.remark << ' ' << each.seconds << ' ' << each.order << '\n';
    for (const FrozenPlan& each : record.plans)
        out << "plan " << each.uuid << ' ' << each.pass << ' ' << each.content << '\n';
    for (const Done& each : record.done)
        out << "done " << key(each.operation) << ' ' << each.pass << ' ' << each.plan << ' ' << each.step << ' '
            << each.amount.value_or(0) << ' ' << each.notes.size() << ' ' << each.order << '\n';
    for (const auto& [name, value] : record.identity)
        out << "identity " << name << '=' << value << '\n';
    for (const Remark& each : record.remarks)
        out << key(each.kind) << ' ' << each.about.pass.value_or(0) << ' ' << each.about.part << ' ' << each.text << ' '
            << each.accepted << ' ' << each.order << '\n';
    for (const auto& [name, value] : record.preferences)
        out << "preference " << name << '=' << value << '\n';
}

} // namespace

std::string contentOf(const BenchBook& book) {
    std::ostringstream out;
    for (const PianoLine& line : ok(book.pianos()))
        tell(out, ok(book.load(line.uuid)));
    return out.str();
}

std::string bytesOf(const std::string& path) {
    std::ifstream file(path, std::ios::binary);
    std::ostringstream bytes;
    bytes << file.rdbuf();
    return bytes.str();
}

bool isFoundSound(const std::string& path) {
    const auto book = BenchBook::open(path, OpenMode::readOnly);
    if (!book) return false;
    const auto verified = book->verify();
    return verified && verified->sound;
}

} // namespace hammerline::bench
