#include "app/commands/import_export.h"

#include "app/commands/bench.h"
#include "app/commands/progress.h"
#include "app/console.h"
#include "core/sheet/export_reading.h"
#include "core/sheet/sheet.h"
#include "db/digest.h"
#include "db/files.h"
#include "db/incoming.h"
#include "ui/words/words.h"

#include <QCoreApplication>

#include <algorithm>
#include <filesystem>

namespace hammerline::app {
namespace {

using Incoming = BenchBook::Incoming;

constexpr double kRead = 0.5; // of the time, until the file is read and checked

/// The one of the file that --piano means.
Outcome<PianoRecord> chosen(const std::vector<PianoRecord>& pianos, const std::string& wanted) {
    const auto found = std::find_if(pianos.begin(), pianos.end(), [&](const PianoRecord& each) {
        return each.piano.name == wanted || (!each.uuid.empty() && each.uuid == wanted);
    });
    if (found != pianos.end()) return *found;
    if (pianos.size() == 1) return pianos.front();
    return refuse(RefusalCode::noSuchPiano, wanted);
}

Outcome<std::vector<Incoming>> targets(const BenchBook& book, ReadExport& read, const std::string& wanted) {
    std::vector<Incoming> incoming;
    if (!wanted.empty()) {
        auto record = chosen(read.pianos, wanted);
        if (!record) return tl::unexpected(record.error());
        const auto uuid = book.findPiano(wanted);
        if (!uuid && (uuid.error().code != RefusalCode::noSuchPiano || record->piano.name != wanted))
            return tl::unexpected(uuid.error());
        incoming.push_back({std::move(*record), uuid.value_or(std::string{})});
        return incoming;
    }
    const auto lines = book.pianos();
    if (!lines) return tl::unexpected(lines.error());
    return incomingTo(*lines, std::move(read.pianos));
}

std::size_t readingsOf(const std::vector<Incoming>& incoming) {
    std::size_t count = 0;
    for (const Incoming& each : incoming)
        for (const Pass& pass : each.record.passes)
            count += pass.readingCount();
    return count;
}

int report(const ReadExport& read, const std::vector<Incoming>& incoming, bool json) {
    Intake intake;
    for (const ExportQuestion& each : read.questions)
        intake.questions.push_back(each.question);
    const std::size_t taken = readingsOf(incoming);
    printJson(importJson(intake, 0, taken), json);
    say(QCoreApplication::translate("import", "Pianos: %1. Readings: %2. Questions: %3.")
            .arg(incoming.size())
            .arg(taken)
            .arg(read.questions.size()),
        json);
    if (read.proven > 0)
        say(inConsole(QT_TRANSLATE_N_NOOP("console", "Proven to be as exported: %n piano(s)."), read.proven), json);
    for (const ExportQuestion& each : read.questions)
        for (const Incoming& piano : incoming)
            if (piano.record.piano.name == each.piano)
                ask(QString::fromStdString(each.question.place.field) + QStringLiteral(": ") +
                        words::sentence(each.question, piano.record.piano),
                    json);
    return read.questions.empty() ? kDone : kOutside;
}

/// A large file that is no export at all is refused before it fills the memory.
Outcome<void> lookedOver(FilePieces& pieces) {
    constexpr std::int64_t kLarge = 4 << 20; // bytes
    if (!pieces.canRewind() || *pieces.size() < kLarge) return {};
    const auto head = pieces.peek();
    if (!head) return tl::unexpected(head.error());
    if (head->find("\"format\"") == head->npos)
        return refuse(RefusalCode::badJson, {}, "missing", {{}, 0, 0, "/format"});
    const auto sound = skimExport([&pieces] { return pieces.next(); });
    if (!sound) return sound;
    pieces.rewind();
    return {};
}

} // namespace

Refusal ofFile(Refusal refusal, const std::string& path) {
    if (refusal.place.line > 0 || !refusal.place.field.empty()) refusal.place.source = path;
    if (refusal.code == RefusalCode::emptyFile) refusal.offending = path;
    return refusal;
}

int importExport(const ImportRequest& request, FilePieces& pieces, bool json) {
    if (!request.pass.empty() || !request.map.empty() || !request.units.empty() || !request.decimal.empty())
        return refused({RefusalCode::usage,
                        {},
                        QCoreApplication::translate(
                            "import", "--pass, --map, --unit and --decimal are for tables; this file is an export.")
                            .toStdString(),
                        {}},
                       json);
    if (const auto sound = lookedOver(pieces); !sound) return refused(ofFile(sound.error(), request.file), json);
    const auto bytes = pieces.rest(256);
    if (!bytes) return refused(bytes.error(), json);
    Progress progress(json);
    const auto upTo = [&progress](double from, double to) {
        return [&progress, from, to](double share) { return progress.goesOn(from + (to - from) * share); };
    };
    auto read = readExport(*bytes, request.takeDoubtful, upTo(0, kRead), digestText);
    if (!read) return refused(ofFile(read.error(), request.file), json);
    std::vector<Incoming> incoming;
    const auto takeIn = [&](BenchBook& book) -> Outcome<void> {
        auto wanted = targets(book, *read, request.at.piano);
        if (!wanted) return tl::unexpected(wanted.error());
        incoming = std::move(*wanted);
        const auto act =
            book.importRecords(incoming, std::filesystem::path(request.file).filename().string(), upTo(kRead, 1));
        if (!act) return tl::unexpected(act.error());
        return {};
    };
    const bool there = liesThere(request.at.book);
    auto book = there ? openBook(request.at.book, json) : BenchBook::createFilled(request.at.book, takeIn);
    if (!book) return refused(ofFile(book.error(), request.file), json);
    if (there)
        if (const auto taken = takeIn(*book); !taken) return refused(ofFile(taken.error(), request.file), json);
    return report(*read, incoming, json);
}

} // namespace hammerline::app
