// photo: photographs of the piano, a pass, a note or a part.
#include "app/commands/about.h"
#include "app/commands/commands.h"
#include "app/console.h"
#include "ui/pictures/picture_reading.h"
#include "ui/words/piano_record.h"
#include "ui/words/said.h"

#include <QString>
#include <nlohmann/json.hpp>

#include <algorithm>

namespace hammerline::app {
namespace {

using words::utf8;
using Json = nlohmann::ordered_json;

Outcome<Photo> photoOf(const PhotoRequest& request, const Bench& bench) {
    Photo photo;
    auto about = aboutOf({request.note, request.pass, request.part, request.fault, request.finding}, bench);
    if (!about) return tl::unexpected(about.error());
    photo.about = std::move(*about);
    auto caption = readLine("caption", request.caption, 400);
    if (!caption) return tl::unexpected(caption.error());
    photo.caption = std::move(*caption);
    auto who = readLine("who", request.who, 200);
    if (!who) return tl::unexpected(who.error());
    photo.who = std::move(*who);
    auto day = dayOf(request.date);
    if (!day) return tl::unexpected(day.error());
    photo.on = std::move(*day);
    return photo;
}

Json photoJson(const Photo& photo, int number) {
    return {{"number", number},
            {"pass", photo.about.pass ? Json(*photo.about.pass) : Json(nullptr)},
            {"note", photo.about.note ? Json(photo.about.note->value) : Json(nullptr)},
            {"part", photo.about.part},
            {"fault", photo.about.fault},
            {"caption", photo.caption},
            {"who", photo.who},
            {"on", photo.on},
            {"hash", photo.hash}};
}

int listPhotos(const PianoRecord& record, bool json) {
    Json out = {{"photos", Json::array()}};
    int number = 0;
    for (const Photo& photo : record.photos) {
        out["photos"].push_back(photoJson(photo, ++number));
        say(QStringLiteral("%1. %2").arg(number).arg(words::photoSentence(photo, record.piano)), json);
    }
    printJson(out.dump(2, ' ', false, Json::error_handler_t::replace), json);
    if (record.photos.empty()) ask(QStringLiteral("There is no photograph of this piano yet."), json);
    return kDone;
}

const Photo* photoNumbered(const PianoRecord& record, int number) {
    const bool there = number >= 1 && number <= static_cast<int>(record.photos.size());
    return there ? &record.photos[static_cast<std::size_t>(number - 1)] : nullptr;
}

int showPhoto(const Bench& bench, const PhotoRequest& request, bool json) {
    const Photo* photo = photoNumbered(bench.record, request.show);
    if (!photo) return refused({RefusalCode::noSuchPhoto, {}, std::to_string(request.show), {}}, json);
    if (request.out.empty()) return refused({RefusalCode::usage, {}, "--show needs --out FILE", {}}, json);
    const auto picture = bench.book.picture(photo->hash);
    if (!picture) return refused(picture.error(), json);
    if (!*picture) return refused({RefusalCode::noSuchPhoto, {}, std::to_string(request.show), {}}, json);
    if (const auto written = writeOut(request.out, (*picture)->bytes); !written) return refused(written.error(), json);
    sayWritten(QStringLiteral("Written: %1").arg(utf8(request.out)), request.out, json);
    return done(0, json);
}

int removePhoto(Bench& bench, int number, bool json) {
    const Photo* photo = photoNumbered(bench.record, number);
    if (!photo) return refused({RefusalCode::noSuchPhoto, {}, std::to_string(number), {}}, json);
    const auto act = bench.book.removePhoto(bench.record.uuid, *photo);
    if (!act) return refused(act.error(), json);
    say(QStringLiteral("Photograph %1 taken back.").arg(number), json);
    return done(*act, json);
}

/// A picture of a place that the book has there already is not added again.
int addPhotos(Bench& bench, const PhotoRequest& request, bool json) {
    const auto photo = photoOf(request, bench);
    if (!photo) return refused(photo.error(), json);
    std::vector<BenchBook::NewPhoto> fresh;
    int already = 0;
    for (const std::string& file : request.files) {
        auto picture = readPictureFile(QString::fromStdString(file), request.original);
        if (!picture) return refused(picture.error(), json);
        Photo each = *photo;
        each.hash = picture->hash;
        const auto same = [&](const Photo& other) { return other.hash == each.hash && other.about == each.about; };
        const bool here = std::ranges::any_of(bench.record.photos, same) ||
                          std::ranges::any_of(fresh, [&](const auto& other) { return same(other.photo); });
        if (here)
            ++already;
        else
            fresh.push_back({std::move(each), std::move(*picture)});
    }
    const auto act = fresh.empty() ? Outcome<ActId>(0) : bench.book.addPhotos(bench.record.uuid, fresh);
    if (!act) return refused(act.error(), json);
    for (const auto& each : fresh)
        say(QStringLiteral("%1 (%2 x %3)")
                .arg(words::photoSentence(each.photo, bench.record.piano))
                .arg(each.picture.width)
                .arg(each.picture.height),
            json);
    if (already > 0) ask(QStringLiteral("%1 was there already.").arg(already), json);
    return done(*act, json, ", \"added\": " + std::to_string(fresh.size()));
}

} // namespace

int run(const PhotoRequest& request, bool json) {
    const bool writes = request.remove != 0 || !request.files.empty();
    auto bench = openBench(request.at, json, writes ? OpenMode::readWrite : OpenMode::readOnly);
    if (!bench) return refused(bench.error(), json);
    if (request.show != 0) return showPhoto(*bench, request, json);
    if (request.remove != 0) return removePhoto(*bench, request.remove, json);
    return writes ? addPhotos(*bench, request, json) : listPhotos(bench->record, json);
}

} // namespace hammerline::app
