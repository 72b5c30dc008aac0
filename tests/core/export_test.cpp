// What leaves the book as text and what is read back of it.
#include "core/intake/long_form.h"
#include "core/sheet/export_reading.h"
#include "core/sheet/sheet.h"

#include <catch2/catch.hpp>

using namespace hammerline;
using namespace hammerline::dimension;

namespace {

Reading typed(std::string text, std::string unit, std::int64_t count) {
    Reading reading;
    reading.typed = std::move(text);
    reading.typedUnit = std::move(unit);
    reading.count = count;
    return reading;
}

PianoRecord record(const std::string& name) {
    PianoRecord record;
    record.piano = *makePiano(ActionKind::upright);
    record.piano.name = name;
    record.specName = "upright";
    Pass pass;
    pass.number = 1;
    pass.label = "as found";
    record.passes.push_back(pass);
    return record;
}

void add(PianoRecord& record, int note, DimensionId id, Reading reading) {
    record.passes.front().cells[{NoteNumber{note}, id}].trials.push_back(std::move(reading));
}

std::string firstField(const std::string& csv) {
    const auto line = csv.find("\r\n") + 2;
    return csv.substr(line, csv.find(';', line) - line);
}

ReadExport readBack(const std::vector<PianoRecord>& records) {
    const auto read = readExport(exportJson(records));
    REQUIRE(read.has_value());
    return *read;
}

} // namespace

