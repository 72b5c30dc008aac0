#include "ui/widgets/desktop_scheme.h"

#include <QDBusMessage>
#include <QDBusPendingCallWatcher>
#include <QDBusPendingReply>

namespace hammerline {

namespace {
const QString kPortal = QStringLiteral("org.freedesktop.portal.Desktop");
const QString kPortalPath = QStringLiteral("/org/freedesktop/portal/desktop");
const QString kPortalSettings = QStringLiteral("org.freedesktop.portal.Settings");
const QString kAppearance = QStringLiteral("org.freedesktop.appearance");
const QString kColourScheme = QStringLiteral("color-scheme");
} // namespace

DesktopScheme::DesktopScheme(const QDBusConnection& bus, QObject* parent) : QObject(parent), m_bus(bus) {
    if (!m_bus.isConnected()) return;
    m_bus.connect(kPortal, kPortalPath, kPortalSettings, QStringLiteral("SettingChanged"), this,
                  SLOT(settingChanged(QString, QString, QDBusVariant)));
    QDBusMessage question =
        QDBusMessage::createMethodCall(kPortal, kPortalPath, kPortalSettings, QStringLiteral("Read"));
    question << kAppearance << kColourScheme;
    auto* answer = new QDBusPendingCallWatcher(m_bus.asyncCall(question), this);
    connect(answer, &QDBusPendingCallWatcher::finished, this, [this, answer] {
        const QDBusPendingReply<QDBusVariant> reply = *answer;
        if (reply.isValid()) take(reply.value().variant());
        answer->deleteLater();
    });
}

void DesktopScheme::settingChanged(const QString& group, const QString& key, const QDBusVariant& value) {
    if (group == kAppearance && key == kColourScheme) take(value.variant());
}

/// Read wraps the value once more than SettingChanged does.
void DesktopScheme::take(QVariant value) {
    while (value.canConvert<QDBusVariant>() && value.metaType() == QMetaType::fromType<QDBusVariant>())
        value = value.value<QDBusVariant>().variant();
    const unsigned wish = value.toUInt();
    if (wish == 1) Q_EMIT told(Theme::dark);
    if (wish == 2 || wish == 0) Q_EMIT told(Theme::light);
}

} // namespace hammerline
