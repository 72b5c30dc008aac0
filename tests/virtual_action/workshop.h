// What every player shares: gauges and their noise, hands and their error, the clock (computation 13, bench-practice
// 2.4, 2.7). Whoever reads or works is charged here, and nowhere else.
#pragma once

#include "core/operation/operation.h"
#include "tests/virtual_action/action.h"

namespace virtual_action {

struct Conditions {
    hammerline::Gauge gauge = hammerline::Gauge::simple;
    double noise = 1; // of the uncertainties of bench-practice 2.4
    double hands = 1; // of the hands' errors of computation 13
    // What the eye passes as lying on the rail: a gap of R 0.03 = 0.15 mm at the shank is felt by a tug; a guess, no
    // source. mm of lost motion at the key.
    double eye = -0.03;
};

struct Minutes {
    double reading = 0, single = 0, common = 0, access = 0;
    double all() const { return reading + single + common + access; }
};

/// The dimensions of the yardstick, in the order in which they are set.
std::span<const hammerline::DimensionId> yardstickDimensions();

class Workshop {
public:
    Workshop(Action&, Conditions, std::uint64_t seed);

    const hammerline::Piano& piano() const { return m_action.piano(); }
    const Action& action() const { return m_action; }
    const Minutes& minutes() const { return m_minutes; }

    /// One reading, mm, rounded to what the hand can read; none where the note has no such part.
    std::optional<double> read(hammerline::Cell);
    /// A look at the shank, no number: whether the hammer lies on its rail.
    bool looksOnRail(int note);
    /// A look at one part along the keyboard.
    void lookAtPart();

    // --- single work: the amount a person means; the hand does nearly that
    void turnCapstan(int note, double turns);
    void turnLetOff(int note, double turns);
    void punchFront(int note, double mm);
    void nearCheck(int note, double mm);
    void shimRailCloth(int note, double mm);
    /// Balance punchings of one visit to the keys: singly, or from 21 keys on with all keys off once.
    void punchBalance(const std::map<int, double>& mm);

    // --- common work
    void padRail(const std::map<int, double>& atBrackets);
    void shimBalanceRail(const std::map<int, double>& atScrews);
    void shimBackRail(double mm);

    /// A quarter of an hour of hard playing is everybody's and not charged: felt sinks where it was just set.
    void playIn() { m_action.playIn(); }

private:
    bool seesOnRail(double lostMotion);
    double turned(double turns);
    double cut(double mm);
    void charge(hammerline::OperationId);

    Action& m_action;
    Conditions m_conditions;
    Chance m_chance;
    Minutes m_minutes;
};

/// How far the piano is from done: shares of the fitted cells truly outside, plainly and by more than 1/8 of the zone.
struct Standing {
    int fitted = 0, outside = 0, clearly = 0;
    bool done() const { return clearly * 100 <= fitted; }
    bool nearlyDone() const { return outside * 20 <= fitted; }
};
Standing standing(const Action&, const hammerline::Zones&);

} // namespace virtual_action
