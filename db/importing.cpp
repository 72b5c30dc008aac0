#include "db/importing.h"

#include "db/import_state.h"

namespace hammerline {

struct Importing::State {
    State(ActUnderWay& underWay, std::int64_t piano)
        : act(underWay)
        , brought(underWay.book())
        , readings(underWay, piano, brought, [this](const Reading& reading) { return originOf(reading); }) {}

    std::optional<ActId> originOf(const Reading& reading) {
        if (reading.at == 0) return std::nullopt;
        act.id(); // stands before what it brought
        return brought.at(reading.at, "entry");
    }

    const std::string& path() { return act.book().path; }

    ActUnderWay& act;
    BroughtActs brought;
    ImportState readings;
};

Importing::Importing(ActUnderWay& act, std::int64_t piano) : m_state(std::make_unique<State>(act, piano)) {}
Importing::~Importing() = default;

Outcome<int> Importing::passNamed(std::string_view numberOrLabel, std::string_view label) {
    return guarded(m_state->path(), Doing::writing, [&] { return m_state->readings.named(numberOrLabel, label); });
}

Outcome<int> Importing::addPass(const NewPass& pass) {
    return guarded(m_state->path(), Doing::writing, [&] { return m_state->readings.add(pass); });
}

Outcome<void> Importing::put(int pass, const NewReading& reading) {
    return guarded(m_state->path(), Doing::writing, [&] { m_state->readings.put(pass, reading); });
}

Outcome<void> Importing::markNotFitted(int pass, Cell cell) {
    return guarded(m_state->path(), Doing::writing, [&] { m_state->readings.markNotFitted(pass, cell); });
}

Outcome<void> Importing::setReferences(int pass, const std::map<DimensionId, std::string>& references) {
    return guarded(m_state->path(), Doing::writing, [&] {
        for (const auto& [dimension, reference] : references)
            m_state->readings.at(pass).references[dimension] = reference;
    });
}

void Importing::finish() {
    m_state->readings.finish();
    m_state->readings.requireOneDatum();
    m_state->brought.finish();
}

} // namespace hammerline
