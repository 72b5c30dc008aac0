// The whole pass: verdicts, evenness, doubt, the ranking and the counts (computation 3, 4, 6).
#include "core/judge/consistency.h"
#include "core/judge/judge.h"

#include <algorithm>
#include <cmath>
#include <limits>

namespace hammerline {
namespace {

/// What the ranking goes by, apart from the rows so that sorting moves little.
struct Rank {
    bool stopsNote{};
    double deviation{};
    double unevenness{}; // as a multiple of what counts as uneven
    std::size_t row{};
};

bool worse(const Rank& a, const Rank& b) {
    if (a.stopsNote != b.stopsNote) return a.stopsNote;
    if (a.deviation != b.deviation) return a.deviation > b.deviation;
    if (a.unevenness != b.unevenness) return a.unevenness > b.unevenness;
    return a.row < b.row; // rows come in the order of notes, then of the catalogue
}

Rank rankOf(const Judged& judged, const Zones& zones, std::size_t at) {
    const auto step = zones.step(judged.cell.dimension);
    const double limit = step ? static_cast<double>(*step) : 0.0;
    return {judged.word && row(*judged.word).stopsNote,
            judged.infinite ? std::numeric_limits<double>::infinity() : std::abs(judged.deviation.value_or(0)),
            limit > 0 ? std::abs(judged.unevenness) / limit : 0.0, at};
}

void count(Summary& summary, const Judged& judged) {
    switch (judged.verdict) {
    case Verdict::within:
        ++summary.within;
        break;
    case Verdict::low:
        ++summary.low;
        break;
    case Verdict::high:
        ++summary.high;
        break;
    case Verdict::undecided:
        ++summary.undecided;
        break;
    case Verdict::missing:
    case Verdict::notFitted:
        break; // counted from the compass, below
    }
    summary.uneven += judged.uneven;
    summary.stale += judged.stale;
}

/// Cells that this piano has and has not got of one dimension. Dimensions read at section or rail ends count only where
/// they were read: nothing is missing between.
void countCompass(Summary& summary, DimensionId id, const Piano& piano, const PassTable& table) {
    const bool everywhere = row(id).where == ReadWhere::everyNote;
    for (int n = 1; n <= piano.notes; ++n) {
        const Cell cell{NoteNumber{n}, id};
        const Measured* measured = table.at(cell);
        const bool has = fitted(id, cell.note, piano) && !(measured && measured->notFitted);
        const bool read = measured && !measured->missing() && has;
        summary.notFitted += !has;
        summary.fitted += has && (everywhere || read);
        summary.missing += has && everywhere && !read;
    }
}

Summary sum(const std::map<DimensionId, Summary>& parts) {
    Summary all;
    for (const auto& [id, part] : parts) {
        all.fitted += part.fitted;
        all.within += part.within;
        all.low += part.low;
        all.high += part.high;
        all.undecided += part.undecided;
        all.missing += part.missing;
        all.notFitted += part.notFitted;
        all.uneven += part.uneven;
        all.stale += part.stale;
    }
    return all;
}

/// Judges every cell of the pass that this piano has, in the order of the cells.
std::vector<Judged> judgeCells(const Piano& piano, const Pass& pass, const PassTable& table, const Zones& zones,
                               Rule rule, const Evenness& evenness) {
    std::vector<Judged> rows;
    rows.reserve(pass.cells.size());
    for (const auto& [cell, measured] : pass.cells) {
        if (measured.missing() || !piano.contains(cell.note)) continue;
        const double single = static_cast<double>(uncertaintyOf(cell.dimension, piano));
        const double u = single / std::sqrt(std::max(1, table.repeats(cell)));
        Judged each = judge(cell, measured, zones.at(cell), u, rule);
        if (!fitted(cell.dimension, cell.note, piano)) each.verdict = Verdict::notFitted;
        each.overridden = zones.overridden(cell);
        if (const Unevenness* found = evenness.at(cell)) {
            const bool length = row(cell.dimension).kind == Kind::length;
            each.unevenness = found->residual * (length ? static_cast<double>(kNmPerMm) : 1000.0);
            each.uneven = found->uneven;
            each.step = found->step;
        }
        rows.push_back(std::move(each));
    }
    return rows;
}

void rank(Review& review, std::vector<Judged>& rows, const Zones& zones) {
    std::vector<Rank> order;
    order.reserve(rows.size());
    for (std::size_t i = 0; i < rows.size(); ++i)
        order.push_back(rankOf(rows[i], zones, i));
    std::sort(order.begin(), order.end(), worse);
    std::vector<std::size_t> placed(rows.size());
    review.ranked.reserve(rows.size());
    for (std::size_t i = 0; i < order.size(); ++i) {
        placed[order[i].row] = i;
        review.ranked.push_back(std::move(rows[order[i].row]));
    }
    for (const std::size_t place : placed) // in the order of the cells, so each goes to the end of the map
        review.index.emplace_hint(review.index.end(), review.ranked[place].cell, place);
}

void markTooCoarse(Review& review, const Piano& piano) {
    std::map<DimensionId, bool> coarse;
    for (const auto& [cell, zone] : review.zones) {
        const auto width = widthOf(zone);
        const double u = static_cast<double>(uncertaintyOf(cell.dimension, piano));
        if (zone.low && zone.high && width && 2 * u >= *width) coarse[cell.dimension] = true;
    }
    for (const auto& [id, is] : coarse)
        review.tooCoarse.push_back(id);
}

Review reviewConverted(const Piano& piano, const Pass& pass, const Zones& zones, Rule rule,
                       std::span<const Cell> stale) {
    Review out;
    out.asked = askedDimensions(pass);
    const PassTable table(piano, pass);
    const Evenness evenness(piano, table, zones, out.asked);
    std::vector<Judged> rows = judgeCells(piano, pass, table, zones, rule, evenness);
    for (const Cell& cell : stale) {
        const auto found =
            std::lower_bound(rows.begin(), rows.end(), cell, [](const Judged& a, const Cell& b) { return a.cell < b; });
        if (found != rows.end() && found->cell == cell) found->stale = true;
    }
    for (const Judged& each : rows)
        count(out.byDimension[each.cell.dimension], each);
    for (const DimensionId id : out.asked)
        countCompass(out.byDimension[id], id, piano, table);
    out.summary = sum(out.byDimension);
    for (int n = 1; n <= piano.notes; ++n)
        for (const DimensionId id : out.asked) {
            const Cell cell{NoteNumber{n}, id};
            if (!fitted(id, cell.note, piano)) continue;
            if (const auto& zone = zones.at(cell)) out.zones.emplace_hint(out.zones.end(), cell, *zone);
        }
    markTooCoarse(out, piano);
    const std::array ratio = {estimateRatio(piano, table, KeyColour::natural),
                              estimateRatio(piano, table, KeyColour::sharp)};
    out.doubtful = doubtfulNotes(piano, table, evenness, ratio);
    rank(out, rows, zones);
    return out;
}

} // namespace

const Judged* Review::at(Cell cell) const {
    const auto found = index.find(cell);
    return found == index.end() ? nullptr : &ranked[found->second];
}

Review review(const Piano& piano, const Pass& pass, const Zones& zones, Rule rule, std::span<const Cell> stale) {
    // A sharp's height is read as key height and judged as sharp height, whichever of the two is said to be stale.
    std::vector<Cell> old(stale.begin(), stale.end());
    for (Cell& cell : old)
        if (cell.dimension == dimension::keyHeight && !fitted(cell.dimension, cell.note, piano))
            cell.dimension = dimension::sharpHeight;
    if (needsConversion(pass)) return reviewConverted(piano, withRelativeHeights(piano, pass), zones, rule, old);
    return reviewConverted(piano, pass, zones, rule, old);
}

} // namespace hammerline
