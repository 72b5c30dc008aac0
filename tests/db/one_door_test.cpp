// Every file goes through one door: names are what they seem, what another book left beside a name harms nobody, and a
// restored book takes its place in one step.
#include "tests/db/bench.h"

#include <SQLiteCpp/SQLiteCpp.h>
#include <unistd.h>

#include <algorithm>
#include <regex>
#include <set>

using namespace hammerline;
using namespace hammerline::bench;
using namespace hammerline::dimension;

namespace fs = std::filesystem;

namespace {

void write(const std::string& path, const std::string& bytes) {
    std::ofstream(path, std::ios::binary | std::ios::trunc) << bytes;
}

/// The journal of a book in the middle of a change, as a process that dies there leaves it, beside `name`: its pages
/// are those of another book than the one that will lie there.
void leaveJournal(const Folder& folder, const std::string& name) {
    const std::string other = folder.file("other.hammerline");
    { filledBook(other); }
    SQLite::Database db(other, SQLite::OPEN_READWRITE);
    db.exec("PRAGMA cache_size=1");
    db.exec("BEGIN IMMEDIATE");
    db.exec("UPDATE reading SET typed = typed || '   '");
    fs::copy_file(other + "-journal", name + "-journal");
    db.exec("ROLLBACK");
    REQUIRE(fs::file_size(name + "-journal") > 512);
}

/// Lines of the program's source that match, as "file: line".
std::vector<std::string> linesWith(const std::regex& sought) {
    std::vector<std::string> found;
    const fs::path root(HAMMERLINE_SOURCE_DIR);
    for (const char* floor : {"app", "core", "db", "ui"})
        for (const auto& entry : fs::recursive_directory_iterator(root / floor)) {
            const auto kind = entry.path().extension();
            if (kind != ".cpp" && kind != ".h") continue;
            std::ifstream in(entry.path());
            for (std::string line; std::getline(in, line);)
                if (std::regex_search(line, sought) && line.find("#include") == std::string::npos)
                    found.push_back(fs::relative(entry.path(), root).string() + ": " + line);
        }
    return found;
}

} // namespace

TEST_CASE("a journal left beside a name is not rolled into what is put there") {
    const Folder folder = Folder::quick();
    const std::string name = folder.file("shop.hammerline"), source = folder.file("source.hammerline");
    { filledBook(source); }
    leaveJournal(folder, name);
    SECTION("restored") {
        ok(restoreBook(name, source));
    }
    SECTION("backed up to") {
        ok(ok(BenchBook::open(source)).backUp(name));
    }
    SECTION("made anew") {
        filledBook(name);
    }
    CHECK(ok(ok(BenchBook::open(name)).verify()).sound);
    const auto names = folder.names();
    const auto aside = [](const std::string& each) { return each.starts_with("shop.left-over-"); };
    CHECK(std::any_of(names.begin(), names.end(), aside));
}

TEST_CASE("an older copy that was left in the middle of a change is not written over") {
    const Folder folder = Folder::quick();
    const std::string copy = folder.file("copy.hammerline");
    Filled filled = filledBook(folder.file("shop.hammerline"));
    ok(filled.book.backUp(copy));
    write(copy + "-journal", "something");
    CHECK(code(filled.book.backUp(copy)) == RefusalCode::cannotWrite);
    CHECK(fs::exists(copy + "-journal"));
}

TEST_CASE("what restoring replaces is kept with its journal") {
    const Folder folder = Folder::quick();
    const std::string path = folder.file("shop.hammerline"), source = folder.file("source.hammerline");
    { filledBook(source); }
    write(path, "whatever it was");
    write(path + "-journal", "and its journal");
    const std::string kept = ok(restoreBook(path, source));
    CHECK(bytesOf(kept) == "whatever it was");
    CHECK(bytesOf(kept + "-journal") == "and its journal");
    CHECK_FALSE(fs::exists(path + "-journal"));
    CHECK(ok(ok(BenchBook::open(path)).verify()).sound);
}

