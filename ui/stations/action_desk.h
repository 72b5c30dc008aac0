// What the wide note shows, reckoned when first asked for: account and stroke of every note of the pass, after the plan
// in force, and with what a person supposes at the current note. Nothing of it is stored.
#pragma once

#include "core/plan/after_plan.h"
#include "core/sheet/note_action.h"
#include "ui/workbench.h"

namespace hammerline {

class ActionDesk : public QObject {
    Q_OBJECT
public:
    explicit ActionDesk(Workbench&, QObject* parent = nullptr);

    Workbench& bench() { return m_bench; }
    const Workbench& bench() const { return m_bench; }
    /// False without a piano or a pass: nothing else may be asked then.
    bool ready() const;
    const PassView& view() const;
    const std::vector<NoteAction>& all() const;
    /// The current note: as read, and after the plan or what is supposed.
    const NoteAction& note() const;
    /// The current note's readings and what stands in their place, in mm; none where neither read nor supposed.
    std::optional<double> readAt(DimensionId) const;
    std::optional<double> afterAt(DimensionId) const;

    /// Supposes a distance at the current note, mm; leaving the note forgets it.
    void suppose(DimensionId, double mm);
    void forget(DimensionId);
    void forgetAll();
    std::optional<double> supposed(DimensionId) const;
    bool supposes() const { return !m_supposed.empty(); }
    /// The height of the current note's key, natural or sharp. Supposed another, punchings under the balance felt are
    /// meant: dip and lost motion (a grand's blow) follow by the key lever.
    DimensionId heightId() const;
    double heightAim() const;
    /// A distance that is not supposed itself and follows height or rail, mm; none where it stays.
    std::optional<double> movedAlong(DimensionId) const;
    /// A vertical's rest rail nearer the strings by so many mm at the crowns, all notes; the capstans follow so that no
    /// lost motion is added, or stay as they are.
    void supposeRail(double mm);
    void setCapstansFollow(bool);
    double rail() const { return m_rail; }
    bool capstansFollow() const { return m_capstansFollow; }
    /// Notes whose reckoned aftertouch lies within its zone: as read, and with what is supposed.
    std::pair<int, int> notesWithin() const;
    const Plan* plan() const;
    /// The pass as the plan, or what is supposed, would leave it.
    const Pass& passAfter() const;
    /// Of the let-off at the current note, mm from the string.
    std::optional<StrokeBand> letOffZone() const;

Q_SIGNALS:
    void changed();

private:
    void reckon() const;
    void reckonRead() const;
    void stale();
    std::vector<Supposed> supposedCells() const;
    const NoteAction& readOf(NoteNumber) const;

    Workbench& m_bench;
    std::map<DimensionId, double> m_supposed;
    double m_rail = 0;
    bool m_capstansFollow = false;
    mutable bool m_readDue = true; // by the record or the plan; m_due: by a supposition as well
    mutable bool m_due = true;
    mutable std::optional<Plan> m_ownPlan; // where the window has none yet
    mutable std::vector<NoteAction> m_read, m_all;
    mutable std::optional<Pass> m_planned, m_supposing;
};

} // namespace hammerline
