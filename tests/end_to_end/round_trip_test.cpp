// What leaves the book as a file comes back the same through the built program.
#include <catch2/catch.hpp>
#include <fcntl.h>

#include "program.h"
#include <array>
#include <csignal>
#include <functional>

using namespace hammerline::test;
using nlohmann::json;

namespace {

void writeText(const std::string& path, const std::string& text) {
    std::ofstream(path, std::ios::binary) << text;
}

std::string exported(const std::string& book, const std::string& file) {
    const Answer answer = program({"export", book, "--out", file});
    INFO(answer.err);
    REQUIRE(answer.status == 0);
    return readAll(file);
}

void makePiano(const std::string& book, const std::string& name, const std::string& action = "upright") {
    REQUIRE(program({"new", book, "--piano", name, "--action", action}).status == 0);
}

const char* const kHeads = "piano;pass;note;dimension;trial;text;unit;state;at\r\n";

} // namespace

TEST_CASE("a long-form file comes back as it went in: repeats, words, marks, taken doubts and times") {
    const Folder folder;
    const std::string book = folder / "a.hammerline";
    makePiano(book, "Hall; \"old\"");
    const std::string bytes = std::string("\xEF\xBB\xBF") + kHeads +
                              "\"Hall; \"\"old\"\"\";1;1;key-dip;1;10,1;mm;;2025-03-01T08:00:00.000001Z\r\n"
                              "\"Hall; \"\"old\"\"\";1;1;key-dip;2;\"3/8\"\"\";in;;2025-03-01T08:00:01.000000Z\r\n"
                              "\"Hall; \"\"old\"\"\";1;2;lost-motion;1;-0.2;mm;taken;2025-03-01T08:00:02.000000Z\r\n"
                              "\"Hall; \"\"old\"\"\";1;2;let-off;1;blocks;;;2025-03-01T08:00:03.000000Z\r\n"
                              "\"Hall; \"\"old\"\"\";1;3;strap;1;;;not-fitted;\r\n"
                              "\"Hall; \"\"old\"\"\";1;4;checking;1;>15;mm;;2025-03-01T08:00:04.000000Z\r\n"
                              "\"Hall; \"\"old\"\"\";2;1;key-dip;1;10.25;mm;;2025-06-01T08:00:00.000000Z\r\n";
    writeText(folder / "in.csv", bytes);
    const Answer taken = program({"import", book, folder / "in.csv", "--json"});
    INFO(taken.err);
    CHECK(taken.status == 0);
    CHECK(taken.json().at("taken") == 7);
    CHECK(exported(book, folder / "out.csv") == bytes);
    // the same file again changes nothing, and undo takes all of it back at once
    const std::string before = readAll(book);
    CHECK(program({"import", book, folder / "out.csv"}).status == 0);
    CHECK(readAll(book) == before);
    CHECK(program({"undo", book}).status == 0);
    CHECK(exported(book, folder / "none.csv") == std::string("\xEF\xBB\xBF") + kHeads);
    CHECK(program({"verify", book}).status == 0);
}

TEST_CASE("the demo's readings come back from CSV with all their passes") {
    const Folder folder;
    const std::string demo = folder / "demo.hammerline", book = folder / "b.hammerline";
    REQUIRE(program({"demo", demo}).status == 0);
    const json piano = program({"list", demo, "--json"}).json().at("pianos").at(0);
    const std::string csvFile = folder / "demo.csv";
    REQUIRE(program({"export", demo, "--piano", piano.at("name"), "--out", csvFile}).status == 0);
    const std::string csv = readAll(csvFile);
    makePiano(book, piano.at("name"), piano.at("action"));
    const Answer answer = program({"import", book, csvFile});
    INFO(answer.err);
    CHECK(answer.status == 0);
    CHECK(exported(book, folder / "again.csv") == csv);
}

