#include "tests/soak/fault_bench.h"

#include <cstdio>
#include <cstdlib>
#include <fstream>

namespace hammerline::soak {
namespace {

namespace fs = std::filesystem;

/// A job on the book that lies there.
Job on(std::string name, std::vector<std::string> words) {
    words.insert(words.begin() + 1, "@/book.hammerline");
    return {.name = std::move(name), .words = std::move(words), .document = {}};
}
/// A job that makes a book.
Job makes(std::string name, std::vector<std::string> words) {
    return {.name = std::move(name), .words = std::move(words), .book = "made.hammerline", .document = {}};
}
/// A job that writes for people and changes no book.
Job writes(std::string name, std::string document, std::vector<std::string> words) {
    words.insert(words.begin() + 1, "@/book.hammerline");
    return {.name = std::move(name), .words = std::move(words), .document = std::move(document)};
}

void must(const std::vector<std::string>& words) {
    std::string line = "LC_ALL=C.UTF-8 QT_QPA_PLATFORM=offscreen";
    for (const std::string& word : words)
        line += " '" + word + "'";
    const int status = std::system((line + " >/dev/null 2>&1").c_str());
    if (status == 0 || WEXITSTATUS(status) == 1) return;
    std::fprintf(stderr, "faults: cannot lay out: %s\n", line.c_str());
    std::exit(1);
}

} // namespace

const std::vector<Job>& jobs() {
    static const std::vector<Job> all = {
        makes("new book", {"new", "@/made.hammerline", "--piano", "Made", "--action", "upright"}),
        on("new piano", {"new", "--piano", "Second", "--action", "grand"}),
        makes("demo", {"demo", "@/made.hammerline"}),
        on("piano", {"piano", "--attribute", "damping=underdamper"}),
        on("whose", {"piano", "--owner", "the school"}),
        on("pass", {"pass", "--label", "after shims"}),
        on("import table", {"import", "@/table.csv", "--take-doubtful"}),
        on("import whole", {"import", "@/whole.json"}),
        makes("import into a new book", {"import", "@/made.hammerline", "@/whole.json"}),
        on("enter", {"enter", "40", "let-off", "3.1"}),
        on("undo", {"undo"}),
        on("redo", {"redo"}),
        on("override", {"override", "40", "let-off", "2.5", "3", "3.5", "--reason", "thick strings"}),
        on("tick", {"tick", "--all"}),
        on("survey", {"survey", "--add", "20-30 bridle-strap torn", "--set", "spare-percent=5"}),
        on("work", {"work", "--step", "stand-it-safe", "--done", "all"}),
        on("remark", {"remark", "glued before", "--note", "40"}),
        on("photo", {"photo", "@/photo.png", "--note", "40"}),
        on("archive", {"archive", "--piano", "Bench"}),
        on("estimate", {"estimate", "--set", "hour=60"}),
        on("backup beside", {"backup"}),
        {.name = "backup over an older one",
         .words = {"backup", "@/book.hammerline", "--out", "@/copy.hammerline"},
         .book = "copy.hammerline",
         .document = {}},
        makes("backup elsewhere", {"backup", "@/book.hammerline", "--out", "@/made.hammerline"}),
        on("restore", {"restore", "@/longer.hammerline"}),
        makes("restore to a free name", {"restore", "@/made.hammerline", "@/copy.hammerline"}),
        makes("rescue", {"restore", "@/book.hammerline", "--rescue", "@/made.hammerline"}),
        on("merge", {"merge", "@/longer.hammerline"}),
        {.name = "an older book",
         .words = {"remark", "@/old.hammerline", "glued before"},
         .book = "old.hammerline",
         .document = {}},
        writes("export table", "out.csv", {"export", "--out", "@/out.csv"}),
        writes("export whole", "out.json", {"export", "--out", "@/out.json"}),
        writes("print", "out.pdf", {"print", "check", "--out", "@/out.pdf"}),
        writes("parts as a table", "out.csv", {"print", "parts", "--out", "@/out.csv"}),
        writes("share", "out.html", {"share", "--out", "@/out.html", "--question", "new hammers?"}),
        writes("show a photograph", "out.png", {"photo", "--show", "1", "--out", "@/out.png"}),
        writes("picture of the window", "out.png",
               {"window", "--station", "measure", "--picture", "@/out.png", "--settings", "@/window.ini"}),
    };
    return all;
}

void layOut(const std::string& program, const fs::path& folder) {
    const auto at = [&](const char* name) { return (folder / name).string(); };
    const std::string book = at("book.hammerline");
    must({program, "new", book, "--piano", "Bench", "--action", "upright", "--notes", "40"});
    std::ofstream(at("table.csv")) << "note,let off,key dip,lost motion\r\n"
                                      "1,3.1,9.5,0.2\r\n2,5.2,11.4,0.9\r\n3,3.0,9.4,0.1\r\n40,3.3,9.9,0.2\r\n";
    must({program, "import", book, at("table.csv"), "--take-doubtful"});
    must({program, "survey", book, "--add", "3 bridle-strap torn"});
    fs::copy_file(fs::path(HAMMERLINE_SOURCE_DIR) / "resources/icon/128.png", at("photo.png"));
    must({program, "photo", book, at("photo.png")});
    must({program, "backup", book, "--out", at("copy.hammerline")});
    fs::copy_file(book, at("longer.hammerline"));
    must({program, "enter", at("longer.hammerline"), "5", "let-off", "3.3"});
    must({program, "enter", book, "6", "let-off", "3.4"});
    must({program, "enter", book, "6", "let-off", "3.5"});
    must({program, "undo", book}); // there is something to bring back, and something to take back
    must({program, "new", at("other.hammerline"), "--piano", "Other", "--action", "grand"});
    must({program, "enter", at("other.hammerline"), "6", "let-off", "3.4"});
    must({program, "export", at("other.hammerline"), "--out", at("whole.json")});
    fs::copy_file(fs::path(HAMMERLINE_SOURCE_DIR) / "tests/reference/books/schema_1.hammerline", at("old.hammerline"));
    for (const char* name : {"out.csv", "out.json", "out.pdf", "out.html", "out.png"})
        std::ofstream(at(name)) << "older";
}

} // namespace hammerline::soak
