// check: a pass judged and ranked, as a table or with --spoken as sentences.
#include "app/commands/bench.h"
#include "app/commands/commands.h"
#include "app/console.h"
#include "app/text_table.h"
#include "core/judge/touch_diagnosis.h"
#include "core/sheet/sheet.h"
#include "ui/words/finish.h"
#include "ui/words/said.h"
#include "ui/words/touch_words.h"
#include "ui/words/words.h"

#include <QCoreApplication>

namespace hammerline::app {
namespace {

bool toBeSaid(const Judged& judged) {
    return judged.verdict != Verdict::within || judged.uneven || judged.step;
}

QString summaryOf(const PassView& view, const FinishLine& finish) {
    const Summary& s = view.review.summary;
    return inConsole(QT_TRANSLATE_NOOP("console", "%1 fitted, %2 within, %3 low, %4 high, %5 undecided, %6 missing, "
                                                  "%7 uneven, %8 stale: %9."))
        .arg(s.fitted)
        .arg(s.within)
        .arg(s.low)
        .arg(s.high)
        .arg(s.undecided)
        .arg(s.missing)
        .arg(s.uneven)
        .arg(s.stale)
        .arg(words::gradeName(finish.grade));
}

QString deviationOf(const Judged& judged) {
    if (judged.infinite) return QString(QChar(0x221E));
    if (!judged.deviation || judged.word) return {};
    const QString text = words::number(*judged.deviation, 1);
    return *judged.deviation > 0 ? u'+' + text : text;
}

TextTable tableOf(const PassView& view, const Piano& piano) {
    TextTable table({{inConsole(QT_TRANSLATE_NOOP("console", "Note"))},
                     {inConsole(QT_TRANSLATE_NOOP("console", "Dimension"))},
                     {inConsole(QT_TRANSLATE_NOOP("console", "Reading")), true},
                     {inConsole(QT_TRANSLATE_NOOP("console", "Zone")), true},
                     {inConsole(QT_TRANSLATE_NOOP("console", "Of the zone")), true},
                     {inConsole(QT_TRANSLATE_NOOP("console", "Verdict"))}});
    for (const Judged& judged : view.review.ranked) {
        if (!toBeSaid(judged)) continue;
        const auto zone = view.review.zones.find(judged.cell);
        const bool known = zone != view.review.zones.end();
        table.add({words::noteName(judged.cell.note, piano), words::name(judged.cell.dimension),
                   words::valueText(judged), known ? words::zoneText(judged.cell.dimension, zone->second) : QString(),
                   deviationOf(judged), words::verdictText(judged)});
    }
    return table;
}

void sayReview(const PassView& view, const FinishLine& finish, const Piano& piano, bool json) {
    say(inConsole(QT_TRANSLATE_NOOP("console", "Pass %1, %2. Zones: %3 (%4)."))
            .arg(view.pass.number)
            .arg(words::utf8(view.pass.label), words::specName(view.sheet.name), words::utf8(view.sheet.source)),
        json);
    say(summaryOf(view, finish), json);
    if (const QString line = words::finishSentence(finish); !line.isEmpty()) say(line, json);
    for (const FromSamples& each : fromSamples(piano, view.review))
        say(words::samplesSentence(each, piano), json);
    for (const Cause& cause : view.causes)
        say(words::causeSentence(cause, piano), json);
    if (sentencesWanted()) {
        for (const Judged& judged : view.review.ranked)
            if (toBeSaid(judged)) say(words::cellSentence(judged, piano), json);
    } else {
        say(tableOf(view, piano), json);
    }
    for (const NoteTouch& each : touchesOf(view.pass, piano, view.sheet.name == "old-upright"))
        say(QStringLiteral("%1: %2 %3")
                .arg(words::noteName(each.note, piano), words::touchFigures(each), words::touchSentence(each, piano)),
            json);
    for (const DoubtfulNote& each : view.review.doubtful)
        ask(inConsole(
                QT_TRANSLATE_NOOP("console", "Note %1: these readings cannot all be true; measure again, first %2."))
                .arg(words::noteName(each.note, piano), words::name(each.suspect).toLower()),
            json);
}

bool anythingOpen(const Review& review) {
    const Summary& s = review.summary;
    return s.outside() + s.undecided + s.uneven > 0 || !review.doubtful.empty();
}

} // namespace

int run(const CheckRequest& request, bool json) {
    const auto bench = openBench(request.at, json, OpenMode::readOnly);
    if (!bench) return refused(bench.error(), json);
    const auto rule = parseRule(request.rule);
    if (!rule) return refused(rule.error(), json);
    const auto pass = passOf(*bench, request.pass);
    if (!pass) return refused(pass.error(), json);
    std::optional<SpecSheet> sheet;
    if (!request.spec.empty()) {
        auto read = sheetFrom(request.spec);
        if (!read) return refused(read.error(), json);
        sheet = std::move(*read);
    }
    const auto view = viewPass(bench->record, *pass, *rule, sheet);
    if (!view) return refused(view.error(), json);
    const auto finish = finishOf(bench->record, view->sheet, *pass);
    if (!finish) return refused(finish.error(), json);
    printJson(checkJson(bench->record, *view, *finish), json);
    sayReview(*view, *finish, bench->record.piano, json);
    return anythingOpen(view->review) || !view->causes.empty() ? kOutside : kDone;
}

} // namespace hammerline::app
