#include "ui/settings/settings.h"

#include <QFileInfo>
#include <QStandardPaths>

namespace hammerline {

namespace {
constexpr int kRecentBooks = 8;

QString defaultPath() {
    return QStandardPaths::writableLocation(QStandardPaths::ConfigLocation) +
           QStringLiteral("/hammerline/hammerline.ini");
}
} // namespace

const std::vector<SettingRow>& Settings::table() {
    static const std::vector<SettingRow> rows{
        {Setting::theme, "look/theme", QStringLiteral("desktop")},
        {Setting::textSize, "look/text-size", 100},
        {Setting::benchInDark, "look/bench-in-dark", true},
        {Setting::roomyRows, "look/roomy-rows", false},
        {Setting::geometry, "window/geometry", QByteArray()},
        {Setting::noteCard, "window/note-card", true},
        {Setting::noteCardSide, "window/note-card-side", QStringLiteral("right")},
        {Setting::station, "window/station", QStringLiteral("measure")},
        {Setting::recentBooks, "books/recent", QStringList()},
        {Setting::lastPiano, "books/piano", QString()},
        {Setting::lastPass, "books/pass", 0},
        {Setting::lastFolder, "books/folder", QString()},
        {Setting::paper, "print/paper", QString()},
        {Setting::copiesElsewhere, "books/copies-elsewhere", QVariantMap()},
        {Setting::watchedFolders, "books/watched-folders", QVariantMap()},
    };
    return rows;
}

Settings::Settings(const QString& path) : m_ini(path.isEmpty() ? defaultPath() : path, QSettings::IniFormat) {}

QVariant Settings::value(Setting setting) const {
    const SettingRow& row = table()[static_cast<std::size_t>(setting)];
    const QVariant stored = m_ini.value(QLatin1String(row.key), row.initial);
    // a hand-edited file may hold anything: what does not convert counts as not set
    return stored.canConvert(row.initial.metaType()) ? stored : row.initial;
}

/// What stands there already is not written again: a write waits for the disk twice, and most settings are set at every
/// start to what they were.
void Settings::set(Setting setting, const QVariant& value) {
    QVariant now = this->value(setting);
    if (now.convert(value.metaType()) && now == value) return;
    m_ini.setValue(QLatin1String(table()[static_cast<std::size_t>(setting)].key), value);
}

QStringList Settings::recentBooks() const {
    return value(Setting::recentBooks).toStringList();
}

void Settings::rememberBook(const QString& path) {
    const QString full = QFileInfo(path).absoluteFilePath();
    QStringList books = recentBooks();
    books.removeAll(full);
    books.prepend(full);
    set(Setting::recentBooks, QStringList(books.mid(0, kRecentBooks)));
}

void Settings::forgetBook(const QString& path) {
    QStringList books = recentBooks();
    books.removeAll(QFileInfo(path).absoluteFilePath());
    set(Setting::recentBooks, books);
}

} // namespace hammerline
