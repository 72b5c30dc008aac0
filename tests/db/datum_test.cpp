// Key heights of one pass have one datum, whatever door they come through (situation 19).
#include "db/importing.h"
#include "tests/db/bench.h"

#include <algorithm>

using namespace hammerline;
using namespace hammerline::bench;
using namespace hammerline::dimension;

namespace fs = std::filesystem;

namespace {

struct Bed {
    Folder folder;
    std::string path = folder.file("b.hammerline");
    BenchBook book = ok(BenchBook::create(path, writer()));
    std::string piano = ok(book.addPiano(upright(), "upright"));
    Bed() {
        ok(book.addPass(piano, {"as found", {}, {}, false, false, {{keyHeight, "bed"}}}));
        ok(book.store(piano, 1, std::vector{mm(1, keyHeight, 63.5), mm(3, keyHeight, 63.4)}));
    }
    Pass pass() { return ok(book.load(piano)).passes.front(); }
};

} // namespace

TEST_CASE("a height over another datum is refused, and nothing of its act is kept") {
    Bed bed;
    const Pass before = bed.pass();
    CHECK(code(bed.book.store(bed.piano, 1, std::vector{mm(4, keyHeight, 63.0), mm(5, keyHeight, 21.0)})) ==
          RefusalCode::otherDatum);
    CHECK(code(bed.book.store(bed.piano, 1, std::vector{mm(4, keyHeight, -0.2)})) == RefusalCode::otherDatum);
    const auto imported = bed.book.importInto(bed.piano, "f.csv", [](Importing& into) -> Outcome<void> {
        (void)into.put(1, mm(4, keyHeight, 21.0));
        return into.put(1, mm(4, keyDip, 10.0));
    });
    CHECK(code(imported) == RefusalCode::otherDatum);
    CHECK(bed.pass() == before);
    CHECK(imported.error().detail == "bed");
}

TEST_CASE("the datum of heights that were read is not said anew") {
    Bed bed;
    CHECK(code(bed.book.setReferences(bed.piano, 1, {{keyHeight, "slip"}})) == RefusalCode::otherDatum);
    CHECK(bed.pass().referenceOf(keyHeight) == "bed");
    CHECK(bed.book.setReferences(bed.piano, 1, {{keyDip, "weight"}}).has_value());
    // a file that brings all of them anew brings its datum as well
    const auto anew = bed.book.importInto(bed.piano, "f.csv", [](Importing& into) -> Outcome<void> {
        (void)into.put(1, mm(1, keyHeight, 21.0));
        (void)into.put(1, mm(3, keyHeight, 21.2));
        return into.setReferences(1, {{keyHeight, "slip"}});
    });
    CHECK(anew.has_value());
    CHECK(bed.pass().value(cell(3, keyHeight)) == 21'200'000);
}

TEST_CASE("books that were merged keep both datums as a dispute and lose no height") {
    const Folder folder;
    const std::string a = folder.file("a.hammerline"), b = folder.file("b.hammerline");
    std::string piano;
    {
        BenchBook book = ok(BenchBook::create(a, writer(1'795'593'600'000'000)));
        piano = ok(book.addPiano(upright(), "upright"));
        ok(book.addPass(piano, {"as found", {}, {}, false, false, {}}));
    }
    fs::copy_file(a, b);
    {
        BenchBook over = ok(BenchBook::open(b, OpenMode::readWrite, writer(1'795'597'200'000'000)));
        ok(over.setReferences(piano, 1, {{keyHeight, "bed"}}));
        ok(over.store(piano, 1, std::vector{mm(1, keyHeight, 63.5)}));
    }
    BenchBook book = ok(BenchBook::open(a, OpenMode::readWrite, writer(1'795'600'800'000'000)));
    ok(book.setReferences(piano, 1, {{keyHeight, "slip"}}));
    ok(book.store(piano, 1, std::vector{mm(3, keyHeight, 21.0)}));
    const Merged merged = ok(book.merge(b));
    const auto told = std::find_if(merged.disputes.begin(), merged.disputes.end(),
                                   [](const Dispute& each) { return each.what == "pass"; });
    REQUIRE(told != merged.disputes.end());
    CHECK(std::find(told->said.begin(), told->said.end(), "as found, key-height=bed") != told->said.end());
    CHECK(std::find(told->said.begin(), told->said.end(), "as found, key-height=slip") != told->said.end());
    const Pass pass = ok(book.load(piano)).passes.front();
    CHECK(pass.value(cell(1, keyHeight)) == 63'500'000);
    CHECK(pass.value(cell(3, keyHeight)) == 21'000'000);
}
