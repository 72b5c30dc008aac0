#include "core/sheet/export_passes.hpp"

#include "core/intake/cell.h"
#include "core/pass/line_sag.h"

#include <algorithm>

namespace hammerline::sheet {
namespace {

using At = ExportWalk::At;

class PassReader {
public:
    PassReader(ExportWalk& into, PianoRecord& record, bool takeDoubtful, ReadExport& out)
        : walk(into), m_record(record), m_takeDoubtful(takeDoubtful), m_out(out) {}

    void readPass(const At& at) {
        m_pass = {};
        m_pass.number = static_cast<int>(m_record.passes.size()) + 1;
        if (const auto said = walk.whole(at, "pass", 1, 1'000'000); said && *said != m_pass.number)
            return walk.wrong(*walk.maybe(at, "pass"), "sequence");
        m_pass.label = walk.text(at, "label");
        m_pass.uuid = walk.uuid(at);
        m_pass.startedAt = walk.time(at, "started");
        m_pass.order = walk.order(at, m_pass.startedAt);
        m_pass.stackIn = walk.oneOf(at, "stack", "out", "in");
        m_pass.weightsOn = walk.oneOf(at, "weights", "off", "on");
        m_pass.onBench = walk.oneOf(at, "at", "piano", "bench");
        if (const auto sag = walk.maybe(at, "line_sag")) {
            m_pass.lineSag = walk.text(at, "line_sag");
            if (!readLineSag(m_pass.lineSag, m_record.piano)) return walk.wrong(*sag, "range");
        }
        const auto celsius = walk.bounded(at, "temperature", -100, 200);
        const auto humidity = walk.bounded(at, "humidity", 0, 100);
        if (celsius && humidity)
            m_pass.climate = Climate{*celsius, *humidity};
        else
            m_pass.temperature = celsius, m_pass.humidity = humidity;
        walk.members(at, "references", [&](const std::string& name, const At& value) {
            const auto id = findDimension(name);
            if (!id) return walk.wrong(value, "unknown");
            const auto known = row(*id).references;
            const bool is = value.json->is_string() &&
                            std::find(known.begin(), known.end(), value.json->get<std::string>()) != known.end();
            if (!is) return walk.wrong(value, "unknown");
            m_pass.references[*id] = value.json->get<std::string>();
        });
        walk.each(at, "readings", [&](const At& each) { readReading(each); });
        walk.each(at, "not_fitted", [&](const At& each) {
            if (const auto cell = walk.cell(each, m_record.piano)) m_pass.cells[*cell].notFitted = true;
        });
        if (!walk.ok()) return;
        for (auto& [cell, measured] : m_pass.cells)
            std::sort(measured.trials.begin(), measured.trials.end(),
                      [](const Reading& a, const Reading& b) { return a.trial < b.trial; });
        m_record.passes.push_back(std::move(m_pass));
    }

private:
    void readReading(const At& at) {
        const auto cell = walk.cell(at, m_record.piano);
        if (!cell) return;
        Reading reading;
        reading.trial = static_cast<int>(walk.whole(at, "trial", 1, 99).value_or(1));
        reading.typed = walk.text(at, "text");
        reading.typedUnit = walk.text(at, "unit");
        reading.taken = walk.flag(at, "taken");
        reading.reason = walk.text(at, "reason");
        reading.at = walk.time(at, "at");
        reading.order = walk.order(at, reading.at);
        if (!reading.typedUnit.empty() && !parseUnit(reading.typedUnit))
            return walk.wrong(*walk.maybe(at, "unit"), "unknown");
        if (const auto word = walk.maybe(at, "word"))
            readWord(*word, cell->dimension, reading);
        else
            readValue(at, *cell, reading);
        if (!walk.ok()) return;
        Measured& measured = m_pass.cells[*cell];
        const bool twice = std::any_of(measured.trials.begin(), measured.trials.end(),
                                       [&](const Reading& other) { return other.trial == reading.trial; });
        if (twice) return walk.wrong({nullptr, at.path + "/trial"}, "twice");
        if (!reading.word && !reading.taken && isDoubtful(quantityOf(reading), *cell, context())) {
            if (!m_takeDoubtful) return ask(at, *cell, reading);
            reading.taken = true;
        }
        measured.trials.push_back(std::move(reading));
        ++m_out.readings;
    }

