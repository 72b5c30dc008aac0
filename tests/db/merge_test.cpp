// Books that grew apart become one: union, conflicts kept and shown, nothing lost, whichever is merged into which.
#include "tests/db/bench.h"

#include <rapidcheck.h>

#include <algorithm>
#include <functional>

using namespace hammerline;
using namespace hammerline::bench;
using namespace hammerline::dimension;

namespace fs = std::filesystem;

namespace {

BenchBook open(const std::string& path, std::int64_t start) {
    return ok(BenchBook::open(path, OpenMode::readWrite, writer(start)));
}
constexpr std::int64_t kMorning = 1'795'593'600'000'000, kHour = 3'600'000'000;

/// A book and its copy on another machine.
struct Apart {
    Folder folder = Folder::quick();
    std::string a = folder.file("a.hammerline"), b = folder.file("b.hammerline"), piano;
    Apart() {
        BenchBook book = ok(BenchBook::create(a, writer(kMorning)));
        piano = ok(book.addPiano(upright(), "upright"));
        ok(book.addPass(piano, {"as found", {}, {}, false, false, {}}));
        ok(book.store(piano, 1, std::vector{mm(1, letOff, 3.0), mm(2, letOff, 3.1)}));
        fs::copy_file(a, b);
    }
};

/// One thing a person may do; what the book refuses is left.
void act(BenchBook& book, const std::string& piano, int what, int note, int value) {
    const auto passes = ok(book.pianos());
    const auto last = std::find_if(passes.begin(), passes.end(), [&](const auto& each) { return each.uuid == piano; });
    const int pass = last == passes.end() ? 1 : static_cast<int>(last->passes.size());
    Finding finding;
    finding.note = NoteNumber{note};
    finding.part = "bridle-strap";
    finding.fault = value % 2 == 0 ? "rotted" : "";
    finding.state = value % 2 == 0 ? FindingState::toDo : FindingState::sound;
    Done turned;
    turned.operation = operation::letOffTurn;
    turned.notes = {NoteNumber{note}};
    turned.amount = 0.25;
    turned.pass = pass;
    FrozenPlan plan;
    static int plans = 100'000;
    plan.uuid = "6e0e7f5c-9b5e-4c7f-8f1e-012345" + std::to_string(++plans);
    plan.pass = pass;
    plan.options = plan.content = "{}";
    Piano renamed = upright("Parlour upright " + std::to_string(value));
    switch (what) {
    case 0:
        (void)book.undo();
        break;
    case 1:
        (void)book.redo();
        break;
    case 2:
        (void)book.withdraw(piano, pass, cell(note, letOff));
        break;
    case 3:
        (void)book.markNotFitted(piano, pass, cell(note, letOff));
        break;
    case 4:
        (void)book.addPass(piano, {"pass " + std::to_string(value), {}, {}, false, false, {}});
        break;
    case 5:
        (void)book.addFindings(piano, std::vector{finding});
        break;
    case 6:
        (void)book.setOverride(piano, {cell(note, blow), {{}, value * 1'000'000, {}}, "why", ""});
        break;
    case 7:
        (void)book.tick(piano, std::vector{turned}, plan);
        break;
    case 8:
        (void)book.changePiano(piano, renamed, "upright");
        break;
    case 9:
        (void)book.setPreference(piano, "unit-blow", std::to_string(value));
        break;
    case 10:
        (void)book.addPiano(upright("Other " + std::to_string(value)), "upright");
        break;
    case 11:
        (void)book.store(piano, pass, std::vector{mm(note, letOff, value, 0)});
        break;
    default:
        (void)book.store(piano, pass, std::vector{mm(note, letOff, value), mm(note, damperRise, value)});
    }
}

void live(BenchBook& book, const std::string& piano) {
    const int acts = *rc::gen::inRange(0, 9);
    for (int i = 0; i < acts; ++i)
        act(book, piano, *rc::gen::inRange(0, 18), *rc::gen::inRange(1, 4), *rc::gen::inRange(1, 6));
}

bool holds(const std::function<void()>& property, int times) {
    rc::detail::TestParams params = rc::detail::configuration().testParams;
    params.maxSuccess = times;
    const auto result = rc::detail::checkTestable(property, rc::detail::TestMetadata{}, params);
    if (!result.is<rc::detail::SuccessResult>()) {
        std::ostringstream said;
        rc::detail::printResultMessage(result, said);
        UNSCOPED_INFO(said.str());
    }
    return result.is<rc::detail::SuccessResult>();
}

void requireSame(const BenchBook& one, const BenchBook& other) {
    const std::string left = contentOf(one), right = contentOf(other);
    if (left != right) RC_FAIL(left + "\n--- against ---\n" + right);
}

} // namespace

