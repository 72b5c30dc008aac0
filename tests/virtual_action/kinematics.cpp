#include "tests/virtual_action/kinematics.h"

#include <algorithm>
#include <cmath>

namespace virtual_action {
namespace {

double arcsine(double x) {
    return std::asin(std::clamp(x, -0.999, 0.999));
}

/// The chain from a key angle (front up is positive) to the hammer's angle, and back.
class Chain {
public:
    Chain(const Levers& levers, const Settings& settings) : l(levers), s(settings) {}

    double frontAt(double key) const { return s.balance + l.front * std::sin(key); }
    double keyAtRest() const { return arcsine((s.balance - s.backCloth) / l.back); }
    double keyPressed() const { return arcsine((s.frontStop - s.balance) / l.frontPin); }

    /// Wippen angle where the heel lies on the capstan of a key at this angle.
    double wippenAt(double key) const {
        const double head = s.balance - l.capstan * std::sin(key) + s.capstan * std::cos(key) - s.heelCloth;
        return arcsine(head / l.heel);
    }
    /// The key angle that lifts the wippen to this angle: the inverse of wippenAt by a few Newton steps.
    double keyFor(double wippen) const {
        double key = 0;
        for (int i = 0; i < 20; ++i) {
            const double gap = l.heel * std::sin(wippen) - l.heel * std::sin(wippenAt(key));
            const double slope = -l.capstan * std::cos(key) - s.capstan * std::sin(key);
            const double step = gap / slope;
            key += step;
            if (std::abs(step) < 1e-13) break;
        }
        return key;
    }
    /// Height of the jack's top with the jack tilted by `tilt` on the wippen.
    double jackTop(double wippen, double tilt) const {
        return l.jackSeat * std::sin(wippen) - l.jackUpper * (1 - std::cos(tilt));
    }
    double hammerOn(double jackTopHeight) const {
        return arcsine(jackTopHeight / l.butt + std::sin(l.buttAngle)) - l.buttAngle;
    }
    double wippenFor(double hammer) const {
        return arcsine(l.butt * (std::sin(hammer + l.buttAngle) - std::sin(l.buttAngle)) / l.jackSeat);
    }
    /// How far the jack is tilted by the button when the wippen stands at this angle.
    double tiltAt(double wippen) const {
        return arcsine(std::max(0.0, l.toe * std::sin(wippen) - s.button) / l.jackToe);
    }
    double escapeTilt() const { return arcsine(l.overlap / l.jackUpper); }
    double wippenAtEscape() const { return arcsine((s.button + l.jackToe * std::sin(escapeTilt())) / l.toe); }
    double hammerOnRail() const { return arcsine(s.railPads / l.rail); }
    double toString(double hammer) const { return s.string + s.crownLost - l.crown * hammer; }

private:
    const Levers& l;
    const Settings& s;
};

} // namespace

Reading readPerfectly(const Levers& l, const Settings& s) {
    const Chain chain(l, s);
    const double rest = chain.keyAtRest(), pressed = chain.keyPressed();
    Reading r;
    r.frontHeight = chain.frontAt(rest);
    r.dip = r.frontHeight - chain.frontAt(pressed);

    const double onJack = chain.hammerOn(chain.jackTop(chain.wippenAt(rest), 0));
    const double onRail = chain.hammerOnRail();
    // negative where the jack holds the hammer off the rail: the key would have to rise to let it down
    r.lostMotion = l.grand ? 0 : r.frontHeight - chain.frontAt(chain.keyFor(chain.wippenFor(onRail)));
    const double resting = l.grand ? onJack : std::max(onJack, onRail);
    r.blow = chain.toString(resting);

    const double escape = chain.wippenAtEscape();
    r.letOff = chain.toString(chain.hammerOn(chain.jackTop(escape, chain.escapeTilt())));
    r.aftertouch = chain.frontAt(chain.keyFor(escape)) - chain.frontAt(pressed);
    r.drop = chain.toString(s.dropStop / l.crown) - r.letOff;

    // the check rides on the wippen (on a grand on the key): the further it went, the nearer it catches
    const double reach = l.check * std::sin(chain.wippenAt(pressed)) * l.crown / l.catcher;
    r.checking = chain.toString(0) - reach - s.checkNearer;

    const double spoonMeets = arcsine(s.spoonAngle / l.spoon);
    const double there = chain.hammerOn(chain.jackTop(spoonMeets, chain.tiltAt(spoonMeets)));
    r.damperStart = l.crown * (there - (l.grand ? resting : onRail));
    return r;
}

} // namespace virtual_action
