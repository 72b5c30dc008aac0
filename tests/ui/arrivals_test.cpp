// What comes into the window from outside: files dropped on it, books of late, a second start with the same book; and
// what the window says of itself.
#include "ui/about.h"
#include "ui/book_door.h"

#include <QDropEvent>
#include <QFile>
#include <QLabel>
#include <QLocalServer>
#include <QLocalSocket>
#include <QMenu>
#include <QMenuBar>
#include <QMimeData>
#include <QRegularExpression>
#include <QTest>
#include <QThread>
#include <sys/socket.h>
#include <sys/un.h>
#include <unistd.h>

#include "window_bench.h"

using namespace hammerline;

namespace {

/// A socket as a window leaves it that was killed: the file is there, and nobody listens.
void leaveSocketAt(const QString& place) {
    sockaddr_un address{};
    address.sun_family = AF_UNIX;
    const QByteArray path = QFile::encodeName(place);
    QVERIFY(static_cast<std::size_t>(path.size()) < sizeof address.sun_path);
    std::copy(path.begin(), path.end(), address.sun_path);
    const int socket = ::socket(AF_UNIX, SOCK_STREAM, 0);
    QCOMPARE(::bind(socket, reinterpret_cast<const sockaddr*>(&address), sizeof address), 0);
    QCOMPARE(::listen(socket, 1), 0);
    ::close(socket);
}

/// Knocks from a thread of its own, as another program would, while the window lives on in this one.
bool knocked(const QString& book, const Knock& knock, int patience = 10'000) {
    bool answered = false;
    QThread* caller = QThread::create([&] { answered = BookDoor::knock(book, knock, patience); });
    caller->start();
    while (!caller->isFinished())
        QCoreApplication::processEvents(QEventLoop::AllEvents, 20);
    caller->wait();
    delete caller;
    return answered;
}

} // namespace

class ArrivalsTest : public QObject, protected WindowBench {
    Q_OBJECT
private Q_SLOTS:
    void init() {
        open();
        QVERIFY(QFile::setPermissions(m_folder->path(), QFile::ReadOwner | QFile::WriteOwner | QFile::ExeOwner));
        qputenv("XDG_RUNTIME_DIR", m_folder->path().toLocal8Bit());
    }
    void cleanup() { close(); }

    // --- title and About

    void theTitleNamesTheBookThatIsOpen() {
        QCOMPARE(m_window->windowTitle(), QStringLiteral("t – Hammerline"));
        const QString other = m_folder->filePath(QStringLiteral("Town hall.hammerline"));
        QVERIFY(QFile::copy(path(), other));
        m_window->openBook(other);
        QCOMPARE(m_window->windowTitle(), QStringLiteral("Town hall – Hammerline"));
    }

    void aboutNamesVersionsLicencesAndWhatIsNew() {
        const auto pages = aboutPages();
        QCOMPARE(pages.size(), 4);
        QVERIFY(pages[0].text.contains(QStringLiteral("Qt %1").arg(QString::fromLatin1(qVersion()))));
        QVERIFY(QRegularExpression(QStringLiteral("SQLite 3\\.\\d+\\.\\d+")).match(pages[0].text).hasMatch());
        for (const char* name : {"SQLiteCpp", "fmt", "JSON", "CLI11", "GNU General Public License"})
            QVERIFY2(pages[0].text.contains(QLatin1String(name)), name);
        QVERIFY(pages[1].text.contains(QStringLiteral("0.2.0")));
        // the licence as the Free Software Foundation publishes it begins and ends so
        QVERIFY(pages[2].text.contains(QStringLiteral("GNU GENERAL PUBLIC LICENSE")));
        QVERIFY(pages[2].text.contains(QStringLiteral("why-not-lgpl")));
        // MIT and BSD ask that their notice goes with every copy
        for (const char* name : {"CLI11", "nlohmann-json", "SQLiteCpp", "fmt"})
            QVERIFY2(pages[3].text.contains(QStringLiteral("Files: ") + QLatin1String(name)), name);
        QVERIFY(pages[3].text.contains(QStringLiteral("shall be included in all")));
    }

