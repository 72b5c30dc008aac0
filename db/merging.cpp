#include "db/merging.h"

#include "db/acts.h"
#include "db/backup.h"
#include "db/disputes.h"
#include "db/opening.h"
#include "db/standing.h"
#include "db/taking_in.h"
#include "db/verification.h"
#include "db/versions.h"

#include <filesystem>

namespace hammerline {
namespace {

namespace fs = std::filesystem;

constexpr const char* kKeptAs = "before-merge";

// A clock that is days or months wrong is taken; one that is years ahead would push every later act behind it.
constexpr std::int64_t kFarAhead = std::int64_t{3} * 365 * 24 * 3600 * 1'000'000;

std::unique_ptr<OpenBook> openOther(const std::string& path, std::int64_t now, const Headway& headway) {
    return orFail(guarded(path, Doing::reading, [&] {
        auto other = openBook(path, OpenMode::readOnly, {}, headway.part(0, 0.3));
        // what is newer than this program knows cannot be taken in whole
        if (other->newer) fail(RefusalCode::newerBook, path);
        if (const Verification verified = verifyAll(other->db, kSchemaVersion, headway.part(0.3, 1)); !verified.sound)
            fail(RefusalCode::damagedBook, path, verified.problems.front().what);
        const auto last = other->db.execAndGet("SELECT coalesce(max(place), 0) FROM act").getInt64();
        if (last > now + kFarAhead) fail(RefusalCode::damagedBook, path, "clock-ahead");
        return other;
    }));
}

/// Acts are put in the order of their places from now on, whichever book they came from.
void raisePlace(OpenBook& book) {
    Query raise = book.query("UPDATE book SET merged_place = max(merged_place, (SELECT coalesce(max(place), 0) FROM "
                             "act))");
    raise.run();
}

/// One book took a piano, pass or plan back while the other went on from it: it comes back, for nothing is to be lost.
void bringBack(ActUnderWay& act, std::vector<Dispute>& told) {
    OpenBook& book = act.book();
    for (const Ground& ground : grounds()) {
        const std::string key(ground.key);
        std::vector<std::int64_t> gone;
        {
            Query find =
                book.query("SELECT DISTINCT v." + key + " FROM " + std::string(ground.versions) +
                           " v WHERE v.withdrawn = 1 AND NOT " +
                           isCurrent(ground.versions, "x." + key + " = v." + key) + " AND (" + ground.carries + ")");
            while (find.step())
                gone.push_back(find.number(0));
        }
        for (const std::int64_t row : gone) {
            const Subject& versions = subject(ground.versions);
            const auto last = holding(heads(book, versions, {row}));
            if (!last) fail(RefusalCode::damagedBook, {}, "versions");
            copyVersion(book, versions, {row}, last->act, act.id(), false);
            Dispute back;
            back.what = "brought-back";
            back.name = ground.versions == "setup" ? "piano" : ground.versions == "pass_version" ? "pass" : "plan";
            told.push_back(std::move(back));
        }
    }
}

} // namespace

Merged mergeBook(OpenBook& book, const std::string& path, const Headway& headway) {
    requireAtRest(book);
    requireWritable(book);
    const auto other = openOther(path, OpenBook::clock(), headway.part(0, 0.15));
    const auto standing = [&book, end = headway.part(0.9, 1)] {
        const Watched watched(book.db, end);
        return disputesIn(book);
    };
    Merged merged;
    if (!knowsMore(book, *other, headway.part(0.15, 0.2))) {
        merged.disputes = orFail(reading(book, standing));
        return merged;
    }
    const std::string kept = copyBeside(book, kKeptAs, headway.part(0.2, 0.5));
    // told before it is done for good, so that until then it can be stopped
    const auto written = writing(book, "settle", fs::path(path).filename().string(), [&](ActUnderWay& act) {
        Merged came = takeIn(book, *other, headway.part(0.5, 0.9));
        raisePlace(book);
        bringBack(act, came.disputes);
        came.act = act.idOrNone();
        act.written();
        const auto disputes = standing();
        came.disputes.insert(came.disputes.end(), disputes.begin(), disputes.end());
        return came;
    });
    if (!written) { // the book is as before: the copy says nothing new
        std::error_code ignored;
        fs::remove(kept, ignored);
        throw Refused{written.error()};
    }
    rotateCopies(book, kKeptAs, kept); // not before: a merge that was stopped takes no older copy away
    merged = *written;
    merged.kept = kept;
    return merged;
}

} // namespace hammerline
