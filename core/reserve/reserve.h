// How much is left: what a note's screws, papers and felt still allow, as a lower bound in rounds of this kind of work.
// Nothing is added up to years, and what nobody read, said or did stays unknown.
#pragma once

#include "core/history/record.h"

namespace hammerline {

enum class ReserveOf : std::uint8_t { capstanThread, hammerFelt, frontPaper, balanceCard, letOffThread };
std::string_view key(ReserveOf);
inline constexpr std::array kReserves = {ReserveOf::capstanThread, ReserveOf::hammerFelt, ReserveOf::frontPaper,
                                         ReserveOf::balanceCard, ReserveOf::letOffThread};

/// What the figure rests on.
enum class ReserveFrom : std::uint8_t { nothing, reading, setUp, work, survey };
std::string_view key(ReserveFrom);

/// `left`: mm, of let-off thread turns; at least so much beyond the limit, never negative. `rounds` = floor(left /
/// perRound); none where nothing tells.
struct Reserve {
    ReserveOf of{};
    NoteNumber note{};
    ReserveFrom from = ReserveFrom::nothing;
    std::optional<double> left;
    double perRound = 0;
    std::optional<int> rounds;
    bool turns = false;                // the unit of left and perRound: turns, else mm
    std::optional<DimensionId> toRead; // unknown, and this reading would tell
};

/// What one round takes where this piano's own work at the note tells of no more.
struct CustomaryRound {
    ReserveOf of;
    double amount;
    std::string_view source;
};
const CustomaryRound& customaryRound(ReserveOf);

/// Of one note, in the order of kReserves; what its action has not is left out.
///   capstan thread   reading (else the set-up's) less what was turned up since, less the zone's low limit. A turn
///   lifts
///                    by the first guess of its effect at the key's front over F/C, and one standard deviation more.
///                    A round: from limit to aim of the zone, or the most that one took here.
///   hammer felt      reading less what was filed since; the lesser of what lies over the zone's low limit and what is
///                    left of the third that may come off in all.
///   papers, card     what recorded work has put in on the whole, as it can be taken out again; what lay there before
///                    was not counted.
///   let-off thread   two turns either way where the survey found the screw sound, less what was turned since.
/// Work "to the aim" without an amount counts as one round. No errors: what is not known is absent.
std::vector<Reserve> reservesAt(const PianoRecord&, const Zones&, NoteNumber);
/// Of each kind the note with the least, the lowest such note, among so many that are known; of kinds that nothing
/// tells of, an unknown one.
struct LeastReserve {
    Reserve reserve;
    int known = 0;
};
std::vector<LeastReserve> leastReserves(const PianoRecord&, const Zones&);

} // namespace hammerline
