#include "ui/widgets/desktop_scheme.h"

#include "ui/widgets/portal_setting.h"

#include <QVariant>

namespace hammerline {

DesktopScheme::DesktopScheme(const QDBusConnection& bus, QObject* parent) : QObject(parent) {
    const QString appearance = QStringLiteral("org.freedesktop.appearance");
    auto* scheme = new PortalSetting(bus, appearance, QStringLiteral("color-scheme"), this);
    connect(scheme, &PortalSetting::told, this, &DesktopScheme::takeScheme);
    auto* reduced = new PortalSetting(bus, appearance, QStringLiteral("reduced-motion"), this);
    connect(reduced, &PortalSetting::told, this, [this](const QVariant& value) {
        m_wantsLess = value.toUInt() == 1;
        tellMotion();
    });
    auto* animations = new PortalSetting(bus, QStringLiteral("org.gnome.desktop.interface"),
                                         QStringLiteral("enable-animations"), this);
    connect(animations, &PortalSetting::told, this, [this](const QVariant& value) {
        if (value.metaType() != QMetaType::fromType<bool>()) return;
        m_animations = value.toBool();
        tellMotion();
    });
}

void DesktopScheme::takeScheme(const QVariant& value) {
    const unsigned wish = value.toUInt();
    if (wish == 1) Q_EMIT told(Theme::dark);
    if (wish == 2 || wish == 0) Q_EMIT told(Theme::light);
}

void DesktopScheme::tellMotion() {
    Q_EMIT motionTold(m_wantsLess || !m_animations);
}

} // namespace hammerline
