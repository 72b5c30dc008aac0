#include "core/stroke/moments.h"

#include <algorithm>

namespace hammerline {

namespace {

bool lets(const DrawnNote& note) {
    return note.linkage.distances().escapeAt <= note.linkage.distances().dip;
}

} // namespace

std::vector<Moment> momentsOf(const DrawnNote& note) {
    std::vector<Moment> out{Moment::rest};
    if (note.damperStirs) out.push_back(Moment::damper);
    if (lets(note)) out.push_back(Moment::letOff);
    out.push_back(Moment::bottom);
    if (lets(note)) out.push_back(Moment::check);
    return out;
}

double travelAt(const DrawnNote& note, Moment moment) {
    const kinematics::Distances& mm = note.linkage.distances();
    switch (moment) {
    case Moment::rest:
        return 0;
    case Moment::damper:
        return std::min(note.linkage.damperFrom().value_or(mm.dip), mm.dip);
    case Moment::letOff:
        return std::min(mm.escapeAt, mm.dip);
    case Moment::bottom:
    case Moment::check:
        break;
    }
    return mm.dip;
}

Moment momentAt(const DrawnNote& note, double travel) {
    Moment here = Moment::rest;
    for (const Moment each : momentsOf(note))
        if (each != Moment::check && travelAt(note, each) <= travel + 1e-9) here = each;
    return here;
}

} // namespace hammerline
