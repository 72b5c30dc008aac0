#include "core/sheet/estimate.h"

#include "core/history/identity.h"
#include "core/work/work.h"

#include <algorithm>
#include <cmath>

namespace hammerline {
namespace {

constexpr Money kLargestMoney = 10'000'000'000; // ten million, in thousandths
constexpr std::string_view kTermPrefix = "estimate.";

bool isDigits(std::string_view text) {
    return std::ranges::all_of(text, [](char c) { return c >= '0' && c <= '9'; });
}

bool knownSupply(std::string_view name) {
    return std::ranges::any_of(parts(), [&](const Part& part) {
        return part.key == name || std::ranges::any_of(part.remedies, [&](const Remedy& remedy) {
                   return !name.empty() && remedy.supply == name;
               });
    });
}

std::optional<double> percentOf(std::string_view text) {
    const auto read = parseMoney(text);
    if (!read || *read > 200'000) return std::nullopt;
    return static_cast<double>(*read) / 1000;
}

std::vector<std::string> linesOf(std::string_view text) {
    std::vector<std::string> lines;
    while (!text.empty()) {
        const auto to = std::min(text.find(';'), text.size());
        if (auto line = readLine("exclude", text.substr(0, to), 200); line && !line->empty())
            lines.push_back(std::move(*line));
        text.remove_prefix(std::min(to + 1, text.size()));
    }
    return lines;
}

/// Whole hundredths, half away from zero: what stands on paper adds up.
Money rounded(double thousandths) {
    return static_cast<Money>(std::llround(thousandths / 10)) * 10;
}

Money costOf(double minutes, Money hour) {
    return rounded(minutes / 60 * static_cast<double>(hour));
}

/// How many priced units a line is: pieces or sets, metres, 100 cm2.
double unitsIn(const PartsLine& line) {
    const double count = line.quantity;
    if (line.unit == "mm") return count / 1000;
    if (line.unit == "cm2") return count / 100;
    return count;
}

EstimateStep stepOf(const WorkOrderStep& from, const EstimateTerms& terms) {
    EstimateStep step;
    step.id = from.id;
    step.minutes = from.minutesOpen;
    step.waits = from.state == WorkState::waits;
    for (const JobLine& line : from.lines)
        if (line.minutesOpen > 0) step.parts.emplace_back(line.part, line.minutesOpen);
    if (terms.hour) step.cost = costOf(step.minutes, *terms.hour);
    return step;
}

void addParts(Estimate& out, const PianoRecord& record, const JobTerms& terms) {
    for (PartsLine& line : partsList(record.findings, record.piano, terms.spares)) {
        EstimatePart part{std::move(line), {}, {}};
        const bool ofItself = part.line.with.empty(); // else it comes with, or is the material of, the line above
        const auto price = out.terms.parts.find(part.line.part);
        if (price != out.terms.parts.end()) {
            part.price = price->second;
            part.cost = rounded(unitsIn(part.line) * static_cast<double>(price->second));
        }
        out.unpriced += ofItself && !part.cost ? 1 : 0;
        if (part.cost) out.material = out.material.value_or(0) + *part.cost;
        out.parts.push_back(std::move(part));
    }
}

std::vector<Estimate::Took> whatStepsTook(const Piano& piano, Hand hand) {
    std::vector<Estimate::Took> out;
    for (const StepOfWork* step : stepsOf(piano)) {
        const auto found = piano.taught.minutes.find(std::string(step->id));
        if (found == piano.taught.minutes.end()) continue;
        const double each = step->minutes[static_cast<std::size_t>(hand)];
        const double times = step->per == PartUnit::note      ? piano.notes
                             : step->per == PartUnit::section ? static_cast<double>(sectionsOf(piano).size())
                                                              : 1.0;
        out.push_back({step->id, each * times, found->second});
    }
    return out;
}

} // namespace

std::optional<Money> parseMoney(std::string_view text) {
    const auto mark = std::min(text.find_first_of(".,"), text.size());
    const std::string_view whole = text.substr(0, mark);
    std::string decimals(text.substr(std::min(mark + 1, text.size())));
    const bool readable = !whole.empty() && whole.size() <= 8 && decimals.size() <= 3 && isDigits(whole) &&
                          isDigits(decimals) && (mark == text.size() || !decimals.empty());
    if (!readable) return std::nullopt;
    decimals.resize(3, '0');
    const Money amount = std::stoll(std::string(whole)) * 1000 + std::stoll(decimals);
    return amount <= kLargestMoney ? std::optional(amount) : std::nullopt;
}

std::string moneyText(Money amount) {
    const std::string sign = amount < 0 ? "-" : "";
    const Money size = std::abs(amount);
    std::string decimals = std::to_string(1000 + size % 1000).substr(1);
    if (decimals.back() == '0') decimals.pop_back();
    return sign + std::to_string(size / 1000) + "." + decimals;
}

Outcome<std::pair<std::string, std::string>> parseEstimateTerm(std::string_view text) {
    const auto equals = text.find('=');
    if (equals == std::string_view::npos) return refuse(RefusalCode::usage, std::string(text));
    const std::string name(text.substr(0, equals)), value(text.substr(equals + 1));
    const bool ofPart = name.starts_with("part.");
    if (ofPart && !knownSupply(name.substr(5))) return refuse(RefusalCode::unknownPart, name.substr(5));
    const bool money = name == "hour" || name == "travel" || ofPart;
    const auto currency = readLine("currency", value, 12);
    const bool taken = (money && parseMoney(value)) || (name == "allowance" && percentOf(value)) ||
                       (name == "currency" && currency) || (name == "exclude" && value.size() <= 2000);
    const bool known = money || name == "allowance" || name == "currency" || name == "exclude";
    const bool emptied = known && value.empty();
    if (!taken && !emptied) return refuse(RefusalCode::usage, std::string(text));
    return std::pair{std::string(kTermPrefix) + name, value};
}

EstimateTerms estimateTerms(const std::map<std::string, std::string>& preferences) {
    EstimateTerms terms;
    for (const auto& [key, value] : preferences) {
        if (!key.starts_with(kTermPrefix)) continue;
        const std::string name = key.substr(kTermPrefix.size());
        if (name == "hour") terms.hour = parseMoney(value);
        if (name == "travel") terms.travel = parseMoney(value);
        if (name == "currency") terms.currency = readLine(name, value, 12).value_or("");
        if (name == "allowance") terms.allowance = percentOf(value).value_or(terms.allowance);
        if (name == "exclude") terms.exclusions = linesOf(value);
        const auto price = name.starts_with("part.") ? parseMoney(value) : std::nullopt;
        if (price) terms.parts[name.substr(5)] = *price;
    }
    return terms;
}

Estimate estimate(const PianoRecord& record) {
    const JobTerms terms = jobTerms(record.preferences);
    const WorkOrder order = workOrder(record);
    Estimate out;
    out.terms = estimateTerms(record.preferences);
    double repairs = 0;
    for (const WorkOrderStep& step : order.steps) {
        if (step.id == "look") out.unseen = step.open;
        if (step.id == "regulate") out.measured = step.minutesOpen > 0 || step.done > 0;
        for (const JobLine& line : step.lines) {
            repairs += line.minutesOpen;
            if (line.specialist && !line.toDo.empty()) out.specialist.push_back(line.part);
        }
        if (step.minutesOpen > 0) out.steps.push_back(stepOf(step, out.terms));
        out.minutes += step.minutesOpen;
    }
    out.allowanceMinutes = repairs * out.terms.allowance / 100;
    addParts(out, record, terms);
    out.took = whatStepsTook(record.piano, terms.hand);
    if (out.terms.hour) {
        Money labour = costOf(out.allowanceMinutes, *out.terms.hour);
        for (const EstimateStep& step : out.steps)
            labour += *step.cost;
        out.labour = labour;
    }
    out.travel = out.terms.travel;
    if (out.labour || out.material || out.travel)
        out.total = out.labour.value_or(0) + out.material.value_or(0) + out.travel.value_or(0);
    return out;
}

} // namespace hammerline
