// What stands in the picture of an account of the dip.
#pragma once

#include "ui/words/action.h"

namespace hammerline::words {

struct AccountRow {
    QString name, read, means;
};
AccountRow accountRow(const DipTerm&, const Ratio&);
AccountRow accountLastRow(const DipAccount&);
/// "−0.24": what the line will be after the plan.
QString shareAfter(const DipTerm&);
/// "1.20 after the plan · zone 0.7 to 1.6, set to 1.1"
QString leftAfter(const NoteAction&);
/// 0 gives, 1 takes, 2 after the plan, 3 read at the note itself.
QString accountLegend(int entry);
QString wholeMm(int mm);

/// The strip of a section: its head, the line of the aims, "+0.6", its four lines in the order of the account, what is
/// left.
QString stripHead(const QString& section);
QString stripRemark();
QString stripAims();
QString stripFigure(double mm);
QString stripTerm(std::size_t);
QString stripLeft();
/// "Tenor 29-58: 20 of 30 accounts leave an aftertouch within its zone. Most is taken by the dip at 31, 35; by the blow
/// at 40."
QString stripSentence(const QString& section, std::span<const NoteAction>);

} // namespace hammerline::words
