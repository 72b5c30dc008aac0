// The two players that go by the handbook (computation 13).
#include "tests/virtual_action/players.h"

#include <algorithm>
#include <functional>
#include <set>

namespace virtual_action {

using namespace hammerline;

namespace {

constexpr double kCapstanCap = 0.5, kLetOffCap = 0.25; // turns a go (bench-practice 2.5)
constexpr double kCapstanTrial = 0.25, kLetOffTrial = 0.125;
constexpr double kRailFactor = 1.28;
constexpr double kGrandTrial = 0.125, kGrandCap = 0.25;
constexpr std::array kTrialNotes = {20, 45, 70};
constexpr int kMostGoes = 6;
constexpr int kMostReadings = 3;  // of a doubtful cell since it was last touched
constexpr double kMissing = 0.1;  // mm of aftertouch that the dip could not give
constexpr double kUsualRatio = 5; // hammer to key, as every handbook has it
constexpr double kSunk = 0.5;     // mm: a smooth hump that is shimmed as one

double middle(std::vector<double> x) {
    std::sort(x.begin(), x.end());
    return x.empty() ? 0 : (x[(x.size() - 1) / 2] + x[x.size() / 2]) / 2;
}

/// A kind of screw: what a turn does, once three notes have told it.
struct Screw {
    DimensionId dimension;
    OperationId operation;
    double trial, cap;
    double sign;        // of the change of the dimension by a positive turn
    double least, most; // mm a turn: what a trial is believed to show (bench-practice 2.5, twice the band)
    std::optional<double> perTurn;
};

/// What is written down of a cell since it was last disturbed.
struct Read {
    double mean = 0;
    int times = 0;
};

class Handbook {
public:
    Handbook(Workshop& workshop, const SpecSheet& sheet, bool economical)
        : m_shop(workshop), m_zones(sheet, workshop.piano()), m_economical(economical) {
        if (m_vertical) return;
        m_capstan = {dimension::blow, operation::capstanTurn, kGrandTrial, kGrandCap, -1, 5, 20, {}};
    }

    Played play() {
        shimSunkRail();
        for (m_pass = 1; m_pass <= kMostPasses && !m_played.finished; ++m_pass) {
            m_worked = false;
            m_played.passes = m_pass;
            pass();
            if (!m_worked) break;
        }
        m_played.minutes = m_shop.minutes();
        return m_played;
    }

private:
    void pass() {
        const std::vector<std::function<void()>> order = {
            [&] {
                if (m_vertical) setBlow();
            },
            [&] { setHeight(dimension::keyHeight); },
            [&] { setHeight(dimension::sharpHeight); },
            [&] { setScrew(m_capstan); }, // a grand's set the blow
            [&] { setScrew(m_letOff); },
            [&] { setDip(); },
            [&] { setAftertouch(); },
            [&] { setChecks(); },
        };
        for (const auto& step : order) {
            step();
            m_shop.playIn();
            const Standing now = standing(m_shop.action(), m_zones);
            m_played.nearly = now.nearlyDone();
            if (now.done()) {
                m_played.finished = true;
                return;
            }
        }
    }

