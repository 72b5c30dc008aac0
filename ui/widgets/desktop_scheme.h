// Whether the desktop is light or dark, and when it changes: the settings portal of the desktop over the session bus
// (org.freedesktop.portal.Settings, "org.freedesktop.appearance" "color-scheme"; 1 dark, 2 light, 0 no wish).
// https://flatpak.github.io/xdg-desktop-portal/
#pragma once

#include "ui/widgets/look.h"

#include <QDBusConnection>
#include <QDBusVariant>
#include <QObject>

namespace hammerline {

class DesktopScheme : public QObject {
    Q_OBJECT
public:
    /// Asks without waiting; a desktop without a portal says nothing, ever.
    explicit DesktopScheme(const QDBusConnection& = QDBusConnection::sessionBus(), QObject* parent = nullptr);

Q_SIGNALS:
    void told(hammerline::Theme);

private Q_SLOTS:
    void settingChanged(const QString& group, const QString& key, const QDBusVariant& value);

private:
    void take(QVariant value);
    QDBusConnection m_bus;
};

} // namespace hammerline
