// The pass as rows of notes and columns of dimensions: a thin reader over the workbench. What a cell looks like is
// reckoned once a change, so that painting only paints.
#pragma once

#include "ui/workbench.h"

#include <QAbstractTableModel>

namespace hammerline {

/// How one cell is shown (look.md 5).
struct CellLook {
    enum class State : std::uint8_t { blank, notFitted, empty, expected, dash, word, number };
    State state = State::empty;
    QString text;
    QString aside; // beside what was typed: what it is judged by, where that is another figure
    int marks = 0; // 0..3
    bool high = false;
    bool undecided = false;
    bool uneven = false;
    bool superseded = false; // earlier readings of this pass lie under it
    bool stale = false;
    bool disputed = false;
    friend bool operator==(const CellLook&, const CellLook&) = default;
};

class MeasureModel : public QAbstractTableModel {
    Q_OBJECT
public:
    enum Role { LookRole = Qt::UserRole, MendFirstRole, SectionStartRole };

    explicit MeasureModel(Workbench&, QObject* parent = nullptr);

    int rowCount(const QModelIndex& parent = {}) const override;
    int columnCount(const QModelIndex& parent = {}) const override;
    QVariant data(const QModelIndex&, int role = Qt::DisplayRole) const override;
    QVariant headerData(int section, Qt::Orientation, int role = Qt::DisplayRole) const override;
    Qt::ItemFlags flags(const QModelIndex&) const override;

    Cell cellAt(const QModelIndex&) const;
    QModelIndex indexOf(Cell) const;
    const CellLook& lookAt(const QModelIndex&) const;
    bool mendFirst(int row) const;
    bool startsSection(int row) const;
    /// A cell that can hold a reading: fitted, and not said to be missing.
    bool canHold(const QModelIndex&) const;
    DimensionId dimensionAt(int column) const { return m_columns[static_cast<std::size_t>(column)]; }
    const Workbench& bench() const { return m_bench; }

private:
    void rebuild();
    void refresh();
    void tell(const std::vector<QModelIndex>& changed);
    void fitColumnsTo(const std::vector<DimensionId>&);
    CellLook reckon(Cell) const;
    std::vector<CellLook> reckonAll();
    QString sentence(Cell) const;

    Workbench& m_bench;
    std::vector<DimensionId> m_columns;
    std::vector<CellLook> m_looks;
    std::vector<bool> m_mendFirst, m_startsSection;
};

} // namespace hammerline

Q_DECLARE_METATYPE(hammerline::CellLook)
