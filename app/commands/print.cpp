// print: a sheet as PDF. The first print of an adjustment list freezes its plan, as the first tick does.
#include "app/commands/bench.h"
#include "app/commands/commands.h"
#include "app/console.h"
#include "core/plan/plan_in_force.h"
#include "ui/print/sheets.h"
#include "ui/words/survey_names.h"

#include <QString>
#include <QUuid>

#include <algorithm>
#include <array>

namespace hammerline::app {
namespace {

constexpr std::array kSheets = {
    std::pair{std::string_view{"adjustment"}, SheetKind::adjustment},
    std::pair{std::string_view{"adjustment-large"}, SheetKind::largeAdjustment},
    std::pair{std::string_view{"check"}, SheetKind::check},
    std::pair{std::string_view{"survey"}, SheetKind::survey},
    std::pair{std::string_view{"parts"}, SheetKind::parts},
    std::pair{std::string_view{"labels"}, SheetKind::labels},
    std::pair{std::string_view{"comparison"}, SheetKind::comparison},
    std::pair{std::string_view{"record"}, SheetKind::record},
    std::pair{std::string_view{"action"}, SheetKind::action},
    std::pair{std::string_view{"gauges"}, SheetKind::gauges},
    std::pair{std::string_view{"estimate"}, SheetKind::estimate},
    std::pair{std::string_view{"card"}, SheetKind::card},
    std::pair{std::string_view{"work"}, SheetKind::work},
};

bool sameText(std::string_view a, std::string_view b) {
    return QString::fromUtf8(a.data(), qsizetype(a.size()))
               .compare(QString::fromUtf8(b.data(), qsizetype(b.size())), Qt::CaseInsensitive) == 0;
}

} // namespace

int run(const PrintRequest& request, bool json) {
    const auto kind =
        std::find_if(kSheets.begin(), kSheets.end(), [&](const auto& each) { return each.first == request.sheet; });
    if (kind == kSheets.end())
        return refused(
            {RefusalCode::usage,
             {},
             "print takes adjustment, adjustment-large, check, survey, parts, labels, comparison, record, action, "
             "gauges, estimate, card or work",
             {}},
            json);
    const bool adjustment = printsPlan(kind->second);
    auto bench = openBench(request.plan.at, json, adjustment ? OpenMode::readWrite : OpenMode::readOnly);
    if (!bench) return refused(bench.error(), json);
    std::optional<Plan> plan;
    int pass = 0;
    if (adjustment) {
        auto made = planFor(*bench, request.plan);
        if (!made) return refused(made.error(), json);
        plan = std::move(*made);
        pass = plan->pass;
    } else if (!bench->record.passes.empty()) {
        const auto meant = passOf(*bench, request.to.empty() ? request.plan.pass : request.to);
        if (!meant) return refused(meant.error(), json);
        pass = *meant;
    }
    if (kind->second == SheetKind::parts && request.out.ends_with(".csv")) {
        if (const auto written = writeOut(request.out, words::partsTable(bench->record)); !written)
            return refused(written.error(), json);
        say(QStringLiteral("Written: %1").arg(QString::fromStdString(request.out)), json);
        return done(0, json);
    }
    PaperOptions paper;
    paper.measured = request.measured;
    paper.paper = sameText(request.paper, "letter") ? Paper::letter : Paper::a4;
    if (!request.from.empty()) {
        const auto from = passOf(*bench, request.from);
        if (!from) return refused(from.error(), json);
        paper.comparedWith = *from;
    }
    const auto sheet = composeSheet(kind->second, bench->record, pass, plan ? &*plan : nullptr, paper);
    if (!sheet) return refused(sheet.error(), json);
    const QByteArray pdf = sheet->pdf();
    const int pages = sheet->pages();
    const auto written = writeOut(request.out, {pdf.constData(), static_cast<std::size_t>(pdf.size())});
    if (!written) return refused(written.error(), json);
    std::int64_t act = 0;
    if (plan && plan->uuid.empty() && !plan->steps.empty() && !bench->book.readOnly()) {
        const auto frozen = bench->book.freezePlan(
            bench->record.uuid, freeze(*plan, QUuid::createUuid().toString(QUuid::WithoutBraces).toStdString()));
        if (!frozen) return refused(frozen.error(), json);
        act = *frozen;
    }
    sayWritten(
        inConsole(QT_TRANSLATE_N_NOOP("console", "%n page(s): %1"), pages).arg(QString::fromStdString(request.out)),
        request.out, json);
    return request.out == "-" ? kDone : done(act, json, ", \"pages\": " + std::to_string(pages));
}

} // namespace hammerline::app
