// The Edit menu: what is copied, pasted and selected is what has the focus; Find goes to a note, a piano or a finding.
#include "ui/find_dialog.h"
#include "ui/main_window.h"
#include "ui/stations/measure_view.h"
#include "ui/widgets/copy_block.h"
#include "ui/widgets/dialogs.h"

#include <QAction>
#include <QApplication>
#include <QClipboard>
#include <QLabel>
#include <QLineEdit>
#include <QMenu>
#include <QMenuBar>
#include <QPlainTextEdit>
#include <QTableView>
#include <QTextEdit>

namespace hammerline {

namespace {

/// What the focus lies in; a view's field is a line of text.
template <class W>
W* focused(QWidget* window) {
    QWidget* at = QApplication::focusWidget() ? QApplication::focusWidget() : window->focusWidget();
    for (; at; at = at->parentWidget())
        if (auto* found = qobject_cast<W*>(at)) return found;
    return nullptr;
}

/// Fields of text know all three by themselves.
template <class F>
bool inText(QWidget* window, const F& act) {
    if (auto* line = focused<QLineEdit>(window)) return act(*line), true;
    if (auto* text = focused<QTextEdit>(window)) return act(*text), true;
    if (auto* text = focused<QPlainTextEdit>(window)) return act(*text), true;
    return false;
}

} // namespace

void MainWindow::buildEditMenu() {
    QMenu* menu = menuBar()->addMenu(tr("&Edit"));
    m_undoAction = menu->addAction(tr("Take back"), QKeySequence(QStringLiteral("Ctrl+Z")), this, &MainWindow::undo);
    m_redoAction = menu->addAction(tr("Do again"), this, &MainWindow::redo);
    m_redoAction->setShortcuts({QKeySequence(QStringLiteral("Ctrl+Y")), QKeySequence(QStringLiteral("Ctrl+Shift+Z"))});
    menu->addSeparator();
    menu->addAction(tr("Copy"), QKeySequence::Copy, this, &MainWindow::copy);
    menu->addAction(tr("Paste"), QKeySequence::Paste, this, &MainWindow::paste);
    menu->addAction(tr("Select all"), QKeySequence::SelectAll, this, &MainWindow::selectAll);
    menu->addSeparator();
    menu->addAction(tr("Find…"), QKeySequence::Find, this, &MainWindow::find);
}

void MainWindow::copy() {
    if (inText(this, [](auto& text) { text.copy(); })) return;
    if (const auto* table = focused<QTableView>(this)) {
        if (auto block = blockOf(*table)) QApplication::clipboard()->setMimeData(block.release());
        return;
    }
    const auto* label = focused<QLabel>(this);
    if (label && label->hasSelectedText()) QApplication::clipboard()->setText(label->selectedText());
}

void MainWindow::paste() {
    if (inText(this, [](auto& text) { text.paste(); })) return;
    if (auto* grid = focused<MeasureView>(this)) return grid->pasteText(QApplication::clipboard()->text());
    say(tr("Readings are pasted in Measure, with the cursor where the first one belongs."));
}

void MainWindow::selectAll() {
    if (inText(this, [](auto& text) { text.selectAll(); })) return;
    if (auto* table = focused<QTableView>(this)) table->selectAll();
}

void MainWindow::find() {
    if (!leaveStation() || !m_bench.hasBook()) return;
    FindDialog dialog(m_bench, this);
    if (!Dialogs::now().run(dialog)) return;
    const auto found = dialog.chosen();
    if (!found) return;
    if (!found->piano.empty()) {
        if (const auto taken = m_bench.choosePiano(found->piano); !taken) return report(taken.error());
    }
    if (!found->station.isEmpty() && !showStation(found->station)) return;
    if (found->note) m_bench.setNote(*found->note);
}

} // namespace hammerline
