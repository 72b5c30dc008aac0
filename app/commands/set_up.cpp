// new and piano: the set-up of a piano, and its later versions.
#include "app/commands/bench.h"
#include "app/commands/commands.h"
#include "app/console.h"
#include "db/files.h"

#include <QCoreApplication>

#include <filesystem>

namespace hammerline::app {
namespace {

Outcome<void> set(Piano& piano, std::string_view name, const std::optional<std::string>& value) {
    if (!value) return {};
    return setAttribute(piano, name, *value);
}

Outcome<void> applySetUp(Piano& piano, const SetUp& wanted) {
    if (wanted.player && !piano.hasPlayer()) piano.player = PlayerStack::above;
    for (const std::string& each : wanted.attributes) {
        const auto pair = pairOf(each);
        if (!pair) return tl::unexpected(pair.error());
        if (auto done = setAttribute(piano, pair->first, pair->second); !done) return done;
    }
    if (auto done = set(piano, "sections", wanted.sections); !done) return done;
    if (wanted.lastDamper) return setAttribute(piano, "last-damper", std::to_string(*wanted.lastDamper));
    return {};
}

Outcome<Piano> madeAnew(const SetUp& wanted, ActionKind kind, int notes, int lowest) {
    if (wanted.action) {
        const auto read = parseActionKind(*wanted.action);
        if (!read) return tl::unexpected(read.error());
        kind = *read;
    }
    if (wanted.lowest) {
        const auto read = parseLowest(*wanted.lowest);
        if (!read) return tl::unexpected(read.error());
        lowest = *read;
    }
    return makePiano(kind, wanted.notes.value_or(notes), lowest);
}

Outcome<Identity> identityWanted(const SetUp& wanted) {
    Identity all;
    for (const auto& [field, typed] : wanted.identity) {
        if (!typed) continue;
        auto read = readIdentity(field, *typed);
        if (!read) return tl::unexpected(read.error());
        all[field] = std::move(*read);
    }
    return all;
}

bool changesSetUp(const SetUp& wanted) {
    return wanted.action || wanted.lowest || wanted.sections || wanted.spec || wanted.rename || wanted.notes ||
           wanted.lastDamper || wanted.player || !wanted.attributes.empty();
}

struct Sheet {
    std::string name;
    std::optional<SpecSheet> own; // none for a built-in one
};

Outcome<Sheet> sheetWanted(const SetUp& wanted, ActionKind kind) {
    if (!wanted.spec) return Sheet{std::string(defaultSheet(kind)), {}};
    auto sheet = sheetFrom(*wanted.spec);
    if (!sheet) return tl::unexpected(sheet.error());
    if (builtInSheet(*wanted.spec)) return Sheet{*wanted.spec, {}};
    return Sheet{sheet->name, std::move(*sheet)};
}

} // namespace

int run(const NewRequest& request, bool json) {
    if (request.at.piano.empty()) return refused({RefusalCode::usage, {}, "new needs --piano NAME", {}}, json);
    if (!request.setUp.action)
        return refused({RefusalCode::usage, {}, "new needs --action upright, drop or grand", {}}, json);
    auto piano = madeAnew(request.setUp, ActionKind::upright, 88, 21);
    if (!piano) return refused(piano.error(), json);
    piano->name = request.at.piano;
    if (auto set = applySetUp(*piano, request.setUp); !set) return refused(set.error(), json);
    const auto sheet = sheetWanted(request.setUp, piano->action);
    if (!sheet) return refused(sheet.error(), json);
    const auto identity = identityWanted(request.setUp);
    if (!identity) return refused(identity.error(), json);

    std::string uuid;
    const auto enter = [&](BenchBook& book) -> Outcome<void> {
        auto entered = book.addPiano(*piano, sheet->name, sheet->own, *identity);
        if (!entered) return tl::unexpected(entered.error());
        uuid = std::move(*entered);
        return {};
    };
    const bool there = liesThere(request.at.book);
    auto book = there ? openBook(request.at.book, json) : BenchBook::createFilled(request.at.book, enter);
    if (!book) return refused(book.error(), json);
    if (there)
        if (const auto entered = enter(*book); !entered) return refused(entered.error(), json);
    say(inConsole(QT_TRANSLATE_N_NOOP("console", "%1: %2, %n note(s)."), piano->notes)
            .arg(QString::fromStdString(request.at.book), QString::fromStdString(piano->name)),
        json);
    printJson("{\"done\": true, \"act\": 1, \"piano\": \"" + uuid + "\"}", json);
    return kDone;
}

int run(const PianoRequest& request, bool json) {
    auto bench = openBench(request.at, json);
    if (!bench) return refused(bench.error(), json);
    const auto identity = identityWanted(request.setUp);
    if (!identity) return refused(identity.error(), json);
    if (!identity->empty() && !changesSetUp(request.setUp)) {
        const auto said = bench->book.setIdentity(bench->record.uuid, *identity);
        if (!said) return refused(said.error(), json);
        say(QStringLiteral("Record of %1 changed.").arg(QString::fromStdString(bench->record.piano.name)), json);
        return done(*said, json);
    }
    const Piano& before = bench->record.piano;
    Piano piano = before;
    const SetUp& wanted = request.setUp;
    if (wanted.action || wanted.notes || wanted.lowest) {
        auto fresh = madeAnew(wanted, before.action, before.notes, before.lowestMidi);
        if (!fresh) return refused(fresh.error(), json);
        fresh->name = before.name;
        // Another kind or compass keeps what was said of the action where it still fits.
        for (const auto& [name, value] : attributePairs(before))
            (void)setAttribute(*fresh, name, value);
        piano = std::move(*fresh);
    }
    if (auto set = applySetUp(piano, wanted); !set) return refused(set.error(), json);
    if (wanted.rename) piano.name = *wanted.rename;
    Sheet sheet{bench->record.specName, bench->record.spec};
    if (wanted.spec || wanted.action) {
        auto read = sheetWanted(wanted, piano.action);
        if (!read) return refused(read.error(), json);
        sheet = std::move(*read);
    }
    const auto act = bench->book.changePiano(bench->record.uuid, piano, sheet.name, sheet.own, *identity);
    if (!act) return refused(act.error(), json);
    say(QStringLiteral("Set-up of %1 changed.").arg(QString::fromStdString(piano.name)), json);
    return done(*act, json);
}

} // namespace hammerline::app
