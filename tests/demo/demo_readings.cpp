// demo_readings STORY.txt > READINGS.csv: a virtual piano, worn and damp as the story says, is read, turned and
// regulated by it. Gauges have their noise, hands their error; what is planned is planned by the program itself.
#include "core/intake/intake.h"
#include "core/plan/plan_in_force.h"
#include "core/sheet/pass_view.h"
#include "core/sheet/work_said.h"
#include "tests/virtual_action/workshop.h"

#include <array>
#include <cmath>
#include <cstdio>
#include <fstream>
#include <iostream>
#include <sstream>

using namespace hammerline;

namespace {

template <class T>
T sure(Outcome<T> outcome) {
    if (outcome) return std::move(*outcome);
    std::cerr << "refused: " << outcome.error().offending << ' ' << outcome.error().detail << '\n';
    std::exit(1);
}

std::string rest(std::istringstream& in) {
    std::string text;
    std::getline(in >> std::ws, text, '|');
    text.erase(text.find_last_not_of(' ') + 1);
    return text;
}

constexpr virtual_action::Conditions kGoodGauges{.gauge = Gauge::good};

class Life {
public:
    void line(const std::string& text) {
        std::istringstream in(text);
        std::string word;
        in >> word;
        if (word == "name") m_record.piano.name = rest(in);
        if (word == "kind") start(rest(in));
        if (word == "sheet") m_record.specName = rest(in);
        if (word == "attribute") attribute(in);
        if (word == "virtual") make(in);
        if (word == "odd") odd(in);
        if (word == "finding") found(sure(parseFindings(rest(in), m_record.piano)));
        if (word == "state") found(sure(parseFindingStates(rest(in), m_record.piano)));
        if (word == "step") step(in);
        if (word == "pass") openPass(in);
        if (word == "read") read(in);
        if (word == "word") say(in);
        if (word != "read" && word != "word" && word != "pass") closePass();
        if (word == "turned") turned(in);
        if (word == "plan") plan();
    }
    std::string readings() {
        closePass();
        return kHead + m_all;
    }

private:
    void start(const std::string& kind) {
        const std::string name = m_record.piano.name;
        m_record.piano = sure(makePiano(sure(parseActionKind(kind))));
        m_record.piano.name = name;
    }
    void attribute(std::istringstream& in) {
        std::string name;
        in >> name;
        if (!setAttribute(m_record.piano, name, rest(in))) std::exit(1);
    }
    void make(std::istringstream& in) {
        virtual_action::Wear wear;
        std::uint64_t number = 0;
        in >> wear.share >> number;
        m_action = std::make_unique<virtual_action::Action>(m_record.piano, sheetOf(m_record), wear, number);
        m_shop = std::make_unique<virtual_action::Workshop>(*m_action, kGoodGauges, number);
    }
    std::vector<NoteNumber> notes(std::istringstream& in) {
        std::string word;
        in >> word;
        return sure(parseNotes(word, m_record.piano));
    }

    /// What damp and time did to single notes, mm at the part.
    void odd(std::istringstream& in) {
        const auto where = notes(in);
        std::string what;
        double mm = 0;
        in >> what >> mm;
        for (const NoteNumber note : where) {
            virtual_action::Settings& settings = m_action->settings(note.value);
            if (what == "capstan") settings.capstan += mm;
            if (what == "front") settings.frontStop += mm;
            if (what == "button") settings.button += mm;
            if (what == "balance") settings.balance += mm;
            if (what == "check") settings.checkNearer += mm;
        }
    }

    void found(std::vector<Finding> findings) {
        ++m_order;
        for (Finding& each : findings) {
            each.order = m_order;
            std::erase_if(m_record.findings,
                          [&](const Finding& old) { return old.part == each.part && old.note == each.note; });
            m_record.findings.push_back(std::move(each));
        }
    }

    void step(std::istringstream& in) {
        std::istringstream words(rest(in));
        StepSaid said;
        words >> said.step;
        if (std::string where; words >> where) said.notes = sure(parseNotes(where, m_record.piano));
        found(sure(sayStep(said, m_record, nullptr, {})).mended);
    }

    void openPass(std::istringstream& in) {
        closePass();
        Pass pass;
        pass.number = static_cast<int>(m_record.passes.size()) + 1;
        pass.label = rest(in);
        pass.temperature = std::stod(rest(in));
        pass.humidity = std::stod(rest(in));
        pass.climate = Climate{*pass.temperature, *pass.humidity};
        pass.order = ++m_order;
        m_record.passes.push_back(pass);
    }

    /// What was written down goes into the record the way the demo's own file goes into the book.
    void closePass() {
        if (m_written.empty()) return;
        const std::string text = kHead + m_written;
        m_all += m_written;
        m_written.clear();
        ++m_order;
        for (Sound& each : sure(readReadings(text, m_record.piano)).sound) {
            each.reading.order = m_order;
            m_record.passes.back().cells[each.cell].trials = {each.reading};
        }
    }

