// What goes wrong with a book as a file is told in one sentence that names path and cause, what to do, what is safe.
// Each sentence is tested as text: it is what a person has to go by.
#include <catch2/catch.hpp>
#include <sqlite3.h>

#include "program.h"
#include <algorithm>
#include <set>

using namespace hammerline::test;
using nlohmann::json;

namespace {

/// As somebody who is not allowed everything: what is write-protected is so for root as well only this way.
Answer asNobody(std::vector<std::string> words) {
    words.insert(words.begin(), HAMMERLINE_PROGRAM);
    if (geteuid() == 0) words.insert(words.begin(), {"setpriv", "--reuid=65534", "--regid=65534", "--clear-groups"});
    return runWords(words);
}

/// With files that may not grow beyond so many blocks of 1024 bytes: a disk that is full for this program.
Answer onSmallDisk(int blocks, const std::vector<std::string>& words) {
    std::string line = "trap '' XFSZ; ulimit -f " + std::to_string(blocks) + "; exec " + quoted(HAMMERLINE_PROGRAM);
    for (const std::string& word : words)
        line += ' ' + quoted(word);
    return runWords({"bash", "-c", line});
}

void write(const std::string& path, const std::string& bytes) {
    std::ofstream(path, std::ios::binary | std::ios::trunc) << bytes;
}

/// Refused with that sentence and code; nothing on standard output, nothing but the one line on standard error.
void refusedWith(const Answer& answer, const std::string& sentence) {
    CHECK(answer.status == 2);
    CHECK(answer.out.empty());
    CHECK(answer.err == sentence + "\n");
}

std::set<std::string> namesIn(const std::string& folder) {
    std::set<std::string> names;
    for (const auto& entry : fs::directory_iterator(folder))
        names.insert(entry.path().filename().string());
    return names;
}

struct Demo {
    Folder folder;
    std::string book = folder / "demo.hammerline", bytes;
    Demo() {
        REQUIRE(program({"demo", book}).status == 0);
        bytes = readAll(book);
        fs::permissions(fs::path(book).parent_path(), fs::perms::all);
        fs::permissions(book, fs::perms::all & ~fs::perms(0111));
    }
    bool untouched() const { return readAll(book) == bytes; }
};

} // namespace

TEST_CASE("what is no book is said to be none, and why") {
    const Folder folder;
    const std::string path = folder / "a.hammerline";
    refusedWith(program({"list", path}),
                path + " cannot be read: there is no such file; look at its name and its folder. Nothing was changed.");
    refusedWith(program({"list", folder / ""}),
                (folder / "") + " cannot be read: it is a folder; choose a file in it. Nothing was changed.");
    write(path, "");
    refusedWith(program({"list", path}), path + " is no bench book: the file is empty. It was left untouched.");
    write(path, std::string(5000, 'x'));
    refusedWith(program({"list", path}),
                path + " is no bench book: it is a file of another kind. It was left untouched.");
    std::string foreign = "SQLite format 3";
    foreign.resize(5000, '\0');
    write(path, foreign);
    refusedWith(program({"list", path}), path + " is no bench book: another program made it. It was left untouched.");
    REQUIRE(runWords({"mkfifo", folder / "pipe"}).status == 0);
    refusedWith(program({"list", folder / "pipe"}), (folder / "pipe") + " cannot be read: it is a device or a link to "
                                                                        "nothing, not a file. Nothing was changed.");
    refusedWith(program({"new", folder / "no/such/a.hammerline", "--piano", "P", "--action", "upright"}),
                (folder / "no/such/a.hammerline") +
                    " cannot be written: there is no such folder; make it first. Nothing was changed.");
}

TEST_CASE("a damaged book: the sentence says how to go on, and rescuing goes on") {
    const Demo demo;
    std::string bytes = demo.bytes;
    std::fill(bytes.begin() + 8192, bytes.begin() + 12288, '\x55');
    write(demo.book, bytes);
    const Answer refused = program({"list", demo.book, "--json"});
    CHECK(refused.status == 2);
    CHECK(refused.json().at("refused").at("code") == "damaged-book");
    CHECK(refused.err.find(demo.book + " is damaged (") == 0);
    CHECK(refused.err.find("It was not written to. Restore a backup, or rescue what can be read into a new book.\n"
                           "hammerline restore \"" +
                           demo.book + "\" BACKUP puts a backup in its place; hammerline restore \"" + demo.book +
                           "\" --rescue reads what can be read.\n") != std::string::npos);
    const Answer rescued = program({"restore", demo.book, "--rescue", "--json"});
    INFO(rescued.err);
    CHECK(rescued.status <= 1);
    CHECK(rescued.json().at("done") == true);
    const std::string into = rescued.json().at("path").get<std::string>();
    CHECK(program({"verify", into}).status == 0);
    CHECK(readAll(demo.book) == bytes);
}

