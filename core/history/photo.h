// Photographs of the piano, a pass, a note or a part: what they show, and the pictures they show it with.
#pragma once

#include "core/history/remark.h"

#include <vector>

namespace hammerline {

struct Photo {
    About about;
    std::string hash;    // of its picture
    std::string caption; // may be empty
    std::string who, on; // on: YYYY-MM-DD
    std::int64_t order = 0, at = 0;
    std::int64_t saidIn = 0; // its name in this book; never exported
    int item = 0;
};
/// The same picture of the same thing, said the same way.
bool showTheSame(const Photo&, const Photo&);

/// What two dates are set side by side of: photographs of one part at one note (also those of the part as a whole);
/// where no part is named, of the note, and where no note, of the piano. The earliest first, then by pass. Places in
/// record.photos.
std::vector<std::size_t> photosOfPlace(const PianoRecord&, const About&);

/// Bytes of a JPEG or PNG file, kept once by the SHA-256 of the bytes (64 hexadecimal digits).
struct Picture {
    std::string hash, kind; // kind: jpeg, png
    int width = 0, height = 0;
    std::string thumb; // a small JPEG
    std::string bytes;
};

/// The largest picture that is kept, in bytes (32 MiB).
inline constexpr std::size_t kLargestPicture = 33'554'432;

} // namespace hammerline