    void write(NoteNumber note, DimensionId id, const std::string& text) {
        std::ostringstream cell;
        cell << m_record.piano.name.substr(0, m_record.piano.name.find(" (")) << ';' << m_record.passes.back().number
             << ';' << note.value << ';' << row(id).key << ";1;";
        // A word said later of the same cell is the one that counts.
        if (const auto old = m_written.find(cell.str()); old != std::string::npos)
            m_written.erase(old, m_written.find('\n', old) + 1 - old);
        m_written += cell.str() + text + ";;;\n";
    }

    /// As a person writes it: a hammer that hangs and one that blocks have words.
    static std::string written(DimensionId id, double mm) {
        if (id == dimension::lostMotion && mm < 0) return "off";
        if (id == dimension::letOff && mm <= 0) return "blocks";
        std::array<char, 16> text{};
        std::snprintf(text.data(), text.size(), "%.1f", mm == 0 ? 0.0 : mm);
        return text.data();
    }

    void read(std::istringstream& in) {
        const auto where = notes(in);
        for (std::string key; in >> key;)
            for (const NoteNumber note : where) {
                const DimensionId id = sure(findDimension(key));
                const auto mm = m_shop->read({note, id});
                if (!mm) continue;
                write(note, id, written(id, *mm));
            }
    }
    void say(std::istringstream& in) {
        const auto where = notes(in);
        std::string key, text;
        in >> key >> text;
        const DimensionId id = sure(findDimension(key));
        for (const NoteNumber note : where)
            if (fitted(id, note, m_record.piano)) write(note, id, text);
    }

    void turned(std::istringstream& in) {
        std::string operation;
        in >> operation;
        Done done;
        done.operation = sure(findOperation(operation));
        done.notes = notes(in);
        in >> done.amount.emplace();
        done.pass = m_record.passes.back().number;
        done.order = ++m_order;
        for (const NoteNumber note : done.notes)
            turn(done.operation, note.value, *done.amount);
        m_record.done.push_back(done);
    }

    void turn(OperationId operation, int note, double turns) {
        if (operation == operation::capstanTurn) m_shop->turnCapstan(note, turns);
        if (operation == operation::letOffTurn) m_shop->turnLetOff(note, turns);
        if (operation == operation::dropTurn) m_action->turnDrop(note, turns);
    }

    void plan() {
        PlanOptions options;
        options.floating = Float::aftertouch;
        const Plan plan = sure(makePlan(m_record, sheetOf(m_record), m_record.passes.back().number, options));
        std::map<int, double> balance;
        for (const Step& step : plan.steps)
            if (step.operation == operation::balancePunching && step.amount) balance[step.note->value] = *step.amount;
        m_shop->punchBalance(balance);
        std::cerr << plan.steps.size() << " lines\n";
        for (const Step& step : plan.steps)
            work(step);
        m_shop->playIn();
    }

    void work(const Step& step) {
        if (step.operation == operation::restRailShim) return m_shop->padRail(step.amounts);
        if (step.operation == operation::balanceRailShim) return m_shop->shimBalanceRail(step.amounts);
        if (step.operation == operation::backRailShim && step.amount) return m_shop->shimBackRail(*step.amount);
        if (!step.note) return;
        const int note = step.note->value;
        if (step.unit == AmountUnit::turn && step.amount) return turn(step.operation, note, *step.amount);
        if (step.operation == operation::frontPunching && step.amount) return m_shop->punchFront(note, *step.amount);
        if (step.operation == operation::railClothShim && step.amount) return m_shop->shimRailCloth(note, *step.amount);
        if (step.operation == operation::checkBend && step.aim) nearTheAim(step);
    }
    void nearTheAim(const Step& step) {
        for (int look = 0; look < 2; ++look) {
            const double off = *m_shop->read({*step.note, step.aimDimension}) - *step.aim;
            if (std::abs(off) >= 0.5) m_shop->nearCheck(step.note->value, off);
        }
    }

    static inline const std::string kHead = "piano;pass;note;dimension;trial;text;unit;state;at\n";

    PianoRecord m_record;
    std::unique_ptr<virtual_action::Action> m_action;
    std::unique_ptr<virtual_action::Workshop> m_shop;
    std::string m_written, m_all; // of this pass, of all before
    std::int64_t m_order = 0;
};

} // namespace

int main(int count, char** words) {
    if (count != 2) return 2;
    std::ifstream story(words[1]);
    Life life;
    for (std::string text; std::getline(story, text);)
        if (!text.empty() && text.front() != '#') life.line(text);
    std::cout << life.readings();
    return story.eof() ? 0 : 1;
}
