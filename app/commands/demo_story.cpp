#include "app/commands/demo_story.h"

#include "core/intake/intake.h"
#include "core/plan/plan_in_force.h"
#include "core/sheet/pass_view.h"
#include "core/sheet/work_said.h"
#include "core/survey/job.h"

#include <QDate>
#include <QUuid>

#include <sstream>

namespace hammerline::app {
namespace {

constexpr std::int64_t kDay = 86'400'000'000, kMinute = 60'000'000;

std::string trimmed(std::string text) {
    text.erase(0, text.find_first_not_of(' '));
    text.erase(text.find_last_not_of(' ') + 1);
    return text;
}

/// "name 1-28 | who | what": the first word, and the fields behind it.
struct Line {
    std::string word;
    std::vector<std::string> fields;
    const std::string& at(std::size_t i) const {
        static const std::string none;
        return i < fields.size() ? fields[i] : none;
    }
};

std::vector<Line> linesOf(std::string_view story) {
    std::vector<Line> out;
    std::istringstream in{std::string(story)};
    for (std::string text; std::getline(in, text);) {
        if (text.empty() || text.front() == '#') continue;
        std::istringstream words(text);
        Line line;
        words >> line.word;
        for (std::string field; std::getline(words, field, '|');)
            line.fields.push_back(trimmed(field));
        out.push_back(std::move(line));
    }
    return out;
}

/// "step-id 12,40" or "capstan-turn 28 0.125": words apart.
std::vector<std::string> wordsOf(const std::string& text) {
    std::istringstream in(text);
    std::vector<std::string> out;
    for (std::string word; in >> word;)
        out.push_back(word);
    return out;
}

Outcome<void> only(const Outcome<ActId>& act) {
    if (!act) return tl::unexpected(act.error());
    return {};
}

class Teller {
public:
    Teller(BenchBook& book, StoryClock& clock, std::string_view readings)
        : m_book(book), m_clock(clock), m_readings(readings) {}

    Outcome<void> tell(const Line& line) {
        struct Way {
            std::string_view word;
            Outcome<void> (Teller::*tell)(const Line&);
        };
        // What the virtual piano was made and read by is no act of the book.
        static constexpr std::array<std::string_view, 4> kForTheMaker = {"virtual", "odd", "read", "word"};
        static constexpr std::array kWays = {
            Way{"name", &Teller::setUp},      Way{"kind", &Teller::setUp},       Way{"sheet", &Teller::setUp},
            Way{"attribute", &Teller::setUp}, Way{"identity", &Teller::setUp},   Way{"day", &Teller::day},
            Way{"finding", &Teller::finding}, Way{"state", &Teller::state},      Way{"symptom", &Teller::symptom},
            Way{"pass", &Teller::pass},       Way{"turned", &Teller::turned},    Way{"plan", &Teller::plan},
            Way{"step", &Teller::step},       Way{"not-here", &Teller::notHere}, Way{"setting", &Teller::setting},
            Way{"remark", &Teller::remark},   Way{"advice", &Teller::remark},    Way{"decision", &Teller::remark},
            Way{"visit", &Teller::visit},     Way{"put-away", &Teller::putAway}, Way{"accepted", &Teller::accepted},
        };
        if (std::ranges::find(kForTheMaker, line.word) != kForTheMaker.end()) return {};
        const auto way = std::ranges::find(kWays, line.word, &Way::word);
        if (way == kWays.end()) return refuse(RefusalCode::usage, line.word);
        m_clock.now += kMinute; // what follows came later
        return (this->*way->tell)(line);
    }

private:
    Outcome<void> setUp(const Line& line) {
        if (line.word == "name") m_name = line.at(0);
        if (line.word == "sheet") m_sheet = line.at(0);
        const auto [name, value] = parted(line.at(0));
        if (line.word == "identity") m_identity[name] = value;
        if (line.word == "kind") {
            const auto kind = parseActionKind(line.at(0));
            if (!kind) return tl::unexpected(kind.error());
            auto made = makePiano(*kind);
            if (!made) return tl::unexpected(made.error());
            made->name = m_name;
            m_piano = std::move(*made);
        }
        return line.word == "attribute" ? setAttribute(m_piano, name, value) : Outcome<void>{};
    }

