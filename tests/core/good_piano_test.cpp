// Pianos that need nothing, read once with ordinary noise: what is planned there is work nobody needs. The pianos are
// made for this; the noise is that of the gauge as the catalogue tells it. No source for the counts but the reasoning
// beside each: nobody can know better from one reading.
#include "core/plan/plan.h"

#include <catch2/catch.hpp>

#include <cmath>
#include <random>
#include <set>

using namespace hammerline;
using namespace hammerline::dimension;

namespace {

constexpr std::array kRead = {keyHeight, sharpHeight, keyDip, lostMotion, blow, letOff, aftertouch, checking};
constexpr int kPianos = 20;

enum class Tool { simple, good };

struct Truth {
    double spread = 0;                           // of the halves of each zone, standard deviation
    std::optional<double> lost = {}, dipAt = {}; // lost motion everywhere; dip so far inside its high limit
    bool shallow = false;                        // aftertouch too little everywhere
};

/// A piano with its true distances, and what a person reads of it.
class Piece {
public:
    Piece(ActionKind kind, Tool tool, const Truth& truth, unsigned seed)
        : m_sheet(*builtInSheet(defaultSheet(kind))), m_chance(seed) {
        m_record.piano = *makePiano(kind);
        for (const DimensionId id : kRead)
            m_record.piano.gauges[std::string(key(id))] = tool == Tool::good ? "good" : "simple";
        m_record.specName = defaultSheet(kind);
        m_record.passes.push_back(Pass{});
        m_record.passes.back().number = 1;
        const Zones zones(m_sheet, m_record.piano);
        for (int n = 1; n <= m_record.piano.notes; ++n)
            for (const DimensionId id : kRead)
                if (const auto& zone = zones.at({{n}, id}); zone && fitted(id, {n}, m_record.piano))
                    read({{n}, id}, trueAt(*zone, id, truth));
    }

    Plan plan() const { return *makePlan(m_record, m_sheet, 1, {}); }
    PianoRecord& record() { return m_record; }
    /// Whether the note's own readings all lie inside their zones.
    bool readsWithin(NoteNumber note) const {
        const Zones zones(m_sheet, m_record.piano);
        return std::all_of(kRead.begin(), kRead.end(), [&](DimensionId id) {
            const auto value = m_record.passes.back().value({note, id});
            const auto& zone = zones.at({note, id});
            if (!value || !zone) return true;
            const bool eye = id == lostMotion && *value >= 0;
            return (!zone->low || eye || *value >= *zone->low) && (!zone->high || *value <= *zone->high);
        });
    }

private:
    double trueAt(const Zone& zone, DimensionId id, const Truth& truth) {
        const double nominal = toTrade(zone.nominal, Kind::length);
        const double low = toTrade(zone.low.value_or(zone.nominal), Kind::length);
        const double high = toTrade(zone.high.value_or(zone.nominal), Kind::length);
        if (id == lostMotion && truth.lost) return *truth.lost;
        if (id == keyDip && truth.dipAt) return high - *truth.dipAt;
        if (id == aftertouch && truth.shallow) return low - 0.15;
        double at = 0;
        do
            at = truth.spread * m_normal(m_chance);
        while (std::abs(at) > 1);
        return nominal + at * (at > 0 ? high - nominal : nominal - low);
    }

    void read(Cell cell, double truth) {
        const double u = toTrade(uncertaintyOf(cell.dimension, m_record.piano), Kind::length);
        const double step = cell.dimension == blow || cell.dimension == checking ? 0.5 : 0.1;
        double seen = std::round((truth + u * m_normal(m_chance)) / step) * step;
        // The eye sees whether the hammer lies on its rail; what lies there has no lost motion below nothing.
        if (cell.dimension == lostMotion && truth >= 0) seen = std::max(seen, 0.0);
        Reading reading;
        reading.count = fromTrade(seen, Kind::length);
        m_record.passes.back().cells[cell].trials = {reading};
    }

    SpecSheet m_sheet;
    std::mt19937 m_chance;
    std::normal_distribution<double> m_normal;
    PianoRecord m_record;
};

struct Counted {
    int steps = 0, needless = 0, most = 0, punchings = 0, capstans = 0;
    std::string what;
};

Counted count(ActionKind kind, Tool tool, const Truth& truth) {
    Counted all;
    for (unsigned seed = 9100; seed < 9100 + kPianos; ++seed) {
        const Piece piece(kind, tool, truth, seed);
        const Plan plan = piece.plan();
        for (const Step& step : plan.steps) {
            const bool needless = !step.note || piece.readsWithin(*step.note);
            all.needless += needless;
            all.punchings += step.operation == operation::balancePunching;
            all.capstans += step.operation == operation::capstanTurn;
            if (needless) all.what += std::to_string(seed) + ' ' + step.id + ' ' + step.why + '\n';
        }
        all.steps += static_cast<int>(plan.steps.size());
        all.most = std::max(all.most, static_cast<int>(plan.steps.size()));
    }
    return all;
}

double perPiano(int count) {
    return static_cast<double>(count) / kPianos;
}

} // namespace

TEST_CASE("a piano at its aims gets no work on a note that reads within, and hardly any at all") {
    for (const ActionKind kind : {ActionKind::upright, ActionKind::drop, ActionKind::grand})
        for (const Tool tool : {Tool::simple, Tool::good}) {
            const Counted found = count(kind, tool, {});
            INFO(key(kind) << (tool == Tool::good ? " good\n" : " simple\n") << found.what);
            CHECK(found.needless == 0);
            // What is left reads outside by its own reading: of some 600 cells a handful with the simple gauge.
            CHECK(perPiano(found.steps) <= (tool == Tool::good ? 0.5 : 5));
            CHECK(found.most <= (tool == Tool::good ? 2 : 12));
            CHECK(found.punchings <= 1);
        }
}

TEST_CASE("an even piano inside its zones gets no work on a note that reads within") {
    for (const double spread : {0.25, 0.6})
        for (const Tool tool : {Tool::simple, Tool::good}) {
            const Counted found = count(ActionKind::upright, tool, Truth{.spread = spread});
            INFO(spread << (tool == Tool::good ? " good\n" : " simple\n") << found.what);
            CHECK(found.needless == 0);
        }
}

TEST_CASE("no capstan goes down where the hammers lie on their rail with no lost motion") {
    // Nothing is too little while the hammer rests on its rail and the jack comes home (list post 1998-March/028905).
    for (const ActionKind kind : {ActionKind::upright, ActionKind::drop}) {
        Piece piece(kind, Tool::simple, {}, 9100);
        for (auto& [cell, measured] : piece.record().passes.back().cells)
            if (cell.dimension == lostMotion) measured.trials.back().count = 0;
        for (const Step& step : piece.plan().steps) {
            INFO(key(kind) << " " << step.id);
            CHECK(step.operation != operation::capstanTurn);
        }
    }
}

TEST_CASE("keys of a level keyboard are not lifted for an aftertouch that falls short") {
    for (const Tool tool : {Tool::simple, Tool::good}) {
        const Counted found = count(ActionKind::upright, tool, Truth{.shallow = true});
        CHECK(perPiano(found.steps) > 20); // there is work: by front punchings and let-off
        CHECK(found.punchings == 0);
    }
}
