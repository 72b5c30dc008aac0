// Two passes on paper: what was out and is out, median and spread, what got worse, what was learned.
#include "ui/print/documents.h"
#include "ui/words/finish.h"
#include "ui/words/said.h"
#include "ui/words/words.h"

#include <QCoreApplication>

#include <cmath>

namespace hammerline::print {

namespace {

using words::onPaper;

constexpr Type kHead{9}, kCell{10}, kBold{10, true};
constexpr double kRow = 7;
// Right edges, mm.
constexpr double kBefore = 54, kNow = 68, kWorse = 82, kMedianBefore = 98, kMedianNow = 111, kSpreadBefore = 125,
                 kSpreadNow = 138, kState = 144;

QString stateText(const ComparisonLine& line) {
    switch (line.state) {
    case DimensionState::even:
        return onPaper(QT_TRANSLATE_NOOP("paper", "even"));
    case DimensionState::good:
        return onPaper(QT_TRANSLATE_NOOP("paper", "good"));
    case DimensionState::notComparable:
        return onPaper(QT_TRANSLATE_NOOP("paper", "not comparable"));
    case DimensionState::notYet:
        break;
    }
    if (!line.stopped.empty())
        return onPaper(QT_TRANSLATE_NOOP("paper", "%1 out, %2 stopped"))
            .arg(line.outNow)
            .arg(QString::fromStdString(writeNotes(line.stopped)));
    return line.outNow > 0 ? onPaper(QT_TRANSLATE_NOOP("paper", "%1 out")).arg(line.outNow)
                           : onPaper(QT_TRANSLATE_NOOP("paper", "uneven"));
}

QString number(const std::optional<double>& value, DimensionId dimension) {
    return value ? words::shown(dimension, fromTrade(*value, row(dimension).kind)) : QString{};
}
/// Spreads and differences one decimal finer than the readings.
QString fine(const std::optional<double>& value) {
    return value ? mm(*value) : QString{};
}

void paintHeads(Canvas& c, const QRectF& r, int before, int now) {
    const double upper = r.y() + 4, lower = r.bottom() - 1.8;
    const auto over = [&](double right, const QString& text) {
        c.text(r.x() + right, upper, text, {9, true}, Align::right);
    };
    const auto under = [&](double right, const QString& text) {
        c.text(r.x() + right, lower, text, kHead, Align::right);
    };
    const QString was = onPaper(QT_TRANSLATE_NOOP("paper", "pass %1")).arg(before);
    const QString is = onPaper(QT_TRANSLATE_NOOP("paper", "pass %1")).arg(now);
    over(kNow, onPaper(QT_TRANSLATE_NOOP("paper", "readings out")));
    over(kMedianNow, onPaper(QT_TRANSLATE_NOOP("paper", "median")));
    over(kSpreadNow, onPaper(QT_TRANSLATE_NOOP("paper", "spread")));
    for (const double right : {kBefore, kMedianBefore, kSpreadBefore})
        under(right, was);
    for (const double right : {kNow, kMedianNow, kSpreadNow})
        under(right, is);
    under(kWorse, onPaper(QT_TRANSLATE_NOOP("paper", "worse")));
    c.text(r.x() + kState, upper, onPaper(QT_TRANSLATE_NOOP("paper", "all of it")), {9, true});
    c.text(r.x() + kState, lower, is, kHead);
    c.line(r.x(), r.bottom(), r.right(), r.bottom(), 0.3);
}

void paintLine(Canvas& c, const QRectF& r, const ComparisonLine& line) {
    const double base = r.y() + 5;
    const auto cell = [&](double right, const QString& text, Type type) {
        c.text(r.x() + right, base, text, type, Align::right);
    };
    c.textWithin(r.x(), base, 38, words::name(line.dimension), kCell);
    if (line.compared) {
        const DimensionComparison& d = *line.compared;
        cell(kBefore, QString::number(d.outsideBefore), kCell);
        cell(kNow, QString::number(d.outsideNow), kBold);
        cell(kWorse, d.worseNow ? QString::number(d.worseNow) : QString(QChar(0x00B7)), kCell);
        cell(kSpreadBefore, fine(d.spreadBefore), kCell);
        cell(kSpreadNow, fine(d.spreadNow), kBold);
    }
    cell(kMedianBefore, number(line.medianBefore, line.dimension), kCell);
    cell(kMedianNow, number(line.medianNow, line.dimension), kBold);
    c.textWithin(r.x() + kState, base, r.width() - kState, stateText(line), kCell);
    c.line(r.x(), r.bottom(), r.right(), r.bottom(), 0.3);
}

Table comparisonTable(const ComparisonSheet& sheet, int before, int now) {
    Table table;
    table.columns = 1;
    table.headHeight = 10.5;
    table.head = [before, now](Canvas& c, const QRectF& r) { paintHeads(c, r, before, now); };
    table.again = headingBlock({}, onPaper(QT_TRANSLATE_NOOP("paper", "By dimension, continued")), {});
    for (const ComparisonLine& line : sheet.lines)
        table.rows.push_back(
            {kRow, {}, [line](Canvas& c, const QRectF& r) { paintLine(c, r, line); }, words::name(line.dimension)});
    return table;
}

QString climateText(const ClimateRemark& climate, const Piano& piano) {
    const QString figures =
        onPaper(QT_TRANSLATE_NOOP("paper", "Moisture that wood takes up in this air: %1 % then, %2 % now."))
            .arg(mm(climate.moistureBefore, 1), mm(climate.moistureNow, 1));
    if (!climate.couldExplain) return figures;
    const QString moved =
        piano.vertical()
            ? onPaper(QT_TRANSLATE_NOOP("paper", "Key height and lost motion may have moved by themselves."))
            : onPaper(QT_TRANSLATE_NOOP("paper", "Key height and dip may have moved by themselves."));
    return figures + QLatin1Char(' ') + moved;
}

QString learnedText(const Response& response, const Piano& piano) {
    const Effect& effect = response.effects.front();
    const QString per = unitOf(response.operation, piano) == AmountUnit::turn
                            ? onPaper(QT_TRANSLATE_NOOP("paper", "%1: %2 mm a turn, %3 to %4, from %5 pairs"))
                            : onPaper(QT_TRANSLATE_NOOP("paper", "%1: %2 mm a millimetre, %3 to %4, from %5 pairs"));
    QString of = words::name(response.operation, piano);
    if (response.keys)
        of += *response.keys == KeyColour::natural ? onPaper(QT_TRANSLATE_NOOP("paper", ", naturals"))
                                                   : onPaper(QT_TRANSLATE_NOOP("paper", ", sharps"));
    return per.arg(of, mm(effect.perUnit, 1), mm(response.low95, 1), mm(response.high95, 1)).arg(response.pairs);
}

} // namespace

Document comparisonDocument(const Source& source, const PassView& before, const Comparison& comparison,
                            const FinishLine& finish, const ComparisonSheet& sheet) {
    const QString about =
        onPaper(QT_TRANSLATE_NOOP("paper", "against pass %1  ·  of what both read: %2 notes out before, %3 now"))
            .arg(comparison.from)
            .arg(sheet.notesOutBefore)
            .arg(sheet.notesOutNow);
    Document document = emptyDocument(source, onPaper(QT_TRANSLATE_NOOP("paper", "Comparison")), about);
    auto& blocks = document.blocks;
    const double width = source.width();
    blocks.emplace_back(paragraphBlock({{onPaper(QT_TRANSLATE_NOOP("paper", "Grade of pass %1, all its readings: %2. "))
                                             .arg(comparison.to)
                                             .arg(words::gradeName(finish.grade)),
                                         true}},
                                       11, width));
    if (const QString line = words::finishSentence(finish); !line.isEmpty())
        blocks.emplace_back(paragraphBlock({{line, false}}, 9.5, width));
    if (comparison.climate)
        blocks.emplace_back(paragraphBlock({{climateText(*comparison.climate, source.piano()), false}}, 9.5, width));
    blocks.emplace_back(gap(2));
    if (sheet.lines.empty()) {
        blocks.emplace_back(paragraphBlock(
            {{onPaper(QT_TRANSLATE_NOOP("paper", "The two passes have no reading in common.")), false}}, 12, width));
        return document;
    }
    blocks.emplace_back(headingBlock({}, onPaper(QT_TRANSLATE_NOOP("paper", "By dimension")), {}));
    blocks.emplace_back(comparisonTable(sheet, before.pass.number, source.view.pass.number));
    if (!comparison.gotWorse.empty()) {
        blocks.emplace_back(gap(3));
        blocks.emplace_back(headingBlock({}, onPaper(QT_TRANSLATE_NOOP("paper", "Got worse")),
                                         QCoreApplication::translate("paper", "%n reading(s)", nullptr,
                                                                     static_cast<int>(comparison.gotWorse.size()))));
        std::map<DimensionId, std::vector<NoteNumber>> worse;
        for (const Cell& cell : comparison.gotWorse)
            worse[cell.dimension].push_back(cell.note);
        for (const auto& [dimension, notes] : worse)
            blocks.emplace_back(paragraphBlock({{words::name(dimension) + QStringLiteral(": "), true},
                                                {QString::fromStdString(writeNotes(notes)), false}},
                                               9.5, width));
    }
    bool first = true;
    for (const Response& response : comparison.learned) {
        if (!response.learned || response.effects.empty()) continue;
        if (first) {
            blocks.emplace_back(gap(3));
            blocks.emplace_back(headingBlock({}, onPaper(QT_TRANSLATE_NOOP("paper", "How this piano answers")), {}));
            first = false;
        }
        blocks.emplace_back(paragraphBlock(boldBeforeColon(learnedText(response, source.piano())), 9.5, width));
    }
    return document;
}

} // namespace hammerline::print
