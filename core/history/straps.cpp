#include "core/history/straps.h"

#include <algorithm>
#include <limits>

namespace hammerline {
namespace {

/// One word on the strap of a note, in the order of the acts; records made without a book go by the pass.
struct Said {
    std::int64_t when;
    bool tight;
};

std::int64_t whenOf(std::int64_t order, int pass, int after) {
    return order > 0 ? order : std::int64_t{10} * pass + after;
}

class Straps {
public:
    explicit Straps(const PianoRecord& record)
        : m_piano(record.piano), m_said(static_cast<std::size_t>(record.piano.notes)) {
        for (const Symptom& each : record.symptoms)
            if (each.key == "soft-pedal-keys-wink")
                for (int n = each.notes.first; n <= each.notes.last; ++n)
                    say({n}, {whenOf(each.order, 1, 2), true});
        for (const Finding& each : record.findings)
            if (each.part == "bridle-wire") say(each);
        for (const Pass& each : record.passes)
            for (int n = 1; n <= m_piano.notes; ++n)
                if (const Measured* measured = each.at({{n}, dimension::strap})) say({n}, *measured, each);
        for (const Done& each : record.done)
            if (each.operation == operation::bridleBend)
                for (const NoteNumber note : each.notes)
                    say(note, {whenOf(each.order, each.pass, 3), false});
    }

    bool tightAround(NoteNumber note, std::int64_t read) const {
        std::int64_t eased = 0, easedLater = std::numeric_limits<std::int64_t>::max();
        const auto& said = m_said[static_cast<std::size_t>(note.value) - 1];
        for (const Said& each : said) {
            if (each.tight) continue;
            if (each.when <= read) eased = std::max(eased, each.when);
            if (each.when > read) easedLater = std::min(easedLater, each.when);
        }
        return std::any_of(said.begin(), said.end(),
                           [&](const Said& each) { return each.tight && each.when > eased && each.when < easedLater; });
    }

private:
    void say(NoteNumber note, Said said) {
        if (m_piano.contains(note)) m_said[static_cast<std::size_t>(note.value) - 1].push_back(said);
    }
    void say(NoteNumber note, const Measured& measured, const Pass& pass) {
        const auto word = measured.word();
        if (!word) return;
        say(note, {whenOf(measured.order(), pass.number, 1), *word == word::tight});
    }
    void say(const Finding& finding) {
        const bool open = finding.state == FindingState::toDo || finding.state == FindingState::watch;
        if (finding.state == FindingState::notLookedAt || (open && finding.fault != "too-tight")) return;
        const Said said{whenOf(finding.order, 1, 2), open};
        if (finding.note) return say(*finding.note, said);
        for (int n = 1; n <= m_piano.notes; ++n)
            say({n}, said);
    }

    const Piano& m_piano;
    std::vector<std::vector<Said>> m_said; // by note - 1
};

} // namespace

std::vector<bool> tightStraps(const PianoRecord& record, const Pass& pass) {
    std::vector<bool> tight(static_cast<std::size_t>(record.piano.notes), false);
    if (!record.piano.vertical()) return tight;
    const Straps straps(record);
    for (int n = 1; n <= record.piano.notes; ++n) {
        const Measured* lost = pass.at({{n}, dimension::lostMotion});
        const bool read = lost && !lost->missing();
        const std::int64_t when = whenOf(read ? lost->order() : 0, pass.number, 1);
        tight[static_cast<std::size_t>(n) - 1] =
            straps.tightAround({n}, read ? when : std::numeric_limits<std::int64_t>::max());
    }
    return tight;
}

} // namespace hammerline
