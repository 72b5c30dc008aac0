// The breaks between the sections and the last damper, moved on the keyboard strip itself: drawn out with the mouse, or
// chosen and moved by keys.
#pragma once

#include "ui/stations/station.h"

namespace hammerline {

class PianoBreaks : public QObject, public StripTool {
    Q_OBJECT
public:
    explicit PianoBreaks(Workbench& bench, QObject* parent = nullptr) : QObject(parent), m_bench(bench) {}

    void paint(QPainter&, const Look&, const NoteAxis&, const QRect& keys) override;
    bool press(QMouseEvent*, const NoteAxis&, const QRect& keys) override;
    bool move(QMouseEvent*, const NoteAxis&, const QRect& keys) override;
    bool release(QMouseEvent*, const NoteAxis&, const QRect& keys) override;
    /// B: the next of them; Shift and an arrow: a note further.
    bool key(QKeyEvent*) override;

Q_SIGNALS:
    /// An attribute of the set-up is to have a value.
    void said(const QString& attribute, const QString& value);

private:
    /// Stands behind a note: the end of section `section`, or the last damper.
    struct Mark {
        int note;
        std::optional<std::size_t> section;
    };
    std::vector<Mark> marks() const;
    /// Where it may stand: every section keeps a note.
    int within(const Mark&, int note) const;
    void place(const Mark&, int note);

    Workbench& m_bench;
    std::size_t m_chosen = 0;
    std::optional<int> m_dragged; // the note it stands behind meanwhile
};

} // namespace hammerline