TEST_CASE("a cell that a spreadsheet would run as a formula is neutralised, and read back as it was") {
    // OWASP, CSV Injection (from memory): cells that begin with = + - @ tab or carriage return
    struct Row {
        std::string name, written;
    };
    for (const auto& [name, written] :
         {Row{"=1+1", "'=1+1"}, Row{"@SUM(A1)", "'@SUM(A1)"}, Row{"+1+1", "'+1+1"}, Row{"-2+3", "'-2+3"},
          Row{"\t=1", "'\t=1"}, Row{"-", "'-"}, Row{"-0.3", "-0.3"}, Row{"'=1", "''=1"}, Row{"'Hall", "'Hall"}}) {
        INFO(name);
        PianoRecord one = record(name);
        add(one, 1, keyHeight, typed("-0.3", "mm", -300'000));
        const std::string csv = exportCsv({one, record("Other")});
        CHECK(firstField(csv) == written);
        PianoRecord other = record("Other");
        add(other, 2, keyHeight, typed("0.1", "mm", 100'000));
        const auto intake = readReadings(exportCsv({other, one}), one.piano);
        REQUIRE(intake.has_value());
        if (name[0] == '\t') continue; // spaces around a field are no part of it
        REQUIRE(intake->sound.size() == 1);
        CHECK(intake->sound.front().reading.typed == "-0.3");
        CHECK(intake->sound.front().reading.count == -300'000);
    }
}

TEST_CASE("a share of the blow is written as a length where the blow has changed since") {
    PianoRecord one = record("Hall");
    add(one, 1, blow, typed("46", "mm", 46'000'000));
    add(one, 1, damperStart, typed("50 %", "%", 23'000'000));
    add(one, 2, blow, typed("44", "mm", 44'000'000)); // measured again after the damper was
    add(one, 2, damperStart, typed("50 %", "%", 23'000'000));
    add(one, 3, damperStart, typed("50 %", "%", 23'000'000)); // the blow was taken back
    const auto intake = readReadings(exportCsv({one}), one.piano);
    REQUIRE(intake.has_value());
    CHECK(intake->refused.empty());
    for (const int note : {1, 2, 3})
        CHECK(std::any_of(intake->sound.begin(), intake->sound.end(), [&](const Sound& sound) {
            return sound.cell == Cell{{note}, damperStart} && sound.reading.count == 23'000'000;
        }));
}

TEST_CASE("the JSON export is read back as it was") {
    PianoRecord one = record("Hall \"old\"");
    one.uuid = "01234567-89ab-4cde-8f01-23456789abcd";
    one.piano.lastDamper = 66;
    Pass& pass = one.passes.front();
    pass.uuid = "11234567-89ab-4cde-8f01-23456789abcd";
    pass.startedAt = 1'700'000'000'000'001;
    pass.order = 1'700'000'000'000'003; // a clock that was put back
    pass.climate = Climate{21.5, 43};
    pass.stackIn = true;
    pass.onBench = true;
    pass.lineSag = "steel 0.5 mm 10 N";
    pass.references[keyHeight] = "bed";
    Reading reading = typed("10..10.2", "mm", 10'000'000);
    reading.upper = 10'200'000;
    reading.relation = Relation::between;
    reading.at = reading.order = 1'700'000'000'000'005;
    add(one, 1, keyDip, reading);
    reading = typed("6", "mm", 6'000'000);
    reading.taken = true;
    reading.reason = "a toy";
    reading.trial = 2;
    reading.at = reading.order = 1'700'000'000'000'006;
    add(one, 1, keyDip, reading);
    reading = {};
    reading.word = word::offRail;
    reading.typed = "steht ab";
    reading.at = reading.order = -1; // before 1970
    add(one, 2, lostMotion, reading);
    reading.word = *findWord("does-not-check", checking); // its count says nothing
    add(one, 2, checking, reading);
    pass.cells[{NoteNumber{70}, strap}].notFitted = true;
    one.overrides.push_back({{NoteNumber{3}, blow}, {45'000'000, 46'000'000, std::nullopt}, "low rail", "2027-01-01"});
    one.plans.push_back({"21234567-89ab-4cde-8f01-23456789abcd", 1, "{}", "{\"steps\": []}", 7});
    Done done;
    done.operation = operation::letOffTurn;
    done.notes = {{4}, {5}};
    done.amount = -0.25;
    done.amounts = {{5, -0.5}};
    done.plan = one.plans.front().uuid;
    done.step = "let-off-turn:4";
    done.pass = 1;
    done.at = done.order = 1'700'000'000'000'009;
    one.done.push_back(done);
    Finding finding;
    finding.part = "bridle-strap";
    finding.fault = "rotted";
    finding.note = NoteNumber{9};
    finding.state = FindingState::mended;
    finding.remark = "silk, red";
    finding.at = finding.order = 8;
    one.findings.push_back(finding);
    one.symptoms.push_back({std::string(symptomKeys().front()), {1, 44}, 9});
    one.preferences["unit-blow"] = "in";

    const auto read = readBack({one, record("Second")});
    REQUIRE(read.pianos.size() == 2);
    CHECK(read.readings == 4);
    CHECK(read.questions.empty());
    const PianoRecord& back = read.pianos.front();
    CHECK(back.piano == one.piano);
    CHECK(back.passes == one.passes);
    CHECK(back.overrides == one.overrides);
    CHECK(back.plans == one.plans);
    CHECK(back.done == one.done);
    CHECK(back.findings == one.findings);
    CHECK(back.symptoms == one.symptoms);
    CHECK(back.preferences == one.preferences);
    CHECK(exportJson(read.pianos) == exportJson({one, record("Second")}));
}

TEST_CASE("reading an export can be stopped wherever it is, and says how far it is") {
    std::vector<PianoRecord> records;
    for (int i = 0; i < 40; ++i) {
        records.push_back(record("Upright " + std::to_string(i)));
        for (int note = 1; note <= 88; ++note)
            add(records.back(), note, blow, typed("46", "mm", 46 * kNmPerMm));
    }
    const std::string text = exportJson(records);
    int looks = 0;
    for (int n = 1;; ++n) {
        looks = 0;
        double last = 0;
        const auto read = readExport(text, false, [&](double share) {
            CHECK(share >= last);
            CHECK(share < 1);
            last = share;
            return ++looks < n;
        });
        if (read) {
            CHECK(read->pianos.size() == records.size());
            CHECK(last > 0.9);
            break;
        }
        REQUIRE(read.error().code == RefusalCode::cancelled);
        CHECK(looks == n);
    }
    CHECK(looks > 50); // text and pianos
}

TEST_CASE("every lowest note that a piano may have is written and read back as it was") {
    for (int midi = 0; midi <= 127; ++midi) {
        const std::string text =
            R"({"format": "hammerline-export", "version": 1, "pianos": [{"name": "Hall", "action": )"
            R"("upright", "notes": 20, "lowest": ")" +
            std::to_string(midi) + R"("}]})";
        const auto read = readExport(text);
        CHECK(read.has_value() == (midi >= 12 && midi <= 108));
        if (read) CHECK(readBack(read->pianos).pianos.front().piano.lowestMidi == midi);
    }
}

