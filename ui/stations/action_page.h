// One page of the wide note: account, stroke or the action drawn.
#pragma once

#include "ui/stations/action_desk.h"
#include "ui/stations/station.h"

namespace hammerline {

class ActionPage : public QWidget {
    Q_OBJECT
public:
    explicit ActionPage(ActionDesk&, QWidget* parent = nullptr);

    virtual QString title() const = 0;
    /// What the page shows, as a screen reader says it.
    virtual QString sentence() const = 0;
    virtual QList<KeyHint> pageHints() const = 0;
    virtual DimensionId stripDimension() const = 0;
    /// What it takes to show everything at that width; a lower window scrolls.
    virtual int wantedHeight(int width) const = 0;
    /// True where the page used the key.
    virtual bool useKey(int key, Qt::KeyboardModifiers) = 0;

Q_SIGNALS:
    void refused(const QString& sentence);

protected:
    ActionDesk& desk() { return m_desk; }
    const ActionDesk& desk() const { return m_desk; }
    /// Called on every change; the description of the page is set already.
    virtual void refreshPage() { update(); }
    /// What stands there before anything was read.
    void paintNothing(QPainter&) const;
    void showEvent(QShowEvent*) override;
    void resizeEvent(QResizeEvent*) override;
    void changeEvent(QEvent*) override;
    /// With the scroll bar's room: the notes stand where the strip below has them.
    QRect wholeWidth() const;
    /// Brings that part of the page into sight.
    void reveal(const QRect&);

private:
    void refresh();
    void fit();
    ActionDesk& m_desk;
};

ActionPage* makeAccountPage(ActionDesk&, QWidget* parent);
ActionPage* makeStrokePage(ActionDesk&, QWidget* parent);
ActionPage* makeDrawnPage(ActionDesk&, QWidget* parent);

} // namespace hammerline
