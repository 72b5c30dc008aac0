#include "tests/virtual_action/workshop.h"

#include <array>

namespace virtual_action {

using namespace hammerline;

namespace {

constexpr double kAllKeysOffAndOn = 15;      // minutes, bench-practice 2.7
constexpr double kPunchingWithKeysOff = 0.5; // minutes a key when all are off anyway
constexpr std::size_t kMostSingleKeys = 20;

constexpr double kEyeErrs = 0.02;  // mm at the key
constexpr double kLookSeconds = 4; // common practice, no source
constexpr double kPartMinutes = 2; // a guess, no source
constexpr double kHangs = -0.2;    // what is written at least where it hangs

/// What the hand can read: half millimetres at the hammer's long distances, tenths elsewhere (computation 2).
double rounded(double mm, DimensionId id) {
    const bool coarse = id == dimension::blow || id == dimension::checking || id == dimension::damperStart;
    const double step = coarse ? 0.5 : 0.1;
    return std::round(mm / step) * step;
}

} // namespace

std::span<const DimensionId> yardstickDimensions() {
    static constexpr std::array dimensions = {dimension::blow,       dimension::keyHeight, dimension::sharpHeight,
                                              dimension::lostMotion, dimension::letOff,    dimension::keyDip,
                                              dimension::aftertouch, dimension::checking};
    return dimensions;
}

Workshop::Workshop(Action& action, Conditions conditions, std::uint64_t seed)
    : m_action(action), m_conditions(conditions), m_chance(seed ^ 0xABCDEF) {}

std::optional<double> Workshop::read(Cell cell) {
    const auto truth = m_action.truth(cell);
    if (!truth) return {};
    const Dimension& dimension = row(cell.dimension);
    m_minutes.reading += dimension.seconds[0] / 60;
    const double u = mmOf(dimension.u[static_cast<std::size_t>(m_conditions.gauge)]) * m_conditions.noise;
    const double seen = rounded(*truth + m_chance.normal(u), cell.dimension);
    if (cell.dimension != dimension::lostMotion || !piano().vertical()) return seen;
    // Whoever reads it sees whether the hammer lies on its rail, whatever the strip says.
    return seesOnRail(*truth) ? std::max(seen, 0.0) : std::min(seen, kHangs);
}

bool Workshop::looksOnRail(int note) {
    m_minutes.reading += kLookSeconds / 60;
    return seesOnRail(*m_action.truth({{note}, dimension::lostMotion}));
}

void Workshop::lookAtPart() {
    m_minutes.common += kPartMinutes;
}

bool Workshop::seesOnRail(double lostMotion) {
    return lostMotion + m_chance.normal(kEyeErrs) > m_conditions.eye;
}

double Workshop::turned(double turns) {
    return turns * (1 + m_chance.normal(0.05 * m_conditions.hands)) + m_chance.normal(0.02 * m_conditions.hands);
}

double Workshop::cut(double mm) {
    return mm * (1 + m_chance.normal(0.03 * m_conditions.hands)) + m_chance.normal(0.005 * m_conditions.hands);
}

void Workshop::charge(OperationId id) {
    const Operation& operation = row(id);
    (operation.common ? m_minutes.common : m_minutes.single) += operation.minutes[0];
}

void Workshop::turnCapstan(int note, double turns) {
    charge(operation::capstanTurn);
    m_action.turnCapstan(note, turned(turns));
}

void Workshop::turnLetOff(int note, double turns) {
    charge(operation::letOffTurn);
    m_action.turnLetOff(note, turned(turns));
}

void Workshop::punchFront(int note, double mm) {
    charge(operation::frontPunching);
    m_action.punchFront(note, cut(mm));
}

void Workshop::nearCheck(int note, double mm) {
    charge(operation::checkBend);
    m_action.nearCheck(note, mm * (1 + m_chance.normal(0.12 * m_conditions.hands)) +
                                 m_chance.normal(0.25 * m_conditions.hands));
}

void Workshop::shimRailCloth(int note, double mm) {
    charge(operation::railClothShim);
    m_action.shimRailCloth(note, cut(mm));
}

void Workshop::punchBalance(const std::map<int, double>& mm) {
    if (mm.empty()) return;
    const auto keys = static_cast<double>(mm.size());
    const bool allOff = mm.size() > kMostSingleKeys;
    if (allOff) m_minutes.access += kAllKeysOffAndOn;
    m_minutes.single += keys * (allOff ? kPunchingWithKeysOff : row(operation::balancePunching).minutes[0]);
    for (const auto& [note, amount] : mm)
        m_action.punchBalance(note, cut(amount));
}

void Workshop::padRail(const std::map<int, double>& atBrackets) {
    charge(operation::restRailShim);
    std::map<int, double> done;
    for (const auto& [bracket, mm] : atBrackets)
        done[bracket] = cut(mm);
    m_action.padRail(done);
}

void Workshop::shimBalanceRail(const std::map<int, double>& atScrews) {
    charge(operation::balanceRailShim);
    m_minutes.access += kAllKeysOffAndOn;
    std::map<int, double> done;
    for (const auto& [screw, mm] : atScrews)
        done[screw] = cut(mm);
    m_action.shimBalanceRail(done);
}

void Workshop::shimBackRail(double mm) {
    charge(operation::backRailShim);
    m_minutes.access += kAllKeysOffAndOn;
    m_action.shimBackRail(cut(mm));
}

Standing standing(const Action& action, const Zones& zones) {
    Standing standing;
    for (const DimensionId id : yardstickDimensions())
        for (int note = 1; note <= action.piano().notes; ++note) {
            const Cell cell{NoteNumber{note}, id};
            const auto truth = action.truth(cell);
            const auto& zone = zones.at(cell);
            if (!truth || !zone || !zone->low || !zone->high) continue;
            ++standing.fitted;
            const double low = mmOf(*zone->low), high = mmOf(*zone->high), eighth = (high - low) / 8;
            if (*truth < low || *truth > high) ++standing.outside;
            if (*truth < low - eighth || *truth > high + eighth) ++standing.clearly;
        }
    return standing;
}

} // namespace virtual_action
