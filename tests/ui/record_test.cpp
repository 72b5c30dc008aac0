// The piano's own record under a person's hands: whose it is, put away, photographs and remarks of a place. And what is
// made of a camera's file, however it was written.
#include "ui/pictures/picture_reading.h"
#include "ui/stations/survey_memory.h"
#include "ui/stations/survey_pages.h"
#include "ui/words/piano_record.h"

#include <QBuffer>
#include <QComboBox>
#include <QElapsedTimer>
#include <QImage>
#include <QLineEdit>
#include <QListWidget>
#include <QPushButton>
#include <QTemporaryDir>
#include <QTest>

#include "window_bench.h"

using namespace hammerline;

namespace {

/// Red in the upper left quarter, blue elsewhere: a turn shows.
QImage cornered(int width, int height) {
    QImage image(width, height, QImage::Format_RGB32);
    image.fill(Qt::blue);
    for (int y = 0; y < height / 2; ++y)
        for (int x = 0; x < width / 2; ++x)
            image.setPixel(x, y, qRgb(255, 0, 0));
    return image;
}

QByteArray fileOf(const QImage& image, const char* format) {
    QByteArray bytes;
    QBuffer buffer(&bytes);
    buffer.open(QIODevice::WriteOnly);
    image.save(&buffer, format, 95);
    return bytes;
}

void put16(QByteArray& to, int value) {
    to.append(static_cast<char>(value >> 8)).append(static_cast<char>(value & 0xff));
}
void put32(QByteArray& to, int value) {
    put16(to, value >> 16);
    put16(to, value & 0xffff);
}

/// The first picture directory of CIPA DC-008 (Exif 2.3): maker (0x010F), orientation (0x0112), and the pointer to a
/// GPS directory (0x8825), big-endian, in an APP1 segment.
QByteArray cameraMark(int orientation) {
    QByteArray tiff("MM\0*", 4);
    put32(tiff, 8);
    put16(tiff, 3);
    const int texts = 8 + 2 + 3 * 12 + 4;
    put16(tiff, 0x010F), put16(tiff, 2), put32(tiff, 16), put32(tiff, texts);
    put16(tiff, 0x0112), put16(tiff, 3), put32(tiff, 1), put16(tiff, orientation), put16(tiff, 0);
    put16(tiff, 0x8825), put16(tiff, 4), put32(tiff, 1), put32(tiff, texts + 16);
    put32(tiff, 0);
    tiff.append("SECRET-MAKER-XY", 16);
    put16(tiff, 1); // GPS: the version, with a mark of ours in it
    put16(tiff, 0), put16(tiff, 1), put32(tiff, 4), tiff.append("GPS!", 4);
    put32(tiff, 0);
    QByteArray segment("\xff\xe1", 2);
    put16(segment, static_cast<int>(tiff.size()) + 8);
    segment.append("Exif\0\0", 6).append(tiff);
    return segment;
}

QByteArray jpegFromCamera(const QImage& image, int orientation) {
    QByteArray bytes = fileOf(image, "jpeg");
    return bytes.insert(2, cameraMark(orientation));
}

bool reddish(QRgb colour) {
    return qRed(colour) > 150 && qBlue(colour) < 100;
}

} // namespace

class RecordTest : public QObject, protected WindowBench {
    Q_OBJECT
private Q_SLOTS:
    void init() {
        open("old-upright", {{"last-damper", "66"}});
        m_window->resize(1280, 800);
    }
    void cleanup() { close(); }

