// The account of the dip: where the way of a key goes, from its whole dip to the aftertouch that is left. It is the
// relation of core/judge/escapement.h read as a bill:
//     A = D - M + O/R - B/R
// D key dip, M lost motion, A aftertouch, mm at the key's front; O let-off, B blow, mm at the hammer, to the string;
// R = hammer travel : key-front travel. Dip gives, lost motion takes, the last of the blow (let-off) need not be driven
// and gives back, the blow takes; what is left is aftertouch.
#pragma once

#include "core/judge/escapement.h"
#include "core/judge/judge.h"

namespace hammerline {

/// One line of the account. `reading` and `aim` in mm where they are measured, `share` and `aimShare` in mm of the
/// key's front, with their sign: what the line gives or takes.
struct DipTerm {
    DimensionId dimension{};
    std::optional<double> reading;
    std::optional<double> share;
    std::optional<double> aim;
    std::optional<double> aimShare;
};

/// What a term took or gave against its aim, mm at the key's front; negative: aftertouch lost.
struct DipDifference {
    DimensionId dimension{};
    double mm = 0;
};

enum class DipAgreement : std::uint8_t {
    unread,    // no aftertouch to compare with, or nothing computed
    customary, // the ratio is not this piano's: nothing is said
    agrees,
    differs,
};

/// The one line that was not read, as the others and the aftertouch read at the note tell it; mm where it is measured.
struct DipInferred {
    DimensionId dimension{};
    double value = 0;
    double uncertainty = 0; // standard
};

struct DipAccount {
    NoteNumber note{};
    Ratio ratio;
    /// Dip, lost motion, let-off, blow: in this order no running sum of an action that plays goes below zero. A grand
    /// has no line of lost motion.
    std::vector<DipTerm> terms;
    /// Aftertouch as computed from the four, and its standard uncertainty, mm. None while one of them is not read.
    std::optional<double> computed;
    std::optional<double> uncertainty;
    /// Aftertouch as read at the note, mm.
    std::optional<double> read;
    std::optional<Zone> zone;
    DipAgreement agreement = DipAgreement::unread;
    /// Aftertouch that the aims would leave, mm.
    std::optional<double> atAims;
    /// Where just one of the lines is not read and the aftertouch is. With a customary ratio nothing is inferred.
    std::optional<DipInferred> inferred;
    /// Against the aims, the largest first; only what counts: 0.15 mm and more.
    std::vector<DipDifference> against;
};

/// The account of one note from the pass's own readings. `ratio` is that of the note's colour, `zones` may be silent on
/// any dimension. A hammer off its rail has lost motion 0 and a blow that is short already. Bounds (the note blocks, or
/// has no let-off) are no readings: their lines stay empty. No errors: what is not read is absent.
DipAccount dipAccount(const Piano&, const PassTable&, const Zones&, const Ratio&, NoteNumber);

} // namespace hammerline
