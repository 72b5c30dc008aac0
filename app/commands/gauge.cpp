// gauge: how well each dimension is read, from the repeats in the book, and the study of several persons.
#include "app/commands/bench.h"
#include "app/commands/commands.h"
#include "app/console.h"
#include "core/experience/gauge_use.h"
#include "ui/words/said.h"
#include "ui/words/words.h"

#include <QString>
#include <nlohmann/json.hpp>

#include <algorithm>

namespace hammerline::app {
namespace {

using Json = nlohmann::ordered_json;

Json studyJson(const std::optional<GaugeUse::Study>& study) {
    if (!study) return nullptr;
    return {{"notes", study->notes},
            {"persons", study->persons},
            {"trials", study->trials},
            {"method", study->byRange ? "average-and-range" : "analysis-of-variance"},
            {"repeatability", study->repeatability},
            {"reproducibility", study->reproducibility},
            {"gauge", study->gauge},
            {"notes_differ", study->notesDiffer},
            {"total", study->total},
            {"ndc", study->distinct}};
}

Json gaugeJson(const GaugeUse& use) {
    return {{"dimension", std::string(key(use.dimension))},
            {"n", use.readings},
            {"repeatability", use.study ? use.study->repeatability : use.repeatability},
            {"reproducibility", use.study ? Json(use.study->reproducibility) : Json(nullptr)},
            {"u_used", use.told},
            {"u_seen", use.seen},
            {"difference95", use.difference},
            {"ndc", use.study ? Json(use.study->distinct) : Json(nullptr)},
            {"study", studyJson(use.study)}};
}

void sayStudy(const GaugeUse::Study& study, bool json) {
    say(inConsole(QT_TRANSLATE_NOOP("console", "  %1 notes, %2 persons, %3 trials: repeats %4, persons %5, both %6; "
                                               "the notes themselves %7; tells %8 kinds of notes apart"))
            .arg(study.notes)
            .arg(study.persons)
            .arg(study.trials)
            .arg(words::number(study.repeatability, 3), words::number(study.reproducibility, 3),
                 words::number(study.gauge, 3), words::number(study.notesDiffer, 3))
            .arg(study.distinct),
        json);
}

/// From ten repeats on: fewer say too little of a standard deviation (within a quarter either way in two of three).
void sayWhatFollows(const GaugeUse& use, bool json) {
    constexpr int kEnough = 9;
    constexpr double kBetter = 0.8, kWorse = 1.25;
    if (use.degrees < kEnough || use.told <= 0) return;
    const double share = use.seen / use.told;
    if (share < kBetter)
        ask(inConsole(QT_TRANSLATE_NOOP("console", "  Better than the set-up says: a finer gauge-%1 may be set."))
                .arg(QString::fromUtf8(key(use.dimension).data())),
            json);
    if (share > kWorse)
        ask(inConsole(QT_TRANSLATE_NOOP("console",
                                        "  Worse than the set-up says: look at the gauge and how it is held, "
                                        "or set a coarser gauge-%1."))
                .arg(QString::fromUtf8(key(use.dimension).data())),
            json);
}

/// "2,3,4". Refuses noSuchPass.
Outcome<std::vector<int>> passesOf(const std::string& typed, const PianoRecord& record) {
    std::vector<int> numbers;
    for (const QString& part : QString::fromStdString(typed).split(u',', Qt::SkipEmptyParts)) {
        bool isNumber = false;
        const int number = part.trimmed().toInt(&isNumber);
        if (!isNumber || !record.pass(number)) return refuse(RefusalCode::noSuchPass, part.trimmed().toStdString());
        numbers.push_back(number);
    }
    return numbers;
}

} // namespace

int run(const GaugeRequest& request, bool json) {
    const auto bench = openBench(request.at, json, OpenMode::readOnly);
    if (!bench) return refused(bench.error(), json);
    const auto persons = passesOf(request.persons, bench->record);
    if (!persons) return refused(persons.error(), json);
    std::vector<GaugeUse> all = gaugeUse(bench->record, *persons);
    if (!request.dimension.empty()) {
        const auto only = findDimension(request.dimension);
        if (!only) return refused(only.error(), json);
        std::erase_if(all, [&](const GaugeUse& use) { return use.dimension != *only; });
    }
    Json out = {{"dimensions", Json::array()}};
    for (const GaugeUse& use : all) {
        out["dimensions"].push_back(gaugeJson(use));
        say(inConsole(QT_TRANSLATE_NOOP("console", "%1: %2 repeats, standard deviation %3; two readings of one note "
                                                   "differ by less than %4; reckoned with %5"))
                .arg(words::name(use.dimension))
                .arg(use.readings)
                .arg(words::number(use.repeatability, 3), words::number(use.difference, 2), words::number(use.told, 3)),
            json);
        if (use.study) sayStudy(*use.study, json);
        sayWhatFollows(use, json);
    }
    printJson(out.dump(2, ' ', false, Json::error_handler_t::replace), json);
    if (all.empty())
        ask(inConsole(QT_TRANSLATE_NOOP("console", "Nothing was read repeatedly. Read one note ten times (\"enter "
                                                   "--repeat\"), the gauge taken away and set anew each time.")),
            json);
    return 0;
}

} // namespace hammerline::app
