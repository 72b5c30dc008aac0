// A picture file as it comes from a camera, made into what a bench book keeps: turned upright, not wider than needed,
// without the place and the camera that its maker wrote into it.
#pragma once

#include "core/history/photo.h"

#include <QByteArray>
#include <QImage>

namespace hammerline {

inline constexpr int kWidestPicture = 1600, kThumbSide = 240; // points
inline constexpr qint64 kLargestFile = 30 * 1000 * 1000;      // bytes

/// `original`: its full size is kept. Everything is written anew from its points, so that nothing hides in the file;
/// the same file gives the same picture and hash. Refuses badPicture (large, wide or none that can be read).
Outcome<Picture> readPicture(const QByteArray& file, const QString& name, bool original = false);
/// The same from a file of that path. Refuses cannotRead as well.
Outcome<Picture> readPictureFile(const QString& path, bool original = false);
/// A kept picture as an image; null where its bytes cannot be shown.
QImage imageOf(const std::string& bytes);

} // namespace hammerline
