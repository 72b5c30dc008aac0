#include "core/reserve/settling.h"

#include <fmt/format.h>

#include <algorithm>
#include <chrono>
#include <cmath>

namespace hammerline {

namespace {

constexpr std::string_view kCustom = "common practice, no source";
// "Clamped for two days they come out 15 to 20 per cent thinner", which is what they settle by themselves in six
// months.
constexpr std::string_view kPunchings = "list post 1995-April/001290 (15 to 20 % in six months where they were not "
                                        "pressed first; the low end for light use is common practice, no source)";
constexpr std::string_view kLinks = "common practice, no source; mm by the arms of the typical links";

using namespace dimension;

// Ends of `perMm` are read off the typical links: a jack's toe lies 87 mm from the wippen's centre and its tip 53, the
// butt's lever is 16 and the crown 135 from its centre, so 1 mm at the let-off button is some 5 mm at the hammer, 1 mm
// under the heel or at the butt some 1.9 mm at the key's front.
constexpr std::array kSettling = {
    SettlingRow{"balance-felt", {1.0, 3.0}, {0.05, 0.20}, operation::balancePunching, {}, {}, kPunchings},
    SettlingRow{"front-felt", {5.0, 7.5}, {0.05, 0.20}, operation::frontPunching, {}, {}, kPunchings},
    SettlingRow{"back-rail-cloth", {5.0, 7.0}, {0.02, 0.15}, operation::backRailShim, {}, {}, kCustom},
    SettlingRow{"rest-rail-cushions", {3.0, 5.0}, {0.02, 0.15}, operation::restRailShim, {}, {}, kCustom},
    SettlingRow{"rest-rail-cloth", {3.0, 5.0}, {0.02, 0.15}, operation::railClothShim, {}, {}, kCustom},
    SettlingRow{"wippen-heel-cloth", {2.0, 4.0}, {0.02, 0.15}, {}, {lostMotion, lostMotion}, {1.6, 2.2}, kLinks},
    SettlingRow{"butt-leather", {1.5, 2.5}, {0.02, 0.10}, {}, {lostMotion, lostMotion}, {1.6, 2.2}, kLinks},
    SettlingRow{"let-off-button", {2.0, 4.0}, {0.02, 0.08}, {}, {letOff, letOff}, {-4.0, -6.0}, kLinks},
    SettlingRow{"hammer-head", {0.1, 0.5}, {1.0, 1.0}, {}, {blow, letOff}, {1.0, 1.0}, kCustom},
    SettlingRow{"back-check", {1.5, 3.0}, {0.02, 0.15}, {}, {checking, checking}, {0.5, 2.0}, kCustom},
    SettlingRow{"bridle-strap", {}, {}, {}, {strap, strap}, {}, kCustom},
    SettlingRow{"damper-felt-wedge", {}, {}, {}, {damperStart, damperStart}, {}, kCustom},
    SettlingRow{"damper-felt-clip", {}, {}, {}, {damperStart, damperStart}, {}, kCustom},
    SettlingRow{"damper-felt-flat", {}, {}, {}, {damperStart, damperStart}, {}, kCustom},
    SettlingRow{"damper-felt-split-wedge", {}, {}, {}, {damperStart, damperStart}, {}, kCustom},
};

/// A new piece came in: what was glued, eased or filed settles no more than before.
bool newPiece(const Finding& finding) {
    const Remedy* remedy = remedyOf(finding);
    return finding.state == FindingState::mended && remedy && !remedy->supply.empty();
}

std::array<double, 2> lost(const SettlingRow& row) {
    return {row.thickness[0] * row.share[0], row.thickness[1] * row.share[1]};
}

/// A grand has no lost motion at the key: what would be it is a longer blow, by the ratio.
std::vector<SettlingBand> directBands(const SettlingRow& row, const Piano& piano, double ratio) {
    std::vector<SettlingBand> out;
    const auto [few, many] = lost(row);
    for (const DimensionId id : row.direct) {
        const bool twice = !out.empty() && out.back().dimension == id;
        const bool grands = !piano.vertical() && id == lostMotion;
        if (twice || (grands && !out.empty())) continue;
        SettlingBand band{.dimension = grands ? blow : id, .keys = {}, .least = {}, .most = {}};
        const double times = grands ? ratio : 1;
        if (many > 0) {
            band.least = few * row.perMm[0] * times;
            band.most = many * row.perMm[1] * times;
        }
        out.push_back(band);
    }
    return out;
}

/// As the operation that takes as much away would do it.
std::vector<SettlingBand> likeBands(const SettlingRow& row, std::span<const Response> responses) {
    std::vector<SettlingBand> out;
    const auto [few, many] = lost(row);
    for (const Response& response : responses) {
        if (response.operation != *row.like) continue;
        for (const Effect& effect : response.effects) {
            SettlingBand band{.dimension = effect.dimension, .keys = response.keys, .least = {}, .most = {}};
            // how far the hammer falls into its check is too loosely tied to the key's way for a figure
            if (effect.dimension != checking) {
                band.least = -effect.perUnit * few;
                band.most = -effect.perUnit * many;
            }
            out.push_back(band);
        }
    }
    return out;
}

std::array<double, 2> ratiosOf(const Piano& piano) {
    return {piano.ratio[0].value_or(defaultRatio(piano, KeyColour::natural)),
            piano.ratio[1].value_or(defaultRatio(piano, KeyColour::sharp))};
}

constexpr std::int64_t kMicrosecondsADay = 86'400'000'000;

std::int64_t dayOf(std::int64_t microseconds) {
    return microseconds / kMicrosecondsADay;
}

} // namespace

std::span<const SettlingRow> settlingRows() {
    return kSettling;
}

std::string dayAfter(std::int64_t microseconds, int days, int months) {
    using namespace std::chrono;
    const sys_days start{std::chrono::days{dayOf(microseconds)}};
    year_month_day day = year_month_day{start} + std::chrono::months{months};
    if (!day.ok()) day = day.year() / day.month() / last;
    const year_month_day then{sys_days{day} + std::chrono::days{days}};
    return fmt::format("{:04}-{:02}-{:02}", static_cast<int>(then.year()), static_cast<unsigned>(then.month()),
                       static_cast<unsigned>(then.day()));
}

namespace {

using ByRowAndDay = std::map<std::pair<const SettlingRow*, std::int64_t>, Settling>;

void addRenewed(ByRowAndDay& all, const PianoRecord& record, const SettlingRow& row, NoteNumber note) {
    const Finding* finding = standingAt(row.part, note, record.findings);
    if (!finding || !newPiece(*finding)) return;
    Settling& settling = all[{&row, dayOf(finding->at)}];
    settling.row = &row;
    settling.notes.push_back(note);
    settling.renewedAt = std::max(settling.renewedAt, finding->at);
}

/// The last day on which this piano was measured; empty where it was not.
std::string lastReadOn(const PianoRecord& record) {
    std::int64_t at = 0;
    for (const Pass& pass : record.passes)
        if (pass.readingCount() > 0) at = std::max(at, pass.startedAt);
    return at > 0 ? dayAfter(at, 0, 0) : std::string{};
}

/// Settled and read since, nothing is left to say; read at the first visit, the second is next.
std::vector<Settling> forecast(ByRowAndDay all, const PianoRecord& record) {
    std::vector<Settling> out;
    if (all.empty()) return out;
    const Piano& piano = record.piano;
    const std::string read = lastReadOn(record);
    const auto ratios = ratiosOf(piano);
    const std::vector<Response> responses = firstResponses(piano, ratios);
    for (auto& [rowAndDay, settling] : all) {
        const SettlingRow& row = *settling.row;
        settling.bands = row.like ? likeBands(row, responses) : directBands(row, piano, ratios[0]);
        if (settling.renewedAt > 0) {
            settling.firstVisit = dayAfter(settling.renewedAt, kFirstVisitWeeks * 7, 0);
            settling.settledBy = dayAfter(settling.renewedAt, 0, kSettledMonths);
            if (read >= settling.settledBy) continue;
            if (read >= settling.firstVisit) settling.firstVisit = settling.settledBy;
        }
        out.push_back(std::move(settling));
    }
    return out;
}

bool anyMended(const PianoRecord& record, const SettlingRow& row) {
    return std::ranges::any_of(record.findings, [&](const Finding& finding) {
        return finding.part == row.part && finding.state == FindingState::mended;
    });
}

} // namespace

std::vector<Settling> settlingOf(const PianoRecord& record) {
    ByRowAndDay all;
    for (const SettlingRow& row : kSettling)
        if (const Part* part = findPart(row.part); part && anyMended(record, row))
            for (const NoteNumber note : notesOf(*part, record.piano))
                addRenewed(all, record, row, note);
    return forecast(std::move(all), record);
}

std::vector<Settling> settlingAt(const PianoRecord& record, NoteNumber note) {
    ByRowAndDay all;
    for (const SettlingRow& row : kSettling)
        if (const Part* part = findPart(row.part); part && fitted(*part, note, record.piano))
            addRenewed(all, record, row, note);
    return forecast(std::move(all), record);
}

std::vector<SettlingCell> settlingCells(const PianoRecord& record) {
    std::map<Cell, SettlingCell> cells;
    for (const Settling& settling : settlingOf(record))
        for (const NoteNumber note : settling.notes)
            for (const SettlingBand& band : settling.bands) {
                const Cell cell{note, band.dimension};
                const bool otherKeys = band.keys && *band.keys != colourOf(note, record.piano);
                if (otherKeys || !fitted(band.dimension, note, record.piano)) continue;
                SettlingCell& here = cells.try_emplace(cell, SettlingCell{cell, {}, {}}).first->second;
                if (!band.least) continue;
                // each end by its sign: bands of opposite signs widen each other
                const auto [low, high] = std::minmax(*band.least, *band.most);
                here.low = here.low.value_or(0) + low;
                here.high = here.high.value_or(0) + high;
            }
    std::vector<SettlingCell> out;
    for (const auto& [cell, each] : cells)
        out.push_back(each);
    return out;
}

SettlingVisits settlingVisits(std::span<const Settling> settlings) {
    SettlingVisits out;
    for (const Settling& each : settlings) {
        if (each.firstVisit.empty()) continue;
        if (out.first.empty() || each.firstVisit < out.first) out.first = each.firstVisit;
        out.last = std::max(out.last, each.settledBy);
    }
    return out;
}

} // namespace hammerline
