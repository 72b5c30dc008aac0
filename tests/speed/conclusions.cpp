// What the program concludes, against the truth of virtual pianos (long run, printed by tests/bench.sh): how often the
// truth lies inside its 95 % intervals, by dimension, where cells were read again after work and where they are only
// expected, and in how many pianos a screw is believed to answer the other way round though none does. Prints NAME
// VALUE UNIT goal GOAL ok|short.
//   conclusions [PIANOS] [FIRST SEED]
#include "core/plan/bench.h"
#include "tests/virtual_action/players.h"

#include <fmt/format.h>

#include <array>
#include <cmath>
#include <cstdlib>
#include <set>

using namespace hammerline;
using namespace virtual_action;

namespace {

struct Cover {
    int cells = 0, inside = 0;
    double z = 0, zz = 0;
    void add(double off, double variance) {
        const double each = off / std::sqrt(variance);
        ++cells;
        inside += std::abs(each) <= 1.959963984540054;
        z += each;
        zz += each * each;
    }
    void add(const Cover& other) {
        cells += other.cells;
        inside += other.inside;
        z += other.z;
        zz += other.zz;
    }
};

/// How a cell is known: read for the first time; read once more, never moved; moved and read; moved and only expected;
/// reckoned from others, never read. Of what is read, the cells of the newest pass.
enum class Told : std::uint8_t { first, again, afterWork, expected, reckoned };
constexpr std::array kHow = {"first", "again", "after-work", "expected", "reckoned"};
using Covers = std::array<std::map<DimensionId, Cover>, kHow.size()>;

struct Setting {
    std::string_view name;
    ActionKind kind;
    Gauge gauge;
};
constexpr std::array kSettings = {Setting{"upright-simple", ActionKind::upright, Gauge::simple},
                                  Setting{"upright-good", ActionKind::upright, Gauge::good},
                                  Setting{"grand-simple", ActionKind::grand, Gauge::simple},
                                  Setting{"grand-good", ActionKind::grand, Gauge::good}};

class Watching {
public:
    explicit Watching(const SpecSheet& sheet) : m_sheet(sheet) {}

    void look(Moment moment, const PianoRecord& record, const Action& action) {
        const auto bench = layOut(record, m_sheet, record.passes.back().number, {});
        // Every screw of these pianos turns as customary: an answer believed the other way round is wrong.
        for (const Response& response : bench->responses)
            wrongSign = wrongSign || response.opposite;
        for (int n = 1; n <= record.piano.notes; ++n)
            for (const DimensionId id : yardstickDimensions()) {
                const Cell cell{{n}, id};
                const Known& known = bench->state({n}).of(id);
                const auto truth = action.truth(cell);
                if (!truth || !known.known || known.variance <= 0) continue;
                if (moment == Moment::worked && !known.expected) continue;
                const bool readNow = record.passes.back().at(cell) != nullptr;
                if (moment == Moment::read && !readNow && !known.derived) continue;
                auto how = m_moved.contains(cell) ? Told::afterWork : Told::again;
                if (known.derived)
                    how = Told::reckoned;
                else if (known.readings == 0)
                    how = Told::expected;
                else if (m_known.insert(cell).second)
                    how = Told::first;
                if (known.readings == 0) m_moved.insert(cell);
                covers[static_cast<std::size_t>(how)][id].add(bench->shown(cell) - *truth, known.variance);
            }
    }

    Covers covers;
    bool wrongSign = false;

private:
    const SpecSheet& m_sheet;
    std::set<Cell> m_moved, m_known;
};

struct Seen {
    Covers covers;
    bool finished = false, wrongSign = false;
};

Seen watched(const Setting& setting, std::uint64_t seed) {
    Piano piano = *makePiano(setting.kind);
    for (const DimensionId id : yardstickDimensions())
        piano.gauges[std::string(key(id))] = setting.gauge == Gauge::good ? "good" : "simple";
    const SpecSheet sheet = *builtInSheet(defaultSheet(setting.kind));
    Action action(piano, sheet, {}, seed);
    Workshop workshop(action, {setting.gauge}, seed);
    Watching watching(sheet);
    const auto look = [&](Moment moment, const PianoRecord& record, const Action& now) {
        watching.look(moment, record, now);
    };
    const bool finished = watchProgram(workshop, sheet, look).finished;
    return {watching.covers, finished, watching.wrongSign};
}

void line(const std::string& name, const Cover& cover, double least, double most) {
    if (cover.cells < 200) return;
    const double share = double(cover.inside) / cover.cells, mean = cover.z / cover.cells;
    const double spread = std::sqrt(cover.zz / cover.cells - mean * mean);
    const bool ok = share >= least && share <= most;
    fmt::print("{} {:.3f} share goal {:g}..{:g} {}  (n {}, z mean {:+.2f} sd {:.2f})\n", name, share, least, most,
               ok ? "ok" : "short", cover.cells, mean, spread);
}

void report(const Setting& setting, const Covers& covers) {
    for (std::size_t how = 0; how < kHow.size(); ++how) {
        Cover all;
        for (const auto& [id, cover] : covers[how]) {
            line(fmt::format("coverage-{}-{}-{}", setting.name, kHow[how], key(id)), cover, 0.90, 0.99);
            all.add(cover);
        }
        line(fmt::format("coverage-{}-{}", setting.name, kHow[how]), all, 0.93, 0.97);
    }
}

} // namespace

int main(int argc, char** argv) {
    const int pianos = argc > 1 ? std::atoi(argv[1]) : 40;
    const int first = argc > 2 ? std::atoi(argv[2]) : 9501;
    if (pianos < 1) return 2;
    for (const Setting& setting : kSettings) {
        Covers covers;
        int finished = 0, wrongSigns = 0;
        for (int i = 0; i < pianos; ++i) {
            const Seen seen = watched(setting, static_cast<std::uint64_t>(first + i));
            finished += seen.finished;
            wrongSigns += seen.wrongSign;
            for (std::size_t how = 0; how < kHow.size(); ++how)
                for (const auto& [id, cover] : seen.covers[how])
                    covers[how][id].add(cover);
        }
        fmt::print("# {}: {} of {} finished\n", setting.name, finished, pianos);
        fmt::print("wrong-signs-{} {} pianos goal 0 {}\n", setting.name, wrongSigns, wrongSigns == 0 ? "ok" : "short");
        report(setting, covers);
    }
}