    void aboutIsInTheHelpMenu() {
        bool shown = false;
        m_dialogs->onRun = [&](QDialog& dialog) { shown = qobject_cast<AboutDialog*>(&dialog); };
        for (QAction* each : m_window->actions())
            if (each->text().startsWith(QStringLiteral("About"))) each->trigger();
        QVERIFY(shown);
    }

    // --- a drop

    void aBookDroppedOnTheWindowIsOpened() {
        const QString other = m_folder->filePath(QStringLiteral("without an ending"));
        QVERIFY(QFile::copy(path(), other)); // a book is known by what stands in it
        QVERIFY(drop({other}));
        QTRY_COMPARE(m_bench->path(), other);
        QCOMPARE(m_settings->recentBooks().first(), other);
    }

    void aTableDroppedOnTheWindowComesWithItsPreview() {
        const QString table = fileOf("readings.csv", "note;let-off\n1;3.1\n2;3.2\n");
        QVERIFY(drop({table}));
        QTRY_COMPARE(m_dialogs->ran, 1);
        QCOMPARE(valueAt(2, dimension::letOff), 3'200'000);
    }

    void anythingElseIsRefusedInOneSentenceAndChangesNothing() {
        const QString other = fileOf("action.xyz", "\x89PNG");
        QVERIFY(drop({other}));
        QTRY_VERIFY(notice().contains(QStringLiteral("action.xyz is neither")));
        const QString picture = fileOf("action.png", "\x89PNG"); // the beginning of a picture, and nothing more
        QVERIFY(drop({picture}));
        QTRY_VERIFY2(notice().contains(QStringLiteral("action.png")) && !notice().contains(QStringLiteral("neither")),
                     qPrintable(notice()));
        QVERIFY(m_bench->record()->photos.empty());
        QVERIFY(drop({picture, picture}));
        QTRY_VERIFY(notice().contains(QStringLiteral("2 files")));
        QCOMPARE(m_bench->path(), path());
        QCOMPARE(m_dialogs->ran, 0);
    }

    void textWithoutAFileIsNotTaken() {
        QMimeData data;
        data.setText(QStringLiteral("3.1"));
        QDragEnterEvent enter(QPoint(50, 50), Qt::CopyAction, &data, Qt::LeftButton, Qt::NoModifier);
        enter.ignore();
        QCoreApplication::sendEvent(m_window.get(), &enter);
        QVERIFY(!enter.isAccepted());
    }

    // --- books of late

    void recentBooksAreNumberedAndOneThatIsGoneSaysSo() {
        m_settings->rememberBook(m_folder->filePath(QStringLiteral("gone.hammerline")));
        m_settings->rememberBook(path());
        QMenu* recent = menu(QStringLiteral("Recent"));
        QVERIFY(recent);
        Q_EMIT recent->aboutToShow();
        const auto rows = recent->actions();
        QCOMPARE(rows[0]->text(), QStringLiteral("&1  t.hammerline"));
        QCOMPARE(rows[0]->toolTip(), path());
        QVERIFY(rows[0]->isEnabled());
        QVERIFY(rows[1]->text().contains(QStringLiteral("not there now")));
        QVERIFY(!rows[1]->isEnabled());
        rows.last()->trigger();
        QVERIFY(m_settings->recentBooks().isEmpty());
    }

    // --- a second start

    void theRunningWindowAnswersASecondStart() {
        BookDoor door;
        QString station;
        connect(&door, &BookDoor::knocked, this, [&](const Knock& knock) { station = knock.station; });
        door.standAt(path());
        QVERIFY(door.stands());
        QVERIFY(knocked(path(), {QStringLiteral("review"), "token"}));
        QCOMPARE(station, QStringLiteral("review"));
        // a link to the book leads to the same door, another book to none
        const QString link = m_folder->filePath(QStringLiteral("link.hammerline"));
        QVERIFY(QFile::link(path(), link));
        QVERIFY(knocked(link, {}));
        const QString other = m_folder->filePath(QStringLiteral("other.hammerline"));
        QVERIFY(QFile::copy(path(), other));
        QVERIFY(!knocked(other, {}));
        door.standAt(other);
        QVERIFY(knocked(other, {}));
        QVERIFY(!knocked(path(), {}));
    }

