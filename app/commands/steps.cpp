// work, next: every step of the work and how it stands, what was done of it, and the one sentence of what comes next.
#include "app/commands/bench.h"
#include "app/commands/commands.h"
#include "app/console.h"
#include "core/plan/plan_in_force.h"
#include "core/sheet/work_said.h"
#include "ui/words/step_texts.h"
#include "ui/words/survey_names.h"
#include "ui/words/work_now.h"

#include <QString>
#include <QUuid>

namespace hammerline::app {
namespace {

std::optional<Plan> planNow(const PianoRecord& record) {
    const bool read = !record.passes.empty() && record.passes.back().readingCount() > 0;
    if (!read) return std::nullopt;
    auto plan = planInForce(record, sheetOf(record), record.passes.back().number, {});
    return plan ? std::optional(std::move(*plan)) : std::nullopt;
}

Outcome<std::vector<NoteNumber>> notesSaid(const std::string& typed, const Piano& piano) {
    if (typed == "all") return std::vector<NoteNumber>{};
    return parseNotes(typed, piano);
}

/// What is said of the step; empty where nothing is. Refuses usage where it says two things at once, or no step.
Outcome<std::optional<StepSaid>> stepSaid(const WorkRequest& request, const Piano& piano) {
    const int said = int{request.done.has_value()} + int{request.undone.has_value()} + int{!request.notHere.empty()};
    const bool more = !request.remark.empty() || request.minutes > 0;
    if (said == 0 && !more) return std::nullopt;
    if (said != 1 || request.step.empty())
        return refuse(RefusalCode::usage, "work takes --step ID with one of --done, --undone and --not-here");
    StepSaid out{.step = request.step, .notes = {}, .remark = request.remark, .minutes = request.minutes};
    if (!request.notHere.empty()) {
        out.what = StepSaid::What::notHere;
        out.remark = request.notHere;
        return out;
    }
    out.what = request.done ? StepSaid::What::done : StepSaid::What::undone;
    auto notes = notesSaid(request.done ? *request.done : *request.undone, piano);
    if (!notes) return tl::unexpected(notes.error());
    out.notes = std::move(*notes);
    return out;
}

Outcome<ActId> write(Bench& bench, const StepSaid& said) {
    const auto plan = planNow(bench.record);
    const std::string uuid = QUuid::createUuid().toString(QUuid::WithoutBraces).toStdString();
    const auto work = sayStep(said, bench.record, plan ? &*plan : nullptr, uuid);
    if (!work) return tl::unexpected(work.error());
    const auto act = bench.book.sayWork(bench.record.uuid, *work);
    if (!act) return act;
    if (const auto again = loadAgain(bench); !again) return tl::unexpected(again.error());
    return act;
}

QString stepLine(const StepNow& now, const Piano& piano) {
    QString line = QStringLiteral("  [%1] %2: %3")
                       .arg(words::utf8(now.step->id), words::stepName(now.step->id), words::stepStateName(now.state));
    const bool settled = now.state == StepState::done || now.state == StepState::notHere;
    const QString more = settled ? words::stepReason(now) : words::stepLeft(now, piano);
    if (!more.isEmpty()) line += QStringLiteral(" (%1)").arg(more);
    if (now.minutes > 0) line += QStringLiteral(", %1").arg(words::hours(now.minutes));
    return line;
}

/// Steps under the way they are reached; a way that comes again stands again.
void saySteps(const WorkNow& now, const Piano& piano, bool json) {
    std::string_view last;
    int notAsked = 0;
    for (const StepNow& each : now.steps) {
        if (each.reason == "not-asked") {
            ++notAsked;
            continue;
        }
        const std::string_view here = accessFor(*each.step, piano, each.notes.size());
        if (here != last) say(words::workAccessName(here), json);
        last = here;
        say(stepLine(each, piano), json);
    }
    if (notAsked > 0)
        say(QStringLiteral("%1 further steps belong to the whole job (survey --set job=whole shows them).")
                .arg(notAsked),
            json);
    say(QStringLiteral("%1 left.").arg(words::hours(now.minutes)), json);
}

void sayOneStep(const StepNow& now, const Piano& piano, bool json) {
    say(stepLine(now, piano).trimmed(), json);
    for (const words::StepParagraph& each : words::stepParagraphs(*now.step, piano))
        say(QStringLiteral("  %1: %2").arg(each.heading, each.text), json);
}

const StepNow* among(const WorkNow& now, const std::string& id) {
    for (const StepNow& each : now.steps)
        if (each.step->id == id) return &each;
    return nullptr;
}

} // namespace

int run(const WorkRequest& request, bool json) {
    auto bench = openBench(request.at, json, OpenMode::readOnly);
    if (!bench) return refused(bench.error(), json);
    const auto said = stepSaid(request, bench->record.piano);
    if (!said) return refused(said.error(), json);
    if (*said) {
        bench = openBench(request.at, json);
        if (!bench) return refused(bench.error(), json);
        if (const auto act = write(*bench, **said); !act) return refused(act.error(), json);
    }
    const Piano& piano = bench->record.piano;
    const WorkNow now = workNow(bench->record);
    const QString next = words::nextSentence(now.next, piano);
    const StepNow* one = request.step.empty() ? nullptr : among(now, request.step);
    if (!request.step.empty() && !one) return refused({RefusalCode::noSuchStep, {}, request.step, {}}, json);
    printJson(workJson(now, bench->record, next.toStdString()), json);
    if (one)
        sayOneStep(*one, piano, json);
    else
        saySteps(now, piano, json);
    say(next, json);
    return now.next.kind == NextKind::done ? kDone : kOutside;
}

int run(const NextRequest& request, bool json) {
    const auto bench = openBench(request.at, json, OpenMode::readOnly);
    if (!bench) return refused(bench.error(), json);
    const WorkNow now = workNow(bench->record);
    const QString sentence = words::nextSentence(now.next, bench->record.piano);
    printJson(nextJson(now, sentence.toStdString()), json);
    say(sentence, json);
    return now.next.kind == NextKind::done ? kDone : kOutside;
}

} // namespace hammerline::app
