// The whole job as a tick list: every step under the way it is reached, ticked as the book stands.
#include "core/sheet/work_now.h"
#include "ui/print/documents.h"
#include "ui/words/said.h"
#include "ui/words/step_texts.h"
#include "ui/words/words.h"
#include "ui/words/work_now.h"

namespace hammerline::print {

namespace {

using words::onPaper;

constexpr Type kStepName{10.5, true}, kStepDone{10.5}, kStepText{8.5};
constexpr double kWorkLeft = 8.5, kWorkTime = 20;

bool settled(const StepNow& now) {
    return now.state == StepState::done || now.state == StepState::notHere;
}

/// What is left of it, how to know that it is good, or why it is not needed.
Paragraph stepText(const StepNow& now, const Piano& piano) {
    if (now.state == StepState::notHere)
        return {{words::stepStateName(now.state) + QStringLiteral(": ") + words::stepReason(now), false}};
    if (settled(now)) return {{words::stepReason(now), false}};
    Paragraph text;
    if (const QString left = words::stepLeft(now, piano); !left.isEmpty())
        text.push_back({left + QLatin1Char(' '), true});
    const words::StepText* said = words::stepText(now.step->id);
    if (said && *said->goodWhen)
        text.push_back(
            {onPaper(QT_TRANSLATE_NOOP("paper", "Good when: %1")).arg(words::ofStep(said->goodWhen, piano)), false});
    return text;
}

TableRow workRow(const StepNow& now, const Source& source) {
    const QString name = words::stepName(now.step->id);
    const Paragraph text = stepText(now, source.piano());
    const double width = source.width() - kWorkLeft - kWorkTime;
    const bool done = now.state == StepState::done, over = settled(now);
    const QString time = now.minutes > 0 ? minutesText(now.minutes) : QString{};
    const double written = text.empty() || text.front().text.isEmpty() ? 0 : paragraphHeight(text, kStepText, width);
    return {7.2 + written,
            {},
            [=](Canvas& c, const QRectF& r) {
                c.tickBox(r.x(), r.y() + 1, 4.6);
                if (done) c.text(r.x() + 0.7, r.y() + 4.9, QStringLiteral("\u00D7"), {13, true});
                c.textWithin(r.x() + kWorkLeft, r.y() + 4.6, width, name, over ? kStepDone : kStepName);
                c.text(r.right(), r.y() + 4.6, time, kStepText, Align::right);
                if (written > 0) c.paragraph(r.x() + kWorkLeft, r.y() + 5.6, width, text, kStepText);
                c.line(r.x(), r.bottom(), r.right(), r.bottom(), 0.2);
            },
            name};
}

/// Each caution of the open steps, once.
Paragraph stepCautions(const WorkNow& now, const Piano& piano) {
    Paragraph text = cautionText(piano);
    std::set<std::string_view> said{"tipping", "tension", "mains", "force", "grand-slide"}; // cautionText says these
    for (const StepNow& each : now.steps)
        for (const std::string_view caution : cautionsOf(*each.step, piano))
            if (!settled(each) && said.insert(caution).second)
                text.push_back({QLatin1Char(' ') + words::caution(caution, piano), false});
    return text;
}

} // namespace

Document workDocument(const Source& source) {
    const WorkNow now = workNow(source.record);
    const QString about = onPaper(QT_TRANSLATE_NOOP("paper", "%1 left")).arg(minutesText(now.minutes));
    Document document = partsSheet(source, onPaper(QT_TRANSLATE_NOOP("paper", "The work, step by step")), about);
    document.rowWord = onPaper(QT_TRANSLATE_NOOP("paper", "steps"));
    auto& blocks = document.blocks;
    blocks.emplace_back(cautionBox(stepCautions(now, source.piano()), source.width()));
    blocks.emplace_back(paragraphBlock({{words::nextSentence(now.next, source.piano()), true}}, 11, source.width()));
    Table table = plainTable();
    std::string_view access;
    const auto close = [&] {
        if (!table.rows.empty()) blocks.emplace_back(std::move(table));
        table = plainTable();
    };
    for (const StepNow& each : now.steps) {
        if (each.reason == "not-asked") continue;
        const std::string_view here = accessFor(*each.step, source.piano(), each.notes.size());
        if (here != access) {
            close();
            blocks.emplace_back(accessBar(words::workAccessName(here), {}, {}));
        }
        access = here;
        table.rows.push_back(workRow(each, source));
    }
    close();
    if (!now.whole)
        blocks.emplace_back(paragraphBlock(
            {{onPaper(QT_TRANSLATE_NOOP("paper", "Steps that nothing read or found asks for are left out.")), false}},
            9, source.width()));
    return document;
}

} // namespace hammerline::print
