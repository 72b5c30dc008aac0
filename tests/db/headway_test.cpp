// Work on a whole book says how far it has come, and leaves everything as it was wherever it is stopped.
#include "tests/db/bench.h"

#include <functional>
#include <set>

using namespace hammerline;
using namespace hammerline::bench;
using namespace hammerline::dimension;

namespace fs = std::filesystem;

namespace {

struct Shop {
    const Folder& folder;
    std::string book() const { return folder.file("shop.hammerline"); }
    std::string other() const { return folder.file("other.hammerline"); }
};

/// Names and bytes of all that lies in a folder.
std::map<std::string, std::string> everything(const Folder& folder) {
    std::map<std::string, std::string> all;
    for (const std::string& name : folder.names())
        all[name] = bytesOf(folder.file(name));
    return all;
}

/// A book, and a copy of it that went on by itself.
void growApart(const Shop& shop) {
    (void)filledBook(shop.book());
    fs::copy_file(shop.book(), shop.other());
    BenchBook apart = ok(BenchBook::open(shop.other(), OpenMode::readWrite, writer(1'795'597'000'000'000)));
    const std::string piano = ok(apart.findPiano(""));
    for (int note = 1; note <= 88; ++note)
        ok(apart.store(piano, 1, std::vector{mm(note, keyDip, 10.0), mm(note, letOff, 3.1)}));
    ok(apart.addPiano(upright("Another"), "upright"));
    BenchBook book = ok(BenchBook::open(shop.book(), OpenMode::readWrite, writer(1'795'598'000'000'000)));
    ok(book.store(ok(book.findPiano("")), 1, std::vector{mm(5, letOff, 3.3)}));
}

using Work = std::function<Outcome<void>(const Shop&, const GoOn&)>;

/// Does the work again and again, stopped the first time it says how far it is, the second, and so on, until it gets
/// through.
void stopEverywhere(const std::function<void(const Shop&)>& prepare, const Work& work) {
    const Folder pristine = Folder::quick();
    prepare({pristine});
    const auto before = everything(pristine);
    for (int n = 1;; ++n) {
        INFO("stopped at look " << n);
        const Folder folder = Folder::quick();
        for (const auto& [name, bytes] : before)
            fs::copy_file(pristine.file(name), folder.file(name));
        int looks = 0;
        std::set<double> shares;
        double last = 0;
        const auto done = work({folder}, [&](double share) {
            CHECK(share >= last);
            CHECK(share <= 1);
            shares.insert(last = share);
            return ++looks < n;
        });
        if (done) {
            CHECK(looks < n);
            CHECK(shares.size() > 5); // a bar that is seen to move
            CHECK(last > 0.5);
            break;
        }
        REQUIRE(done.error().code == RefusalCode::cancelled);
        CHECK(looks == n); // and not asked again once it was told
        CHECK(everything(folder) == before);
        REQUIRE(n < 2000);
    }
}

template <class T>
Outcome<void> told(const Outcome<T>& outcome) {
    if (!outcome) return tl::unexpected(outcome.error());
    return {};
}

BenchBook opened(const Shop& shop) {
    return ok(BenchBook::open(shop.book(), OpenMode::readWrite, writer(1'795'600'000'000'000)));
}

} // namespace

TEST_CASE("a backup can be stopped wherever it is: no copy, no half of one") {
    stopEverywhere(growApart, [](const Shop& shop, const GoOn& goOn) {
        BenchBook book = opened(shop);
        const auto made = book.backUp({}, goOn);
        if (made) CHECK(contentOf(ok(BenchBook::open(*made, OpenMode::readOnly))) == contentOf(book));
        return told(made);
    });
}

TEST_CASE("a backup over an older one can be stopped wherever it is: the older one stays") {
    stopEverywhere(
        [](const Shop& shop) {
            growApart(shop);
            BenchBook book = opened(shop);
            ok(book.backUp(shop.folder.file("stick.hammerline")));
            ok(book.store(ok(book.findPiano("")), 1, std::vector{mm(6, letOff, 3.3)}));
        },
        [](const Shop& shop, const GoOn& goOn) {
            return told(opened(shop).backUp(shop.folder.file("stick.hammerline"), goOn));
        });
}

TEST_CASE("a merge can be stopped wherever it is: both books as before, no copy, and the older copies stay") {
    stopEverywhere(
        [](const Shop& shop) {
            growApart(shop);
            for (int day = 10; day < 20; ++day) // as many as are kept
                fs::copy_file(shop.other(), shop.folder.file("shop.before-merge-202001" + std::to_string(day) +
                                                             "-120000.hammerline"));
        },
        [](const Shop& shop, const GoOn& goOn) {
            BenchBook book = opened(shop);
            const std::string before = contentOf(book);
            const auto merged = book.merge(shop.other(), goOn);
            if (!merged) {
                CHECK(contentOf(book) == before); // and it goes on
                CHECK(book.poll() == Change::none);
                return told(merged);
            }
            CHECK(merged->readings == 177);      // 88 by 2, and at note 33 a repeat is taken back
            CHECK(merged->disputes.size() == 1); // note 5, let-off
            CHECK(fs::exists(merged->kept));
            CHECK_FALSE(fs::exists(shop.folder.file("shop.before-merge-20200110-120000.hammerline")));
            return told(merged);
        });
}

TEST_CASE("a merge that brings nothing can be stopped too") {
    stopEverywhere(
        [](const Shop& shop) {
            growApart(shop);
            BenchBook book = opened(shop);
            fs::remove(ok(book.merge(shop.other())).kept);
        },
        [](const Shop& shop, const GoOn& goOn) { return told(opened(shop).merge(shop.other(), goOn)); });
}

TEST_CASE("restoring can be stopped wherever it is: the book stays where it is") {
    stopEverywhere(growApart, [](const Shop& shop, const GoOn& goOn) {
        return told(restoreBook(shop.book(), shop.other(), goOn));
    });
}

TEST_CASE("a rescue can be stopped wherever it is: no new book, and the damaged one untouched") {
    stopEverywhere(
        [](const Shop& shop) {
            growApart(shop);
            std::fstream file(shop.other(), std::ios::binary | std::ios::in | std::ios::out);
            file.seekp(30 * 4096).write(std::string(4096, '\x55').data(), 4096);
        },
        [](const Shop& shop, const GoOn& goOn) {
            std::string into;
            return told(rescueBook(shop.other(), into, goOn));
        });
}

TEST_CASE("bringing an older book up to date can be stopped wherever it is: it stays as it was, and no copy") {
    const auto older = [](const Shop& shop) {
        fs::copy_file(std::string(HAMMERLINE_SOURCE_DIR) + "/tests/reference/books/schema_1.hammerline", shop.book());
    };
    stopEverywhere(older, [](const Shop& shop, const GoOn& goOn) {
        return told(BenchBook::open(shop.book(), OpenMode::readWrite, writer(1'795'600'000'000'000), goOn));
    });
}

TEST_CASE("an import of whole pianos can be stopped wherever it is: nothing came") {
    const Folder folder = Folder::quick();
    const Shop from{folder};
    growApart(from);
    std::vector<BenchBook::Incoming> incoming;
    {
        const BenchBook other = ok(BenchBook::open(from.other(), OpenMode::readOnly));
        PianoRecord record = ok(other.load(ok(other.findPiano("Parlour upright"))));
        for (int i = 0; i < 20; ++i) { // long enough to be seen
            record.uuid.clear();
            record.piano.name = "Upright " + std::to_string(i);
            incoming.push_back({record, {}});
        }
    }
    stopEverywhere(growApart, [&](const Shop& shop, const GoOn& goOn) {
        return told(opened(shop).importRecords(incoming, "other.json", goOn));
    });
}

TEST_CASE("whoever comes to the book while it is at work has to wait, and nothing is lost by it") {
    const Folder folder = Folder::quick();
    const Shop shop{folder};
    growApart(shop);
    BenchBook book = opened(shop);
    const std::string piano = ok(book.findPiano(""));
    int looks = 0, waited = 0;
    const GoOn comingBy = [&](double) {
        ++looks;
        CHECK(book.poll() == Change::none);
        const auto stored = book.store(piano, 1, std::vector{mm(7, blow, 46.0)});
        const auto read = book.load(piano);
        if (!read) CHECK(code(read) == RefusalCode::lockedBook);
        if (!stored) CHECK(code(stored) == RefusalCode::lockedBook);
        if (!stored) CHECK(code(book.backUp()) == RefusalCode::lockedBook);
        waited += stored ? 0 : 1;
        return true;
    };
    SECTION("a backup") {
        const std::string copy = ok(book.backUp({}, comingBy));
        CHECK(waited == looks);
        CHECK(contentOf(ok(BenchBook::open(copy, OpenMode::readOnly))) == contentOf(book));
    }
    SECTION("a merge") {
        const Merged merged = ok(book.merge(shop.other(), comingBy));
        CHECK(merged.readings == 177);
        CHECK(waited > looks / 2); // not while only the other book is read
    }
    CHECK(ok(book.verify()).sound);
    REQUIRE(book.store(piano, 1, std::vector{mm(7, blow, 45.0)}).has_value());
    CHECK(ok(book.load(piano)).passes.front().value(cell(7, blow)) == 45'000'000);
}
