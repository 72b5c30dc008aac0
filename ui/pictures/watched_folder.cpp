#include "ui/pictures/watched_folder.h"

#include <QDir>
#include <QFileInfo>

namespace hammerline {

namespace {
constexpr int kLookEvery = 2000, kSoon = 300; // ms
} // namespace

WatchedFolder::WatchedFolder(QObject* parent) : QObject(parent) {
    m_poll.setInterval(kLookEvery);
    connect(&m_poll, &QTimer::timeout, this, &WatchedFolder::look);
    connect(&m_watcher, &QFileSystemWatcher::directoryChanged, this, &WatchedFolder::look);
}

Outcome<void> WatchedFolder::watch(const QString& folder) {
    const QFileInfo place(folder);
    if (!place.isDir() || !place.isReadable()) return refuse(RefusalCode::cannotRead, folder.toStdString());
    stop();
    m_folder = place.absoluteFilePath();
    for (const auto& [path, stamp] : pictures())
        m_files[path] = {stamp, Standing::settled};
    m_watcher.addPath(m_folder);
    m_poll.start();
    return {};
}

void WatchedFolder::stop() {
    if (!m_folder.isEmpty()) m_watcher.removePath(m_folder);
    m_poll.stop();
    m_folder.clear();
    m_files.clear();
    m_gone = false;
    Q_EMIT newestChanged();
}

std::map<QString, WatchedFolder::Stamp> WatchedFolder::pictures() const {
    static const QStringList endings{QStringLiteral("*.jpg"),  QStringLiteral("*.jpeg"), QStringLiteral("*.png"),
                                     QStringLiteral("*.webp"), QStringLiteral("*.bmp"),  QStringLiteral("*.gif"),
                                     QStringLiteral("*.tif"),  QStringLiteral("*.tiff")};
    std::map<QString, Stamp> found;
    const QDir folder(m_folder);
    for (const QFileInfo& file : folder.entryInfoList(endings, QDir::Files | QDir::Readable))
        found[file.absoluteFilePath()] = {file.lastModified(), file.size()};
    return found;
}

QString WatchedFolder::newest() const {
    QString path;
    QDateTime at;
    for (const auto& [file, known] : m_files)
        if (known.standing == Standing::offered && (path.isEmpty() || known.stamp.changed >= at)) {
            path = file;
            at = known.stamp.changed;
        }
    return path;
}

void WatchedFolder::settle(const QString& file) {
    if (const auto found = m_files.find(file); found != m_files.end()) found->second.standing = Standing::settled;
    Q_EMIT newestChanged();
}

void WatchedFolder::look() {
    if (m_folder.isEmpty()) return;
    const bool there = QFileInfo(m_folder).isDir();
    if (!there && !m_gone) Q_EMIT vanished(m_folder);
    if (there && m_gone) m_watcher.addPath(m_folder); // another folder to the system
    m_gone = !there;
    if (!there) return;
    const QString before = newest();
    const auto now = pictures();
    bool coming = false;
    for (const auto& [path, stamp] : now) {
        const auto known = m_files.find(path);
        if (known == m_files.end() || known->second.stamp != stamp) {
            m_files[path] = {stamp, Standing::coming};
            coming = true;
        } else if (known->second.standing == Standing::coming && stamp.size > 0) {
            known->second.standing = Standing::offered;
        }
    }
    std::erase_if(m_files, [&](const auto& each) { return !now.contains(each.first); });
    if (coming) QTimer::singleShot(kSoon, this, &WatchedFolder::look);
    if (newest() != before) Q_EMIT newestChanged();
}

} // namespace hammerline