TEST_CASE("write-protected: the file, its folder, somebody else's file") {
    const Demo demo;
    const std::string folder = fs::path(demo.book).parent_path().string();
    fs::permissions(demo.book, fs::perms(0444));
    refusedWith(asNobody({"enter", demo.book, "40", "blow", "46"}),
                demo.book +
                    " can only be read: the file is write-protected; take the protection off, or work on a copy. "
                    "Nothing was changed.");
    CHECK(asNobody({"list", demo.book}).status == 0);
    fs::permissions(demo.book, fs::perms(0666));
    fs::permissions(folder, fs::perms(0555));
    refusedWith(asNobody({"enter", demo.book, "40", "blow", "46"}),
                demo.book + " can only be read: its folder is write-protected; move the book to a folder of your own. "
                            "Nothing was changed.");
    const Answer backup = asNobody({"backup", demo.book});
    CHECK(backup.err.find("you are not allowed to write there; choose another folder") != std::string::npos);
    fs::permissions(folder, fs::perms(0777));
    fs::permissions(demo.book, fs::perms(0000));
    refusedWith(asNobody({"list", demo.book}),
                demo.book + " cannot be read: you are not allowed to read it; ask its owner. Nothing was changed.");
    fs::permissions(demo.book, fs::perms(0666));
    CHECK(demo.untouched());
}

TEST_CASE(
    "a full disk under backup, merge, restore, export and print: one sentence, no half file, the book as before") {
    const Demo demo;
    const std::string folder = fs::path(demo.book).parent_path().string();
    REQUIRE(program({"export", demo.book, "--out", demo.folder / "all.csv"}).status == 0);
    const std::string other = demo.folder / "other.hammerline";
    REQUIRE(
        program({"new", other, "--piano", "School upright, 1955 (invented readings)", "--action", "upright"}).status ==
        0);
    const std::string otherBytes = readAll(other);
    const auto before = namesIn(folder);
    const auto oneSentence = [&](const std::vector<std::string>& words, const std::string& path) {
        const Answer answer = onSmallDisk(8, words);
        INFO(words[0] << ": " << answer.err);
        CHECK(answer.status == 2);
        CHECK(std::count(answer.err.begin(), answer.err.end(), '\n') == 1);
        CHECK(answer.err.find(path) == 0);
        CHECK(answer.err.find("cannot be written") != std::string::npos);
        CHECK(namesIn(folder) == before);
        CHECK(demo.untouched());
        CHECK(readAll(other) == otherBytes);
    };
    oneSentence({"export", demo.book, "--out", demo.folder / "out.csv"}, demo.folder / "out.csv");
    oneSentence({"export", demo.book, "--out", demo.folder / "out.json"}, demo.folder / "out.json");
    oneSentence({"export", demo.book, "--out", demo.folder / "all.csv"}, demo.folder / "all.csv");
    oneSentence({"print", demo.book, "record", "--out", demo.folder / "out.pdf"}, demo.folder / "out.pdf");
    oneSentence({"print", demo.book, "adjustment", "--out", demo.folder / "out.pdf"}, demo.folder / "out.pdf");
    oneSentence({"backup", demo.book}, folder);
    oneSentence({"backup", demo.book, "--out", demo.folder / "copy"}, folder);
    oneSentence({"merge", other, demo.book}, folder);
    oneSentence({"demo", demo.folder / "new"}, demo.folder / "new");
    oneSentence({"restore", other, demo.book}, folder);
    CHECK(program({"merge", other, demo.book}).status <= 1); // and with room it goes
    CHECK(program({"verify", other}).status == 0);
}