TEST_CASE("passes without readings keep their place in CSV, and so the others their numbers") {
    const Folder folder;
    const std::string book = folder / "a.hammerline", other = folder / "b.hammerline";
    const auto passesOf = [](const std::string& which) {
        std::vector<std::pair<std::string, int>> passes;
        for (const json& each : program({"list", which, "--json"}).json().at("pianos").at(0).at("passes"))
            passes.emplace_back(each.at("label"), each.at("readings"));
        return passes;
    };
    makePiano(book, "Hall");
    REQUIRE(program({"enter", book, "1", "key-dip", "10.1"}).status == 0);
    for (const char* label : {"after the rails; bench", "checks", "only a mark"})
        REQUIRE(program({"pass", book, "--label", label}).status == 0);
    writeText(folder / "mark.csv", std::string(kHeads) + "Hall;4;3;strap;1;;;not-fitted;\r\n");
    REQUIRE(program({"import", book, folder / "mark.csv"}).status == 0);
    REQUIRE(program({"pass", book, "--label", "last"}).status == 0);
    REQUIRE(program({"enter", book, "1", "key-dip", "10.2", "--pass", "5"}).status == 0);
    REQUIRE(program({"pass", book, "--label", "begun"}).status == 0);
    const std::string csv = exported(book, folder / "a.csv");
    makePiano(other, "Hall");
    const auto taken = program({"import", other, folder / "a.csv"});
    INFO(csv << taken.err);
    CHECK(taken.status == 0);
    const auto there = passesOf(other), here = passesOf(book);
    REQUIRE(there.size() == here.size());
    for (std::size_t i = 0; i < here.size(); ++i) {
        CHECK(there[i].second == here[i].second);
        if (here[i].second == 0) CHECK(there[i].first == here[i].first);
    }
    CHECK(exported(other, folder / "b.csv") == csv);
    // as UTF-16 it is read as a whole
    const std::string third = folder / "c.hammerline";
    makePiano(third, "Hall");
    std::string wide = "\xFF\xFE";
    for (const char c : csv.substr(3))
        wide += {c, '\0'};
    writeText(folder / "wide.csv", wide);
    CHECK(program({"import", third, folder / "wide.csv"}).status == 0);
    CHECK(exported(third, folder / "c.csv") == csv);
    // again it changes nothing
    const std::string before = readAll(other);
    CHECK(program({"import", other, folder / "b.csv"}).status == 0);
    CHECK(readAll(other) == before);
}

TEST_CASE("Ctrl-C while a file is read keeps nothing") {
    const Folder folder;
    const std::string book = folder / "c.hammerline";
    makePiano(book, "Hall");
    const std::string before = readAll(book);
    std::array<int, 2> ends{};
    REQUIRE(::pipe(ends.data()) == 0);
    const pid_t child = ::fork();
    REQUIRE(child >= 0);
    if (child == 0) {
        ::dup2(ends[0], STDIN_FILENO);
        ::close(ends[0]);
        ::close(ends[1]);
        const int silent = ::open("/dev/null", O_WRONLY);
        ::dup2(silent, STDOUT_FILENO);
        ::dup2(::open((folder / "err").c_str(), O_WRONLY | O_CREAT, 0600), STDERR_FILENO);
        ::execl(HAMMERLINE_PROGRAM, HAMMERLINE_PROGRAM, "import", book.c_str(), "-", nullptr);
        ::_exit(127);
    }
    ::close(ends[0]);
    const int into = ends[1];
    std::string rows = kHeads;
    for (int trial = 1; trial <= 90; ++trial)
        for (int note = 1; note <= 88; ++note)
            rows += "Hall;1;" + std::to_string(note) + ";blow;" + std::to_string(trial) + ";46;mm;;\r\n";
    // more than the pipe and the first piece hold: when it is written, the program is in the middle of reading
    REQUIRE(rows.size() > 3 * (1U << 16U));
    REQUIRE(::write(into, rows.data(), rows.size()) == static_cast<ssize_t>(rows.size()));
    REQUIRE(::kill(child, SIGINT) == 0);
    ::close(into); // the program does not wait for more, wherever the signal met it
    int status = 0;
    REQUIRE(::waitpid(child, &status, 0) == child);
    CHECK(WIFEXITED(status));
    CHECK(WEXITSTATUS(status) == 2);
    const std::string said = readAll(folder / "err"); // a slow machine says how far it is before
    CHECK(said.ends_with("Stopped. Nothing was changed.\n"));
    CHECK(readAll(book) == before);
}

