#include "core/stroke/drawn_note.h"

#include "core/judge/escapement.h"

#include <algorithm>

namespace hammerline {

namespace {

using kinematics::CannotDraw;

constexpr double kCustomaryChecking = 15; // mm; common practice, no source

class Places {
public:
    Places(const PassTable& table, const Zones& zones, NoteNumber note)
        : m_table(table), m_zones(zones), m_note(note) {}

    /// As read, else the aim.
    std::optional<double> of(DimensionId id) { return of(id, m_table.value({m_note, id})); }
    std::optional<double> of(DimensionId id, const std::optional<double>& read) {
        if (read) return read;
        const std::optional<Zone>& zone = m_zones.at({m_note, id});
        if (!zone) return std::nullopt;
        m_atAim.push_back(id);
        return toTrade(zone->nominal, Kind::length);
    }
    const std::vector<DimensionId>& atAim() const { return m_atAim; }

private:
    const PassTable& m_table;
    const Zones& m_zones;
    NoteNumber m_note;
    std::vector<DimensionId> m_atAim;
};

std::vector<DimensionId> readingsBehind(CannotDraw why, const Piano& piano) {
    using namespace dimension;
    switch (why) {
    case CannotDraw::blowTooLong:
        return {blow};
    case CannotDraw::letOffBeyond:
        return {letOff, blow};
    case CannotDraw::escapeOutside:
    case CannotDraw::linksDoNotMeet:
        break;
    }
    if (piano.vertical()) return {keyDip, lostMotion, blow, letOff};
    return {keyDip, blow, letOff};
}

} // namespace

tl::expected<DrawnNote, NotDrawn> drawnNote(const Piano& piano, const PassTable& table, const Zones& zones,
                                            const Ratio& ratio, NoteNumber note) {
    Places places(table, zones, note);
    // words as account and stroke take them: off its rail no way is lost, a note that blocks stands at the string
    const EscapementReading read = escapementAt(piano, table, note);
    const auto dip = places.of(dimension::keyDip, read.dip);
    const auto blow = places.of(dimension::blow, read.blow);
    const auto letOff = places.of(dimension::letOff, read.letOff);
    if (!dip || !blow || !letOff)
        return tl::unexpected(
            NotDrawn{CannotDraw::escapeOutside, {dimension::keyDip, dimension::blow, dimension::letOff}});
    kinematics::Distances mm{.dip = *dip, .blow = *blow, .letOff = *letOff};
    if (piano.vertical()) mm.lostMotion = std::max(0.0, places.of(dimension::lostMotion, read.lostMotion).value_or(0));
    mm.escapeAt = mm.lostMotion + (mm.blow - mm.letOff) / ratio.value;
    const bool saidToStay = read.aftertouchBound && mm.escapeAt <= mm.dip;
    if (saidToStay)
        return tl::unexpected(NotDrawn{CannotDraw::linksDoNotMeet, readingsBehind(CannotDraw::linksDoNotMeet, piano)});
    const bool checked = table.value({note, dimension::checking}).has_value();
    mm.checking = places.of(dimension::checking).value_or(kCustomaryChecking);
    if (!piano.vertical()) mm.drop = places.of(dimension::drop).value_or(0);
    const bool damped = fitted(dimension::damperStart, note, piano);
    if (damped) mm.damperStart = places.of(dimension::damperStart).value_or(0);
    const KeyArms& arms = piano.armsOf(colourOf(note, piano));
    auto placed = kinematics::Linkage::place(kinematics::typicalBuild(piano, arms), mm);
    if (!placed) return tl::unexpected(NotDrawn{placed.error(), readingsBehind(placed.error(), piano)});
    return DrawnNote{.linkage = *std::move(placed),
                     .atAim = places.atAim(),
                     .damperStirs = damped && mm.damperStart > 0,
                     .checks = checked};
}

} // namespace hammerline
