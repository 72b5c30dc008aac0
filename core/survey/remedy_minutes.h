// How long a remedy takes: not one figure a part, for a part is eased in a minute and renewed in ten.
#pragma once

#include "core/survey/survey.h"

namespace hammerline {

enum class Hand : std::uint8_t { practised, beginner };

/// What a remedy is counted by: notes (also pins, keys, screws), sections, pieces of a rail, all centre pins of the
/// action, or once.
enum class RemedyPer : std::uint8_t { note, section, piece, pin, once };

/// Minutes, practised and beginner: of one alone, of each in a set, and once for the set (`onceASection`: once for each
/// section that is touched). Zero: not given.
struct RemedyMinutes {
    std::string_view part, remedy;
    RemedyPer per;
    std::array<double, 2> alone, inSet, once;
    bool onceASection = false;
};
std::span<const RemedyMinutes> remedyMinutes();

/// Minutes of the remedy at these notes: once and n times each in a set, where it is a set or more than eight; else n
/// times one alone. Remedies of any part (clean, ease, tighten, replace, replace-set) have figures of their own where
/// the part gives none; left and referred ones take none. Drying is waiting, not work.
double minutesOfRemedy(const Part&, std::string_view remedy, std::span<const NoteNumber>, const Piano&, Hand,
                       bool wholeSet);

/// Centres of the whole action: hammer, wippen and jack at every note, a damper lever up to the last damper (88 x 3 +
/// n). A grand has a repetition lever besides, and two centres to a damper (common practice, no source).
int centrePinsOf(const Piano&);

} // namespace hammerline
