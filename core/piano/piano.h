// The piano as it stands: compass, sections, the action by its attributes, key arms (computation 1, 5, 7).
#pragma once

#include "core/piano/taught.h"
#include "core/units/quantity.h"

#include <array>
#include <compare>
#include <map>
#include <optional>
#include <string>
#include <utility>
#include <vector>

namespace hammerline {

/// C0 as MIDI: no piano begins below it (common practice, no source).
inline constexpr int kLowestOfAny = 12;

/// Note 1 is the lowest of this piano.
struct NoteNumber {
    int value{};
    friend constexpr auto operator<=>(NoteNumber, NoteNumber) = default;
};

enum class KeyColour : std::uint8_t { natural, sharp };
enum class ActionKind : std::uint8_t { upright, drop, grand };

enum class Damping : std::uint8_t { underdamper, overdamper, grandLever };
enum class Capstan : std::uint8_t { holed, square, dowel, rocker, fixed, dropButton };
enum class Butt : std::uint8_t { woodFlange, cordLoop, brassRail };
enum class LetOffScrew : std::uint8_t { eyeScrew, frontScrew, none };
enum class PlayerStack : std::uint8_t { none, above, below };
enum class PlayerWorks : std::uint8_t { wippen, key, sticker };
enum class KeysFixing : std::uint8_t { loose, hooked };
enum class Turn : std::uint8_t { clockwise, anticlockwise };

struct NoteRange {
    int first{};
    int last{};
    bool contains(NoteNumber n) const { return first <= n.value && n.value <= last; }
    friend bool operator==(const NoteRange&, const NoteRange&) = default;
};

struct Section {
    NoteRange range;
    std::string name; // may be empty; ui/words then says bass, tenor, treble, high treble
    friend bool operator==(const Section&, const Section&) = default;
};

/// Distances from the balance pin: F to the front edge, P to the front pin, T to the back-rail contact, C to the
/// capstan.
struct KeyArms {
    Length front, frontPin, back, capstan;
    std::array<bool, 4> measured{}; // in the order F, P, T, C; false: the default of the kind, said to be so
    bool anyMeasured() const { return measured != std::array<bool, 4>{}; }
    bool allMeasured() const { return measured == std::array<bool, 4>{true, true, true, true}; }
    friend bool operator==(const KeyArms&, const KeyArms&) = default;
    double F() const { return front.mm(); }
    double P() const { return frontPin.mm(); }
    double T() const { return back.mm(); }
    double C() const { return capstan.mm(); }
    /// mm of front rise per mm of balance punching, (F+T)/T.
    double lever() const { return (F() + T()) / T(); }
};

/// The arms in the order in which they are written: F, P, T, C.
inline constexpr std::array kArms = {&KeyArms::front, &KeyArms::frontPin, &KeyArms::back, &KeyArms::capstan};

struct Piano {
    std::string name;
    ActionKind action = ActionKind::upright;
    int notes = 88;
    int lowestMidi = 21;           // A0 = 21
    std::optional<int> lastDamper; // last note with a damper; empty: not said, taken as all notes
    std::vector<Section> sections; // in order, without overlap; may be empty
    bool sectionsEntered = false;  // false: the customary split (bench-practice 2.1)

    Damping damping = Damping::underdamper;
    Capstan capstan = Capstan::holed;
    Butt butt = Butt::woodFlange;
    LetOffScrew letOff = LetOffScrew::eyeScrew;
    PlayerStack player = PlayerStack::none;
    PlayerWorks playerWorks = PlayerWorks::wippen;
    KeysFixing keys = KeysFixing::loose;
    std::vector<NoteRange> restRail;            // its pieces; one piece over all notes by default
    std::vector<std::vector<int>> brackets;     // notes at the brackets of each piece (its two ends by default)
    std::vector<int> balanceScrews;             // notes at the balance-rail screws; empty: not said
    std::array<KeyArms, 2> arms;                // by KeyColour
    double railFactor = 1.28;                   // k: mm of blow per mm at the rail pads (bench-practice 2.5)
    std::array<std::optional<double>, 2> ratio; // R entered by hand, by KeyColour
    std::vector<Length> stock;                  // punching thicknesses; the ten customary ones by default
    std::map<std::string, std::string> gauges;  // dimension key -> rule | simple | good
    std::optional<Length> capstanReserve;       // thread left in the wood, when said
    std::optional<Length> capstanLength;        // from under its head to its tip, of one taken out
    std::optional<Length> crown;                // of the key line at its middle; 0: straight; empty: as found
    // The turn, seen as the direction words say, that sends the capstan up and the screws in; empty: as is customary.
    std::optional<Turn> capstanUp, letOffIn, dropIn;
    std::map<std::string, double> minutes; // of an operation or of getting at it, by key; only those said
    Taught taught;                         // by other pianos; no attribute, and not in the book

