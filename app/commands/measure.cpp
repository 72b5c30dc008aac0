// pass, enter, override: single readings into the book.
#include "app/commands/bench.h"
#include "app/commands/commands.h"
#include "app/commands/intake_report.h"
#include "app/console.h"
#include "core/history/entry_pass.h"
#include "core/intake/intake.h"
#include "core/pass/line_sag.h"
#include "core/reserve/settling.h"
#include "db/storing_intake.h"
#include "ui/words/words.h"

#include <QCoreApplication>
#include <QDate>
#include <QString>

namespace hammerline::app {
namespace {

Outcome<std::map<DimensionId, std::string>> referencesOf(const std::vector<std::string>& pairs) {
    std::map<DimensionId, std::string> references;
    for (const std::string& each : pairs) {
        const auto pair = pairOf(each);
        if (!pair) return tl::unexpected(pair.error());
        // weights=dampers-up speaks of both weights at once
        std::vector<std::string> names = {pair->first};
        if (pair->first == "weights") names = {"down-weight", "up-weight"};
        for (const std::string& name : names) {
            const auto id = findDimension(name);
            if (!id) return tl::unexpected(id.error());
            std::string known;
            bool found = false;
            for (const auto reference : row(*id).references) {
                found = found || reference == pair->second;
                known += (known.empty() ? "" : ", ") + std::string(reference);
            }
            if (!found) return refuse(RefusalCode::unknownReference, pair->second, known);
            references[*id] = pair->second;
        }
    }
    return references;
}

std::string usageOfDate(const std::string& option, const std::string& text) {
    return QCoreApplication::translate("usage", "%1 takes a day of the calendar as YYYY-MM-DD; %2 is none.")
        .arg(QString::fromStdString(option), QString::fromStdString(text))
        .toStdString();
}

/// The window then asks for what settles alone, with a column for each of its dimensions.
Outcome<void> askWhatSettles(BenchBook& book, const PianoRecord& record) {
    std::set<DimensionId> moved;
    for (const SettlingCell& each : settlingCells(record))
        moved.insert(each.cell.dimension);
    std::string columns;
    if (const auto chosen = record.preferences.find("columns"); chosen != record.preferences.end())
        columns = chosen->second;
    for (const DimensionId id : moved)
        if ((',' + columns + ',').find(',' + std::string(key(id)) + ',') == std::string::npos)
            columns += (columns.empty() ? "" : ",") + std::string(key(id));
    const auto shown = book.setPreference(record.uuid, "columns", columns);
    if (!shown) return tl::unexpected(shown.error());
    const auto order = book.setPreference(record.uuid, kEntryOrderPreference, kAskWhatSettles);
    if (!order) return tl::unexpected(order.error());
    return {};
}

} // namespace

int run(const PassRequest& request, bool json) {
    auto bench = openBench(request.at, json);
    if (!bench) return refused(bench.error(), json);
    NewPass fresh = nextPass(bench->record);
    if (!request.label.empty()) fresh.label = request.label;
    fresh.temperature = request.temperature;
    fresh.humidity = request.humidity;
    if (!request.stack.empty()) fresh.stackIn = request.stack == "in";
    if (!request.weights.empty()) fresh.weightsOn = request.weights == "on";
    if (!request.place.empty()) fresh.onBench = request.place == "bench";
    if (request.lineSag) fresh.lineSag = *request.lineSag;
    if (const auto sag = readLineSag(fresh.lineSag, bench->record.piano); !sag) return refused(sag.error(), json);
    if (request.humidity && (*request.humidity < 0 || *request.humidity > 100))
        return refused({RefusalCode::usage, {}, "--humidity takes 0 to 100", {}}, json);
    auto references = referencesOf(request.references);
    if (!references) return refused(references.error(), json);
    for (const auto& [dimension, reference] : *references)
        fresh.references[dimension] = reference;
    const auto height = fresh.references.find(dimension::keyHeight);
    const bool line = height == fresh.references.end() || height->second == "line";
    if (!line && request.lineSag && !request.lineSag->empty())
        return refused({RefusalCode::usage, {}, "--line-sag belongs to key heights read against a line", {}}, json);
    if (!line) fresh.lineSag.clear();
    if (request.settled && settlingOf(bench->record).empty())
        return refused({RefusalCode::usage,
                        {},
                        inConsole(QT_TRANSLATE_NOOP("console", "nothing new settles in this piano: the survey has no "
                                                               "new punchings, felts or straps that stand as mended"))
                            .toStdString(),
                        {}},
                       json);
    const auto made = bench->book.addPass(bench->record.uuid, fresh);
    if (!made) return refused(made.error(), json);
    if (request.settled)
        if (const auto asked = askWhatSettles(bench->book, bench->record); !asked) return refused(asked.error(), json);
    say(fresh.label.empty() ? QStringLiteral("Pass %1.").arg(*made)
                            : QStringLiteral("Pass %1, %2.").arg(*made).arg(QString::fromStdString(fresh.label)),
        json);
    return done(*made, json, ", \"pass\": " + std::to_string(*made));
}

int run(const EnterRequest& request, bool json) {
    auto bench = openBench(request.at, json);
    if (!bench) return refused(bench.error(), json);
    const Piano& piano = bench->record.piano;
    const auto note = parseNote(request.note, piano);
    if (!note) return refused(note.error(), json);
    const auto dimension = findDimension(request.dimension);
    if (!dimension) return refused(dimension.error(), json);
    const Cell cell{*note, *dimension};
    const bool perhapsFromBed = *dimension == dimension::keyHeight; // sharps have one too; readEntry knows
    const Refusal absent{
        RefusalCode::notFitted, {{}, 0, 0, request.dimension}, words::name(*dimension).toStdString(), {}};
    if (!perhapsFromBed && !fitted(*dimension, *note, piano)) return refused(absent, json);
    EntryContext context;
    context.piano = &piano;
    if (!request.unit.empty()) {
        const auto unit = parseUnit(request.unit);
        if (!unit) return refused(unit.error(), json);
        context.unit = *unit;
    }
    if (!request.pass.empty() || !bench->record.passes.empty()) {
        const auto pass = passOf(*bench, request.pass);
        if (!pass) return refused(pass.error(), json);
        context.pass = bench->record.pass(*pass);
    }
    auto entry = readEntry(request.text, cell, context);
    if (!entry) return refused(entry.error().code == RefusalCode::notFitted ? absent : entry.error(), json);

    const Measured* before = context.pass && request.repeat ? context.pass->at(cell) : nullptr;
    if (before && entry->sound)
        if (auto asked = askAboutRepeat(cell, *entry->sound, *before, piano)) {
            entry->question = std::move(asked);
            entry->sound.reset();
        }

    Intake intake;
    if (entry->sound) intake.sound.push_back({cell, *entry->sound, 0, {}});
    if (entry->question) intake.questions.push_back(*entry->question);
    if (entry->fromBed) intake.references[dimension::keyHeight] = "bed";
    if (request.takeDoubtful) takeDoubtful(intake, request.reason);
    if (intake.sound.empty()) return reportIntake(intake, piano, context.pass ? context.pass->number : 0, 0, json);

    std::optional<int> pass = passForEntry(bench->record);
    if (context.pass && !request.pass.empty()) pass = context.pass->number;
    if (request.repeat) intake.sound.front().reading.trial = 0;
    int number = 0;
    const auto store = [&](Importing& into) -> Outcome<void> {
        StoringIntake storing(into, bench->record, pass, false);
        const auto finished = storing.finish(intake);
        number = storing.lastPass();
        return finished;
    };
    const auto act = bench->book.importInto(bench->record.uuid, {}, store, "entry"); // with the pass it may begin
    if (!act) return refused(act.error(), json);
    return reportIntake(intake, piano, number, 1, json);
}

namespace {

Outcome<Zone> zoneTyped(const OverrideRequest& request, DimensionId id) {
    std::array<std::int64_t, 3> limits{};
    std::size_t i = 0;
    for (const std::string* text : {&request.low, &request.nominal, &request.high}) {
        const auto value = parseQuantity(*text, row(id).entryUnit);
        if (!value) return tl::unexpected(value.error());
        limits[i++] = value->count;
    }
    if (limits[0] > limits[1] || limits[1] > limits[2])
        return refuse(RefusalCode::badZone, request.low + ' ' + request.nominal + ' ' + request.high);
    return Zone{limits[0], limits[1], limits[2]};
}

/// One a note that has the dimension. Refuses where none has it.
Outcome<std::vector<Override>> overridesWanted(const OverrideRequest& request, const Piano& piano) {
    const auto notes = parseNotes(request.note, piano);
    if (!notes) return tl::unexpected(notes.error());
    const auto id = findDimension(request.dimension);
    if (!id) return tl::unexpected(id.error());
    const bool noSuchDay =
        !request.review.empty() && !QDate::fromString(QString::fromStdString(request.review), Qt::ISODate).isValid();
    if (noSuchDay) return refuse(RefusalCode::usage, usageOfDate("--review", request.review));
    if (request.reason.empty()) return refuse(RefusalCode::reasonMissing);
    const auto zone = zoneTyped(request, *id);
    if (!zone) return tl::unexpected(zone.error());
    std::vector<Override> out;
    for (const NoteNumber note : *notes)
        if (fitted(*id, note, piano))
            out.push_back({.cell = {note, *id}, .zone = *zone, .reason = request.reason, .reviewOn = request.review});
    if (out.empty()) return refuse(RefusalCode::notFitted, words::name(*id).toStdString());
    return out;
}

} // namespace

int run(const OverrideRequest& request, bool json) {
    auto bench = openBench(request.at, json);
    if (!bench) return refused(bench.error(), json);
    const auto wanted = overridesWanted(request, bench->record.piano);
    if (!wanted) return refused(wanted.error(), json);
    const auto act = bench->book.setOverrides(bench->record.uuid, *wanted);
    if (!act) return refused(act.error(), json);
    const auto count = static_cast<qsizetype>(wanted->size());
    say(inConsole(QT_TRANSLATE_NOOP("console", "Zone of its own for %1: %2."))
                .arg(QString::fromStdString(request.note), words::name(wanted->front().cell.dimension)) +
            (count > 1 ? u' ' + inConsole(QT_TRANSLATE_N_NOOP("console", "%n note(s)."), count) : QString()),
        json);
    return done(*act, json, ", \"notes\": " + std::to_string(count));
}

} // namespace hammerline::app
