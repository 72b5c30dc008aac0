// One note of an action as rigid levers with angles: key, wippen, jack, hammer. It shares no formula with core:
// there everything is linear in small changes; here sines, a tilting jack and sliding contacts.
#pragma once

namespace virtual_action {

/// What is built in and never adjusted. mm; angles in radians.
struct Levers {
    // key, from the balance pin
    double front = 235, frontPin = 214, back = 142, capstan = 127;
    // wippen, from its centre: heel, jack centre, jack toe at rest, check head
    double heel = 62, jackSeat = 88, toe = 72, check = 80;
    // jack: upper arm, toe arm, and how far its top must slide before it is clear of the butt
    double jackUpper = 46, jackToe = 22, overlap = 3.4;
    // hammer: butt arm, its angle at rest below the horizontal, crown radius, catcher radius, rest-rail radius
    double butt = 20, buttAngle = -0.44, crown = 130, catcher = 52, rail = 101.6;
    double spoon = 40;  // wippen centre to the spoon
    bool grand = false; // the hammer stands on the jack, not on a rail
};

/// What hands and wear move. Heights in mm above a fixed level of each part.
struct Settings {
    double balance = 0;     // top of the balance punchings
    double backCloth = 0;   // top of the back-rail cloth
    double frontStop = -9;  // top of the front punchings, at the pin
    double capstan = 0;     // capstan head above the key's line
    double heelCloth = 0;   // lost thickness of the capstan cloth
    double button = 0;      // underside of the let-off button over the toe's level
    double railPads = 0;    // how far the rest rail stands toward the strings, at the rail
    double string = 46;     // string from the hammer's zero, along the crown's path
    double crownLost = 0;   // felt filed or worn off the crown
    double checkNearer = 0; // mm of checking by the bend of the wire
    double spoonAngle = 0;  // wippen angle (times the spoon arm, mm) at which the spoon meets the damper lever
    double dropStop = 0;    // crown from its zero where the drop screw holds it, mm of travel
};

/// What a perfect gauge would read.
struct Reading {
    double frontHeight = 0; // key front at rest, mm above the level of the balance rail
    double dip = 0, lostMotion = 0, blow = 0, letOff = 0, aftertouch = 0, checking = 0, damperStart = 0, drop = 0;
};
Reading readPerfectly(const Levers&, const Settings&);

} // namespace virtual_action
