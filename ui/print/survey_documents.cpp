// The work list of the survey and the parts to order.
#include "core/sheet/work_order.h"
#include "core/survey/job.h"
#include "core/survey/rail_advice.h"
#include "core/survey/standing.h"
#include "ui/print/documents.h"
#include "ui/words/said.h"
#include "ui/words/size_names.h"
#include "ui/words/survey_names.h"

#include <QCoreApplication>

#include <algorithm>
#include <map>

namespace hammerline::print {

namespace {

using words::onPaper;

constexpr Type kHead{9}, kPart{11, true}, kText{9.5}, kSmall{8.5};

/// "rotted, replace set: 1-88; torn: 12" of the open and watched findings of a part.
Paragraph findingsText(const Part& part, const Standing& standing) {
    struct Same {
        FindingState state;
        std::string fault, remedy, remark;
        auto operator<=>(const Same&) const = default;
    };
    std::map<Same, std::vector<NoteNumber>> groups;
    bool whole = true;
    for (const NoteNumber n : notesOf(part, standing.piano())) {
        const Finding* finding = standing.at(part, n);
        if (!finding || (finding->state != FindingState::toDo && finding->state != FindingState::watch)) continue;
        const Remedy* remedy = remedyOf(*finding);
        whole = whole && !finding->note;
        groups[{finding->state, finding->fault, remedy ? std::string(remedy->key) : "", finding->remark}].push_back(n);
    }
    Paragraph text;
    for (const auto& [same, notes] : groups) {
        QStringList what;
        if (same.state == FindingState::watch) what << words::surveyStateName(same.state);
        if (!same.fault.empty()) what << words::faultName(same.fault);
        if (!same.remedy.empty() && same.state != FindingState::watch) what << words::surveyRemedyName(same.remedy);
        if (!same.remark.empty()) what << QString::fromStdString(same.remark);
        if (!text.empty()) text.push_back({QStringLiteral(";  "), false});
        text.push_back({what.join(QStringLiteral(", ")), false});
        if (!whole) text.push_back({QStringLiteral(": ") + QString::fromStdString(writeNotes(notes)), true});
    }
    return text;
}

TableRow jobRow(const JobLine& line, const Standing& standing, const Source& source) {
    constexpr double kTextLeft = 62, kRight = 20;
    const Paragraph text = findingsText(*findPart(line.part), standing);
    const double width = source.width() - kTextLeft - kRight;
    const double written = paragraphHeight(text, kText, width) + 3.4;
    const QString name = words::partOfActionName(line.part);
    QString remark = line.first ? onPaper(QT_TRANSLATE_NOOP("paper", "mend first")) : QString{};
    if (line.wholeSet) remark = onPaper(QT_TRANSLATE_NOOP("paper", "whole set proposed"));
    if (line.waits) remark = onPaper(QT_TRANSLATE_NOOP("paper", "waits for parts"));
    if (line.specialist) remark = onPaper(QT_TRANSLATE_NOOP("paper", "refer to a specialist"));
    const double height = std::max(remark.isEmpty() ? 8.5 : 10.8, written); // a remark has a line below the name
    const QString minutes = line.minutesOpen > 0 ? minutesText(line.minutesOpen) : QString{};
    return {height, words::jobStageName(line.stage),
            [=](Canvas& c, const QRectF& r) {
                const double base = r.y() + 5.2;
                c.tickBox(r.x(), r.y() + 1.2);
                c.textWithin(r.x() + 8.5, base, kTextLeft - 11, name, kPart);
                c.paragraph(r.x() + kTextLeft, r.y() + 1.7, width, text, kText);
                c.text(r.right(), base, minutes, kText, Align::right);
                c.textWithin(r.right(), base + 4, kRight, height > 11 ? remark : QString{}, kSmall, Align::right);
                if (height <= 11 && !remark.isEmpty())
                    c.textWithin(r.x() + 8.5, base + 4, kTextLeft - 11, remark, kSmall);
                c.line(r.x(), r.bottom(), r.right(), r.bottom(), 0.3);
            },
            name};
}

/// The columns of the order: right edges of the figures, left edge of the notes.
constexpr double kNeeded = 79, kSpare = 92, kOrder = 112, kNotesLeft = 117;

TableRow partsRow(const PartsLine& line, const Source& source) {
    const double width = source.width() - kNotesLeft;
    const Paragraph notes = {{QString::fromStdString(writeNotes(line.notes)), false}};
    const QString sizeText = words::orderedBy(line);
    const Paragraph bySize = {{sizeText, false}};
    const double sizeWidth = source.width() - 8.5;
    const double sizeHeight = sizeText.isEmpty() ? 0 : paragraphHeight(bySize, kSmall, sizeWidth) + 1.2;
    const double height = std::max(9.0, paragraphHeight(notes, kSmall, width) + 3.5) + sizeHeight;
    const QString name = words::supplyName(line.part);
    const QString size = words::supplySize(line);
    const QString needed = words::supplyQuantity(line, line.needed), order = words::supplyQuantity(line, line.quantity);
    const QString spare = line.spare ? words::supplyQuantity(line, line.spare) : QString(QChar(0x00B7));
    const bool itself = line.with.empty(); // else the material of the line above
    const Type nameType = itself ? kPart : kText, orderType{itself ? 13.0 : 11.0, true};
    const QString set =
        line.wholeSet && itself
            ? onPaper(QT_TRANSLATE_NOOP("paper", "whole set proposed: %1 of %2 faulty")).arg(line.found).arg(line.of)
            : QString{};
    return {height,
            {},
            [=](Canvas& c, const QRectF& r) {
                const double base = r.y() + 5;
                c.tickBox(r.x(), r.y() + 1.4);
                c.textWithin(r.x() + 8.5, base, 43, name, nameType);
                if (!set.isEmpty()) c.textWithin(r.x() + 8.5, base + 3.2, 60, set, {7.5});
                if (set.isEmpty())
                    c.textWithin(r.x() + 8.5, base + 3.4, 56, size, {7.5});
                else
                    c.textWithin(r.x() + 53, base, 17, size, kSmall);
                c.text(r.x() + kNeeded, base, needed, kText, Align::right);
                c.text(r.x() + kSpare, base, spare, kText, Align::right);
                c.text(r.x() + kOrder, base, order, orderType, Align::right);
                c.paragraph(r.x() + kNotesLeft, r.y() + 1.9, width, notes, kSmall);
                if (sizeHeight > 0) c.paragraph(r.x() + 8.5, r.bottom() - sizeHeight, sizeWidth, bySize, kSmall);
                c.line(r.x(), r.bottom(), r.right(), r.bottom(), 0.3);
            },
            name};
}

/// The whole job, a line a step: what is open, how long, how it stands.
TableRow stepRow(int number, const WorkOrderStep& step) {
    const QString name = words::workStepName(step.id);
    const QString text = words::workStepText(step);
    const QString state = words::workStateName(step.state);
    const QString time = step.minutesOpen > 0 ? minutesText(step.minutesOpen) : QString{};
    const bool done = step.state == WorkState::done;
    return {6.2,
            {},
            [=](Canvas& c, const QRectF& r) {
                const double base = r.y() + 4.4;
                c.text(r.x() + 5, base, QString::number(number), kText, Align::right);
                c.textWithin(r.x() + 8.5, base, 66, name, {9.5, !done});
                c.textWithin(r.x() + 77, base, r.width() - 77 - 42, text, kSmall);
                c.text(r.right() - 22, base, time, kText, Align::right);
                c.text(r.right(), base, state, kSmall, Align::right);
                c.line(r.x(), r.bottom(), r.right(), r.bottom(), 0.2);
            },
            name};
}

/// Each caution of the parts that are worked at, once.
Paragraph partCautions(const Job& job, const Piano& piano) {
    Paragraph text = cautionText(piano);
    std::vector<std::string_view> ids;
    for (const JobLine& line : job.lines) {
        const Part* part = findPart(line.part);
        const bool shown = !part || part->caution.empty() || part->caution == "tipping" || part->caution == "tension" ||
                           part->caution == "force" || part->caution == "mains" ||
                           std::find(ids.begin(), ids.end(), part->caution) != ids.end();
        if (shown || line.toDo.empty()) continue;
        ids.push_back(part->caution);
        text.push_back({QLatin1Char(' ') + words::caution(part->caution, piano), false});
    }
    return text;
}

void addLines(Document& document, const QString& title, const QStringList& lines, double width) {
    if (lines.isEmpty()) return;
    document.blocks.emplace_back(headingBlock({}, title, {}));
    for (const QString& line : lines)
        document.blocks.emplace_back(paragraphBlock({{line, false}}, 9.5, width));
    document.blocks.emplace_back(gap(2));
}

} // namespace

Document surveyDocument(const Source& source) {
    const PianoRecord& record = source.record;
    const Standing standing(record.findings, source.piano());
    const Job job = wholeJob(record.findings, source.piano(), jobTerms(record.preferences));
    const WorkOrder order = workOrder(record);
    const QString about = onPaper(QT_TRANSLATE_NOOP("paper", "%1 open, %2 done  ·  %3 notes wait"))
                              .arg(minutesText(order.minutesOpen), minutesText(order.minutesDone))
                              .arg(job.blockedNotes);
    Document document = partsSheet(source, onPaper(QT_TRANSLATE_NOOP("paper", "Work list of the survey")), about);
    document.rowWord = onPaper(QT_TRANSLATE_NOOP("paper", "lines"));
    auto& blocks = document.blocks;
    blocks.emplace_back(cautionBox(partCautions(job, source.piano()), source.width()));
    blocks.emplace_back(headingBlock({}, onPaper(QT_TRANSLATE_NOOP("paper", "The whole job, in this order")),
                                     onPaper(QT_TRANSLATE_NOOP("paper", "and %1 for what shows only once it is apart"))
                                         .arg(minutesText(order.unforeseen))));
    Table steps = plainTable();
    for (const WorkOrderStep& step : order.steps)
        steps.rows.push_back(stepRow(static_cast<int>(steps.rows.size()) + 1, step));
    blocks.emplace_back(std::move(steps));
    blocks.emplace_back(gap(3));
    QStringList asked, heard;
    if (letOffRailFirst(record.findings, source.piano())) asked << words::letOffRailSentence();
    for (const std::string_view id : askBeforePlan(record.findings, source.piano(), record.marks))
        asked << QStringLiteral("\u25A1  ") + words::surveyQuestion(id, source.piano());
    addLines(document, onPaper(QT_TRANSLATE_NOOP("paper", "Asked before anything is adjusted")), asked, source.width());
    for (const Advice& advice : adviceOf(record))
        heard << words::adviceSentence(advice, source.piano());
    addLines(document, onPaper(QT_TRANSLATE_NOOP("paper", "Symptoms")), heard, source.width());
    Table table = plainTable();
    for (const JobLine& line : job.lines)
        if (!line.toDo.empty() || !line.watch.empty()) table.rows.push_back(jobRow(line, standing, source));
    if (table.rows.empty()) {
        blocks.emplace_back(paragraphBlock({{onPaper(QT_TRANSLATE_NOOP("paper", "Nothing is to be mended.")), false}},
                                           12, source.width()));
        return document;
    }
    blocks.emplace_back(headingBlock({}, onPaper(QT_TRANSLATE_NOOP("paper", "Repairs")), {}));
    blocks.emplace_back(std::move(table));
    return document;
}

Document partsDocument(const Source& source) {
    const std::vector<PartsLine> lines =
        partsList(source.record.findings, source.piano(), jobTerms(source.record.preferences).spares);
    Document document = partsSheet(source, onPaper(QT_TRANSLATE_NOOP("paper", "Parts to order")), {});
    document.rowWord = onPaper(QT_TRANSLATE_NOOP("paper", "lines"));
    Table table;
    table.columns = 1;
    table.head = [](Canvas& c, const QRectF& r) {
        const double base = r.bottom() - 1.8;
        c.text(r.x(), base, onPaper(QT_TRANSLATE_NOOP("paper", "in hand")), kHead);
        c.text(r.x() + kNeeded, base, onPaper(QT_TRANSLATE_NOOP("paper", "needed")), kHead, Align::right);
        c.text(r.x() + kSpare, base, onPaper(QT_TRANSLATE_NOOP("paper", "spare")), kHead, Align::right);
        c.text(r.x() + kOrder, base, onPaper(QT_TRANSLATE_NOOP("paper", "order")), {9, true}, Align::right);
        c.text(r.x() + kNotesLeft, base, onPaper(QT_TRANSLATE_NOOP("paper", "for notes")), kHead);
        c.line(r.x(), r.bottom(), r.right(), r.bottom(), 0.3);
    };
    table.again = gap(0);
    for (const PartsLine& line : lines)
        table.rows.push_back(partsRow(line, source));
    if (table.rows.empty())
        document.blocks.emplace_back(
            paragraphBlock({{onPaper(QT_TRANSLATE_NOOP("paper", "No parts are needed.")), false}}, 12, source.width()));
    else
        document.blocks.emplace_back(std::move(table));
    return document;
}

} // namespace hammerline::print
