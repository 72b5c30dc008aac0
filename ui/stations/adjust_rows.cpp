#include "ui/stations/adjust_rows.h"

#include "core/plan/plan_in_force.h"
#include "core/survey/job.h"
#include "ui/words/said.h"
#include "ui/words/words.h"

#include <QCoreApplication>

#include <algorithm>
#include <cmath>

namespace hammerline {

namespace {

using words::atStation;

int doneOf(const AdjustmentWork& work, const std::set<std::string>& done) {
    int count = 0;
    for (const AdjustmentLine& line : work.lines)
        count += done.contains(line.step->id) ? 1 : 0;
    for (const CommonMove& move : work.moves)
        count += done.contains(move.step->id) ? 1 : 0;
    return count;
}

/// Small beside the aim: a hand's words, paper, the trial, or why.
QString amountOf(const AdjustmentLine& line, const AdjustmentWork& work) {
    if (work.trial && std::ranges::find(work.trial->notes, line.note) != work.trial->notes.end())
        return atStation(QT_TRANSLATE_NOOP("Station", "trial: %1, read, type it"))
            .arg(words::turnText(std::abs(work.trial->amount)));
    if (!line.handAmount.empty()) return words::amountWords(line.handAmount);
    if (!line.step->stack.empty()) {
        QStringList pieces;
        for (const Length piece : line.step->stack)
            pieces << words::number(piece.mm(), 2);
        return pieces.join(QStringLiteral(" + "));
    }
    if (line.mm && *line.mm != 0)
        return atStation(QT_TRANSLATE_NOOP("Station", "%1 mm")).arg(words::number(std::abs(*line.mm), 2));
    if (line.afterStep && line.step->why == "follows")
        return atStation(QT_TRANSLATE_NOOP("Station", "after step %1")).arg(*line.afterStep);
    return words::whySentence(line.step->why);
}

ListRow lineRow(const AdjustmentLine& line, const AdjustmentWork& work, int key, const Piano& piano,
                const std::map<std::string, QString>& done) {
    const Step& step = *line.step;
    const auto ticked = done.find(step.id);
    const bool open = ticked == done.end();
    ListRow row;
    row.key = key;
    row.sentence = QStringLiteral("%1: %2. %3")
                       .arg(words::noteName(line.note, piano), words::headline(step, piano),
                            open ? amountOf(line, work) : atStation(QT_TRANSLATE_NOOP("Station", "done")));
    RowCell box;
    box.kind = RowCell::Kind::tick;
    box.part = open ? 0 : 2;
    RowCell now(line.nowWord ? words::name(*line.nowWord)
                : line.now   ? words::shown(step.aimDimension, *line.now)
                             : QString());
    now.kind = RowCell::Kind::plate;
    now.marks = line.side * line.marks;
    now.size = Text::listDigits;
    RowCell turn(words::directionWord(step.direction, step.operation, piano), open);
    turn.kind = RowCell::Kind::turn;
    turn.sign = words::signOf(step.operation, step.direction, piano);
    turn.size = Text::aim;
    RowCell aim(step.aim ? words::aimText(step) : QString(), open);
    aim.size = Text::aim;
    RowCell amount(amountOf(line, work));
    amount.size = Text::amount;
    RowCell gauge(open ? QString() : ticked->second);
    gauge.size = Text::listDigits;
    row.cells = {box,
                 noteCell(line.note, piano, open),
                 now,
                 turn,
                 soft(step.aim ? atStation(QT_TRANSLATE_NOOP("Station", "to")) : QString()),
                 aim,
                 amount,
                 gauge};
    return row;
}

ListRow moveRow(const CommonMove& move, int key, const Piano& piano, const std::map<std::string, QString>& done) {
    ListRow row;
    row.key = key;
    const bool open = !done.contains(move.step->id);
    RowCell box;
    box.kind = RowCell::Kind::tick;
    box.part = open ? 0 : 2;
    RowCell where(move.range.first > 0 ? QStringLiteral("%1–%2").arg(move.range.first).arg(move.range.last) : QString(),
                  open);
    RowCell turn(words::directionWord(move.step->direction, move.step->operation, piano), open);
    turn.kind = RowCell::Kind::turn;
    turn.sign = words::signOf(move.step->operation, move.step->direction, piano);
    turn.size = Text::aim;
    QStringList places;
    for (const CommonPlace& place : move.places)
        places << QStringLiteral("%1: %2").arg(place.at.value).arg(words::number(place.mm, 2));
    RowCell aim(move.go ? words::number(*move.go, 1) : QString(), open);
    aim.size = Text::aim;
    RowCell amount(places.join(QStringLiteral("   ")));
    amount.size = Text::amount;
    if (move.goes > 1)
        amount.text.prepend(atStation(QT_TRANSLATE_NOOP("Station", "go 1 of %1, then look.  ")).arg(move.goes));
    row.cells = {box, where, {}, turn, {}, aim, amount, {}};
    row.sentence = QStringLiteral("%1, %2").arg(words::name(move.step->operation), words::headline(*move.step, piano));
    return row;
}

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

QString answers(const Plan& plan, const Piano& piano) {
    QStringList lines;
    std::set<OperationId> seen;
    for (const Response& r : plan.responses) {
        const bool inPlan = std::ranges::any_of(plan.steps, [&](const Step& s) { return s.operation == r.operation; });
        if (!inPlan || r.effects.empty() || !seen.insert(r.operation).second) continue;
        const QString unit = unitOf(r.operation, piano) == AmountUnit::turn
                                 ? atStation(QT_TRANSLATE_NOOP("Station", "mm a turn"))
                                 : atStation(QT_TRANSLATE_NOOP("Station", "mm a mm"));
        const Effect& e = r.effects.front();
        if (r.learned)
            lines << QStringLiteral("%1: <b>%2</b> %3, %4 to %5")
                         .arg(words::name(r.operation), words::number(e.perUnit), unit, words::number(r.low95),
                              words::number(r.high95));
        else if (unitOf(r.operation, piano) == AmountUnit::turn)
            lines << atStation(
                         QT_TRANSLATE_NOOP("Station", "%1: nothing learned. Direction and aim only; trial first."))
                         .arg(words::name(r.operation));
    }
    return lines.join(QStringLiteral("<br>"));
}

} // namespace

std::vector<ListRow> orderRows(const AdjustmentSheet& sheet, const std::set<std::string>& done) {
    std::vector<ListRow> rows;
    std::size_t notes = 0;
    for (const MendFirst& mend : sheet.mendFirst)
        notes += std::max<std::size_t>(mend.notes.size(), 1);
    if (notes > 0) {
        RowCell state(atStation(QT_TRANSLATE_NOOP("Station", "Mend first, on the bench")), true);
        state.kind = RowCell::Kind::state;
        state.part = 3;
        ListRow row;
        row.key = 0;
        row.cells = {state, soft(QString::number(notes)), {}};
        rows.push_back(row);
    }
    for (const AdjustmentVisit& visit : sheet.visits) {
        ListRow heading;
        heading.heading = words::accessName(visit.access);
        heading.headingRight = visit.minutesToGetThere > 0 ? timeText(visit.minutesToGetThere) : QString();
        heading.height = 6;
        rows.push_back(heading);
        for (const AdjustmentWork& work : visit.works) {
            const int all = static_cast<int>(work.lines.size() + work.moves.size()), ready = doneOf(work, done);
            RowCell state(words::name(work.operation), ready < all);
            state.kind = RowCell::Kind::state;
            state.part = ready == 0 ? 0 : ready < all ? 1 : 2;
            ListRow row;
            row.key = work.number;
            row.sentence = atStation(QT_TRANSLATE_NOOP("Station", "%1, %2 of %3 done"))
                               .arg(words::name(work.operation))
                               .arg(ready)
                               .arg(all);
            row.cells = {state, soft(QString::number(all)), soft(timeText(work.minutes))};
            rows.push_back(row);
        }
    }
    return rows;
}

const AdjustmentWork* workOf(const AdjustmentSheet& sheet, int number) {
    for (const AdjustmentVisit& visit : sheet.visits)
        for (const AdjustmentWork& work : visit.works)
            if (work.number == number) return &work;
    return nullptr;
}

const Step* stepOf(const AdjustmentWork& work, int key) {
    const auto lines = static_cast<int>(work.lines.size());
    if (key < 0) return nullptr;
    if (key < lines) return work.lines[static_cast<std::size_t>(key)].step;
    const auto move = static_cast<std::size_t>(key - lines);
    return move < work.moves.size() ? work.moves[move].step : nullptr;
}

std::vector<ListRow> workRows(const AdjustmentWork& work, const Piano& piano,
                              const std::map<std::string, QString>& done) {
    std::vector<ListRow> rows;
    const auto sections = sectionsOf(piano);
    int key = static_cast<int>(work.lines.size());
    for (const CommonMove& move : work.moves)
        rows.push_back(moveRow(move, key++, piano, done));
    key = 0;
    std::size_t section = sections.size();
    for (const AdjustmentLine& line : work.lines) {
        if (line.section != section) {
            section = line.section;
            ListRow heading;
            heading.heading = QStringLiteral("%1 %2–%3")
                                  .arg(words::sectionName(sections[section], section, sections.size()))
                                  .arg(sections[section].range.first)
                                  .arg(sections[section].range.last);
            heading.height = 5.5;
            rows.push_back(heading);
        }
        rows.push_back(lineRow(line, work, key++, piano, done));
    }
    return rows;
}

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
    if (const QString stop = words::stopSentence(work.guard); !stop.isEmpty()) parts << stop.toHtmlEscaped();
    return parts.join(QLatin1Char(' '));
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
    const auto ofSurvey = askBeforePlan(record.findings, record.piano);
    for (const std::string_view id : openQuestions(plan, record))
        if (std::find(ofSurvey.begin(), ofSurvey.end(), id) == ofSurvey.end())
            asks << words::askFirstSentence(id).toHtmlEscaped();
    for (const Conflict& conflict : plan.conflicts)
        conflicts << words::conflictSentence(conflict, record.piano).toHtmlEscaped();
    QString html = block(atStation(QT_TRANSLATE_NOOP("Station", "Ask first")), asks.join(QStringLiteral("<br>")));
    html +=
        block(atStation(QT_TRANSLATE_NOOP("Station", "Readings out: now, and after the plan")), leadsTo(plan, view));
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