    // --- reading
    bool fitted(Cell cell) const { return hammerline::fitted(cell.dimension, cell.note, m_shop.piano()); }
    double nominal(Cell cell) const { return mmOf(m_zones.at(cell)->nominal); }
    double excess(Cell cell) const { return m_read.at(cell).mean - nominal(cell); }
    bool outside(Cell cell) const {
        const double x = m_read.at(cell).mean;
        return x < mmOf(*m_zones.at(cell)->low) || x > mmOf(*m_zones.at(cell)->high);
    }
    /// Nearer than one u to a limit, on whichever side of it.
    bool doubtful(Cell cell) const {
        const double u = mmOf(uncertaintyOf(cell.dimension, m_shop.piano())), x = m_read.at(cell).mean;
        const auto near = [&](std::int64_t limit) { return std::abs(x - mmOf(limit)) < u; };
        return near(*m_zones.at(cell)->low) || near(*m_zones.at(cell)->high);
    }
    /// One more reading; what nobody touched since is the mean of all its readings.
    void readOnce(Cell cell) {
        Read& read = m_read[cell];
        if (m_disturbed.erase(cell) > 0) read = {};
        ++read.times;
        read.mean += (*m_shop.read(cell) - read.mean) / read.times;
    }
    /// A reading, and where it leaves a doubt another.
    void look(Cell cell) {
        readOnce(cell);
        while (doubtful(cell) && m_read.at(cell).times < kMostReadings)
            readOnce(cell);
    }
    /// Whether the economical player reads it again: disturbed since, or doubtful.
    bool worthReading(Cell cell) const {
        if (!m_read.count(cell) || m_disturbed.count(cell)) return true;
        return doubtful(cell);
    }
    void readAll(DimensionId id) {
        for (int note = 1; note <= m_shop.piano().notes; ++note) {
            const Cell cell{NoteNumber{note}, id};
            if (fitted(cell) && (!m_economical || worthReading(cell))) look(cell);
        }
    }
    std::vector<int> outsideNotes(DimensionId id) const {
        std::vector<int> notes;
        for (int note = 1; note <= m_shop.piano().notes; ++note)
            if (const Cell cell{NoteNumber{note}, id}; fitted(cell) && outside(cell)) notes.push_back(note);
        return notes;
    }
    void disturb(OperationId operation, int note) {
        m_worked = true;
        for (const DimensionId id : row(operation).disturbs)
            if (const Cell cell{NoteNumber{note}, id}; fitted(cell)) m_disturbed.insert(cell);
    }
    /// Works what is outside, reads it again, and goes once more.
    void twice(DimensionId id, const std::function<void(const std::vector<int>&)>& work) {
        for (int go = 0; go < 2; ++go) {
            const std::vector<int> notes = outsideNotes(id);
            if (notes.empty()) return;
            work(notes);
            if (go == 0)
                for (const int note : notes)
                    look({NoteNumber{note}, id});
        }
    }

    // --- common work
    void shimSunkRail() {
        readAll(dimension::keyHeight);
        std::vector<int> notes;
        std::vector<double> low;
        for (const auto& [cell, height] : m_read) {
            notes.push_back(cell.note.value);
            low.push_back(-height.mean);
        }
        std::map<int, double> smooth;
        double deepest = 0;
        for (std::size_t i = 0; i < low.size(); ++i) {
            const std::size_t from = i > 3 ? i - 3 : 0, to = std::min(low.size(), i + 4);
            smooth[notes[i]] = middle(
                {low.begin() + static_cast<std::ptrdiff_t>(from), low.begin() + static_cast<std::ptrdiff_t>(to)});
            deepest = std::max(deepest, smooth[notes[i]]);
        }
        if (deepest < kSunk) return;
        std::map<int, double> shims;
        for (int i = 0; i < 8; ++i) {
            const int screw = 1 + i * (m_shop.piano().notes - 1) / 7;
            shims[screw] = std::max(0.0, between(smooth, screw)) / m_shop.piano().armsOf(KeyColour::natural).lever();
        }
        m_shop.shimBalanceRail(shims);
        for (int note = 1; note <= m_shop.piano().notes; ++note)
            disturb(operation::balanceRailShim, note);
    }

