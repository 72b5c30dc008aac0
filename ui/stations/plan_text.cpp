#include "ui/stations/plan_text.h"

#include "core/plan/plan_in_force.h"
#include "core/survey/job.h"
#include "ui/words/said.h"
#include "ui/words/trials.h"
#include "ui/words/words.h"

#include <QCoreApplication>

#include <algorithm>
#include <set>

namespace hammerline {

namespace {

using words::atStation;

/// "Let-off 29 → 0" for every dimension with something out.
QString leadsTo(const Plan& plan, const PassView& view) {
    std::map<DimensionId, std::pair<int, int>> counts;
    std::map<Cell, Verdict> after;
    for (const Expected& expected : plan.expected)
        after[expected.cell] = expected.verdict;
    const auto out = [](Verdict v) { return v == Verdict::low || v == Verdict::high; };
    for (const Judged& judged : view.review.ranked) {
        auto& [now, then] = counts[judged.cell.dimension];
        now += out(judged.verdict) ? 1 : 0;
        const auto found = after.find(judged.cell);
        then += out(found == after.end() ? judged.verdict : found->second) ? 1 : 0;
    }
    QString html = QStringLiteral("<table cellspacing=0 cellpadding=1 width='100%'>");
    for (const auto& [dimension, n] : counts)
        html += QStringLiteral(
                    "<tr><td>%1</td><td align=right><b>%2</b></td><td align=right width='30%'>→ <b>%3</b></td></tr>")
                    .arg(words::name(dimension).toHtmlEscaped())
                    .arg(n.first)
                    .arg(n.second);
    return html + QStringLiteral("</table>");
}

/// How this piano answers one operation: learned, or that nothing is; empty where nothing is to be said.
QString answerOf(OperationId operation, const Plan& plan, const Piano& piano) {
    for (const Response& r : plan.responses) {
        if (r.operation != operation || r.effects.empty()) continue;
        const QString unit = unitOf(r.operation, piano) == AmountUnit::turn
                                 ? atStation(QT_TRANSLATE_NOOP("Station", "mm a turn"))
                                 : atStation(QT_TRANSLATE_NOOP("Station", "mm a mm"));
        const Effect& e = r.effects.front();
        if (r.learned)
            return QStringLiteral("%1: <b>%2</b> %3, %4 to %5")
                .arg(words::name(r.operation), words::number(e.perUnit), unit, words::number(r.low95),
                     words::number(r.high95));
        if (unitOf(r.operation, piano) == AmountUnit::turn)
            return (words::guessSentence(r, piano).toHtmlEscaped() + QLatin1Char(' ') +
                    atStation(QT_TRANSLATE_NOOP("Station", "%1: nothing learned. Direction and aim only; trial first."))
                        .arg(words::name(r.operation)))
                .trimmed();
        return {};
    }
    return {};
}

QString answers(const Plan& plan, const Piano& piano) {
    QStringList lines;
    std::set<OperationId> seen;
    for (const Step& step : plan.steps)
        if (seen.insert(step.operation).second)
            if (const QString answer = answerOf(step.operation, plan, piano); !answer.isEmpty()) lines << answer;
    return lines.join(QStringLiteral("<br>"));
}

} // namespace

QString workText(const AdjustmentWork& work, const Piano& piano) {
    QStringList parts;
    for (const Direction direction : work.directions) {
        const QString text = words::directionSentence(work.operation, direction, piano, work.opposite).toHtmlEscaped();
        const auto colon = text.indexOf(QLatin1Char(':'));
        parts << (colon < 0
                      ? text
                      : QStringLiteral("<b>") + text.left(colon + 1) + QStringLiteral("</b>") + text.mid(colon + 1));
    }
    if (work.cap > 0 && unitOf(work.operation, piano) == AmountUnit::turn)
        parts << atStation(QT_TRANSLATE_NOOP("Station", "Not more than %1 turn a go, then look."))
                     .arg(words::turnText(work.cap));
    if (const QString stop = words::stopSentence(work.guard, piano); !stop.isEmpty()) parts << stop.toHtmlEscaped();
    return parts.join(QLatin1Char(' '));
}

namespace {

/// "5.1: 1.4 mm over the far edge of 3.7"; the edge that the reading lies beyond, or that it is inside.
QString againstZone(const AdjustmentLine& line, const Zone& zone) {
    const DimensionId dimension = line.step->aimDimension;
    const QString read = words::shown(dimension, *line.read);
    const auto edge = line.side < 0 ? zone.low : line.side > 0 ? zone.high : std::nullopt;
    if (!edge)
        return atStation(QT_TRANSLATE_NOOP("Station", "<b>Read %1</b>, aim %2."))
            .arg(read, words::shown(dimension, zone.nominal));
    QString beyond = words::shown(dimension, std::abs(*line.read - *edge));
    if (beyond.startsWith(u'+')) beyond.remove(0, 1); // a distance has no sign
    return atStation(QT_TRANSLATE_NOOP("Station", "<b>Read %1</b>: %2 beyond its limit of %3."))
        .arg(read, beyond, words::shown(dimension, *edge));
}

/// What the same note's other readings are expected to be after the plan, where it moves them.
QStringList alsoMoves(const AdjustmentLine& line, const Plan& plan, const PassView& view) {
    QStringList out;
    for (const Expected& expected : plan.expected) {
        const DimensionId dimension = expected.cell.dimension;
        if (expected.cell.note != line.note || dimension == line.step->aimDimension) continue;
        const auto read = view.pass.value(expected.cell);
        if (!read) continue;
        const std::int64_t then = fromTrade(expected.value, row(dimension).kind);
        const QString before = words::shown(dimension, *read), after = words::shown(dimension, then);
        if (before != after)
            out << QStringLiteral("%1 <b>%2</b> → <b>%3</b>").arg(words::name(dimension), before, after);
    }
    return out;
}

} // namespace

QString whyText(const AdjustmentLine& line, const AdjustmentWork& work, const std::optional<Zone>& zone,
                const Plan& plan, const PassView& view, const Piano& piano) {
    const DimensionId dimension = line.step->aimDimension;
    QStringList out;
    if (line.read && !line.nowWord && zone) out << againstZone(line, *zone);
    if (line.nowWord)
        out << atStation(QT_TRANSLATE_NOOP("Station", "<b>Read: %1.</b>")).arg(words::name(*line.nowWord));
    const auto taken = line.takenAs();
    const bool other = taken && !line.nowWord && words::shown(dimension, *taken) != words::shown(dimension, *line.read);
    if (other && line.afterStep)
        out << atStation(QT_TRANSLATE_NOOP("Station", "After work %1 it is expected at <b>%2</b>."))
                   .arg(*line.afterStep)
                   .arg(words::shown(dimension, *taken));
    else if (other)
        out << atStation(QT_TRANSLATE_NOOP("Station", "Other readings are weighed in: the list starts from <b>%1</b>."))
                   .arg(words::shown(dimension, *taken));
    const bool said = line.step->why == "low" || line.step->why == "high"; // by the reading itself
    if (const QString why = words::whySentence(line.step->why); !said && !why.isEmpty()) {
        QString sentence = why;
        sentence[0] = sentence[0].toUpper();
        out << sentence.toHtmlEscaped() + u'.';
    }
    if (const QStringList also = alsoMoves(line, plan, view); !also.isEmpty())
        out << atStation(QT_TRANSLATE_NOOP("Station", "With the whole plan: ")) + also.join(QStringLiteral("; ")) +
                   u'.';
    if (const QString answer = answerOf(work.operation, plan, piano); !answer.isEmpty()) out << answer;
    return out.join(QStringLiteral("<br><br>"));
}

QString mendText(const AdjustmentSheet& sheet) {
    QStringList lines;
    for (const MendFirst& entry : sheet.mendFirst)
        lines << QStringLiteral("<b>%1</b> %2 %3")
                     .arg(QString::fromStdString(writeNotes(entry.notes)), words::partOfActionName(entry.part),
                          words::faultName(entry.fault));
    return lines.join(QStringLiteral("<br>"));
}

QString planText(const Plan& plan, const PassView& view, const PianoRecord& record, const AdjustmentSheet& sheet) {
    const auto block = [](const QString& title, const QString& body) {
        return body.isEmpty() ? QString() : QStringLiteral("<p><b>%1</b><br>%2</p>").arg(title, body);
    };
    QStringList asks, conflicts;
    // What the survey asks stands above the plan; here are the checks that decide its causes.
    const auto ofSurvey = askBeforePlan(record.findings, record.piano, record.marks);
    for (const std::string_view id : openQuestions(plan, record))
        if (std::find(ofSurvey.begin(), ofSurvey.end(), id) == ofSurvey.end())
            asks << words::askFirstSentence(id, record.piano).toHtmlEscaped();
    for (const Conflict& conflict : plan.conflicts)
        conflicts << words::conflictSentence(conflict, record.piano).toHtmlEscaped();
    QString html = block(atStation(QT_TRANSLATE_NOOP("Station", "Ask first")), asks.join(QStringLiteral("<br>")));
    html +=
        QStringLiteral("<p style='margin-bottom:0'><b>%1</b></p>%2") // a table keeps its own distance
            .arg(atStation(QT_TRANSLATE_NOOP("Station", "Readings out: now, and after the plan")), leadsTo(plan, view));
    html += block(QCoreApplication::translate("Station", "Cannot be brought in: %n note(s). Choose.", nullptr,
                                              static_cast<int>(plan.conflicts.size())),
                  conflicts.join(QStringLiteral("<br>")));
    html += block(atStation(QT_TRANSLATE_NOOP("Station", "Mend first: left out")), mendText(sheet));
    html += block(atStation(QT_TRANSLATE_NOOP("Station", "How this piano answers")), answers(plan, record.piano));
    if (!plan.readNext.empty()) {
        std::map<DimensionId, std::vector<NoteNumber>> read;
        for (const ToRead& next : plan.readNext)
            read[next.cell.dimension].push_back(next.cell.note);
        QStringList lines;
        for (auto& [dimension, notes] : read) {
            std::ranges::sort(notes);
            lines << QStringLiteral("%1: %2").arg(words::name(dimension), QString::fromStdString(writeNotes(notes)));
        }
        html += block(atStation(QT_TRANSLATE_NOOP("Station", "Then read, and nothing else")),
                      lines.join(QStringLiteral("<br>")));
    }
    return html;
}

} // namespace hammerline
