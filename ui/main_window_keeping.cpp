// What keeps a book, from the window: opening, restoring a backup, merging, opening again what was replaced, rescuing.
#include "db/left_behind.h"
#include "ui/main_window.h"
#include "ui/widgets/dialogs.h"
#include "ui/widgets/long_work.h"
#include "ui/words/keeping.h"
#include "ui/words/words.h"

#include <QDate>
#include <QDateTime>
#include <QDir>
#include <QFileInfo>
#include <QStorageInfo>

#include <algorithm>

namespace hammerline {

namespace {
QString bookFilter() {
    return MainWindow::tr("Bench books (*.hammerline)");
}

/// A copy on the disk of the book goes when that goes.
bool onSameDevice(const QString& one, const QString& other) {
    const QStorageInfo a(QFileInfo(one).absolutePath()), b(QFileInfo(other).absolutePath());
    return a.isValid() && b.isValid() && a.device() == b.device() && a.rootPath() == b.rootPath();
}

/// Work on a whole book: on a large one it takes a second and more.
template <class F>
auto atLength(QWidget* window, const QString& what, const F& work) {
    LongWork bar(window, what);
    return work([&bar](double done) { return bar.share(done); });
}
} // namespace

void MainWindow::openBook(const QString& path, const std::string& piano) {
    if (!leaveStation()) return;
    const QString chosen = path.isEmpty() ? Dialogs::now().fileToOpen(this, tr("Open bench book"), bookFilter()) : path;
    if (chosen.isEmpty()) return;
    const auto opened = atLength(this, tr("Opening %1").arg(QFileInfo(chosen).fileName()),
                                 [&](const GoOn& goOn) { return m_bench.openBook(chosen, piano, goOn); });
    if (!opened) offerRescue(chosen, opened.error());
    if (opened) m_settings.rememberBook(chosen);
    if (opened) remindOfCopy();
    offerLeftBehind(chosen);
}

/// Also where the book could not be opened: it may be all that there is.
void MainWindow::offerLeftBehind(const QString& book) {
    for (const LeftBehind& left : leftBehind(book.toStdString())) {
        const bool mayBeKept = left.kind == LeftBehind::Kind::sound || left.kind == LeftBehind::Kind::large;
        QStringList ways{tr("Delete it"), tr("Leave it as it is")};
        if (mayBeKept) ways.prepend(tr("Keep it under a name of its own"));
        const int chosen =
            Dialogs::now().choose(this, tr("Left behind beside the book"), words::leftBehindSentence(left), ways);
        const bool keep = mayBeKept && chosen == 0, erase = chosen == static_cast<int>(ways.size()) - 2;
        if (keep) {
            const auto kept = keepLeftBehind(left, book.toStdString());
            if (!kept) return report(kept.error());
            say(tr("Kept as %1: Book, Restore a backup puts it in place.")
                    .arg(QFileInfo(QString::fromStdString(*kept)).fileName()));
        } else if (erase) {
            if (const auto deleted = deleteLeftBehind(left); !deleted) return report(deleted.error());
        }
    }
}

void MainWindow::backUpBook() {
    if (!leaveStation() || !m_bench.hasBook()) return;
    const auto made = atLength(this, tr("Backing up %1").arg(QFileInfo(m_bench.path()).fileName()),
                               [&](const GoOn& goOn) { return m_bench.backUp({}, goOn); });
    if (!made) return report(made.error());
    say(tr("A verified copy stands beside the book: %1").arg(QFileInfo(*made).fileName()));
}

void MainWindow::backUpElsewhere() {
    if (!leaveStation() || !m_bench.hasBook()) return;
    const QFileInfo book(m_bench.path());
    const QString last = m_settings.text(Setting::lastFolder);
    const QString suggested = QDir(last.isEmpty() ? QDir::homePath() : last).filePath(book.fileName());
    const QString chosen = Dialogs::now().fileToSave(this, tr("Back up to another place"), suggested, bookFilter());
    if (chosen.isEmpty()) return;
    const auto made = atLength(this, tr("Backing up %1").arg(book.fileName()),
                               [&](const GoOn& goOn) { return m_bench.backUp(chosen, goOn); });
    if (!made) return report(made.error());
    m_settings.set(Setting::lastFolder, QFileInfo(*made).absolutePath());
    const bool elsewhere = !onSameDevice(book.absoluteFilePath(), *made);
    if (elsewhere) {
        QVariantMap days = m_settings.value(Setting::copiesElsewhere).toMap();
        days[book.absoluteFilePath()] = QDate::currentDate().toString(Qt::ISODate);
        m_settings.set(Setting::copiesElsewhere, days);
    }
    const QString said = tr("A verified copy is at %1.").arg(QDir::toNativeSeparators(*made));
    say(elsewhere ? said
                  : said + QLatin1Char(' ') + tr("It lies on the disk of the book: a stick would outlive that."));
}

void MainWindow::remindOfCopy() {
    constexpr int kMonth = 30; // days
    const QFileInfo book(m_bench.path());
    const QVariantMap days = m_settings.value(Setting::copiesElsewhere).toMap();
    const QDate copied = QDate::fromString(days.value(book.absoluteFilePath()).toString(), Qt::ISODate);
    const PianoRecord* record = m_bench.record();
    const bool worked = record && !record->passes.empty();
    const QDate begun =
        worked ? QDateTime::fromMSecsSinceEpoch(record->passes.front().startedAt / 1000).date() : QDate();
    const QDate since = copied.isValid() ? copied : begun;
    const bool due = since.isValid() && since.daysTo(book.lastModified().date()) > kMonth;
    if (!due || m_bench.trouble()) return;
    say(copied.isValid() ? tr("The newest copy on another disk is of %1: Book, Back up to another place.")
                               .arg(copied.toString(Qt::ISODate))
                         : tr("There is no copy of a month of work on another disk: Book, Back up to another place."));
}

void MainWindow::verifyBook() {
    if (!leaveStation() || !m_bench.hasBook()) return;
    const auto found = atLength(this, tr("Looking %1 over").arg(QFileInfo(m_bench.path()).fileName()),
                                [&](const GoOn& goOn) { return m_bench.verify(goOn); });
    if (!found) return report(found.error());
    const QString said = words::soundSentence(found->sound, found->olderAt);
    if (found->sound) return say(said);
    QString told = said.toHtmlEscaped();
    for (const Problem& each : found->problems)
        told += QStringLiteral("<br>\u2022 ") + words::problemText(each.what).left(200).toHtmlEscaped();
    Dialogs::now().say(this, tr("Is this book sound?"), told);
}

void MainWindow::mergeBook() {
    if (!leaveStation() || !m_bench.hasBook()) return;
    const QString other = Dialogs::now().fileToOpen(this, tr("Merge another book"), bookFilter());
    if (other.isEmpty()) return;
    const auto merged = atLength(this, tr("Merging %1").arg(QFileInfo(other).fileName()),
                                 [&](const GoOn& goOn) { return m_bench.merge(other, goOn); });
    if (!merged) return report(merged.error());
    QString told = words::mergeSentence(*merged);
    for (const Dispute& dispute : merged->disputes)
        told += QStringLiteral("\n\u2022 ") + words::sentence(dispute);
    if (merged->disputes.empty())
        say(told);
    else
        Dialogs::now().say(this, tr("Merged"), told.toHtmlEscaped().replace(QLatin1Char('\n'), QLatin1String("<br>")));
}

void MainWindow::restoreBackup(const QString& path) {
    const QString book = path.isEmpty() ? m_bench.path() : path;
    if (book.isEmpty() || (path.isEmpty() && !leaveStation())) return;
    const QString from =
        Dialogs::now().fileToOpen(this, tr("Restore a backup of %1").arg(QFileInfo(book).fileName()), bookFilter());
    if (from.isEmpty()) return;
    const auto kept = atLength(this, tr("Restoring %1").arg(QFileInfo(from).fileName()),
                               [&](const GoOn& goOn) { return m_bench.restore(book, from, goOn); });
    if (!kept) return report(kept.error());
    say(kept->isEmpty() ? tr("Restored.")
                        : tr("Restored. The file that stood there is kept as %1.").arg(QFileInfo(*kept).fileName()));
}

/// An open field is not committed first: it cannot be, and its text is to stay.
void MainWindow::reopenBook() {
    if (!m_bench.hasBook()) return;
    if (const auto opened = m_bench.reopen(); !opened) offerRescue(m_bench.path(), opened.error());
}

void MainWindow::offerRescue(const QString& path, const Refusal& refusal) {
    report(refusal);
    if (!words::canBeRescued(refusal)) return;
    const int chosen =
        Dialogs::now().choose(this, tr("The book cannot be opened"), words::sentence(refusal),
                              {tr("Restore a backup…"), tr("Rescue what can be read"), tr("Leave it as it is")});
    if (chosen == 0) return restoreBackup(path);
    if (chosen != 1) return;
    std::string into;
    const auto rescued = atLength(this, tr("Rescuing %1").arg(QFileInfo(path).fileName()),
                                  [&](const GoOn& goOn) { return rescueBook(path.toStdString(), into, goOn); });
    if (!rescued) return report(rescued.error());
    if (const auto opened = m_bench.openBook(QString::fromStdString(into)); !opened) return report(opened.error());
    m_settings.rememberBook(QString::fromStdString(into));
    const QString said = words::rescueSentence(*rescued, into);
    say(said);
    if (rescued->doubtful.empty()) return;
    constexpr std::size_t kShown = 20;
    QString told = said.toHtmlEscaped();
    for (std::size_t i = 0; i < std::min(kShown, rescued->doubtful.size()); ++i)
        told += QStringLiteral("<br>\u2022 ") + words::unprovenSentence(rescued->doubtful[i]).left(200).toHtmlEscaped();
    if (rescued->unproven > kShown)
        told += QStringLiteral("<br>") + tr("and %n more; hammerline restore --rescue --json lists them.", nullptr,
                                            static_cast<int>(rescued->unproven - kShown))
                                             .toHtmlEscaped();
    Dialogs::now().say(this, tr("What was rescued"), told);
}

} // namespace hammerline
