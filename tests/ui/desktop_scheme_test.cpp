// The desktop goes dark at dusk and the window with it: a portal of the test's own on a bus of the test's own, spoken
// to as the desktop's would be.
#include "ui/widgets/desktop_scheme.h"

#include <QDBusAbstractAdaptor>
#include <QDBusMessage>
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
    unsigned wish = 0;
    int asked = 0;

public Q_SLOTS:
    QDBusVariant Read(const QString& group, const QString& key) {
        ++asked;
        const bool known = group == QLatin1String("org.freedesktop.appearance") && key == QLatin1String("color-scheme");
        return QDBusVariant(QVariant::fromValue(QDBusVariant(known ? wish : 99U)));
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

private:
    Portal m_portal;
    QProcess m_daemon;
};

QTEST_MAIN(DesktopSchemeTest)
#include "desktop_scheme_test.moc"
