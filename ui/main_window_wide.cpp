// The note, wide (F7): it stands in the place of a station and goes back to it.
#include "ui/main_window.h"
#include "ui/stations/action_wide.h"
#include "ui/widgets/keyboard_strip.h"

#include <QBoxLayout>
#include <QStackedWidget>

namespace hammerline {

bool MainWindow::noteIsWide() const {
    return m_wide && m_stack->currentWidget() == m_wide;
}

bool MainWindow::showNoteWide(int page) {
    if (!m_bench.piano() || !leaveBenchEntry() || !leaveStation()) return false;
    Station* before = station();
    if (!m_wide) {
        m_wide = new ActionWide(m_bench, m_stack);
        m_stack->addWidget(m_wide);
        connect(m_wide, &Station::wordsChanged, this, &MainWindow::refreshWords);
        connect(m_wide, &Station::notice, this, &MainWindow::say);
        connect(m_wide, &ActionWide::left, this, &MainWindow::leaveNoteWide);
    }
    if (before && before != m_wide && before->tools()) {
        m_toolRow->removeWidget(before->tools());
        before->tools()->hide();
    }
    m_stack->setCurrentWidget(m_wide);
    m_strip->setTool(nullptr);
    foldCard();
    if (page >= 0) m_wide->showPage(page);
    refreshWords();
    m_wide->arrive();
    return true;
}

/// Back to the station that the rail shows.
void MainWindow::leaveNoteWide() {
    if (noteIsWide()) showStation(m_settings.text(Setting::station));
}

int MainWindow::forgetNoteWide() {
    const int page = noteIsWide() ? m_wide->page() : -1;
    leaveNoteWide();
    delete m_wide;
    m_wide = nullptr;
    return page;
}

} // namespace hammerline
