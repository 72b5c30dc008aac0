// experience and visits: what a book of several pianos says beyond each of them.
#include "app/commands/bench.h"
#include "app/commands/commands.h"
#include "app/console.h"
#include "core/experience/experience.h"
#include "core/sheet/reserve_json.h"
#include "ui/words/piano_record.h"
#include "ui/words/reserve.h"
#include "ui/words/said.h"
#include "ui/words/words.h"

#include <QDate>
#include <QString>
#include <nlohmann/json.hpp>

#include <algorithm>

namespace hammerline::app {
namespace {

using words::utf8;
using Json = nlohmann::ordered_json;

struct Due {
    std::string piano;
    Remark visit;
};

/// Visits that are due, of pianos that are not put away, the earliest first.
std::vector<Due> visitsDue(const std::vector<PianoRecord>& records) {
    std::vector<Due> all;
    for (const PianoRecord& record : records) {
        if (isArchived(record.identity)) continue;
        for (const Remark& remark : record.remarks)
            if (remark.kind == RemarkKind::visit) all.push_back({record.piano.name, remark});
    }
    std::ranges::stable_sort(all, {}, [](const Due& due) { return due.visit.on; });
    return all;
}

QString settlingDays(const SettlingVisits& visits, bool due) {
    if (visits.first.empty()) return inConsole(QT_TRANSLATE_NOOP("console", "settles; day not known"));
    const QString text = due ? inConsole(QT_TRANSLATE_NOOP("console", "settles; due since %1, settled about %2"))
                             : inConsole(QT_TRANSLATE_NOOP("console", "settles; read from %1, settled about %2"));
    return text.arg(utf8(visits.first), utf8(visits.last));
}

/// What settles in the pianos that are not put away: the forecast, and what to read then.
Json settlingNow(const std::vector<PianoRecord>& records, const std::string& today, bool json) {
    Json out = Json::array();
    for (const PianoRecord& record : records) {
        if (isArchived(record.identity)) continue;
        const auto settlings = settlingOf(record);
        if (settlings.empty()) continue;
        const SettlingVisits visits = settlingVisits(settlings);
        const bool due = !visits.first.empty() && visits.first <= today;
        out.push_back({{"piano", record.piano.name},
                       {"first_visit", visits.first},
                       {"settled_by", visits.last},
                       {"due", due},
                       {"parts", Json::parse(settlingsJson(settlings))},
                       {"read", Json::parse(settlingCellsJson(settlingCells(record)))}});
        say(QStringLiteral("%1 (%2)").arg(utf8(record.piano.name), settlingDays(visits, due)), json);
        for (const Settling& each : settlings)
            say(QStringLiteral("  %1 %2").arg(words::settlingSentence(each, record.piano), words::settlingSource(each)),
                json);
    }
    if (!out.empty())
        ask(inConsole(
                QT_TRANSLATE_NOOP("console", "\"pass --settled\" begins a pass that asks for just these readings.")),
            json);
    return out;
}

Outcome<std::vector<PianoRecord>> allOf(const BenchBook& book) {
    const auto lines = book.pianos();
    if (!lines) return tl::unexpected(lines.error());
    std::vector<PianoRecord> records;
    for (const PianoLine& line : *lines) {
        auto record = book.load(line.uuid);
        if (!record) return tl::unexpected(record.error());
        records.push_back(std::move(*record));
    }
    return records;
}

Json experienceJson(const Experience& each) {
    return {{"operation", std::string(key(each.operation))},
            {"keys", each.keys ? Json(*each.keys == KeyColour::sharp ? "sharps" : "naturals") : Json(nullptr)},
            {"dimension", std::string(key(each.dimension))},
            {"pianos", each.others.cases},
            {"per_unit", each.others.mean},
            {"between_pianos", each.others.between},
            {"low95", each.low95},
            {"high95", each.high95},
            {"catalogue", each.catalogue},
            {"first_guess", each.used}};
}

} // namespace

int run(const ExperienceRequest& request, bool json) {
    const auto bench = openBench(request.at, json, OpenMode::readOnly);
    if (!bench) return refused(bench.error(), json);
    const auto lessons = bench->book.lessonsFor(bench->record);
    if (!lessons) return refused(lessons.error(), json);
    const auto all = experienceFor(bench->record.piano, bench->record.uuid, *lessons);
    Json out = {{"experience", Json::array()}};
    for (const Experience& each : all) {
        out["experience"].push_back(experienceJson(each));
        say(QStringLiteral("%1: %2 %3 (%4 to %5), from %6 pianos built alike; customary %7")
                .arg(words::name(each.operation), words::number(each.others.mean, 2),
                     words::name(each.dimension).toLower(), words::number(each.low95, 2), words::number(each.high95, 2))
                .arg(each.others.cases)
                .arg(words::number(each.catalogue, 2)),
            json);
    }
    printJson(out.dump(2, ' ', false, Json::error_handler_t::replace), json);
    if (all.empty())
        ask(QStringLiteral("Fewer than three pianos built alike have taught anything yet; the customary figures hold."),
            json);
    else
        ask(QStringLiteral(
                "A first guess, in mm for one turn or mm; how much to turn waits for this piano's own trial."),
            json);
    return kDone;
}

int run(const VisitsRequest& request, bool json) {
    const auto book = openBook(request.book, json, OpenMode::readOnly);
    if (!book) return refused(book.error(), json);
    const auto records = allOf(*book);
    if (!records) return refused(records.error(), json);
    const std::string today = QDate::currentDate().toString(Qt::ISODate).toStdString();
    Json out = {{"visits", Json::array()}};
    bool overdue = false;
    for (const Due& due : visitsDue(*records)) {
        const bool late = due.visit.on < today;
        overdue = overdue || late;
        out["visits"].push_back(
            {{"piano", due.piano}, {"on", due.visit.on}, {"text", due.visit.text}, {"overdue", late}});
        say(QStringLiteral("%1  %2: %3%4")
                .arg(utf8(due.visit.on), utf8(due.piano), utf8(due.visit.text),
                     late ? QStringLiteral(" (overdue)") : QString()),
            json);
    }
    out["settling"] = settlingNow(*records, today, json);
    printJson(out.dump(2, ' ', false, Json::error_handler_t::replace), json);
    if (out["visits"].empty())
        ask(QStringLiteral("No visit is due. \"remark --kind visit --date YYYY-MM-DD\" enters one."), json);
    return overdue ? kOutside : kDone;
}

} // namespace hammerline::app
