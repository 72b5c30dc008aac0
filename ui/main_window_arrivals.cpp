// What comes into the window from outside: files dropped on it, a second start with the same book, books of late.
#include "db/document.h"
#include "ui/main_window.h"

#include <QAction>
#include <QApplication>
#include <QDir>
#include <QDragEnterEvent>
#include <QFileInfo>
#include <QMenu>
#include <QMimeData>
#include <QProcess>
#include <QTimer>

namespace hammerline {

namespace {

bool isTableOrExport(const QString& path) {
    static const QStringList endings{QStringLiteral("csv"), QStringLiteral("tsv"), QStringLiteral("txt"),
                                     QStringLiteral("json")};
    return endings.contains(QFileInfo(path).suffix().toLower());
}

QStringList filesIn(const QMimeData& dropped) {
    QStringList files;
    for (const QUrl& url : dropped.urls())
        if (url.isLocalFile()) files << url.toLocalFile();
    return files;
}

} // namespace

void MainWindow::titleWindow() {
    // the name first: a task bar cuts the end
    setWindowTitle(m_bench.hasBook() ? tr("%1 – Hammerline").arg(QFileInfo(m_bench.path()).completeBaseName())
                                     : tr("Hammerline"));
}

void MainWindow::dragEnterEvent(QDragEnterEvent* event) {
    if (!filesIn(*event->mimeData()).isEmpty()) event->acceptProposedAction();
}

/// The file is taken in when the drop is over: a question would keep the program it comes from waiting.
void MainWindow::dropEvent(QDropEvent* event) {
    const QStringList files = filesIn(*event->mimeData());
    if (files.isEmpty()) return;
    event->setDropAction(Qt::CopyAction); // it stays where it is
    event->accept();
    QTimer::singleShot(0, this, [this, files] {
        comeForward({});
        if (files.size() > 1)
            say(tr("One file at a time: %n files were dropped, and nothing was changed.", nullptr,
                   static_cast<int>(files.size())));
        else
            takeIn(files.first());
    });
}

void MainWindow::takeIn(const QString& file) {
    const QString name = QFileInfo(file).fileName();
    if (isBook(file.toStdString()) || QFileInfo(file).suffix() == QLatin1String("hammerline")) return openBook(file);
    if (!isTableOrExport(file) && !isPicture(file))
        return say(tr("%1 is neither a bench book, nor a picture, nor a table of text (csv, tsv, txt), nor an exported "
                      "JSON; nothing was changed.")
                       .arg(name));
    if (!m_bench.hasBook()) return say(tr("Open or make a bench book first; then %1 can be taken into it.").arg(name));
    if (isPicture(file) && !m_bench.record())
        return say(tr("Enter a piano first; then %1 can be kept at it.").arg(name));
    if (isPicture(file)) return addPicture(file);
    importFile(file);
}

void MainWindow::comeForward(const QByteArray& token) {
    if (!token.isEmpty()) qputenv("XDG_ACTIVATION_TOKEN", token); // Qt hands it to the desktop
    if (isMinimized()) showNormal();
    show();
    raise();
    activateWindow();
    QApplication::alert(this); // where the desktop does not let it come forward
}

void MainWindow::openAnotherWindow() {
    QStringList words{QStringLiteral("window"), QStringLiteral("--another")};
    if (m_bench.hasBook()) words.insert(1, m_bench.path());
    if (!QProcess::startDetached(QCoreApplication::applicationFilePath(), words))
        say(tr("The program could not be started a second time."));
}

/// Two books of one name are told apart by their folders; one that is gone says so and can be forgotten.
void MainWindow::fillRecent(QMenu* menu) {
    menu->clear();
    menu->setToolTipsVisible(true);
    const QStringList books = m_settings.recentBooks();
    for (qsizetype i = 0; i < books.size(); ++i) {
        const QFileInfo file(books[i]);
        const bool there = file.exists();
        QString name = file.fileName().replace(u'&', QLatin1String("&&"));
        if (!there) name = tr("%1 (not there now)").arg(name);
        QAction* action = menu->addAction(QStringLiteral("&%1  %2").arg(i + 1).arg(name), this,
                                          [this, book = books[i]] { openBook(book); });
        action->setToolTip(QDir::toNativeSeparators(books[i]).toHtmlEscaped());
        action->setEnabled(there);
    }
    if (books.isEmpty()) {
        menu->addAction(tr("No book yet"))->setEnabled(false);
        return;
    }
    menu->addSeparator();
    menu->addAction(tr("Forget these"), this, [this] {
        for (const QString& book : m_settings.recentBooks())
            m_settings.forgetBook(book);
    });
}

} // namespace hammerline
