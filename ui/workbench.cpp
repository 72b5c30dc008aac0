#include "ui/workbench.h"

#include "core/history/season_of.h"
#include "core/plan/plan_in_force.h"

#include <QDir>
#include <QFileInfo>

#include <algorithm>

namespace hammerline {

namespace {
constexpr int kPollMilliseconds = 250;
constexpr std::string_view kUnitPreference = "unit-";

const std::string kColumnsPreference = "columns";

/// Weights and the pressed sharp are measured on demand; all else that stands at every note is a column from the first.
bool usual(const Dimension& dimension) {
    return dimension.where == ReadWhere::everyNote && dimension.kind == Kind::length &&
           dimension.id != dimension::sharpProud && !dimension.wordsOnly;
}

bool sameReading(const Reading& a, const Reading& b) {
    return a.count == b.count && a.upper == b.upper && a.relation == b.relation && a.word == b.word &&
           a.typed == b.typed && a.typedUnit == b.typedUnit;
}
} // namespace

Workbench::Workbench(Writer writer, QObject* parent) : QObject(parent), m_writer(std::move(writer)) {
    m_poll.setInterval(kPollMilliseconds);
    connect(&m_poll, &QTimer::timeout, this, &Workbench::look);
}
Workbench::~Workbench() = default;

// --- the book

Outcome<void> Workbench::createBook(const QString& path) {
    auto made = BenchBook::create(QDir::toNativeSeparators(path).toStdString(), m_writer);
    if (!made) return tl::unexpected(made.error());
    m_book.reset();
    return openBook(path);
}

Outcome<void> Workbench::openBook(const QString& path, const std::string& piano, const GoOn& goOn) {
    auto opened = BenchBook::open(QDir::toNativeSeparators(path).toStdString(), OpenMode::readWrite, m_writer, goOn);
    if (!opened) return tl::unexpected(opened.error());
    m_book = std::move(*opened);
    m_pianos.reset();
    m_record.reset();
    m_pass = 0;
    m_plan.reset();
    m_savedAt = QFileInfo(path).lastModified();
    forget();
    setTrouble(standingTrouble());
    m_poll.start();
    Q_EMIT bookChanged();
    if (!piano.empty() && choosePiano(piano)) return {};
    if (!pianos().empty()) return choosePiano(firstPiano().uuid);
    Q_EMIT pianoChanged();
    Q_EMIT passChanged();
    Q_EMIT recordChanged();
    return {};
}

Outcome<void> Workbench::reopen() {
    if (!m_book) return refuse(RefusalCode::cannotRead);
    const std::string path = m_book->path(), piano = m_record ? m_record->uuid : std::string();
    auto opened = BenchBook::open(path, OpenMode::readWrite, m_writer);
    if (!opened) return tl::unexpected(opened.error());
    if (piano.empty() || !opened->load(piano)) return openBook(QString::fromStdString(path));
    m_book = std::move(*opened);
    m_pianos.reset();
    setTrouble(standingTrouble());
    const auto loaded = reload();
    Q_EMIT bookChanged();
    return loaded;
}

const PianoLine& Workbench::firstPiano() const {
    const auto found = std::ranges::find_if(pianos(), [](const PianoLine& line) { return !isArchived(line.identity); });
    return found == pianos().end() ? pianos().front() : *found;
}

const std::vector<PianoLine>& Workbench::pianos() const {
    if (!m_pianos) {
        auto listed = m_book ? m_book->pianos() : Outcome<std::vector<PianoLine>>{};
        m_pianos = listed ? std::move(*listed) : std::vector<PianoLine>{};
    }
    return *m_pianos;
}

bool Workbench::canWrite() const {
    return m_book && !m_book->readOnly() && !(m_trouble && m_trouble->code == RefusalCode::replacedFile);
}
QString Workbench::path() const {
    return m_book ? QString::fromStdString(m_book->path()) : QString();
}

Outcome<void> Workbench::choosePiano(const std::string& nameOrUuid) {
    if (!m_book) return refuse(RefusalCode::noSuchPiano, nameOrUuid);
    // by its uuid at once: looking for a name goes through every piano of a shop's book
    auto record = m_book->load(nameOrUuid);
    if (!record && record.error().code == RefusalCode::noSuchPiano) {
        const auto uuid = m_book->findPiano(nameOrUuid);
        if (!uuid) return tl::unexpected(uuid.error());
        record = m_book->load(*uuid);
    }
    if (!record) return tl::unexpected(record.error());
    m_record = std::move(*record);
    m_lessons = m_book->lessonsFor(*m_record).value_or(std::vector<Lesson>{});
    teach(*m_record, m_lessons);
    m_pass = static_cast<int>(m_record->passes.size());
    m_note = NoteNumber{1};
    forget();
    const auto shown = columns();
    m_dimension = shown.empty() ? DimensionId{} : shown.front();
    choosePlan();
    Q_EMIT pianoChanged();
    Q_EMIT passChanged();
    Q_EMIT recordChanged();
    Q_EMIT noteChanged();
    Q_EMIT dimensionChanged();
    return {};
}

void Workbench::choosePass(int number) {
    if (!m_record || !m_record->pass(number) || number == m_pass) return;
    m_pass = number;
    choosePlan();
    Q_EMIT passChanged();
    Q_EMIT recordChanged();
}

const Pass* Workbench::pass() const {
    return m_record ? m_record->pass(m_pass) : nullptr;
}

void Workbench::setNote(NoteNumber note) {
    if (!m_record || !m_record->piano.contains(note) || note == m_note) return;
    m_note = note;
    Q_EMIT noteChanged();
}

void Workbench::setDimension(DimensionId dimension) {
    if (dimension == m_dimension) return;
    m_dimension = dimension;
    Q_EMIT dimensionChanged();
}

void Workbench::setCell(Cell cell) {
    const bool moves = m_record && m_record->piano.contains(cell.note) && cell.note != m_note;
    const bool turns = cell.dimension != m_dimension;
    // both first, both told then: nobody sees the new dimension at the old note
    m_dimension = cell.dimension;
    if (moves) m_note = cell.note;
    if (turns) Q_EMIT dimensionChanged();
    if (moves) Q_EMIT noteChanged();
}

// --- what is reckoned

const PassView* Workbench::view(int number) const {
    if (!m_record || !m_record->pass(number)) return nullptr;
    const auto known = m_views.find(number);
    if (known != m_views.end()) return &known->second;
    auto made = viewPass(*m_record, number, Rule::plain, sheet());
    return made ? &m_views.emplace(number, std::move(*made)).first->second : nullptr;
}

const Judged* Workbench::judged(int number, Cell cell) const {
    if (const auto known = m_views.find(number); known != m_views.end()) return known->second.review.at(cell);
    const Pass* pass = m_record ? m_record->pass(number) : nullptr;
    if (!pass) return nullptr;
    auto& glance = m_glances[number];
    if (!glance.sure || glance.pass.number != number) {
        auto stale = staleCells(*m_record, *pass);
        if (glance.pass != *pass || glance.stale != stale) {
            glance.review =
                review(m_record->piano, withRelativeHeights(m_record->piano, *pass), zones(), Rule::plain, stale);
            glance.pass = *pass;
            glance.stale = std::move(stale);
        }
        glance.sure = true;
    }
    return glance.review.at(cell);
}

const SpecSheet& Workbench::sheet() const {
    if (!m_sheet) m_sheet = m_record ? sheetOf(*m_record) : SpecSheet{};
    return *m_sheet;
}

const Zones& Workbench::zones() const {
    if (!m_zones)
        m_zones.emplace(m_record ? sheetInSeason(sheet(), *m_record, static_cast<int>(m_record->passes.size()))
                                 : sheet(),
                        m_record ? m_record->piano : Piano{}, m_record ? m_record->overrides : std::vector<Override>{});
    return *m_zones;
}

std::vector<DimensionId> Workbench::columns() const {
    std::vector<DimensionId> shown;
    if (!m_record) return shown;
    for (const Dimension& dimension : dimensions())
        if (fittedAnywhere(dimension.id, m_record->piano) && (usual(dimension) || wanted(dimension)))
            shown.push_back(dimension.id);
    return shown;
}

bool Workbench::wanted(const Dimension& dimension) const {
    for (const Pass& pass : m_record->passes)
        for (const auto& [cell, measured] : pass.cells)
            if (cell.dimension == dimension.id && !measured.missing()) return true;
    const auto chosen = m_record->preferences.find(kColumnsPreference);
    return chosen != m_record->preferences.end() &&
           (',' + chosen->second + ',').find(',' + std::string(dimension.key) + ',') != std::string::npos;
}

Outcome<void> Workbench::showColumn(DimensionId id) {
    if (const auto ready = needPiano(); !ready) return ready;
    if (wanted(row(id))) return {};
    const auto chosen = m_record->preferences.find(kColumnsPreference);
    const std::string before = chosen == m_record->preferences.end() ? std::string() : chosen->second + ',';
    return setPreference(kColumnsPreference, before + std::string(key(id)));
}

void Workbench::setPlan(std::optional<Plan> plan) {
    m_plan = std::move(plan);
    Q_EMIT planChanged();
}

void Workbench::choosePlan() {
    std::optional<Plan> found;
    if (m_record)
        for (const FrozenPlan& frozen : m_record->plans) {
            if (frozen.pass != m_pass && frozen.pass != m_pass - 1) continue;
            if (auto plan = thaw(frozen, m_record->piano)) found = std::move(*plan);
        }
    setPlan(std::move(found));
}

void Workbench::forget() {
    m_views.clear();
    m_glances.clear();
    m_sheet.reset();
    m_zones.reset();
}

// --- entering

Unit Workbench::unitOf(DimensionId dimension) const {
    if (m_record) {
        const auto chosen = m_record->preferences.find(std::string(kUnitPreference) + std::string(key(dimension)));
        if (chosen != m_record->preferences.end())
            if (const auto unit = parseUnit(chosen->second); unit && kindOf(*unit) == row(dimension).kind) return *unit;
    }
    return row(dimension).entryUnit;
}

Outcome<void> Workbench::setUnit(DimensionId dimension, Unit unit) {
    return setPreference(std::string(kUnitPreference) + std::string(key(dimension)), key(unit));
}

EntryContext Workbench::entryContext(DimensionId dimension) const {
    EntryContext context;
    context.piano = piano();
    context.pass = pass();
    context.unit = unitOf(dimension);
    return context;
}

Outcome<Entry> Workbench::understand(std::string_view typed, Cell cell) const {
    if (!m_record) return refuse(RefusalCode::noSuchPiano);
    return readEntry(typed, cell, entryContext(cell.dimension));
}

Outcome<void> Workbench::enter(Cell cell, Reading reading) {
    if (reading.trial < 1) reading.trial = 1;
    if (const Pass* now = pass())
        if (const Measured* measured = now->at(cell); measured && !measured->notFitted)
            for (const Reading& present : measured->trials)
                if (present.trial == reading.trial && sameReading(present, reading)) return {};
    const NewReading one{cell, std::move(reading)};
    return enterAll({&one, 1}, "entry");
}

Outcome<void> Workbench::repeat(Cell cell, Reading reading) {
    reading.trial = 0;
    const NewReading one{cell, std::move(reading)};
    return enterAll({&one, 1}, "entry");
}

Outcome<void> Workbench::enterAll(std::span<const NewReading> readings, std::string_view kind,
                                  const std::string& source) {
    if (const auto ready = needPass(); !ready) return ready;
    // heights measured from the key bed make the bed the pass's reference (computation 2)
    const bool fromBed = std::any_of(readings.begin(), readings.end(), [](const NewReading& each) {
        return !each.reading.word && isFromBed(each.cell.dimension, each.reading.count);
    });
    if (fromBed && pass()->referenceOf(dimension::keyHeight) != "bed") {
        const auto set = m_book->setReferences(m_record->uuid, m_pass, {{dimension::keyHeight, "bed"}});
        if (!set) return settle(set);
    }
    return settle(m_book->store(m_record->uuid, m_pass, readings, kind, source));
}

Outcome<void> Workbench::withdraw(Cell cell) {
    if (const auto ready = needPiano(); !ready) return ready;
    if (!pass()) return refuse(RefusalCode::noSuchPass);
    return settle(m_book->withdraw(m_record->uuid, m_pass, cell));
}

Outcome<void> Workbench::markNotFitted(Cell cell) {
    if (const auto ready = needPass(); !ready) return ready;
    return settle(m_book->markNotFitted(m_record->uuid, m_pass, cell));
}

Outcome<std::vector<Reading>> Workbench::trail(Cell cell) const {
    if (!m_record || !pass()) return std::vector<Reading>{};
    return m_book->trail(m_record->uuid, m_pass, cell);
}

} // namespace hammerline
