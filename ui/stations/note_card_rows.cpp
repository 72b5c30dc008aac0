#include "ui/stations/note_card_rows.h"

#include "core/judge/escapement.h"
#include "core/judge/touch_diagnosis.h"
#include "ui/stations/measure_acts.h"
#include "ui/stations/measure_understanding.h"
#include "ui/stations/station_words.h"
#include "ui/words/reserve.h"
#include "ui/words/said.h"
#include "ui/words/touch_words.h"
#include "ui/words/words.h"

#include <QCoreApplication>

#include <cmath>
#include <set>

namespace hammerline {

namespace {

struct CardText {
    Q_DECLARE_TR_FUNCTIONS(NoteCard)
};

QString block(const QString& title, const QString& body) {
    return body.isEmpty() ? QString() : QStringLiteral("<p><b>%1</b><br>%2</p>").arg(title.toHtmlEscaped(), body);
}

QString shownOf(const Judged& judged) {
    if (judged.word) return words::name(*judged.word);
    Reading reading;
    reading.count = judged.value.value_or(0);
    reading.upper = judged.upper.value_or(0);
    reading.relation = judged.relation;
    return judged.value ? words::shown(judged.cell.dimension, reading) : QString(QChar(0x2013));
}

QString row3(const QString& a, const QString& b, const QString& c) {
    return QStringLiteral("<tr><td>%1</td><td align=right>%2</td><td align=right>%3</td></tr>").arg(a, b, c);
}

QString verdictAndExcess(const Workbench& bench, const Judged& judged) {
    const QString words = judged.word ? QString() : verdictWords(judged).toHtmlEscaped();
    const QString excess = excessText(judged, bench.zones().at(judged.cell));
    return excess.isEmpty() ? words : words + QStringLiteral(", ") + excess;
}

} // namespace

std::vector<ListRow> noteCardRows(const Workbench& bench, NoteNumber note) {
    std::vector<ListRow> rows;
    const Piano& piano = *bench.piano();
    const PassView* view = bench.view();
    for (const DimensionId id : bench.columns()) {
        const Cell cell{note, id};
        const bool otherColour = id == dimension::keyHeight || id == dimension::sharpHeight;
        if (!fitted(id, note, piano) && otherColour) continue;
        ListRow row;
        row.key = id.row;
        const bool current = id == bench.dimension();
        const Judged* judged = view ? view->review.at(cell) : nullptr;
        RowCell name(words::shortName(id), current);
        if (!canTake(bench, cell)) {
            RowCell none(CardText::tr("not fitted"));
            none.soft = true;
            none.size = Text::label; // two words in the room of a rule
            row.cells = {name, {}, none, {}};
        } else if (judged) {
            RowCell value(shownOf(*judged), true);
            value.size = Text::listDigits;
            RowCell rule;
            if (!judged->word && bench.zones().at(cell)) {
                rule.kind = RowCell::Kind::rule;
                rule.marks = judged->marks() * (judged->verdict == Verdict::low ? -1 : 1);
                rule.value =
                    judged->infinite ? (judged->verdict == Verdict::low ? -4 : 4) : judged->deviation.value_or(0);
            }
            RowCell plate = plateCell(*judged);
            if (judged->word) plate.text.clear();
            row.sentence = words::cellSentence(*judged, piano);
            row.cells = {name, value, rule, plate};
        } else if (const auto expected = expectedAfterPlan(bench, cell)) {
            const QString after = words::shown(id, fromTrade(expected->value, hammerline::row(id).kind));
            RowCell value(QChar(0x2192) + QStringLiteral(" ") + after); // as the grid says it
            value.italic = true;
            row.sentence = CardText::tr("%1, expected after the plan: %2").arg(words::name(id), after);
            row.cells = {name, value, {}, {}};
        } else {
            RowCell dot(isUnmeasurable(bench, cell) ? QString(QChar(0x2013)) : QString(QChar(0x00B7)));
            dot.soft = true;
            row.cells = {name, dot, {}, {}};
        }
        rows.push_back(std::move(row));
    }
    return rows;
}

/// D = M + (B - O)/R + A (core/judge/escapement.h). What the note has not is taken from the ratio or from the aim.
QString noteCardRelation(const Workbench& bench, NoteNumber note) {
    const PassView* view = bench.view();
    if (!view) return {};
    const Piano& piano = *bench.piano();
    const EscapementReading read = escapementAt(piano, PassTable(piano, view->pass), note);
    if (read.letOffBound || read.aftertouchBound || !read.blow) return {};
    const Ratio& ratio = view->ratio[static_cast<std::size_t>(colourOf(note, piano))];
    const auto orAim = [&](const std::optional<double>& value,
                           DimensionId id) -> std::optional<std::pair<double, bool>> {
        if (value) return std::pair{*value, false};
        const auto zone = bench.zones().at({note, id});
        return zone ? std::optional(std::pair{toTrade(zone->nominal, row(id).kind), true}) : std::nullopt;
    };
    const auto lost = orAim(read.lostMotion, dimension::lostMotion), letOff = orAim(read.letOff, dimension::letOff),
               after = orAim(read.aftertouch, dimension::aftertouch);
    if (!lost || !letOff || !after) return {};
    const auto said = [](double value, bool guessed) {
        return guessed ? QStringLiteral("<i>%1</i>").arg(words::number(value)) : words::number(value);
    };
    const double dip = dipOf(lost->first, *read.blow, letOff->first, after->first, ratio.value);
    QString sum = QStringLiteral("%1 + (%2 \u2212 %3) / %4 + %5 = %6 <b>%7</b>")
                      .arg(said(std::max(0.0, lost->first), lost->second), words::number(*read.blow),
                           said(letOff->first, letOff->second), said(ratio.value, ratio.fromDefault()),
                           said(after->first, after->second), CardText::tr("dip"), words::number(dip));
    QStringList lines{sum};
    if (read.dip) {
        const bool alarm = std::ranges::any_of(view->review.doubtful,
                                               [note](const DoubtfulNote& doubt) { return doubt.note == note; });
        lines << (alarm ? CardText::tr("<b>%1</b> was measured: these readings do not agree.")
                        : CardText::tr("<b>%1</b> was measured: no alarm."))
                     .arg(words::number(*read.dip));
    }
    lines << (ratio.fromDefault()
                  ? CardText::tr("Ratio hammer to key %1, a default.").arg(words::number(ratio.value, 2))
                  : CardText::tr("Ratio hammer to key %1, from %n note(s).", nullptr, ratio.notes)
                        .arg(words::number(ratio.value, 2)));
    for (const DoubtfulNote& doubt : view->review.doubtful)
        if (doubt.note == note) lines << CardText::tr("Measure %1 again.").arg(words::name(doubt.suspect).toLower());
    return block(CardText::tr("Expected from the other readings"), lines.join(QStringLiteral("<br>")));
}

QString noteCardTouch(const Workbench& bench, NoteNumber note) {
    const PassView* view = bench.view();
    if (!view) return {};
    for (const NoteTouch& each : touchesOf(view->pass, *bench.piano(), view->sheet.name == "old-upright"))
        if (each.note == note)
            return block(CardText::tr("Touch weight"),
                         QStringLiteral("%1<br>%2")
                             .arg(words::touchFigures(each).toHtmlEscaped(),
                                  words::touchSentence(each, *bench.piano()).toHtmlEscaped()));
    return {};
}

QString noteCardHistory(const Workbench& bench, Cell cell) {
    const Piano& piano = *bench.piano();
    QString table;
    for (const Pass& pass : bench.record()->passes) {
        const Judged* judged = bench.judged(pass.number, cell);
        if (!judged) continue;
        const QString label =
            pass.label.empty()
                ? CardText::tr("pass %1").arg(pass.number)
                : CardText::tr("pass %1, %2").arg(pass.number).arg(QString::fromStdString(pass.label).toHtmlEscaped());
        table += row3(label, QStringLiteral("<b>%1</b>").arg(shownOf(*judged).toHtmlEscaped()),
                      verdictAndExcess(bench, *judged));
    }
    if (const Plan* plan = bench.plan())
        for (const Expected& expected : plan->expected)
            if (expected.cell == cell) {
                const Kind kind = row(cell.dimension).kind;
                table +=
                    row3(CardText::tr("<i>expected after the plan</i>"),
                         QStringLiteral("<i>%1</i>").arg(words::shown(cell.dimension, fromTrade(expected.value, kind))),
                         CardText::tr("<i>%1 to %2</i>")
                             .arg(words::shown(cell.dimension, fromTrade(expected.low95, kind)),
                                  words::shown(cell.dimension, fromTrade(expected.high95, kind))));
            }
    if (const auto zone = bench.zones().at(cell))
        table += row3(CardText::tr("zone, set to"), words::shown(cell.dimension, zone->nominal),
                      words::zoneText(cell.dimension, *zone));
    if (const Override* own = bench.zones().overrideAt(cell))
        table += row3(CardText::tr("own zone"), {}, QString::fromStdString(own->reason).toHtmlEscaped());
    QString html =
        QStringLiteral(
            "<p style='margin-bottom:0'><b>%1</b></p><table width='100%' cellspacing=0 cellpadding=1>%2</table>")
            .arg(CardText::tr("%1 at this note").arg(words::name(cell.dimension)).toHtmlEscaped(), table);
    const PassView* view = bench.view();
    const Judged* here = view ? view->review.at(cell) : nullptr;
    QStringList around;
    for (const int by : {-1, 1}) {
        // neighbours of the same key colour where the colours have zones of their own
        NoteNumber n{cell.note.value + by};
        while (piano.contains(n) && !canTake(bench, {n, cell.dimension}))
            n.value += by;
        const Judged* beside = view && piano.contains(n) ? view->review.at({n, cell.dimension}) : nullptr;
        if (beside) around << CardText::tr("%1: %2").arg(words::noteName(n, piano), shownOf(*beside)).toHtmlEscaped();
    }
    if (here && (here->uneven || here->step) && here->value)
        around << CardText::tr("<b>stands %1 off the run of its neighbours</b>")
                      .arg(words::shown(cell.dimension, std::llround(here->unevenness)));
    html += block(CardText::tr("Neighbours"), around.join(QStringLiteral(" \u00B7 ")));
    const auto trail = bench.trail(cell);
    if (trail && trail->size() > 1) {
        QStringList typed;
        for (const Reading& reading : *trail)
            typed << QString::fromStdString(reading.typed).toHtmlEscaped();
        html += block(CardText::tr("Typed here in this pass, first to last"), typed.join(QStringLiteral(" \u00B7 ")));
    }
    return html;
}

QString noteCardFindings(const Workbench& bench, NoteNumber note) {
    QStringList lines;
    const auto& findings = bench.record()->findings;
    for (const Finding& finding : findings) {
        const bool nothing = finding.state == FindingState::sound || finding.state == FindingState::notLookedAt;
        if (nothing || finding.fault.empty()) continue;
        const Finding* standing = standingAt(finding.part, note, findings);
        if (standing != &finding) continue; // an older word about the same part
        if (finding.note && *finding.note != note) continue;
        lines << words::findingSentence(finding, *bench.piano()).toHtmlEscaped();
    }
    return block(CardText::tr("Survey"), lines.join(QStringLiteral("<br>")));
}

QString noteCardLeft(const Workbench& bench, NoteNumber note) {
    QStringList lines, unknown;
    for (const Reserve& each : reservesAt(*bench.record(), bench.zones(), note)) {
        if (each.rounds)
            lines << words::reserveSentence(each).toHtmlEscaped();
        else
            unknown << words::reserveName(each.of).toLower();
    }
    if (lines.isEmpty()) unknown.clear(); // nothing was read, said or done yet: no list of what is not known
    if (!unknown.isEmpty()) lines << CardText::tr("Not known: %1.").arg(unknown.join(QStringLiteral(", ")));
    QString html = block(CardText::tr("How much is left, at least"), lines.join(QStringLiteral("<br>")));
    lines.clear();
    for (const Settling& each : settlingAt(*bench.record(), note))
        lines << (words::settlingSentence(each, *bench.piano()) + QLatin1Char(' ') + words::settlingSource(each))
                     .toHtmlEscaped();
    return html + block(CardText::tr("Still settling, a forecast"), lines.join(QStringLiteral("<br>")));
}

QString noteCardProgress(const Workbench& bench) {
    const PassView* view = bench.view();
    if (!view) return block(CardText::tr("No pass yet"), CardText::tr("The first reading begins it."));
    std::set<int> read, out;
    for (const Judged& judged : view->review.ranked) {
        read.insert(judged.cell.note.value);
        if (judged.verdict == Verdict::low || judged.verdict == Verdict::high) out.insert(judged.cell.note.value);
    }
    double seconds = 0;
    for (const DimensionId id : view->review.asked)
        for (int n = 1; n <= bench.piano()->notes; ++n) {
            const Cell cell{{n}, id};
            if (canTake(bench, cell) && !view->review.at(cell) && !isUnmeasurable(bench, cell))
                seconds += row(id).seconds.front();
        }
    QString line = CardText::tr("<b>%1</b> of %2 notes \u00B7 <b>%3</b> out so far")
                       .arg(read.size())
                       .arg(bench.piano()->notes)
                       .arg(out.size());
    if (seconds > 30) line += CardText::tr(" \u00B7 about %1 left").arg(timeText(std::ceil(seconds / 60)));
    return block(CardText::tr("Pass %1").arg(bench.passNumber()), line);
}

} // namespace hammerline
