#include "core/kinematics/linkage.h"

#include <algorithm>
#include <numbers>

namespace hammerline::kinematics {

namespace {

constexpr int kHalvings = 60;
constexpr double kLeastLever = 8;     // mm, of the butt; outside nobody builds
constexpr double kGreatestLever = 30; // mm
constexpr double kLeverStep = 0.5;    // mm between looks for a change of sign
constexpr double kFits = 0.02;        // mm of the hammer: what a placed linkage may miss its readings by
constexpr double kDamperArm = 31;     // mm, damper lever's centre to the spoon's height

/// Turn, about the origin, after which `p` (left of it) lies at height `y` below: the frame is turned by the result.
double turnToHeight(Point p, double y) {
    double angle = angleOf(p);
    if (angle > 0) angle -= 2 * std::numbers::pi;
    return -std::numbers::pi - std::asin(y / lengthOf(p)) - angle;
}

/// Where `f` changes sign between `low` and `high`, which it must do.
template <class F>
double bisect(F f, double low, double high) {
    const bool rising = f(high) > 0;
    for (int i = 0; i < kHalvings; ++i) {
        const double middle = (low + high) / 2;
        const bool above = f(middle) > 0;
        (above == rising ? high : low) = middle;
    }
    return (low + high) / 2;
}

} // namespace

double Linkage::wippenAngle(double travel) const {
    const double key = std::asin(travel / m_build.front);
    const Point capstan = turned(m_build.capstan, key);
    return turnToHeight(capstan - m_build.wippen, m_build.capstan.y - m_build.wippen.y);
}

Point Linkage::jackCentreAt(double wippen) const {
    return turnedAbout(m_build.wippen, m_build.jack, -wippen);
}

Point Linkage::wireFoot(double wippen) const {
    return m_build.wippen + turned(m_build.damperWire, -wippen);
}

/// The crown runs on a circle; its distance from the string is told along the normal of the string.
double Linkage::hammerAngle(double gap) const {
    const double radius = lengthOf(m_build.crown);
    if (m_build.grand) return std::asin((m_build.crown.y - gap) / radius) - m_restCrown;
    return m_restCrown - std::acos((m_build.crown.x - gap) / radius);
}

double Linkage::gapAt(double hammerAngle) const {
    const double radius = lengthOf(m_build.crown);
    if (m_build.grand) return m_build.crown.y - radius * std::sin(m_restCrown + hammerAngle);
    return m_build.crown.x - radius * std::cos(m_restCrown - hammerAngle);
}

/// A vertical's hammer turns clockwise toward the string, a grand's the other way.
double Linkage::signedHammer(double angle) const {
    return m_build.grand ? angle : -angle;
}

/// The jack's turn that keeps its toe at the button.
double Linkage::jackAgainstButton(Point jackCentre) const {
    const double reach = std::clamp((m_button - jackCentre.y) / lengthOf(m_build.jackToe), -1.0, 1.0);
    return std::numbers::pi - std::asin(reach) - angleOf(m_build.jackToe);
}

/// From the jack's centre, in the jack's own frame: what it holds at the moment it leaves.
Point Linkage::meetingAtEscape() const {
    if (m_build.grand) return {m_jackTop.x + m_build.escape, m_jackTop.y + m_build.knuckle};
    return m_jackTop;
}

/// By how much jack and butt are apart when the hammer stands at let-off and the key where the escape was read.
double Linkage::missAtEscape() const {
    const Point jack = jackCentreAt(wippenAngle(m_distances.escapeAt));
    const double hammer = signedHammer(hammerAngle(m_distances.letOff));
    const double slid = m_build.grand ? m_lever : -m_lever - m_build.escape;
    const Point meets = m_hammer + turned({slid, m_build.leather.y}, hammer);
    return lengthOf(meets - jack) - lengthOf(meetingAtEscape());
}

void Linkage::setLever(double lever) {
    m_lever = lever;
    const double along = m_build.grand ? -lever : lever;
    m_hammer = {m_build.jackTop.x + along, m_build.hammerY};
    m_string = m_build.grand ? m_hammer.y + m_build.crown.y : m_hammer.x + m_build.crown.x;
}

std::optional<double> Linkage::leverThatMeets() {
    std::optional<double> best;
    const auto miss = [this](double lever) {
        setLever(lever);
        return missAtEscape();
    };
    for (double lever = kLeastLever; lever < kGreatestLever; lever += kLeverStep) {
        const double low = miss(lever);
        const double high = miss(lever + kLeverStep);
        const bool changesSign = (low > 0) != (high > 0);
        if (!changesSign) continue;
        const double found = bisect(miss, lever, lever + kLeverStep);
        const bool nearer = !best || std::abs(found - m_build.freeLink) < std::abs(*best - m_build.freeLink);
        if (nearer) best = found;
    }
    return best;
}

tl::expected<Linkage, CannotDraw> Linkage::place(const Build& build, const Distances& distances) {
    Linkage linkage;
    linkage.m_build = build;
    linkage.m_distances = distances;
    const double along = build.grand ? build.crown.y : build.crown.x;
    const double radius = lengthOf(build.crown);
    if (distances.letOff < 0 || distances.letOff >= distances.blow) return tl::unexpected(CannotDraw::letOffBeyond);
    if (along - distances.blow <= -radius) return tl::unexpected(CannotDraw::blowTooLong);
    const bool inOrder = distances.lostMotion >= 0 && distances.escapeAt > distances.lostMotion;
    const bool withinReach = std::max(distances.escapeAt, distances.dip) < build.front / 4;
    if (!inOrder || !withinReach) return tl::unexpected(CannotDraw::escapeOutside);

    const double rest = (along - distances.blow) / radius;
    linkage.m_restCrown = build.grand ? std::asin(rest) : std::acos(rest);
    // The jack's top touches when the lost motion is used up; at rest it stands that much lower.
    const Point touching = turnedAbout(build.wippen, build.jackTop, linkage.wippenAngle(distances.lostMotion));
    linkage.m_jackTop = touching - build.jack;
    const auto lever = linkage.leverThatMeets();
    if (!lever) return tl::unexpected(CannotDraw::linksDoNotMeet);
    linkage.setLever(*lever);

    const Point jack = linkage.jackCentreAt(linkage.wippenAngle(distances.escapeAt));
    const double hammer = linkage.signedHammer(linkage.hammerAngle(distances.letOff));
    const double slid = build.grand ? *lever : -*lever - build.escape;
    const Point meets = linkage.m_hammer + turned({slid, build.leather.y}, hammer);
    const double turn = angleOf(meets - jack) - angleOf(linkage.meetingAtEscape());
    linkage.m_button = jack.y + turned(build.jackToe, turn).y;

    const Pose escape = linkage.driven(distances.escapeAt);
    const Pose touch = linkage.driven(distances.lostMotion);
    const bool lands = std::abs(escape.gap - distances.letOff) < kFits;
    const bool starts = std::abs(touch.gap - distances.blow) < kFits;
    if (!lands || !starts) return tl::unexpected(CannotDraw::linksDoNotMeet);
    if (distances.damperStart > 0) linkage.m_damperFrom = linkage.travelOfHammer(distances.damperStart);
    return linkage;
}

/// The jack's corner is held in the step of the butt until the toe meets the button; then the button turns the jack and
/// the corner slides along the leather.
void Linkage::driveUpright(Pose& pose) const {
    const Point held{-m_lever, m_build.leather.y};
    const Point toJack = pose.jackCentre - m_hammer;
    const double a = lengthOf(held);
    const double b = lengthOf(toJack);
    const double c = lengthOf(m_jackTop);
    const double opening = std::acos(std::clamp((a * a + b * b - c * c) / (2 * a * b), -1.0, 1.0));
    pose.hammer = angleOf(held) - angleOf(toJack) + opening;
    const Point corner = m_hammer + turned(held, -pose.hammer);
    pose.jack = angleOf(corner - pose.jackCentre) - angleOf(m_jackTop);
    const double toe = pose.jackCentre.y + turned(m_build.jackToe, pose.jack).y;
    if (toe <= m_button) return;
    pose.jack = jackAgainstButton(pose.jackCentre);
    const Point slid = pose.jackCentre + turned(m_jackTop, pose.jack);
    pose.hammer = turnToHeight(slid - m_hammer, m_build.leather.y);
}

/// The jack stands in its wippen until the toe meets the button; the knuckle lies on its flat top.
void Linkage::driveGrand(Pose& pose) const {
    pose.jack = -pose.wippen;
    const double toe = pose.jackCentre.y + turned(m_build.jackToe, pose.jack).y;
    if (toe > m_button) pose.jack = jackAgainstButton(pose.jackCentre);
    const Point top = pose.jackCentre + turned(m_jackTop, pose.jack);
    const Point normal = turned({0, 1}, pose.jack);
    const Point knuckle{m_lever, m_build.leather.y};
    const Point between = m_hammer - top;
    const double rest = m_build.knuckle - (normal.x * between.x + normal.y * between.y);
    const double opening = std::acos(std::clamp(rest / lengthOf(knuckle), -1.0, 1.0));
    pose.hammer = angleOf(normal) - angleOf(knuckle) - opening;
}

Pose Linkage::driven(double travel) const {
    Pose pose;
    pose.travel = travel;
    pose.key = std::asin(travel / m_build.front);
    pose.capstan = turned(m_build.capstan, pose.key);
    pose.wippen = wippenAngle(travel);
    pose.jackCentre = jackCentreAt(pose.wippen);
    pose.jack = -pose.wippen;
    const bool touches = travel >= m_distances.lostMotion;
    if (touches && m_build.grand) driveGrand(pose);
    if (touches && !m_build.grand) driveUpright(pose);
    setHammer(pose, touches ? gapAt(pose.hammer) : m_distances.blow);
    return pose;
}

void Linkage::setHammer(Pose& pose, double gap) const {
    pose.gap = gap;
    pose.hammer = hammerAngle(gap);
    pose.hammerCentre = m_hammer;
    const double crown = m_restCrown + signedHammer(pose.hammer);
    pose.crown = m_hammer + turned({lengthOf(m_build.crown), 0}, crown);
    pose.jackTop = pose.jackCentre + turned(m_jackTop, pose.jack);
    pose.jackToe = pose.jackCentre + turned(m_build.jackToe, pose.jack);
}

/// The spoon's tip moves with the wippen and swings the lever; a grand's key end lifts its damper.
void Linkage::setDamper(Pose& pose) const {
    if (!m_damperFrom || pose.travel <= *m_damperFrom) return;
    if (m_build.grand) {
        const double end = m_build.crown.x + m_hammer.x + 61; // past the crown, at the damper's line
        pose.lift = end * (std::sin(pose.key) - *m_damperFrom / m_build.front);
        return;
    }
    if (m_build.over) {
        const double from = wireFoot(wippenAngle(*m_damperFrom)).y;
        const double arm = m_build.damperLever.x - wireFoot(0).x;
        pose.damper = std::asin(std::clamp((wireFoot(pose.wippen).y - from) / arm, 0.0, 1.0));
        return;
    }
    const double pushed = m_build.spoon * (std::sin(pose.wippen) - std::sin(wippenAngle(*m_damperFrom)));
    pose.damper = std::atan(pushed / kDamperArm);
}

double Linkage::gapAtBottom() const {
    if (m_build.grand) return m_distances.letOff + m_distances.drop;
    return std::max(m_distances.letOff, m_build.afterEscape);
}

Pose Linkage::at(double travel) const {
    const double bounded = std::clamp(travel, 0.0, m_distances.dip);
    Pose pose = driven(std::min(bounded, m_distances.escapeAt));
    pose.free = bounded >= m_distances.escapeAt;
    if (bounded > m_distances.escapeAt) {
        pose.travel = bounded;
        pose.key = std::asin(bounded / m_build.front);
        pose.capstan = turned(m_build.capstan, pose.key);
        pose.wippen = wippenAngle(bounded);
        pose.jackCentre = jackCentreAt(pose.wippen);
        pose.jack = jackAgainstButton(pose.jackCentre);
        const double share = (bounded - m_distances.escapeAt) / (m_distances.dip - m_distances.escapeAt);
        setHammer(pose, m_distances.letOff + share * (gapAtBottom() - m_distances.letOff));
    }
    setDamper(pose);
    return pose;
}

Pose Linkage::checked() const {
    Pose pose = at(m_distances.dip);
    if (pose.free && m_distances.checking > 0) setHammer(pose, m_distances.checking);
    return pose;
}

std::optional<double> Linkage::travelOfHammer(double way) const {
    const double wanted = m_distances.blow - way;
    if (way <= 0 || wanted < m_distances.letOff) return std::nullopt;
    const auto beyond = [&](double travel) { return wanted - driven(travel).gap; };
    return bisect(beyond, m_distances.lostMotion, m_distances.escapeAt);
}

} // namespace hammerline::kinematics
