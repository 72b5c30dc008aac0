// Exports and sheets as files: whole or not at all, and never over a bench book.
#include "db/document.h"
#include "tests/db/bench.h"

#include <SQLiteCpp/SQLiteCpp.h>
#include <sys/resource.h>
#include <sys/stat.h>
#include <unistd.h>

#include <csignal>

using namespace hammerline;
using namespace hammerline::bench;

namespace fs = std::filesystem;

namespace {

/// While it lives no file of this process grows beyond so many bytes: what a full disk does, at a byte of one's choice.
class SmallDisk {
public:
    explicit SmallDisk(rlim_t bytes) : m_signal(std::signal(SIGXFSZ, SIG_IGN)) {
        getrlimit(RLIMIT_FSIZE, &m_before);
        const rlimit now{bytes, m_before.rlim_max};
        setrlimit(RLIMIT_FSIZE, &now);
    }
    SmallDisk(const SmallDisk&) = delete;
    SmallDisk& operator=(const SmallDisk&) = delete;
    ~SmallDisk() {
        setrlimit(RLIMIT_FSIZE, &m_before);
        std::signal(SIGXFSZ, m_signal);
    }

private:
    rlimit m_before{};
    void (*m_signal)(int);
};

} // namespace

TEST_CASE("a document is written whole or not at all, wherever the disk gives out") {
    const Folder folder;
    const std::string path = folder.file("sheet.pdf"), bytes(20'000, 'x');
    for (const bool there : {false, true}) {
        if (there) std::ofstream(path) << "the sheet of last week";
        const auto names = folder.names();
        for (const rlim_t room : {0U, 1U, 4095U, 4096U, 19'999U}) {
            std::optional<Outcome<void>> done;
            {
                const SmallDisk small(room);
                done = writeDocument(path, bytes);
            }
            CHECK(code(*done) == RefusalCode::cannotWrite);
            CHECK(done->error().offending == path);
            CHECK(folder.names() == names);
            if (there) CHECK(bytesOf(path) == "the sheet of last week");
        }
    }
    REQUIRE(writeDocument(path, bytes).has_value());
    CHECK(bytesOf(path) == bytes);
    CHECK(folder.names() == std::vector<std::string>{"sheet.pdf"});
}

TEST_CASE("no document takes the place of a bench book, sound, damaged or newer, nor of a folder or a device") {
    const Folder folder;
    const std::string path = folder.file("shop.csv"); // whatever its name
    { (void)filledBook(path); }
    const auto refused = [&] {
        const std::string before = bytesOf(path);
        CHECK(code(writeDocument(path, "piano;pass")) == RefusalCode::fileExists);
        CHECK(bytesOf(path) == before);
    };
    refused();
    SQLite::Database(path, SQLite::OPEN_READWRITE).exec("PRAGMA user_version=99");
    refused();
    SQLite::Database(path, SQLite::OPEN_READWRITE).exec("PRAGMA user_version=0");
    refused();
    SQLite::Database(path, SQLite::OPEN_READWRITE).exec("PRAGMA user_version=2");
    fs::resize_file(path, 9000);
    refused();
    fs::create_directory(folder.file("folder"));
    fs::create_symlink(path, folder.file("link"));
    CHECK(code(writeDocument(folder.file("link"), "x")) == RefusalCode::fileExists);
    CHECK(writeDocument(folder.file("folder"), "x").error().detail == "folder");
    CHECK(writeDocument("/dev/null", "x").error().detail == "not-a-file");
    REQUIRE(mkfifo(folder.file("pipe").c_str(), 0600) == 0);
    CHECK(writeDocument(folder.file("pipe"), "x").error().detail == "not-a-file");
    CHECK(writeDocument(folder.file("nowhere/x.csv"), "x").error().detail == "missing");
    CHECK(folder.names() == std::vector<std::string>{"folder", "link", "pipe", "shop.csv"});
}

TEST_CASE("a passing file of somebody else's is not written over by an export") {
    const Folder folder;
    std::ofstream(folder.file("all.csv.part")) << "mine";
    REQUIRE(writeDocument(folder.file("all.csv"), "piano;pass").has_value());
    CHECK(bytesOf(folder.file("all.csv.part")) == "mine");
    CHECK(bytesOf(folder.file("all.csv")) == "piano;pass");
}
