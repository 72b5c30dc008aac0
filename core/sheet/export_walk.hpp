// The walk over an export: what many of its parts have in common.
#pragma once

#include "core/history/record.h"
#include "core/sheet/json_walk.hpp"

#include <set>

namespace hammerline::sheet {

class ExportWalk : public JsonWalk {
public:
    static constexpr double kLargest = 1e6; // mm, g, %, turns: beyond anything

    std::optional<Cell> cell(const At& at, const Piano& piano);
    /// A pass of the piano by its number.
    int passNumber(const At& at, const char* name, const PianoRecord& record);
    std::optional<double> bounded(const At& at, const char* name, double low, double high);
    bool oneOf(const At& at, const char* name, std::string_view no, std::string_view yes);
    /// Microseconds since 1970; 0 where it is not said.
    std::int64_t time(const At& at, const char* name);
    std::int64_t order(const At& at, std::int64_t time);
    /// 8-4-4-4-12 hexadecimal, no name twice in the file; empty where there is none.
    std::string uuid(const At& at);

private:
    std::set<std::string> m_uuids;
};

/// What an export says of a piano beside its set-up and its passes: overrides, plans, done, findings, symptoms,
/// identity, remarks.
void readWork(ExportWalk&, const ExportWalk::At& piano, PianoRecord&);

} // namespace hammerline::sheet
