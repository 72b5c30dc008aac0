// Parts by notes: how each part stands at each note. Nothing is asked of the findings while painting.
#pragma once

#include "core/survey/standing.h"
#include "ui/stations/station.h"

#include <QAbstractTableModel>

namespace hammerline {

class SurveyModel : public QAbstractTableModel {
    Q_OBJECT
public:
    enum class Shown : std::uint8_t { all, open, notLookedAt, blocking };
    /// What a place shows; blocks: to do, and to be mended before the note is regulated.
    enum class Place : std::uint8_t { notFitted, notLookedAt, sound, watch, toDo, blocks, mended };

    explicit SurveyModel(Workbench&, QObject* parent = nullptr);

    void show(Shown);
    int rowCount(const QModelIndex& parent = {}) const override;
    int columnCount(const QModelIndex& parent = {}) const override;
    /// AccessibleTextRole and ToolTipRole: the sentence of the place.
    QVariant data(const QModelIndex&, int role) const override;
    QVariant headerData(int section, Qt::Orientation, int role) const override;

    const Part& part(int row) const { return *m_rows[static_cast<std::size_t>(row)]; }
    int rowOf(std::string_view part) const;
    Place place(int row, int column) const;
    bool blockedNote(NoteNumber) const;
    /// Whether anything of a note is to do, else whether anything was mended.
    std::optional<StripMarks::KeyMark> keyMark(NoteNumber) const;
    const Standing* standing() const { return m_standing ? &*m_standing : nullptr; }
    int partsFitted() const { return m_fitted; }

    struct Counts {
        int blocked = 0, toDo = 0, watch = 0, mended = 0, notLookedAt = 0;
    };
    const Counts& counts() const { return m_counts; }

private:
    void rebuild();
    void reckon();
    Place placeOf(const Part&, NoteNumber) const;
    bool wanted(const Part&) const;

    Workbench& m_bench;
    Shown m_shown = Shown::all;
    int m_fitted = 0;
    std::vector<const Part*> m_rows;
    std::vector<Finding> m_findings;
    std::optional<Standing> m_standing;
    std::vector<std::vector<Place>> m_places; // by row, by note
    std::vector<bool> m_blocked;              // by note
    std::vector<std::optional<StripMarks::KeyMark>> m_keyMarks;
    Counts m_counts;
};

} // namespace hammerline
