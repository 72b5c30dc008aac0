#include "core/sheet/export_walk.hpp"

#include "core/intake/time_text.h"

namespace hammerline::sheet {

std::optional<Cell> ExportWalk::cell(const At& at, const Piano& piano) {
    const auto note = whole(at, "note", 1, piano.notes, true);
    const auto id = findDimension(text(at, "dimension", true));
    if (!ok()) return std::nullopt;
    if (id) return Cell{NoteNumber{static_cast<int>(*note)}, *id};
    wrong(*maybe(at, "dimension"), "unknown");
    return std::nullopt;
}

int ExportWalk::passNumber(const At& at, const char* name, const PianoRecord& record) {
    const auto count = static_cast<std::int64_t>(record.passes.size());
    return static_cast<int>(whole(at, name, 1, count, true).value_or(1));
}

std::optional<double> ExportWalk::bounded(const At& at, const char* name, double low, double high) {
    const auto value = number(at, name);
    if (value && (*value < low || *value > high)) wrong(*maybe(at, name), "range");
    return value;
}

bool ExportWalk::oneOf(const At& at, const char* name, std::string_view no, std::string_view yes) {
    const auto said = text(at, name);
    if (!said.empty() && said != no && said != yes) wrong(*maybe(at, name), "unknown");
    return said == yes;
}

std::int64_t ExportWalk::time(const At& at, const char* name) {
    const auto said = text(at, name);
    if (said.empty()) return 0;
    const auto when = readUtcTime(said);
    if (!when) wrong(*maybe(at, name), "time");
    return when.value_or(0);
}

std::int64_t ExportWalk::order(const At& at, std::int64_t time) {
    return whole(at, "order", INT64_MIN, INT64_MAX).value_or(time);
}

std::string ExportWalk::uuid(const At& at) {
    auto said = text(at, "uuid");
    if (said.empty()) return said;
    bool right = said.size() == 36;
    for (std::size_t i = 0; i < said.size() && right; ++i) {
        const bool dash = i == 8 || i == 13 || i == 18 || i == 23;
        right = dash ? said[i] == '-' : std::string_view{"0123456789abcdef"}.find(said[i]) != std::string_view::npos;
    }
    if (!right)
        wrong(*maybe(at, "uuid"), "unknown");
    else if (!m_uuids.insert(said).second)
        wrong(*maybe(at, "uuid"), "twice");
    return said;
}

} // namespace hammerline::sheet
