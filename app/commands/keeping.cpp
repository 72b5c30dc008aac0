// What keeps a book: backup, restore, rescue, and merging what grew apart.
#include "ui/words/keeping.h"

#include "app/commands/bench.h"
#include "app/commands/commands.h"
#include "app/commands/progress.h"
#include "app/console.h"
#include "app/text_table.h"
#include "db/bench_book.h"
#include "ui/words/said.h"
#include "ui/words/words.h"

#include <QString>
#include <nlohmann/json.hpp>

namespace hammerline::app {
namespace {

using words::utf8;

using Json = nlohmann::ordered_json;

void printEither(const Json& object, bool json) {
    printJson(object.dump(2, ' ', false, Json::error_handler_t::replace), json);
}

/// Work on a whole book: on a large one it takes seconds. Ctrl-C stops it, and nothing has changed.
template <class F>
auto atLength(bool json, const F& work) {
    Progress progress(json);
    return work([&progress](double share) { return progress.goesOn(share); });
}

Json object(const UnprovenReading& reading) {
    return {{"piano", reading.piano},          {"pass", reading.pass > 0 ? Json(reading.pass) : Json()},
            {"note", reading.cell.note.value}, {"dimension", std::string(key(reading.cell.dimension))},
            {"trial", reading.trial},          {"text", reading.typed}};
}

TextTable unprovenTable(const Rescued& rescued) {
    TextTable table({{inConsole(QT_TRANSLATE_NOOP("console", "Not proven"))},
                     {inConsole(QT_TRANSLATE_NOOP("console", "Pass")), true},
                     {inConsole(QT_TRANSLATE_NOOP("console", "Note")), true},
                     {inConsole(QT_TRANSLATE_NOOP("console", "Dimension"))},
                     {inConsole(QT_TRANSLATE_NOOP("console", "Trial")), true},
                     {inConsole(QT_TRANSLATE_NOOP("console", "Typed"))}});
    for (const UnprovenReading& each : rescued.doubtful)
        table.add({QString::fromStdString(each.piano), QString::number(each.pass),
                   QString::number(each.cell.note.value), words::name(each.cell.dimension), QString::number(each.trial),
                   QString::fromStdString(each.typed)});
    return table;
}

int rescue(const RestoreRequest& request, bool json) {
    std::string into = request.from;
    const auto rescued = atLength(json, [&](const GoOn& goOn) { return rescueBook(request.book, into, goOn); });
    if (!rescued) return refused(rescued.error(), json);
    say(words::rescueSentence(*rescued, into), json);
    say(unprovenTable(*rescued), json);
    Json doubtful = Json::array();
    for (const UnprovenReading& each : rescued->doubtful)
        doubtful.push_back(object(each));
    printEither({{"done", true},
                 {"act", 0},
                 {"path", into},
                 {"rows", rescued->rows},
                 {"lost", rescued->lost},
                 {"proven", rescued->proven},
                 {"unproven", rescued->unproven},
                 {"unproven_readings", doubtful}},
                json);
    return rescued->lost == 0 ? kDone : kOutside;
}

Json object(const Dispute& dispute) {
    return {{"what", dispute.what},
            {"piano", dispute.piano},
            {"pass", dispute.pass > 0 ? Json(dispute.pass) : Json()},
            {"note", dispute.note > 0 ? Json(dispute.note) : Json()},
            {"dimension", dispute.dimension ? Json(std::string(key(*dispute.dimension))) : Json()},
            {"name", dispute.name},
            {"said", dispute.said}};
}

} // namespace

int run(const BackupRequest& request, bool json) {
    const auto book = openBook(request.book, json, OpenMode::readOnly);
    if (!book) return refused(book.error(), json);
    const auto path = atLength(json, [&](const GoOn& goOn) { return book->backUp(request.out, goOn); });
    if (!path) return refused(path.error(), json);
    say(QStringLiteral("Backed up and verified: %1").arg(utf8(*path)), json);
    printEither({{"done", true}, {"act", 0}, {"path", *path}}, json);
    return kDone;
}

int run(const RestoreRequest& request, bool json) {
    if (request.rescue) return rescue(request, json);
    if (request.from.empty())
        return refused({RefusalCode::usage, {}, "FROM is needed: the backup that is to take the place of the book", {}},
                       json);
    const auto kept = atLength(json, [&](const GoOn& goOn) { return restoreBook(request.book, request.from, goOn); });
    if (!kept) return refused(kept.error(), json);
    say(kept->empty() ? QStringLiteral("Restored.")
                      : QStringLiteral("Restored. The book that stood there is kept as %1").arg(utf8(*kept)),
        json);
    printEither({{"done", true}, {"act", 0}, {"kept", *kept}}, json);
    return kDone;
}

int run(const MergeRequest& request, bool json) {
    auto book = openBook(request.book, json);
    if (!book) return refused(book.error(), json);
    const auto merged = atLength(json, [&](const GoOn& goOn) { return book->merge(request.other, goOn); });
    if (!merged) return refused(merged.error(), json);
    Json conflicts = Json::array();
    say(words::mergeSentence(*merged, request.book), json);
    for (const Dispute& dispute : merged->disputes) {
        conflicts.push_back(object(dispute));
        ask(words::sentence(dispute), json);
    }
    printEither({{"done", true},
                 {"act", merged->act},
                 {"acts", merged->acts},
                 {"pianos", merged->pianos},
                 {"passes", merged->passes},
                 {"readings", merged->readings},
                 {"kept", merged->kept},
                 {"conflicts", conflicts}},
                json);
    return merged->disputes.empty() ? kDone : kOutside;
}

} // namespace hammerline::app
