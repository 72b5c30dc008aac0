// The book itself: undo and redo, list, export, verify; and the catalogues.
#include "app/commands/bench.h"
#include "app/commands/commands.h"
#include "app/commands/progress.h"
#include "app/console.h"
#include "app/text_table.h"
#include "core/sheet/sheet.h"
#include "db/digest.h"
#include "db/document.h"
#include "ui/words/keeping.h"
#include "ui/words/piano_record.h"
#include "ui/words/said.h"
#include "ui/words/words.h"

#include <QCoreApplication>
#include <QString>
#include <nlohmann/json.hpp>

namespace hammerline::app {
namespace {

using words::utf8;

using Json = nlohmann::ordered_json;

void print(const Json& object, bool json) {
    printJson(object.dump(2, ' ', false, Json::error_handler_t::replace), json);
}

QStringList textsOf(const PianoLine& line) {
    QStringList texts{utf8(line.name)};
    for (const std::string_view field : identityKeys())
        texts << utf8(identityValue(line.identity, field));
    return texts;
}

Json identityJson(const Identity& identity) {
    Json out = Json::object();
    for (const std::string_view field : identityKeys())
        if (const auto value = identityValue(identity, field); !value.empty())
            out[std::string(field)] = std::string(value);
    return out;
}

} // namespace

int run(const UndoRequest& request, bool json) {
    auto book = openBook(request.book, json);
    if (!book) return refused(book.error(), json);
    const auto undone = request.redo ? book->redo() : book->undo();
    if (!undone) return refused(undone.error(), json);
    say((request.redo ? QStringLiteral("Brought back: %1.") : QStringLiteral("Taken back: %1."))
            .arg(utf8(undone->kind)),
        json);
    return done(undone->act, json, ", \"kind\": \"" + undone->kind + "\"");
}

int run(const ListRequest& request, bool json) {
    const auto book = openBook(request.book, json, OpenMode::readOnly);
    if (!book) return refused(book.error(), json);
    const auto pianos = book->pianos();
    if (!pianos) return refused(pianos.error(), json);
    Json out = {{"pianos", Json::array()}};
    std::size_t putAway = 0;
    for (const PianoLine& line : *pianos) {
        const bool away = isArchived(line.identity);
        putAway += away ? 1 : 0;
        if (away && !request.archived) continue;
        if (!words::holdsWords(utf8(request.find), textsOf(line))) continue;
        Json passes = Json::array();
        QString head = inConsole(QT_TRANSLATE_N_NOOP("console", "%1: %2, %n note(s)"), line.notes)
                           .arg(utf8(line.name), words::actionName(line.action));
        if (away) head += inConsole(QT_TRANSLATE_NOOP("console", " (put away)"));
        say(head, json);
        TextTable table({{{}, true}, {{}, true}, {}}, 2);
        const QString whose = words::identityLine(line.identity);
        if (!whose.isEmpty()) say(QStringLiteral("  ") + whose, json);
        for (const auto& pass : line.passes) {
            passes.push_back({{"pass", pass.number}, {"label", pass.label}, {"readings", pass.readings}});
            table.add({inConsole(QT_TRANSLATE_NOOP("console", "pass %1")).arg(pass.number),
                       inConsole(QT_TRANSLATE_N_NOOP("console", "%n reading(s)"), pass.readings), utf8(pass.label)});
        }
        say(table, json);
        out["pianos"].push_back({{"name", line.name},
                                 {"action", std::string(key(line.action))},
                                 {"notes", line.notes},
                                 {"identity", identityJson(line.identity)},
                                 {"archived", away},
                                 {"passes", passes}});
    }
    const bool nothing = out["pianos"].empty();
    if (nothing && !request.find.empty()) ask(QStringLiteral("No piano holds these words."), json);
    if (putAway > 0 && !request.archived)
        ask(inConsole(QT_TRANSLATE_N_NOOP("console", "%n piano(s) put away, not shown: --archived."), putAway), json);
    print(out, json);
    return kDone;
}

int run(const ExportRequest& request, bool json) {
    const auto book = openBook(request.at.book, json, OpenMode::readOnly);
    if (!book) return refused(book.error(), json);
    Progress progress(json);
    std::vector<PianoRecord> records;
    if (request.at.piano.empty()) {
        const auto lines = book->pianos();
        if (!lines) return refused(lines.error(), json);
        for (const PianoLine& line : *lines) {
            if (!progress.goesOn(static_cast<double>(records.size()) / static_cast<double>(lines->size())))
                return refused({RefusalCode::cancelled, {}, {}, {}}, json);
            auto record = book->load(line.uuid);
            if (!record) return refused(record.error(), json);
            records.push_back(std::move(*record));
        }
    } else {
        const auto uuid = book->findPiano(request.at.piano);
        if (!uuid) return refused(uuid.error(), json);
        auto record = book->load(*uuid);
        if (!record) return refused(record.error(), json);
        records.push_back(std::move(*record));
    }
    for (const PianoRecord& record : records)
        if (!record.leftOut.empty()) ask(words::leftOutSentence(record), json);
    const bool toOutput = request.out == "-"; // --json says which of the two
    const bool asJson = toOutput ? json : request.out.ends_with(".json");
    if (!asJson && !toOutput && !request.out.ends_with(".csv"))
        return refused({RefusalCode::usage, {}, "--out takes a name that ends in .csv or .json", {}}, json);
    DigestText digest = digestText;
    if (asJson) {
        for (PianoRecord& record : records)
            if (const auto read = book->loadPictures(record); !read) return refused(read.error(), json);
        const auto verified = book->verify();
        if (!verified) return refused(verified.error(), json);
        if (!verified->sound) ask(words::unprovenExportSentence(), json);
        if (!verified->sound) digest = {};
    }
    if (const auto written = writeOut(request.out, asJson ? exportJson(records, digest) : exportCsv(records)); !written)
        return refused(written.error(), json);
    sayWritten(QStringLiteral("Written: %1").arg(utf8(request.out)), request.out, json);
    return toOutput ? kDone : done(0, json);
}

int run(const VerifyRequest& request, bool json) {
    const auto book = openBook(request.book, json, OpenMode::readOnly);
    if (!book) return refused(book.error(), json);
    const auto verified = book->verify();
    if (!verified) return refused(verified.error(), json);
    Json problems = Json::array();
    for (const Problem& each : verified->problems) {
        problems.push_back(each.what);
        ask(words::problemText(each.what), json);
    }
    print({{"sound", verified->sound}, {"problems", problems}}, json);
    say(words::soundSentence(verified->sound, verified->olderAt), json);
    return verified->sound ? kDone : kOutside;
}

int run(const IdsRequest&, bool json) {
    const std::string ids = idsJson();
    printJson(ids, json);
    if (json) return kDone;
    const Json all = Json::parse(ids);
    for (const auto& [group, rows] : all.items()) {
        QString line = utf8(group) + QStringLiteral(":");
        for (const auto& each : rows)
            line +=
                QLatin1Char(' ') + utf8(each.is_string() ? each.get<std::string>() : each.at("id").get<std::string>());
        say(line, false);
    }
    return kDone;
}

} // namespace hammerline::app
