// Whole pianos of an export into the book: everything with the place and time it had, in one act.
#include "db/import_state.h"
#include "db/loading.h"
#include "db/picture_store.h"

#include <algorithm>
#include <cmath>

namespace hammerline {
namespace {

constexpr std::size_t kBetweenLooks = 500; // times or readings: some milliseconds

Refused wrong(std::size_t piano, const std::string& field, std::string offending, std::string cause) {
    return {{RefusalCode::badJson,
             {{}, 0, 0, "/pianos/" + std::to_string(piano) + field},
             std::move(offending),
             std::move(cause)}};
}

/// Every time that something of the file came with, as acts in the order of their places.
class TimesOfFile {
public:
    void add(std::int64_t order, std::int64_t at) { m_times[{order, at}] = 0; }
    void addPass(const Pass& pass) { m_passes.push_back({pass.order, &pass, 0}); }

    void write(BroughtActs& brought, const Headway& headway) {
        std::stable_sort(m_passes.begin(), m_passes.end(),
                         [](const OfPass& a, const OfPass& b) { return a.order < b.order; });
        auto pass = m_passes.begin();
        const auto passesUpTo = [&](std::int64_t order) {
            for (; pass != m_passes.end() && pass->order <= order; ++pass)
                pass->act = brought.placed(pass->order, pass->pass->startedAt, "pass");
        };
        std::size_t done = 0;
        for (auto& [time, act] : m_times) {
            if (++done % kBetweenLooks == 0)
                headway.at(static_cast<double>(done) / static_cast<double>(m_times.size()));
            passesUpTo(time.first);
            act = brought.placed(time.first, time.second, "entry");
        }
        passesUpTo(INT64_MAX);
    }

    /// None where the file did not say.
    std::optional<ActId> at(std::int64_t order, std::int64_t at) const {
        const auto found = m_times.find({order, at});
        return found == m_times.end() || (order == 0 && at == 0) ? std::nullopt : std::optional(found->second);
    }
    ActId startOf(const Pass& pass) const {
        return std::find_if(m_passes.begin(), m_passes.end(), [&](const OfPass& each) { return each.pass == &pass; })
            ->act;
    }

private:
    struct OfPass {
        std::int64_t order{};
        const Pass* pass{};
        ActId act{};
    };
    std::map<std::pair<std::int64_t, std::int64_t>, ActId> m_times;
    std::vector<OfPass> m_passes;
};

void gatherTimes(const PianoRecord& record, TimesOfFile& times) {
    for (const Pass& pass : record.passes) {
        times.addPass(pass);
        for (const auto& [cell, measured] : pass.cells)
            for (const Reading& reading : measured.trials)
                times.add(reading.order, reading.at);
    }
    for (const Done& done : record.done)
        times.add(done.order, done.at);
    for (const Finding& finding : record.findings)
        times.add(finding.order, finding.at);
    for (const Symptom& symptom : record.symptoms)
        times.add(symptom.order, symptom.order);
    for (const WorkMark& mark : record.marks)
        times.add(mark.order, mark.at);
    for (const FrozenPlan& plan : record.plans)
        times.add(plan.order, plan.order);
    for (const Remark& remark : record.remarks)
        times.add(remark.order, remark.at);
    for (const Photo& photo : record.photos)
        times.add(photo.order, photo.at);
}

/// How many readings of the file were looked at.
struct ReadingsDone {
    Headway headway;
    std::size_t all = 1, done = 0;
    void next() {
        if (++done % kBetweenLooks == 0) headway.at(static_cast<double>(done) / static_cast<double>(all));
    }
};

class PianoImport {
public:
    PianoImport(ActUnderWay& act, BroughtActs& brought, const TimesOfFile& times, const PianoRecord& file,
                ReadingsDone& readings)
        : m_act(act), m_brought(brought), m_times(times), m_file(file), m_readings(readings) {}

    void into(const std::string& uuid, std::size_t index) {
        if (uuid.empty()) {
            m_piano = insertPiano(m_act, freeUuid("piano", m_file.uuid), m_file.piano, m_file.specName, m_file.spec);
        } else {
            m_here = loadPiano(m_act.book(), uuid);
            m_piano = pianoRow(m_act.book(), uuid);
            if (m_here->piano.action != m_file.piano.action)
                throw wrong(index, "/action", std::string(key(m_file.piano.action)), "other-action");
            if (m_here->piano.notes < m_file.piano.notes)
                throw wrong(index, "/notes", std::to_string(m_file.piano.notes), "other-action");
        }
        ImportState readings(m_act, m_piano, m_brought,
                             [this](const Reading& reading) { return m_times.at(reading.order, reading.at); });
        writePasses(readings);
        readings.finish();
        writePlans();
        writeDone();
        writeFindings();
        writeRemarks();
        writePhotos();
        writeRest();
    }

private:
    OpenBook& book() { return m_act.book(); }