TEST_CASE("JSON that no export is, is refused with its place") {
    const auto refused = [](std::string_view text) {
        const auto read = readExport(text);
        REQUIRE_FALSE(read.has_value());
        CHECK(read.error().code == RefusalCode::badJson);
        return read.error();
    };
    CHECK(refused("").detail == "syntax");
    CHECK(refused("{\n\"a\": }").place == Place{{}, 2, 6, {}});
    CHECK(refused("{\"a\": \"\xff\"}").detail == "syntax");
    CHECK(refused("[1e999]").detail == "range");
    CHECK(refused(std::string(100'000, '[')).detail == "syntax");
    CHECK(refused(std::string(100, '[') + std::string(100, ']')).detail == "depth");
    std::string wide = "{\"m\": 0"; // each member is sought among the others: a million of them would take for ever
    for (int member = 0; member <= 10'000; ++member)
        wide += ", \"" + std::to_string(member) + "\": 0";
    CHECK(refused(wide + '}').detail == "members");
    std::string list = "{\"m\": [0";
    for (int member = 0; member <= 10'000; ++member)
        list += ", 0";
    CHECK(refused(list + "]}").detail == "members");
    CHECK(refused("[]").place.field.empty());
    const std::string head = R"({"format": "hammerline-export", "version": 1, "pianos": [)";
    const std::string hall = R"({"name": "Hall", "action": "upright", "notes": 88, "lowest": "A0")";
    const auto at = [&](const std::string& rest, const std::string& field, const std::string& cause) {
        INFO(rest);
        const auto refusal = refused(head + rest);
        CHECK(refusal.place.field == field);
        CHECK(refusal.detail == cause);
    };
    at("7]}", "/pianos/0", "type");
    at(R"({"name": ""}]})", "/pianos/0/name", "missing");
    at(R"({"name": "\u0000", "action": "upright", "notes": 88, "lowest": "A0"}]})", "/pianos/0/name", "zero-byte");
    at(R"({"name": "H", "action": "lute", "notes": 88, "lowest": "A0"}]})", "/pianos/0/action", "unknown");
    at(R"({"name": "H", "action": "grand", "notes": 888, "lowest": "A0"}]})", "/pianos/0/notes", "range");
    at(R"({"name": "H", "action": "grand", "notes": 88, "lowest": "G9"}]})", "/pianos/0/notes", "range");
    at(hall + R"(, "uuid": "1"}]})", "/pianos/0/uuid", "unknown");
    at(hall + R"(, "attributes": {"capstan": "steam"}}]})", "/pianos/0/attributes/capstan", "bad-attribute");
    at(hall + R"(, "passes": [{"pass": 2}]}]})", "/pianos/0/passes/0/pass", "sequence");
    at(hall + R"(, "passes": [{"started": "yesterday"}]}]})", "/pianos/0/passes/0/started", "time");
    at(hall + R"(, "passes": [{"references": {"key-height": "sky"}}]}]})", "/pianos/0/passes/0/references/key-height",
       "unknown");
    const auto readings = [&](const std::string& rows, const std::string& field, const std::string& cause) {
        at(hall + R"(, "passes": [{"readings": [)" + rows + "]}]}]}", "/pianos/0/passes/0/readings/" + field, cause);
    };
    readings(R"({"note": 89, "dimension": "blow", "value": 46})", "0/note", "range");
    readings(R"({"note": 1.5, "dimension": "blow", "value": 46})", "0/note", "type");
    readings(R"({"note": 1, "dimension": "girth", "value": 46})", "0/dimension", "unknown");
    readings(R"({"note": 1, "dimension": "blow", "word": "tight"})", "0/word", "unknown");
    readings(R"({"note": 1, "dimension": "blow", "value": 46, "trial": 100})", "0/trial", "range");
    readings(R"({"note": 1, "dimension": "blow", "value": 46, "unit": "ell"})", "0/unit", "unknown");
    readings(R"({"note": 1, "dimension": "blow", "value": 46, "upper": 45})", "0/upper", "range");
    readings(R"({"note": 1, "dimension": "blow", "value": 46}, {"note": 1, "dimension": "blow", "value": 46})",
             "1/trial", "twice");
    at(hall + R"(, "overrides": [{"note": 1, "dimension": "blow", "nominal": 46, "low": 47, "reason": "x"}]}]})",
       "/pianos/0/overrides/0/nominal", "range");
    at(hall + R"(, "done": [{"operation": "paint", "after_pass": 1}]}]})", "/pianos/0/done/0/operation", "unknown");
    at(hall + R"(, "symptoms": [{"symptom": "sad", "first": 1, "last": 2}]}]})", "/pianos/0/symptoms/0/symptom",
       "unknown");
}
