// Rows and words that several stations share.
#pragma once

#include "ui/stations/station.h"
#include "ui/widgets/row_table.h"

class QComboBox;
class QLabel;
class QPushButton;

namespace hammerline {

/// "33 F3" with its key.
RowCell noteCell(NoteNumber, const Piano&, bool bold = true);
/// The reading's plate: marks and deviation, or its word.
RowCell plateCell(const Judged&);
/// The units that a bare number of this kind may be meant in.
std::vector<Unit> unitsOf(Kind);
/// "45 min", "2 h 10".
QString timeText(double minutes);
/// A choice in the context bar, with its name read out.
QComboBox* makeChoice(const QString& name, QWidget* parent);
/// A label over several lines in a panel: secondary ink where `soft`.
QLabel* makeText(QWidget* parent);
/// A text that is scrolled where it has no room.
QWidget* makeScrolled(QLabel*, QWidget* parent);
/// The one main button of a station.
QPushButton* makeMainButton(const QString& text, QWidget* parent);
/// Print preview of a sheet through the dialog seam; refusals come back as a sentence.
QString previewSheet(QWidget* parent, int sheetKind, const PianoRecord&, int pass, const Plan*, int before = 0);

} // namespace hammerline
