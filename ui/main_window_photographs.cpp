// Photographs from anywhere in the window: added to the place that is looked at, two dates of it side by side, and a
// folder that is watched while one works.
#include "ui/main_window.h"
#include "ui/pictures/offer_band.h"
#include "ui/pictures/picture_reading.h"
#include "ui/pictures/side_by_side.h"
#include "ui/pictures/watched_folder.h"
#include "ui/widgets/dialogs.h"
#include "ui/words/piano_record.h"

#include <QDate>
#include <QDir>
#include <QFileInfo>
#include <QMenu>

#include <algorithm>

namespace hammerline {

About MainWindow::place() const {
    if (atBench() || !station()) return {{}, m_bench.note(), {}, {}};
    return station()->place();
}

void MainWindow::buildPhotographsMenu(QMenu* book) {
    QMenu* menu = book->addMenu(tr("Photographs"));
    const QList<QAction*> needPiano = {
        menu->addAction(tr("Add one to this place…"), QKeySequence(QStringLiteral("Ctrl+Shift+A")), this,
                        [this] {
                            const QString file = Dialogs::now().fileToOpen(this, tr("Photograph"), pictureFilter());
                            if (!file.isEmpty()) addPicture(file);
                        }),
        menu->addAction(tr("Two dates of this place…"), QKeySequence(QStringLiteral("Ctrl+Shift+D")), this,
                        &MainWindow::lookSideBySide)};
    menu->addSeparator();
    QAction* watch = menu->addAction(tr("Watch a folder…"), QKeySequence(QStringLiteral("Ctrl+Shift+W")), this, [this] {
        if (!m_bench.record()) return;
        const QString folder = Dialogs::now().folderToOpen(this, tr("Watch a folder for new pictures"));
        if (!folder.isEmpty()) watchFolder(folder);
    });
    menu->addAction(tr("Take the new picture"), QKeySequence(QLatin1String(kTakePicture)), this,
                    &MainWindow::takeOffered);
    menu->addAction(tr("Leave the new picture"), QKeySequence(QLatin1String(kLeavePicture)), this,
                    &MainWindow::leaveOffered);
    QAction* stop = menu->addAction(tr("Watch no folder"), this, [this] { watchFolder({}); });
    connect(menu, &QMenu::aboutToShow, this, [this, needPiano, watch, stop] {
        for (QAction* each : needPiano)
            each->setEnabled(m_bench.record());
        watch->setEnabled(m_bench.record());
        stop->setEnabled(!m_watched->folder().isEmpty());
    });
}

QString MainWindow::pictureFilter() {
    return tr("Pictures (*.jpg *.jpeg *.png *.webp *.bmp *.gif *.tif *.tiff)");
}

bool MainWindow::isPicture(const QString& path) {
    static const QStringList endings{QStringLiteral("jpg"),  QStringLiteral("jpeg"), QStringLiteral("png"),
                                     QStringLiteral("webp"), QStringLiteral("bmp"),  QStringLiteral("gif"),
                                     QStringLiteral("tif"),  QStringLiteral("tiff")};
    return endings.contains(QFileInfo(path).suffix().toLower());
}

void MainWindow::buildWatchedFolder() {
    m_watched = new WatchedFolder(this);
    connect(m_watched, &WatchedFolder::newestChanged, this, &MainWindow::offerPicture);
    connect(m_watched, &WatchedFolder::vanished, this, [this](const QString& folder) {
        say(tr("The folder %1 is not there now. Nothing is lost: it is watched again as soon as it is back.")
                .arg(QDir::toNativeSeparators(folder)));
    });
    connect(m_offer, &OfferBand::taken, this, &MainWindow::takeOffered);
    connect(m_offer, &OfferBand::left, this, &MainWindow::leaveOffered);
    connect(&m_bench, &Workbench::bookChanged, this, &MainWindow::watchRemembered);
    connect(&m_bench, &Workbench::pianoChanged, this, &MainWindow::offerPicture);
    connect(&m_bench, &Workbench::noteChanged, this, &MainWindow::offerPicture);
    watchRemembered();
}

/// The folder that was watched with this book last; one that is gone is not asked about.
void MainWindow::watchRemembered() {
    const QString folder = m_settings.value(Setting::watchedFolders).toMap().value(m_bench.path()).toString();
    if (folder.isEmpty()) {
        if (!m_watched->folder().isEmpty()) m_watched->stop();
    } else if (folder != m_watched->folder()) {
        m_watched->stop();
        (void)m_watched->watch(folder);
    }
}

void MainWindow::watchFolder(const QString& folder) {
    QVariantMap folders = m_settings.value(Setting::watchedFolders).toMap();
    if (folder.isEmpty()) {
        m_watched->stop();
        folders.remove(m_bench.path());
    } else {
        if (const auto watched = m_watched->watch(folder); !watched) return report(watched.error());
        folders[m_bench.path()] = m_watched->folder();
        say(tr("New pictures in %1 are offered to the place that you look at; none is taken by itself.")
                .arg(QDir::toNativeSeparators(m_watched->folder())));
    }
    m_settings.set(Setting::watchedFolders, folders);
}

/// The newest one, read once: a broken one says so and is passed over.
void MainWindow::offerPicture() {
    const QString file = m_bench.record() && m_bench.canWrite() ? m_watched->newest() : QString();
    if (file.isEmpty()) {
        m_offered = {};
        return m_offer->hide();
    }
    if (file != m_offered.file) {
        auto picture = readPictureFile(file);
        if (!picture) {
            m_watched->settle(file);
            return report(picture.error());
        }
        m_offered = {file, std::move(*picture)};
    }
    m_offer->offer(imageOf(m_offered.picture.thumb), QFileInfo(file).fileName(),
                   words::aboutText(place(), *m_bench.piano()));
}

void MainWindow::takeOffered() {
    if (m_offered.file.isEmpty() || !m_bench.record()) return;
    const Offered taken = std::exchange(m_offered, {});
    keepPicture(taken.picture);
    m_watched->settle(taken.file);
}

void MainWindow::leaveOffered() {
    if (m_offered.file.isEmpty()) return;
    m_watched->settle(std::exchange(m_offered, {}).file);
}

void MainWindow::addPicture(const QString& file) {
    if (!m_bench.record()) return;
    const auto picture = readPictureFile(file);
    if (!picture) return report(picture.error());
    keepPicture(*picture);
}

void MainWindow::keepPicture(const Picture& picture) {
    Photo photo;
    photo.about = place();
    photo.on = QDate::currentDate().toString(Qt::ISODate).toStdString();
    photo.hash = picture.hash;
    const auto& photos = m_bench.record()->photos;
    const bool there = std::ranges::any_of(
        photos, [&](const Photo& each) { return each.hash == photo.hash && each.about == photo.about; });
    const QString where = words::aboutText(photo.about, *m_bench.piano());
    if (there) return say(tr("%1 has this picture already.").arg(where));
    const std::vector<BenchBook::NewPhoto> fresh = {{photo, picture}};
    if (const auto kept = m_bench.addPhotos(fresh); !kept) return report(kept.error());
    say(tr("The picture is kept with %1.").arg(where));
}

void MainWindow::lookSideBySide() {
    if (!m_bench.record()) return;
    auto photos = photosOfPlace(*m_bench.record(), place());
    const QString where = words::aboutText(place(), *m_bench.piano());
    if (photos.size() < 2)
        return say(tr("%1 has %n photograph(s); two are set side by side.", nullptr, static_cast<int>(photos.size()))
                       .arg(where));
    SideBySide dialog(m_bench, place(), std::move(photos), this);
    Dialogs::now().run(dialog);
}

} // namespace hammerline
