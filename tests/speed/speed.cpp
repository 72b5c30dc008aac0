// How long a live choice takes: judging, the whole view, the plan (issue of one frame: 16 ms). The record is that of a
// worn virtual piano, 88 notes by ten dimensions. tests/bench.sh turns Google Benchmark's JSON into its lines.
#include "core/plan/plan.h"
#include "core/sheet/pass_view.h"
#include "tests/virtual_action/workshop.h"

#include <benchmark/benchmark.h>
#include <fmt/format.h>

#include <cstdio>

using namespace hammerline;

namespace {

PianoRecord worn(int notes, std::uint32_t seed) {
    PianoRecord record;
    record.piano = *makePiano(ActionKind::upright, notes, notes == 88 ? 21 : 45);
    record.specName = "upright";
    record.passes.emplace_back();
    record.passes.back().number = 1;
    const virtual_action::Action action(record.piano, *builtInSheet("upright"), {}, seed);
    for (int n = 1; n <= notes; ++n)
        for (const Dimension& dimension : dimensions())
            if (const auto truth = action.truth({{n}, dimension.id})) {
                Reading reading;
                reading.count = fromTrade(*truth, dimension.kind);
                record.passes.back().cells[{{n}, dimension.id}].trials = {reading};
            }
    return record;
}

/// One worn piano may need its rails moved and the next none: each turn takes another one, so that pianos of two sizes
/// are compared by their like.
class Pianos {
public:
    explicit Pianos(const benchmark::State& state) {
        for (std::uint32_t seed = 1; seed <= 24; ++seed)
            m_records.push_back(worn(static_cast<int>(state.range(0)), seed));
    }
    const PianoRecord& next() { return m_records[m_turn++ % m_records.size()]; }

private:
    std::vector<PianoRecord> m_records;
    std::size_t m_turn = 0;
};

void judging(benchmark::State& state) {
    Pianos pianos(state);
    const Zones zones(*builtInSheet("upright"), pianos.next().piano);
    for (auto _ : state) {
        const PianoRecord& record = pianos.next();
        benchmark::DoNotOptimize(review(record.piano, record.passes.front(), zones));
    }
}

void viewing(benchmark::State& state) {
    Pianos pianos(state);
    for (auto _ : state)
        benchmark::DoNotOptimize(viewPass(pianos.next(), 1));
}

/// Judging, ranking, unevenness, consistency, causes and the touch-up plan.
void planning(benchmark::State& state) {
    Pianos pianos(state);
    const SpecSheet sheet = *builtInSheet("upright");
    for (auto _ : state)
        benchmark::DoNotOptimize(makePlan(pianos.next(), sheet, 1, {}));
}

} // namespace

BENCHMARK(judging)->Arg(44)->Arg(88)->Unit(benchmark::kMillisecond);
BENCHMARK(viewing)->Arg(44)->Arg(88)->Unit(benchmark::kMillisecond);
BENCHMARK(planning)->Arg(44)->Arg(88)->Unit(benchmark::kMillisecond);

/// The readings with their zones as CSV, so that the same judging can be done elsewhere (judging.R).
static void writeReadings() {
    const PianoRecord record = worn(88, 7);
    const Zones zones(*builtInSheet("upright"), record.piano);
    std::puts("dimension,note,sharp,value,low,nominal,high,u");
    for (const auto& [cell, measured] : record.passes.front().cells)
        if (const auto& zone = zones.at(cell); zone && zone->low && zone->high)
            fmt::print("{},{},{},{},{},{},{},{}\n", key(cell.dimension), cell.note.value,
                       colourOf(cell.note, record.piano) == KeyColour::sharp ? 1 : 0, *measured.value(), *zone->low,
                       zone->nominal, *zone->high, uncertaintyOf(cell.dimension, record.piano));
}

int main(int argc, char** argv) {
    if (argc > 1 && std::string_view(argv[1]) == "--readings") {
        writeReadings();
        return 0;
    }
    benchmark::Initialize(&argc, argv);
    if (benchmark::ReportUnrecognizedArguments(argc, argv)) return 2;
    benchmark::RunSpecifiedBenchmarks();
}
