// One note of an action as rigid links that turn about their centres: key, wippen, jack, hammer, damper lever. It is
// placed so that the distances that were read come out: blow at rest, let-off at the key travel of the escape, dip at
// the bottom, lost motion before the hammer stirs. It shares no formula with the planner: there everything is linear in
// small changes.
#pragma once

#include "core/kinematics/build.h"

#include <tl/expected.hpp>

#include <cstdint>
#include <optional>

namespace hammerline::kinematics {

/// What the drawing is placed by; mm. Key travel at the front, the others at the hammer, to the string.
struct Distances {
    double dip = 0;
    double lostMotion = 0; // 0 or more; 0 on a grand
    double blow = 0;
    double letOff = 0;
    double escapeAt = 0;    // key travel at which the jack leaves: lost motion + (blow - let-off)/ratio
    double checking = 0;    // 0: the hammer is drawn where it falls
    double drop = 0;        // grand
    double damperStart = 0; // mm of the hammer; 0: not drawn stirring
};

/// Where everything stands at one moment. Angles from rest, radians: key counter-clockwise (its front goes down),
/// wippen clockwise, jack counter-clockwise against its place at rest, hammer toward the string, damper lever off the
/// string; `lift` of a grand's damper in mm.
struct Pose {
    double travel = 0; // of the key's front
    double key = 0;
    double wippen = 0;
    double jack = 0;
    double hammer = 0;
    double damper = 0;
    double lift = 0;
    double gap = 0;    // crown to string
    bool free = false; // the jack has left
    Point capstan, jackCentre, jackTop, jackToe, hammerCentre, crown;
};

enum class CannotDraw : std::uint8_t {
    blowTooLong,    // the crown of this build does not reach so far back
    letOffBeyond,   // let-off not between the string and the blow
    escapeOutside,  // the jack would leave before the hammer moves
    linksDoNotMeet, // no lever of the butt brings these together
};

class Linkage {
public:
    /// Solves the butt's lever by bisection, so that the escape falls where it was read, and sets the let-off button.
    /// Refuses distances that no action of this build can have.
    static tl::expected<Linkage, CannotDraw> place(const Build&, const Distances&);

    const Build& build() const { return m_build; }
    const Distances& distances() const { return m_distances; }
    /// Lever of the butt that was found, mm.
    double lever() const { return m_lever; }
    /// Underside of the let-off button, mm over the key's lower edge.
    double button() const { return m_button; }
    double stringAt() const { return m_string; }
    Point hammerCentre() const { return m_hammer; }
    /// Foot of an overdamper's wire with the wippen turned so far.
    Point wireFoot(double wippen) const;
    /// Key travel at which the damper stirs; none where that is not drawn.
    std::optional<double> damperFrom() const { return m_damperFrom; }

    /// The note with its key `travel` mm down, on the way down; beyond the dip it stays at the bottom.
    Pose at(double travel) const;
    /// The key at the bottom, the hammer caught by the back check.
    Pose checked() const;
    /// Key travel at which the hammer has come `way` mm toward the string; none where it never does.
    std::optional<double> travelOfHammer(double way) const;

private:
    double wippenAngle(double travel) const;
    double hammerAngle(double gap) const;
    double gapAt(double hammerAngle) const;
    double signedHammer(double angle) const;
    Point jackCentreAt(double wippen) const;
    double jackAgainstButton(Point jackCentre) const;
    Point meetingAtEscape() const;
    double missAtEscape() const;
    void setLever(double lever);
    std::optional<double> leverThatMeets();
    void driveUpright(Pose&) const;
    void driveGrand(Pose&) const;
    Pose driven(double travel) const;
    void setHammer(Pose&, double gap) const;
    void setDamper(Pose&) const;
    double gapAtBottom() const;

    Build m_build;
    Distances m_distances;
    double m_lever = 0;
    double m_button = 0;
    double m_string = 0;
    double m_restCrown = 0;             // angle of the crown from the hammer's centre, at rest
    std::optional<double> m_damperFrom; // key travel at which the damper stirs
    Point m_hammer;
    Point m_jackTop; // from the jack's centre, in the wippen's frame at rest
};

} // namespace hammerline::kinematics