    void setBlow() {
        readAll(dimension::blow);
        const int notes = m_shop.piano().notes;
        const auto many = [&] { return outsideNotes(dimension::blow).size() > static_cast<std::size_t>(notes) / 8; };
        for (int go = 0; go < 2 && many(); ++go) {
            padRail();
            readAllAgain(dimension::blow);
        }
        twice(dimension::blow, [&](const std::vector<int>& out) {
            for (const int note : out) {
                m_shop.shimRailCloth(note, excess({NoteNumber{note}, dimension::blow}) / kRailFactor);
                disturb(operation::railClothShim, note);
            }
        });
    }
    /// Pads at the brackets so that the line through the ends of each piece lies at the aim.
    void padRail() {
        const Piano& piano = m_shop.piano();
        std::map<int, double> pads;
        for (std::size_t piece = 0; piece < piano.restRail.size(); ++piece) {
            const NoteRange range = piano.restRail[piece];
            const int half = (range.last - range.first + 1) / 2;
            std::vector<double> bass, treble;
            for (int note = range.first; note <= range.last; ++note)
                (note < range.first + half ? bass : treble).push_back(excess({NoteNumber{note}, dimension::blow}));
            // medians of the halves stand at their middles
            const double slope = (middle(treble) - middle(bass)) / half;
            const double start = middle(bass) - slope * half / 2;
            for (const int bracket : piano.brackets.at(piece))
                pads[bracket] = (start + slope * (bracket - range.first)) / kRailFactor;
        }
        m_shop.padRail(pads);
        for (int note = 1; note <= piano.notes; ++note)
            disturb(operation::restRailShim, note);
    }
    void readAllAgain(DimensionId id) {
        for (int note = 1; note <= m_shop.piano().notes; ++note)
            if (const Cell cell{NoteNumber{note}, id}; fitted(cell)) look(cell);
    }

    // --- note by note
    void setHeight(DimensionId id) {
        readAll(id);
        twice(id, [&](const std::vector<int>& notes) {
            std::map<int, double> punchings;
            for (const int note : notes) {
                const KeyArms& arms = m_shop.piano().armsOf(colourOf(NoteNumber{note}, m_shop.piano()));
                punchings[note] = -excess({NoteNumber{note}, id}) / arms.lever();
                disturb(operation::balancePunching, note);
            }
            m_shop.punchBalance(punchings);
        });
    }

    void turn(const Screw& screw, int note, double turns) {
        if (screw.operation == operation::capstanTurn)
            m_shop.turnCapstan(note, turns);
        else
            m_shop.turnLetOff(note, turns);
        disturb(screw.operation, note);
    }
    void tryScrew(Screw& screw, const std::vector<int>& out) {
        double answers = 0;
        int tried = 0;
        for (const int customary : kTrialNotes) {
            // the note outside that is nearest to the customary place
            const int note = *std::min_element(out.begin(), out.end(), [&](int a, int b) {
                return std::abs(a - customary) < std::abs(b - customary);
            });
            const Cell cell{NoteNumber{note}, screw.dimension};
            const double before = m_read.at(cell).mean, toward = excess(cell) * screw.sign > 0 ? -1 : 1;
            turn(screw, note, toward * screw.trial);
            look(cell);
            answers += (m_read.at(cell).mean - before) / (toward * screw.trial);
            ++tried;
        }
        screw.perTurn = screw.sign * std::clamp(screw.sign * answers / tried, screw.least, screw.most);
    }
    void setScrew(Screw& screw) {
        readAll(screw.dimension);
        const std::vector<int> out = outsideNotes(screw.dimension);
        if (!screw.perTurn && !out.empty()) tryScrew(screw, out);
        twice(screw.dimension, [&](const std::vector<int>& notes) {
            for (const int note : notes) {
                const Cell cell{NoteNumber{note}, screw.dimension};
                for (int go = 0; go < kMostGoes; ++go) {
                    const double wanted = -excess(cell) / *screw.perTurn;
                    turn(screw, note, std::clamp(wanted, -screw.cap, screw.cap));
                    if (std::abs(wanted) <= screw.cap) break;
                    look(cell); // the cap: look, then on
                    if (!outside(cell)) break;
                }
            }
        });
    }

