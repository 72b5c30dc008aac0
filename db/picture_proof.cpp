#include "db/picture_proof.h"

#include "db/digest.h"
#include "db/sha256.h"

#include <optional>
#include <utility>

namespace hammerline {
namespace {

constexpr std::string_view kProofMark = "proof:";
constexpr std::size_t kProofSize = kProofMark.size() + sizeof(Digest);

std::string proofOf(const Picture& picture, std::string_view thumb) {
    Canonical told;
    told << picture.hash << picture.kind << std::int64_t{picture.width} << std::int64_t{picture.height} << thumb;
    const Digest digest = told.digest();
    return std::string(kProofMark) + std::string(digest.begin(), digest.end());
}

bool hasProof(std::string_view kept) {
    return kept.size() >= kProofSize && kept.substr(kept.size() - kProofSize).starts_with(kProofMark);
}

using PictureSize = std::pair<int, int>;

/// Big-endian.
int numberAt(std::string_view bytes, std::size_t at, std::size_t length) {
    int number = 0;
    for (const char each : bytes.substr(at, length))
        number = number << 8 | static_cast<unsigned char>(each);
    return number;
}

/// In the header chunk, which is the first.
std::optional<PictureSize> sizeOfPng(std::string_view bytes) {
    using namespace std::string_view_literals;
    if (bytes.size() < 24 || !bytes.starts_with("\x89PNG\r\n\x1a\n"sv)) return std::nullopt;
    return PictureSize{numberAt(bytes, 16, 4), numberAt(bytes, 20, 4)};
}

/// In the header of the frame, which stands behind segments that say their length.
std::optional<PictureSize> sizeOfJpeg(std::string_view bytes) {
    if (!bytes.starts_with("\xFF\xD8")) return std::nullopt;
    for (std::size_t at = 2; at + 9 <= bytes.size();) {
        const int mark = numberAt(bytes, at, 2);
        const bool isTable = mark == 0xFFC4 || mark == 0xFFC8 || mark == 0xFFCC;
        const bool isFrame = mark >= 0xFFC0 && mark <= 0xFFCF && !isTable;
        if (isFrame) return PictureSize{numberAt(bytes, at + 7, 2), numberAt(bytes, at + 5, 2)};
        if (mark < 0xFFC0) return std::nullopt;
        at += 2 + static_cast<std::size_t>(numberAt(bytes, at + 2, 2));
    }
    return std::nullopt;
}

bool looksAsItSays(const Picture& picture) {
    const auto size = picture.kind == "png" ? sizeOfPng(picture.bytes) : sizeOfJpeg(picture.bytes);
    return size == PictureSize{picture.width, picture.height} && picture.thumb.starts_with("\xFF\xD8") &&
           picture.thumb.ends_with("\xFF\xD9");
}

} // namespace

std::string thumbToKeep(const Picture& picture) {
    const std::string thumb = thumbOfKept(picture.thumb);
    return thumb + proofOf(picture, thumb);
}

std::string thumbOfKept(std::string kept) {
    if (hasProof(kept)) kept.resize(kept.size() - kProofSize);
    return kept;
}

bool isAsKept(const Picture& kept) {
    if (sha256(kept.bytes) != kept.hash) return false;
    if (!hasProof(kept.thumb)) return looksAsItSays(kept);
    return thumbToKeep(kept) == kept.thumb;
}

} // namespace hammerline