namespace {

/// Pianos that came in with one file stand in no promised order.
json byName(const std::string& exported) {
    json content = json::parse(exported);
    auto& pianos = content.at("pianos");
    std::sort(pianos.begin(), pianos.end(), [](const json& a, const json& b) { return a.at("name") < b.at("name"); });
    return content;
}

std::vector<std::string> sortedLines(const std::string& text) {
    std::istringstream in(text);
    std::vector<std::string> lines;
    for (std::string line; std::getline(in, line);)
        lines.push_back(line);
    std::sort(lines.begin(), lines.end());
    return lines;
}

} // namespace

TEST_CASE("the JSON export makes the same book again, and the same export") {
    const Folder folder;
    const std::string demo = folder / "demo.hammerline", book = folder / "b.hammerline";
    REQUIRE(program({"demo", demo}).status == 0);
    const std::string first = exported(demo, folder / "demo.json");
    const json content = json::parse(first);
    const json& piano = content.at("pianos").at(0);
    CHECK(piano.at("passes").size() == 4);
    CHECK(content.at("pianos").size() == 2);
    CHECK_FALSE(piano.at("done").empty());
    CHECK_FALSE(piano.at("findings").empty());
    const Answer taken = program({"import", book, folder / "demo.json", "--json"}); // makes the book
    INFO(taken.err);
    CHECK(taken.status == 0);
    const std::string again = exported(book, folder / "again.json");
    CHECK(again.size() == first.size());
    CHECK(byName(again) == byName(first));
    CHECK(sortedLines(exported(book, folder / "again.csv")) == sortedLines(exported(demo, folder / "demo.csv")));
    CHECK(program({"verify", book}).status == 0);
    // the same verdicts, staleness, plan and comparison
    for (const char* command : {"check", "plan", "compare", "survey", "action"})
        CHECK(program({command, book, "--json"}).out == program({command, demo, "--json"}).out);
    // the same again is no act
    const std::string before = readAll(book);
    CHECK(program({"import", book, folder / "again.json"}).status == 0);
    CHECK(readAll(book) == before);
    // one act: undo takes the piano away
    CHECK(program({"undo", book}).status == 0);
    CHECK(program({"list", book, "--json"}).json().at("pianos").empty());
    // and the file may come in again, plans and all
    const Answer oncemore = program({"import", book, folder / "demo.json"});
    INFO(oncemore.err);
    CHECK(oncemore.status == 0);
    CHECK(sortedLines(exported(book, folder / "third.csv")) == sortedLines(exported(demo, folder / "demo.csv")));
    CHECK(program({"plan", book, "--json"}).json().at("steps") == program({"plan", demo, "--json"}).json().at("steps"));
    CHECK(program({"verify", book}).status == 0);
}

TEST_CASE("an export joins a piano that is here already: what is newer here stays") {
    const Folder folder;
    const std::string book = folder / "a.hammerline";
    makePiano(book, "Hall");
    REQUIRE(program({"enter", book, "1", "key-dip", "10.1"}).status == 0);
    REQUIRE(program({"enter", book, "2", "key-dip", "10.2"}).status == 0);
    const std::string then = exported(book, folder / "then.json");
    REQUIRE(program({"enter", book, "1", "key-dip", "9.9"}).status == 0);
    REQUIRE(program({"undo", book}).status == 0); // the older reading stands again, with its own time
    REQUIRE(program({"enter", book, "2", "key-dip", "9.8"}).status == 0);
    CHECK(program({"import", book, folder / "then.json"}).status == 0);
    const json now = json::parse(exported(book, folder / "now.json"));
    const json& readings = now.at("pianos").at(0).at("passes").at(0).at("readings");
    REQUIRE(readings.size() == 2);
    CHECK(readings.at(0).at("text") == "10.1");
    CHECK(readings.at(1).at("text") == "9.8");
    CHECK(now.at("pianos").size() == 1);
}