    void punchFront(int note, double mm) {
        m_shop.punchFront(note, mm);
        disturb(operation::frontPunching, note);
    }
    double dipPerFront(int note) const {
        const KeyArms& arms = m_shop.piano().armsOf(colourOf(NoteNumber{note}, m_shop.piano()));
        return arms.F() / arms.P();
    }
    void setDip() {
        readAll(dimension::keyDip);
        twice(dimension::keyDip, [&](const std::vector<int>& notes) {
            for (const int note : notes)
                punchFront(note, excess({NoteNumber{note}, dimension::keyDip}) / dipPerFront(note));
        });
    }
    /// Dip stays so far inside its zone that the gauge cannot be wrong about it; what it cannot give, the let-off gives
    /// inside its own.
    void setAftertouch() {
        readAll(dimension::aftertouch);
        twice(dimension::aftertouch, [&](const std::vector<int>& notes) {
            for (const int note : notes)
                setAftertouchOf(note);
        });
    }
    double inside(Cell cell, double wanted) const {
        const double u = mmOf(uncertaintyOf(cell.dimension, m_shop.piano()));
        const double low = mmOf(*m_zones.at(cell)->low), high = mmOf(*m_zones.at(cell)->high);
        const double margin = std::min(u, 0.35 * (high - low));
        return std::clamp(wanted, low + margin, high - margin);
    }
    void setAftertouchOf(int note) {
        const Cell after{NoteNumber{note}, dimension::aftertouch}, dip{NoteNumber{note}, dimension::keyDip};
        if (m_disturbed.count(dip)) look(dip);
        const double kept = inside(dip, m_read.at(dip).mean - excess(after));
        const double change = m_read.at(dip).mean - kept, missing = -excess(after) + change;
        if (std::abs(change) > 0.05) punchFront(note, change / dipPerFront(note));
        // letting off farther from the string, and less lost motion, leave more of the dip for after it
        const double byLetOff = giveBy(m_letOff, note, missing, kUsualRatio);
        giveBy(m_capstan, note, missing - byLetOff, m_vertical ? -1 : -kUsualRatio);
    }
    /// Turns a screw inside the zone of its dimension toward what the aftertouch misses; `perAftertouch` mm of it for
    /// one of aftertouch. What it gives.
    double giveBy(const Screw& screw, int note, double missing, double perAftertouch) {
        const Cell cell{NoteNumber{note}, screw.dimension};
        if (std::abs(missing) < kMissing || !screw.perTurn || !m_read.count(cell)) return 0;
        if (m_disturbed.count(cell)) look(cell);
        const double now = m_read.at(cell).mean, then = inside(cell, now + missing * perAftertouch);
        turn(screw, note, std::clamp((then - now) / *screw.perTurn, -screw.cap, screw.cap));
        look(cell);
        return (m_read.at(cell).mean - now) / perAftertouch;
    }
    void setChecks() {
        readAll(dimension::checking);
        twice(dimension::checking, [&](const std::vector<int>& notes) {
            for (const int note : notes) {
                m_shop.nearCheck(note, excess({NoteNumber{note}, dimension::checking}));
                disturb(operation::checkBend, note);
            }
        });
    }

    Workshop& m_shop;
    Zones m_zones;
    bool m_economical;
    bool m_vertical = m_shop.piano().vertical();
    bool m_worked = false;
    int m_pass = 0;
    Played m_played;
    std::map<Cell, Read> m_read;
    std::set<Cell> m_disturbed;
    Screw m_capstan{dimension::lostMotion, operation::capstanTurn, kCapstanTrial, kCapstanCap, -1, 0.8, 4, {}};
    Screw m_letOff{dimension::letOff, operation::letOffTurn, kLetOffTrial, kLetOffCap, 1, 2, 12, {}};
};

} // namespace

Played playGoodHandbook(Workshop& workshop, const SpecSheet& sheet) {
    return Handbook(workshop, sheet, false).play();
}

Played playEconomicalHandbook(Workshop& workshop, const SpecSheet& sheet) {
    return Handbook(workshop, sheet, true).play();
}

} // namespace virtual_action
