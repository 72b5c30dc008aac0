#include "core/judge/evenness.h"

#include "core/stats/robust.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <numbers>

namespace hammerline {
namespace {

constexpr std::size_t kEachSide = 3;
constexpr std::size_t kFewestNeighbours = 3;

/// Median of the nearest three on each side of place i, without i. None: fewer than three in all.
template <class Points>
std::optional<double> neighbourhood(const Points& points, std::size_t i) {
    std::array<double, 2 * kEachSide> near{};
    std::size_t n = 0;
    for (std::size_t j = i > kEachSide ? i - kEachSide : 0; j < std::min(points.size(), i + kEachSide + 1); ++j)
        if (j != i) near[n++] = points[j].value;
    if (n < kFewestNeighbours) return std::nullopt;
    std::sort(near.begin(), near.begin() + static_cast<std::ptrdiff_t>(n));
    return n % 2 == 1 ? near[n / 2] : (near[n / 2 - 1] + near[n / 2]) / 2;
}

bool coloursApart(DimensionId id) {
    return id == dimension::keyHeight || id == dimension::keyDip;
}

/// Whether the second note is the next one of its kind after the first.
bool adjacent(NoteNumber a, NoteNumber b, const Piano& piano, bool byColour) {
    if (b.value <= a.value) return false;
    for (int n = a.value + 1; n < b.value; ++n)
        if (!byColour || colourOf(NoteNumber{n}, piano) == colourOf(b, piano)) return false;
    return true;
}

} // namespace

Evenness::Evenness(const Piano& piano, const PassTable& table, const Zones& zones, std::span<const DimensionId> asked)
    : m_notes(piano.notes), m_cells(dimensions().size() * static_cast<std::size_t>(piano.notes)) {
    const std::vector<Section> sections = sectionsOf(piano);
    std::vector<KeyColour> colours;
    for (int n = 1; n <= m_notes; ++n)
        colours.push_back(colourOf(NoteNumber{n}, piano));
    std::vector<Point> points;
    for (const DimensionId id : asked) {
        const Kind kind = row(id).kind;
        const auto step = zones.step(id);
        const double limit = step ? toTrade(*step, kind) : 0.0;
        const double u = toTrade(uncertaintyOf(id, piano), kind);
        const bool apart = coloursApart(id);
        for (const KeyColour colour : {KeyColour::natural, KeyColour::sharp}) {
            if (!apart && colour == KeyColour::sharp) break;
            std::vector<Point> whole;
            for (const Section& section : sections) {
                points.clear();
                for (int n = section.range.first; n <= section.range.last; ++n) {
                    const Cell cell{NoteNumber{n}, id};
                    const auto value = table.value(cell);
                    if (!value || zones.overridden(cell)) continue;
                    if (apart && colours[static_cast<std::size_t>(n - 1)] != colour) continue;
                    const auto& zone = zones.at(cell);
                    points.push_back({cell.note, *value, zone ? toTrade(zone->nominal, kind) : 0.0});
                }
                judgeSection(id, points, u, limit);
                whole.insert(whole.end(), points.begin(), points.end());
            }
            if (step) markSteps(id, whole, u, limit, piano, apart || id == dimension::sharpHeight);
        }
    }
}

void Evenness::judgeSection(DimensionId id, std::span<const Point> points, double u, double limit) {
    std::vector<double> residuals;
    std::vector<std::size_t> places;
    for (std::size_t i = 0; i < points.size(); ++i)
        if (const auto near = neighbourhood(points, i)) {
            residuals.push_back(points[i].value - *near);
            places.push_back(i);
        }
    const auto scale = robustScale(residuals);
    for (std::size_t k = 0; k < residuals.size(); ++k) {
        Unevenness out;
        out.residual = residuals[k] - scale->median;
        out.z = scale->modifiedZ(residuals[k]);
        const double e = std::abs(out.residual);
        const bool odd = std::abs(out.z.value_or(0.0)) > kModifiedZCutOff || e > 4 * u;
        out.uneven = limit > 0 && e > std::max(limit, 2 * u) && odd;
        slot({points[places[k]].note, id}) = out;
    }
}

void Evenness::markSteps(DimensionId id, std::span<const Point> points, double u, double limit, const Piano& piano,
                         bool byColour) {
    const double least = std::max(limit, 2 * std::numbers::sqrt2 * u);
    for (std::size_t i = 1; i < points.size(); ++i) {
        const Point& before = points[i - 1];
        const Point& after = points[i];
        if (std::abs((after.value - after.nominal) - (before.value - before.nominal)) <= least) continue;
        if (!adjacent(before.note, after.note, piano, byColour)) continue;
        std::optional<Unevenness>& first = slot({before.note, id});
        std::optional<Unevenness>& second = slot({after.note, id});
        const bool blameFirst = first && second && std::abs(first->residual) > std::abs(second->residual);
        std::optional<Unevenness>& odd = blameFirst || (first && !second) ? first : second;
        if (!odd) odd.emplace();
        odd->step = true;
    }
}

std::optional<Unevenness>& Evenness::slot(Cell cell) {
    return m_cells[cell.dimension.row * static_cast<std::size_t>(m_notes) +
                   static_cast<std::size_t>(cell.note.value - 1)];
}

const Unevenness* Evenness::at(Cell cell) const {
    if (cell.note.value < 1 || cell.note.value > m_notes || cell.dimension.row >= dimensions().size()) return nullptr;
    const auto& found =
        m_cells[cell.dimension.row * static_cast<std::size_t>(m_notes) + static_cast<std::size_t>(cell.note.value - 1)];
    return found ? &*found : nullptr;
}

} // namespace hammerline
