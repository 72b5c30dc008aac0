// Patterns of the hammers: felt, rest rail, blow, escapement (computation 14).
#include "core/causes/rule.h"

#include <algorithm>
#include <cmath>

namespace hammerline {
namespace {

constexpr std::size_t kLeastNotes = 8;    // fewer readings show no pattern
constexpr double kFiledBlow = 0.8;        // mm, median excess of the blow
constexpr double kFiledLetOff = 0.6;      // mm, median excess of the let-off
constexpr double kFiledDifference = 0.35; // of the amount
constexpr double kLongBlow = 0.8;         // mm, median excess
constexpr double kRailTrend = 1.5;        // mm of blow from end to end
constexpr double kLostMotionTrend = 1.0;  // mm of lost motion from end to end
constexpr std::size_t kNotesThatCannotEscape = 3;

double medianExcess(const KeyboardProfile& profile) {
    return medianOf(profile.excesses());
}

/// Weight of a median of n readings by its standard error.
double precisionOf(const KeyboardProfile& profile) {
    const double spread = std::hypot(profile.u, spreadOf(profile.excesses()));
    return static_cast<double>(profile.size()) / (spread * spread);
}

/// The amount the crowns lost: precision-weighted mean of the median excesses of blow and let-off; none where they
/// differ too much or the aftertouch changed with them.
std::optional<double> filedAmount(const Keyboard& keyboard) {
    const KeyboardProfile& blow = keyboard.of(dimension::blow);
    const KeyboardProfile& letOff = keyboard.of(dimension::letOff);
    if (blow.size() < kLeastNotes || letOff.size() < kLeastNotes) return {};
    const double b = medianExcess(blow), o = medianExcess(letOff);
    if (b <= kFiledBlow || o <= kFiledLetOff) return {};
    const double wb = precisionOf(blow), wo = precisionOf(letOff);
    const double amount = (wb * b + wo * o) / (wb + wo);
    if (std::abs(b - o) >= kFiledDifference * std::max(b, o)) return {};
    return amount;
}

/// Blow beyond what a common loss of felt explains, by note.
KeyboardProfile blowBeyondFelt(const Keyboard& keyboard) {
    KeyboardProfile blow = keyboard.of(dimension::blow);
    if (const auto filed = filedAmount(keyboard))
        for (ProfilePoint& point : blow.points) {
            point.excess -= *filed;
            point.value -= *filed;
        }
    return blow;
}

std::vector<int> notesIn(NoteRange range) {
    std::vector<int> notes;
    for (int note = range.first; note <= range.last; ++note)
        notes.push_back(note);
    return notes;
}

const std::vector<int>& bracketsOf(const Piano& piano, std::size_t piece) {
    return piano.brackets.at(std::min(piece, piano.brackets.size() - 1));
}

std::map<int, double> padsFor(const Piano& piano, double blowExcess) {
    std::map<int, double> pads;
    for (const auto& piece : piano.brackets)
        for (const int bracket : piece)
            pads[bracket] = blowExcess / piano.railFactor;
    return pads;
}

/// The blow of one piece of the rest rail: its level and its straight trend.
struct Piece {
    NoteRange range;
    std::vector<int> brackets;
    StraightLine excess;
    double level = 0;
    double tilt = 0; // from the first to the last note
    bool read = false;
};

std::vector<Piece> piecesOf(const Piano& piano, const KeyboardProfile& profile) {
    std::vector<Piece> pieces;
    for (std::size_t i = 0; i < piano.restRail.size(); ++i) {
        Piece piece{piano.restRail[i], bracketsOf(piano, i), {}, 0, 0, false};
        std::vector<double> x, y;
        for (const ProfilePoint& point : profile.points)
            if (piece.range.contains(NoteNumber{point.note})) {
                x.push_back(point.note);
                y.push_back(point.excess);
            }
        piece.read = x.size() >= kLeastNotes;
        if (piece.read) {
            piece.excess = robustLine(x, y);
            piece.level = medianOf(y);
            piece.tilt = piece.excess.slope * (piece.range.last - piece.range.first);
            const double scatter = spreadOf(y) / std::sqrt(static_cast<double>(y.size()));
            if (std::abs(piece.tilt) < 8 * scatter) piece.tilt = 0; // not shown against the scatter
        }
        pieces.push_back(piece);
    }
    return pieces;
}

Match railMatch(const Piano& piano, const Piece& piece) {
    Match match;
    match.notes = notesIn(piece.range);
    double largest = 0;
    for (const int bracket : piece.brackets) {
        const double excess = piece.tilt == 0 ? piece.level : piece.excess(bracket);
        match.amounts[bracket] = excess / piano.railFactor;
        if (std::abs(match.amounts[bracket]) > std::abs(largest)) largest = match.amounts[bracket];
    }
    match.amount = largest;
    match.only = {dimension::blow};
    return match;
}

/// The action does not stand seated at one end: lost motion trends where the blow does not.
std::vector<Match> unseatedEnd(const Keyboard& keyboard) {
    const KeyboardProfile& lost = keyboard.of(dimension::lostMotion);
    if (lost.size() < kLeastNotes) return {};
    Piano whole = keyboard.piano();
    whole.restRail = {{1, whole.notes}};
    whole.brackets = {{1, whole.notes}};
    const Piece piece = piecesOf(whole, lost).front();
    if (std::abs(piece.tilt) < kLostMotionTrend) return {};
    Match match;
    match.notes = notesIn(piece.range);
    match.remedy = "seat-action";
    match.only = {dimension::lostMotion};
    return {match};
}

} // namespace

std::vector<Match> hammersFiled(const Keyboard& keyboard) {
    const auto amount = filedAmount(keyboard);
    if (!amount) return {};
    const KeyboardProfile& after = keyboard.of(dimension::aftertouch);
    // filing leaves the aftertouch as it was: B and O grew together (section 7)
    if (after.size() >= kLeastNotes && std::abs(medianExcess(after)) > std::max(0.6, after.halfZone() * 1.5)) return {};
    const KeyboardProfile& blow = keyboard.of(dimension::blow);
    Match match;
    for (const ProfilePoint& point : blow.points)
        match.notes.push_back(point.note);
    match.amount = amount;
    const double long_ = medianExcess(blow);
    std::vector<double> limits;
    for (const ProfilePoint& point : blow.points)
        limits.push_back(point.highSide);
    const double R = keyboard.ratio[0];
    // keeping the blow costs f/R of aftertouch once the let-off is back at its aim
    const bool aftertouchAllows = after.size() < kLeastNotes || medianExcess(after) - *amount / R > -after.halfZone();
    if (long_ <= medianOf(limits) && aftertouchAllows) {
        match.remedy = "keep-blow";
    } else {
        match.remedy = "restore-blow";
        if (keyboard.piano().vertical()) match.amounts = padsFor(keyboard.piano(), *amount);
    }
    return {match};
}

std::vector<Match> crushedRestCushions(const Keyboard& keyboard) {
    const Piano& piano = keyboard.piano();
    const KeyboardProfile blow = blowBeyondFelt(keyboard);
    if (!piano.vertical() || blow.size() < kLeastNotes) return {};
    const double excess = medianExcess(blow);
    if (excess <= kLongBlow) return {};
    for (const Piece& piece : piecesOf(piano, blow))
        if (piece.read && (piece.tilt != 0 || std::abs(piece.level - excess) > kRailTrend / 2)) return {};
    Match match;
    for (const ProfilePoint& point : blow.points)
        match.notes.push_back(point.note);
    match.amounts = padsFor(piano, excess);
    match.amount = excess / piano.railFactor;
    return {match};
}

std::vector<Match> railEndOrPiece(const Keyboard& keyboard) {
    const Piano& piano = keyboard.piano();
    if (!piano.vertical()) return {};
    const KeyboardProfile blow = blowBeyondFelt(keyboard);
    const std::vector<Piece> pieces = piecesOf(piano, blow);
    double least = 0;
    bool any = false;
    for (const Piece& piece : pieces)
        if (piece.read && (!any || std::abs(piece.level) < std::abs(least))) {
            least = piece.level;
            any = true;
        }
    std::vector<Match> matches;
    for (const Piece& piece : pieces) {
        if (!piece.read) continue;
        const bool stepped = pieces.size() > 1 && std::abs(piece.level - least) > kRailTrend;
        if (stepped || std::abs(piece.tilt) > kRailTrend) matches.push_back(railMatch(piano, piece));
    }
    if (matches.empty()) return unseatedEnd(keyboard);
    return matches;
}

std::vector<Match> blowTooShort(const Keyboard& keyboard) {
    const Piano& piano = keyboard.piano();
    const KeyboardProfile& after = keyboard.of(dimension::aftertouch);
    const KeyboardProfile& blow = keyboard.of(dimension::blow);
    const KeyboardProfile& dampers = keyboard.of(dimension::damperStart);
    if (!piano.vertical() || after.size() < kLeastNotes) return {};
    std::vector<double> limits;
    for (const ProfilePoint& point : after.points)
        limits.push_back(point.highSide);
    const double tooMuch = medianExcess(after);
    if (tooMuch <= medianOf(limits)) return {};
    const bool shortBlow = blow.size() >= kLeastNotes && medianExcess(blow) < -kLongBlow;
    const std::size_t early = keyboard.notesWith(dimension::damperStart, word::early).size();
    const bool earlyDampers =
        (dampers.size() >= kLeastNotes && medianExcess(dampers) < -dampers.halfZone()) || early * 2 > after.size();
    if (!shortBlow && !(blow.empty() && earlyDampers)) return {};
    Match match;
    for (const ProfilePoint& point : after.points)
        match.notes.push_back(point.note);
    match.amount = tooMuch * keyboard.ratio[0];
    if (!blow.empty() && -medianExcess(blow) < *match.amount) match.beside = -medianExcess(blow);
    return {match};
}

std::vector<Match> jackCannotEscape(const Keyboard& keyboard) {
    const KeyboardProfile& after = keyboard.of(dimension::aftertouch);
    Match match;
    match.notes = keyboard.notesWith(dimension::letOff, word::noLetOff);
    for (const ProfilePoint& point : after.points)
        if (point.value < -after.u) match.notes.push_back(point.note);
    std::sort(match.notes.begin(), match.notes.end());
    match.notes.erase(std::unique(match.notes.begin(), match.notes.end()), match.notes.end());
    if (match.notes.size() <= kNotesThatCannotEscape) return {};
    // the dip that brings the aftertouch to its low limit, all else as it is (section 6)
    const KeyboardProfile& dip = keyboard.of(dimension::keyDip);
    std::vector<double> needed;
    for (const ProfilePoint& point : after.points) {
        if (point.value >= -after.u) continue;
        for (const ProfilePoint& d : dip.points)
            if (d.note == point.note) {
                match.amounts[point.note] = d.value - point.excess - point.lowSide;
                needed.push_back(match.amounts[point.note]);
            }
    }
    if (!needed.empty()) match.amount = medianOf(needed);
    return {match};
}

} // namespace hammerline
