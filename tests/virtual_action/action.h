// A whole virtual piano: hidden levers and pitches, felt that settles, worn in known ways (computation 13).
#pragma once

#include "core/pass/pass.h"
#include "core/spec/spec.h"
#include "tests/virtual_action/chance.h"
#include "tests/virtual_action/kinematics.h"

namespace virtual_action {

/// Millimetres of whole nanometres.
inline double mmOf(std::int64_t nm) {
    return static_cast<double>(nm) / 1e6;
}

/// How worn pianos are drawn; `share` scales every wear (1: computation 13, 0.5: half worn, 0: just regulated).
struct Wear {
    double share = 1;
    bool scatter = true; // how evenly it was regulated when new, and the odd notes
    /// Pianos of one make have their screws' pitches within 5 % (a guess, no source); 0: each is of another make.
    std::uint64_t make = 0;
};

class Action {
public:
    /// A piano of that set-up, regulated to the sheet and then worn.
    Action(hammerline::Piano, const hammerline::SpecSheet&, Wear, std::uint64_t seed);

    const hammerline::Piano& piano() const { return m_piano; }
    /// What a perfect gauge reads, mm: key height against the line of the end naturals as they stood when the bar was
    /// last proved (at first, and after a rail was shimmed), sharps over their naturals. None where the note has no
    /// such part.
    std::optional<double> truth(hammerline::Cell) const;

    // --- what hands do, exact here; the hand's error is the player's (player.h)
    void turnCapstan(int note, double turns); // up
    void turnLetOff(int note, double turns);  // in
    void turnDrop(int note, double turns);    // in
    void punchBalance(int note, double mm);   // added
    void punchFront(int note, double mm);     // added
    void shimRailCloth(int note, double mm);  // added behind one shank
    void nearCheck(int note, double mm);      // checking nearer by
    void bendSpoon(int note, double mm);      // toward the damper lever, at the tip
    /// Pads at the brackets of the rest rail, mm thicker; straight between the brackets of a piece.
    void padRail(const std::map<int, double>& atBrackets);
    /// Shims under the balance rail at its screws, straight between them.
    void shimBalanceRail(const std::map<int, double>& atScrews);
    void shimBackRail(double mm);
    /// What playing does to felt that was just set: it sinks a little.
    void playIn();

    const Levers& levers(int note) const { return m_notes.at(index(note)).levers; }
    Settings& settings(int note) { return m_notes.at(index(note)).settings; }
    double capstanPitch(int note) const { return m_notes.at(index(note)).capstanPitch; }

private:
    struct Note {
        Levers levers;
        Settings settings;
        double capstanPitch = 1, letOffPitch = 0.8, dropPitch = 3;
        double groove = 0, turned = 0;                          // packed button felt: the screw's place in its groove
        double frontSinks = 0, balanceSinks = 0, heelSinks = 0; // still to come by playing
    };
    static std::size_t index(int note) { return static_cast<std::size_t>(note - 1); }
    void build(Chance&, std::uint64_t make);
    void regulate(const hammerline::SpecSheet&, bool scatter, Chance&);
    void wear(double share, Chance&);
    void oddNotes(Chance&);
    void fixLine();
    double lineAt(int note) const;

    hammerline::Piano m_piano;
    std::vector<Note> m_notes;
    double m_railFactor = 1.28;
    double m_lineAt = 0, m_lineSlope = 0;
};

/// Straight between given places, level beyond the outermost.
double between(const std::map<int, double>& places, int note);

} // namespace virtual_action
