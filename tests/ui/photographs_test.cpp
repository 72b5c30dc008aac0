// Photographs from anywhere in the window: a folder that is watched while one works, two dates side by side, a picture
// dropped, and a second opinion that goes out and comes back.
#include "core/sheet/answers.h"
#include "ui/pictures/picture_reading.h"
#include "ui/pictures/side_by_side.h"
#include "ui/pictures/watched_folder.h"
#include "ui/stations/survey_memory.h"
#include "ui/stations/survey_pages.h"

#include <QBuffer>
#include <QDir>
#include <QFile>
#include <QImage>
#include <QLabel>
#include <QPushButton>
#include <QStandardPaths>
#include <QTest>

#include "window_bench.h"

using namespace hammerline;

class PhotographsTest : public QObject, protected WindowBench {
    Q_OBJECT
private Q_SLOTS:
    void init() {
        open();
        m_window->resize(1280, 800);
        m_window->activateWindow();
        QVERIFY(QTest::qWaitForWindowActive(m_window.get()));
        QVERIFY(QDir(m_folder->path()).mkdir(QStringLiteral("phone")));
    }
    void cleanup() { close(); }

    void aNewPictureIsOfferedToThePlaceAndTakenByOneKey() {
        keepPicture("before.jpg", Qt::red); // there already: left where it is
        m_dialogs->file = phone();
        shortcutOf("Ctrl+Shift+W")->trigger();
        QCOMPARE(m_window->watched().folder(), phone());
        keepPicture("new.jpg", Qt::blue);
        lookTwice();
        QVERIFY(band().isVisible());
        QVERIFY(m_bench->record()->photos.empty()); // never by itself
        m_bench->setCell({{40}, dimension::letOff});
        QVERIFY(bandSays("note 40"));
        keepLook(*m_window, "band");
        grid().setFocus();
        QTest::keyClick(focus(), Qt::Key_T, Qt::ControlModifier);
        QCOMPARE(m_bench->record()->photos.size(), std::size_t{1});
        QVERIFY(m_bench->record()->photos.front().about.note == NoteNumber{40});
        QVERIFY(!band().isVisible());
        lookTwice();
        QVERIFY(!band().isVisible()); // once and no more
        QVERIFY(m_bench->undo().has_value());
        QVERIFY(m_bench->record()->photos.empty());
    }

    void whatIsLeftIsNotOfferedAgainAndTheNewestComesFirst() {
        m_window->watchFolder(phone());
        keepPicture("older.jpg", Qt::red, -60);
        keepPicture("newer.jpg", Qt::blue, -10);
        lookTwice();
        QVERIFY(bandSays("newer.jpg"));
        QTest::keyClick(focus(), Qt::Key_T, Qt::ControlModifier | Qt::ShiftModifier);
        QVERIFY(bandSays("older.jpg"));
        QTest::keyClick(focus(), Qt::Key_T, Qt::ControlModifier | Qt::ShiftModifier);
        QVERIFY(!band().isVisible());
        lookTwice();
        QVERIFY(!band().isVisible());
        QVERIFY(m_bench->record()->photos.empty());
    }

    void whatIsTypedGoesOnWhileAPictureIsOffered() {
        m_window->watchFolder(phone());
        m_bench->setCell({{1}, dimension::letOff});
        grid().setFocus();
        QTest::keyClick(&grid(), Qt::Key_3);
        keepPicture("new.jpg", Qt::blue);
        lookTwice();
        QVERIFY(band().isVisible());
        typeInGrid(QStringLiteral(".1"));
        QTest::keyClick(focus(), Qt::Key_Return);
        QCOMPARE(valueAt(1, dimension::letOff), 31 * kTenth);
    }

    void aPictureThatIsStillComingWaits() {
        m_window->watchFolder(phone());
        const QByteArray bytes = pictureBytes(Qt::green);
        write("slow.jpg", bytes.left(200));
        m_window->watched().look();
        write("slow.jpg", bytes.left(400));
        m_window->watched().look();
        QVERIFY(!band().isVisible());
        write("slow.jpg", bytes);
        m_window->watched().look();
        m_window->watched().look();
        QVERIFY(band().isVisible());
    }

    void aBrokenPictureIsOneSentenceAndTheNextIsOffered() {
        m_window->watchFolder(phone());
        write("broken.jpg", "no picture");
        lookTwice();
        QVERIFY(!band().isVisible());
        QVERIFY(notice().contains(QStringLiteral("broken.jpg")));
        keepPicture("sound.jpg", Qt::blue);
        lookTwice();
        QVERIFY(bandSays("sound.jpg"));
    }

