#include "db/picture_store.h"

#include "db/picture_proof.h"
#include "db/sha256.h"
#include "db/stores.h"

#include <SQLiteCpp/Statement.h>

#include <utility>

namespace hammerline {
namespace {

std::string blobAt(SQLite::Statement& row, int column) {
    const SQLite::Column value = row.getColumn(column);
    return {static_cast<const char*>(value.getBlob()), static_cast<std::size_t>(value.getBytes())};
}

void bindBlob(SQLite::Statement& statement, int at, const std::string& bytes) {
    statement.bind(at, bytes.data(), static_cast<int>(bytes.size()));
}

constexpr const char* kPictures = "SELECT hash, kind, width, height, thumb, bytes FROM picture";

Picture keptIn(SQLite::Statement& row) {
    Picture picture;
    picture.hash = row.getColumn(0).getString();
    picture.kind = row.getColumn(1).getString();
    picture.width = row.getColumn(2).getInt();
    picture.height = row.getColumn(3).getInt();
    picture.thumb = blobAt(row, 4);
    picture.bytes = blobAt(row, 5);
    return picture;
}

} // namespace

bool hasPicture(OpenBook& book, const std::string& hash) {
    SQLite::Statement find(book.db, "SELECT 1 FROM picture WHERE hash = ?");
    find.bind(1, hash);
    return find.executeStep();
}

void keepPicture(OpenBook& book, const Picture& picture) {
    if (picture.bytes.size() > kLargestPicture) fail(RefusalCode::tooLarge, "picture", "32 MB");
    if (hasPicture(book, picture.hash)) return;
    if (sha256(picture.bytes) != picture.hash) fail(RefusalCode::cannotRead, "picture", "hash");
    SQLite::Statement insert(book.db,
                             "INSERT INTO picture (hash, kind, width, height, thumb, bytes) VALUES (?, ?, ?, ?, ?, ?)");
    insert.bind(1, picture.hash);
    insert.bind(2, picture.kind);
    insert.bind(3, picture.width);
    insert.bind(4, picture.height);
    bindBlob(insert, 5, thumbToKeep(picture));
    bindBlob(insert, 6, picture.bytes);
    insert.exec();
}

std::optional<Picture> loadPicture(OpenBook& book, const std::string& hash) {
    SQLite::Statement find(book.db, std::string(kPictures) + " WHERE hash = ?");
    find.bind(1, hash);
    if (!find.executeStep()) return std::nullopt;
    Picture picture = keptIn(find);
    picture.thumb = thumbOfKept(std::move(picture.thumb));
    return picture;
}

std::optional<std::string> loadThumb(OpenBook& book, const std::string& hash) {
    SQLite::Statement find(book.db, "SELECT thumb FROM picture WHERE hash = ?");
    find.bind(1, hash);
    if (!find.executeStep()) return std::nullopt;
    return thumbOfKept(blobAt(find, 0));
}

void insertPhoto(ActUnderWay& act, std::int64_t piano, const Photo& photo, const PhotoLine& line) {
    std::optional<std::int64_t> pass = line.pass;
    if (!pass && photo.about.pass) pass = passRow(act.book(), piano, *photo.about.pass).id;
    const int note = photo.about.note ? photo.about.note->value : 0;
    Query insert =
        act.book().query("INSERT INTO photo (said_in, item, act_id, origin, piano_id, pass_id, note, part, "
                         "fault, hash, caption, who, on_day) VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?)");
    insert << act.id() << line.item << act.id() << line.origin << piano << pass << note << photo.about.part
           << photo.about.fault << photo.hash << photo.caption << photo.who << photo.on;
    insert.run();
}

ActId removePhoto(ActUnderWay& act, std::int64_t saidIn, int item) {
    const bool held = takeBack(act, subject("photo"), {saidIn, std::int64_t{item}});
    if (!held) fail(RefusalCode::noSuchPhoto);
    return act.id();
}

void takeInPictures(OpenBook& into, OpenBook& from) {
    SQLite::Statement find(from.db, "SELECT hash FROM picture ORDER BY id");
    while (find.executeStep()) {
        const std::string hash = find.getColumn(0).getString();
        if (hasPicture(into, hash)) continue;
        if (const auto picture = loadPicture(from, hash)) keepPicture(into, *picture);
    }
}

void checkPictures(SQLite::Database& db, Verification& found) {
    SQLite::Statement find(db, std::string(kPictures) + " ORDER BY id");
    while (find.executeStep())
        if (const Picture kept = keptIn(find); !isAsKept(kept)) found.problems.push_back({"picture:" + kept.hash});
}

void mendPictures(OpenBook& book) {
    std::vector<std::int64_t> rows;
    for (Query find = book.query("SELECT id FROM picture ORDER BY id"); find.step();)
        rows.push_back(find.number(0));
    for (const std::int64_t row : rows) {
        SQLite::Statement find(book.db, std::string(kPictures) + " WHERE id = ?");
        find.bind(1, row);
        if (!find.executeStep()) continue;
        Picture picture = keptIn(find);
        if (isAsKept(picture)) continue;
        const std::string named = std::exchange(picture.hash, sha256(picture.bytes));
        if (named != picture.hash) {
            Query follow = book.query("UPDATE photo SET hash = ? WHERE hash = ?");
            follow << picture.hash << named;
            follow.run();
        }
        const bool twice = named != picture.hash && hasPicture(book, picture.hash);
        SQLite::Statement mend(book.db, twice ? "DELETE FROM picture WHERE id = ?3"
                                              : "UPDATE picture SET hash = ?1, thumb = ?2 WHERE id = ?3");
        if (!twice) mend.bind(1, picture.hash);
        if (!twice) bindBlob(mend, 2, thumbToKeep(picture));
        mend.bind(3, row);
        mend.exec();
    }
}

} // namespace hammerline
