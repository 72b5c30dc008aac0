#include "core/judge/consistency.h"

#include "core/stats/robust.h"

#include <algorithm>
#include <cmath>

namespace hammerline {
namespace {

constexpr double kAlarmSingle = 1.0;   // mm
constexpr double kAlarmRepeated = 0.6; // mm
constexpr double kSigmas = 3;
constexpr std::size_t kFewestForZ = 5;

struct Residual {
    NoteNumber note;
    EscapementReading reading;
    double r{};
    double u{};
    bool repeated = false;
};

double uncertaintyAt(const Piano& piano, const PassTable& table, Cell cell) {
    const double single = toTrade(uncertaintyOf(cell.dimension, piano), Kind::length);
    return single / std::sqrt(std::max(1, table.repeats(cell)));
}

Residual residualOf(const Piano& piano, const PassTable& table, NoteNumber note, const EscapementReading& reading,
                    const Ratio& ratio) {
    Residual out{note, reading, *relationResidual(reading, ratio.value), 0, true};
    const auto weights = relationWeights(ratio.value);
    const double s = (*reading.blow - *reading.letOff) * ratio.spread / (ratio.value * ratio.value);
    double square = s * s;
    for (std::size_t i = 0; i < kRelationDimensions.size(); ++i) {
        const Cell cell{note, kRelationDimensions[i]};
        if (table.at(cell) == nullptr) continue; // a grand has no lost motion to be uncertain about
        const double u = weights[i] * uncertaintyAt(piano, table, cell);
        square += u * u;
        out.repeated = out.repeated && table.repeats(cell) > 1;
    }
    out.u = std::sqrt(square);
    return out;
}

bool alarms(const Residual& each, std::optional<double> z) {
    if (each.reading.letOffBound && !each.reading.aftertouchBound && each.r >= 0) return false;
    if (each.reading.aftertouchBound && each.r <= 0) return false;
    const double size = std::abs(each.r);
    if (size > std::max(kSigmas * each.u, each.repeated ? kAlarmRepeated : kAlarmSingle)) return true;
    return std::abs(z.value_or(0.0)) > kModifiedZCutOff && size > std::max(kAlarmRepeated, 2 * each.u);
}

/// Which of the five explains r best: its own unevenness is what a slip in it would leave.
DimensionId suspectOf(const Piano& piano, const PassTable& table, const Evenness& evenness, const Residual& each,
                      double ratio) {
    const auto weights = relationWeights(ratio);
    std::optional<double> best;
    DimensionId suspect = dimension::keyDip;
    for (std::size_t i = 0; i < kRelationDimensions.size(); ++i) {
        const Cell cell{each.note, kRelationDimensions[i]};
        if (table.at(cell) == nullptr) continue;
        const Unevenness* uneven = evenness.at(cell);
        const double slip = each.r / weights[i];
        const double scale = std::max(uncertaintyAt(piano, table, cell), 0.1 * std::abs(slip));
        const double misfit = std::abs((uneven ? uneven->residual : 0.0) - slip) / scale;
        if (best && misfit >= *best) continue;
        best = misfit;
        suspect = cell.dimension;
    }
    return suspect;
}

void addRelation(std::vector<DoubtfulNote>& out, const Piano& piano, const PassTable& table, const Evenness& evenness,
                 KeyColour colour, const Ratio& ratio) {
    std::vector<Residual> residuals;
    std::vector<double> plain;
    for (int n = 1; n <= piano.notes; ++n) {
        const NoteNumber note{n};
        if (colourOf(note, piano) != colour) continue;
        const EscapementReading reading = escapementAt(piano, table, note);
        if (!reading.complete()) continue;
        residuals.push_back(residualOf(piano, table, note, reading, ratio));
        if (!reading.letOffBound && !reading.aftertouchBound) plain.push_back(residuals.back().r);
    }
    const auto scale = plain.size() >= kFewestForZ ? robustScale(plain) : std::nullopt;
    for (const Residual& each : residuals)
        if (alarms(each, scale ? scale->modifiedZ(each.r) : std::nullopt))
            out.push_back({each.note, "relation", suspectOf(piano, table, evenness, each, ratio.value), each.r});
}

struct Forbidden {
    std::string_view why;
    DimensionId less, more; // less < more must hold
};

constexpr std::array kForbidden = {
    Forbidden{"let-off-beyond-blow", dimension::letOff, dimension::blow},
    Forbidden{"check-beyond-blow", dimension::checking, dimension::blow},
    Forbidden{"damper-start-beyond-blow", dimension::damperStart, dimension::blow},
    Forbidden{"check-inside-let-off", dimension::letOff, dimension::checking},
    Forbidden{"up-weight-beyond-down-weight", dimension::upWeight, dimension::downWeight},
};

/// Of two readings that exclude each other, the one that stands farther from its neighbours in its own uncertainty.
DimensionId odder(const Piano& piano, const Evenness& evenness, NoteNumber note, DimensionId a, DimensionId b) {
    const auto oddness = [&](DimensionId id) {
        const Unevenness* found = evenness.at({note, id});
        return found ? std::abs(found->residual) / toTrade(uncertaintyOf(id, piano), row(id).kind) : 0.0;
    };
    return oddness(b) > oddness(a) ? b : a;
}

void addForbidden(std::vector<DoubtfulNote>& out, const Piano& piano, const PassTable& table,
                  const Evenness& evenness) {
    for (int n = 1; n <= piano.notes; ++n) {
        const NoteNumber note{n};
        for (const Forbidden& rule : kForbidden) {
            const auto less = table.value({note, rule.less});
            const auto more = table.value({note, rule.more});
            if (less && more && *less >= *more)
                out.push_back({note, rule.why, odder(piano, evenness, note, rule.less, rule.more), *less - *more});
        }
        const auto drop = table.value({note, dimension::drop});
        if (drop && *drop < 0) out.push_back({note, "drop-inside-let-off", dimension::drop, *drop});
    }
}

} // namespace

std::vector<DoubtfulNote> doubtfulNotes(const Piano& piano, const PassTable& table, const Evenness& evenness,
                                        const std::array<Ratio, 2>& ratio) {
    std::vector<DoubtfulNote> out;
    for (const KeyColour colour : {KeyColour::natural, KeyColour::sharp})
        addRelation(out, piano, table, evenness, colour, ratio[static_cast<std::size_t>(colour)]);
    addForbidden(out, piano, table, evenness);
    std::stable_sort(out.begin(), out.end(),
                     [](const DoubtfulNote& a, const DoubtfulNote& b) { return a.note < b.note; });
    return out;
}

} // namespace hammerline