TEST_CASE("what either book knows is in both after a merge, whichever is merged into which, and once is enough") {
    CHECK(holds(
        [] {
            const Apart apart;
            BenchBook a = open(apart.a, kMorning + kHour),
                      b = open(apart.b, kMorning + *rc::gen::inRange(0, 3) * kHour);
            live(a, apart.piano);
            live(b, apart.piano);
            fs::copy_file(apart.a, apart.folder.file("a-before"));
            const Merged first = ok(a.merge(apart.b));
            const Merged second = ok(b.merge(apart.folder.file("a-before")));
            requireSame(a, b);
            RC_ASSERT(ok(a.verify()).sound);
            RC_ASSERT(ok(b.verify()).sound);
            RC_ASSERT(ok(a.disputes()) == ok(b.disputes()));
            RC_ASSERT(first.acts > 0 || first.kept.empty());
            // idempotent, also once each knows what the other brought back
            (void)ok(a.merge(apart.b));
            (void)ok(b.merge(apart.a));
            requireSame(a, b);
            const std::string content = contentOf(a);
            RC_ASSERT(ok(a.merge(apart.b)).acts == 0u);
            RC_ASSERT(ok(b.merge(apart.a)).acts == 0u);
            RC_ASSERT(contentOf(a) == content);
            RC_ASSERT(second.disputes.size() == first.disputes.size());
        },
        40));
}

TEST_CASE("three books come to the same in any order") {
    CHECK(holds(
        [] {
            const Apart apart;
            const std::string third = apart.folder.file("c.hammerline");
            fs::copy_file(apart.a, third);
            {
                BenchBook a = open(apart.a, kMorning + kHour), b = open(apart.b, kMorning + kHour / 2),
                          c = open(third, kMorning + 2 * kHour);
                live(a, apart.piano);
                live(b, apart.piano);
                live(c, apart.piano);
            }
            const std::string one = apart.folder.file("one"), other = apart.folder.file("other");
            fs::copy_file(apart.a, one);
            fs::copy_file(third, other);
            BenchBook left = open(one, kMorning + 3 * kHour), right = open(other, kMorning + 4 * kHour);
            (void)ok(left.merge(apart.b));
            (void)ok(left.merge(third));
            (void)ok(right.merge(apart.b));
            (void)ok(right.merge(apart.a));
            requireSame(left, right);
            RC_ASSERT(ok(left.verify()).sound);
        },
        15));
}

TEST_CASE("two readings of one cell are both kept and shown; the later holds until a person measures again") {
    const Apart apart;
    BenchBook a = open(apart.a, kMorning + kHour), b = open(apart.b, kMorning + 2 * kHour);
    ok(a.store(apart.piano, 1, std::vector{mm(1, letOff, 2.6), mm(3, letOff, 3.3)}));
    ok(b.store(apart.piano, 1, std::vector{mm(1, letOff, 2.9), mm(3, letOff, 3.3)}));
    const Merged merged = ok(a.merge(apart.b));
    CHECK(merged.acts == 1);
    CHECK(merged.readings == 2);
    REQUIRE(merged.disputes.size() == 1); // note 3: the same said twice is no dispute
    CHECK(merged.disputes[0].what == "reading");
    CHECK(merged.disputes[0].piano == "Parlour upright");
    CHECK(merged.disputes[0].pass == 1);
    CHECK(merged.disputes[0].note == 1);
    CHECK(merged.disputes[0].dimension == letOff);
    CHECK(merged.disputes[0].said == std::vector<std::string>{"2.60 mm", "2.90 mm"});
    const auto measured = [&](BenchBook& book, int note) {
        return ok(book.load(apart.piano)).passes[0].cells.at(cell(note, letOff));
    };
    CHECK(measured(a, 1).disputed);
    CHECK(measured(a, 1).value() == 2'900'000);
    CHECK_FALSE(measured(a, 3).disputed);
    CHECK(ok(a.trail(apart.piano, 1, cell(1, letOff))).size() == 3);
    // measuring anew settles it, in the other book as well
    ok(a.store(apart.piano, 1, std::vector{mm(1, letOff, 2.8)}));
    CHECK(ok(a.disputes()).empty());
    ok(b.merge(apart.a));
    CHECK(ok(b.disputes()).empty());
    CHECK(measured(b, 1).value() == 2'800'000);
    CHECK(contentOf(a) == contentOf(b));
}