    const KeyArms& armsOf(KeyColour c) const { return arms[static_cast<std::size_t>(c)]; }
    bool contains(NoteNumber n) const { return n.value >= 1 && n.value <= notes; }
    bool vertical() const { return action != ActionKind::grand; }
    bool hasPlayer() const { return player != PlayerStack::none; }
    friend bool operator==(const Piano&, const Piano&) = default;
};

/// A piano of that kind with its preset attributes, default arms and `notes` keys from `lowestMidi`.
/// Refuses badCompass: notes outside 20..108 or beyond MIDI 12..127.
Outcome<Piano> makePiano(ActionKind, int notes = 88, int lowestMidi = 21);

std::string_view key(ActionKind);
Outcome<ActionKind> parseActionKind(std::string_view);

KeyColour colourOf(NoteNumber, const Piano&);
int midiOf(NoteNumber, const Piano&);
/// Scientific pitch name: A0, C#4 (sharps; '#', the window paints the sign).
std::string pitchName(NoteNumber, const Piano&);
std::string pitchName(int midi);
/// Index into restRail (0 where not found).
std::size_t railPieceOf(NoteNumber, const Piano&);
/// Sections as entered or the customary ones (88: 1-26, 27-52, 53-70, 71-88); never empty, covers every note.
std::vector<Section> sectionsOf(const Piano&);
std::size_t sectionIndexOf(NoteNumber, const Piano&);
/// The adjacent naturals of a sharp (one or two), nearest first below.
std::vector<NoteNumber> neighbouringNaturals(NoteNumber sharp, const Piano&);
/// The sharps beside a natural (none, one or two).
std::vector<NoteNumber> neighbouringSharps(NoteNumber natural, const Piano&);
bool hasDamper(NoteNumber, const Piano&);
/// What other pianos have taught of R, else the default of the kind for a colour (bench-practice 2.6): upright 4.9,
/// drop 4.7, grand 4.85, sharps by the arms.
double defaultRatio(const Piano&, KeyColour);

/// Reads a note: a number from 1, or a pitch name in any notation of situation 68 (C4, C#4/Db4, Cb, sub- and
/// superscript, Helmholtz c', key-number names like C40, A49). `middleC` = the octave number of middle C (4).
/// Refuses unknownNote; a name and number that disagree (D52) are refused too.
Outcome<NoteNumber> parseNote(std::string_view, const Piano&, int middleC = 4);
/// "1-88", "20,23,31-40", "all", "all naturals", "all sharps", "naturals 1-44", section names ("bass"), pitch names.
Outcome<std::vector<NoteNumber>> parseNotes(std::string_view, const Piano&);
/// "1-5, 9, 12-14": the shortest writing of a set of notes.
std::string writeNotes(const std::vector<NoteNumber>&);
/// A0, C1, 21: the lowest note, as MIDI, from C0.
Outcome<int> parseLowest(std::string_view);

// --- attributes by name (commands.md): set one from text, list all as text; the book stores just these pairs
struct AttributeRow {
    std::string_view name;
    std::string_view values; // "a|b|c" or a form like "1-88" for documentation
};
const std::vector<AttributeRow>& attributes();
/// Whether this piano has what the attribute speaks of: a grand has no hammer rest rail on brackets and no player, a
/// piano without a player nothing that a player works.
bool concerns(std::string_view attribute, const Piano&);
/// Whether a value of a choice can be met on this kind of action: no grand's damper levers in an upright.
bool possible(std::string_view attribute, std::string_view value, const Piano&);
/// An empty value takes back what was said: the attribute is as customary again.
/// Refuses unknownAttribute, badAttribute (with the allowed values in detail), badSections.
Outcome<void> setAttribute(Piano&, std::string_view name, std::string_view value);
/// Every set-up fact that differs from the preset, as name and value; setting them on a makePiano() gives the piano
/// back. Includes sections ("1-26 Bass,27-52"), last-damper, arms, stock, ratio, gauges.
std::vector<std::pair<std::string, std::string>> attributePairs(const Piano&);

} // namespace hammerline
