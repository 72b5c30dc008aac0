// Every note of a pass as its account of the dip and its stroke: as read, and as the plan is expected to leave it. What
// command line, window and paper show of them is reckoned here, once.
#pragma once

#include "core/plan/plan.h"
#include "core/sheet/pass_view.h"
#include "core/stroke/stroke.h"

namespace hammerline {

struct NoteAction {
    NoteNumber note{};
    DipAccount account;
    Stroke stroke;
    StrokeZones zones;
    /// None without a plan of this pass, and where that leaves the note as it is.
    std::optional<DipAccount> accountAfter;
    std::optional<Stroke> strokeAfter;
};

/// Zones, tables and ratios of one pass, read once for all its notes. Lives no longer than what it was made from.
class ActionReckoning {
public:
    /// `plan`: may be null; one of another pass is passed over.
    ActionReckoning(const PianoRecord&, const PassView&, const Plan*);

    NoteAction at(NoteNumber) const;
    std::vector<NoteAction> all() const;
    const Ratio& ratioOf(NoteNumber) const;
    const Zones& zones() const { return m_zones; }
    /// The pass with the plan's expected values; none without a plan of this pass.
    const std::optional<Pass>& after() const { return m_after; }

private:
    const Piano& m_piano;
    const PassView& m_view;
    Zones m_zones;
    std::optional<Pass> m_after;
    PassTable m_table;
    std::optional<PassTable> m_tableAfter;
    std::vector<bool> m_touched;
};

/// The aftertouch that is reckoned, judged; none where it is not reckoned.
std::optional<Judged> judgedLeft(const DipAccount&);

/// Something that asks to be looked at: the jack does not escape, the aftertouch that is reckoned lies outside its
/// zone, or what was read differs from what is reckoned.
bool standsOut(const NoteAction&);

/// The command's answer with --json; lengths in mm. `after`: the pass as the plan leaves it (ActionReckoning::after),
/// for the drawings of the notes that it touches.
std::string actionJson(const PianoRecord&, const PassView&, std::span<const NoteAction>,
                       const std::optional<Pass>& after = {});

} // namespace hammerline