TEST_CASE("a pass taken back in one book and gone on from in the other comes back, and the merge says so") {
    const Apart apart;
    BenchBook a = open(apart.a, kMorning + kHour), b = open(apart.b, kMorning + 2 * kHour);
    ok(a.undo());
    ok(a.undo());
    CHECK(ok(a.load(apart.piano)).passes.empty());
    ok(b.store(apart.piano, 1, std::vector{mm(40, letOff, 2.9)}));
    const Merged merged = ok(a.merge(apart.b));
    CHECK(merged.act > 0);
    REQUIRE(merged.disputes.size() == 1);
    CHECK(merged.disputes[0].what == "brought-back");
    const PianoRecord record = ok(a.load(apart.piano));
    REQUIRE(record.passes.size() == 1);
    CHECK(record.passes[0].value(cell(40, letOff)) == 2'900'000);
    CHECK(record.passes[0].label == "as found");
    ok(b.merge(apart.a));
    CHECK(contentOf(a) == contentOf(b));
    CHECK(ok(a.verify()).sound);
}

TEST_CASE("a merge leaves the book as it was beside it, and undo goes on with this book's own acts") {
    const Apart apart;
    BenchBook a = open(apart.a, kMorning + kHour), b = open(apart.b, kMorning + 2 * kHour);
    ok(a.store(apart.piano, 1, std::vector{mm(5, letOff, 2.6)}));
    ok(b.store(apart.piano, 1, std::vector{mm(6, letOff, 2.7)}));
    const std::string before = contentOf(a);
    const Merged merged = ok(a.merge(apart.b));
    CHECK(fs::path(merged.kept).filename() == "a.before-merge-20261125-090002.hammerline");
    CHECK(contentOf(ok(BenchBook::open(merged.kept, OpenMode::readOnly))) == before);
    ok(a.undo()); // the own reading, not the other book's
    const PianoRecord record = ok(a.load(apart.piano));
    CHECK_FALSE(record.passes[0].value(cell(5, letOff)));
    CHECK(record.passes[0].value(cell(6, letOff)) == 2'700'000);
}

TEST_CASE("books of different pianos come together; a name used twice is told") {
    const Apart apart;
    const std::string path = apart.folder.file("colleague");
    Filled other = filledBook(path, writer(kMorning + kHour));
    ok(other.book.addPiano(upright("Studio grand"), "upright"));
    BenchBook a = open(apart.a, kMorning + 2 * kHour);
    const Merged merged = ok(a.merge(path));
    CHECK(merged.pianos == 2);
    CHECK(merged.passes == 2);
    CHECK(merged.readings == 180);
    REQUIRE(merged.disputes.size() == 1);
    CHECK(merged.disputes[0].what == "same-name");
    CHECK(ok(a.load(other.piano)).done == ok(other.book.load(other.piano)).done);
    CHECK(ok(a.pianos()).size() == 3);
}

TEST_CASE("what cannot be merged leaves the book as it was") {
    const Apart apart;
    BenchBook a = open(apart.a, kMorning + kHour);
    const std::string before = bytesOf(apart.a);
    CHECK(code(a.merge(apart.folder.file("nowhere"))) == RefusalCode::cannotRead);
    std::ofstream(apart.folder.file("text")) << "no book";
    CHECK(code(a.merge(apart.folder.file("text"))) == RefusalCode::notABook);
    CHECK(ok(a.merge(apart.a)).acts == 0);
    BenchBook readOnly = ok(BenchBook::open(apart.b, OpenMode::readOnly));
    CHECK(code(readOnly.merge(apart.a)) == RefusalCode::readOnlyBook);
    CHECK(bytesOf(apart.a) == before);
    CHECK(apart.folder.names() == std::vector<std::string>{"a.hammerline", "b.hammerline", "text"});
}
