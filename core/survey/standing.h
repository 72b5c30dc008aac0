// How every part stands at every note, reckoned once from the findings: the newer word counts, of a note or of the
// whole piano. Holds pointers into the findings it was made from.
#pragma once

#include "core/survey/survey.h"

namespace hammerline {

class Standing {
public:
    Standing(std::span<const Finding>, const Piano&);

    /// None: not looked at (never sound), or not fitted.
    const Finding* at(const Part&, NoteNumber) const;
    FindingState state(const Part&, NoteNumber) const;
    /// More than a tenth of the known ones are to do.
    bool overTenth(const Part&) const;
    bool blocks(const Finding&) const;
    /// The open must-do-first findings at a note, one a part: the note's own, else one of its section, set or piano.
    std::vector<Finding> blockersOf(NoteNumber) const;
    /// The damper felt known to stand at a note; it is asked, never assumed. Null: not known.
    const Part* damperFeltAt(NoteNumber) const;
    const Piano& piano() const { return m_piano; }

private:
    struct OfPart {
        std::vector<const Finding*> byNote; // by note - 1
        bool overTenth = false;
    };
    const OfPart& of(const Part& part) const { return m_parts[static_cast<std::size_t>(part.number - 1)]; }
    void put(const Part&, NoteNumber, const Finding&);
    const Finding* blockerOf(const Part&, NoteNumber) const;

    Piano m_piano;
    std::vector<OfPart> m_parts;
};

/// Which piece of a rail a section-wise part belongs to at a note: the rest rail has pieces of its own.
std::size_t pieceOf(const Part&, NoteNumber, const Piano&);
/// clip, bichord, flat, split: empty where the part is no damper felt.
std::string_view damperFeltSize(const Part&);

} // namespace hammerline
