#include "ui/stations/work_rows.h"

#include "ui/words/step_texts.h"
#include "ui/words/words.h"
#include "ui/words/work_now.h"

#include <algorithm>

namespace hammerline {

namespace {

bool settled(const StepNow& now) {
    return now.state == StepState::done || now.state == StepState::notHere;
}

/// How the ring of a row is painted; see RowCell::part.
int ringOf(const StepNow& now) {
    if (settled(now)) return 2;
    if (!now.supplies.empty()) return 3;
    if (now.state == StepState::waits) return 4;
    if (now.state == StepState::partDone) return 1;
    const bool toRead = now.asks == StepAsks::read || now.asks == StepAsks::readAgain;
    return toRead ? 5 : 0;
}

/// How much of it is left in a word or two; the page beside the list says it whole.
QString shortlyLeft(const StepNow& now) {
    if (now.state == StepState::notHere) return QCoreApplication::translate("Station", "not needed");
    if (settled(now)) return {};
    if (!now.supplies.empty()) return QCoreApplication::translate("Station", "parts first");
    if (now.state == StepState::waits && !now.waitsFor.empty()) return QCoreApplication::translate("Station", "waits");
    if (!now.doneNotes.empty())
        return QCoreApplication::translate("Station", "%1 of %2")
            .arg(now.doneNotes.size())
            .arg(now.doneNotes.size() + now.notes.size());
    if (now.lines > 0) return QCoreApplication::translate("Station", "%n line(s)", nullptr, now.lines);
    if (!now.notes.empty())
        return QCoreApplication::translate("Station", "%n note(s)", nullptr, static_cast<int>(now.notes.size()));
    return {};
}

ListRow stepRow(const StepNow& now, const Piano& piano, int place, bool isNext) {
    const QString name = words::stepName(now.step->id), state = words::stepStateName(now.state);
    const QString more = settled(now) ? words::stepReason(now) : words::stepLeft(now, piano);
    RowCell title(name, isNext || now.openNow());
    title.kind = RowCell::Kind::state;
    title.part = ringOf(now);
    title.soft = !title.bold;
    ListRow row;
    row.cells = {title, soft(shortlyLeft(now)), soft(now.minutes > 0 ? timeText(now.minutes) : QString())};
    row.sentence = more.isEmpty() ? QStringLiteral("%1: %2").arg(name, state)
                                  : QStringLiteral("%1: %2, %3").arg(name, state, more);
    row.key = place;
    return row;
}

bool shownIn(const StepNow& now, bool all) {
    return all || now.reason != "not-asked";
}

QString paragraph(const words::StepParagraph& each) {
    return QStringLiteral("<p><b>%1</b><br>%2</p>").arg(each.heading.toHtmlEscaped(), each.text.toHtmlEscaped());
}

/// Names of the steps that wait for this one, and of the dimensions that it makes old.
QString opensAndDisturbs(const StepOfWork& step, const Piano& piano) {
    QStringList opens, old;
    for (const StepOfWork* each : stepsOf(piano)) {
        const auto needs = needsOf(*each, piano);
        if (std::ranges::find(needs, step.id) != needs.end()) opens << words::stepName(each->id).toHtmlEscaped();
    }
    for (const std::string_view each : step.disturbs)
        if (each == "everything")
            old << QCoreApplication::translate("Station", "every reading taken before");
        else if (const auto dimension = findDimension(each))
            old << words::name(*dimension).toHtmlEscaped();
    QStringList out;
    if (!opens.isEmpty())
        out << QCoreApplication::translate("Station", "<b>Opens:</b> %1.").arg(opens.join(QStringLiteral(", ")));
    if (!old.isEmpty())
        out << QCoreApplication::translate("Station", "<b>Makes old:</b> %1: asked again, never erased.")
                   .arg(old.join(QStringLiteral(", ")));
    return out.join(QStringLiteral("<br>"));
}

} // namespace

std::vector<ListRow> stepRows(const WorkNow& now, const Piano& piano, bool all) {
    std::vector<ListRow> rows;
    std::string_view access;
    const std::string_view next = now.next.step ? now.next.step->step->id : std::string_view{};
    std::size_t heading = 0;
    int shown = 0, done = 0;
    const auto closeGroup = [&] {
        if (shown > 0)
            rows[heading].headingRight = QCoreApplication::translate("Station", "%1 of %2 done").arg(done).arg(shown);
        shown = done = 0;
    };
    for (std::size_t i = 0; i < now.steps.size(); ++i) {
        const StepNow& each = now.steps[i];
        if (!shownIn(each, all)) continue;
        const std::string_view here = accessFor(*each.step, piano, each.notes.size());
        if (here != access || rows.empty()) {
            closeGroup();
            heading = rows.size();
            ListRow row;
            row.heading = words::workAccessName(here);
            row.heading[0] = row.heading[0].toUpper();
            row.height = 5.5;
            rows.push_back(std::move(row));
        }
        access = here;
        ++shown;
        done += settled(each) ? 1 : 0;
        rows.push_back(stepRow(each, piano, static_cast<int>(i), each.step->id == next));
    }
    closeGroup();
    return rows;
}

QString doneOfAll(const WorkNow& now, bool all) {
    const auto shown = std::ranges::count_if(now.steps, [&](const StepNow& each) { return shownIn(each, all); });
    const auto done =
        std::ranges::count_if(now.steps, [&](const StepNow& each) { return shownIn(each, all) && settled(each); });
    return QCoreApplication::translate("Station", "%1 of %2").arg(done).arg(shown);
}

QString workStepHtml(const StepNow& now, const Piano& piano, bool twoColumns) {
    const QString more = settled(now) ? words::stepReason(now) : words::stepLeft(now, piano);
    QString html;
    if (now.state != StepState::open || !more.isEmpty())
        html = QStringLiteral("<p><b>%1</b>%2</p>")
                   .arg(words::stepStateName(now.state).toHtmlEscaped(),
                        more.isEmpty() ? QString() : QStringLiteral(": ") + more.toHtmlEscaped());
    const auto paragraphs = words::stepParagraphs(*now.step, piano);
    // what is read before the hands move stands left, what is held against the work while they do stands right
    QString left, right;
    qsizetype length = 0, said = 0;
    for (const words::StepParagraph& each : paragraphs)
        length += each.text.size();
    for (const words::StepParagraph& each : paragraphs) {
        (said < length / 2 || !twoColumns ? left : right) += paragraph(each);
        said += each.text.size();
    }
    html += twoColumns ? QStringLiteral("<table width='100%' cellspacing=0><tr><td width='50%'>%1</td>"
                                        "<td width='16'></td><td>%2</td></tr></table>")
                             .arg(left, right)
                       : left;
    return html + QStringLiteral("<p>%1</p>").arg(opensAndDisturbs(*now.step, piano));
}

QString cautionHtml(const StepOfWork& step, const Piano& piano) {
    QStringList out;
    for (const std::string_view each : cautionsOf(step, piano))
        out << words::caution(each, piano).toHtmlEscaped();
    return out.join(QLatin1Char(' '));
}

} // namespace hammerline
