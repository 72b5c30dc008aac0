// survey: findings by note and part, symptoms, parts to order.
#include "app/commands/bench.h"
#include "app/commands/commands.h"
#include "app/console.h"
#include "core/sheet/sheet.h"
#include "ui/words/words.h"

#include <QString>

#include <algorithm>

namespace hammerline::app {
namespace {

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

/// Everything is read before anything is written: all of it goes in, or nothing.
Outcome<void> write(Bench& bench, const SurveyRequest& request) {
    const auto findings = findingsOf(request, bench.record.piano);
    if (!findings) return tl::unexpected(findings.error());
    std::vector<Symptom> symptoms;
    for (const std::string& each : request.symptom) {
        auto read = parseSymptom(each, bench.record.piano);
        if (!read) return tl::unexpected(read.error());
        symptoms.push_back(std::move(*read));
    }
    if (!findings->empty())
        if (const auto act = bench.book.addFindings(bench.record.uuid, *findings); !act)
            return tl::unexpected(act.error());
    for (const Symptom& each : symptoms)
        if (const auto act = bench.book.addSymptom(bench.record.uuid, each); !act) return tl::unexpected(act.error());
    auto again = bench.book.load(bench.record.uuid);
    if (!again) return tl::unexpected(again.error());
    bench.record = std::move(*again);
    return {};
}

} // namespace

int run(const SurveyRequest& request, bool json) {
    const bool writes = !request.add.empty() || !request.state.empty() || !request.symptom.empty();
    auto bench = openBench(request.at, writes ? OpenMode::readWrite : OpenMode::readOnly);
    if (!bench) return refused(bench.error(), json);
    if (writes)
        if (const auto written = write(*bench, request); !written) return refused(written.error(), json);
    const Piano& piano = bench->record.piano;
    printJson(surveyJson(bench->record), json);
    for (const auto id : words::cautionsFor(piano))
        ask(words::caution(id), json);
    for (const Finding& finding : bench->record.findings)
        if (finding.state != FindingState::sound) say(words::findingSentence(finding, piano), json);
    for (const PartsLine& line : partsList(bench->record.findings, piano))
        say(QStringLiteral("  %1 x %2 %3")
                .arg(line.quantity)
                .arg(words::partOfActionName(line.part), QString::fromStdString(line.size)),
            json);
    const bool open = std::any_of(bench->record.findings.begin(), bench->record.findings.end(),
                                  [](const Finding& f) { return f.state == FindingState::toDo; });
    return open ? kOutside : kDone;
}

} // namespace hammerline::app
