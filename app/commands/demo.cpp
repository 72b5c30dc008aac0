// demo: a village hall's upright, invented from end to end and marked so: three passes, findings, a ticked plan.
#include "app/commands/bench.h"
#include "app/commands/commands.h"
#include "app/console.h"
#include "core/intake/intake.h"
#include "core/plan/plan_in_force.h"

#include <QString>
#include <QUuid>

#include <charconv>
#include <sstream>

namespace hammerline::resources {
extern const std::string_view demoReadings, demoFindings, demoMended, demoDone;
}

namespace hammerline::app {
namespace {

constexpr const char* kName = "Village hall upright, 1912 (invented readings)";

Outcome<Piano> demoPiano() {
    auto piano = makePiano(ActionKind::upright);
    if (!piano) return piano;
    piano->name = kName;
    for (const auto& [name, value] : {std::pair{"player", "above"},
                                      {"butt", "brass-rail"},
                                      {"rest-rail", "1-44,45-88"},
                                      {"sections", "1-28 Bass,29-58 Tenor,59-88 Treble"},
                                      {"last-damper", "66"},
                                      {"balance-screws", "1,14,27,40,53,66,79,88"}})
        if (const auto set = setAttribute(*piano, name, value); !set) return tl::unexpected(set.error());
    return piano;
}

std::vector<std::string> lines(std::string_view text) {
    std::vector<std::string> out;
    std::istringstream in{std::string(text)};
    for (std::string line; std::getline(in, line);)
        if (!line.empty()) out.push_back(line);
    return out;
}

/// "let-off-turn 20,45,70 -0.125"
Outcome<std::vector<Done>> trials(const Piano& piano) {
    std::vector<Done> all;
    for (const std::string& line : lines(resources::demoDone)) {
        std::istringstream words(line);
        std::string operation, notes;
        double amount = 0;
        words >> operation >> notes >> amount;
        const auto id = findOperation(operation);
        if (!id) return tl::unexpected(id.error());
        const auto where = parseNotes(notes, piano);
        if (!where) return tl::unexpected(where.error());
        Done done;
        done.operation = *id;
        done.notes = *where;
        done.amount = amount;
        done.pass = 1;
        all.push_back(std::move(done));
    }
    return all;
}

Outcome<void> storePass(BenchBook& book, const std::string& uuid, const Intake& intake, int number,
                        const NewPass& fresh) {
    const auto pass = book.addPass(uuid, fresh);
    if (!pass) return tl::unexpected(pass.error());
    std::vector<NewReading> readings;
    for (const Sound& each : intake.sound)
        if (each.pass == std::to_string(number)) readings.push_back({each.cell, each.reading});
    const auto act = book.store(uuid, *pass, readings, "import", "demo");
    if (!act) return tl::unexpected(act.error());
    return {};
}

NewPass passAs(const char* label, double celsius, double humidity) {
    NewPass pass;
    pass.label = label;
    pass.temperature = celsius;
    pass.humidity = humidity;
    return pass;
}

Outcome<void> tickPlan(BenchBook& book, const std::string& uuid, int pass) {
    const auto record = book.load(uuid);
    if (!record) return tl::unexpected(record.error());
    PlanOptions options;
    options.floating = Float::aftertouch;
    auto plan = makePlan(*record, sheetOf(*record), pass, options);
    if (!plan) return tl::unexpected(plan.error());
    const FrozenPlan frozen = freeze(*plan, QUuid::createUuid().toString(QUuid::WithoutBraces).toStdString());
    plan->uuid = frozen.uuid;
    std::vector<Done> ticked;
    for (const Step& step : plan->steps)
        if (auto one = doneBy(*plan, Tick{step.id, {}, true})) ticked.push_back(std::move(*one));
    if (ticked.empty()) return {};
    const auto act = book.tick(uuid, ticked, frozen);
    if (!act) return tl::unexpected(act.error());
    return {};
}

using ReadFindings = Outcome<std::vector<Finding>> (*)(std::string_view, const Piano&);

Outcome<void> survey(BenchBook& book, const std::string& uuid, const Piano& piano, std::string_view text,
                     ReadFindings read) {
    std::vector<Finding> findings;
    for (const std::string& line : lines(text)) {
        auto each = read(line, piano);
        if (!each) return tl::unexpected(each.error());
        findings.insert(findings.end(), each->begin(), each->end());
    }
    const auto act = book.addFindings(uuid, findings);
    if (!act) return tl::unexpected(act.error());
    return {};
}

Outcome<void> fill(BenchBook& book) {
    const auto piano = demoPiano();
    if (!piano) return tl::unexpected(piano.error());
    const auto uuid = book.addPiano(*piano, "old-upright");
    if (!uuid) return tl::unexpected(uuid.error());
    const auto intake = readReadings(resources::demoReadings, *piano);
    if (!intake) return tl::unexpected(intake.error());
    if (auto found = survey(book, *uuid, *piano, resources::demoFindings, parseFindings); !found) return found;
    if (auto pass = storePass(book, *uuid, *intake, 1, passAs("as found", 19.0, 48.0)); !pass) return pass;
    const auto tried = trials(*piano);
    if (!tried) return tl::unexpected(tried.error());
    if (const auto act = book.tick(*uuid, *tried); !act) return tl::unexpected(act.error());
    if (auto pass = storePass(book, *uuid, *intake, 2, passAs("trial notes", 19.0, 50.0)); !pass) return pass;
    if (auto mended = survey(book, *uuid, *piano, resources::demoMended, parseFindingStates); !mended) return mended;
    if (auto ticked = tickPlan(book, *uuid, 2); !ticked) return ticked;
    return storePass(book, *uuid, *intake, 3, passAs("after the first list", 18.5, 52.0));
}

} // namespace

int run(const DemoRequest& request, bool json) {
    const auto book = BenchBook::createFilled(request.book, fill);
    if (!book) return refused(book.error(), json);
    say(QStringLiteral("Demo book written: %1 (every reading in it is invented).")
            .arg(QString::fromStdString(request.book)),
        json);
    return done(1, json);
}

} // namespace hammerline::app
