// A common move on the adjustment list: its amount large, a box for each place and each go.
#include "ui/print/work_rows.h"
#include "ui/words/said.h"
#include "ui/words/words.h"

#include <QCoreApplication>

#include <algorithm>
#include <cmath>

namespace hammerline::print {

namespace {

using words::onPaper;

constexpr Type kAmount{17, true}, kPlace{10};
constexpr double kGo = 8.5;

QString signedMm(double value) {
    return (value > 0 ? QStringLiteral("+") : QString{}) + mm(value, 1);
}

bool evenly(const SheetMove& move) {
    return std::ranges::all_of(
        move.places, [&](const CommonPlace& place) { return std::abs(place.mm - move.places.front().mm) < 0.005; });
}

/// "+1.5 mm at each bracket", "ADD, at the screws", "LONGER".
QString amountText(const SheetMove& move, const Piano& piano) {
    if (move.step->operation == operation::inspect) return words::whySentence(move.step->why);
    if (!move.places.empty() && evenly(move))
        return (move.step->operation == operation::restRailShim
                    ? onPaper(QT_TRANSLATE_NOOP("paper", "%1 mm at each bracket"))
                    : onPaper(QT_TRANSLATE_NOOP("paper", "%1 mm at each screw")))
            .arg(signedMm(move.places.front().mm));
    if (move.places.empty() && move.go) return onPaper(QT_TRANSLATE_NOOP("paper", "%1 mm")).arg(signedMm(*move.go));
    return words::directionWord(move.step->direction, move.step->operation, piano);
}

/// "Blow −1.9, lost motion +0.4: the next steps count on it."
QString leadsText(const SheetMove& move) {
    QStringList parts;
    for (const SheetMove::Leads& lead : move.leadsTo)
        if (std::abs(lead.change) >= 0.05)
            parts << QStringLiteral("%1 %2").arg(words::name(lead.dimension).toLower(), signedMm(lead.change));
    if (parts.isEmpty()) return {};
    return onPaper(QT_TRANSLATE_NOOP("paper", "It makes %1 mm; the following steps count on it."))
        .arg(parts.join(QStringLiteral(", ")));
}

QString placeText(const CommonPlace& place, bool same) {
    return same ? onPaper(QT_TRANSLATE_NOOP("paper", "at %1")).arg(place.at.value)
                : onPaper(QT_TRANSLATE_NOOP("paper", "at %1: %2")).arg(place.at.value).arg(mm(place.mm, 2));
}

/// Boxes of one go; gives the number of lines they take in the width.
int boxesAt(Canvas* c, double x, double y, double width, const QStringList& places) {
    double at = x;
    int lines = 1;
    for (const QString& place : places) {
        const double need = 7.5 + textWidth(place, kPlace) + 5;
        if (at + need > x + width && at > x) {
            at = x;
            ++lines;
        }
        const double top = y + (lines - 1) * kGo;
        if (c) {
            c->tickBox(at, top + 1);
            c->text(at + 7.3, top + 5.4, place, kPlace);
        }
        at += need;
    }
    return lines;
}

} // namespace

Solid moveBlock(const SheetMove& move, const Piano& piano, double width) {
    const bool same = evenly(move);
    QStringList places;
    for (const CommonPlace& place : move.places)
        places << placeText(place, same);
    if (places.isEmpty()) places << onPaper(QT_TRANSLATE_NOOP("paper", "done"));
    QString head = amountText(move, piano);
    if (move.range.first > 0)
        head += QStringLiteral("    ") +
                onPaper(QT_TRANSLATE_NOOP("paper", "notes %1 to %2")).arg(move.range.first).arg(move.range.last);
    const QString whole = move.goes > 1 && move.whole
                              ? onPaper(QT_TRANSLATE_NOOP("paper", "%1 goes, a look after each; %2 mm in all"))
                                    .arg(move.goes)
                                    .arg(signedMm(*move.whole))
                              : QString{};
    const QString leads = leadsText(move);
    const double left = move.goes > 1 ? 16 : 0;
    const int lines = boxesAt(nullptr, left, 0, width - left, places);
    const double height = 10 + kGo * lines * move.goes + (leads.isEmpty() ? 0 : 6) + 1;
    return {height, [=, goes = move.goes](Canvas& c, const QRectF& r) {
                const double wide = c.textWithin(r.x(), r.y() + 7, r.width() - 60, head, kAmount);
                c.textWithin(r.x() + wide + 5, r.y() + 7, r.width() - wide - 5, whole, kPlace);
                double y = r.y() + 10;
                for (int go = 1; go <= goes; ++go) {
                    if (goes > 1)
                        c.text(r.x(), y + 5.4, onPaper(QT_TRANSLATE_NOOP("paper", "go %1")).arg(go), {10, true});
                    boxesAt(&c, r.x() + left, y, r.width() - left, places);
                    y += kGo * lines;
                }
                c.textWithin(r.x(), y + 4, r.width(), leads, {9.5});
            }};
}

} // namespace hammerline::print
