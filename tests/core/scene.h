// A piano with a spec sheet and passes put together in a test, and what its plan says.
#pragma once

#include "core/plan/plan.h"

#include <catch2/catch.hpp>

namespace hammerline::scene {

/// Distances from the balance pin in mm: front edge, front pin, back rail, capstan.
inline KeyArms arms(double front, double pin, double back, double capstan) {
    return {fromMm(front), fromMm(pin), fromMm(back), fromMm(capstan), true};
}

inline Piano withRatio(Piano piano, double ratio) {
    piano.ratio = {ratio, ratio};
    return piano;
}

/// An upright with the arms of the scenarios of bench-practice 6.
inline Piano upright() {
    Piano piano = *makePiano(ActionKind::upright);
    piano.arms[0] = arms(235, 214, 142, 127);
    return piano;
}

struct Scene {
    PianoRecord record;
    SpecSheet sheet;

    Scene(Piano piano, std::string_view sheetName) : sheet(*builtInSheet(sheetName)) {
        record.uuid = "scene";
        record.piano = std::move(piano);
        record.specName = sheetName;
        record.passes.push_back(Pass{});
        record.passes.back().number = 1;
    }
    Pass& pass() { return record.passes.back(); }
    void read(int note, DimensionId dimension, double value) {
        Reading reading;
        reading.count = fromTrade(value, row(dimension).kind);
        pass().cells[{{note}, dimension}].trials = {reading};
    }
    void readAll(DimensionId dimension, double value) {
        for (int n = 1; n <= record.piano.notes; ++n)
            if (fitted(dimension, {n}, record.piano)) read(n, dimension, value);
    }
    void word(int note, DimensionId dimension, WordId word) {
        Reading reading;
        reading.word = word;
        pass().cells[{{note}, dimension}].trials = {reading};
    }
    void nextPass() {
        Pass pass;
        pass.number = static_cast<int>(record.passes.size()) + 1;
        record.passes.push_back(pass);
    }
    /// Another zone for a dimension at one note, as an override.
    void aim(int note, DimensionId dimension, double low, double nominal, double high) {
        const Kind kind = row(dimension).kind;
        record.overrides.push_back(
            {{{note}, dimension}, {fromTrade(low, kind), fromTrade(nominal, kind), fromTrade(high, kind)}, "test", ""});
    }
    void aimAll(DimensionId dimension, double low, double nominal, double high) {
        for (int n = 1; n <= record.piano.notes; ++n)
            if (fitted(dimension, {n}, record.piano)) aim(n, dimension, low, nominal, high);
    }
    Done& did(OperationId operation, int note, double amount) {
        Done done;
        done.operation = operation;
        done.notes = {{note}};
        done.amount = amount;
        done.pass = pass().number;
        record.done.push_back(done);
        return record.done.back();
    }
    bool isNatural(int note) const { return colourOf({note}, record.piano) == KeyColour::natural; }

    Plan plan(PlanOptions options = {}) const {
        const auto plan = makePlan(record, sheet, static_cast<int>(record.passes.size()), options);
        REQUIRE(plan.has_value());
        return *plan;
    }
    Zones zones() const { return {sheet, record.piano, record.overrides}; }
    Review review() const { return hammerline::review(record.piano, relative(), zones()); }
    std::vector<Cause> causes() const {
        const Pass pass = relative();
        const Review reviewed = hammerline::review(record.piano, pass, zones());
        return findCauses({&record, &pass, &reviewed});
    }
    std::vector<Advice> advice() const {
        const Pass pass = relative();
        const Review reviewed = hammerline::review(record.piano, pass, zones());
        return advise({&record, &pass, &reviewed});
    }
    Verdict verdict(int note, DimensionId dimension) const {
        const Review reviewed = review();
        const Judged* judged = reviewed.at({{note}, dimension});
        return judged ? judged->verdict : Verdict::missing;
    }

private:
    Pass relative() const { return withRelativeHeights(record.piano, record.passes.back()); }
};

inline const Step* stepOf(const Plan& plan, OperationId operation, int note) {
    for (const Step& step : plan.steps)
        if (step.operation == operation && step.note && step.note->value == note) return &step;
    return nullptr;
}
inline const Step* commonOf(const Plan& plan, OperationId operation, int note) {
    for (const Step& step : plan.steps)
        if (step.operation == operation && !step.note &&
            std::find(step.notes.begin(), step.notes.end(), NoteNumber{note}) != step.notes.end())
            return &step;
    return nullptr;
}
inline std::optional<double> expectedAt(const Plan& plan, int note, DimensionId dimension) {
    for (const Expected& expected : plan.expected)
        if (expected.cell == Cell{{note}, dimension}) return expected.value;
    return std::nullopt;
}
inline int count(const Plan& plan, OperationId operation) {
    return static_cast<int>(
        std::count_if(plan.steps.begin(), plan.steps.end(), [&](const Step& s) { return s.operation == operation; }));
}
inline const Cause* causeOf(const std::vector<Cause>& causes, std::string_view key) {
    for (const Cause& cause : causes)
        if (cause.key == key) return &cause;
    return nullptr;
}

} // namespace hammerline::scene