TEST_CASE("the copy that was just made stays, whatever the clock says") {
    const Folder folder = Folder::quick();
    const std::string path = folder.file("shop.hammerline");
    {
        Filled filled = filledBook(path);
        for (int i = 0; i < 10; ++i)
            ok(filled.book.backUp());
    }
    BenchBook later = ok(BenchBook::open(path, OpenMode::readWrite, writer(1'000'000'000'000'000))); // in 2001
    const std::string piano = ok(later.findPiano({}));
    ok(later.store(piano, 1, std::vector{mm(1, letOff, 3.3)}));
    const std::string first = ok(later.backUp());
    CHECK(fs::exists(first));
    ok(later.store(piano, 1, std::vector{mm(2, letOff, 3.4)}));
    const std::string second = ok(later.backUp());
    CHECK(fs::exists(second));
    CHECK(fs::exists(first)); // it knows more than the ten before
}

TEST_CASE("a name is a file and never a URI") {
    const Folder folder = Folder::quick();
    const std::string victim = folder.file("victim.hammerline");
    { filledBook(victim); }
    const std::string before = bytesOf(victim);
    fs::create_directory(folder.file("inner"));
    const fs::path home = fs::current_path();
    fs::current_path(folder.file("inner"));
    const std::string trap = "file:..%2Fvictim.hammerline";
    fs::copy_file(victim, trap);
    auto book = BenchBook::open(trap, OpenMode::readWrite, writer());
    fs::current_path(home);
    REQUIRE(book);
    ok(book->addPiano(upright("Another"), "upright"));
    CHECK(bytesOf(victim) == before);
    CHECK(bytesOf(folder.file("inner/" + trap)) != before);
}

TEST_CASE("a link to a book stays one, and copies lie beside the book itself") {
    const Folder folder = Folder::quick();
    const std::string path = folder.file("shop.hammerline"), source = folder.file("source.hammerline");
    { filledBook(path); }
    { filledBook(source); }
    fs::create_directory(folder.file("desk"));
    const std::string linked = folder.file("desk/linked.hammerline");
    fs::create_symlink(path, linked);
    ok(ok(BenchBook::open(linked)).backUp());
    const std::string kept = ok(restoreBook(linked, source));
    CHECK(fs::is_symlink(linked));
    CHECK(fs::path(kept).parent_path() == fs::canonical(fs::path(path).parent_path()));
    for (const auto& entry : fs::directory_iterator(folder.file("desk")))
        CHECK(entry.path().filename() == "linked.hammerline");
}

TEST_CASE("a name that cannot be a file is refused as that, never as a damaged book") {
    const Folder folder = Folder::quick();
    const std::string circle = folder.file("circle");
    fs::create_symlink(circle, circle);
    const auto round = BenchBook::open(circle);
    CHECK(code(round) == RefusalCode::cannotRead);
    CHECK(round.error().detail == "circle-of-links");
    const auto tooLong = BenchBook::create(folder.file(std::string(300, 'x')));
    CHECK(code(tooLong) == RefusalCode::cannotWrite);
    CHECK(tooLong.error().detail == "name-too-long");
}

TEST_CASE("every file that the source writes, renames or removes is known") {
    // A new one goes through writeDocument or a PassingFile; what is listed is guarded in the way that is said.
    const std::set<std::string> known = {
        "app/commands/bench.cpp",          // reads
        "app/commands/file_pieces.cpp",    // reads
        "db/document.cpp",                 // the door
        "db/files.cpp",                    // the door
        "db/file_header.cpp",              // reads
        "db/rescue.cpp",                   // a passing copy
        "db/opening.cpp",                  // its own copy before a schema step that failed
        "db/backup.cpp",                   // rotation, and a kept name that is not needed
        "db/left_behind.cpp",              // passing files that nobody writes any more, on a person's word
        "db/merging.cpp",                  // its own copy before a merge that failed
        "ui/book_door.cpp",                // rights of a runtime folder
        "ui/main_window_begin.cpp",        // reads
        "ui/print/sheets.cpp",             // a PDF into memory
        "ui/pictures/picture_reading.cpp", // reads, and a picture into memory
        "ui/stations/survey_memory.cpp",   // a picture into memory
        "ui/main_window_opinion.cpp",      // reads
        "ui/settings/settings.h",          // refused over a book before it is made
        "ui/window.cpp",                   // a picture into memory
    };
    const std::regex sought(
        R"(\bQFile\b|\bQSaveFile\b|\bQSettings\s+m_|\bQPdfWriter\b|[a-z]fstream\b|\bfstream\b|)"
        R"(\bfopen\(|image\.save\(|pixmap\.save\(|std::rename\(|::rename\(|QFile::rename|(filesystem|fs)::remove\(|std::remove\([^,]*c_str|O_WRONLY)");
    const auto found = linesWith(sought);
    CHECK(found.size() > 10);
    for (const std::string& line : found) {
        INFO(line);
        CHECK(known.count(line.substr(0, line.find(": "))) == 1);
    }
}

TEST_CASE("what opens a file of a book besides SQLite is known") {
    // closing any descriptor of a file gives up the locks that SQLite has on it in this process (fcntl(2)), so none is
    // opened and closed while this program is in the middle of a change of that file
    const std::set<std::string> known = {
        "db/document.cpp",    // a passing file, never a book
        "db/file_header.cpp", // before the book is opened, and of other books
        "db/files.cpp",       // a passing file while nobody has it open: before it is placed
        "db/held_book.cpp",   // in no change of its own: restore works on a copy until then
        "db/rescue.cpp",      // a passing copy while nobody has it open
    };
    const auto found = linesWith(std::regex(R"((^|[^.\w:>])open\(.*O_|\bi?fstream \w+\()"));
    CHECK(found.size() >= known.size());
    for (const std::string& line : found) {
        INFO(line);
        const std::string file = line.substr(0, line.find(": "));
        const bool ofBooks = file.starts_with("db/");
        CHECK((!ofBooks || known.count(file) == 1));
    }
}

TEST_CASE("no call to the file system throws where nobody catches") {
    // the forms without an error code: those of db stand inside its guard, those of app and ui would end the program
    const std::regex sought(R"(filesystem::(exists|remove|is_directory|is_regular_file|file_size|status|copy_file)\()"
                            R"([^,]*\))");
    for (const std::string& line : linesWith(sought)) {
        INFO(line);
        CHECK(line.starts_with("db/"));
    }
}
