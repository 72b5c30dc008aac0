// Entry at the bench: one reading fills the window, to be read at arm's length with one hand on a gauge. Digits and one
// key a reading; everything else is one key while nothing is typed. It enters through the same acts as the grid.
#pragma once

#include "ui/stations/measure_order.h"
#include "ui/stations/measure_understanding.h"
#include "ui/stations/station.h"

#include <QPainter>

namespace hammerline {

class BenchField;
class HintBar;
class KeyboardStrip;
struct Look;

class BenchEntry : public QWidget {
    Q_OBJECT
public:
    explicit BenchEntry(Workbench&, QWidget* parent = nullptr);

    void setOrder(const EntryOrder&);
    const EntryOrder& order() const { return m_order; }
    /// Takes the focus, at the current cell or the nearest one of the order.
    void arrive();
    /// Stores what is typed. False: a question or refusal stands at the field.
    bool commit();
    /// Opens the field with this text, as if typed.
    void type(const QString&);

    BenchField& field() const { return *m_field; }
    const Understanding& meaning() const { return m_meaning; }
    /// A doubtful or refused text was to be stored, and waits for an answer.
    bool asking() const { return m_asking; }
    bool repeating() const { return m_repeat; }
    std::optional<Cell> last() const { return m_last; }
    std::optional<Cell> next() const { return m_walk.step(m_bench.cell(), 1); }
    /// A sentence that stands at the field until the next key.
    void say(const QString&);
    /// Keys that work now.
    QList<KeyHint> hints() const;

Q_SIGNALS:
    /// Back to the grid.
    void left();
    void undoAsked();
    void redoAsked();
    void refused(const hammerline::Refusal&);
    void howToAsked();

protected:
    void paintEvent(QPaintEvent*) override;
    void resizeEvent(QResizeEvent*) override;
    void changeEvent(QEvent*) override;

private:
    // bench_entry.cpp
    void refresh();
    void follow();
    void textChanged();
    void layOut();
    void speak();
    // bench_entry_keys.cpp
    bool key(QKeyEvent*);
    bool keyWhileEmpty(QKeyEvent*);
    bool answer(QKeyEvent*);
    void go(int by);
    bool refuses(const QKeyEvent&);
    void stay();
    void sayEnd(bool refused = false);
    void goTo(std::optional<Cell>);
    /// False where this note has no further one.
    bool goDimension(int by);
    void goNote(int by);
    bool store(const Reading&);
    void enterWord(Qt::Key);
    void quickLook();
    void takeBack();
    // bench_entry_paint.cpp
    double px(double design) const { return design * m_scale; }
    QFont sized(double design, bool bold = false) const;
    void paintBar(QPainter&, const Look&) const;
    void paintNoteBlock(QPainter&, const Look&) const;
    void paintTask(QPainter&, const Look&) const;
    void paintFieldBox(QPainter&, const Look&) const;
    void paintVerdict(QPainter&, const Look&, const QRectF& place) const;
    void paintRule(QPainter&, const Look&) const;
    void paintAsking(QPainter&, const Look&) const;
    void paintCards(QPainter&, const Look&) const;
    void paintCard(QPainter&, const Look&, const QRectF&, const QString& title, const QString& value, const Judged*,
                   const QString& more) const;
    /// What the field or, where nothing is typed, the stored reading is judged as.
    std::optional<Judged> judgedNow() const;
    std::optional<double> valueNow() const; // trade units
    QRectF fieldBox() const;
    QRectF verdictBox() const;
    QRectF partBox() const;

    Workbench& m_bench;
    EntryOrder m_order;
    EntryWalk m_walk;
    BenchField* m_field = nullptr;
    KeyboardStrip* m_strip = nullptr;
    HintBar* m_hints = nullptr;
    Understanding m_meaning;
    Cell m_at{}; // where the field's text was typed
    std::optional<Cell> m_last;
    std::optional<DimensionId> m_stripShows;
    QString m_notice;
    bool m_asking = false, m_repeat = false;
    bool m_stays = false; // the order leads no further: the next digits are not for this cell
    double m_scale = 1, m_wide = 1;
};

} // namespace hammerline
