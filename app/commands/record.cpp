// archive, unarchive, remark: the piano's own record beside its readings.
#include "app/commands/about.h"
#include "app/commands/commands.h"
#include "app/console.h"
#include "ui/words/piano_record.h"
#include "ui/words/said.h"

#include <QString>
#include <nlohmann/json.hpp>

namespace hammerline::app {
namespace {

using words::utf8;
using Json = nlohmann::ordered_json;

Outcome<Remark> remarkOf(const RemarkRequest& request, const Bench& bench) {
    Remark remark;
    auto about = aboutOf({request.note, request.pass, request.part, request.fault, request.finding}, bench);
    if (!about) return tl::unexpected(about.error());
    remark.about = std::move(*about);
    auto text = readRemarkText(request.text);
    if (!text) return tl::unexpected(text.error());
    remark.text = std::move(*text);
    auto who = readLine("who", request.who, 200);
    if (!who) return tl::unexpected(who.error());
    remark.who = std::move(*who);
    auto day = dayOf(request.date);
    if (!day) return tl::unexpected(day.error());
    remark.on = std::move(*day);
    remark.kind = parseRemarkKind(request.kind).value_or(RemarkKind::remark);
    return remark;
}

const Remark* numbered(const PianoRecord& record, int number) {
    const bool there = number >= 1 && number <= static_cast<int>(record.remarks.size());
    return there ? &record.remarks[static_cast<std::size_t>(number - 1)] : nullptr;
}

Json remarkJson(const Remark& remark, int number) {
    return {{"number", number},
            {"kind", std::string(key(remark.kind))},
            {"pass", remark.about.pass ? Json(*remark.about.pass) : Json(nullptr)},
            {"note", remark.about.note ? Json(remark.about.note->value) : Json(nullptr)},
            {"part", remark.about.part},
            {"fault", remark.about.fault},
            {"text", remark.text},
            {"who", remark.who},
            {"on", remark.on},
            {"accepted", remark.accepted}};
}

int listRemarks(const PianoRecord& record, bool json) {
    Json out = {{"remarks", Json::array()}};
    int number = 0;
    for (const Remark& remark : record.remarks) {
        out["remarks"].push_back(remarkJson(remark, ++number));
        say(QStringLiteral("%1. %2").arg(number).arg(words::remarkSentence(remark, record.piano)), json);
    }
    printJson(out.dump(2, ' ', false, Json::error_handler_t::replace), json);
    if (record.remarks.empty()) ask(QStringLiteral("Nothing was remarked of this piano yet."), json);
    return kDone;
}

/// One that stands in the list already: taken back, accepted or declined.
int changeRemark(Bench& bench, const RemarkRequest& request, int number, bool json) {
    const Remark* remark = numbered(bench.record, number);
    if (!remark) return refused({RefusalCode::noSuchRemark, {}, std::to_string(number), {}}, json);
    const bool decides = request.remove == 0;
    if (decides && remark->kind != RemarkKind::advice)
        return refused({RefusalCode::usage, {}, "--accept and --decline belong to advice", {}}, json);
    const auto act = decides ? bench.book.decideAdvice(bench.record.uuid, *remark, request.accept != 0 ? "yes" : "no")
                             : bench.book.removeRemark(bench.record.uuid, *remark);
    if (!act) return refused(act.error(), json);
    say(decides ? QStringLiteral("Advice %1 decided.").arg(number)
                : QStringLiteral("Remark %1 taken back.").arg(number),
        json);
    return done(*act, json);
}

} // namespace

int run(const ArchiveRequest& request, bool json) {
    if (request.at.piano.empty())
        return refused({RefusalCode::usage, {}, "this needs --piano NAME: say which", {}}, json);
    auto bench = openBench(request.at, json);
    if (!bench) return refused(bench.error(), json);
    const auto act = bench->book.setIdentity(bench->record.uuid, {{std::string(kArchived), request.away ? "yes" : ""}});
    if (!act) return refused(act.error(), json);
    const QString name = QString::fromStdString(bench->record.piano.name);
    say(request.away ? QStringLiteral("%1 is put away; nothing of it is lost.").arg(name)
                     : QStringLiteral("%1 is back in the list.").arg(name),
        json);
    return done(*act, json);
}

int run(const RemarkRequest& request, bool json) {
    const int number = request.remove != 0 ? request.remove : request.accept != 0 ? request.accept : request.decline;
    const bool writes = number != 0 || !request.text.empty();
    auto bench = openBench(request.at, json, writes ? OpenMode::readWrite : OpenMode::readOnly);
    if (!bench) return refused(bench.error(), json);
    if (number != 0) return changeRemark(*bench, request, number, json);
    if (!writes) return listRemarks(bench->record, json);
    const auto remark = remarkOf(request, *bench);
    if (!remark) return refused(remark.error(), json);
    const auto act = bench->book.addRemarks(bench->record.uuid, std::vector{*remark});
    if (!act) return refused(act.error(), json);
    say(words::remarkSentence(*remark, bench->record.piano), json);
    return done(*act, json);
}

} // namespace hammerline::app
