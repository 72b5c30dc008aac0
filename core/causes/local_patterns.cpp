// Patterns of one stretch, one note, or of several passes (computation 14).
#include "core/causes/rule.h"

#include <algorithm>
#include <cmath>
#include <initializer_list>
#include <set>

namespace hammerline {
namespace {

constexpr std::size_t kEdge = 5;      // readings on each side of an edge
constexpr std::size_t kLeastRun = 5;  // readings of a stretch
constexpr double kLargestShare = 0.6; // of the keyboard: beyond it it is no stretch
constexpr double kOffShare = 0.5;     // "on all"
constexpr double kDipOffShare = 0.3;
constexpr double kIsolatedShare = 0.05;  // more notes than that are no single parts
constexpr double kFingerClearance = 0.3; // mm (bench-practice 6, S6)
constexpr double kRepeatRange = 5;       // standard uncertainties between repeats of a blow

using Excess = std::vector<double>;

double medianOfSpan(const Excess& x, std::size_t from, std::size_t to) {
    const auto begin = x.begin();
    return medianOf({begin + static_cast<std::ptrdiff_t>(from), begin + static_cast<std::ptrdiff_t>(to)});
}

/// Steps by more than `least` against what lies beyond, at every edge that has something beyond it; the same way.
bool stepsAtEdges(const Excess& x, std::size_t from, std::size_t to, double least) {
    const std::size_t inside = std::min(kEdge, to - from);
    std::vector<double> steps;
    if (from >= 3)
        steps.push_back(medianOfSpan(x, from, from + inside) - medianOfSpan(x, from - std::min(kEdge, from), from));
    if (x.size() - to >= 3)
        steps.push_back(medianOfSpan(x, to - inside, to) - medianOfSpan(x, to, std::min(x.size(), to + kEdge)));
    if (steps.empty()) return false;
    return std::all_of(steps.begin(), steps.end(),
                       [&](double step) { return std::abs(step) > least && step * steps.front() > 0; });
}

Match stretch(const KeyboardProfile& profile, std::size_t from, std::size_t to) {
    Match match;
    for (std::size_t i = from; i < to; ++i)
        match.notes.push_back(profile.points[i].note);
    match.amount = medianOfSpan(profile.excesses(), from, to);
    match.only = {profile.dimension};
    return match;
}

/// The first and one-beyond-last point of a range of notes.
std::pair<std::size_t, std::size_t> pointsIn(const KeyboardProfile& profile, NoteRange range) {
    const auto before = [](const ProfilePoint& point, int note) { return point.note < note; };
    const auto from = std::lower_bound(profile.points.begin(), profile.points.end(), range.first, before);
    const auto to = std::lower_bound(profile.points.begin(), profile.points.end(), range.last + 1, before);
    return {static_cast<std::size_t>(from - profile.points.begin()),
            static_cast<std::size_t>(to - profile.points.begin())};
}

bool dipChanged(const Keyboard& keyboard) {
    for (const Done& done : keyboard.input->record->done) {
        const bool setsDip = done.operation == operation::frontPunching ||
                             done.operation == operation::balancePunching ||
                             done.operation == operation::balanceRailShim;
        if (setsDip && done.pass<keyboard.input->pass->number&& static_cast<double>(done.notes.size())> kDipOffShare *
                           keyboard.piano().notes)
            return true;
    }
    const KeyboardProfile& dip = keyboard.of(dimension::keyDip);
    const auto off =
        std::count_if(dip.points.begin(), dip.points.end(), [](const auto& point) { return point.outside; });
    return static_cast<double>(off) > kDipOffShare * static_cast<double>(dip.size()) && dip.size() >= 8;
}

/// -1 off the rail, +1 lost motion beyond its zone, 0 neither or not read.
int sideOfLostMotion(const Pass& pass, const Review& review, int note, double u) {
    const Cell cell{NoteNumber{note}, dimension::lostMotion};
    const Measured* measured = pass.at(cell);
    if (!measured) return 0;
    if (measured->word() == word::offRail) return -1;
    const auto value = measured->value();
    const auto zone = review.zones.find(cell);
    if (!value || zone == review.zones.end() || !zone->second.high) return 0;
    if (toTrade(*value, Kind::length) < -u) return -1;
    return *value > *zone->second.high ? 1 : 0;
}

bool allOthersRight(const Review& review, Cell wrong) {
    int read = 0;
    for (const Judged& judged : review.ranked) {
        if (judged.cell.note != wrong.note || judged.cell.dimension == wrong.dimension) continue;
        if (judged.verdict == Verdict::low || judged.verdict == Verdict::high) return false;
        ++read;
    }
    return read >= 3;
}

/// What a word says of nearly every note of a section, and of hardly one elsewhere, is one thing, not as many.
std::vector<Match> sectionsWithWord(const Keyboard& keyboard, DimensionId id, std::initializer_list<WordId> words) {
    constexpr double kNearlyAll = 0.8, kHardlyOne = 0.1;
    std::set<int> said, read;
    for (const WordId word : words)
        for (const int note : keyboard.notesWith(id, word))
            said.insert(note);
    for (const Judged& judged : keyboard.input->review->ranked)
        if (judged.cell.dimension == id) read.insert(judged.cell.note.value);
    std::vector<Match> matches;
    const auto within = [](const std::set<int>& notes, NoteRange range) {
        return static_cast<std::size_t>(std::ranges::count_if(notes, [&](int n) { return range.contains({n}); }));
    };
    for (const Section& section : sectionsOf(keyboard.piano())) {
        const std::size_t here = within(said, section.range), readHere = within(read, section.range);
        const std::size_t elsewhere = said.size() - here, readElsewhere = read.size() - readHere;
        const bool nearlyAll =
            here >= kLeastRun && static_cast<double>(here) >= kNearlyAll * static_cast<double>(readHere);
        const bool alone = static_cast<double>(elsewhere) <= kHardlyOne * static_cast<double>(readElsewhere);
        if (!nearlyAll || !alone) continue;
        Match match;
        match.only = {id};
        std::ranges::copy_if(said, std::back_inserter(match.notes), [&](int n) { return section.range.contains({n}); });
        matches.push_back(std::move(match));
    }
    return matches;
}

} // namespace

std::vector<Match> looseLetOffRail(const Keyboard& keyboard) {
    const KeyboardProfile& letOff = keyboard.of(dimension::letOff);
    auto said = sectionsWithWord(keyboard, dimension::letOff, {word::noLetOff, word::blocks});
    if (!said.empty() || letOff.size() < 3 * kLeastRun) return said;
    const Excess excess = letOff.excesses();
    const Excess line = smoothed(excess, kEdge);
    const double centre = medianOf(excess), step = letOff.halfZone();
    std::vector<Match> matches;
    for (std::size_t from = 0; from < line.size();) {
        const double sign = line[from] > centre ? 1 : -1;
        std::size_t to = from;
        while (to < line.size() && sign * (line[to] - centre) > step * 0.6)
            ++to;
        const std::size_t run = to - from;
        if (run >= kLeastRun && static_cast<double>(run) <= kLargestShare * static_cast<double>(line.size()) &&
            stepsAtEdges(excess, from, to, step) &&
            spreadOf({excess.begin() + static_cast<std::ptrdiff_t>(from),
                      excess.begin() + static_cast<std::ptrdiff_t>(to)}) < step)
            matches.push_back(stretch(letOff, from, to));
        from = std::max(to, from + 1);
    }
    return matches;
}

std::vector<Match> sectionBlock(const Keyboard& keyboard) {
    const std::vector<Section> sections = sectionsOf(keyboard.piano());
    if (sections.size() < 2) return {};
    std::vector<Match> matches = sectionsWithWord(keyboard, dimension::checking, {word::doesNotCheck});
    for (const DimensionId id : {dimension::blow, dimension::checking, dimension::lostMotion, dimension::damperStart}) {
        const KeyboardProfile& profile = keyboard.of(id);
        if (profile.size() < 3 * kLeastRun) continue;
        const Excess excess = profile.excesses();
        for (const Section& section : sections) {
            const auto [from, to] = pointsIn(profile, section.range);
            if (to - from < kLeastRun ||
                static_cast<double>(to - from) > kLargestShare * static_cast<double>(profile.size()))
                continue;
            // the section that is out, not the sound one beside it
            const auto out = std::count_if(profile.points.begin() + static_cast<std::ptrdiff_t>(from),
                                           profile.points.begin() + static_cast<std::ptrdiff_t>(to),
                                           [](const auto& point) { return point.outside; });
            if (static_cast<std::size_t>(2 * out) < to - from) continue;
            if (stepsAtEdges(excess, from, to, profile.halfZone())) matches.push_back(stretch(profile, from, to));
        }
    }
    return matches;
}

std::vector<Match> checksAfterDip(const Keyboard& keyboard) {
    const KeyboardProfile& checks = keyboard.of(dimension::checking);
    if (checks.size() < 8 || !dipChanged(keyboard)) return {};
    const double direction = medianOf(checks.excesses());
    Match match;
    for (const ProfilePoint& point : checks.points)
        if (point.outside && point.excess * direction > 0) match.notes.push_back(point.note);
    if (static_cast<double>(match.notes.size()) <= kOffShare * static_cast<double>(checks.size())) return {};
    return {match};
}

std::vector<Match> isolatedPart(const Keyboard& keyboard) {
    std::vector<Match> matches;
    for (const DimensionId id : {dimension::checking, dimension::damperStart}) {
        const KeyboardProfile& profile = keyboard.of(id);
        Match match;
        match.only = {id};
        for (const ProfilePoint& point : profile.points)
            if (point.clearly && allOthersRight(*keyboard.input->review, {NoteNumber{point.note}, id}))
                match.notes.push_back(point.note);
        if (id == dimension::checking)
            for (const int note : keyboard.notesWith(id, word::doesNotCheck))
                if (allOthersRight(*keyboard.input->review, {NoteNumber{note}, id})) match.notes.push_back(note);
        std::sort(match.notes.begin(), match.notes.end());
        const double read = static_cast<double>(profile.size()) + profile.words;
        const bool few = static_cast<double>(match.notes.size()) <= std::max(1.0, kIsolatedShare * read);
        if (!match.notes.empty() && few) matches.push_back(match);
    }
    return matches;
}

std::vector<Match> looseCapstan(const Keyboard& keyboard) {
    const PianoRecord& record = *keyboard.input->record;
    if (!keyboard.piano().vertical()) return {};
    std::vector<const Pass*> passes;
    for (const Pass& pass : record.passes)
        if (pass.number < keyboard.input->pass->number) passes.push_back(&pass);
    passes.push_back(keyboard.input->pass);
    if (passes.size() < 3) return {};
    const double u = toTrade(uncertaintyOf(dimension::lostMotion, keyboard.piano()), Kind::length);
    Match match;
    for (int note = 1; note <= keyboard.piano().notes; ++note) {
        std::array<int, 3> side{};
        for (std::size_t i = 0; i < 3; ++i)
            side[i] = sideOfLostMotion(*passes[passes.size() - 3 + i], *keyboard.input->review, note, u);
        if (side[0] * side[1] == -1 && side[1] * side[2] == -1) match.notes.push_back(note);
    }
    if (match.notes.empty()) return {};
    return {match};
}

std::vector<Match> unstableRest(const Keyboard& keyboard) {
    Match match;
    const double u = toTrade(uncertaintyOf(dimension::blow, keyboard.piano()), Kind::length);
    for (const auto& [cell, measured] : keyboard.input->pass->cells) {
        if (cell.dimension != dimension::blow) continue;
        std::optional<std::int64_t> least, most;
        for (const Reading& reading : measured.trials) {
            if (reading.word || reading.relation != Relation::equal) continue;
            least = std::min(reading.count, least.value_or(reading.count));
            most = std::max(reading.count, most.value_or(reading.count));
        }
        if (least && toTrade(*most - *least, Kind::length) > kRepeatRange * u) match.notes.push_back(cell.note.value);
    }
    if (match.notes.empty()) return {};
    return {match};
}

std::vector<Match> fingerHoldsWippen(const Keyboard& keyboard) {
    if (!keyboard.piano().hasPlayer() || !keyboard.input->pass->stackIn) return {};
    const double least = keyboard.of(dimension::lostMotion).u / 2;
    const auto hanging = [&](int note) {
        const Measured* clearance = keyboard.input->pass->at({NoteNumber{note}, dimension::playerClearance});
        if (!clearance || clearance->missing() || clearance->word()) return false;
        const Reading& reading = *clearance->latest();
        const double value = toTrade(clearance->value().value_or(reading.count), Kind::length);
        return value <= kFingerClearance && reading.relation != Relation::more;
    };
    Match match;
    for (const ProfilePoint& point : keyboard.of(dimension::lostMotion).points)
        if (point.value <= least && hanging(point.note)) match.notes.push_back(point.note);
    for (const int note : keyboard.notesWith(dimension::lostMotion, word::offRail))
        if (hanging(note)) match.notes.push_back(note);
    std::sort(match.notes.begin(), match.notes.end());
    if (match.notes.empty()) return {};
    return {match};
}

std::vector<Match> nothingMeasurable(const Keyboard& keyboard) {
    const auto& symptoms = keyboard.input->record->symptoms;
    const Summary& summary = keyboard.input->review->summary;
    if (symptoms.empty() || keyboard.input->review->ranked.empty() || summary.outside() > 0) return {};
    Match match;
    for (const Symptom& symptom : symptoms)
        for (int note = symptom.notes.first; note <= symptom.notes.last; ++note)
            match.notes.push_back(note);
    std::sort(match.notes.begin(), match.notes.end());
    match.notes.erase(std::unique(match.notes.begin(), match.notes.end()), match.notes.end());
    return {match};
}

} // namespace hammerline
