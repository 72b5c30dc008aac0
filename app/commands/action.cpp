// action: where the key's way goes, note by note. Writes nothing.
#include "ui/words/action.h"

#include "app/commands/bench.h"
#include "app/commands/commands.h"
#include "app/console.h"
#include "app/text_table.h"
#include "core/plan/plan_in_force.h"
#include "ui/words/reserve.h"
#include "ui/words/said.h"
#include "ui/words/words.h"

#include <QCoreApplication>

#include <algorithm>

namespace hammerline::app {
namespace {

Outcome<std::vector<NoteAction>> actionsFor(const ActionRequest& request, const Piano& piano,
                                            const ActionReckoning& reckoning) {
    if (request.note.empty()) return reckoning.all();
    const auto note = parseNote(request.note, piano);
    if (!note) return tl::unexpected(note.error());
    return std::vector{reckoning.at(*note)};
}

bool anythingRead(const NoteAction& action) {
    const Stroke& stroke = action.stroke;
    const bool ofTheHammer = stroke.letOff || stroke.damperStirs;
    return stroke.bottom || ofTheHammer || action.account.read;
}

/// One note: the account as a bill, then its stroke before and after.
void sayNote(const NoteAction& action, const Piano& piano, bool json) {
    say(words::noteName(action.note, piano), json);
    say(words::ratioSentence(action.account.ratio), json);
    for (const QString& line : words::accountLines(action))
        say(QStringLiteral("  ") + line, json);
    say(words::strokeSentence(action.stroke, piano), json);
    if (action.strokeAfter)
        say(QCoreApplication::translate("action", "After the plan: %1")
                .arg(words::strokeSentence(*action.strokeAfter, piano)),
            json);
}

QString wayText(const std::optional<double>& mm) {
    return mm ? words::number(*mm, 2) : QString();
}

QStringList strokeRow(const Stroke& stroke, const Piano& piano) {
    return {words::noteName(stroke.note, piano),
            piano.vertical() ? wayText(stroke.moves) : QString(),
            wayText(stroke.damperStirs),
            wayText(stroke.letOff),
            wayText(stroke.bottom),
            wayText(stroke.aftertouch)};
}

void sayAll(const std::vector<NoteAction>& actions, const Piano& piano, bool json) {
    int silent = 0;
    TextTable table({{inConsole(QT_TRANSLATE_NOOP("console", "Note"))},
                     {inConsole(QT_TRANSLATE_NOOP("console", "Hammer moves")), true},
                     {inConsole(QT_TRANSLATE_NOOP("console", "Damper stirs")), true},
                     {inConsole(QT_TRANSLATE_NOOP("console", "Lets off")), true},
                     {inConsole(QT_TRANSLATE_NOOP("console", "Bottom")), true},
                     {inConsole(QT_TRANSLATE_NOOP("console", "Left")), true}});
    for (const NoteAction& each : actions) {
        if (!anythingRead(each))
            ++silent;
        else if (sentencesWanted())
            say(words::strokeSentence(each.stroke, piano), json);
        else
            table.add(strokeRow(each.stroke, piano));
    }
    if (!table.empty()) say(inConsole(QT_TRANSLATE_NOOP("console", "Way of the key from rest, mm:")), json);
    say(table, json);
    if (silent > 0)
        say(QCoreApplication::translate("action", "%n note(s) without readings of the stroke.", nullptr, silent), json);
}

/// What its screws, papers and felt still allow, and what is new in it and settles.
void sayLeft(const PianoRecord& record, const PassView& view, NoteNumber note, bool json) {
    say(inConsole(QT_TRANSLATE_NOOP("console", "How much is left, at least:")), json);
    for (const Reserve& each : reservesAt(record, {view.sheet, record.piano, record.overrides}, note))
        say(QStringLiteral("  ") + words::reserveSentence(each), json);
    for (const Settling& each : settlingAt(record, note))
        say(words::settlingSentence(each, record.piano) + QLatin1Char(' ') + words::settlingSource(each), json);
}

} // namespace

int run(const ActionRequest& request, bool json) {
    const auto bench = openBench(request.at, json, OpenMode::readOnly);
    if (!bench) return refused(bench.error(), json);
    const PianoRecord& record = bench->record;
    const auto pass = passOf(*bench, request.pass);
    if (!pass) return refused(pass.error(), json);
    const auto view = viewPass(record, *pass);
    if (!view) return refused(view.error(), json);
    const auto plan = planInForce(record, view->sheet, *pass, {});
    if (!plan) return refused(plan.error(), json);
    const ActionReckoning reckoning(record, *view, &*plan);
    const auto actions = actionsFor(request, record.piano, reckoning);
    if (!actions) return refused(actions.error(), json);
    printJson(actionJson(record, *view, *actions, reckoning.after()), json);
    if (request.note.empty()) {
        sayAll(*actions, record.piano, json);
    } else {
        sayNote(actions->front(), record.piano, json);
        sayLeft(record, *view, actions->front().note, json);
    }
    return std::ranges::any_of(*actions, standsOut) ? kOutside : kDone;
}

} // namespace hammerline::app
