// A bench for the tests of the survey: pianos as they come in, findings as they are typed.
#pragma once

#include "core/history/record.h"
#include "core/survey/job.h"

#include <catch2/catch.hpp>

namespace hammerline::survey_bench {

inline Piano pianoOf(ActionKind kind, int notes = 88) {
    return *makePiano(kind, notes);
}

inline PianoRecord recordOf(const Piano& piano) {
    PianoRecord record;
    record.piano = piano;
    record.specName = "old-upright";
    return record;
}

inline void set(Piano& piano, std::string_view attribute, std::string_view value) {
    REQUIRE(setAttribute(piano, attribute, value));
}

/// The player upright of 85 notes in scenario S6: brass flange rail, last damper 66.
inline Piano playerUpright() {
    Piano piano = pianoOf(ActionKind::upright, 85);
    set(piano, "last-damper", "66");
    set(piano, "player", "above");
    set(piano, "butt", "brass-rail");
    return piano;
}

inline void add(std::vector<Finding>& all, std::string_view typed, const Piano& piano) {
    const auto found = parseFindings(typed, piano);
    INFO(typed);
    REQUIRE(found);
    const auto order = all.empty() ? 1 : all.back().order + 1;
    for (Finding f : *found) {
        f.order = order;
        all.push_back(f);
    }
}

inline void state(std::vector<Finding>& all, std::string_view typed, const Piano& piano) {
    const auto found = parseFindingStates(typed, piano);
    INFO(typed);
    REQUIRE(found);
    const auto order = all.empty() ? 1 : all.back().order + 1;
    for (Finding f : *found) {
        f.order = order;
        all.push_back(f);
    }
}

inline const PartsLine* line(const std::vector<PartsLine>& lines, std::string_view part, std::string_view size = {}) {
    for (const PartsLine& each : lines)
        if (each.part == part && (size.empty() || each.size == size)) return &each;
    return nullptr;
}

inline std::vector<int> blockedNotes(const std::vector<Finding>& findings, const Piano& piano) {
    std::vector<int> out;
    for (int i = 1; i <= piano.notes; ++i)
        if (!blockersOf(NoteNumber{i}, findings, piano).empty()) out.push_back(i);
    return out;
}

} // namespace hammerline::survey_bench
