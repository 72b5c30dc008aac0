// How a virtual piano is built, regulated when new, and worn since (computation 13).
#include "tests/virtual_action/action.h"

#include <algorithm>
#include <functional>

namespace virtual_action {

using namespace hammerline;

namespace {

/// The setting at which a monotone reading has the wanted value: secant steps.
double solve(double from, double step, double wanted, const std::function<double(double)>& readingAt) {
    double a = from, b = from + step;
    double fa = readingAt(a) - wanted, fb = readingAt(b) - wanted;
    for (int i = 0; i < 40 && std::abs(fb) > 1e-9 && fb != fa; ++i) {
        const double next = b - fb * (b - a) / (fb - fa);
        a = std::exchange(b, next);
        fa = std::exchange(fb, readingAt(b) - wanted);
    }
    return b;
}

/// How evenly a good shop leaves a piano: 1 sd, mm. Common practice, no source.
struct Evenness {
    double height = 0.08, dip = 0.10, lostMotion = 0.07, blow = 0.30, letOff = 0.20, aftertouch = 0.10, checking = 0.8,
           damper = 1.5, drop = 0.2;
};

} // namespace

void Action::build(Chance& chance, std::uint64_t make) {
    const bool grand = m_piano.action == ActionKind::grand;
    // hidden, per piano: arms within 2 % of the customary ones, pitches within the bands of bench-practice 2.5
    const double armsOff = 1 + chance.normal(0.012);
    const double ratio = chance.between(4.6, 5.1);
    double capstanPitch = grand ? chance.between(0.8, 1.25) : chance.between(0.75, 1.35);
    double letOffPitch = chance.between(0.5, 1.05);
    const double dropPitch = chance.between(2, 4.5);
    m_railFactor = chance.between(1.17, 1.38);
    const double catcher = chance.between(40, 56);
    if (make != 0) {
        Chance ofMake(make);
        capstanPitch = ofMake.between(0.75, 1.35) * (1 + chance.normal(0.05));
        letOffPitch = ofMake.between(0.5, 1.05) * (1 + chance.normal(0.05));
    }
    m_notes.resize(static_cast<std::size_t>(m_piano.notes));
    for (int note = 1; note <= m_piano.notes; ++note) {
        Note& n = m_notes[index(note)];
        const KeyArms& arms = m_piano.armsOf(colourOf(NoteNumber{note}, m_piano));
        Levers& l = n.levers;
        l.grand = grand;
        l.front = arms.F() * armsOff;
        l.frontPin = arms.P() * armsOff;
        l.back = arms.T() * (1 + chance.normal(0.002));
        l.capstan = arms.C() * (1 + chance.normal(0.002));
        // from the naturals' ratio; a sharp's own follows from its arms
        const KeyArms& natural = m_piano.armsOf(KeyColour::natural);
        const double keyToCapstan = natural.C() / (natural.F() * armsOff);
        l.butt = keyToCapstan * l.jackSeat / l.heel * l.crown / (ratio * (1 + chance.normal(0.006))) * 1.0294;
        l.catcher = catcher;
        l.rail = l.crown / m_railFactor;
        n.capstanPitch = capstanPitch * (1 + chance.normal(0.02));
        n.letOffPitch = letOffPitch * (1 + chance.normal(0.02));
        n.dropPitch = dropPitch * (1 + chance.normal(0.02));
        n.groove = chance.between(0, 0.012);
        n.turned = chance.between(0, 1);
    }
}

void Action::regulate(const SpecSheet& sheet, bool scatter, Chance& chance) {
    const Zones zones(sheet, m_piano);
    const Evenness even;
    const auto aim = [&](int note, DimensionId id, double sd) {
        const auto& zone = zones.at({NoteNumber{note}, id});
        const double off = std::clamp(chance.normal(1), -2.0, 2.0) * sd;
        return (zone ? mmOf(zone->nominal) : 0.0) + (scatter ? off : 0.0);
    };
    for (int note = 1; note <= m_piano.notes; ++note) {
        Note& n = m_notes[index(note)];
        const bool sharp = colourOf(NoteNumber{note}, m_piano) == KeyColour::sharp;
        const auto set = [&](double& setting, double step, double wanted, double virtual_action::Reading::*reading) {
            setting = solve(setting, step, wanted, [&](double x) {
                setting = x;
                return readPerfectly(n.levers, n.settings).*reading;
            });
        };
        using R = virtual_action::Reading;
        n.settings.string = m_piano.vertical() ? 46 : 45;
        const double level = sharp ? 12.3 : 0;
        set(n.settings.balance, 0.1, level + (scatter ? chance.normal(even.height) : 0), &R::frontHeight);
        if (m_piano.vertical()) {
            n.settings.string = aim(note, dimension::blow, even.blow);
            set(n.settings.capstan, 0.1, std::max(0.02, aim(note, dimension::lostMotion, even.lostMotion)),
                &R::lostMotion);
        } else {
            set(n.settings.capstan, 0.1, aim(note, dimension::blow, even.blow), &R::blow);
        }
        set(n.settings.button, 0.05, aim(note, dimension::letOff, even.letOff), &R::letOff);
        // the dip follows the aftertouch as far as its zone allows
        set(n.settings.frontStop, 0.1, aim(note, dimension::aftertouch, even.aftertouch), &R::aftertouch);
        if (const auto& dip = zones.at({NoteNumber{note}, dimension::keyDip}); dip && dip->low && dip->high) {
            const double now = readPerfectly(n.levers, n.settings).dip;
            const double kept = std::clamp(now, mmOf(*dip->low) + 0.1, mmOf(*dip->high) - 0.1);
            if (kept != now) set(n.settings.frontStop, 0.1, kept + (scatter ? chance.normal(0.03) : 0), &R::dip);
        }
        set(n.settings.checkNearer, 0.1, aim(note, dimension::checking, even.checking), &R::checking);
        set(n.settings.spoonAngle, 0.1, aim(note, dimension::damperStart, even.damper), &R::damperStart);
        set(n.settings.dropStop, 0.1, aim(note, dimension::drop, even.drop), &R::drop);
    }
}

void Action::wear(double share, Chance& chance) {
    const auto drawn = [&](double low, double high) { return share * chance.between(low, high); };
    const double hump = drawn(0, 0.55), fronts = drawn(0.05, 0.35), back = drawn(0, 0.25);
    const double filed = chance.one(0.5) ? drawn(0.2, 0.8) : drawn(1.0, 2.6);
    const double rail = drawn(0, 0.9), tilt = share * chance.between(-0.6, 0.6);
    const double buttons = drawn(0, 0.12), heels = drawn(0.05, 0.35);
    const double sunkBacks = chance.one(0.2) ? drawn(0.4, 1.0) : 0.0;
    const bool looseRail = chance.one(1.0 / 3);
    const std::vector<Section> sections = sectionsOf(m_piano);
    const auto& loose =
        sections[static_cast<std::size_t>(chance.between(0, static_cast<double>(sections.size())))].range;
    const double looseBy = share * chance.between(0.08, 0.22) * (chance.one(0.5) ? 1 : -1);
    const double middle = chance.between(0.35, 0.6) * m_piano.notes;
    for (int note = 1; note <= m_piano.notes; ++note) {
        Settings& s = m_notes[index(note)].settings;
        const double along = static_cast<double>(note - 1) / (m_piano.notes - 1);
        // a smooth hump, nothing at the ends, deepest near the middle
        const double x = note < middle ? (note - 1) / (middle - 1) : (m_piano.notes - note) / (m_piano.notes - middle);
        s.balance -=
            hump * std::pow(std::sin(1.5707963267948966 * std::clamp(x, 0.0, 1.0)), 2) + share * chance.normal(0.02);
        s.frontStop -= fronts + share * chance.normal(0.04);
        s.backCloth -= back + sunkBacks + share * chance.normal(0.02);
        s.crownLost += std::max(0.0, filed + share * chance.normal(0.12));
        if (m_piano.vertical()) s.railPads -= rail + tilt * (along - 0.5) + share * chance.normal(0.08);
        s.button += buttons + share * chance.normal(0.015);
        if (looseRail && loose.contains(NoteNumber{note})) s.button += looseBy;
        s.heelCloth += std::max(0.0, heels + share * chance.normal(0.05));
        s.checkNearer += share * (1 + chance.normal(1.2));
    }
}

void Action::oddNotes(Chance& chance) {
    for (Note& note : m_notes) {
        if (!chance.one(0.04)) continue;
        Settings& s = note.settings;
        const double sign = chance.one(0.5) ? 1 : -1;
        switch (static_cast<int>(chance.between(0, 5))) {
        case 0:
            s.capstan += sign * chance.between(0.2, 0.5);
            break;
        case 1:
            s.button += sign * chance.between(0.1, 0.25);
            break;
        case 2:
            s.frontStop += sign * chance.between(0.4, 0.9);
            break;
        case 3:
            s.balance += sign * chance.between(0.15, 0.35);
            break;
        default:
            s.checkNearer += sign * chance.between(3, 6);
            break;
        }
    }
}

} // namespace virtual_action