    void aFolderThatVanishesIsSaidOnceAndWatchedAgainWhenItIsBack() {
        m_window->watchFolder(phone());
        QVERIFY(QDir(phone()).removeRecursively());
        m_window->watched().look();
        QVERIFY(notice().contains(QStringLiteral("is not there now")));
        QVERIFY(QDir(m_folder->path()).mkdir(QStringLiteral("phone")));
        keepPicture("back.jpg", Qt::blue);
        lookTwice();
        QVERIFY(bandSays("back.jpg"));
        m_window->watchFolder(m_folder->filePath(QStringLiteral("nowhere")));
        QVERIFY(notice().contains(QStringLiteral("nowhere")));
    }

    void theFolderIsRememberedWithThisBookAndForgottenWhenAskedTo() {
        m_window->watchFolder(phone());
        m_window.reset();
        openWindow();
        QCOMPARE(m_window->watched().folder(), phone());
        m_window->watchFolder({});
        m_window.reset();
        openWindow();
        QVERIFY(m_window->watched().folder().isEmpty());
    }

    /// No look is asked for here: the system's notice or the poll has to do it.
    void theSystemOrThePollTellsOfANewPicture() {
        m_window->watchFolder(phone());
        keepPicture("new.jpg", Qt::blue);
        QTRY_VERIFY_WITH_TIMEOUT(band().isVisible(), 20'000);
    }

    void twoDatesOfAPlaceStandSideBySideAndTheArrowsChooseThem() {
        for (const auto& [day, colour] :
             {std::pair{"2026-01-05", Qt::red}, {"2026-03-01", Qt::blue}, {"2026-02-01", Qt::green}})
            addPhoto(day, colour);
        m_bench->setCell({{40}, dimension::letOff});
        QString left, right;
        std::pair<std::size_t, std::size_t> first, then, last;
        m_dialogs->onRun = [&](QDialog& dialog) {
            auto* pair = qobject_cast<SideBySide*>(&dialog);
            QVERIFY(pair);
            first = pair->shown();
            pair->QWidget::show();
            keepLook(*pair, "side-by-side");
            QTest::keyClick(pair, Qt::Key_Left);
            then = pair->shown();
            QTest::keyClick(pair, Qt::Key_Right);
            QTest::keyClick(pair, Qt::Key_Right); // the last one: it stays
            QTest::keyClick(pair, Qt::Key_Right, Qt::ShiftModifier);
            last = pair->shown();
            QStringList words;
            for (const QLabel* label : pair->findChildren<QLabel*>())
                words << label->text();
            left = words.filter(QStringLiteral("2026-02-01")).join(u' ');
            right = words.filter(QStringLiteral("2026-03-01")).join(u' ');
        };
        shortcutOf("Ctrl+Shift+D")->trigger();
        QVERIFY(first == std::pair(std::size_t{0}, std::size_t{2})); // the earliest and the latest
        QVERIFY(then == std::pair(std::size_t{0}, std::size_t{1}));
        QVERIFY(last == std::pair(std::size_t{1}, std::size_t{2}));
        QVERIFY(!left.isEmpty() && !right.isEmpty());
    }

    void fewerThanTwoPhotographsAreSaid() {
        addPhoto("2026-01-05", Qt::red);
        m_bench->setCell({{40}, dimension::letOff});
        m_window->lookSideBySide();
        QCOMPARE(m_dialogs->ran, 0);
        QVERIFY(notice().contains(QStringLiteral("two are set side by side")));
    }

    void aPictureDroppedOnTheWindowGoesToThePlaceLookedAt() {
        keepPicture("dropped.png", Qt::blue);
        m_bench->setCell({{12}, dimension::letOff});
        m_window->takeIn(phone() + QStringLiteral("/dropped.png"));
        QCOMPARE(m_bench->record()->photos.size(), std::size_t{1});
        QVERIFY(m_bench->record()->photos.front().about.note == NoteNumber{12});
        QVERIFY(m_window->showStation(QStringLiteral("piano")));
        m_window->takeIn(phone() + QStringLiteral("/dropped.png")); // of the piano: another place
        QCOMPARE(m_bench->record()->photos.size(), std::size_t{2});
        QVERIFY(m_bench->record()->photos.back().about == About{});
        m_window->takeIn(phone() + QStringLiteral("/dropped.png"));
        QCOMPARE(m_bench->record()->photos.size(), std::size_t{2}); // it is there
    }

    void aSecondOpinionGoesOutAndItsAnswerComesBackOnce() {
        Finding finding;
        finding.part = "hammer-head";
        finding.fault = "worn";
        finding.note = NoteNumber{40};
        QVERIFY(m_bench->addFindings(std::span(&finding, 1)).has_value());
        addPhoto("2026-01-05", Qt::red);
        m_dialogs->answers = {QStringLiteral("File again, or new hammers?")};
        m_dialogs->file = m_folder->filePath(QStringLiteral("page"));
        m_window->askOpinion();
        QFile page(m_folder->filePath(QStringLiteral("page.html")));
        QVERIFY(page.open(QIODevice::ReadOnly));
        const QByteArray html = page.readAll();
        QVERIFY(html.contains("File again, or new hammers?"));
        QVERIFY(html.contains("data:image/"));
        write("answer.txt", "piano: " + QByteArray::fromStdString(m_bench->record()->uuid) +
                                "\nwho: Berta K.\n\n[40 hammer-head] not enough, file again\n");
        for (int i = 0; i < 2; ++i)
            m_window->takeAnswerFile(phone() + QStringLiteral("/answer.txt"));
        QCOMPARE(m_bench->record()->remarks.size(), std::size_t{1});
        const Remark advice = m_bench->record()->remarks.front();
        QVERIFY(advice.kind == RemarkKind::advice);
        QCOMPARE(advice.who, std::string("Berta K."));
        acceptInTheWindow();
        QCOMPARE(m_bench->record()->remarks.front().accepted, std::string("yes"));
        m_window->takeAnswer("nothing in it", QStringLiteral("What was copied"));
        QVERIFY(notice().contains(QStringLiteral("What was copied")));
    }

private:
    /// The advice stands beside the finding, with its two answers.
    void acceptInTheWindow() {
        QVERIFY(m_window->showStation(QStringLiteral("survey")));
        auto* pages = m_window->findChild<SurveyPages*>();
        pages->showPage(SurveyPages::Page::memory);
        pages->memory().showPlace({{}, NoteNumber{40}, "hammer-head", {}});
        auto* accept = m_window->findChild<QPushButton*>(QStringLiteral("accept-advice"));
        QVERIFY(accept && accept->isVisible());
        keepLook(*m_window, "advice");
        accept->click();
        pages->memory().showPlace({{}, NoteNumber{40}, "hammer-head", {}});
        QVERIFY(!accept->isVisible());
    }
    /// HAMMERLINE_PHOTOGRAPH_PICTURES=FOLDER keeps what the tests see, to be looked at.
    static void keepLook(QWidget& widget, const char* name) {
        const QString folder = qEnvironmentVariable("HAMMERLINE_PHOTOGRAPH_PICTURES");
        if (!folder.isEmpty()) widget.grab().save(folder + u'/' + QLatin1String(name) + QStringLiteral(".png"));
    }
    QString phone() const { return m_folder->filePath(QStringLiteral("phone")); }
    QAction* shortcutOf(const char* keys) {
        for (QAction* action : m_window->findChildren<QAction*>())
            if (action->shortcut() == QKeySequence(QLatin1String(keys))) return action;
        qFatal("no action of %s", keys);
    }
    static QByteArray pictureBytes(const QColor& colour) {
        QImage image(320, 240, QImage::Format_RGB32);
        image.fill(colour);
        QByteArray bytes;
        QBuffer buffer(&bytes);
        buffer.open(QIODevice::WriteOnly);
        image.save(&buffer, "png");
        return bytes;
    }
    void write(const char* name, const QByteArray& bytes, int secondsAgo = 0) {
        QFile file(phone() + u'/' + QLatin1String(name));
        QVERIFY(file.open(QIODevice::WriteOnly));
        file.write(bytes);
        file.flush();
        if (secondsAgo != 0)
            file.setFileTime(QDateTime::currentDateTime().addSecs(secondsAgo), QFileDevice::FileModificationTime);
    }
    void keepPicture(const char* name, const QColor& colour, int secondsAgo = 0) {
        write(name, pictureBytes(colour), secondsAgo);
    }
    void lookTwice() {
        m_window->watched().look();
        m_window->watched().look();
    }
    void addPhoto(const char* day, const QColor& colour) {
        auto picture = readPicture(pictureBytes(colour), QStringLiteral("test"));
        QVERIFY(picture.has_value());
        Photo photo;
        photo.about = {{}, NoteNumber{40}, "hammer-head", {}};
        photo.on = day;
        photo.hash = picture->hash;
        const std::vector<BenchBook::NewPhoto> fresh = {{photo, *picture}};
        QVERIFY(m_bench->addPhotos(fresh).has_value());
    }
    QWidget& band() { return *m_window->findChild<QWidget*>(QStringLiteral("offeredPicture")); }
    bool bandSays(const char* text) {
        for (const QLabel* label : band().findChildren<QLabel*>())
            if (band().isVisible() && label->text().contains(QLatin1String(text))) return true;
        return false;
    }
    QString notice() { return m_window->findChild<QLabel*>(QStringLiteral("notice"))->text(); }
};

QTEST_MAIN(PhotographsTest)
#include "photographs_test.moc"
