// Photographs and their pictures. Pictures never change, have no versions and are read one at a time.
#pragma once

#include "core/history/photo.h"
#include "db/acts.h"

#include <SQLiteCpp/Database.h>

namespace hammerline {

struct Verification;

/// Kept once: one that is there already is left as it is. Fails with cannotRead (hash) where the bytes have another
/// hash than they are named by, tooLarge beyond kLargestPicture.
void keepPicture(OpenBook&, const Picture&);
bool hasPicture(OpenBook&, const std::string& hash);
/// None where the book has no such picture.
std::optional<Picture> loadPicture(OpenBook&, const std::string& hash);
std::optional<std::string> loadThumb(OpenBook&, const std::string& hash);

struct PhotoLine {
    int item{};
    std::optional<std::int64_t> pass; // its row; none: by number, as the photo says
    std::optional<ActId> origin;
};
void insertPhoto(ActUnderWay&, std::int64_t piano, const Photo&, const PhotoLine&);
/// Refuses noSuchPhoto.
ActId removePhoto(ActUnderWay&, std::int64_t saidIn, int item);

/// Copies the pictures of another book that this one lacks.
void takeInPictures(OpenBook& into, OpenBook& from);
/// Names of pictures that are not as they were kept; reads every one.
void checkPictures(SQLite::Database&, Verification&);
/// Of a rescued book: a picture is named by the bytes that are left of it, its photographs follow, and it is proven
/// anew.
void mendPictures(OpenBook&);

} // namespace hammerline
