// One setting of the desktop, asked for once and told of again when it changes: the settings portal over the session
// bus (org.freedesktop.portal.Settings). https://flatpak.github.io/xdg-desktop-portal/
#pragma once

#include <QDBusConnection>
#include <QDBusVariant>
#include <QObject>

namespace hammerline {

class PortalSetting : public QObject {
    Q_OBJECT
public:
    /// Asks without waiting; a desktop without a portal, or without that setting, says nothing, ever.
    PortalSetting(const QDBusConnection&, QString group, QString key, QObject* parent);

Q_SIGNALS:
    void told(const QVariant& value);

private Q_SLOTS:
    void settingChanged(const QString& group, const QString& key, const QDBusVariant& value);

private:
    void take(QVariant value);
    QDBusConnection m_bus;
    QString m_group, m_key;
};

} // namespace hammerline
