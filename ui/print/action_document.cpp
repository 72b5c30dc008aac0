// The strokes of all notes before and after the plan, and the account of the dip of those that stand out most.
#include "core/plan/plan_in_force.h"
#include "ui/print/documents.h"
#include "ui/widgets/account_painter.h"
#include "ui/widgets/account_strip.h"
#include "ui/widgets/stroke_columns.h"
#include "ui/widgets/stroke_painter.h"
#include "ui/words/account_labels.h"
#include "ui/words/said.h"
#include "ui/words/stroke_labels.h"
#include "ui/words/words.h"

#include <QCoreApplication>

#include <algorithm>
#include <memory>

namespace hammerline::print {

namespace {

using words::onPaper;
using Actions = std::shared_ptr<const std::vector<NoteAction>>;

constexpr std::size_t kAccounts = 3;                 // of the notes that stand out most
constexpr double kColumnsHigh = 62;                  // mm
constexpr double kWideUnit = 0.92, kNoteUnit = 0.71; // mm: columns of all; two notes on a page

/// Black on white; the ramp and the zones stay, lighter than ink in grey too.
DrawnStyle paperStyle(double unit) {
    Look look = lookOf(Theme::light);
    look.paper = look.bench = qRgb(255, 255, 255);
    look.ink = look.ring = qRgb(0, 0, 0);
    look.ink2 = qRgb(40, 40, 40);
    return {.look = look,
            .plain = canvasFont({7.5}),
            .bold = canvasFont({8, true}),
            .strong = canvasFont({9.5, true}),
            .unit = unit * kCanvasUnits};
}

/// Heights of painters that count in their own unit, as mm.
double inMm(double height) {
    return height / kCanvasUnits;
}

Solid columnsBlock(const Actions& actions, const Piano& piano, bool afterPlan) {
    return {kColumnsHigh + 12, [=, &piano](Canvas& c, const QRectF& r) {
                c.text(r.x(), r.y() + 5, words::strokeAllName(afterPlan, 0), {10.5, true});
                c.draw({r.x(), r.y() + 9, r.width(), kColumnsHigh}, [&](QPainter& painter, const QRectF& box) {
                    const DrawnStyle style = paperStyle(kWideUnit);
                    const StrokeAxis axis = StrokeAxis::across(box.left() + style.u(6), box.right(), style.u(2), piano);
                    paintStrokeColumns(painter, box, axis, *actions, piano, {.afterPlan = afterPlan}, style);
                });
            }};
}

/// The accounts of a section against its aims.
Solid sectionBlock(const Actions& actions, const NoteRange& range, const QString& name, const Piano& piano) {
    const double strip = inMm(accountStripHeight(paperStyle(kWideUnit)));
    return {strip + 12, [=, &piano](Canvas& c, const QRectF& r) {
                const auto first = static_cast<std::size_t>(range.first) - 1;
                const auto of = std::span(*actions).subspan(first, static_cast<std::size_t>(range.last) - first);
                c.text(r.x(), r.y() + 5, words::stripHead(name), {10.5, true});
                c.draw({r.x(), r.y() + 8, r.width(), strip}, [&](QPainter& painter, const QRectF& box) {
                    paintAccountStrip(painter, box, of, {}, piano, paperStyle(kWideUnit));
                });
            }};
}

/// Of every section with an account.
void addSections(Document& document, const Actions& actions, const Piano& piano, double width) {
    const auto sections = sectionsOf(piano);
    bool any = false;
    for (std::size_t i = 0; i < sections.size(); ++i) {
        const NoteRange& range = sections[i].range;
        const bool told = std::ranges::any_of(
            *actions, [&](const NoteAction& action) { return range.contains(action.note) && action.account.computed; });
        if (!told) continue;
        if (!any) document.blocks.emplace_back(paragraphBlock({{words::stripRemark() + u'.', false}}, 9.5, width));
        any = true;
        const QString name = QStringLiteral("%1 %2\u2013%3")
                                 .arg(words::sectionName(sections[i], i, sections.size()))
                                 .arg(range.first)
                                 .arg(range.last);
        document.blocks.emplace_back(sectionBlock(actions, range, name, piano));
    }
}

/// Stroke and account of one note stay together.
Solid noteBlock(const Actions& actions, NoteNumber note, const Piano& piano) {
    const NoteAction& action = actions->at(static_cast<std::size_t>(note.value) - 1);
    const DrawnStyle style = paperStyle(kNoteUnit);
    const double stroke = inMm(strokeHeight(style, action.strokeAfter.has_value()));
    const double account = inMm(accountHeight(style, action));
    return {stroke + account + 15, [=, &piano](Canvas& c, const QRectF& r) {
                const NoteAction& shown = actions->at(static_cast<std::size_t>(note.value) - 1);
                noteCell(c, r.x() - 4, r.y() + 6, note, piano);
                c.textWithin(r.x() + 28, r.y() + 6, r.width() - 28, words::againstSentence(shown.account), {9.5});
                c.line(r.x(), r.y() + 8.4, r.right(), r.y() + 8.4, 0.3);
                c.draw({r.x(), r.y() + 10, r.width(), stroke}, [&](QPainter& painter, const QRectF& box) {
                    paintStroke(painter, box, shown, piano, paperStyle(kNoteUnit));
                });
                c.draw({r.x(), r.y() + 12 + stroke, r.width(), account}, [&](QPainter& painter, const QRectF& box) {
                    paintAccount(painter, box, shown, paperStyle(kNoteUnit));
                });
            }};
}

/// Jacks that do not escape first, then by how far the aftertouch lies outside.
std::vector<NoteNumber> worstOf(const std::vector<NoteAction>& actions) {
    std::vector<std::pair<double, NoteNumber>> ranked;
    for (const NoteAction& each : actions) {
        const auto left = judgedLeft(each.account);
        if (!left || !standsOut(each)) continue;
        const double beyond = std::abs(left->deviation.value_or(9));
        ranked.emplace_back(*each.account.computed < 0 ? 100 - *each.account.computed : beyond, each.note);
    }
    std::ranges::stable_sort(ranked, std::greater{}, &std::pair<double, NoteNumber>::first);
    std::vector<NoteNumber> out;
    for (const auto& [beyond, note] : ranked)
        if (out.size() < kAccounts) out.push_back(note);
    std::ranges::sort(out, {}, &NoteNumber::value);
    return out;
}

} // namespace

Document actionDocument(const Source& source, const Plan* plan) {
    Document document =
        emptyDocument(source, onPaper(QT_TRANSLATE_NOOP("paper", "Stroke of every note, account of the dip")), {});
    std::optional<Plan> own;
    if (!plan && source.view.pass.number > 0) {
        auto made = planInForce(source.record, source.view.sheet, source.view.pass.number, {});
        if (made) own = std::move(*made);
    }
    const Actions actions = std::make_shared<const std::vector<NoteAction>>(
        ActionReckoning(source.record, source.view, own ? &*own : plan).all());
    const bool planned =
        std::ranges::any_of(*actions, [](const NoteAction& each) { return each.strokeAfter.has_value(); });
    document.blocks.emplace_back(
        paragraphBlock({{words::ratioSentence(source.view.ratio[0]) + QLatin1Char(' ') +
                             onPaper(QT_TRANSLATE_NOOP("paper", "mm of the key's way, downward:")) + QLatin1Char(' ') +
                             words::strokeLegend(source.piano()).join(QStringLiteral(", ")) + QLatin1Char('.'),
                         false}},
                       9.5, source.width()));
    document.blocks.emplace_back(columnsBlock(actions, source.piano(), false));
    if (planned) document.blocks.emplace_back(columnsBlock(actions, source.piano(), true));
    addSections(document, actions, source.piano(), source.width());
    for (const NoteNumber note : worstOf(*actions))
        document.blocks.emplace_back(noteBlock(actions, note, source.piano()));
    return document;
}

} // namespace hammerline::print