TEST_CASE("a JSON file that cannot be meant is refused in one sentence, and no book is left behind") {
    const Folder folder;
    const std::string book = folder / "none.hammerline", file = folder / "x.json";
    const auto says = [&](const std::string& text, const std::string& sentence) {
        writeText(file, text);
        const Answer answer = program({"import", book, file});
        CHECK(answer.status == 2);
        CHECK(answer.err == file + ", " + sentence + " Nothing was taken.\n");
        CHECK_FALSE(fs::exists(book));
    };
    const std::string head = R"({"format": "hammerline-export", "version": 1, "pianos": [)";
    const std::string hall = R"({"name": "Hall", "action": "upright", "notes": 88, "lowest": "A0")";
    const auto reading = [&](const std::string& rest) {
        return head + hall + R"(, "passes": [{"label": "p", "readings": [{"note": 1, "dimension": "key-dip", )" + rest +
               "}]}]}]}";
    };
    says("{\"format\": \"hammerline-export\",\n  oops}", "line 2, column 3: from here on this is no JSON.");
    says("{}", "/format: it is missing.");
    says(R"({"format": "hammerline-export", "version": 2})", "/version 2: it is outside what can be.");
    says(head + R"({"name": "Hall"}]})", "/pianos/0/action: it is missing.");
    says(reading(R"("text": "10", "unit": "mm")"), "/pianos/0/passes/0/readings/0/value: it is missing.");
    says(reading(R"("value": "10")"),
         "/pianos/0/passes/0/readings/0/value \"10\": a value of another kind belongs there.");
    says(reading(R"("value": 1e9)"), "/pianos/0/passes/0/readings/0/value 1000000000.0: it is outside what can be.");
    says(reading(R"("value": 11, "text": "10", "unit": "mm")"),
         "/pianos/0/passes/0/readings/0/value 11: the text beside it says another size.");
    says(head + hall + R"(, "done": [{"operation": "let-off-turn", "after_pass": 1}]}]})",
         "/pianos/0/done/0/after_pass 1: it is outside what can be.");
    says(head + hall + R"(, "findings": [{"part": "lid", "state": "to-do"}]}]})",
         "/pianos/0/findings/0/part \"lid\": it is not known here.");
    // doubtful and not taken on purpose: asked about, the rest taken
    writeText(file, reading(R"("value": 6, "text": "6", "unit": "mm")"));
    const Answer asked = program({"import", book, file, "--json"});
    CHECK(asked.status == 1);
    CHECK(asked.json().at("taken") == 0);
    CHECK(asked.json().at("questions").size() == 1);
    CHECK(program({"import", book, file, "--take-doubtful"}).status == 0);
    // a file for another action than the piano of that name has
    writeText(file, head + R"({"name": "Hall", "action": "grand", "notes": 88, "lowest": "A0"}]})");
    const Answer other = program({"import", book, file});
    CHECK(other.status == 2);
    CHECK(other.err == file + ", /pianos/0/action grand: the piano in the book has another action or fewer notes. "
                              "Nothing was taken.\n");
}

