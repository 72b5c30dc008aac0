#include "tests/virtual_action/action.h"

namespace virtual_action {

using namespace hammerline;

Action::Action(Piano piano, const SpecSheet& sheet, Wear how, std::uint64_t seed) : m_piano(std::move(piano)) {
    Chance chance(seed);
    build(chance, how.make);
    regulate(sheet, how.scatter, chance);
    wear(how.share, chance);
    if (how.scatter && how.share > 0) oddNotes(chance);
    fixLine();
}

std::optional<double> Action::truth(Cell cell) const {
    const int note = cell.note.value;
    if (note < 1 || note > m_piano.notes || !fitted(cell.dimension, cell.note, m_piano)) return {};
    const Note& n = m_notes[index(note)];
    const virtual_action::Reading r = readPerfectly(n.levers, n.settings);
    if (cell.dimension == dimension::keyHeight) return r.frontHeight - lineAt(note);
    if (cell.dimension == dimension::sharpHeight) {
        double naturals = 0;
        const std::vector<NoteNumber> neighbours = neighbouringNaturals(cell.note, m_piano);
        for (const NoteNumber each : neighbours)
            naturals +=
                readPerfectly(m_notes[index(each.value)].levers, m_notes[index(each.value)].settings).frontHeight;
        return r.frontHeight - naturals / static_cast<double>(neighbours.size());
    }
    const std::map<DimensionId, double> rest = {
        {dimension::keyDip, r.dip},        {dimension::lostMotion, r.lostMotion},
        {dimension::blow, r.blow},         {dimension::letOff, r.letOff},
        {dimension::drop, r.drop},         {dimension::aftertouch, r.aftertouch},
        {dimension::checking, r.checking}, {dimension::damperStart, r.damperStart}};
    const auto found = rest.find(cell.dimension);
    if (found == rest.end()) return {};
    return found->second;
}

void Action::fixLine() {
    std::vector<int> naturals;
    for (int note = 1; note <= m_piano.notes; ++note)
        if (colourOf(NoteNumber{note}, m_piano) == KeyColour::natural) naturals.push_back(note);
    const auto mean = [&](auto from) {
        double place = 0, height = 0;
        for (int i = 0; i < 3; ++i, ++from) {
            place += *from / 3.0;
            height += readPerfectly(m_notes[index(*from)].levers, m_notes[index(*from)].settings).frontHeight / 3;
        }
        return std::pair(place, height);
    };
    const auto [bassPlace, bass] = mean(naturals.begin());
    const auto [treblePlace, treble] = mean(naturals.end() - 3);
    m_lineSlope = (treble - bass) / (treblePlace - bassPlace);
    m_lineAt = bass - m_lineSlope * bassPlace;
}

double Action::lineAt(int note) const {
    return m_lineAt + m_lineSlope * note;
}

void Action::turnCapstan(int note, double turns) {
    Note& n = m_notes.at(index(note));
    n.settings.capstan += turns * n.capstanPitch;
    n.heelSinks = 0.01;
}

void Action::turnLetOff(int note, double turns) {
    Note& n = m_notes.at(index(note));
    // the jack's toe sits in the groove it made; turning the button brings it in and out of it
    const auto groove = [&](double t) { return n.groove * std::sin(6.283185307179586 * t); };
    n.settings.button -= turns * n.letOffPitch + groove(n.turned + turns) - groove(n.turned);
    n.turned += turns;
}

void Action::turnDrop(int note, double turns) {
    m_notes.at(index(note)).settings.dropStop -= turns * m_notes.at(index(note)).dropPitch;
}

void Action::punchBalance(int note, double mm) {
    Note& n = m_notes.at(index(note));
    n.settings.balance += mm;
    n.balanceSinks = 0.01;
}

void Action::punchFront(int note, double mm) {
    Note& n = m_notes.at(index(note));
    n.settings.frontStop += mm;
    n.frontSinks = 0.02;
}

void Action::shimRailCloth(int note, double mm) {
    m_notes.at(index(note)).settings.railPads += mm;
}

void Action::nearCheck(int note, double mm) {
    m_notes.at(index(note)).settings.checkNearer += mm;
}

void Action::bendSpoon(int note, double mm) {
    m_notes.at(index(note)).settings.spoonAngle -= mm;
}

void Action::padRail(const std::map<int, double>& atBrackets) {
    for (std::size_t piece = 0; piece < m_piano.restRail.size(); ++piece) {
        std::map<int, double> own;
        for (const int bracket : m_piano.brackets.at(piece))
            if (const auto found = atBrackets.find(bracket); found != atBrackets.end()) own.insert(*found);
        if (own.empty()) continue;
        for (int note = m_piano.restRail[piece].first; note <= m_piano.restRail[piece].last; ++note)
            m_notes.at(index(note)).settings.railPads += between(own, note);
    }
}

void Action::shimBalanceRail(const std::map<int, double>& atScrews) {
    for (int note = 1; note <= m_piano.notes; ++note)
        m_notes.at(index(note)).settings.balance += between(atScrews, note);
}

void Action::shimBackRail(double mm) {
    for (Note& note : m_notes)
        note.settings.backCloth += mm;
    fixLine();
}

void Action::playIn() {
    for (Note& note : m_notes) {
        note.settings.frontStop -= std::exchange(note.frontSinks, 0);
        note.settings.balance -= std::exchange(note.balanceSinks, 0);
        note.settings.heelCloth += std::exchange(note.heelSinks, 0);
    }
}

double between(const std::map<int, double>& places, int note) {
    if (places.empty()) return 0;
    const auto above = places.lower_bound(note);
    if (above == places.end()) return places.rbegin()->second;
    if (above == places.begin() || above->first == note) return above->second;
    const auto below = std::prev(above);
    const double share = static_cast<double>(note - below->first) / (above->first - below->first);
    return below->second + share * (above->second - below->second);
}

} // namespace virtual_action
