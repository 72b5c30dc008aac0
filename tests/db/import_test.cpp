// An import under way: one transaction, one act, its own times kept (architecture, data rules).
#include "db/acts.h"
#include "db/checks_at_end.h"
#include "db/importing.h"
#include "tests/db/bench.h"

#include <SQLiteCpp/SQLiteCpp.h>

using namespace hammerline;
using namespace hammerline::bench;
using namespace hammerline::dimension;

namespace {

constexpr std::int64_t kThen = 1'700'000'000'000'000; // long before the clock of the bench

NewReading measured(int note, DimensionId id, double value, std::int64_t at, int trial = 1) {
    NewReading each = mm(note, id, value, trial);
    each.reading.at = at;
    return each;
}

struct Bench {
    Folder folder;
    BenchBook book = ok(BenchBook::create(folder.file("b.hammerline"), writer()));
    std::string piano = ok(book.addPiano(upright(), "upright"));

    Outcome<ActId> import(const std::function<void(Importing&)>& work) {
        return book.importInto(piano, "file.csv", [&](Importing& into) -> Outcome<void> {
            work(into);
            return {};
        });
    }
    PianoRecord record() { return ok(book.load(piano)); }
};

/// Three passes of a file, a repeat, a mark.
void threePasses(Importing& into) {
    for (const char* name : {"1", "2", "spring"}) {
        const int pass = ok(into.passNamed(name));
        REQUIRE(into.put(pass, measured(1, keyDip, 10.1, kThen + pass)).has_value());
        REQUIRE(into.put(pass, measured(1, keyDip, 10.3, kThen + pass, 2)).has_value());
        REQUIRE(into.markNotFitted(pass, cell(3, letOff)).has_value());
    }
    REQUIRE(into.setReferences(2, {{keyHeight, "bed"}}).has_value());
}

} // namespace

TEST_CASE("an import is one act: passes, readings, marks and references") {
    Bench bench;
    CHECK(ok(bench.import(threePasses)) > 0);
    const auto record = bench.record();
    REQUIRE(record.passes.size() == 3);
    CHECK(record.passes[0].label == "as found");
    CHECK(record.passes[1].label.empty()); // its number says it
    CHECK(record.passes[2].label == "spring");
    for (const Pass& pass : record.passes) {
        const Measured* dip = pass.at(cell(1, keyDip));
        REQUIRE(dip);
        CHECK(dip->value() == 10'200'000);
        CHECK(dip->superseded == 0);
        CHECK(dip->trials[0].at == kThen + pass.number); // its own time
        REQUIRE(pass.at(cell(3, letOff)));
        CHECK(pass.at(cell(3, letOff))->notFitted);
        CHECK(pass.referenceOf(keyHeight) == (pass.number == 2 ? "bed" : "line"));
    }
    CHECK(ok(bench.book.verify()).sound);

    CHECK(ok(bench.book.undo()).kind == "import");
    CHECK(bench.record().passes.empty());
    CHECK(ok(bench.book.redo()).kind == "import");
    CHECK(bench.record().passes.size() == 3);
    CHECK(bench.record().passes[2].at(cell(1, keyDip))->trials.size() == 2);
    // what it brought is no step of its own
    CHECK(ok(bench.book.undo()).kind == "import");
    CHECK(ok(bench.book.undo()).kind == "setup");
    CHECK(ok(bench.book.verify()).sound);
}

TEST_CASE("an import that is refused half-way leaves nothing") {
    Bench bench;
    const auto refused = bench.book.importInto(bench.piano, "file.csv", [](Importing& into) -> Outcome<void> {
        threePasses(into);
        return refuse(RefusalCode::cancelled);
    });
    CHECK(code(refused) == RefusalCode::cancelled);
    CHECK(bench.record().passes.empty());
    // the book goes on: the dictionary of dimensions and the session were put back too
    CHECK(ok(bench.import(threePasses)) > 0);
    CHECK(bench.record().passes.size() == 3);
    CHECK(ok(bench.book.verify()).sound);
    const auto twice = bench.import([](Importing& into) {
        REQUIRE(into.put(1, measured(5, blow, 46, 0)).has_value());
        CHECK(code(into.put(1, measured(5, blow, 47, 0))) == RefusalCode::usage);
        CHECK(code(into.put(9, measured(5, blow, 47, 0))) == RefusalCode::noSuchPass);
        CHECK(code(into.put(1, measured(109, blow, 47, 0))) == RefusalCode::unknownNote);
    });
    CHECK(twice.has_value());
}

