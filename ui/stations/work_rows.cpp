#include "ui/stations/work_rows.h"

#include "ui/words/step_texts.h"
#include "ui/words/words.h"
#include "ui/words/work_now.h"

namespace hammerline {

namespace {

/// 0 open, 1 begun, 2 done, as the box of a row shows it.
int tickPart(const StepNow& now) {
    const bool over = now.state == StepState::done;
    return over ? 2 : now.state == StepState::partDone ? 1 : 0;
}

ListRow stepRow(const StepNow& now, const Piano& piano, int place, bool isNext) {
    const bool settled = now.state == StepState::done || now.state == StepState::notHere;
    const QString name = words::stepName(now.step->id), state = words::stepStateName(now.state);
    const QString more = settled ? words::stepReason(now) : words::stepLeft(now, piano);
    RowCell box;
    box.kind = RowCell::Kind::tick;
    box.part = tickPart(now);
    RowCell title(name, isNext || now.openNow());
    title.soft = settled;
    ListRow row;
    row.cells = {box, title, soft(more), soft(now.minutes > 0 ? timeText(now.minutes) : QString()),
                 RowCell(state, isNext)};
    row.sentence = more.isEmpty() ? QStringLiteral("%1: %2").arg(name, state)
                                  : QStringLiteral("%1: %2, %3").arg(name, state, more);
    row.key = place;
    return row;
}

} // namespace

std::vector<ListRow> workRows(const WorkNow& now, const Piano& piano, bool all) {
    std::vector<ListRow> rows;
    std::string_view access;
    const std::string_view next = now.next.step ? now.next.step->step->id : std::string_view{};
    for (std::size_t i = 0; i < now.steps.size(); ++i) {
        const StepNow& each = now.steps[i];
        if (each.reason == "not-asked" && !all) continue;
        const std::string_view here = accessFor(*each.step, piano, each.notes.size());
        if (here != access || rows.empty()) {
            ListRow heading;
            heading.heading = words::workAccessName(here);
            rows.push_back(std::move(heading));
        }
        access = here;
        rows.push_back(stepRow(each, piano, static_cast<int>(i), each.step->id == next));
    }
    return rows;
}

QString workStepHtml(const StepNow& now, const Piano& piano) {
    QString html = QStringLiteral("<h3>%1</h3>").arg(words::stepName(now.step->id).toHtmlEscaped());
    const bool settled = now.state == StepState::done || now.state == StepState::notHere;
    const QString more = settled ? words::stepReason(now) : words::stepLeft(now, piano);
    html += QStringLiteral("<p><b>%1</b>%2</p>")
                .arg(words::stepStateName(now.state).toHtmlEscaped(),
                     more.isEmpty() ? QString() : QStringLiteral(": ") + more.toHtmlEscaped());
    for (const words::StepParagraph& each : words::stepParagraphs(*now.step, piano))
        html += QStringLiteral("<p><b>%1</b><br>%2</p>").arg(each.heading.toHtmlEscaped(), each.text.toHtmlEscaped());
    return html;
}

} // namespace hammerline
