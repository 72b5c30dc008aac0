#include "ui/stations/passes_rows.h"

#include "ui/words/finish.h"
#include "ui/words/said.h"
#include "ui/words/words.h"

#include <QCoreApplication>

#include <algorithm>

namespace hammerline {

namespace {

struct PassesText {
    Q_DECLARE_TR_FUNCTIONS(PassesStation)
};

QString plainNumber(std::optional<double> value, int decimals = 1) {
    if (!value) return QStringLiteral("·");
    return words::number(*value, decimals);
}

QString signedNumber(std::optional<double> value) {
    const QString text = plainNumber(value, 2);
    return value && *value > 0 ? QLatin1Char('+') + text : text;
}

QString passHeading(const QString& text) {
    return QStringLiteral("<p><b>") + text.toHtmlEscaped() + QStringLiteral("</b>");
}

QString gradeText(const FinishLine& finish) {
    QString html = passHeading(words::gradeName(finish.grade));
    if (const QString line = words::finishSentence(finish); !line.isEmpty())
        html += QStringLiteral("<br>") + line.toHtmlEscaped();
    return html;
}

QString worseText(const Comparison& comparison, const Piano& piano) {
    if (comparison.gotWorse.empty()) return passHeading(PassesText::tr("Nothing got worse."));
    QString html = passHeading(PassesText::tr("Got worse"));
    std::size_t shown = 0;
    for (const Cell& cell : comparison.gotWorse) {
        if (++shown > 12) {
            html += QStringLiteral("<br>") +
                    PassesText::tr("and %n more", nullptr, static_cast<int>(comparison.gotWorse.size() - 12));
            break;
        }
        html += QStringLiteral("<br>") + words::noteName(cell.note, piano) + QStringLiteral(", ") +
                words::name(cell.dimension).toLower();
    }
    return html;
}

/// "Capstans, naturals: −2.3 mm a turn (−3.4 to −1.2), 3 pairs"
QString responseText(const Response& response) {
    QString of = words::name(response.operation);
    if (response.keys)
        of += *response.keys == KeyColour::natural ? PassesText::tr(", naturals") : PassesText::tr(", sharps");
    const QString unit =
        row(response.operation).unit == AmountUnit::turn ? PassesText::tr("a turn") : PassesText::tr("a mm");
    return PassesText::tr("%1: %2 mm %3 (%4 to %5), %n pair(s)", nullptr, response.pairs)
        .arg(of, plainNumber(response.effects.front().perUnit), unit, plainNumber(response.low95),
             plainNumber(response.high95));
}

QString learnedText(const Comparison& comparison) {
    QString html = passHeading(PassesText::tr("What this piano answers"));
    bool any = false;
    for (const Response& response : comparison.learned) {
        if (!response.learned || response.effects.empty()) continue;
        any = true;
        html += QStringLiteral("<br>") + responseText(response);
    }
    if (!any)
        html += QStringLiteral("<br>") +
                PassesText::tr("Nothing learned yet: tick off what was done, with its amount, and read again.");
    return html;
}

QString apartText(const Comparison& comparison) {
    if (comparison.notComparable.empty()) return {};
    QString html = passHeading(PassesText::tr("Not compared"));
    for (const auto& [id, why] : comparison.notComparable)
        html += QStringLiteral("<br>") + words::notComparableSentence(id, why);
    return html;
}

QString climateText(const Comparison& comparison) {
    if (!comparison.climate) return {};
    QString html =
        passHeading(PassesText::tr("Climate")) + QStringLiteral("<br>") +
        PassesText::tr("Wood would settle at %1 % moisture before, %2 % now.")
            .arg(plainNumber(comparison.climate->moistureBefore), plainNumber(comparison.climate->moistureNow));
    if (comparison.climate->couldExplain)
        html += QLatin1Char(' ') + PassesText::tr("That alone could explain a difference.");
    return html;
}

QString rowSentence(const DimensionComparison& each) {
    QStringList said{PassesText::tr("%1: %2 out before, %3 now, %4 got worse")
                         .arg(words::name(each.dimension))
                         .arg(each.outsideBefore)
                         .arg(each.outsideNow)
                         .arg(each.worseNow)};
    if (each.spreadBefore && each.spreadNow)
        said << PassesText::tr("spread %1 before, %2 now")
                    .arg(plainNumber(each.spreadBefore, 2), plainNumber(each.spreadNow, 2));
    if (each.achievedBias) said << PassesText::tr("%1 less expected").arg(signedNumber(each.achievedBias));
    return said.join(PassesText::tr(", "));
}

} // namespace

std::vector<ListRow> comparisonRows(const Comparison& comparison) {
    std::vector<ListRow> rows;
    int most = 1;
    for (const DimensionComparison& each : comparison.dimensions)
        most = std::max({most, each.outsideBefore, each.outsideNow});
    for (const DimensionComparison& each : comparison.dimensions) {
        RowCell bars;
        bars.kind = RowCell::Kind::bars;
        bars.value = each.outsideBefore;
        bars.now = each.outsideNow;
        bars.most = most;
        ListRow row;
        row.key = each.dimension.row;
        row.cells = {RowCell(words::name(each.dimension)),
                     RowCell(QString::number(each.n)),
                     RowCell(QString::number(each.outsideBefore)),
                     bars,
                     RowCell(QString::number(each.outsideNow), true),
                     RowCell(QString::number(each.worseNow), each.worseNow > 0),
                     RowCell(plainNumber(each.spreadBefore, 2)),
                     RowCell(plainNumber(each.spreadNow, 2), true),
                     RowCell(signedNumber(each.achievedBias))};
        row.sentence = rowSentence(each);
        rows.push_back(std::move(row));
    }
    return rows;
}

QString comparisonText(const Comparison& comparison, const FinishLine& finish, const Piano& piano) {
    return gradeText(finish) + worseText(comparison, piano) + apartText(comparison) + learnedText(comparison) +
           climateText(comparison);
}

} // namespace hammerline