    Uuid freeUuid(const std::string& table, const std::string& wanted) {
        const auto uuid = parseUuid(wanted);
        if (!uuid) return newUuid();
        Query find = book().query("SELECT 1 FROM " + table + " WHERE uuid = ?");
        find << *uuid;
        return find.step() ? newUuid() : *uuid;
    }

    /// A pass by its uuid; where the file gives none, by its label.
    const Pass* passHere(const Pass& pass) const {
        if (!m_here) return nullptr;
        for (const Pass& each : m_here->passes)
            if (pass.uuid.empty() ? each.label == pass.label : each.uuid == pass.uuid) return &each;
        return nullptr;
    }

    void writePasses(ImportState& readings) {
        for (const Pass& pass : m_file.passes) {
            int number = 0;
            if (const Pass* here = passHere(pass)) {
                number = here->number;
            } else {
                NewPass fresh;
                fresh.label = pass.label;
                fresh.temperature = pass.climate ? std::optional(pass.climate->celsius) : pass.temperature;
                fresh.humidity = pass.climate ? std::optional(pass.climate->humidity) : pass.humidity;
                fresh.stackIn = pass.stackIn;
                fresh.weightsOn = pass.weightsOn;
                fresh.lineSag = pass.lineSag;
                fresh.onBench = pass.onBench;
                fresh.references = pass.references;
                number = readings.add(fresh, freeUuid("pass", pass.uuid), {m_times.startOf(pass), pass.startedAt});
            }
            m_passes.push_back(readings.at(number).row.id);
            for (const auto& [cell, measured] : pass.cells)
                for (const Reading& reading : measured.trials) {
                    readings.put(number, {cell, reading});
                    m_readings.next();
                }
            for (const auto& [cell, measured] : pass.cells)
                if (measured.notFitted) readings.markNotFitted(number, cell);
        }
    }

    std::int64_t passRowOf(int numberInFile) const { return m_passes.at(static_cast<std::size_t>(numberInFile) - 1); }

    /// One that was taken back with its import is not there.
    std::optional<std::int64_t> planHere(const std::string& wanted) {
        const auto uuid = parseUuid(wanted);
        if (!uuid) return std::nullopt;
        Query find = book().query("SELECT id FROM plan WHERE uuid = ?");
        find << *uuid;
        if (!find.step()) return std::nullopt;
        const std::int64_t row = find.number(0);
        return holding(heads(book(), subject("plan_version"), {row})) ? std::optional(row) : std::nullopt;
    }

    void writePlans() {
        for (const FrozenPlan& plan : m_file.plans) {
            if (const auto row = planHere(plan.uuid)) {
                m_plans[plan.uuid] = *row;
                continue;
            }
            const Uuid wanted = freeUuid("plan", plan.uuid);
            Query insert = book().query("INSERT INTO plan (uuid, pass_id, act_id, options, content) VALUES (?, ?, ?, "
                                        "?, ?)");
            insert << wanted << passRowOf(plan.pass) << m_act.id() << plan.options << plan.content;
            insert.run();
            m_plans[plan.uuid] = book().db.getLastInsertRowid();
            Query version = book().query("INSERT INTO plan_version (plan_id, act_id, origin) VALUES (?, ?, ?)");
            version << m_plans[plan.uuid] << m_act.id() << m_times.at(plan.order, plan.order);
            version.run();
        }
    }

    bool doneHere(const Done& done) const {
        if (!m_here) return false;
        const auto said = [](const Done& each) {
            return std::tuple(each.operation, each.notes, each.amount, each.amounts, each.toAim, each.step, each.at,
                              each.aim);
        };
        return std::any_of(m_here->done.begin(), m_here->done.end(),
                           [&](const Done& each) { return said(each) == said(done); });
    }

    void writeDone() {
        for (const Done& done : m_file.done) {
            if (doneHere(done)) continue;
            DoneLine line;
            line.item = ++m_item;
            line.pass = passRowOf(done.pass);
            if (const auto plan = m_plans.find(done.plan); plan != m_plans.end()) line.plan = plan->second;
            line.origin = m_times.at(done.order, done.at);
            insertDone(m_act, done, line);
        }
    }

    /// What the book knows later, or just so, of the part at the note stays.
    bool findingHere(const Finding& finding) const {
        if (!m_here) return false;
        return std::any_of(m_here->findings.begin(), m_here->findings.end(), [&](const Finding& each) {
            return each.note == finding.note && each.part == finding.part && each.order >= finding.order;
        });
    }

    void writeFindings() {
        for (const Finding& finding : m_file.findings)
            if (!findingHere(finding)) insertFinding(m_act, m_piano, finding, m_times.at(finding.order, finding.at));
    }