    void readWord(const At& at, DimensionId id, Reading& reading) {
        const auto word = at.json->is_string() ? findWord(at.json->get<std::string>(), id)
                                               : Outcome<WordId>(refuse(RefusalCode::unknownWord));
        if (!word) return walk.wrong(at, "unknown");
        reading.word = *word;
    }

    void readValue(const At& at, Cell cell, Reading& reading) {
        const auto count = countOf(at, "value", cell, true);
        if (!count) return;
        reading.count = *count;
        const auto relation = walk.text(at, "relation");
        if (const auto upper = countOf(at, "upper", cell, false)) {
            reading.relation = Relation::between;
            reading.upper = *upper;
            if (*upper < *count) return walk.wrong(*walk.maybe(at, "upper"), "range");
        } else if (relation == "<") {
            reading.relation = Relation::less;
        } else if (relation == ">") {
            reading.relation = Relation::more;
        } else if (!relation.empty() && relation != "=") {
            return walk.wrong(*walk.maybe(at, "relation"), "unknown");
        }
        if (!agrees(cell.dimension, reading)) walk.wrong(*walk.maybe(at, "value"), "text-and-value");
    }

    std::optional<std::int64_t> countOf(const At& at, const char* name, Cell cell, bool required) {
        const auto value = walk.number(at, name, required);
        if (!value) return std::nullopt;
        const std::int64_t count =
            std::abs(*value) > ExportWalk::kLargest ? INT64_MAX : fromTrade(*value, row(cell.dimension).kind);
        const bool overSlip = m_pass.referenceOf(dimension::keyHeight) == "slip";
        if (!limitsOf(cell, count, m_record.piano, overSlip).refuses(count)) return count;
        walk.wrong(*walk.maybe(at, name), "range");
        return std::nullopt;
    }

    /// What was typed may be in words or in shares of a blow that is no longer known; where it can be read, it says the
    /// same as the value.
    static bool agrees(DimensionId id, const Reading& reading) {
        const auto unit = parseUnit(reading.typedUnit);
        if (reading.typed.empty() || !unit || kindOf(*unit) != row(id).kind) return true;
        const auto typed = parseQuantity(reading.typed, *unit);
        if (!typed || kindOf(typed->unit) != row(id).kind) return true;
        return typed->count == reading.count && typed->relation == reading.relation &&
               (typed->relation != Relation::between || typed->upper == reading.upper);
    }

    static TypedQuantity quantityOf(const Reading& reading) {
        TypedQuantity quantity;
        quantity.count = reading.count;
        quantity.upper = reading.upper;
        quantity.relation = reading.relation;
        return quantity;
    }

    CellContext context() const {
        CellContext context;
        context.piano = &m_record.piano;
        return context;
    }

    void ask(const At& at, Cell cell, const Reading& reading) {
        Question question;
        question.place.field = at.path;
        question.cell = cell;
        question.text = reading.typed;
        question.doubt = Doubt::outOfRange;
        question.asTyped = reading;
        m_out.questions.push_back({m_record.piano.name, std::move(question)});
    }

    ExportWalk& walk;
    PianoRecord& m_record;
    bool m_takeDoubtful;
    ReadExport& m_out;
    Pass m_pass;
};

} // namespace

void readPasses(ExportWalk& walk, const At& piano, PianoRecord& record, bool takeDoubtful, ReadExport& out) {
    PassReader reader(walk, record, takeDoubtful, out);
    walk.each(piano, "passes", [&](const At& each) { reader.readPass(each); });
}

} // namespace hammerline::sheet