    void aPictureIsTurnedUprightAndKeepsNeitherPlaceNorCamera() {
        // orientation 6: its upper left corner belongs to the upper right (CIPA DC-008, 4.6.4, tag 274)
        const QByteArray file = jpegFromCamera(cornered(400, 200), 6);
        QVERIFY(file.contains("SECRET-MAKER"));
        const auto read = readPicture(file, QStringLiteral("x.jpg"));
        QVERIFY(read.has_value());
        QCOMPARE(read->width, 200);
        QCOMPARE(read->height, 400);
        const QImage upright = imageOf(read->bytes);
        QVERIFY(reddish(upright.pixel(150, 50)));
        QVERIFY(!reddish(upright.pixel(50, 50)));
        QVERIFY(!reddish(upright.pixel(50, 350)));
        for (const std::string& part : {read->bytes, read->thumb}) {
            QVERIFY(part.find("SECRET-MAKER") == std::string::npos);
            QVERIFY(part.find("Exif") == std::string::npos);
            QVERIFY(part.find("GPS!") == std::string::npos);
        }
        QCOMPARE(readPicture(file, QStringLiteral("y.jpg"))->hash, read->hash); // the same file, the same picture
    }

    void aLargePictureIsMadeSmallerUnlessItsFullSizeIsWanted() {
        const QByteArray wide = fileOf(cornered(4000, 1000), "jpeg");
        QCOMPARE(readPicture(wide, QStringLiteral("w"))->width, kWidestPicture);
        QCOMPARE(readPicture(wide, QStringLiteral("w"))->height, 400);
        QCOMPARE(readPicture(wide, QStringLiteral("w"), true)->width, 4000);
        // turned by a quarter its height is what it is wide
        QCOMPARE(readPicture(jpegFromCamera(cornered(1000, 4000), 8), QStringLiteral("t"))->width, kWidestPicture);
        const auto drawn = readPicture(fileOf(cornered(300, 200), "png"), QStringLiteral("p"));
        QCOMPARE(drawn->kind, std::string("png"));
        QVERIFY(!imageOf(drawn->thumb).isNull());
        QVERIFY(std::max(imageOf(drawn->thumb).width(), imageOf(drawn->thumb).height()) <= kThumbSide);
    }

    void whatIsNoPictureOrAHostileOneIsRefusedAndStopsNothing() {
        const auto refusal = [](const QByteArray& file) {
            const auto read = readPicture(file, QStringLiteral("x"));
            return read ? std::string("taken") : read.error().detail;
        };
        QCOMPARE(refusal({}), std::string());
        QCOMPARE(refusal("no picture at all"), std::string());
        QCOMPARE(refusal("<svg xmlns='http://www.w3.org/2000/svg' width='9' height='9'/>"), std::string());
        QCOMPARE(refusal(QByteArray(31'000'000, 'x')), std::string("large"));
        // a PNG that says it is 50,000 points each way (PNG 1.2, 4.1.1: width and height behind "IHDR")
        QByteArray bomb = fileOf(cornered(8, 8), "png");
        const auto at = bomb.indexOf("IHDR") + 4;
        QByteArray size;
        put32(size, 50'000), put32(size, 50'000);
        bomb.replace(at, 8, size);
        QVERIFY(refusal(bomb) != "taken");
        // every cut and many flipped bytes of a sound file: taken or refused, never more
        const QByteArray sound = jpegFromCamera(cornered(64, 48), 3);
        for (int cut = 0; cut < sound.size(); cut += 37)
            (void)readPicture(sound.left(cut), QStringLiteral("cut"));
        for (int i = 2; i < sound.size(); i += 23) {
            QByteArray flipped = sound;
            flipped[i] = static_cast<char>(flipped[i] ^ 0x5a);
            (void)readPicture(flipped, QStringLiteral("flipped"));
        }
    }

