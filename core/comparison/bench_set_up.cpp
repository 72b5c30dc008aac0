#include "core/comparison/bench_set_up.h"

#include "core/judge/judge.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <limits>
#include <numbers>

namespace hammerline {
namespace {

constexpr double kLeastLimit = 0.1; // mm (situation 20; the threshold is common practice, no source)
constexpr std::array kReferenceDimensions = {dimension::keyHeight, dimension::keyDip};

/// A remedy of the survey between two readings (by the order of acts) that makes such readings stale.
bool mendedBetween(const PianoRecord& record, Cell cell, std::int64_t from, std::int64_t to) {
    return std::any_of(record.findings.begin(), record.findings.end(), [&](const Finding& finding) {
        if (finding.state != FindingState::mended || finding.order <= from || finding.order >= to) return false;
        if (finding.note && *finding.note != cell.note) return false;
        const Part* part = findPart(finding.part);
        return part && (part->staleAll ||
                        std::find(part->stale.begin(), part->stale.end(), cell.dimension) != part->stale.end());
    });
}

/// Whether the cell was disturbed after its reading in `from` and before the one in `to` (none: up to now).
bool disturbedSince(const PianoRecord& record, Cell cell, const Pass& from, const Pass* to) {
    constexpr std::int64_t kNow = std::numeric_limits<std::int64_t>::max();
    const bool worked = std::any_of(record.done.begin(), record.done.end(), [&](const Done& done) {
        return done.pass >= from.number && (!to || done.pass < to->number) &&
               std::any_of(done.notes.begin(), done.notes.end(),
                           [&](NoteNumber at) { return disturbs(done.operation, at, cell, record.piano); });
    });
    return worked || mendedBetween(record, cell, from.at(cell)->order(), to ? to->at(cell)->order() : kNow);
}

class Comparing {
public:
    Comparing(const PianoRecord& record, int pass) : m_record(record) {
        int first = pass;
        while (first > 1 && record.pass(first - 1)->onBench)
            --first;
        for (int number = pass; number >= 1; --number) {
            const Pass& each = *record.pass(number);
            // against a line heights lose its sag; over bed and slip they stay as they were read
            const bool line = each.referenceOf(dimension::keyHeight) == "line";
            Pass read = line ? withRelativeHeights(record.piano, each) : each;
            if (number >= first)
                m_onBench.push_back(std::move(read));
            else if (!each.onBench)
                m_inPiano.push_back(std::move(read));
        }
    }

    BenchSetUp tell() {
        BenchSetUp out;
        const auto sections = sectionsOf(m_record.piano);
        bool known = false, unread = false;
        for (std::size_t s = 0; s < sections.size(); ++s)
            for (const DimensionId id : kReferenceDimensions) {
                const auto [compared, candidate] = section(s, sections[s], id);
                known = known || candidate;
                if (compared) {
                    out.pianoPass = std::max(out.pianoPass, m_lastPiano);
                    if (!compared->agrees())
                        for (const NoteNumber note : compared->notes)
                            out.toRead.push_back({note, id});
                    out.compared.push_back(*compared);
                } else if (candidate) {
                    unread = true;
                    out.toRead.push_back(*candidate);
                }
            }
        const bool agree =
            std::all_of(out.compared.begin(), out.compared.end(), [](const auto& each) { return each.agrees(); });
        using enum BenchSetUp::State;
        out.state = !known ? neverInPiano : !agree ? differs : unread ? notRead : reproduced;
        return out;
    }

private:
    /// What was read of a section in both, and a cell that the piano has in any case.
    std::pair<std::optional<ReferenceReading>, std::optional<Cell>> section(std::size_t number, const Section& section,
                                                                            DimensionId id) {
        ReferenceReading out;
        out.section = number;
        out.dimension = id;
        std::optional<Cell> candidate;
        double piano = 0, bench = 0;
        for (int n = section.range.first; n <= section.range.last; ++n) {
            const Cell cell{{n}, id};
            const Pass* inPiano = lastIn(m_inPiano, cell);
            if (!inPiano) continue;
            const Pass* onBench = undisturbedOnBench(cell, *inPiano);
            if (!candidate && (onBench || !disturbedSince(m_record, cell, *inPiano, nullptr))) candidate = cell;
            if (!onBench) continue;
            piano += toTrade(*inPiano->value(cell), Kind::length);
            bench += toTrade(*onBench->value(cell), Kind::length);
            out.notes.push_back(cell.note);
            m_lastPiano = std::max(m_lastPiano, inPiano->number);
        }
        if (out.notes.empty()) return {std::nullopt, candidate};
        const auto count = static_cast<double>(out.notes.size());
        out.inPiano = piano / count;
        out.onBench = bench / count;
        // U of the difference of two readings is 2 sqrt(u^2 + u^2)
        const double u = toTrade(uncertaintyOf(id, m_record.piano), Kind::length);
        out.limit = std::max(kLeastLimit, 2 * std::numbers::sqrt2 * u);
        return {out, candidate};
    }

    static const Pass* lastIn(const std::vector<Pass>& newestFirst, Cell cell) {
        for (const Pass& pass : newestFirst)
            if (pass.value(cell)) return &pass;
        return nullptr;
    }

    const Pass* undisturbedOnBench(Cell cell, const Pass& inPiano) const {
        for (const Pass& pass : m_onBench) {
            const bool sameDatum = pass.referenceOf(cell.dimension) == inPiano.referenceOf(cell.dimension);
            if (pass.value(cell) && sameDatum && !disturbedSince(m_record, cell, inPiano, &pass)) return &pass;
        }
        return nullptr;
    }

    const PianoRecord& m_record;
    std::vector<Pass> m_onBench, m_inPiano; // newest first
    int m_lastPiano = 0;
};

constexpr std::array<std::string_view, 5> kKeys = {"in-piano", "reproduced", "not-reproduced", "not-read",
                                                   "never-in-piano"};

} // namespace

std::string_view key(BenchSetUp::State state) {
    return kKeys.at(static_cast<std::size_t>(state));
}

bool ReferenceReading::agrees() const {
    constexpr double kRounding = 1e-9;
    return std::abs(onBench - inPiano) <= limit + kRounding;
}

BenchSetUp benchSetUp(const PianoRecord& record, int number) {
    const Pass* pass = record.pass(number);
    return pass && pass->onBench ? Comparing(record, number).tell() : BenchSetUp{};
}

} // namespace hammerline