    /// The piano stands in the book from the first day on.
    Outcome<void> day(const Line& line) {
        m_clock.now = m_clock.today + std::stoll(line.at(0)) * kDay;
        if (!m_uuid.empty()) return {};
        const auto uuid = m_book.addPiano(m_piano, m_sheet, {}, m_identity);
        if (!uuid) return tl::unexpected(uuid.error());
        m_uuid = *uuid;
        const auto intake = readReadings(m_readings, m_piano);
        if (!intake) return tl::unexpected(intake.error());
        m_sound = intake->sound;
        return {};
    }

    Outcome<void> finding(const Line& line) { return found(parseFindings(line.at(0), m_piano)); }
    Outcome<void> state(const Line& line) { return found(parseFindingStates(line.at(0), m_piano)); }
    Outcome<void> found(const Outcome<std::vector<Finding>>& findings) {
        if (!findings) return tl::unexpected(findings.error());
        return only(m_book.addFindings(m_uuid, *findings));
    }

    Outcome<void> symptom(const Line& line) {
        const auto read = parseSymptom(line.at(0), m_piano);
        if (!read) return tl::unexpected(read.error());
        return only(m_book.addSymptom(m_uuid, *read));
    }

    Outcome<void> setting(const Line& line) {
        const auto term = parseTerm(line.at(0));
        if (!term) return tl::unexpected(term.error());
        return only(m_book.setPreference(m_uuid, term->first, term->second));
    }

    /// label | temperature | humidity
    Outcome<void> pass(const Line& line) {
        NewPass fresh;
        fresh.label = line.at(0);
        fresh.temperature = std::stod(line.at(1));
        fresh.humidity = std::stod(line.at(2));
        const auto number = m_book.addPass(m_uuid, fresh);
        if (!number) return tl::unexpected(number.error());
        std::vector<NewReading> readings;
        for (const Sound& each : m_sound)
            if (each.pass == std::to_string(*number)) readings.push_back({each.cell, each.reading});
        m_clock.now += 90 * kMinute;
        return only(m_book.store(m_uuid, *number, readings, "import", "demo"));
    }

    /// "let-off-turn 20,45,70 -0.125"
    Outcome<void> turned(const Line& line) {
        const auto words = wordsOf(line.at(0));
        if (words.size() != 3) return refuse(RefusalCode::usage, line.at(0));
        const auto operation = findOperation(words[0]);
        if (!operation) return tl::unexpected(operation.error());
        const auto notes = parseNotes(words[1], m_piano);
        if (!notes) return tl::unexpected(notes.error());
        auto record = m_book.load(m_uuid);
        if (!record) return tl::unexpected(record.error());
        Done done;
        done.operation = *operation;
        done.notes = *notes;
        done.amount = std::stod(words[2]);
        done.pass = record->passes.back().number;
        return only(m_book.tick(m_uuid, std::array{done}));
    }

    /// Every line of the plan after the last pass is carried out, by its number where it has one.
    Outcome<void> plan(const Line&) {
        auto record = m_book.load(m_uuid);
        if (!record) return tl::unexpected(record.error());
        PlanOptions options;
        options.floating = Float::aftertouch;
        auto plan = makePlan(*record, sheetOf(*record), record->passes.back().number, options);
        if (!plan) return tl::unexpected(plan.error());
        const FrozenPlan frozen = freeze(*plan, QUuid::createUuid().toString(QUuid::WithoutBraces).toStdString());
        plan->uuid = frozen.uuid;
        std::vector<Done> ticked;
        for (const Step& step : plan->steps)
            if (auto one = doneBy(*plan, Tick{step.id, {}, false})) ticked.push_back(std::move(*one));
        if (ticked.empty()) return {};
        return only(m_book.tick(m_uuid, ticked, frozen));
    }

