// Numbers on parts as they come off, and the check on the way back (the stamped-number slips of old actions).
#pragma once

#include "core/survey/survey.h"

namespace hammerline {

/// Where the mark is written, so that every part of a kind is marked alike and none is lost by sanding or gluing.
enum class MarkPlace : std::uint8_t { top, bassSide, underside };
std::string_view key(MarkPlace);

/// A part that comes off note by note.
struct Numbered {
    std::string_view part;
    char letter; // K 23
    MarkPlace place;
};
std::span<const Numbered> numberedParts();

struct Mark {
    std::string_view part;
    NoteNumber note;
    std::size_t section = 0; // index in sectionsOf
    std::size_t piece = 0;   // of the hammer rest rail
    MarkPlace place{};
    std::string text; // "K 23"
    friend bool operator==(const Mark&, const Mark&) = default;
};
/// All marks of the chosen parts (all that come off when none is named), part by part, from the bass end.
std::vector<Mark> marksFor(const Piano&, std::span<const std::string_view> chosen = {});

/// What is wrong with the numbers of a row of parts, read in the order in which they lie, bass end first.
struct MarkCheck {
    std::vector<int> missing;
    std::vector<int> doubled;
    std::vector<int> foreign;       // no such note, or the part is not fitted there
    std::vector<int> outOfSequence; // the fewest whose removal leaves the rest in order
    bool right() const { return missing.empty() && doubled.empty() && foreign.empty() && outOfSequence.empty(); }
    friend bool operator==(const MarkCheck&, const MarkCheck&) = default;
};
/// "1-20 22 21 23-88": numbers as they lie, doubles kept. Refuses unknownNote.
Outcome<std::vector<int>> parseMarks(std::string_view);
MarkCheck checkMarks(std::span<const int> read, std::string_view part, const Piano&);

} // namespace hammerline
