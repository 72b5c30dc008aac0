// What the program writes besides its book: pictures, settings, standard output.
#include <catch2/catch.hpp>

#include "program.h"

using namespace hammerline::test;

namespace {

struct Demo {
    Folder folder;
    std::string book = folder / "demo.hammerline", bytes;
    Demo() {
        REQUIRE(program({"demo", book}).status == 0);
        bytes = readAll(book);
    }
};

} // namespace

TEST_CASE("a picture's file name and a settings file never destroy a book") {
    const Demo demo;
    const std::string link = demo.folder / "picture.png";
    fs::create_symlink(demo.book, link);
    for (const std::string& victim : {demo.book, link}) {
        const Answer picture = program({"window", demo.book, "--picture", victim});
        CHECK(picture.status == 2);
        CHECK_FALSE(picture.err.empty());
        const Answer settings =
            program({"window", demo.book, "--settings", victim, "--picture", demo.folder / "other.png"});
        CHECK(settings.status == 2);
        CHECK(settings.err.find("is there already") != std::string::npos);
        CHECK(readAll(demo.book) == demo.bytes);
    }
    CHECK(program({"window", demo.book, "--picture", demo.folder / "good.png"}).status == 0);
    CHECK(readAll(demo.folder / "good.png").substr(1, 3) == "PNG");
}

TEST_CASE("output that cannot be written is never lost in silence") {
    const Demo demo;
    for (const std::string& command : {"list " + quoted(demo.book), "verify " + quoted(demo.book), std::string("ids"),
                                       "check " + quoted(demo.book), std::string("--help")}) {
        const std::string line = quoted(HAMMERLINE_PROGRAM) + " " + command + " >/dev/full";
        const Answer answer = runWords({"bash", "-c", line});
        INFO(line);
        CHECK(answer.status == 2);
        CHECK(answer.err.find("is lost: standard output takes no more") != std::string::npos);
    }
}

TEST_CASE("output to a pipe that nobody reads any more is told") {
    const Folder folder;
    const std::string pipe = folder / "pipe";
    // both ends are opened here, and the reading one is closed again before the program starts
    const Answer answer = runWords({"bash", "-c",
                                    "mkfifo " + quoted(pipe) + "; exec 3<>" + quoted(pipe) + "; exec 4>" +
                                        quoted(pipe) + "; exec 3<&-; " + quoted(HAMMERLINE_PROGRAM) + " ids >&4"});
    CHECK(answer.status == 2);
    CHECK(answer.err.find("is lost: standard output takes no more") != std::string::npos);
}

TEST_CASE("a book does not keep where an imported file lay") {
    const Demo demo;
    const std::string table = demo.folder / "bench_notes.csv";
    std::ofstream(table) << "note,let-off\n1,3.1\n";
    REQUIRE(program({"import", demo.book, table, "--take-doubtful"}).status != 2);
    const std::string bytes = readAll(demo.book);
    CHECK(bytes.find("bench_notes.csv") != std::string::npos);
    CHECK(bytes.find(table) == std::string::npos);
}
