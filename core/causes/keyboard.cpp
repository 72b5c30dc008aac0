#include "core/causes/keyboard.h"

#include "core/stats/robust.h"

#include <algorithm>
#include <cmath>

namespace hammerline {
namespace {

double trade(DimensionId id, std::int64_t count) {
    return toTrade(count, row(id).kind);
}

std::optional<ProfilePoint> pointOf(const Judged& judged, const Review& review, double u) {
    const auto zone = review.zones.find(judged.cell);
    if (!judged.value || judged.word || judged.relation != Relation::equal || zone == review.zones.end()) return {};
    const DimensionId id = judged.cell.dimension;
    ProfilePoint point;
    point.note = judged.cell.note.value;
    point.value = trade(id, *judged.value);
    const double nominal = trade(id, zone->second.nominal);
    point.excess = point.value - nominal;
    if (zone->second.low) point.lowSide = nominal - trade(id, *zone->second.low);
    if (zone->second.high) point.highSide = trade(id, *zone->second.high) - nominal;
    point.outside = judged.verdict == Verdict::low || judged.verdict == Verdict::high;
    const double beyond = point.excess > 0 ? point.excess - point.highSide : -point.excess - point.lowSide;
    point.clearly = point.outside && beyond > 2 * u;
    return point;
}

/// On a vertical the patterns of the blow are patterns of its rail. Where the hammer is held off it (M < 0), the blow
/// is seen shorter by R |M| than the rail's (computation 6): that is the capstan's doing, not the rail's.
void bringToRail(Keyboard& keyboard) {
    const auto lost = keyboard.profiles.find(dimension::lostMotion);
    const auto blow = keyboard.profiles.find(dimension::blow);
    if (lost == keyboard.profiles.end() || blow == keyboard.profiles.end()) return;
    for (const ProfilePoint& held : lost->second.points) {
        if (held.value >= 0) continue;
        const auto point = std::ranges::lower_bound(blow->second.points, held.note, {}, &ProfilePoint::note);
        if (point == blow->second.points.end() || point->note != held.note) continue;
        const double hidden = -held.value * keyboard.ratioOf(held.note);
        point->value += hidden;
        point->excess += hidden;
    }
}

std::size_t notesRead(const Pass& pass, DimensionId id) {
    return static_cast<std::size_t>(std::count_if(pass.cells.begin(), pass.cells.end(), [&](const auto& each) {
        return each.first.dimension == id && !each.second.missing();
    }));
}

} // namespace

bool isReReading(const CauseInput& input, DimensionId id) {
    const std::size_t now = notesRead(*input.pass, id);
    return std::any_of(input.record->passes.begin(), input.record->passes.end(), [&](const Pass& earlier) {
        return earlier.number < input.pass->number && earlier.stackIn == input.pass->stackIn &&
               2 * notesRead(earlier, id) > 3 * now;
    });
}

double KeyboardProfile::halfZone() const {
    std::vector<double> halves;
    for (const ProfilePoint& point : points)
        halves.push_back((point.lowSide + point.highSide) / 2);
    return medianOf(std::move(halves));
}

std::vector<double> KeyboardProfile::values() const {
    std::vector<double> out;
    for (const ProfilePoint& point : points)
        out.push_back(point.value);
    return out;
}

std::vector<double> KeyboardProfile::excesses() const {
    std::vector<double> out;
    for (const ProfilePoint& point : points)
        out.push_back(point.excess);
    return out;
}

const KeyboardProfile& Keyboard::of(DimensionId id) const {
    static const KeyboardProfile nothing{};
    const auto found = profiles.find(id);
    return found == profiles.end() ? nothing : found->second;
}

double Keyboard::ratioOf(int note) const {
    return ratio[static_cast<std::size_t>(colourOf(NoteNumber{note}, piano()))];
}

const KeyArms& Keyboard::armsOf(int note) const {
    return piano().armsOf(colourOf(NoteNumber{note}, piano()));
}

std::vector<int> Keyboard::notesWith(DimensionId id, WordId wanted) const {
    std::vector<int> notes;
    if (isReReading(*input, id)) return notes;
    for (const Judged& judged : input->review->ranked)
        if (judged.cell.dimension == id && judged.word == wanted) notes.push_back(judged.cell.note.value);
    std::sort(notes.begin(), notes.end());
    return notes;
}

std::vector<Cell> Keyboard::outsideCells(std::span<const DimensionId> ids, std::span<const int> notes) const {
    std::vector<Cell> cells;
    for (const Judged& judged : input->review->ranked) {
        if (judged.verdict != Verdict::low && judged.verdict != Verdict::high) continue;
        if (std::find(ids.begin(), ids.end(), judged.cell.dimension) == ids.end()) continue;
        if (!notes.empty() && std::find(notes.begin(), notes.end(), judged.cell.note.value) == notes.end()) continue;
        cells.push_back(judged.cell);
    }
    std::sort(cells.begin(), cells.end());
    return cells;
}

Keyboard keyboardOf(const CauseInput& input) {
    Keyboard keyboard{&input, {}, {}};
    const Piano& piano = input.record->piano;
    for (const auto colour : {KeyColour::natural, KeyColour::sharp})
        keyboard.ratio[static_cast<std::size_t>(colour)] = estimateRatio(piano, input.record->passes, colour).value;
    for (const Judged& judged : input.review->ranked) {
        const DimensionId id = judged.cell.dimension;
        KeyboardProfile& profile = keyboard.profiles[id];
        profile.dimension = id;
        profile.u = trade(id, uncertaintyOf(id, piano));
        if (judged.word) ++profile.words;
        if (const auto point = pointOf(judged, *input.review, profile.u)) profile.points.push_back(*point);
    }
    for (auto& [id, profile] : keyboard.profiles)
        std::sort(profile.points.begin(), profile.points.end(),
                  [](const ProfilePoint& a, const ProfilePoint& b) { return a.note < b.note; });
    if (piano.vertical()) bringToRail(keyboard);
    std::erase_if(keyboard.profiles, [&](const auto& each) { return isReReading(input, each.first); });
    return keyboard;
}

double medianOf(std::vector<double> x) {
    return median(std::move(x)).value_or(0);
}

double spreadOf(const std::vector<double>& x) {
    return 1.4826 * medianAbsoluteDeviation(x).value_or(0);
}

std::vector<double> smoothed(const std::vector<double>& x, std::size_t window) {
    std::vector<double> out(x.size());
    const std::size_t reach = window / 2;
    for (std::size_t i = 0; i < x.size(); ++i) {
        const auto from = x.begin() + static_cast<std::ptrdiff_t>(i > reach ? i - reach : 0);
        const auto to = x.begin() + static_cast<std::ptrdiff_t>(std::min(x.size(), i + reach + 1));
        out[i] = medianOf({from, to});
    }
    return out;
}

double correlation(const std::vector<double>& x, const std::vector<double>& y) {
    if (x.size() < 3 || x.size() != y.size()) return 0;
    const auto n = static_cast<double>(x.size());
    double mx = 0, my = 0;
    for (std::size_t i = 0; i < x.size(); ++i) {
        mx += x[i] / n;
        my += y[i] / n;
    }
    double xx = 0, yy = 0, xy = 0;
    for (std::size_t i = 0; i < x.size(); ++i) {
        xx += (x[i] - mx) * (x[i] - mx);
        yy += (y[i] - my) * (y[i] - my);
        xy += (x[i] - mx) * (y[i] - my);
    }
    return xx > 0 && yy > 0 ? xy / std::sqrt(xx * yy) : 0;
}

StraightLine robustLine(const std::vector<double>& x, const std::vector<double>& y) {
    std::vector<double> slopes;
    for (std::size_t i = 0; i < x.size(); ++i)
        for (std::size_t j = i + 1; j < x.size(); ++j)
            if (x[j] != x[i]) slopes.push_back((y[j] - y[i]) / (x[j] - x[i]));
    StraightLine line{0, medianOf(std::move(slopes))};
    std::vector<double> rests;
    for (std::size_t i = 0; i < x.size(); ++i)
        rests.push_back(y[i] - line.slope * x[i]);
    line.at = medianOf(std::move(rests));
    return line;
}

std::vector<double> excessesIn(const KeyboardProfile& profile, NoteRange range) {
    std::vector<double> out;
    for (const ProfilePoint& point : profile.points)
        if (range.contains(NoteNumber{point.note})) out.push_back(point.excess);
    return out;
}

} // namespace hammerline
