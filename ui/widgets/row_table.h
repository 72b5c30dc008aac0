// A list of rows as the stations show them: text, note with its key, plate of a deviation, rule, bars, box to tick.
// Painted from the look; complete by keyboard; every row is a sentence for a screen reader.
#pragma once

#include "core/piano/piano.h"
#include "ui/widgets/look.h"
#include "ui/words/sign.h"

#include <QAbstractTableModel>
#include <QTableView>

#include <functional>

namespace hammerline {

/// What a cell holds beside its text.
struct RowCell {
    enum class Kind : std::uint8_t { plain, note, plate, rule, bars, tick, turn, state, phrase };
    using Sign = words::Sign;

    RowCell(QString text_ = {}, bool bold_ = false) : text(std::move(text_)), bold(bold_) {}
    QString text;
    bool bold = false;
    bool italic = false;
    bool soft = false;  // secondary ink
    QString joint, aim; // phrase: "OUT" "to" "2.9", one run; direction and aim are never cut and never set smaller
    QString below;      // phrase and plate: a second, small line
    Kind kind = Kind::plain;
    Text size = Text::body;
    bool sharp = false;       // note: its key; the text is "33 F3"
    int marks = 0;            // plate and rule: -3..3, low and high
    double value = 0;         // rule: the deviation; bars: before
    double now = 0, most = 1; // bars
    int part = 0;             // tick and state: 0 open, 1 begun, 2 done, 3 mend first; state: 4 waits, 5 to be read
    Sign sign = Sign::none;
};

/// A cell in secondary ink.
inline RowCell soft(const QString& text) {
    RowCell cell(text);
    cell.soft = true;
    return cell;
}

struct ListRow {
    std::vector<RowCell> cells;
    QString heading, headingRight; // a row over the whole width instead of cells
    QString sentence;              // spoken; empty: the cells one after another
    double height = 0;             // units; 0: the table's
    int key = -1;                  // whatever the station wants to find it by
};

struct RowColumn {
    QString title;
    double width = 10; // units, as wide as it likes to be; 0: takes the rest
    Qt::Alignment align = Qt::AlignLeft;
    bool whole = false; // as wide as its texts need, always: the other columns give way
};

class RowModel : public QAbstractTableModel {
    Q_OBJECT
public:
    using QAbstractTableModel::QAbstractTableModel;
    void setColumns(std::vector<RowColumn>);
    void setRows(std::vector<ListRow>);
    const std::vector<RowColumn>& columns() const { return m_columns; }
    const ListRow& row(int i) const { return m_rows[static_cast<std::size_t>(i)]; }
    const std::vector<ListRow>& rows() const { return m_rows; }

    int rowCount(const QModelIndex& parent = {}) const override;
    int columnCount(const QModelIndex& parent = {}) const override;
    QVariant data(const QModelIndex&, int role) const override;
    QVariant headerData(int section, Qt::Orientation, int role) const override;
    Qt::ItemFlags flags(const QModelIndex&) const override;

private:
    QString cellText(const ListRow&, std::size_t column) const;
    QString rowSentence(const ListRow&) const;
    std::vector<RowColumn> m_columns;
    std::vector<ListRow> m_rows;
};

class RowTable : public QTableView {
    Q_OBJECT
public:
    RowTable(const QString& accessibleName, std::vector<RowColumn>, double rowHeight, QWidget* parent = nullptr);
    /// Keeps the current row by its key where it is still there.
    void setRows(std::vector<ListRow>);
    const std::vector<ListRow>& rows() const { return m_model.rows(); }
    /// Key of the current row; -1: none.
    int currentKey() const;
    /// Key of the first row that can be current; -1: none.
    int firstKey() const;
    /// Moved by the program, so that `moved` is silent: no row where the key is none.
    void setCurrentKey(int key);
    /// The row `by` rows further that can be current, without a word; the row stays where there is none.
    void stepRow(int by);
    /// Sees a key first; true: used.
    void setKeys(std::function<bool(QKeyEvent*)> keys) { m_keys = std::move(keys); }

Q_SIGNALS:
    void moved(int key);      // a person made another row the current one
    void chosen(int key);     // Enter or a double click
    void boxClicked(int key); // the box to tick of a row

protected:
    void keyPressEvent(QKeyEvent*) override;
    void mouseReleaseEvent(QMouseEvent*) override;
    void resizeEvent(QResizeEvent*) override;
    void currentChanged(const QModelIndex&, const QModelIndex&) override;
    void changeEvent(QEvent*) override;

private:
    void layOut();
    void layOutOnce();
    std::vector<int> needs() const;
    std::vector<int> widths() const;
    bool selectKey(int key);
    void selectFirst();
    RowModel m_model;
    double m_rowHeight;
    std::function<bool(QKeyEvent*)> m_keys;
    bool m_filling = false, m_layingOut = false;
};

/// A panel of a station: a head with a title and a remark, and what lies under it.
class Panel : public QWidget {
    Q_OBJECT
public:
    Panel(const QString& title, QWidget* body, QWidget* parent = nullptr);
    void setTitle(const QString&, const QString& remark = {});

protected:
    void paintEvent(QPaintEvent*) override;

private:
    QString m_title, m_remark;
};

} // namespace hammerline
