// The work list of the survey, the parts to order, and the marks for parts that come off.
#include "core/survey/job.h"
#include "core/survey/numbering.h"
#include "ui/print/documents.h"
#include "ui/words/words.h"

#include <QCoreApplication>

#include <algorithm>
#include <map>

namespace hammerline::print {

namespace {

QString said(const char* text) {
    return QCoreApplication::translate("paper", text);
}

constexpr Type kHead{9}, kPart{11, true}, kText{9.5}, kSmall{8.5};

QString stageText(JobStage stage) {
    static constexpr std::array kNames = {QT_TRANSLATE_NOOP("paper", "Before anything is tilted"),
                                          QT_TRANSLATE_NOOP("paper", "Action"),
                                          QT_TRANSLATE_NOOP("paper", "Hammers"),
                                          QT_TRANSLATE_NOOP("paper", "Rails"),
                                          QT_TRANSLATE_NOOP("paper", "Key frame"),
                                          QT_TRANSLATE_NOOP("paper", "Keys"),
                                          QT_TRANSLATE_NOOP("paper", "Dampers"),
                                          QT_TRANSLATE_NOOP("paper", "Pedals"),
                                          QT_TRANSLATE_NOOP("paper", "Player")};
    return said(kNames.at(static_cast<std::size_t>(stage)));
}

/// "rotted, replace set: 1-88; torn: 12" of the open and watched findings of a part.
Paragraph findingsText(std::string_view part, const Source& source) {
    struct Same {
        std::string fault, remedy;
        FindingState state;
        auto operator<=>(const Same&) const = default;
    };
    std::map<Same, std::vector<NoteNumber>> groups;
    for (const Finding& finding : source.record.findings)
        if (finding.part == part && (finding.state == FindingState::toDo || finding.state == FindingState::watch)) {
            auto& notes = groups[{finding.fault, finding.remedy, finding.state}];
            if (finding.note) notes.push_back(*finding.note);
        }
    Paragraph text;
    for (auto& [same, notes] : groups) {
        std::ranges::sort(notes);
        QStringList what;
        if (same.state == FindingState::watch) what << words::surveyStateName(same.state);
        if (!same.fault.empty()) what << words::faultName(same.fault);
        if (!same.remedy.empty()) what << words::remedyName(same.remedy);
        if (!text.empty()) text.push_back({QStringLiteral(";  "), false});
        text.push_back({what.join(QStringLiteral(", ")), false});
        if (!notes.empty()) text.push_back({QStringLiteral(": ") + QString::fromStdString(writeNotes(notes)), true});
    }
    return text;
}

TableRow jobRow(const JobLine& line, const Source& source) {
    constexpr double kTextLeft = 62, kRight = 20;
    const Paragraph text = findingsText(line.part, source);
    const double width = source.width() - kTextLeft - kRight;
    const double height = std::max(8.5, paragraphHeight(text, kText, width) + 3.4);
    const QString name = words::partOfActionName(line.part);
    QString remark = line.first ? said(QT_TRANSLATE_NOOP("paper", "mend first")) : QString{};
    if (line.wholeSet) remark = said(QT_TRANSLATE_NOOP("paper", "whole set proposed"));
    if (line.specialist) remark = said(QT_TRANSLATE_NOOP("paper", "refer to a specialist"));
    const QString minutes = line.minutesOpen > 0 ? minutesText(line.minutesOpen) : QString{};
    return {height, stageText(line.stage),
            [=](Canvas& c, const QRectF& r) {
                const double base = r.y() + 5.2;
                c.tickBox(r.x(), r.y() + 1.2);
                c.textWithin(r.x() + 8.5, base, kTextLeft - 11, name, kPart);
                c.paragraph(r.x() + kTextLeft, r.y() + 1.7, width, text, kText);
                c.text(r.right(), base, minutes, kText, Align::right);
                c.textWithin(r.right(), base + 4, kRight, height > 11 ? remark : QString{}, kSmall, Align::right);
                if (height <= 11 && !remark.isEmpty())
                    c.textWithin(r.x() + 8.5, base + 3.1, kTextLeft - 11, remark, {7});
                c.line(r.x(), r.bottom(), r.right(), r.bottom(), 0.3);
            },
            name};
}

TableRow partsRow(const PartsLine& line, const Source& source) {
    constexpr double kNotesLeft = 112;
    const double width = source.width() - kNotesLeft;
    const Paragraph notes = {{QString::fromStdString(writeNotes(line.notes)), false}};
    const double height = std::max(9.0, paragraphHeight(notes, kSmall, width) + 3.5);
    const QString name = words::partOfActionName(line.part);
    const QString size = QString::fromStdString(line.size);
    const QString set =
        line.wholeSet
            ? said(QT_TRANSLATE_NOOP("paper", "whole set proposed: %1 of %2 faulty")).arg(line.found).arg(line.of)
            : QString{};
    return {height,
            {},
            [=](Canvas& c, const QRectF& r) {
                const double base = r.y() + 5;
                c.tickBox(r.x(), r.y() + 1.4);
                c.textWithin(r.x() + 8.5, base, 43, name, kPart);
                if (!set.isEmpty()) c.textWithin(r.x() + 8.5, base + 3.2, 60, set, {7.5});
                c.textWithin(r.x() + 53, base, 18, size, kText);
                c.text(r.x() + 80, base, QString::number(line.needed), kText, Align::right);
                c.text(r.x() + 90, base, line.spare ? QString::number(line.spare) : QString(QChar(0x00B7)), kText,
                       Align::right);
                c.text(r.x() + 107, base, QString::number(line.quantity), {14, true}, Align::right);
                c.paragraph(r.x() + kNotesLeft, r.y() + 1.9, width, notes, kSmall);
                c.line(r.x(), r.bottom(), r.right(), r.bottom(), 0.3);
            },
            name};
}

} // namespace

Document surveyDocument(const Source& source) {
    const Job job = wholeJob(source.record.findings, source.piano(), jobTerms(source.record.preferences));
    const QString about = said(QT_TRANSLATE_NOOP("paper", "%1 of bench work  ·  %2 notes wait for it"))
                              .arg(minutesText(job.minutesOpen))
                              .arg(job.blockedNotes);
    Document document = emptyDocument(source, said(QT_TRANSLATE_NOOP("paper", "Work list of the survey")), about);
    document.rowWord = said(QT_TRANSLATE_NOOP("paper", "parts"));
    auto& blocks = document.blocks;
    blocks.emplace_back(cautionBox(cautionText(source.piano()), source.width()));
    Table table;
    table.columns = 1;
    table.headHeight = 0;
    table.again = gap(0);
    for (const JobLine& line : job.lines)
        if (!line.toDo.empty() || !line.watch.empty() || line.wholePiano) table.rows.push_back(jobRow(line, source));
    if (table.rows.empty()) {
        blocks.emplace_back(paragraphBlock({{said(QT_TRANSLATE_NOOP("paper", "Nothing is to be mended.")), false}}, 12,
                                           source.width()));
        return document;
    }
    blocks.emplace_back(std::move(table));
    blocks.emplace_back(gap(3));
    if (job.unforeseen > 0)
        blocks.emplace_back(
            paragraphBlock({{said(QT_TRANSLATE_NOOP("paper", "Beside it %1 for what shows only once it is apart."))
                                 .arg(minutesText(job.unforeseen)),
                             false}},
                           9.5, source.width()));
    return document;
}

Document partsDocument(const Source& source) {
    const std::vector<PartsLine> lines =
        partsList(source.record.findings, source.piano(), jobTerms(source.record.preferences).spares);
    Document document = emptyDocument(source, said(QT_TRANSLATE_NOOP("paper", "Parts to order")), {});
    document.rowWord = said(QT_TRANSLATE_NOOP("paper", "lines"));
    Table table;
    table.columns = 1;
    table.head = [](Canvas& c, const QRectF& r) {
        const double base = r.bottom() - 1.8;
        c.text(r.x(), base, said(QT_TRANSLATE_NOOP("paper", "in hand")), kHead);
        c.text(r.x() + 53, base, said(QT_TRANSLATE_NOOP("paper", "size")), kHead);
        c.text(r.x() + 80, base, said(QT_TRANSLATE_NOOP("paper", "needed")), kHead, Align::right);
        c.text(r.x() + 90, base, said(QT_TRANSLATE_NOOP("paper", "spare")), kHead, Align::right);
        c.text(r.x() + 107, base, said(QT_TRANSLATE_NOOP("paper", "order")), {9, true}, Align::right);
        c.text(r.x() + 112, base, said(QT_TRANSLATE_NOOP("paper", "for notes")), kHead);
        c.line(r.x(), r.bottom(), r.right(), r.bottom(), 0.3);
    };
    table.again = gap(0);
    for (const PartsLine& line : lines)
        table.rows.push_back(partsRow(line, source));
    if (table.rows.empty())
        document.blocks.emplace_back(
            paragraphBlock({{said(QT_TRANSLATE_NOOP("paper", "No parts are needed.")), false}}, 12, source.width()));
    else
        document.blocks.emplace_back(std::move(table));
    return document;
}

Document labelsDocument(const Source& source) {
    Document document = emptyDocument(source, said(QT_TRANSLATE_NOOP("paper", "Marks for parts that come off")), {});
    document.rowWord = said(QT_TRANSLATE_NOOP("paper", "marks"));
    Table table;
    table.columns = 6;
    table.gap = 0;
    table.headHeight = 0;
    table.groupHeight = 7;
    table.again = gap(0);
    for (const Mark& mark : marksFor(source.piano()))
        table.rows.push_back({11, words::partOfActionName(mark.part),
                              [mark, &source_piano = source.record.piano](Canvas& c, const QRectF& r) {
                                  c.frame(r, 0.3);
                                  c.textWithin(r.x() + r.width() / 2, r.y() + 6, r.width() - 2,
                                               QString::fromStdString(mark.text), {14, true}, Align::centre);
                                  c.text(r.x() + r.width() / 2, r.y() + 9.7, words::pitch(mark.note, source_piano),
                                         kSmall, Align::centre);
                              },
                              QString::fromStdString(mark.text)});
    document.blocks.emplace_back(std::move(table));
    return document;
}

} // namespace hammerline::print