TEST_CASE("the same file again is no act; what differs is written over") {
    Bench bench;
    REQUIRE(bench.import(threePasses).has_value());
    CHECK(ok(bench.import(threePasses)) == 0);
    REQUIRE(bench
                .import([](Importing& into) {
                    const int pass = ok(into.passNamed("1"));
                    REQUIRE(into.put(pass, measured(1, keyDip, 9.8, kThen + 9)).has_value()); // the cell starts anew
                    REQUIRE(into.put(pass, measured(3, letOff, 3.0, kThen + 9)).has_value()); // fitted after all
                    REQUIRE(into.put(pass, measured(4, letOff, 3.1, kThen + 9, 0)).has_value());
                    REQUIRE(into.put(pass, measured(4, letOff, 3.3, kThen + 9, 0)).has_value()); // a repeat
                })
                .has_value());
    const auto record = bench.record();
    CHECK(record.passes.size() == 3);
    const Pass& pass = record.passes[0];
    CHECK(pass.value(cell(1, keyDip)) == 9'800'000);
    CHECK(pass.at(cell(1, keyDip))->trials.size() == 1);
    CHECK(pass.at(cell(1, keyDip))->superseded == 2);
    CHECK(ok(bench.book.trail(bench.piano, 1, cell(1, keyDip))).size() == 3);
    CHECK_FALSE(pass.at(cell(3, letOff))->notFitted);
    CHECK(pass.value(cell(4, letOff)) == 3'200'000);
    REQUIRE(bench.book.undo().has_value());
    CHECK(bench.record().passes[0].value(cell(1, keyDip)) == 10'200'000);
    CHECK(bench.record().passes[0].at(cell(3, letOff))->notFitted);
    CHECK(ok(bench.book.verify()).sound);
}

TEST_CASE("passes of a file are those of the book as it was, the others are made in the order of the file") {
    Bench bench;
    ok(bench.book.addPass(bench.piano, {"as found", {}, {}, false, false, {}}));
    REQUIRE(bench
                .import([](Importing& into) {
                    CHECK(ok(into.passNamed("3")) == 2); // made: the book has one pass only
                    CHECK(ok(into.passNamed("2")) == 3); // and no pass of this file is another of it
                    CHECK(ok(into.passNamed("1")) == 1);
                    CHECK(ok(into.passNamed("as found")) == 1);
                    CHECK(ok(into.passNamed("99999999999999999999")) == 4);
                    for (int pass = 1; pass <= 4; ++pass)
                        REQUIRE(into.put(pass, measured(pass, blow, 46, 0)).has_value());
                })
                .has_value());
    const auto record = bench.record();
    REQUIRE(record.passes.size() == 4);
    CHECK(record.passes[1].label == "pass 3");
    CHECK(record.passes[2].label == "pass 2");
    for (const Pass& pass : record.passes)
        CHECK(pass.value(cell(pass.number, blow)) == 46'000'000);
}

TEST_CASE("rows that are written unchecked are asked about before they are kept") {
    CHECK(checksIn("CREATE TABLE t (a TEXT CHECK (a IN ('x)','(')), b, CHECK (b > (1 + 2)), c)") ==
          std::vector<std::string>{"(a IN ('x)','('))", "(b > (1 + 2))"});
    const Folder folder = Folder::quick();
    const std::string path = folder.file("shop.hammerline");
    { const Filled filled = filledBook(path); }
    // what a program with a fault might write: against each CHECK of a reading in turn
    for (const std::string fault :
         {"note = 109", "trial = 0", "withdrawn = 2", "relation = '~'", "value = NULL", "value = 2000000000000",
          "upper = 1", "word = 'torn'", "taken = 7", "replaces = act_id", "relation = 'word'"}) {
        INFO(fault);
        OpenBook book(path, Reach::write, false, writer());
        const auto written = [&](const std::string& change) {
            return writing(book, "import", "a.csv", [&](ActUnderWay& act) {
                ChecksAtEnd checks(act.book());
                act.book().db.exec("INSERT INTO reading (pass_id, note, dimension_id, trial, act_id, relation, value, "
                                   "typed) SELECT 1, 50, 1, 9, " +
                                   std::to_string(act.id()) + ", '=', 3000000, '3'");
                act.book().db.exec("UPDATE reading SET " + change + " WHERE act_id = " + std::to_string(act.id()));
                checks.ask();
                return act.id();
            });
        };
        const std::string before = bytesOf(path);
        const auto refused = written(fault);
        CHECK(code(refused) == RefusalCode::damagedBook);
        CHECK(bytesOf(path) == before);
        // and after that they are asked of every row again
        CHECK_THROWS_AS(book.db.exec("UPDATE reading SET taken = 7"), SQLite::Exception);
    }
    BenchBook book = ok(BenchBook::open(path));
    CHECK(ok(book.verify()).sound);
}

TEST_CASE("every CHECK of the book is found in its own text") {
    const Folder folder = Folder::quick();
    const std::string path = folder.file("shop.hammerline");
    { const Filled filled = filledBook(path); }
    SQLite::Database db(path, SQLite::OPEN_READONLY);
    SQLite::Statement tables(db, "SELECT name, sql FROM sqlite_schema WHERE type = 'table'");
    std::size_t found = 0, words = 0;
    while (tables.executeStep()) {
        const std::string sql = tables.getColumn(1).getString();
        for (std::size_t at = sql.find("CHECK"); at != sql.npos; at = sql.find("CHECK", at + 1))
            ++words;
        for (const std::string& check : checksIn(sql)) {
            ++found;
            INFO(check);
            CHECK_NOTHROW(SQLite::Statement(db, "SELECT " + check + " FROM " + tables.getColumn(0).getString()));
        }
    }
    CHECK(found == words);
    CHECK(found > 60);
}