    void aSecondWindowLeavesTheDoorToTheFirst() {
        BookDoor first, second;
        int heard = 0;
        connect(&first, &BookDoor::knocked, this, [&] { ++heard; });
        first.standAt(path());
        second.standAt(path());
        QVERIFY(first.stands() && !second.stands());
        QVERIFY(knocked(path(), {}));
        QCOMPARE(heard, 1);
    }

    void theSocketOfAKilledWindowIsClearedAway() {
        leaveSocketAt(BookDoor::placeOf(path()));
        QVERIFY(QFile::exists(BookDoor::placeOf(path())));
        QVERIFY(!knocked(path(), {}));
        BookDoor door;
        door.standAt(path());
        QVERIFY(door.stands());
        QVERIFY(knocked(path(), {}));
    }

    void aWindowThatHangsIsNotWaitedForForEver() {
        QLocalServer hanging; // it accepts and never speaks
        QVERIFY(hanging.listen(BookDoor::placeOf(path())));
        QVERIFY(!knocked(path(), {}, 50));
    }

    void whatIsNotAKnockIsSentAway() {
        BookDoor door;
        int heard = 0;
        connect(&door, &BookDoor::knocked, this, [&] { ++heard; });
        door.standAt(path());
        QLocalSocket stranger;
        stranger.connectToServer(BookDoor::placeOf(path()));
        QVERIFY(stranger.waitForConnected());
        stranger.write("GET / HTTP/1.1\n");
        QTRY_COMPARE(stranger.state(), QLocalSocket::UnconnectedState);
        QCOMPARE(heard, 0);
    }

    void aFolderThatOthersMayEnterHasNoDoor() {
        QVERIFY(QFile::setPermissions(m_folder->path(), QFile::ReadOwner | QFile::WriteOwner | QFile::ExeOwner |
                                                            QFile::ReadOther | QFile::ExeOther));
        QVERIFY(BookDoor::placeOf(path()).isEmpty());
        BookDoor door;
        door.standAt(path());
        QVERIFY(!door.stands());
        qunsetenv("XDG_RUNTIME_DIR");
        QVERIFY(!knocked(path(), {}));
    }

private:
    bool drop(const QStringList& files) {
        QMimeData data;
        QList<QUrl> urls;
        for (const QString& file : files)
            urls << QUrl::fromLocalFile(file);
        data.setUrls(urls);
        QDragEnterEvent enter(QPoint(50, 50), Qt::CopyAction, &data, Qt::LeftButton, Qt::NoModifier);
        enter.ignore();
        QCoreApplication::sendEvent(m_window.get(), &enter);
        QDropEvent event(QPointF(50, 50), Qt::CopyAction, &data, Qt::LeftButton, Qt::NoModifier);
        event.ignore();
        QCoreApplication::sendEvent(m_window.get(), &event);
        return enter.isAccepted() && event.isAccepted();
    }
    QString fileOf(const char* name, const QByteArray& text) {
        const QString made = m_folder->filePath(QLatin1String(name));
        QFile file(made);
        return file.open(QIODevice::WriteOnly) && file.write(text) == text.size() ? made : QString();
    }
    QString notice() const { return m_window->findChild<QLabel*>(QStringLiteral("notice"))->text(); }
    QMenu* menu(const QString& title) const {
        for (QMenu* each : m_window->findChildren<QMenu*>())
            if (each->title() == title) return each;
        return nullptr;
    }
};

QTEST_MAIN(ArrivalsTest)
#include "arrivals_test.moc"
