#include "ui/pictures/picture_reading.h"

#include "db/sha256.h"

#include <QBuffer>
#include <QColorSpace>
#include <QFile>
#include <QFileInfo>
#include <QImageReader>
#include <QPainter>

#include <algorithm>
#include <array>

namespace hammerline {
namespace {

constexpr qint64 kMostPoints = 100'000'000;
constexpr int kMostMegabytes = 512; // that a picture may take while it is read
constexpr int kQuality = 85, kOriginalQuality = 92, kThumbQuality = 70;
constexpr int kLongestSide = 30'000;

/// Formats of points only: what describes shapes or fetches other files is not read.
constexpr std::array kReadable = {"jpeg", "jpg", "png", "webp", "bmp", "gif", "tiff", "tif"};

tl::unexpected<Refusal> badPicture(const QString& name, const char* why) {
    return refuse(RefusalCode::badPicture, name.toStdString(), why);
}

bool turnsOnItsSide(const QImageReader& reader) {
    return reader.transformation().testFlag(QImageIOHandler::TransformationRotate90);
}

/// The size it is decoded at, before it is turned; empty: as it is.
QSize scaledSize(const QImageReader& reader, bool original) {
    const QSize size = reader.size();
    if (original || !size.isValid()) return {};
    const int width = turnsOnItsSide(reader) ? size.height() : size.width();
    if (width <= kWidestPicture) return {};
    const double by = static_cast<double>(kWidestPicture) / width;
    return {std::max(1, qRound(size.width() * by)), std::max(1, qRound(size.height() * by))};
}

/// Its points alone, in the usual colours: a new image has no texts, no profile, no place.
QImage pointsOf(QImage image) {
    if (image.colorSpace().isValid()) image.convertToColorSpace(QColorSpace(QColorSpace::SRgb));
    QImage plain(image.size(), QImage::Format_RGB32);
    plain.fill(Qt::white); // where it was transparent
    QPainter painter(&plain);
    painter.drawImage(0, 0, image);
    return plain;
}

QByteArray written(const QImage& image, const char* format, int quality) {
    QByteArray bytes;
    QBuffer buffer(&bytes);
    buffer.open(QIODevice::WriteOnly);
    return image.save(&buffer, format, quality) ? bytes : QByteArray();
}

std::string textOf(const QByteArray& bytes) {
    return {bytes.constData(), static_cast<std::size_t>(bytes.size())};
}

bool readableFormat(const QByteArray& format) {
    return std::ranges::any_of(kReadable, [&](const char* known) { return format == known; });
}

} // namespace

Outcome<Picture> readPicture(const QByteArray& file, const QString& name, bool original) {
    if (file.size() > kLargestFile) return badPicture(name, "large");
    QImageReader::setAllocationLimit(kMostMegabytes);
    QBuffer buffer;
    buffer.setData(file);
    buffer.open(QIODevice::ReadOnly);
    QImageReader reader(&buffer);
    reader.setDecideFormatFromContent(true);
    reader.setAutoTransform(true);
    const QByteArray format = reader.format(); // asked for before it is read: after that the file is at its end
    if (!readableFormat(format)) return badPicture(name, "");
    const QSize size = reader.size();
    const bool tooWide = size.isValid() && (qint64{size.width()} * size.height() > kMostPoints ||
                                            std::max(size.width(), size.height()) > kLongestSide);
    if (tooWide) return badPicture(name, "wide");
    if (const QSize scaled = scaledSize(reader, original); scaled.isValid()) reader.setScaledSize(scaled);
    const QImage read = reader.read();
    if (read.isNull()) return badPicture(name, "");
    const QImage image = pointsOf(read);
    const bool drawn = format == "png"; // a screen picture or drawing: its edges stay sharp
    QByteArray bytes = written(image, drawn ? "png" : "jpeg", original ? kOriginalQuality : kQuality);
    const QImage small = image.scaled(kThumbSide, kThumbSide, Qt::KeepAspectRatio, Qt::SmoothTransformation);
    const QByteArray thumb = written(small, "jpeg", kThumbQuality);
    if (bytes.isEmpty() || thumb.isEmpty()) return badPicture(name, "");
    if (bytes.size() > kLargestFile) return badPicture(name, "large");
    Picture picture;
    picture.kind = drawn ? "png" : "jpeg";
    picture.width = image.width();
    picture.height = image.height();
    picture.thumb = textOf(thumb);
    picture.bytes = textOf(bytes);
    picture.hash = sha256(picture.bytes);
    return picture;
}

Outcome<Picture> readPictureFile(const QString& path, bool original) {
    const QFileInfo about(path);
    if (!about.exists()) return refuse(RefusalCode::cannotRead, path.toStdString(), "missing");
    if (!about.isFile()) return refuse(RefusalCode::cannotRead, path.toStdString(), "not-a-file");
    if (about.size() > kLargestFile) return badPicture(path, "large");
    QFile file(path);
    if (!file.open(QIODevice::ReadOnly)) return refuse(RefusalCode::cannotRead, path.toStdString(), "permission");
    return readPicture(file.readAll(), path, original);
}

QImage imageOf(const std::string& bytes) {
    QBuffer buffer;
    buffer.setData(bytes.data(), static_cast<int>(bytes.size()));
    buffer.open(QIODevice::ReadOnly);
    QImageReader::setAllocationLimit(kMostMegabytes);
    QImageReader reader(&buffer);
    reader.setDecideFormatFromContent(true);
    return readableFormat(reader.format()) ? reader.read() : QImage();
}

} // namespace hammerline
