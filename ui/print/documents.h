// From a sheet's plain data to a document in words, one function a kind of sheet.
#pragma once

#include "core/sheet/adjustment_sheet.h"
#include "core/sheet/check_sheet.h"
#include "core/sheet/comparison_sheet.h"
#include "ui/print/document.h"
#include "ui/print/sheets.h"

namespace hammerline::print {

struct Source {
    const PianoRecord& record;
    const PassView& view; // of the pass that is printed
    PaperSize size;
    QDate date;
    double width() const { return size.innerWidth(); }
    const Piano& piano() const { return record.piano; }
};

/// Title, piano and date, zones and foot as every sheet has them; `ticks`: its lines have boxes to tick.
Document emptyDocument(const Source&, const QString& title, const QString& about, bool ticks = false);
/// A sheet that speaks of parts, not of readings.
Document partsSheet(const Source&, const QString& title, const QString& about);
/// A table over the full width without heads.
Table plainTable();
/// The cautions that stand on the first page.
Paragraph cautionText(const Piano&);
QString passText(const Pass&);
QString minutesText(double minutes); // "45 min", "2 h 10"
QString mm(double value, int decimals = 2);
/// Note number, key and pitch name in a table's row; gives the x behind them.
double noteCell(Canvas&, double x, double base, NoteNumber, const Piano&);
QString sectionText(std::size_t index, const Piano&); // "Bass, notes 1 to 28"

/// How large its lines are set: two columns at the bench, or one to be read in bad light and from arm's length.
enum class LineSize : std::uint8_t { usual, large };
Document adjustmentDocument(const Source&, const AdjustmentSheet&, const Plan&, LineSize = LineSize::usual);
Document checkDocument(const Source&, const CheckSheet&);
Document surveyDocument(const Source&);
Document partsDocument(const Source&);
Document labelsDocument(const Source&);
Document workDocument(const Source&);
Document recordDocument(const Source&);
Document actionDocument(const Source&, const Plan*); // the plan may be null
Document gaugesDocument(const Source&, const PaperOptions&);
Document estimateDocument(const Source&);
Document cardDocument(const Source&);
Document comparisonDocument(const Source&, const PassView& before, const Comparison&, const FinishLine&,
                            const ComparisonSheet&);

} // namespace hammerline::print
