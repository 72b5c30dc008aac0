// survey: findings by note and part, symptoms and what they come from, parts to order, the order of the whole job.
#include "app/commands/bench.h"
#include "app/commands/commands.h"
#include "app/console.h"
#include "app/text_table.h"
#include "core/sheet/sheet.h"
#include "core/sheet/work_order.h"
#include "core/survey/rail_advice.h"
#include "ui/words/beside.h"
#include "ui/words/size_names.h"
#include "ui/words/survey_names.h"

#include <QCoreApplication>
#include <QString>
#include <nlohmann/json.hpp>

#include <algorithm>

namespace hammerline::app {
namespace {

using Settings = std::vector<std::pair<std::string, std::string>>;

Outcome<std::vector<Finding>> findingsOf(const SurveyRequest& request, const Piano& piano) {
    std::vector<Finding> all;
    for (const std::string& each : request.add) {
        auto read = parseFindings(each, piano);
        if (!read) return read;
        all.insert(all.end(), read->begin(), read->end());
    }
    for (const std::string& each : request.state) {
        auto read = parseFindingStates(each, piano);
        if (!read) return read;
        all.insert(all.end(), read->begin(), read->end());
    }
    return all;
}

Outcome<Settings> settingsOf(const SurveyRequest& request) {
    Settings all;
    for (const std::string& each : request.settings) {
        auto read = parseTerm(each);
        const bool ofSize = each.starts_with("size.");
        const std::string supply = ofSize ? each.substr(5, each.find('.', 5) - 5) : std::string();
        if (!read && ofSize) return refuse(RefusalCode::usage, words::sizeUsage(supply).toStdString());
        if (!read && read.error().code == RefusalCode::usage)
            return refuse(RefusalCode::usage, words::termUsage(each).toStdString());
        if (!read) return tl::unexpected(read.error());
        all.push_back(std::move(*read));
    }
    return all;
}

Outcome<Settings> looksOf(const SurveyRequest& request, const PianoRecord& record) {
    Settings all;
    for (const std::string& each : request.looks) {
        if (record.passes.empty()) return refuse(RefusalCode::noSuchPass);
        auto read = parseLook(each, record.passes.back());
        if (!read) return tl::unexpected(read.error());
        all.push_back(std::move(*read));
    }
    return all;
}

/// What is said to be ordered has to be asked for, and measured where it is ordered by size: by what stands after
/// everything that is said at once.
Outcome<void> mayBeOrdered(const BenchBook::Surveyed& told, const PianoRecord& record) {
    auto preferences = record.preferences;
    for (const auto& [name, value] : told.preferences)
        preferences[name] = value;
    auto findings = record.findings;
    findings.insert(findings.end(), told.findings.begin(), told.findings.end());
    const auto lines = partsList(findings, record.piano, jobTerms(preferences).spares);
    for (const auto& [name, value] : told.preferences) {
        if (!name.starts_with("ordered.") || value != "yes") continue;
        const std::string supply = name.substr(8);
        const std::string_view why = whyNotOrdered(supply, lines);
        if (!why.empty()) return refuse(RefusalCode::usage, words::notOrderedSentence(supply, why).toStdString());
    }
    return {};
}

/// Everything is read before anything is written, and it goes in as one act or not at all.
Outcome<void> write(Bench& bench, const SurveyRequest& request) {
    BenchBook::Surveyed told;
    auto findings = findingsOf(request, bench.record.piano);
    if (!findings) return tl::unexpected(findings.error());
    told.findings = std::move(*findings);
    for (const std::string& each : request.symptom) {
        auto read = parseSymptom(each, bench.record.piano);
        if (!read) return tl::unexpected(read.error());
        told.symptoms.push_back(std::move(*read));
    }
    auto settings = settingsOf(request);
    if (!settings) return tl::unexpected(settings.error());
    told.preferences = std::move(*settings);
    const auto looks = looksOf(request, bench.record);
    if (!looks) return tl::unexpected(looks.error());
    told.preferences.insert(told.preferences.end(), looks->begin(), looks->end());
    if (const auto may = mayBeOrdered(told, bench.record); !may) return may;
    if (const auto act = bench.book.addSurvey(bench.record.uuid, told); !act) return tl::unexpected(act.error());
    return loadAgain(bench);
}

struct Checked {
    std::string part;
    MarkCheck check;
};

/// "key 1-20 22 21 23-88"
Outcome<std::vector<Checked>> numbersOf(const SurveyRequest& request, const Piano& piano) {
    std::vector<Checked> all;
    for (const std::string& each : request.checkNumbers) {
        const auto blank = std::min(each.find(' '), each.size());
        const std::string name = each.substr(0, blank);
        const Part* part = findPart(name);
        if (!part || notesOf(*part, piano).empty()) return refuse(RefusalCode::unknownPart, name);
        const auto numbers = parseMarks(std::string_view(each).substr(blank));
        if (!numbers) return tl::unexpected(numbers.error());
        all.push_back({name, checkMarks(*numbers, name, piano)});
    }
    return all;
}

std::string withNumbers(std::string json, const std::vector<Checked>& numbers) {
    if (numbers.empty()) return json;
    auto object = nlohmann::ordered_json::parse(json);
    object["numbers"] = nlohmann::ordered_json::array();
    for (const auto& [part, check] : numbers)
        object["numbers"].push_back({{"part", part},
                                     {"right", check.right()},
                                     {"missing", check.missing},
                                     {"double", check.doubled},
                                     {"foreign", check.foreign},
                                     {"out_of_sequence", check.outOfSequence}});
    return object.dump(2);
}

/// Findings that say the same of several notes are one line.
void sayFindings(const PianoRecord& record, bool json) {
    std::vector<std::pair<Finding, std::vector<NoteNumber>>> rows;
    for (const Finding& finding : record.findings) {
        if (finding.state == FindingState::sound || finding.state == FindingState::notLookedAt) continue;
        const auto same = [&](const auto& row) {
            const Finding& f = row.first;
            return finding.note && f.note && f.part == finding.part && f.fault == finding.fault &&
                   f.remedy == finding.remedy && f.state == finding.state && f.remark == finding.remark &&
                   f.amount == finding.amount;
        };
        const auto row = std::find_if(rows.begin(), rows.end(), same);
        auto& notes = row != rows.end() ? row->second : rows.emplace_back(finding, std::vector<NoteNumber>{}).second;
        if (finding.note) notes.push_back(*finding.note);
    }
    for (auto& [finding, notes] : rows) {
        std::sort(notes.begin(), notes.end());
        say(words::findingSentence(finding, notes, record.piano), json);
    }
}

void sayParts(const PianoRecord& record, bool json) {
    TextTable table({{{}, true}, {}, {}, {}}, 2);
    const JobTerms terms = jobTerms(record.preferences);
    for (const PartsLine& line : partsList(record.findings, record.piano, terms.spares)) {
        QStringList size{words::supplySize(line), words::orderedBy(line)};
        size.removeAll(QString());
        const bool inHand = terms.inHand.contains(line.part), ordered = terms.ordered.contains(line.part);
        table.add({words::supplyQuantity(line, line.quantity), words::supplyName(line.part),
                   inHand    ? inConsole(QT_TRANSLATE_NOOP("console", "in hand"))
                   : ordered ? inConsole(QT_TRANSLATE_NOOP("console", "ordered"))
                             : QString(),
                   size.join(QStringLiteral("; "))});
    }
    for (const PartSize& each : terms.spares.sizes)
        if (sizeIsOdd(each)) ask(words::oddSizeSentence(each), json);
    if (!table.empty()) say(inConsole(QT_TRANSLATE_NOOP("console", "Parts to order:")), json);
    say(table, json);
}

void sayJob(const PianoRecord& record, bool json) {
    sayParts(record, json);
    const WorkOrder order = workOrder(record);
    say(inConsole(QT_TRANSLATE_NOOP("console", "The whole job, %1 open, %2 done:"))
            .arg(words::hours(order.minutesOpen), words::hours(order.minutesDone)),
        json);
    TextTable table({{{}, true}, {}, {}, {{}, true}, {}}, 2);
    int number = 0;
    for (const WorkOrderStep& step : order.steps)
        table.add({QStringLiteral("%1.").arg(++number), words::workStepName(step.id), words::workStateName(step.state),
                   step.minutesOpen > 0 ? words::hours(step.minutesOpen) : QString(), words::workStepText(step)});
    say(table, json);
}

/// On standard error. All of them while nothing was found yet, and with --cautions; else the first, which can kill, and
/// how many more there are.
void sayCautions(const PianoRecord& record, bool all, bool json) {
    const auto cautions = words::cautionsFor(record.piano);
    const std::size_t shown =
        all || record.findings.empty() ? cautions.size() : std::min<std::size_t>(1, cautions.size());
    for (std::size_t i = 0; i < shown; ++i)
        ask(words::caution(cautions[i], record.piano), json);
    if (shown < cautions.size())
        ask(inConsole(QT_TRANSLATE_N_NOOP("console", "%n more caution(s) hold here: --cautions."),
                      cautions.size() - shown),
            json);
}

/// On standard error: what has to be answered before a plan is made.
void askQuestions(const PianoRecord& record, bool json) {
    if (letOffRailFirst(record.findings, record.piano)) ask(words::letOffRailSentence(), json);
    for (const auto id : askBeforePlan(record.findings, record.piano, record.marks))
        ask(inConsole(QT_TRANSLATE_NOOP("console", "Before a plan: %1 (--state \"%2\")"))
                .arg(words::surveyQuestion(id, record.piano), words::surveyAnswer(id, record.piano)),
            json);
}

} // namespace

int run(const SurveyRequest& request, bool json) {
    const bool writes = !request.add.empty() || !request.state.empty() || !request.symptom.empty() ||
                        !request.settings.empty() || !request.looks.empty();
    auto bench = openBench(request.at, json, writes ? OpenMode::readWrite : OpenMode::readOnly);
    if (!bench) return refused(bench.error(), json);
    const auto numbers = numbersOf(request, bench->record.piano);
    if (!numbers) return refused(numbers.error(), json);
    if (writes)
        if (const auto written = write(*bench, request); !written) return refused(written.error(), json);
    const PianoRecord& record = bench->record;
    printJson(withNumbers(surveyJson(record), *numbers), json);
    sayCautions(record, request.cautions, json);
    askQuestions(record, json);
    sayFindings(record, json);
    for (const Advice& advice : adviceOf(record))
        say(words::adviceSentence(advice, record.piano), json);
    for (const OddPart& part : oddParts(record.preferences))
        say(words::oddPartSentence(part), json);
    for (const WorkBeside& work : workBeside(record.preferences))
        say(words::workBesideSentence(work), json);
    for (const auto& [part, check] : *numbers)
        say(QStringLiteral("%1. %2").arg(words::partOfActionName(part), words::markCheckSentence(check)), json);
    sayJob(record, json);
    const bool open =
        std::any_of(record.findings.begin(), record.findings.end(),
                    [](const Finding& f) { return f.state == FindingState::toDo; }) ||
        std::any_of(numbers->begin(), numbers->end(), [](const Checked& each) { return !each.check.right(); });
    return open ? kOutside : kDone;
}

} // namespace hammerline::app
