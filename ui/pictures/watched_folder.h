// A folder that is watched while one works, such as one that a telephone fills with what it photographs: the newest
// picture that has come since is offered, and nothing is taken by itself.
#pragma once

#include "core/refusal/refusal.h"

#include <QDateTime>
#include <QFileSystemWatcher>
#include <QObject>
#include <QTimer>

#include <map>

namespace hammerline {

class WatchedFolder : public QObject {
    Q_OBJECT
public:
    explicit WatchedFolder(QObject* parent);
    /// Pictures that are in it already are left where they are. Refuses cannotRead.
    Outcome<void> watch(const QString& folder);
    void stop();
    /// Empty: none is watched.
    const QString& folder() const { return m_folder; }
    /// Path of the newest picture that nobody has taken or left yet; empty: none.
    QString newest() const;
    /// It was taken or left.
    void settle(const QString& file);
    /// Looks at once; runs by itself when the system tells of a change, and every two seconds where it does not
    /// (folders on another machine). A picture counts once it has the same size at two looks: it may still be coming.
    void look();

Q_SIGNALS:
    void newestChanged();
    void vanished(const QString& folder);

private:
    struct Stamp {
        QDateTime changed;
        qint64 size = 0;
        friend bool operator==(const Stamp&, const Stamp&) = default;
    };
    enum class Standing : std::uint8_t { coming, offered, settled };
    struct File {
        Stamp stamp;
        Standing standing = Standing::coming;
    };
    std::map<QString, Stamp> pictures() const;

    QString m_folder;
    std::map<QString, File> m_files; // by path
    QFileSystemWatcher m_watcher;
    QTimer m_poll;
    bool m_gone = false;
};

} // namespace hammerline