TEST_CASE("a bench book is never written over by what is made of it") {
    const Demo demo;
    const std::string there = demo.book + " is there already. Choose another name; it was left as it is.";
    refusedWith(program({"print", demo.book, "check", "--out", demo.book}), there);
    const std::string named = demo.folder / "named.csv", other = demo.folder / "named.json";
    fs::copy_file(demo.book, named);
    fs::copy_file(demo.book, other);
    refusedWith(program({"export", demo.book, "--out", named}),
                named + " is there already. Choose another name; it was left as it is.");
    refusedWith(program({"print", demo.book, "parts", "--out", named}),
                named + " is there already. Choose another name; it was left as it is.");
    refusedWith(program({"export", demo.book, "--out", other}),
                other + " is there already. Choose another name; it was left as it is.");
    CHECK(readAll(named) == readAll(demo.book));
    CHECK(readAll(other) == readAll(demo.book));
    CHECK(demo.untouched());
    fs::create_directory(demo.folder / "sheet.pdf");
    refusedWith(program({"print", demo.book, "check", "--out", demo.folder / "sheet.pdf"}),
                (demo.folder / "sheet.pdf") +
                    " cannot be written: it is a folder; give the file a name in it. Nothing was changed.");
    refusedWith(program({"export", demo.book, "--out", demo.folder / "nowhere/x.csv"}),
                (demo.folder / "nowhere/x.csv") +
                    " cannot be written: there is no such folder; make it first. Nothing was changed.");
    refusedWith(program({"import", demo.book, demo.folder / "nowhere.csv"}),
                (demo.folder / "nowhere.csv") +
                    " cannot be read: there is no such file; look at its name and its folder. Nothing was changed.");
}

TEST_CASE("merge: what came, what is said twice, and the same again brings nothing") {
    const Folder folder;
    const std::string one = folder / "shop.hammerline", other = folder / "home.hammerline";
    REQUIRE(program({"new", one, "--piano", "P", "--action", "upright"}).status == 0);
    REQUIRE(program({"enter", one, "40", "blow", "46"}).status == 0);
    fs::copy_file(one, other);
    REQUIRE(program({"enter", one, "41", "blow", "45"}).status == 0);
    REQUIRE(program({"enter", other, "41", "blow", "47"}).status == 0);
    REQUIRE(program({"enter", other, "42", "blow", "44"}).status == 0);
    const std::string otherBytes = readAll(other);
    // said plainly: undo is not the way back, the copy is
    const std::string third = folder / "third.hammerline";
    fs::copy_file(one, third);
    const std::string told = program({"merge", third, other}).out;
    const std::string before = "The book as it was before is kept as ";
    const std::string way =
        ". Undo does not take a merge back; restoring that copy does, and what is entered from now on "
        "goes with it: hammerline restore \"" +
        third + "\" \"";
    INFO(told);
    REQUIRE(told.find(before) != told.npos);
    REQUIRE(told.find(way) != told.npos);
    const auto begin = told.find(before) + before.size();
    const std::string kept = told.substr(begin, told.find(way) - begin);
    CHECK(told.find(way + kept + "\".") != told.npos);
    REQUIRE(program({"restore", third, kept}).status == 0);
    CHECK(program({"check", third, "--json"}).out == program({"check", one, "--json"}).out);
    const Answer merged = program({"merge", one, other, "--json"});
    INFO(merged.err);
    CHECK(merged.status == 1); // something is open
    const json object = merged.json();
    CHECK(object.at("done") == true);
    CHECK(object.at("act") == 0);
    CHECK(object.at("acts") == 2);
    CHECK(object.at("readings") == 2);
    CHECK(fs::exists(object.at("kept").get<std::string>()));
    REQUIRE(object.at("conflicts").size() == 1);
    const json conflict = object.at("conflicts")[0];
    CHECK(conflict.at("what") == "reading");
    CHECK(conflict.at("note") == 41);
    CHECK(conflict.at("dimension") == "blow");
    CHECK(conflict.at("pass") == 1);
    CHECK(conflict.at("said") == json::array({"45 mm", "47 mm"}));
    CHECK(readAll(other) == otherBytes);
    const Answer again = program({"merge", one, other});
    CHECK(again.status == 1);
    CHECK(again.out == "The other book has nothing that this one has not. Nothing changed. Not settled: 1 thing said "
                       "differently.\n");
    CHECK(again.err == "P, pass 1, note 41, blow: \"45 mm\" and \"47 mm\". The last holds until it is said anew.\n");
    REQUIRE(program({"enter", one, "41", "blow", "46"}).status == 0);
    CHECK(program({"merge", one, other}).status == 0);
    refusedWith(program({"merge", one, folder / "nowhere"}),
                (folder / "nowhere") +
                    " cannot be read: there is no such file; look at its name and its folder. Nothing was changed.");
}

TEST_CASE("a book that another program holds is said to be in use") {
    const Demo demo;
    sqlite3* other = nullptr;
    REQUIRE(sqlite3_open(demo.book.c_str(), &other) == SQLITE_OK);
    REQUIRE(sqlite3_exec(other, "BEGIN EXCLUSIVE", nullptr, nullptr, nullptr) == SQLITE_OK);
    refusedWith(program({"enter", demo.book, "40", "blow", "46"}),
                demo.book +
                    " is in use by another program. Try again when that one has finished; nothing was changed.");
    sqlite3_close(other);
    CHECK(demo.untouched());
}