    /// What it is about, with the number that the pass has in the book, and the pass's row.
    About aboutHere(About about, std::optional<std::int64_t>& passRow) const {
        if (!about.pass) return about;
        passRow = passRowOf(*about.pass);
        const Pass* here = passHere(*m_file.pass(*about.pass));
        about.pass = here ? std::optional(here->number) : std::nullopt;
        return about;
    }

    /// One whose picture neither the file nor the book has shows nothing and is left out.
    void writePhotos() {
        for (const Photo& photo : m_file.photos) {
            PhotoLine line;
            Photo wanted = photo;
            wanted.about = aboutHere(photo.about, line.pass);
            const bool here =
                m_here && std::ranges::any_of(m_here->photos, [&](const Photo& p) { return showTheSame(p, wanted); });
            if (here) continue;
            if (const auto found = m_file.pictures.find(photo.hash); found != m_file.pictures.end())
                keepPicture(book(), found->second);
            if (!hasPicture(book(), photo.hash)) continue;
            line.item = ++m_item;
            line.origin = m_times.at(photo.order, photo.at);
            insertPhoto(m_act, m_piano, photo, line);
        }
    }

    bool remarkHere(const Remark& remark, const About& about) const {
        if (!m_here) return false;
        Remark wanted = remark;
        wanted.about = about;
        return std::ranges::any_of(m_here->remarks, [&](const Remark& each) { return sayTheSame(each, wanted); });
    }

    /// Passes of the file may have other numbers in the book.
    void writeRemarks() {
        for (const Remark& remark : m_file.remarks) {
            RemarkLine line;
            const About about = aboutHere(remark.about, line.pass);
            if (remarkHere(remark, about)) continue;
            line.item = ++m_item;
            line.origin = m_times.at(remark.order, remark.at);
            insertRemark(m_act, m_piano, remark, line);
        }
    }

    /// What the book knows later, or just so, of the step at the note stays.
    bool markHere(const WorkMark& mark) const {
        return m_here && std::any_of(m_here->marks.begin(), m_here->marks.end(), [&](const WorkMark& each) {
                   return each.step == mark.step && each.note == mark.note && each.order >= mark.order;
               });
    }

    void writeRest() {
        for (const Override& each : m_file.overrides) {
            const bool here = m_here && std::any_of(m_here->overrides.begin(), m_here->overrides.end(),
                                                    [&](const Override& other) { return other.cell == each.cell; });
            if (!here) setOverride(m_act, m_piano, each);
        }
        for (const Symptom& each : m_file.symptoms) {
            const bool here =
                m_here && std::any_of(m_here->symptoms.begin(), m_here->symptoms.end(), [&](const Symptom& other) {
                    return other.key == each.key && other.notes == each.notes;
                });
            if (!here) insertSymptom(m_act, m_piano, each, m_times.at(each.order, each.order));
        }
        for (const WorkMark& each : m_file.marks)
            if (!markHere(each)) insertMark(m_act, m_piano, each, m_times.at(each.order, each.at));
        for (const auto& [name, value] : m_file.preferences)
            if (!m_here || !m_here->preferences.contains(name)) setPreference(m_act, m_piano, name, value);
        Identity unsaid;
        for (const auto& [name, value] : m_file.identity)
            if (!m_here || !m_here->identity.contains(name)) unsaid[name] = value;
        setIdentity(m_act, m_piano, unsaid);
    }

    ActUnderWay& m_act;
    BroughtActs& m_brought;
    const TimesOfFile& m_times;
    const PianoRecord& m_file;
    ReadingsDone& m_readings;
    std::optional<PianoRecord> m_here;
    std::int64_t m_piano = 0;
    std::vector<std::int64_t> m_passes; // rows, by number in the file
    std::map<std::string, std::int64_t> m_plans;
    int m_item = 0;

public:
    void itemsFrom(int item) { m_item = item; }
    int items() const { return m_item; }
};

} // namespace

ActId importRecords(ActUnderWay& act, std::span<const BenchBook::Incoming> pianos, const Headway& headway) {
    act.id(); // stands before what it brought
    headway.at(0);
    BroughtActs brought(act.book());
    TimesOfFile times;
    ReadingsDone readings{headway.part(0.2, 1)};
    for (const auto& each : pianos) {
        gatherTimes(each.record, times);
        for (const Pass& pass : each.record.passes)
            readings.all += pass.readingCount();
    }
    times.write(brought, headway.part(0, 0.2));
    int items = 0;
    for (std::size_t i = 0; i < pianos.size(); ++i) {
        PianoImport piano(act, brought, times, pianos[i].record, readings);
        piano.itemsFrom(items);
        piano.into(pianos[i].into, i);
        items = piano.items();
    }
    brought.finish();
    act.forgetIfEmpty();
    return act.idOrNone();
}

} // namespace hammerline
