#include "db/storing_intake.h"

#include "core/pass/height_datum.h"

#include <algorithm>
#include <climits>

namespace hammerline {

NewPass nextPass(const PianoRecord& record) {
    NewPass fresh;
    if (record.passes.empty()) {
        fresh.label = "as found";
        return fresh;
    }
    const Pass& last = record.passes.back();
    fresh.references = last.references;
    // Heights from the key bed are told by their size: the first one read says whether they are meant again.
    if (last.referenceOf(dimension::keyHeight) == "bed") fresh.references.erase(dimension::keyHeight);
    fresh.stackIn = last.stackIn;
    fresh.weightsOn = last.weightsOn;
    fresh.lineSag = last.lineSag;
    fresh.onBench = last.onBench;
    return fresh;
}

void speakAsThePass(const PianoRecord& record, std::optional<int> number, TableOptions& options) {
    const Pass* pass = number ? record.pass(*number) : nullptr;
    options.references = pass ? pass->references : nextPass(record).references;
    options.datumHolds = pass && (hasHeights(*pass) || pass->references.contains(dimension::keyHeight));
}

StoringIntake::StoringIntake(Importing& into, const PianoRecord& record, std::optional<int> pass, bool byName)
    : m_into(into), m_record(record), m_pass(pass), m_byName(byName) {}

void StoringIntake::take(const Sound& sound) {
    if (m_refusal) return;
    passesBefore(sound.line);
    const auto stop = [&](const Refusal& refusal) { m_refusal = refusal; };
    const auto pass = passFor(sound.pass);
    if (!pass) return stop(pass.error());
    std::string_view& datum = m_datum[*pass];
    const bool height = sound.cell.dimension == dimension::keyHeight && !sound.reading.word;
    if (height && datum.empty()) datum = datumOf(sound.reading.count);
    if (const auto put = m_into.put(*pass, {sound.cell, sound.reading}); !put) return stop(put.error());
    ++m_taken;
}

void StoringIntake::take(const SaidPass& said) {
    if (m_refusal || !m_byName) return; // all goes into one pass
    if (const auto pass = m_into.passNamed(said.name, said.label); !pass) m_refusal = pass.error();
}

void StoringIntake::expect(std::vector<SaidPass> passes) {
    m_expected = std::move(passes);
    std::ranges::stable_sort(m_expected, std::greater<>{}, &SaidPass::line);
}

void StoringIntake::passesBefore(int line) {
    while (!m_expected.empty() && m_expected.back().line < line) {
        take(m_expected.back());
        m_expected.pop_back();
    }
}

Outcome<void> StoringIntake::finish(const Intake& intake) {
    if (!intake.passes.empty()) expect(intake.passes);
    for (const Sound& each : intake.sound)
        take(each);
    passesBefore(INT_MAX);
    for (const SaidNotFitted& mark : intake.notFitted) {
        if (m_refusal) break;
        const auto pass = passFor(mark.pass);
        if (!pass) return tl::unexpected(pass.error());
        if (const auto put = m_into.markNotFitted(*pass, mark.cell); !put) return put;
        ++m_taken;
    }
    for (const auto& [pass, datum] : m_datum) {
        auto references = intake.longForm ? std::map<DimensionId, std::string>{} : intake.references;
        if (intake.longForm && !datum.empty() && datum != "line") references[dimension::keyHeight] = std::string(datum);
        if (const auto set = m_into.setReferences(pass, references); !set) return set;
    }
    return outcome();
}

Outcome<void> StoringIntake::outcome() const {
    if (m_refusal) return tl::unexpected(*m_refusal);
    return {};
}

Outcome<int> StoringIntake::passFor(const std::string& named) {
    const bool byName = !named.empty() && m_byName;
    const auto later = [&](int pass) { return m_lastPass = std::max(m_lastPass, pass), pass; };
    if (!byName && m_pass) return later(*m_pass);
    auto pass = byName ? m_into.passNamed(named) : m_into.addPass(nextPass(m_record));
    if (!pass) return pass;
    if (!byName) m_pass = *pass;
    return later(*pass);
}

} // namespace hammerline
