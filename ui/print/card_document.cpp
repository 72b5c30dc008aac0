// The card for inside the piano, to cut out: whose it is, what was done and when, the climate then, when to come again.
#include "core/reserve/settling.h"
#include "ui/print/documents.h"
#include "ui/words/piano_record.h"
#include "ui/words/said.h"
#include "ui/words/survey_names.h"

#include <QCoreApplication>
#include <QDateTime>
#include <QLocale>

#include <set>

namespace hammerline::print {

namespace {

using words::onPaper;

constexpr double kCardWidth = 148, kLabelWidth = 34, kPad = 6; // of A6 across, mm
constexpr Type kName{16, true}, kLabel{8.5}, kValue{10.5, true}, kCardText{9.5};

struct CardLine {
    QString label;
    Paragraph value; // empty: a rule to write on
};

const Pass* lastRead(const PianoRecord& record) {
    for (auto pass = record.passes.rbegin(); pass != record.passes.rend(); ++pass)
        if (pass->readingCount() > 0) return &*pass;
    return nullptr;
}

QString dayText(std::int64_t microseconds) {
    return QLocale().toString(QDateTime::fromMSecsSinceEpoch(microseconds / 1000).date(),
                              QStringLiteral("d MMMM yyyy"));
}

/// The day of the last work; of the last readings where nothing was done.
QString workDay(const PianoRecord& record) {
    std::int64_t last = 0;
    for (const Done& done : record.done)
        last = std::max(last, done.at);
    for (const Finding& finding : record.findings)
        if (finding.state == FindingState::mended) last = std::max(last, finding.at);
    const Pass* pass = lastRead(record);
    if (last == 0 && pass) last = pass->startedAt;
    return last == 0 ? QString() : dayText(last);
}

/// Mended parts, then what was adjusted, each named once.
QString workDone(const PianoRecord& record) {
    QStringList all;
    std::set<std::string> parts;
    for (const Finding& finding : record.findings)
        if (finding.state == FindingState::mended && parts.insert(finding.part).second)
            all << words::partOfActionName(finding.part);
    std::set<OperationId> operations;
    for (const Done& done : record.done)
        if (done.operation != operation::inspect) operations.insert(done.operation);
    for (const OperationId operation : operations)
        all << words::name(operation, record.piano);
    return all.join(QStringLiteral(", "));
}

QString climateOf(const PianoRecord& record) {
    const Pass* pass = lastRead(record);
    if (!pass) return {};
    const auto celsius = pass->climate ? std::optional(pass->climate->celsius) : pass->temperature;
    const auto humidity = pass->climate ? std::optional(pass->climate->humidity) : pass->humidity;
    QStringList parts;
    if (celsius) parts << onPaper(QT_TRANSLATE_NOOP("paper", "%1 °C")).arg(mm(*celsius, 0));
    if (humidity) parts << onPaper(QT_TRANSLATE_NOOP("paper", "%1 % humidity")).arg(mm(*humidity, 0));
    return parts.join(QStringLiteral(", "));
}

/// Where nobody wrote a visit down: when what is new will have settled enough to be read.
QString settlingVisit(const PianoRecord& record, const std::string& today) {
    const SettlingVisits visits = settlingVisits(settlingOf(record));
    const std::string& due = visits.first >= today ? visits.first : visits.last;
    if (due.empty() || due < today) return {};
    const QDate day = QDate::fromString(words::utf8(due), Qt::ISODate);
    return QLocale().toString(day, QStringLiteral("d MMMM yyyy")) + QStringLiteral(": ") +
           onPaper(QT_TRANSLATE_NOOP("paper", "read what new felts have moved"));
}

/// The first visit that is due on this day or later.
QString nextVisit(const PianoRecord& record, const QDate& today) {
    const Remark* next = nullptr;
    const std::string now = today.toString(Qt::ISODate).toStdString();
    for (const Remark& remark : record.remarks) {
        const bool due = remark.kind == RemarkKind::visit && remark.on >= now;
        if (due && (!next || remark.on < next->on)) next = &remark;
    }
    if (!next) return settlingVisit(record, now);
    const QDate day = QDate::fromString(words::utf8(next->on), Qt::ISODate);
    return QLocale().toString(day, QStringLiteral("d MMMM yyyy")) + QStringLiteral(": ") + words::utf8(next->text);
}

std::vector<CardLine> cardLines(const Source& source) {
    const PianoRecord& record = source.record;
    const auto line = [](const char* label, const QString& value) {
        return CardLine{onPaper(label), value.isEmpty() ? Paragraph{} : Paragraph{{value, true}}};
    };
    return {
        line(QT_TRANSLATE_NOOP("paper", "Date"), workDay(record)),
        line(QT_TRANSLATE_NOOP("paper", "Work done"), workDone(record)),
        line(QT_TRANSLATE_NOOP("paper", "Room then"), climateOf(record)),
        line(QT_TRANSLATE_NOOP("paper", "By"), words::utf8(identityValue(record.identity, "worker"))),
        line(QT_TRANSLATE_NOOP("paper", "Next visit"), nextVisit(record, source.date)),
    };
}

/// Two lines of text at least to write on where nothing is known.
double heightOf(const CardLine& line, double width) {
    if (line.value.empty()) return 9.5;
    return std::max(8.0, paragraphHeight(line.value, kValue, width) + 3.5);
}

Solid card(const Source& source) {
    const std::vector<CardLine> lines = cardLines(source);
    const double width = kCardWidth - 2 * kPad - kLabelWidth;
    Identity shown = source.record.identity;
    shown.erase("worker");  // has its own line
    shown.erase("contact"); // nobody's telephone number lies open in a piano
    const QString whose = words::identityLine(shown);
    const QString name = words::utf8(source.piano().name);
    const double top = whose.isEmpty() ? 14 : 19;
    double height = top + kPad;
    for (const CardLine& line : lines)
        height += heightOf(line, width);
    return {height + 4, [=](Canvas& c, const QRectF& r) {
                c.frame({r.x(), r.y(), kCardWidth, height}, 0.3);
                c.textWithin(r.x() + kPad, r.y() + 9.5, kCardWidth - 2 * kPad, name, kName);
                c.textWithin(r.x() + kPad, r.y() + 15, kCardWidth - 2 * kPad, whose, kCardText);
                double y = r.y() + top;
                for (const CardLine& line : lines) {
                    const double each = heightOf(line, width), x = r.x() + kPad + kLabelWidth;
                    c.text(r.x() + kPad, y + 5.4, line.label, kLabel);
                    c.paragraph(x, y + 1.6, width, line.value, kValue);
                    c.line(line.value.empty() ? x : r.x() + kPad, y + each - 0.8, r.x() + kCardWidth - kPad,
                           y + each - 0.8, 0.2);
                    y += each;
                }
            }};
}

} // namespace

Document cardDocument(const Source& source) {
    Document document = partsSheet(source, onPaper(QT_TRANSLATE_NOOP("paper", "Card for inside the piano")), {});
    document.blocks.emplace_back(paragraphBlock(
        {{(source.piano().vertical()
               ? onPaper(QT_TRANSLATE_NOOP("paper", "Cut out and fix inside the top panel or the key slip, away from "
                                                    "moving parts."))
               : onPaper(QT_TRANSLATE_NOOP("paper", "Cut out and fix inside the key slip, away from moving parts."))) +
              QLatin1Char(' ') + onPaper(QT_TRANSLATE_NOOP("paper", "What is not known has a line to write on.")),
          false}},
        10, source.width()));
    document.blocks.emplace_back(gap(3));
    document.blocks.emplace_back(card(source));
    return document;
}

} // namespace hammerline::print