TEST_CASE("an export proves itself: whatever was changed in it since is named, and nothing of it is taken") {
    const Folder folder;
    const std::string demo = folder / "demo.hammerline", book = folder / "b.hammerline";
    REQUIRE(program({"demo", demo}).status == 0);
    using Whole = nlohmann::ordered_json; // attributes are read in their order
    const Whole whole = Whole::parse(exported(demo, folder / "demo.json"));
    const auto taken = [&](const Whole& content, int indent = -1) {
        fs::remove(book);
        writeText(folder / "changed.json", content.dump(indent));
        return program({"import", book, folder / "changed.json"});
    };
    const Answer sound = taken(whole, 4); // spaces and line breaks do not matter
    INFO(sound.err);
    CHECK(sound.status == 0);
    CHECK(sound.out.find("Proven to be as exported: 2 pianos.") != std::string::npos);
    CHECK(byName(exported(book, folder / "again.json")) == byName(readAll(folder / "demo.json")));

    using Change = std::function<void(Whole&)>;
    struct Row {
        const char* name;
        std::string first; // what does not fit
        Change change;
    };
    const Whole& reading = whole["pianos"][0]["passes"][1]["readings"][3];
    const std::string of = reading.at("at");
    const auto readings = [](Whole& piano) -> Whole& { return piano["passes"][1]["readings"]; };
    for (const auto& [name, first, change] :
         {Row{"a value, its text with it", of,
              [&](Whole& piano) {
                  readings(piano)[3]["value"] = 10.5;
                  readings(piano)[3]["text"] = "10.5";
                  readings(piano)[3]["unit"] = "mm";
              }},
          Row{"a reading deleted", of, [&](Whole& piano) { readings(piano).erase(3); }},
          Row{"moved to another note", of, [&](Whole& piano) { readings(piano)[3]["note"] = 88; }},
          Row{"given another trial", of, [&](Whole& piano) { readings(piano)[3]["trial"] = 9; }},
          Row{"a pass's label", whole["pianos"][0]["passes"][2]["started"],
              [](Whole& piano) { piano["passes"][2]["label"] = "other"; }},
          Row{"an attribute", "set_up", [](Whole& piano) { piano["attributes"]["damping"] = "underdamper"; }},
          Row{"the name", "set_up", [](Whole& piano) { piano["name"] = "Other"; }},
          Row{"work ticked off", whole["pianos"][0]["done"][0]["at"], [](Whole& piano) { piano["done"].erase(0); }},
          Row{"a finding", whole["pianos"][0]["findings"][0]["at"],
              [](Whole& piano) { piano["findings"][0]["state"] = "done"; }}}) {
        INFO(name << ", " << first);
        Whole changed = whole;
        change(changed["pianos"][0]);
        const Answer refused = taken(changed);
        CHECK(refused.status == 2);
        CHECK(refused.err.find("/pianos/0/proof " + first + ": ") != std::string::npos);
        CHECK(refused.err.find("no longer as it was exported") != std::string::npos);
        CHECK_FALSE(fs::exists(book));
    }
    // without its proof it is taken as it stands, and that is not said to be proven
    Whole plain = whole;
    for (Whole& piano : plain["pianos"])
        piano.erase("proof");
    const Answer unproven = taken(plain);
    CHECK(unproven.status == 0);
    CHECK(unproven.out.find("Proven") == std::string::npos);
}

TEST_CASE("what a book cannot prove its export does not prove either") {
    const Folder folder;
    const std::string book = folder / "a.hammerline";
    makePiano(book, "Hall");
    REQUIRE(program({"remark", book, "glued before"}).status == 0);
    CHECK(exported(book, folder / "sound.json").find("\"proof\"") != std::string::npos);
    std::string bytes = readAll(book);
    const auto at = bytes.find("glued before");
    REQUIRE(at != std::string::npos);
    bytes.replace(at, 5, "glues");
    writeText(book, bytes);
    REQUIRE(program({"verify", book}).status == 1);
    const Answer answer = program({"export", book, "--out", folder / "damaged.json"});
    CHECK(answer.status == 0);
    CHECK(answer.err.find("nothing in the export proves it") != std::string::npos);
    CHECK(readAll(folder / "damaged.json").find("\"proof\"") == std::string::npos);
}
