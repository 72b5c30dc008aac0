// The desktop goes dark at dusk and the window with it: a portal of the test's own on a bus of the test's own, spoken
// to as the desktop's would be.
#include "ui/stations/action_drawn_page.h"
#include "ui/stations/action_wide.h"
#include "ui/widgets/desktop_scheme.h"
#include "ui/widgets/house_style.h"

#include <QDBusAbstractAdaptor>
#include <QDBusMessage>
#include <QDBusVariant>
#include <QProcess>
#include <QSignalSpy>
#include <QTest>

#include "window_bench.h"

using namespace hammerline;

namespace {

/// Answers as the portal of a desktop: the value in two wrappings, as Read has it.
class Portal : public QObject {
    Q_OBJECT
    Q_CLASSINFO("D-Bus Interface", "org.freedesktop.portal.Settings")
public:
    unsigned wish = 0, lessMotion = 0;
    bool animations = true;
    int asked = 0;

public Q_SLOTS:
    QDBusVariant Read(const QString& group, const QString& key) {
        ++asked;
        const bool appearance = group == QLatin1String("org.freedesktop.appearance");
        QVariant value = 99U;
        if (appearance && key == QLatin1String("color-scheme")) value = wish;
        if (appearance && key == QLatin1String("reduced-motion")) value = lessMotion;
        if (key == QLatin1String("enable-animations")) value = animations;
        return QDBusVariant(QVariant::fromValue(QDBusVariant(value)));
    }
};

} // namespace

class DesktopSchemeTest : public QObject, protected WindowBench {
    Q_OBJECT
private Q_SLOTS:
    void initTestCase() {
        m_daemon.start(QStringLiteral("dbus-daemon"),
                       {QStringLiteral("--session"), QStringLiteral("--nofork"), QStringLiteral("--print-address")});
        QVERIFY(m_daemon.waitForStarted());
        QVERIFY(m_daemon.waitForReadyRead());
        const QByteArray address = m_daemon.readLine().trimmed();
        qputenv("DBUS_SESSION_BUS_ADDRESS", address);
        auto bus = QDBusConnection::connectToBus(QString::fromUtf8(address), QStringLiteral("desktop"));
        QVERIFY(bus.registerService(QStringLiteral("org.freedesktop.portal.Desktop")));
        QVERIFY(bus.registerObject(QStringLiteral("/org/freedesktop/portal/desktop"), &m_portal,
                                   QDBusConnection::ExportAllSlots));
    }
    void cleanup() { close(); }
    void cleanupTestCase() {
        QDBusConnection::disconnectFromBus(QStringLiteral("desktop"));
        m_daemon.kill();
        m_daemon.waitForFinished();
    }

    void theWindowIsAsTheDesktopSaysAtTheStart() {
        m_portal.wish = 1;
        open();
        m_settings->set(Setting::theme, QStringLiteral("desktop"));
        m_window->followDesktop();
        QTRY_COMPARE(themeOf(QApplication::palette()), Theme::dark);
        QCOMPARE(themeOf(grid().palette()), Theme::dark); // not only what is made after it
        QVERIFY(m_portal.asked > 0);
    }

    void aThemeThatWasChosenStays() {
        m_portal.wish = 1;
        open();
        m_settings->set(Setting::theme, QStringLiteral("light"));
        m_window->followDesktop();
        QSignalSpy told(m_window->findChild<DesktopScheme*>(), &DesktopScheme::told);
        QTRY_VERIFY(!told.isEmpty());
        QCOMPARE(themeOf(QApplication::palette()), Theme::light);
        m_window->setTheme(QStringLiteral("desktop")); // and chosen now it is the desktop's at once
        QCOMPARE(themeOf(QApplication::palette()), Theme::dark);
        m_window->setTheme(QStringLiteral("light"));
    }

    // The one thing that moves by itself is the key played slowly: it stands at the bottom at once.
    void lessMotionIsHonoured_data() {
        QTest::addColumn<unsigned>("less");
        QTest::addColumn<bool>("animations");
        QTest::addColumn<bool>("plays");
        QTest::newRow("no wish") << 0U << true << true;
        QTest::newRow("less motion") << 1U << true << false;
        QTest::newRow("no animations") << 0U << false << false;
    }
    void lessMotionIsHonoured() {
        QFETCH(const unsigned, less);
        QFETCH(const bool, animations);
        QFETCH(const bool, plays);
        m_portal.lessMotion = less;
        m_portal.animations = animations;
        open();
        for (const auto& [id, typed] : {std::pair{dimension::keyDip, "10.0"},
                                        {dimension::lostMotion, "0.3"},
                                        {dimension::blow, "46"},
                                        {dimension::letOff, "3.0"}})
            QVERIFY(m_bench->enter({{40}, id}, reading(typed)).has_value());
        m_bench->setCell({{40}, dimension::letOff});
        m_window->followDesktop();
        QSignalSpy told(m_window->findChild<DesktopScheme*>(), &DesktopScheme::motionTold);
        QTRY_COMPARE(told.size(), 2); // both have answered
        shortcut(QStringLiteral("F7"))->trigger();
        auto* wide = m_window->findChild<ActionWide*>();
        wide->showPage(2);
        auto* drawn = m_window->findChild<DrawnPage*>();
        QVERIFY(drawn && drawn->body());
        QTest::keyClick(drawn, Qt::Key_Space);
        QCOMPARE(drawn->plays(), plays);
        if (!plays) QCOMPARE(drawn->moment(), Moment::bottom);
        HouseStyle::setReducedMotion(false);
    }

private:
    Portal m_portal;
    QProcess m_daemon;
};

QTEST_MAIN(DesktopSchemeTest)
#include "desktop_scheme_test.moc"
