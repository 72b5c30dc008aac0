#include "ui/widgets/portal_setting.h"

#include <QDBusMessage>
#include <QDBusPendingCallWatcher>
#include <QDBusPendingReply>

#include <utility>

namespace hammerline {

namespace {
const QString kPortal = QStringLiteral("org.freedesktop.portal.Desktop");
const QString kPortalPath = QStringLiteral("/org/freedesktop/portal/desktop");
const QString kPortalSettings = QStringLiteral("org.freedesktop.portal.Settings");
} // namespace

PortalSetting::PortalSetting(const QDBusConnection& bus, QString group, QString key, QObject* parent)
    : QObject(parent), m_bus(bus), m_group(std::move(group)), m_key(std::move(key)) {
    if (!m_bus.isConnected()) return;
    m_bus.connect(kPortal, kPortalPath, kPortalSettings, QStringLiteral("SettingChanged"), this,
                  SLOT(settingChanged(QString, QString, QDBusVariant)));
    QDBusMessage question =
        QDBusMessage::createMethodCall(kPortal, kPortalPath, kPortalSettings, QStringLiteral("Read"));
    question << m_group << m_key;
    auto* answer = new QDBusPendingCallWatcher(m_bus.asyncCall(question), this);
    connect(answer, &QDBusPendingCallWatcher::finished, this, [this, answer] {
        const QDBusPendingReply<QDBusVariant> reply = *answer;
        if (reply.isValid()) take(reply.value().variant());
        answer->deleteLater();
    });
}

void PortalSetting::settingChanged(const QString& group, const QString& key, const QDBusVariant& value) {
    if (group == m_group && key == m_key) take(value.variant());
}

/// Read wraps the value once more than SettingChanged does.
void PortalSetting::take(QVariant value) {
    while (value.canConvert<QDBusVariant>() && value.metaType() == QMetaType::fromType<QDBusVariant>())
        value = value.value<QDBusVariant>().variant();
    Q_EMIT told(value);
}

} // namespace hammerline