    /// "free-centres 12,40 | minutes | remark"
    Outcome<void> step(const Line& line) {
        const auto words = wordsOf(line.at(0));
        StepSaid said{.step = words.empty() ? "" : words[0], .notes = {}, .remark = line.at(2)};
        if (words.size() > 1) {
            auto notes = parseNotes(words[1], m_piano);
            if (!notes) return tl::unexpected(notes.error());
            said.notes = std::move(*notes);
        }
        if (!line.at(1).empty()) said.minutes = std::stod(line.at(1));
        return sayWork(said);
    }
    Outcome<void> notHere(const Line& line) {
        return sayWork({.step = line.at(0), .what = StepSaid::What::notHere, .notes = {}, .remark = line.at(1)});
    }
    Outcome<void> sayWork(const StepSaid& said) {
        const auto record = m_book.load(m_uuid);
        if (!record) return tl::unexpected(record.error());
        const auto work = sayStep(said, *record, nullptr, {});
        if (!work) return tl::unexpected(work.error());
        m_clock.now += static_cast<std::int64_t>(said.minutes) * kMinute;
        return only(m_book.sayWork(m_uuid, *work));
    }

    std::string dayNow(int later = 0) const {
        return QDate(1970, 1, 1).addDays(m_clock.now / kDay + later).toString(Qt::ISODate).toStdString();
    }

    /// "48 damper-lever | who | text"; the first field may be empty
    Outcome<void> remark(const Line& line) {
        const auto words = wordsOf(line.at(0));
        Remark remark{.kind = parseRemarkKind(line.word).value_or(RemarkKind::remark),
                      .about = {},
                      .text = line.at(2),
                      .who = line.at(1),
                      .on = dayNow(),
                      .accepted = {}};
        if (words.size() == 2) {
            const auto note = parseNote(words[0], m_piano);
            if (!note) return tl::unexpected(note.error());
            remark.about.note = *note;
            remark.about.part = words[1];
        }
        return only(m_book.addRemarks(m_uuid, std::array{remark}));
    }
    /// The newest advice is accepted.
    Outcome<void> accepted(const Line&) {
        const auto record = m_book.load(m_uuid);
        if (!record) return tl::unexpected(record.error());
        const auto advice = std::ranges::find(record->remarks, RemarkKind::advice, &Remark::kind);
        if (advice == record->remarks.end()) return refuse(RefusalCode::noSuchRemark);
        return only(m_book.decideAdvice(m_uuid, *advice, "yes"));
    }
    /// "days from now | who | text"
    Outcome<void> visit(const Line& line) {
        const Remark visit{.kind = RemarkKind::visit,
                           .about = {},
                           .text = line.at(2),
                           .who = line.at(1),
                           .on = dayNow(std::stoi(line.at(0))),
                           .accepted = {}};
        return only(m_book.addRemarks(m_uuid, std::array{visit}));
    }
    Outcome<void> putAway(const Line&) { return only(m_book.setIdentity(m_uuid, {{std::string(kArchived), "yes"}})); }

    static std::pair<std::string, std::string> parted(const std::string& text) {
        const auto blank = std::min(text.find(' '), text.size());
        return {text.substr(0, blank), trimmed(text.substr(blank))};
    }

    BenchBook& m_book;
    StoryClock& m_clock;
    std::string_view m_readings;
    std::string m_name, m_sheet, m_uuid;
    Piano m_piano;
    Identity m_identity;
    std::vector<Sound> m_sound;
};

} // namespace

Outcome<void> tellStory(BenchBook& book, StoryClock& clock, std::string_view story, std::string_view readings) {
    Teller teller(book, clock, readings);
    for (const Line& line : linesOf(story))
        if (auto told = teller.tell(line); !told) return told;
    return {};
}

} // namespace hammerline::app
