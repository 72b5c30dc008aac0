// The note, wide: where its key's way goes, as an account, as a stroke and as the action drawn to scale. It stands in
// the place of a station and is left to the one it came from.
#pragma once

#include "ui/stations/action_page.h"

class QStackedWidget;
class QToolButton;

namespace hammerline {

/// "account", "stroke", "action" by its place; -1 for another word.
int actionPageNamed(const QString&);

class ActionWide : public Station {
    Q_OBJECT
public:
    explicit ActionWide(Workbench&, QWidget* parent = nullptr);

    QString context() const override;
    QList<KeyHint> hints() const override;
    QString hintRemark() const override;
    StripMarks strip() const override;
    void arrive() override;
    void stepDimension(int by) override; // [ and ]: the note before or after
    QList<QWidget*> panels() override;
    void print() override;

    /// 0 account, 1 stroke, 2 the action drawn.
    void showPage(int);
    int page() const;
    ActionDesk& desk() { return m_desk; }

Q_SIGNALS:
    /// F7 or Esc: back to the station.
    void left();

protected:
    void keyPressEvent(QKeyEvent*) override;
    void paintEvent(QPaintEvent*) override;
    void changeEvent(QEvent*) override;

private:
    ActionPage* current() const;
    void stepNote(int by);
    void toSectionEnd(bool last);
    bool goKey(int key);

    ActionDesk m_desk;
    QStackedWidget* m_pages = nullptr;
    QList<QToolButton*> m_tabs;
};

} // namespace hammerline
