// estimate: hours by step and part, parts to order, prices where the user filled them in.
#include "core/sheet/estimate.h"

#include "app/commands/bench.h"
#include "app/commands/commands.h"
#include "app/console.h"
#include "app/text_table.h"
#include "ui/words/said.h"
#include "ui/words/survey_names.h"
#include "ui/words/work_now.h"

#include <QString>
#include <nlohmann/json.hpp>

namespace hammerline::app {
namespace {

using words::utf8;
using Json = nlohmann::ordered_json;

Json amountJson(const std::optional<Money>& amount) {
    return amount ? Json(static_cast<double>(*amount) / 1000) : Json(nullptr);
}

/// What steps really took on other pianos, minutes.
Json tookJson(const Estimate& estimate) {
    Json out = Json::array();
    for (const Estimate::Took& each : estimate.took)
        out.push_back({{"step", std::string(each.step)},
                       {"customary", each.customary},
                       {"median", each.really.median},
                       {"least", each.really.least},
                       {"most", each.really.most},
                       {"pianos", each.really.pianos}});
    return out;
}

Json estimateJson(const Estimate& estimate) {
    Json steps = Json::array(), parts = Json::array(), specialist = Json::array();
    for (const EstimateStep& step : estimate.steps) {
        Json repairs = Json::array();
        for (const auto& [part, minutes] : step.parts)
            repairs.push_back({{"part", std::string(part)}, {"minutes", minutes}});
        steps.push_back({{"step", std::string(step.id)},
                         {"minutes", step.minutes},
                         {"waits", step.waits},
                         {"repairs", repairs},
                         {"amount", amountJson(step.cost)}});
    }
    for (const EstimatePart& part : estimate.parts)
        parts.push_back({{"supply", part.line.part},
                         {"quantity", part.line.quantity},
                         {"unit", part.line.unit},
                         {"size", part.line.size},
                         {"price", amountJson(part.price)},
                         {"amount", amountJson(part.cost)}});
    for (const std::string_view part : estimate.specialist)
        specialist.push_back(std::string(part));
    return {{"steps", steps},
            {"parts", parts},
            {"minutes", estimate.minutes},
            {"allowance_percent", estimate.terms.allowance},
            {"allowance_minutes", estimate.allowanceMinutes},
            {"measured", estimate.measured},
            {"not_looked_at", estimate.unseen},
            {"specialist", specialist},
            {"exclusions", estimate.terms.exclusions},
            {"currency", estimate.terms.currency},
            {"hour", amountJson(estimate.terms.hour)},
            {"labour", amountJson(estimate.labour)},
            {"material", amountJson(estimate.material)},
            {"travel", amountJson(estimate.travel)},
            {"total", amountJson(estimate.total)},
            {"unpriced_parts", estimate.unpriced},
            {"took", tookJson(estimate)}};
}

QString amountText(const std::optional<Money>& amount, const EstimateTerms& terms) {
    if (!amount) return {};
    return QStringLiteral("%1 %2").arg(utf8(moneyText(*amount)), utf8(terms.currency)).trimmed();
}

void sayEstimate(const Estimate& estimate, bool json) {
    TextTable table({{}, {{}, true}, {{}, true}});
    const auto priced = [&](const std::optional<Money>& amount) { return amountText(amount, estimate.terms); };
    for (const EstimateStep& step : estimate.steps) {
        table.add({words::workStepName(step.id), words::hours(step.minutes), priced(step.cost)});
        for (const auto& [part, minutes] : step.parts)
            table.add({QStringLiteral("  ") + words::partOfActionName(part), words::hours(minutes)});
    }
    for (const EstimatePart& part : estimate.parts)
        table.add({words::supplyName(part.line.part), words::supplyQuantity(part.line, part.line.quantity),
                   priced(part.cost)});
    table.add({inConsole(QT_TRANSLATE_NOOP("console", "Allowance, %1 % of the repairs")).arg(estimate.terms.allowance),
               words::hours(estimate.allowanceMinutes)});
    table.add({inConsole(QT_TRANSLATE_NOOP("console", "Together")),
               words::hours(estimate.minutes + estimate.allowanceMinutes), priced(estimate.total)});
    say(table, json);
    for (const Estimate::Took& each : estimate.took)
        say(words::tookSentence(each.step, each.customary, each.really), json);
}

/// What the sum does not hold, on standard error.
void askAbout(const Estimate& estimate, bool json) {
    if (!estimate.measured) ask(QStringLiteral("Not measured yet: the regulating is not in these hours."), json);
    if (estimate.unpriced > 0)
        ask(inConsole(QT_TRANSLATE_N_NOOP("console", "%n line(s) of parts without a price (--set part.SUPPLY=...)."),
                      estimate.unpriced),
            json);
    if (!estimate.terms.hour) ask(QStringLiteral("No price of an hour is said (--set hour=...)."), json);
}

} // namespace

int run(const EstimateRequest& request, bool json) {
    BenchBook::Surveyed told;
    for (const std::string& each : request.settings) {
        auto read = parseEstimateTerm(each);
        if (!read && read.error().code == RefusalCode::usage)
            return refused({RefusalCode::usage,
                            {},
                            "--set takes hour=, travel=, currency=, allowance=, exclude= or part.SUPPLY=, with an "
                            "amount such as 12.50; \"" +
                                each + "\" is none",
                            {}},
                           json);
        if (!read) return refused(read.error(), json);
        told.preferences.push_back(std::move(*read));
    }
    const bool writes = !told.preferences.empty();
    auto bench = openBench(request.at, json, writes ? OpenMode::readWrite : OpenMode::readOnly);
    if (!bench) return refused(bench.error(), json);
    if (writes) {
        if (const auto act = bench->book.addSurvey(bench->record.uuid, told); !act) return refused(act.error(), json);
        if (const auto again = loadAgain(*bench); !again) return refused(again.error(), json);
    }
    const Estimate made = estimate(bench->record);
    printJson(estimateJson(made).dump(2, ' ', false, Json::error_handler_t::replace), json);
    sayEstimate(made, json);
    askAbout(made, json);
    return kDone;
}

} // namespace hammerline::app
