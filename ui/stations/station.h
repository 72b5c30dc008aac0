// One of the stations along the rail: a page of the window with its own tools in the context bar, its own keys in
// the hint bar and its own way of printing. A station reads the workbench and listens to its signals.
#pragma once

#include "ui/workbench.h"

#include <QWidget>

class QPainter;
class QKeyEvent;
class QMouseEvent;

namespace hammerline {

class NoteAxis;
struct Look;

/// A key (or two) and what it does now: {"Enter", "next"}; two keys by a blank: "Ctrl D".
struct KeyHint {
    QString keys;
    QString does;
    friend bool operator==(const KeyHint&, const KeyHint&) = default;
};

/// What a station shows on the keyboard strip beside the readings.
struct StripMarks {
    /// Lines of the legend at the left, the first one bold; empty: the strip's own ("Worst reading").
    QStringList legend;
    /// Bars by note: -3..3 by marks; empty: the worst of all dimensions, or of `dimension`.
    std::optional<DimensionId> dimension;
    std::map<int, int> expected;   // hollow bars: after the plan, -3..3
    std::vector<NoteNumber> named; // solid ink bars: notes named in a form
    bool plain = false;            // no reading bars at all
    /// How the parts of a note stand, on its key: what blocks is always shown, the others where a station says so.
    enum class KeyMark : std::uint8_t { faulty, mended };
    std::map<int, KeyMark> keys;
    friend bool operator==(const StripMarks&, const StripMarks&) = default;
};

/// Something edited on the strip itself (section breaks, rail pieces). Painted over the keys; sees mouse and keys
/// first.
class StripTool {
public:
    virtual ~StripTool() = default;
    virtual void paint(QPainter&, const Look&, const NoteAxis&, const QRect& keys) = 0;
    /// True where the event was used.
    virtual bool press(QMouseEvent*, const NoteAxis&, const QRect& keys) = 0;
    virtual bool move(QMouseEvent*, const NoteAxis&, const QRect& keys) = 0;
    virtual bool release(QMouseEvent*, const NoteAxis&, const QRect& keys) = 0;
    virtual bool key(QKeyEvent*) = 0;
};

class Station : public QWidget {
    Q_OBJECT
public:
    explicit Station(Workbench& workbench, QWidget* parent = nullptr) : QWidget(parent), m_workbench(workbench) {}

    /// What stands after the piano's name in the context bar; may hold <b>.
    virtual QString context() const = 0;
    /// Placed at the right of the context bar while the station is current; owned by the station.
    virtual QWidget* tools() { return nullptr; }
    virtual QList<KeyHint> hints() const = 0;
    /// At the right end of the hint bar.
    virtual QString hintRemark() const { return {}; }
    virtual StripMarks strip() const { return {}; }
    virtual StripTool* stripTool() { return nullptr; }
    virtual bool wantsNoteCard() const { return false; }
    /// The station was brought to the front: takes the focus.
    virtual void arrive() { setFocus(); }
    /// A step of the work is to be shown, by its id (empty: the first line of the plan); a station that knows no steps
    /// stays as it is.
    virtual void meetStep(const QString&) {}
    /// What a photograph or a remark taken now is about.
    virtual About place() const { return {{}, m_workbench.note(), {}, {}}; }
    /// Commits what is being typed. False: something refused stays open, and the station stays in front.
    virtual bool leave() { return true; }
    /// Ctrl+P: prints what this station prints; the dialogs go through the seam.
    virtual void print();
    /// [ and ]: the dimension before or after.
    virtual void stepDimension(int by);
    /// Panels in reading order for F6.
    virtual QList<QWidget*> panels() { return {this}; }

Q_SIGNALS:
    /// context(), hints() or strip() say something else now.
    void wordsChanged();
    /// Asks the window for another station: "measure", "review", "work", "survey", "piano", "passes".
    void goTo(const QString& station);
    /// The same, at a step of the work.
    void goToStep(const QString& station, const QString& step);
    /// A sentence for the bar under the context bar, until the next act.
    void notice(const QString& sentence);

protected:
    Workbench& bench() { return m_workbench; }
    const Workbench& bench() const { return m_workbench; }

private:
    Workbench& m_workbench;
};

} // namespace hammerline
