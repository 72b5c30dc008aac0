// Even, good for this piano, or not yet, and what is missing (computation 11).
#include "core/comparison/comparison.h"
#include "core/stats/conformity.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <numbers>

namespace hammerline {
namespace {

constexpr double kSurelyWithin = 0.02; // probability of lying outside that an unread note may leave
constexpr int kShareOutside = 20;      // one in twenty
constexpr std::array kDoubleStrikes = {std::string_view{"double-strike"}, std::string_view{"double-strike-one-note"}};

/// What is known of one dimension at the notes that have it.
struct ReadSoFar {
    int within = 0, outside = 0, undecided = 0, unread = 0;
    int known() const { return within + outside + undecided; }
};

bool heldBy(const std::vector<DimensionId>& list, DimensionId id) {
    return std::find(list.begin(), list.end(), id) != list.end();
}

/// State of the notes that this pass did not read; reckoned only when one is asked for.
class Expected {
public:
    Expected(const PianoRecord& record, int pass) : m_record(record), m_pass(pass) {}
    bool surelyWithin(Cell cell, const Zone& zone) {
        if (!m_state) m_state = reckon();
        const auto found = m_state->find(cell);
        if (found == m_state->end()) return false;
        const Kind kind = row(cell.dimension).kind;
        ToleranceLimits limits;
        if (zone.low) limits.low = toTrade(*zone.low, kind);
        if (zone.high) limits.high = toTrade(*zone.high, kind);
        return probabilityOfConformity(found->second.value, found->second.sd, limits) >= 1 - kSurelyWithin;
    }

private:
    State reckon() const {
        const Pass* pass = m_record.pass(m_pass);
        if (!pass || m_pass < 2) return {}; // nothing before the first pass to expect from
        const std::array ratio = {estimateRatio(m_record.piano, m_record.passes, KeyColour::natural).value,
                                  estimateRatio(m_record.piano, m_record.passes, KeyColour::sharp).value};
        return stateOf(m_record, m_pass, learnedResponses(m_record, ratio), ratio);
    }
    const PianoRecord& m_record;
    int m_pass;
    std::optional<State> m_state;
};

ReadSoFar knownOf(DimensionId id, const PianoRecord& record, const Review& review, Expected& expected) {
    ReadSoFar out;
    const bool coarse = heldBy(review.tooCoarse, id);
    const bool everywhere = row(id).where == ReadWhere::everyNote;
    for (int n = 1; n <= record.piano.notes; ++n) {
        const Cell cell{NoteNumber{n}, id};
        if (!fitted(id, cell.note, record.piano)) continue;
        if (const Judged* judged = review.at(cell)) {
            const bool undecided = judged->verdict == Verdict::undecided;
            out.outside += judged->verdict == Verdict::low || judged->verdict == Verdict::high;
            out.undecided += undecided && !coarse;
            out.within += judged->verdict == Verdict::within || (undecided && coarse);
            continue;
        }
        const auto zone = review.zones.find(cell);
        if (zone == review.zones.end() || !everywhere) continue; // nothing asked, or read at section ends only
        if (expected.surelyWithin(cell, zone->second))
            ++out.within;
        else
            ++out.unread;
    }
    return out;
}

/// Whether any cell that nothing has disturbed reads differently from the pass before by more than two readings of one
/// length may: sqrt(2) U, U = 2 u.
bool changedSince(const PianoRecord& record, const Review& review, int number) {
    const Pass* before = record.pass(number - 1);
    if (!before) return false;
    const std::vector<Cell> disturbed = staleCells(record, *before);
    const Pass relative = withRelativeHeights(record.piano, *before);
    for (const Judged& judged : review.ranked) {
        if (!judged.value || judged.relation != Relation::equal || judged.word) continue;
        const auto old = relative.value(judged.cell);
        if (!old || std::find(disturbed.begin(), disturbed.end(), judged.cell) != disturbed.end()) continue;
        const double u = static_cast<double>(uncertaintyOf(judged.cell.dimension, record.piano));
        if (std::abs(static_cast<double>(*judged.value - *old)) > std::numbers::sqrt2 * 2 * u) return true;
    }
    return false;
}

using Missing = std::vector<std::string_view>;

Missing missingForEven(const PianoRecord& record, const Review& review, const std::map<DimensionId, ReadSoFar>& known,
                       int pass) {
    ReadSoFar all;
    for (const auto& [id, each] : known) {
        all.outside += each.outside;
        all.undecided += each.undecided;
        all.unread += each.unread;
    }
    Missing out;
    if (all.outside > 0) out.emplace_back("notes-outside");
    if (all.undecided > 0) out.emplace_back("notes-undecided");
    const auto uneven = [](const Judged& j) { return j.uneven; };
    if (std::any_of(review.ranked.begin(), review.ranked.end(), uneven)) out.emplace_back("notes-uneven");
    if (all.unread > 0) out.emplace_back("notes-not-read");
    if (changedSince(record, review, pass)) out.emplace_back("changed-since-last-pass");
    return out;
}

Missing missingForGood(const PianoRecord& record, const Review& review, const std::map<DimensionId, ReadSoFar>& known,
                       int pass) {
    Missing out;
    if (review.ranked.empty()) out.emplace_back("nothing-read");
    const auto stops = [](const Judged& j) { return j.word && row(*j.word).stopsNote; };
    if (std::any_of(review.ranked.begin(), review.ranked.end(), stops)) out.emplace_back("note-stopped");
    const auto tooMany = [](const auto& each) { return each.second.outside * kShareOutside > each.second.known(); };
    if (std::any_of(known.begin(), known.end(), tooMany)) out.emplace_back("too-many-outside");
    const auto step = [](const Judged& j) { return j.step; };
    if (std::any_of(review.ranked.begin(), review.ranked.end(), step)) out.emplace_back("steps-between-neighbours");
    const auto letOff = known.find(dimension::letOff);
    if (letOff == known.end() || letOff->second.unread > 0) out.emplace_back("let-off-not-known");
    if (doubleStrikeReported(record, pass)) out.emplace_back("double-strike-reported");
    return out;
}

} // namespace

bool doubleStrikeReported(const PianoRecord& record, int number) {
    const Pass* pass = record.pass(number);
    return pass && std::any_of(record.symptoms.begin(), record.symptoms.end(), [&](const Symptom& each) {
               const bool strikes =
                   std::find(kDoubleStrikes.begin(), kDoubleStrikes.end(), each.key) != kDoubleStrikes.end();
               return strikes && each.order > pass->order;
           });
}

std::string_view key(Grade grade) {
    switch (grade) {
    case Grade::even:
        return "even";
    case Grade::goodForThisPiano:
        return "good-for-this-piano";
    case Grade::notYet:
        return "not-yet";
    }
    return {};
}

std::pair<Grade, std::vector<std::string_view>> gradeOf(const PianoRecord& record, const Review& review, int pass) {
    Expected expected(record, pass);
    std::map<DimensionId, ReadSoFar> known;
    for (const DimensionId id : review.asked)
        known[id] = knownOf(id, record, review, expected);
    Missing good = missingForGood(record, review, known, pass);
    if (!good.empty()) return {Grade::notYet, std::move(good)};
    Missing even = missingForEven(record, review, known, pass);
    if (!even.empty()) return {Grade::goodForThisPiano, std::move(even)};
    return {Grade::even, {}};
}

} // namespace hammerline
