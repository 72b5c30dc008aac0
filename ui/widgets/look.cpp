#include "ui/widgets/look.h"

#include "ui/widgets/house_style.h"
#include "ui/widgets/quiet_wheel.h"
#include "ui/widgets/spoken.h"

#include <QApplication>
#include <QFontDatabase>
#include <QFontInfo>
#include <QStyle>
#include <QWidget>

#include <optional>

namespace hammerline {

namespace {

constexpr QRgb rgb(unsigned hex) {
    return 0xFF000000U | hex;
}

constexpr Look kLight{rgb(0xE3E7E1),
                      rgb(0xFCFCF9),
                      rgb(0xF0F3ED),
                      rgb(0xD9E0D8),
                      rgb(0xCCD4CB),
                      rgb(0x74807A),
                      rgb(0x16201B),
                      rgb(0x414D46),
                      rgb(0x56625B),
                      rgb(0xCFE2D7),
                      rgb(0x0E1612),
                      rgb(0xFCFCF9),
                      rgb(0x1D4035),
                      rgb(0xF1F5EF),
                      rgb(0xB9CEC3),
                      rgb(0x1F5B48),
                      rgb(0xFFFFFF),
                      rgb(0xDCE9E0),
                      rgb(0x8A1538),
                      rgb(0xF7E4E8),
                      rgb(0xFDFDFA),
                      rgb(0x141B17),
                      rgb(0x9DB7AA),
                      {{{rgb(0x003D6A), rgb(0xFFFFFF)},
                        {rgb(0x5C9BD5), rgb(0x16201B)},
                        {rgb(0xB6D2EE), rgb(0x16201B)},
                        {rgb(0xFCFCF9), rgb(0x16201B)},
                        {rgb(0xFBDEBA), rgb(0x16201B)},
                        {rgb(0xF0AB5E), rgb(0x16201B)},
                        {rgb(0xA45110), rgb(0xFFFFFF)}}}};

constexpr Look kDark{rgb(0x111614),
                     rgb(0x181E1B),
                     rgb(0x1E2522),
                     rgb(0x262F2A),
                     rgb(0x333E38),
                     rgb(0x7E8C84),
                     rgb(0xE9EFEA),
                     rgb(0xB7C3BC),
                     rgb(0xA8B4AD),
                     rgb(0x2A453A),
                     rgb(0xF5FAF6),
                     rgb(0x0B0F0D),
                     rgb(0x0B1D17),
                     rgb(0xE6EFE9),
                     rgb(0x9DB7AA),
                     rgb(0x8CCBB1),
                     rgb(0x0C1512),
                     rgb(0x22332B),
                     rgb(0xFFA3B4),
                     rgb(0x3B1A23),
                     rgb(0xFDFDFA),
                     rgb(0x141B17),
                     rgb(0x4C6A5D),
                     {{{rgb(0x67B9EF), rgb(0x0B0F0D)},
                       {rgb(0x076CAC), rgb(0xFFFFFF)},
                       {rgb(0x0D365B), rgb(0xE9EFEA)},
                       {rgb(0x181E1B), rgb(0xE9EFEA)},
                       {rgb(0x5F4019), rgb(0xE9EFEA)},
                       {rgb(0xC07425), rgb(0x0B0F0D)},
                       {rgb(0xFFC96E), rgb(0x0B0F0D)}}}};

constexpr double kBasePoints = 10.0;

constexpr std::array<double, 9> kPoints{8.25, 8.6, 9.4, 10.5, 11.25, 15.0, 9.0, 12.75, 30.0}; // by Text

/// What follows from the application's font: every cell that is painted asks for it, and a font that is made anew is
/// looked up among all of the system's.
struct FacesOfFont {
    QFont from;
    double unit = 1;
    std::array<std::array<QFont, 2>, kPoints.size()> faces; // regular, bold
};

const FacesOfFont& measured() {
    static std::optional<FacesOfFont> known;
    const QFont now = QApplication::font();
    if (known && known->from.isCopyOf(now)) return *known;
    known.emplace();
    known->from = now;
    // 10 pt at 96 dpi are 13.33 px, and 4 px to the unit: 0.3 of the height of the type.
    known->unit = std::max(1.0, std::round(QFontInfo(now).pixelSize() * 0.3));
    for (std::size_t i = 0; i < kPoints.size(); ++i)
        for (const bool bold : {false, true}) {
            QFont& font = known->faces[i][bold ? 1 : 0] = now;
            font.setPointSizeF(now.pointSizeF() * kPoints[i] / kBasePoints);
            font.setBold(bold);
        }
    return *known;
}

} // namespace

const Look& lookOf(Theme theme) {
    return theme == Theme::dark ? kDark : kLight;
}

Theme themeOf(const QPalette& palette) {
    return palette.color(QPalette::Window).lightness() < palette.color(QPalette::WindowText).lightness() ? Theme::dark
                                                                                                         : Theme::light;
}

const Look& lookOf(const QPalette& palette) {
    return lookOf(themeOf(palette));
}
const Look& lookOf(const QWidget& widget) {
    return lookOf(widget.palette());
}

QPalette paletteOf(Theme theme) {
    const Look& look = lookOf(theme);
    QPalette palette;
    const auto set = [&](QPalette::ColorRole role, QRgb colour) { palette.setColor(role, QColor::fromRgb(colour)); };
    set(QPalette::Window, look.bench);
    set(QPalette::Base, look.paper);
    set(QPalette::Button, look.paper);
    set(QPalette::AlternateBase, look.paper2);
    set(QPalette::Midlight, look.line);
    set(QPalette::Light, look.paper);
    set(QPalette::Mid, look.edge);
    set(QPalette::Dark, look.edge);
    set(QPalette::Shadow, look.ink2);
    set(QPalette::Text, look.ink);
    set(QPalette::WindowText, look.ink);
    set(QPalette::ButtonText, look.ink);
    set(QPalette::PlaceholderText, look.ink3);
    set(QPalette::Highlight, look.sel);
    set(QPalette::HighlightedText, look.ink);
    set(QPalette::Link, look.act);
    set(QPalette::LinkVisited, look.act);
    set(QPalette::BrightText, look.fault);
    set(QPalette::ToolTipBase, look.paper);
    set(QPalette::ToolTipText, look.ink);
    for (const auto role : {QPalette::Text, QPalette::WindowText, QPalette::ButtonText})
        palette.setColor(QPalette::Disabled, role, QColor::fromRgb(look.ink3));
    return palette;
}

QFont face(Text text, bool bold) {
    return measured().faces[static_cast<std::size_t>(text)][bold ? 1 : 0];
}

QString elided(const QString& text, const QFont& font, double room) {
    return QFontMetricsF(font).elidedText(text, Qt::ElideRight, room);
}

QFont expectedFace(Text text) {
    QFont font = face(text);
    font.setItalic(true);
    return font;
}

double units(double n) {
    return n * measured().unit;
}

int u(double n) {
    return qRound(units(n));
}

namespace {

/// By the palette the application started with, until the desktop says otherwise.
Theme& desktopsOwn() {
    static Theme theme = themeOf(QApplication::palette());
    return theme;
}

} // namespace

Theme desktopTheme() {
    return desktopsOwn();
}

void setDesktopTheme(Theme theme) {
    desktopsOwn() = theme;
}

int textSize() {
    return qRound(QApplication::font().pointSizeF() / kBasePoints * 100.0);
}

void dress(Theme theme, int percent) {
    desktopTheme(); // remembered before the palette changes
    static auto* const quiet = [] {
        auto* filter = new QuietWheel(qApp);
        qApp->installEventFilter(filter);
        return filter;
    }();
    Q_UNUSED(quiet);
    installSpoken();
    if (!qobject_cast<HouseStyle*>(QApplication::style())) QApplication::setStyle(new HouseStyle);
    QFont font{QStringLiteral("Noto Sans")};
    font.setFamilies({QStringLiteral("Noto Sans"), QStringLiteral("DejaVu Sans")});
    font.setPointSizeF(kBasePoints * std::clamp(percent, 80, 200) / 100.0);
    QApplication::setFont(font);
    QApplication::setPalette(paletteOf(theme));
    QApplication::setEffectEnabled(Qt::UI_AnimateMenu, false);
    QApplication::setEffectEnabled(Qt::UI_FadeMenu, false);
    QApplication::setEffectEnabled(Qt::UI_AnimateCombo, false);
    QApplication::setEffectEnabled(Qt::UI_AnimateTooltip, false);
    QApplication::setEffectEnabled(Qt::UI_FadeTooltip, false);
}

} // namespace hammerline
