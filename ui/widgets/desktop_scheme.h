// Whether the desktop is light or dark, whether it wants less motion, and when that changes: its settings portal
// ("org.freedesktop.appearance" "color-scheme": 1 dark, 2 light, 0 no wish; "reduced-motion": 1 less; and the older
// "org.gnome.desktop.interface" "enable-animations").
#pragma once

#include "ui/widgets/look.h"

#include <QDBusConnection>
#include <QObject>

namespace hammerline {

class DesktopScheme : public QObject {
    Q_OBJECT
public:
    explicit DesktopScheme(const QDBusConnection& = QDBusConnection::sessionBus(), QObject* parent = nullptr);

Q_SIGNALS:
    void told(hammerline::Theme);
    void motionTold(bool reduced);

private:
    void takeScheme(const QVariant&);
    void tellMotion();
    bool m_wantsLess = false; // reduced-motion
    bool m_animations = true; // enable-animations
};

} // namespace hammerline
