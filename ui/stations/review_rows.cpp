#include "ui/stations/review_rows.h"

#include "core/sheet/check_sheet.h"
#include "ui/words/said.h"
#include "ui/words/words.h"

#include <QCoreApplication>

namespace hammerline {

namespace {

using words::atStation;

RowCell digits(const QString& text, bool bold) {
    RowCell cell(text, bold);
    cell.size = Text::listDigits;
    return cell;
}

ListRow readingRow(const Judged& judged, int rank, int key, const PassView& view, const Piano& piano) {
    ListRow row;
    row.key = key;
    row.sentence = words::cellSentence(judged, piano);
    const auto zone = view.review.zones.find(judged.cell);
    RowCell rule;
    rule.kind = RowCell::Kind::rule;
    rule.marks = judged.marks() * (judged.verdict == Verdict::low ? -1 : 1);
    rule.value = judged.infinite ? (judged.verdict == Verdict::low ? -4 : 4) : judged.deviation.value_or(0);
    if (judged.word && !judged.deviation) rule.value = rule.marks;
    QString value = judged.value ? words::shown(judged.cell.dimension, *judged.value) : QString(QChar(0x2013));
    if (judged.relation == Relation::less) value.prepend(QStringLiteral("< "));
    if (judged.relation == Relation::more) value.prepend(QStringLiteral("> "));
    RowCell remark = soft(judged.stale    ? atStation(QT_TRANSLATE_NOOP("Station", "stale"))
                          : judged.step   ? atStation(QT_TRANSLATE_NOOP("Station", "step"))
                          : judged.uneven ? atStation(QT_TRANSLATE_NOOP("Station", "uneven"))
                                          : QString());
    RowCell plate = plateCell(judged);
    const bool share = !judged.word && judged.verdict != Verdict::undecided && !plate.text.isEmpty();
    if (share) plate.text += QStringLiteral(" ×"); // of the zone, not mm
    row.cells = {
        soft(QString::number(rank)),
        noteCell(judged.cell.note, piano),
        RowCell(words::name(judged.cell.dimension)),
        digits(value, true),
        soft(zone == view.review.zones.end() ? QString() : words::zoneText(judged.cell.dimension, zone->second)),
        rule,
        plate,
        remark};
    return row;
}

} // namespace

bool ReviewFilter::takes(const Judged& judged, const Piano& piano) const {
    const bool outside = judged.verdict == Verdict::low || judged.verdict == Verdict::high;
    const bool shown = show == Show::all         ? true
                       : show == Show::undecided ? judged.verdict == Verdict::undecided
                       : show == Show::uneven    ? judged.uneven || judged.step
                                                 : outside;
    return shown && (!dimension || judged.cell.dimension == *dimension) &&
           (!colour || colourOf(judged.cell.note, piano) == *colour) &&
           (!section || sectionIndexOf(judged.cell.note, piano) == *section);
}

std::vector<ListRow> reviewRows(const PassView& view, const Piano& piano, const ReviewFilter& filter) {
    std::vector<ListRow> rows;
    int rank = 0;
    for (std::size_t i = 0; i < view.review.ranked.size(); ++i)
        if (filter.takes(view.review.ranked[i], piano))
            rows.push_back(readingRow(view.review.ranked[i], ++rank, static_cast<int>(i), view, piano));
    return rows;
}

std::vector<ListRow> causeRows(const PassView& view, const Piano& piano) {
    std::vector<ListRow> rows;
    for (std::size_t i = 0; i < view.causes.size(); ++i) {
        const Cause& cause = view.causes[i];
        ListRow row;
        row.key = static_cast<int>(i);
        row.sentence = words::causeSentence(cause, piano);
        RowCell instead = digits(QString::number(cause.explains.size()), true);
        row.cells = {RowCell(words::causeName(cause.key), true), soft(words::remedyName(cause.remedy)), instead};
        rows.push_back(std::move(row));
    }
    return rows;
}

std::vector<ListRow> dimensionRows(const Review& review) {
    std::vector<ListRow> rows;
    const auto count = [](int n, bool bold) {
        return n > 0 ? RowCell(QString::number(n), bold) : soft(QString(QChar(0x00B7)));
    };
    for (const auto& [dimension, s] : review.byDimension) {
        ListRow row;
        row.key = dimension.row;
        row.cells = {RowCell(words::name(dimension)), count(s.low, true),
                     soft(QString::number(s.within)), count(s.high, true),
                     count(s.undecided, true),        count(s.uneven, true)};
        rows.push_back(std::move(row));
    }
    return rows;
}

QString dimensionsText(const Review& review) {
    QStringList names;
    for (const auto& [dimension, summary] : review.byDimension)
        if (summary.within + summary.outside() + summary.undecided > 0) names << words::name(dimension).toLower();
    if (names.size() == 2) return atStation(QT_TRANSLATE_NOOP("Station", "%1 and %2")).arg(names[0], names[1]);
    if (names.size() == 1) return names[0];
    return QCoreApplication::translate("Station", "%n dimension(s)", nullptr, static_cast<int>(names.size()));
}

QString doubtText(const Review& review, const Piano& piano) {
    QStringList lines;
    for (const DoubtfulNote& doubt : review.doubtful) {
        if (lines.size() == 3) {
            lines << atStation(QT_TRANSLATE_NOOP("Station", "and %1 more")).arg(review.doubtful.size() - 3);
            break;
        }
        lines << atStation(QT_TRANSLATE_NOOP("Station", "<b>Measure again: note %1, %2.</b> It does not agree with the "
                                                        "other readings of this note."))
                     .arg(words::noteName(doubt.note, piano).toHtmlEscaped(),
                          words::name(doubt.suspect).toHtmlEscaped());
    }
    for (const DimensionId coarse : review.tooCoarse)
        lines << atStation(QT_TRANSLATE_NOOP("Station", "This gauge cannot decide the zone of %1: a finer one would."))
                     .arg(words::name(coarse).toHtmlEscaped());
    return lines.join(QStringLiteral("<br>"));
}

} // namespace hammerline
