// What a person likes on this machine, in one ini file: theme, text size, window, recent books. Everything about a
// piano stands in the bench book instead. A broken file gives the defaults and never stops the start.
#pragma once

#include <QSettings>
#include <QStringList>
#include <QVariant>

#include <array>

namespace hammerline {

enum class Setting : std::uint8_t {
    theme,    // light, dark, desktop
    textSize, // per cent
    benchInDark,
    roomyRows,
    geometry,
    noteCard,     // shown
    noteCardSide, // left, right
    station,
    recentBooks,
    lastPiano, // uuid
    lastPass,
    lastFolder,
    paper,           // A4, Letter; empty: as is usual in the country
    copiesElsewhere, // by the path of a book, the day (ISO) of its newest copy on another device
    watchedFolders,  // by the path of a book, the folder whose new pictures are offered
    count
};

struct SettingRow {
    Setting setting;
    const char* key;
    QVariant initial;
};

class Settings {
public:
    /// Empty path: hammerline/hammerline.ini in the config folder.
    explicit Settings(const QString& path = {});

    QVariant value(Setting) const;
    QString text(Setting s) const { return value(s).toString(); }
    int number(Setting s) const { return value(s).toInt(); }
    bool on(Setting s) const { return value(s).toBool(); }
    void set(Setting, const QVariant&);

    /// Most recent first, eight at most; files that are gone stay listed until opened in vain.
    QStringList recentBooks() const;
    void rememberBook(const QString& path);
    void forgetBook(const QString& path);

    static const std::vector<SettingRow>& table();

private:
    QSettings m_ini;
};

} // namespace hammerline
