// The yardstick of the closed loop (computation 13): the same worn pianos, gauges, hands and clock for the program and
// for two players that go by the handbook. Prints NAME VALUE UNIT goal GOAL ok|short, and the minutes by kind.
//   yardstick [SEEDS] [FIRST] [SETTING]
#include "tests/virtual_action/players.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cstdlib>
#include <string>
#include <thread>

using namespace hammerline;
using namespace virtual_action;

namespace {

struct Setting {
    std::string_view name;
    Gauge gauge;
    double noise = 1, hands = 1, wear = 1;
    double goodGoal = 0, economicalGoal = 0; // 0: only printed
    double eye = -0.03;                      // what it passes as lying on the rail, mm of lost motion
    ActionKind kind = ActionKind::upright;
};

constexpr std::array kSettings = {
    Setting{"simple", Gauge::simple, 1, 1, 1, 0.48, 0.60},
    Setting{"good-tools", Gauge::good, 1, 1, 1, 0.66, 0.76},
    Setting{"simple-noise-half", Gauge::simple, 0.5},
    Setting{"simple-noise-x1.5", Gauge::simple, 1.5},
    Setting{"simple-hands-x2", Gauge::simple, 1, 2},
    Setting{"simple-half-wear", Gauge::simple, 1, 1, 0.5},
    Setting{.name = "simple-eye-0", .gauge = Gauge::simple, .eye = 0},
    Setting{.name = "simple-eye-0.05", .gauge = Gauge::simple, .eye = -0.05},
    Setting{"grand-simple", Gauge::simple, 1, 1, 1, 0.70, 0.85, -0.03, ActionKind::grand},
    Setting{"grand-good", Gauge::good, 1, 1, 1, 0.80, 0.90, -0.03, ActionKind::grand},
};

using Player = Played (*)(Workshop&, const SpecSheet&);
constexpr std::array<std::pair<std::string_view, Player>, 3> kPlayers = {
    {{"program", playProgram}, {"good-handbook", playGoodHandbook}, {"economical-handbook", playEconomicalHandbook}}};
using Round = std::array<Played, 3>;

Round play(const Setting& setting, std::uint64_t seed) {
    Piano piano = *makePiano(setting.kind);
    for (const DimensionId id : yardstickDimensions())
        piano.gauges[std::string(key(id))] = setting.gauge == Gauge::good ? "good" : "simple";
    const SpecSheet sheet = *builtInSheet(defaultSheet(setting.kind));
    Round round;
    for (std::size_t i = 0; i < kPlayers.size(); ++i) {
        Action action(piano, sheet, Wear{setting.wear, true}, seed);
        Workshop workshop(action, {setting.gauge, setting.noise, setting.hands, setting.eye}, seed);
        round[i] = kPlayers[i].second(workshop, sheet);
    }
    return round;
}

double median(std::vector<double> x) {
    std::sort(x.begin(), x.end());
    return x.empty() ? 0 : (x[(x.size() - 1) / 2] + x[x.size() / 2]) / 2;
}

template <class Of>
double median(const std::vector<Round>& rounds, Of of) {
    std::vector<double> x;
    for (const Round& round : rounds)
        x.push_back(of(round));
    return median(std::move(x));
}

void line(const std::string& name, double value, std::string_view unit, double goal, bool atMost) {
    if (goal <= 0)
        fmt::print("{} {:.3g} {} goal - ok\n", name, value, unit);
    else
        fmt::print("{} {:.3g} {} goal {:g} {}\n", name, value, unit, goal,
                   (atMost ? value <= goal : value >= goal) ? "ok" : "short");
}

void report(const Setting& setting, const std::vector<Round>& rounds) {
    const std::string name = fmt::format("yardstick-{}", setting.name);
    for (std::size_t i = 0; i < kPlayers.size(); ++i) {
        const std::string who = fmt::format("{}-{}", name, kPlayers[i].first);
        const auto of = [&](auto part) { return median(rounds, [&](const Round& round) { return part(round[i]); }); };
        double finished = 0, nearly = 0;
        for (const Round& round : rounds) {
            finished += round[i].finished;
            nearly += round[i].nearly;
        }
        const double share = 100 / static_cast<double>(rounds.size());
        fmt::print(
            "# {}: minutes reading {:.0f}, single {:.0f}, common {:.0f}, access {:.0f}; passes {:g}; at most 5 % "
            "plainly outside {:.1f} %\n",
            who, of([](const Played& p) { return p.minutes.reading; }),
            of([](const Played& p) { return p.minutes.single; }), of([](const Played& p) { return p.minutes.common; }),
            of([](const Played& p) { return p.minutes.access; }),
            of([](const Played& p) { return static_cast<double>(p.passes); }), nearly * share);
        line(who + "-minutes", of([](const Played& p) { return p.minutes.all(); }), "min", 0, true);
        line(who + "-finished", finished * share, "%", i == 0 && setting.goodGoal > 0 ? 97 : 0, false);
    }
    for (const std::size_t i : {1U, 2U})
        line(fmt::format("{}-over-{}", name, kPlayers[i].first),
             median(rounds, [&](const Round& r) { return r[0].minutes.all() / r[i].minutes.all(); }), "ratio",
             i == 1 ? setting.goodGoal : setting.economicalGoal, true);
    line(name + "-passes-fewer-than-good",
         median(rounds, [](const Round& r) { return static_cast<double>(r[1].passes - r[0].passes); }), "passes",
         setting.name == "simple" ? 1 : 0, false);
}

} // namespace

int main(int argc, char** argv) {
    const int seeds = argc > 1 ? std::atoi(argv[1]) : 200;
    const int first = argc > 2 ? std::atoi(argv[2]) : 1;
    const std::string only = argc > 3 ? argv[3] : "";
    if (seeds < 1) return 2;
    for (const Setting& setting : kSettings) {
        if (!only.empty() && only != setting.name) continue;
        std::vector<Round> rounds(static_cast<std::size_t>(seeds));
        const unsigned hands = std::max(1U, std::thread::hardware_concurrency());
        std::vector<std::thread> workers;
        for (unsigned hand = 0; hand < hands; ++hand)
            workers.emplace_back([&, hand] {
                for (std::size_t i = hand; i < rounds.size(); i += hands)
                    rounds[i] = play(setting, static_cast<std::uint64_t>(first) + i);
            });
        for (std::thread& worker : workers)
            worker.join();
        report(setting, rounds);
    }
}
