#include "core/piano/dimension.h"

#include "core/piano/word_rows.h"

#include <algorithm>
#include <cctype>

namespace hammerline {
namespace {

using namespace dimension;

constexpr std::int64_t mm(double x) {
    return fromMm(x).nm;
}
constexpr std::int64_t gram(double x) {
    return static_cast<std::int64_t>(x * 1000 + 0.5);
}
constexpr std::int64_t percent(double x) {
    return static_cast<std::int64_t>(x * 1000 + 0.5);
}

constexpr std::array kLostMotionWords = {word::offRail, word::ok};
constexpr std::array kLetOffWords = {word::blocks, word::noLetOff, word::ok};
constexpr std::array kCheckingWords = {word::doesNotCheck, word::ok};
constexpr std::array kStrapWords = {word::ok, word::tight, word::slack, word::torn};
constexpr std::array kDamperStartWords = {word::early, word::right, word::late, word::ok};
constexpr std::array kOkOnly = {word::ok}; // a quick look: this note is right

constexpr std::array<std::string_view, 3> kHeightReferences = {"line", "bed", "slip"};
// How the key is pressed: cloth under it yields to a finger more or less, to a weight always the same.
constexpr std::array<std::string_view, 3> kDipReferences = {"finger", "weight", "spacer"};
constexpr std::array<std::string_view, 2> kDropReferences = {"below-let-off", "string"};
constexpr std::array<std::string_view, 2> kCapstanReferences = {"in-the-wood", "standing-out"};
constexpr std::array<std::string_view, 2> kDamperReferences = {"mm", "percent"};
constexpr std::array<std::string_view, 2> kWeightReferences = {"dampers-up", "dampers-down"};

constexpr Shown kTenths{Unit::mm, 1, 0, 1, false};
constexpr Shown kSignedTenths{Unit::mm, 1, 0, 1, true};
constexpr Shown kHalves{Unit::mm, 1, 0, 5, false};
constexpr Shown kGrams{Unit::gram, 0, 0, 1, false};
constexpr Shown kPercents{Unit::percent, 0, 0, 1, false};

// Ranges: bench-practice 2.3. Uncertainties and seconds: 2.4 (where a tool has no figure, the next simpler one's).
// Key height is the relative one; absolute heights have a range of their own, below.
constexpr std::array kMeasured = {
    Dimension{keyHeight,
              "key-height",
              Kind::length,
              Unit::mm,
              kSignedTenths,
              mm(-8),
              mm(8),
              mm(-2),
              mm(2),
              {mm(0.4), mm(0.12), mm(0.06)},
              {6, 12},
              MeasuredAt::keyFront,
              ReadWhere::everyNote,
              kOkOnly,
              kHeightReferences},
    Dimension{sharpHeight,
              "sharp-height",
              Kind::length,
              Unit::mm,
              kTenths,
              mm(5),
              mm(20),
              mm(10),
              mm(14),
              {mm(0.4), mm(0.2), mm(0.1)},
              {6, 12},
              MeasuredAt::keyFront,
              ReadWhere::everyNote,
              kOkOnly,
              {}},
    Dimension{keyDip,
              "key-dip",
              Kind::length,
              Unit::mm,
              kTenths,
              mm(0),
              mm(20),
              mm(7.5),
              mm(12.5),
              {mm(0.5), mm(0.15), mm(0.08)},
              {10, 20},
              MeasuredAt::keyFront,
              ReadWhere::everyNote,
              kOkOnly,
              kDipReferences},
    Dimension{lostMotion,
              "lost-motion",
              Kind::length,
              Unit::mm,
              kTenths,
              mm(-5),
              mm(10),
              mm(-0.5),
              mm(4),
              {mm(0.5), mm(0.2), mm(0.1)},
              {20, 45},
              MeasuredAt::keyFront,
              ReadWhere::everyNote,
              kLostMotionWords,
              {}},
    Dimension{blow,
              "blow",
              Kind::length,
              Unit::mm,
              kHalves,
              mm(10),
              mm(90),
              mm(38),
              mm(55),
              {mm(0.8), mm(0.4), mm(0.3)},
              {8, 15},
              MeasuredAt::hammer,
              ReadWhere::everyNote,
              kOkOnly,
              {}},
    Dimension{letOff,
              "let-off",
              Kind::length,
              Unit::mm,
              kTenths,
              mm(0),
              mm(40),
              mm(0.4),
              mm(8),
              {mm(0.4), mm(0.25), mm(0.15)},
              {12, 25},
              MeasuredAt::hammer,
              ReadWhere::everyNote,
              kLetOffWords,
              {}},
    Dimension{dimension::drop,
              "drop",
              Kind::length,
              Unit::mm,
              kTenths,
              mm(0),
              mm(15),
              mm(0),
              mm(6),
              {mm(0.6), mm(0.35), mm(0.25)},
              {12, 25},
              MeasuredAt::hammer,
              ReadWhere::everyNote,
              kOkOnly,
              kDropReferences},
    Dimension{aftertouch,
              "aftertouch",
              Kind::length,
              Unit::mm,
              kTenths,
              mm(-3),
              mm(8),
              mm(-1.5),
              mm(3),
              {mm(0.5), mm(0.15), mm(0.1)},
              {25, 60},
              MeasuredAt::keyFront,
              ReadWhere::everyNote,
              kOkOnly,
              {}},
    Dimension{checking,
              "checking",
              Kind::length,
              Unit::mm,
              kHalves,
              mm(0),
              mm(45),
              mm(7),
              mm(26),
              {mm(1.5), mm(1.0), mm(0.8)},
              {10, 20},
              MeasuredAt::hammer,
              ReadWhere::everyNote,
              kCheckingWords,
              {}},
    Dimension{damperStart,
              "damper-start",
              Kind::length,
              Unit::mm,
              kHalves,
              mm(0),
              mm(90),
              mm(8),
              mm(34),
              {mm(2.0), mm(1.2), mm(0.8)},
              {12, 25},
              MeasuredAt::hammer,
              ReadWhere::everyNote,
              kDamperStartWords,
              kDamperReferences},
    Dimension{damperRise,
              "damper-rise",
              Kind::length,
              Unit::mm,
              kTenths,
              mm(0),
              mm(25),
              mm(0),
              mm(14),
              {mm(1.0), mm(1.0), mm(1.0)},
              {5, 10},
              MeasuredAt::other,
              ReadWhere::endsOfSections,
              kOkOnly,
              {}},
    Dimension{halfBlow,
              "half-blow",
              Kind::share,
              Unit::percent,
              kPercents,
              percent(0),
              percent(100),
              percent(25),
              percent(70),
              {percent(3), percent(3), percent(3)},
              {30, 30},
              MeasuredAt::hammer,
              ReadWhere::endsOfRail,
              kOkOnly,
              {}},
    Dimension{strap,
              "strap",
              Kind::length,
              Unit::mm,
              kTenths,
              mm(0),
              mm(20),
              mm(0),
              mm(8),
              {mm(1.0), mm(1.0), mm(1.0)},
              {2, 4},
              MeasuredAt::other,
              ReadWhere::everyNote,
              kStrapWords,
              {}},
    Dimension{playerClearance,
              "player-clearance",
              Kind::length,
              Unit::mm,
              kTenths,
              mm(-2),
              mm(8),
              mm(0.3),
              mm(3),
              {mm(0.4), mm(0.2), mm(0.1)},
              {12, 25},
              MeasuredAt::other,
              ReadWhere::everyNote,
              kOkOnly,
              {}},
    Dimension{capstanReserve,
              "capstan-reserve",
              Kind::length,
              Unit::mm,
              kTenths,
              mm(0),
              mm(60),
              mm(2),
              mm(40),
              {mm(1.0), mm(1.0), mm(1.0)},
              {20, 40},
              MeasuredAt::other,
              ReadWhere::endsOfSections,
              {},
              kCapstanReferences},
    Dimension{downWeight,
              "down-weight",
              Kind::mass,
              Unit::gram,
              kGrams,
              gram(5),
              gram(200),
              gram(35),
              gram(85),
              {gram(3), gram(1.5), gram(1)},
              {30, 60},
              MeasuredAt::keyFront,
              ReadWhere::everyNote,
              kOkOnly,
              kWeightReferences},
    Dimension{upWeight,
              "up-weight",
              Kind::mass,
              Unit::gram,
              kGrams,
              gram(5),
              gram(200),
              gram(8),
              gram(45),
              {gram(4), gram(2), gram(1.5)},
              {25, 50},
              MeasuredAt::keyFront,
              ReadWhere::everyNote,
              kOkOnly,
              kWeightReferences},
    Dimension{sharpProud,
              "sharp-proud",
              Kind::length,
              Unit::mm,
              kTenths,
              mm(-5),
              mm(12),
              mm(0.5),
              mm(5),
              {mm(0.4), mm(0.2), mm(0.1)},
              {6, 12},
              MeasuredAt::keyFront,
              ReadWhere::everyNote,
              kOkOnly,
              {}},
    Dimension{feltLeft,
              "felt-left",
              Kind::length,
              Unit::mm,
              kTenths,
              mm(0),
              mm(25),
              mm(0),
              mm(20),
              {mm(0.5), mm(0.3), mm(0.2)},
              {15, 30},
              MeasuredAt::other,
              ReadWhere::endsOfSections,
              {},
              {}},
};

/// Each row at the place that its id says, so that a new row may stand beside its like.
constexpr auto allDimensions() {
    std::array<Dimension, kMeasured.size() + kWordDimensions.size()> all{};
    for (const Dimension& measured : kMeasured)
        all.at(measured.id.row) = measured;
    for (const Dimension& said : kWordDimensions)
        all.at(said.id.row) = said;
    return all;
}
constexpr auto kDimensions = allDimensions();

constexpr std::array kWords = {
    Word{word::offRail, "off-rail", -2, false},
    Word{word::blocks, "blocks", -3, true},
    Word{word::noLetOff, "no-let-off", -3, true},
    Word{word::doesNotCheck, "does-not-check", 2, false},
    Word{word::ok, "ok", 0, false},
    Word{word::tight, "tight", -2, false},
    Word{word::slack, "slack", 1, false},
    Word{word::torn, "torn", 2, false},
    Word{word::early, "early", -2, false},
    Word{word::right, "right", 0, false},
    Word{word::late, "late", 2, false},
    Word{word::slow, "slow", -2, false},
    Word{word::staysOut, "stays-out", -3, false},
    Word{word::stays, "stays", -3, false},
    Word{word::driftsToBass, "drifts-to-the-bass", -1.5, false},
    Word{word::driftsToTreble, "drifts-to-the-treble", 1.5, false},
    Word{word::rubsNeighbour, "rubs-its-neighbour", 3, false},
    Word{word::towardBass, "toward-the-bass", -1.5, false},
    Word{word::towardTreble, "toward-the-treble", 1.5, false},
    Word{word::topLeansToBass, "top-leans-to-the-bass", -1.5, false},
    Word{word::topLeansToTreble, "top-leans-to-the-treble", 1.5, false},
    Word{word::bassStringOpen, "bass-string-open", -1.5, false},
    Word{word::middleOpen, "middle-open", -1.5, false},
    Word{word::trebleOpen, "treble-open", 1.5, false},
    Word{word::twoOpen, "two-open", 1.5, false},
    Word{word::tooDeep, "too-deep", 1.5, false},
    Word{word::tooShallow, "too-shallow", -2, false},
    Word{word::leverHigh, "high", 1.5, false},
    Word{word::leverLow, "low", -2, false},
    Word{word::weak, "weak", -2, false},
    Word{word::kicks, "kicks", 2, false},
    Word{word::noSpring, "none", -3, false},
    Word{word::sticks, "sticks", -3, false},
    Word{word::loose, "loose", 1.5, false},
    Word{word::leansToBass, "leans-to-the-bass", -1.5, false},
    Word{word::leansToTreble, "leans-to-the-treble", 1.5, false},
    Word{word::rubs, "rubs", 3, false},
    Word{word::earlyByPedal, "early", -1.5, false},
    Word{word::lateByPedal, "late", 1.5, false},
    Word{word::oneStringRings, "one-string-rings", 1.5, false},
    Word{word::leaks, "leaks", 2, false},
    Word{word::touchesNeighbour, "touches-a-neighbour", 2, false},
    Word{word::taps, "taps", -2, false},
    Word{word::lifts, "lifts", 2, false},
    Word{word::tooNearTheEnd, "too-near-the-end", -1.5, false},
    Word{word::tooFarFromTheEnd, "too-far-from-the-end", 1.5, false},
};

/// Other ways a hand types a word.
constexpr std::array kSpellings = {
    std::pair{std::string_view{"off"}, word::offRail},
    std::pair{std::string_view{"off-the-rail"}, word::offRail},
    std::pair{std::string_view{"block"}, word::blocks},
    std::pair{std::string_view{"blocking"}, word::blocks},
    std::pair{std::string_view{"no-letoff"}, word::noLetOff},
    std::pair{std::string_view{"no-check"}, word::doesNotCheck},
    std::pair{std::string_view{"not-checking"}, word::doesNotCheck},
    std::pair{std::string_view{"okay"}, word::ok},
    std::pair{std::string_view{"ok"}, word::right},
    std::pair{std::string_view{"okay"}, word::right},
    std::pair{std::string_view{"returns"}, word::right},
    std::pair{std::string_view{"falls-back"}, word::right},
    std::pair{std::string_view{"straight"}, word::right},
    std::pair{std::string_view{"over-its-strings"}, word::right},
    std::pair{std::string_view{"square"}, word::right},
    std::pair{std::string_view{"all-strings"}, word::right},
    std::pair{std::string_view{"free"}, word::right},
    std::pair{std::string_view{"upright"}, word::right},
    std::pair{std::string_view{"even"}, word::right},
    std::pair{std::string_view{"with-the-rest"}, word::right},
    std::pair{std::string_view{"silent"}, word::right},
    std::pair{std::string_view{"touches"}, word::right},
};

template <typename Rows>
constexpr bool rowsAtTheirPlace(const Rows& rows) {
    for (std::size_t i = 0; i < rows.size(); ++i)
        if (rows[i].id.row != i) return false;
    return true;
}
static_assert(kDimensions.size() == kDimensionCount);
static_assert(rowsAtTheirPlace(kDimensions));
static_assert(rowsAtTheirPlace(kWords));

} // namespace

std::span<const Dimension> dimensions() {
    return kDimensions;
}
const Dimension& row(DimensionId id) {
    return kDimensions.at(id.row);
}
std::string_view key(DimensionId id) {
    return row(id).key;
}

Outcome<DimensionId> findDimension(std::string_view key) {
    const auto found =
        std::find_if(kDimensions.begin(), kDimensions.end(), [&](const Dimension& d) { return d.key == key; });
    if (found == kDimensions.end()) return refuse(RefusalCode::unknownDimension, std::string(key));
    return found->id;
}

std::span<const Word> readingWords() {
    return kWords;
}
const Word& row(WordId id) {
    return kWords.at(id.row);
}

std::string wordsAllowed(DimensionId id) {
    std::string out;
    for (const WordId each : row(id).words)
        out += (out.empty() ? "" : "|") + std::string(row(each).key);
    return out;
}

Outcome<WordId> findWord(std::string_view typed, DimensionId id) {
    std::string text;
    for (const char c : typed)
        text += c == ' ' || c == '_' ? '-' : static_cast<char>(std::tolower(static_cast<unsigned char>(c)));
    const auto& allowed = row(id).words; // one key may stand for two words: a damper early by the key, by the pedal
    for (const WordId each : allowed)
        if (row(each).key == text) return each;
    for (const auto& [spelling, each] : kSpellings)
        if (spelling == text && std::ranges::find(allowed, each) != allowed.end()) return each;
    return refuse(RefusalCode::unknownWord, std::string(typed), wordsAllowed(id));
}

namespace {

/// Key colour, kind of action and fittings that a dimension needs; a note outside has not got it (computation 1).
bool fittedByKind(DimensionId id, const Piano& piano) {
    if (id == dimension::drop) return !piano.vertical();
    if (id == lostMotion || id == strap || id == halfBlow) return piano.vertical();
    if (id == playerClearance) return piano.hasPlayer();
    const bool ofAGrand = id == jackPosition || id == leverHeight || id == repetitionSpring || id == frameBed;
    if (ofAGrand) return !piano.vertical();
    return true;
}

} // namespace

bool fitted(DimensionId id, NoteNumber note, const Piano& piano) {
    if (!piano.contains(note) || !fittedByKind(id, piano)) return false;
    const bool sharp = colourOf(note, piano) == KeyColour::sharp;
    if (id == keyHeight) return !sharp;
    if (id == sharpHeight || id == sharpProud) return sharp;
    const bool ofADamper = id == damperStart || id == damperRise || id == damperLine || id == damperSeat;
    if (ofADamper) return hasDamper(note, piano);
    return true;
}

bool fittedAnywhere(DimensionId id, const Piano& piano) {
    for (int n = 1; n <= piano.notes; ++n)
        if (fitted(id, NoteNumber{n}, piano)) return true;
    return false;
}

std::int64_t uncertaintyOf(DimensionId id, const Piano& piano) {
    const auto taught = piano.taught.uncertainties.find(std::string(key(id)));
    if (taught != piano.taught.uncertainties.end()) return fromTrade(taught->second.value, row(id).kind);
    const auto found =
        std::ranges::find(piano.gauges, key(id), [](const auto& each) { return std::string_view(each.first); });
    auto gauge = Gauge::simple; // the default of computation 3: the better simple tool
    if (found != piano.gauges.end())
        gauge = found->second == "rule" ? Gauge::rule : found->second == "good" ? Gauge::good : Gauge::simple;
    return row(id).u[static_cast<std::size_t>(gauge)];
}

} // namespace hammerline
