// What a person wrote of the piano, a pass, a note or a part: remarks, advice that came back, decisions, visits due.
#pragma once

#include "core/history/identity.h"
#include "core/piano/piano.h"

namespace hammerline {

struct PianoRecord;

enum class RemarkKind : std::uint8_t { remark, advice, decision, visit };
std::string_view key(RemarkKind);
std::optional<RemarkKind> parseRemarkKind(std::string_view);

/// What it is about; nothing said: the piano as a whole. A finding is a part (and its fault) at a note or everywhere.
struct About {
    std::optional<int> pass; // number
    std::optional<NoteNumber> note;
    std::string part, fault;
    friend bool operator==(const About&, const About&) = default;
};

struct Remark {
    RemarkKind kind = RemarkKind::remark;
    About about;
    std::string text;
    std::string who;      // may be empty
    std::string on;       // YYYY-MM-DD: the day it was said; of a visit the day it is due
    std::string accepted; // of advice: yes, no or not decided (empty)
    std::int64_t order = 0, at = 0;
    std::int64_t saidIn = 0; // its name in this book (act and number there); never exported
    int item = 0;
};
/// All but the names of the book and the time of storing.
bool sayTheSame(const Remark&, const Remark&);

/// Several lines are allowed: control characters but line ends are refused, and more than 4,000 characters.
Outcome<std::string> readRemarkText(std::string_view typed);
/// A day of the calendar as YYYY-MM-DD. Refuses badDate.
Outcome<std::string> readDay(std::string_view typed);
/// Checks that note, pass, part and fault are there on this piano. Refuses unknownNote, noSuchPass, unknownPart,
/// notFitted, unknownFault.
Outcome<void> checkAbout(const About&, const PianoRecord&);

} // namespace hammerline