    void whoseItIsIsTypedAtThePianoStationAndUndone() {
        QVERIFY(m_window->showStation(QStringLiteral("piano")));
        auto* owner = m_window->findChild<QLineEdit*>(QStringLiteral("identity-owner"));
        QVERIFY(owner);
        owner->setFocus();
        QTest::keyClicks(owner, QStringLiteral("Zoe B."));
        QTest::keyClick(owner, Qt::Key_Return);
        QCOMPARE(m_bench->record()->identity.at("owner"), std::string("Zoe B."));
        auto* year = m_window->findChild<QLineEdit*>(QStringLiteral("identity-year"));
        QTest::keyClicks(year, QStringLiteral("long ago"));
        QTest::keyClick(year, Qt::Key_Return);
        QVERIFY(!m_bench->record()->identity.contains("year"));
        QCOMPARE(year->text(), QStringLiteral("long ago")); // kept in its field, with the reason below it
        QTest::keyClick(year, Qt::Key_Escape);
        QVERIFY(year->text().isEmpty());
        QVERIFY(m_bench->undo().has_value());
        QVERIFY(m_bench->record()->identity.empty());
        QVERIFY(owner->text().isEmpty());
    }

    void aPianoIsPutAwayAndBroughtBack() {
        QVERIFY(m_window->showStation(QStringLiteral("piano")));
        auto* button = m_window->findChild<QPushButton*>(QStringLiteral("put-away"));
        QVERIFY(button);
        button->click();
        QVERIFY(isArchived(m_bench->record()->identity));
        QVERIFY(isArchived(m_bench->pianos().front().identity));
        button->click();
        QVERIFY(!isArchived(m_bench->record()->identity));
    }

    void photographsAndRemarksOfAPlaceAreTakenShownAndTakenBack() {
        QTemporaryDir folder;
        const QString camera = folder.filePath(QStringLiteral("hammer.jpg")),
                      text = folder.filePath(QStringLiteral("x.jpg"));
        QFile file(camera);
        QVERIFY(file.open(QIODevice::WriteOnly));
        file.write(jpegFromCamera(cornered(800, 600), 6));
        file.close();
        QFile none(text);
        QVERIFY(none.open(QIODevice::WriteOnly));
        none.write("no picture");
        none.close();
        QVERIFY(m_window->showStation(QStringLiteral("survey")));
        auto* memory = m_window->findChild<SurveyMemory*>();
        auto* pages = m_window->findChild<SurveyPages*>();
        QVERIFY(memory && pages);
        pages->showPage(SurveyPages::Page::memory);
        const auto at = [&](int note) { memory->showPlace({{}, NoteNumber{note}, "hammer-head", {}}); };
        at(40); // every act brings back the place under the cursor
        QVERIFY(memory->takeFiles({camera}));
        at(40);
        QVERIFY(memory->takeFiles({camera})); // there already
        QVERIFY(!memory->takeFiles({text}));
        QCOMPARE(m_bench->record()->photos.size(), std::size_t{1});
        at(40);
        auto* shown = memory->findChild<QListWidget*>();
        QCOMPARE(shown->count(), 1);
        QVERIFY(!shown->item(0)->icon().isNull());
        auto* remark = memory->findChild<QLineEdit*>();
        QTest::keyClicks(remark, QStringLiteral("file again"));
        QTest::keyClick(remark, Qt::Key_Return);
        QCOMPARE(m_bench->record()->remarks.front().text, std::string("file again"));
        QVERIFY(m_bench->record()->remarks.front().about.note == NoteNumber{40});
        at(41);
        QCOMPARE(shown->count(), 0);
        at(40);
        QCOMPARE(shown->count(), 1);
        shown->setFocus();
        shown->setCurrentRow(0);
        QTest::keyClick(shown, Qt::Key_Delete);
        QVERIFY(m_bench->record()->photos.empty());
        QVERIFY(m_bench->undo().has_value());
        QCOMPARE(m_bench->record()->photos.size(), std::size_t{1});
    }

    void aPianoIsFoundByAnyOfItsWords() {
        const QStringList texts{QStringLiteral("Hall upright"), QStringLiteral("Zo\u00EB B."), QStringLiteral("1912")};
        QVERIFY(words::holdsWords(QStringLiteral("zoe HALL"), texts));
        QVERIFY(words::holdsWords(QString(), texts));
        QVERIFY(!words::holdsWords(QStringLiteral("zoe 1913"), texts));
    }
};

QTEST_MAIN(RecordTest)
#include "record_test.moc"
