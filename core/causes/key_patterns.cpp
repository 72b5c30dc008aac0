// Patterns of the keys: rail, felts, cloths, capstans, wood (computation 14).
#include "core/causes/rule.h"

#include <algorithm>
#include <cmath>

namespace hammerline {
namespace {

constexpr std::size_t kSmoothing = 7;      // readings at least, and the most that one median takes
constexpr int kSmoothingReach = 6;         // notes to each side: three naturals
constexpr double kHumpDepth = 0.5;         // mm below the line's own top
constexpr double kLowNote = 0.3;           // mm: a note that counts as low
constexpr double kLowShare = 0.35;         // of the naturals
constexpr double kDipCorrelation = 0.4;    // height against dip
constexpr double kWorthShimming = 0.05;    // mm at the rail
constexpr double kCommonLostMotion = 1.2;  // mm
constexpr double kCapstanLostMotion = 3.0; // mm: beyond it the frame, not 88 capstans
constexpr double kLostMotionSpread = 0.35; // of the median
constexpr double kOffRailShare = 0.25;

/// The natural keys' line: its smooth shape, and how far each lies below the line's top.
struct Hump {
    std::vector<int> notes;
    std::vector<double> deficit;
    double deepest = 0;

    double at(double note) const {
        const auto above = std::lower_bound(notes.begin(), notes.end(), note);
        if (above == notes.begin()) return deficit.front();
        if (above == notes.end()) return deficit.back();
        const auto i = static_cast<std::size_t>(above - notes.begin());
        const double share = (note - notes[i - 1]) / (notes[i] - notes[i - 1]);
        return deficit[i - 1] + share * (deficit[i] - deficit[i - 1]);
    }
};

/// Running median along the keyboard: of as many readings on each side, three at most, as lie within reach; of one on
/// each side where a sample pass has none so near (a wider one would flatten the hump that it looks for). At the ends
/// Tukey's rule: the median of the end itself, its smoothed neighbour, and the line through the next two.
std::vector<double> smoothedLine(const KeyboardProfile& profile) {
    const std::vector<double> x = profile.values();
    const std::size_t last = x.size() - 1;
    const auto near = [&](std::size_t i, std::size_t j) {
        return std::abs(profile.points[i].note - profile.points[j].note) <= kSmoothingReach;
    };
    std::vector<double> line(x);
    for (std::size_t i = 1; i < last; ++i) {
        std::size_t reach = 1;
        while (reach < kSmoothing / 2 && i > reach && i + reach < last && near(i, i - reach - 1) &&
               near(i, i + reach + 1))
            ++reach;
        line[i] = medianOf({x.begin() + static_cast<std::ptrdiff_t>(i - reach),
                            x.begin() + static_cast<std::ptrdiff_t>(i + reach + 1)});
    }
    line[0] = medianOf({x[0], line[1], 3 * line[1] - 2 * line[2]});
    line[last] = medianOf({x[last], line[last - 1], 3 * line[last - 1] - 2 * line[last - 2]});
    return line;
}

std::optional<Hump> humpOf(const Keyboard& keyboard) {
    const KeyboardProfile& heights = keyboard.of(dimension::keyHeight);
    const KeyboardProfile& dips = keyboard.of(dimension::keyDip);
    if (heights.size() < kSmoothing) return {};
    const std::vector<double> line = smoothedLine(heights);
    const double top = *std::max_element(line.begin(), line.end());
    Hump hump;
    std::size_t low = 0;
    for (std::size_t i = 0; i < line.size(); ++i) {
        hump.notes.push_back(heights.points[i].note);
        hump.deficit.push_back(top - line[i]);
        if (top - line[i] > kLowNote) ++low;
    }
    hump.deepest = *std::max_element(hump.deficit.begin(), hump.deficit.end());
    if (hump.deepest < kHumpDepth) return {};
    if (static_cast<double>(low) < kLowShare * static_cast<double>(line.size())) return {};

    std::vector<double> height, dip;
    for (const ProfilePoint& each : dips.points) {
        const auto found = std::lower_bound(hump.notes.begin(), hump.notes.end(), each.note);
        if (found == hump.notes.end() || *found != each.note) continue;
        height.push_back(-hump.deficit[static_cast<std::size_t>(found - hump.notes.begin())]);
        dip.push_back(each.value);
    }
    if (correlation(height, dip) < kDipCorrelation) return {};
    return hump;
}

/// mm of lost motion that went with a mm of height, from the lowest against the highest third: about -0.07 when the
/// balance rail sank, about +1 when the back of the keys stands higher (section 5).
std::optional<double> lostMotionPerHeight(const Keyboard& keyboard, const Hump& hump) {
    const KeyboardProfile& lost = keyboard.of(dimension::lostMotion);
    std::vector<std::pair<double, double>> pairs; // deficit, lost motion
    for (const ProfilePoint& each : lost.points)
        pairs.emplace_back(hump.at(each.note), each.value);
    for (const int note : keyboard.notesWith(dimension::lostMotion, word::offRail))
        pairs.emplace_back(hump.at(note), -hump.at(note));
    if (pairs.size() < 6) return {};
    std::sort(pairs.begin(), pairs.end());
    const std::size_t third = pairs.size() / 3;
    const auto median = [](auto from, auto to, auto member) {
        std::vector<double> out;
        for (; from != to; ++from)
            out.push_back((*from).*member);
        return medianOf(std::move(out));
    };
    using Pair = std::pair<double, double>;
    const auto head = pairs.begin(), tail = pairs.end();
    const auto step = static_cast<std::ptrdiff_t>(third);
    const double deeper = median(tail - step, tail, &Pair::first) - median(head, head + step, &Pair::first);
    if (deeper < kLowNote) return {};
    return (median(head, head + step, &Pair::second) - median(tail - step, tail, &Pair::second)) / deeper;
}

/// Where shims go: the rail's screws, or eight places along the keyboard where they are not known.
std::vector<int> shimPlaces(const Piano& piano) {
    if (!piano.balanceScrews.empty()) return piano.balanceScrews;
    std::vector<int> places;
    for (int i = 0; i < 8; ++i)
        places.push_back(1 + static_cast<int>(std::lround(i * (piano.notes - 1) / 7.0)));
    return places;
}

std::vector<int> allNotesOf(const KeyboardProfile& profile) {
    std::vector<int> notes;
    for (const ProfilePoint& point : profile.points)
        notes.push_back(point.note);
    return notes;
}

Match shimMatch(const Keyboard& keyboard, const Hump& hump, double perMillimetre) {
    Match match;
    for (const int place : shimPlaces(keyboard.piano()))
        if (const double shim = hump.at(place) * perMillimetre; std::abs(shim) >= kWorthShimming)
            match.amounts[place] = shim;
    match.amount = hump.deepest * perMillimetre;
    for (int note = 1; note <= keyboard.piano().notes; ++note)
        if (hump.at(note) > kLowNote) match.notes.push_back(note);
    return match;
}

/// mm by which the capstan of a note rises to bring its lost motion to the nominal (section 5).
double capstanRise(const Keyboard& keyboard, const ProfilePoint& point) {
    const KeyArms& arms = keyboard.armsOf(point.note);
    return point.excess * arms.C() / arms.F();
}

Match capstanMatch(const Keyboard& keyboard, const std::vector<int>& notes) {
    Match match;
    match.notes = notes;
    std::vector<double> rises;
    for (const ProfilePoint& point : keyboard.of(dimension::lostMotion).points)
        if (std::binary_search(notes.begin(), notes.end(), point.note)) {
            match.amounts[point.note] = capstanRise(keyboard, point);
            rises.push_back(match.amounts[point.note]);
        }
    if (!rises.empty()) match.amount = medianOf(rises);
    return match;
}

std::optional<double> commonLostMotion(const Keyboard& keyboard) {
    const KeyboardProfile& lost = keyboard.of(dimension::lostMotion);
    if (lost.size() < 8) return {};
    const double median = medianOf(lost.values());
    if (median <= kCommonLostMotion || spreadOf(lost.values()) >= kLostMotionSpread * median) return {};
    const KeyboardProfile& blow = keyboard.of(dimension::blow);
    if (!blow.empty() && std::abs(medianOf(blow.excesses())) > blow.halfZone()) return {};
    return median;
}

/// Thread left in the wood after the capstans have come up by `rise`, where anything is known of it.
bool reserveRunsOut(const Keyboard& keyboard, double rise) {
    const double least = keyboard.piano().action == ActionKind::drop ? 6.0 : 8.0; // bench-practice 2.1
    std::vector<double> reserves = keyboard.of(dimension::capstanReserve).values();
    if (keyboard.piano().capstanReserve) reserves.push_back(keyboard.piano().capstanReserve->mm());
    return !reserves.empty() && *std::min_element(reserves.begin(), reserves.end()) - rise < least;
}

bool capstansCannotTurn(const Keyboard& keyboard) {
    return keyboard.piano().capstan == Capstan::fixed;
}

bool needsFrameShims(const Keyboard& keyboard, double lostMotion) {
    const KeyArms& arms = keyboard.piano().armsOf(KeyColour::natural);
    return lostMotion > kCapstanLostMotion || capstansCannotTurn(keyboard) ||
           reserveRunsOut(keyboard, lostMotion * arms.C() / arms.F());
}

} // namespace

std::vector<Match> sunkBalanceRail(const Keyboard& keyboard) {
    const auto hump = humpOf(keyboard);
    if (!hump) return {};
    const auto lost = lostMotionPerHeight(keyboard, *hump);
    if (lost && *lost > 0.4) return {}; // lost motion went with the height: the back of the keys
    Match match = shimMatch(keyboard, *hump, 1 / keyboard.piano().armsOf(KeyColour::natural).lever());
    match.certainty = lost ? 0.8 : 0.6;
    return {match};
}

std::vector<Match> thickBackCloth(const Keyboard& keyboard) {
    const auto hump = humpOf(keyboard);
    if (!hump) return {};
    const auto lost = lostMotionPerHeight(keyboard, *hump);
    if (!lost || *lost <= 0.4) return {};
    const KeyArms& arms = keyboard.piano().armsOf(KeyColour::natural);
    return {shimMatch(keyboard, *hump, -arms.T() / arms.F())};
}

std::vector<Match> crushedBalanceFelts(const Keyboard& keyboard) {
    const PianoRecord& record = *keyboard.input->record;
    const Pass* before = nullptr;
    for (const Pass& pass : record.passes)
        if (pass.number == keyboard.input->pass->number - 1) before = &pass;
    const KeyboardProfile& now = keyboard.of(dimension::keyHeight);
    if (!before || now.size() < 8) return {};
    const bool reshimmed = std::any_of(record.done.begin(), record.done.end(), [&](const Done& done) {
        return done.pass == before->number &&
               (done.operation == operation::balancePunching || done.operation == operation::balanceRailShim);
    });
    if (reshimmed) return {};
    const Pass even = withRelativeHeights(record.piano, *before);
    std::vector<double> earlier;
    for (const ProfilePoint& point : now.points)
        if (const auto value = even.value({NoteNumber{point.note}, dimension::keyHeight}))
            earlier.push_back(toTrade(*value, Kind::length));
    if (earlier.size() < 8) return {};
    // level without the felts, rough with them (situations 8): from within 0.1 to a scatter beyond 0.5
    const auto [least, most] = std::minmax_element(earlier.begin(), earlier.end());
    const std::vector<double> heights = now.values();
    const auto [lowest, highest] = std::minmax_element(heights.begin(), heights.end());
    if (spreadOf(earlier) > 0.1 || *most - *least > 0.5 || *highest - *lowest <= 0.5 || spreadOf(heights) <= 0.2)
        return {};
    Match match;
    match.notes = allNotesOf(now);
    return {match};
}

std::vector<Match> packedCloths(const Keyboard& keyboard) {
    const auto median = commonLostMotion(keyboard);
    if (!median || !keyboard.piano().vertical() || needsFrameShims(keyboard, *median)) return {};
    return {capstanMatch(keyboard, allNotesOf(keyboard.of(dimension::lostMotion)))};
}

std::vector<Match> lowKeyBacks(const Keyboard& keyboard) {
    const auto median = commonLostMotion(keyboard);
    if (!median || !keyboard.piano().vertical() || !needsFrameShims(keyboard, *median)) return {};
    const double excess = medianOf(keyboard.of(dimension::lostMotion).excesses());
    Match match;
    match.notes = allNotesOf(keyboard.of(dimension::lostMotion));
    const auto [back, balance] = frameShims(keyboard.piano().armsOf(KeyColour::natural), excess);
    match.amount = back;
    match.beside = balance;
    return {match};
}

std::vector<Match> movedWood(const Keyboard& keyboard) {
    const KeyboardProfile& lost = keyboard.of(dimension::lostMotion);
    std::vector<int> off = keyboard.notesWith(dimension::lostMotion, word::offRail);
    const std::size_t read = lost.size() + static_cast<std::size_t>(lost.words);
    for (const ProfilePoint& point : lost.points)
        if (point.value < -lost.u) off.push_back(point.note);
    std::sort(off.begin(), off.end());
    if (read < 8 || static_cast<double>(off.size()) <= kOffRailShare * static_cast<double>(read)) return {};
    Match match = capstanMatch(keyboard, off);
    const auto& climate = keyboard.input->pass->climate;
    const auto humidity = climate ? std::optional(climate->humidity) : keyboard.input->pass->humidity;
    match.certainty = humidity && *humidity >= 60 ? 0.85 : 0.6;
    return {match};
}

} // namespace hammerline
