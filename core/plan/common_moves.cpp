#include "core/plan/common_moves.h"

#include <algorithm>
#include <cmath>
#include <set>

namespace hammerline {

void carryOut(Bench& bench, const CommonMove& move) {
    for (const NoteNumber note : move.notes)
        if (const Response* response = bench.answers.at(move.operation, note))
            moveAt(bench.notes, bench.piano(), note, *response, amountBetween(move.amounts, note));
}

namespace {

constexpr double kLikely = 0.5;

/// What the notes that these moves reach would cost; the others cost the same before and after.
double minutesOfReached(const Bench& bench, CoreWork& work, std::span<const CommonMove> moves) {
    std::set<NoteNumber> reached;
    for (const CommonMove& move : moves)
        reached.insert(move.notes.begin(), move.notes.end());
    double minutes = 0;
    for (const NoteNumber note : reached)
        minutes += work.minutes(bench, note);
    return minutes;
}

double minutesOf(const Bench& bench, std::span<const CommonMove> moves) {
    double minutes = 0;
    for (const CommonMove& move : moves) {
        minutes += minutesFor(move.operation, bench.piano());
        minutes += minutesToReach(accessOf(move.operation, bench.piano()), bench.piano())[0];
    }
    return minutes;
}

} // namespace

void carryOutWhereCheaper(Bench& bench, CoreWork& work, std::span<const CommonMove> moves, bool wanted) {
    const double spent = minutesOf(bench, bench.common) + minutesOf(bench, moves);
    if (bench.options.minutes && spent > *bench.options.minutes) return;
    const std::vector<NoteState> before = bench.notes;
    const double alone = wanted ? 0 : minutesOfReached(bench, work, moves);
    for (const CommonMove& move : moves)
        carryOut(bench, move);
    if (!wanted && minutesOfReached(bench, work, moves) + minutesOf(bench, moves) >= alone) {
        bench.notes = before;
        return;
    }
    for (const CommonMove& move : moves) {
        for (const NoteNumber note : move.notes)
            bench.stand(note).cause = key(move.operation);
        bench.common.push_back(move);
    }
}

namespace {

/// The places that carry a shim of the balance or back rail; those a cause leaves out carry none, so that the taper
/// ends there.
std::map<int, double> tapered(const Bench& bench, std::map<int, double> amounts) {
    const Piano& piano = bench.piano();
    std::vector<int> places = piano.balanceScrews;
    if (places.empty())
        for (int i = 0; i < 8; ++i)
            places.push_back(1 + static_cast<int>(std::lround(i * (piano.notes - 1) / 7.0)));
    for (const int place : places)
        amounts.emplace(place, 0.0);
    return amounts;
}

std::vector<NoteNumber> movedNotes(const Bench& bench, const std::map<int, double>& amounts, NoteRange within) {
    std::vector<NoteNumber> notes;
    for (int n = std::max(within.first, 1); n <= std::min(within.last, bench.piano().notes); ++n)
        if (std::abs(amountBetween(amounts, {n})) > 1e-6) notes.push_back({n});
    return notes;
}

/// One shim per rail: places by note, the same where the cause gives one number.
CommonMove railMove(const Bench& bench, OperationId operation, const Cause& cause, std::optional<double> level) {
    CommonMove move{operation, {}, {}, std::string(cause.key)};
    const NoteRange all{1, bench.piano().notes};
    if (level)
        move.amounts = {{1, *level}, {all.last, *level}};
    else
        move.amounts = tapered(bench, cause.amounts);
    move.notes = movedNotes(bench, move.amounts, all);
    return move;
}

/// The rest rail by pieces: amounts at the brackets, each piece on its own.
std::vector<CommonMove> pieceMoves(const Bench& bench, const Cause& cause, std::optional<double> level) {
    std::vector<CommonMove> moves;
    const Piano& piano = bench.piano();
    for (std::size_t i = 0; i < piano.restRail.size(); ++i) {
        const NoteRange range = piano.restRail[i];
        CommonMove move{operation::restRailShim, {}, {}, std::string(cause.key)};
        std::vector<int> brackets = i < piano.brackets.size() ? piano.brackets[i] : std::vector<int>{};
        if (brackets.empty()) brackets = {range.first, range.last};
        for (const int bracket : brackets) {
            const auto given = cause.amounts.find(bracket);
            if (level)
                move.amounts[bracket] = *level;
            else if (given != cause.amounts.end())
                move.amounts[bracket] = given->second;
        }
        if (move.amounts.empty()) continue;
        move.notes = movedNotes(bench, move.amounts, range);
        if (!move.notes.empty()) moves.push_back(std::move(move));
    }
    return moves;
}

void hold(Bench& bench, const Cause& cause) {
    for (const Cell& cell : cause.explains) {
        bench.stand(cell.note).held.set(cell.dimension.row);
        bench.stand(cell.note).cause = cause.key;
    }
}

/// The reading at these notes says nothing, whether it lies inside its zone or not.
void holdAll(Bench& bench, const Cause& cause, DimensionId dimension) {
    for (const NoteNumber note : cause.notes) {
        bench.stand(note).held.set(dimension.row);
        bench.stand(note).cause = cause.key;
    }
}

void accept(Bench& bench, const Cause& cause, DimensionId dimension) {
    for (const NoteNumber note : cause.notes) {
        bench.stand(note).accepted.set(dimension.row);
        bench.stand(note).cause = cause.key;
    }
}

using Moves = std::vector<CommonMove>;
struct RemedyRow {
    std::string_view remedy;
    Moves (*moves)(Bench&, const Cause&);
    /// Carried out whatever single notes would cost: those cannot cure it (a sunk rail is not shimmed key by key; where
    /// the thread has run out no capstan goes up).
    bool alone = false;
};

/// What a remedy does. Not here: remedies that are the planner's own single work (capstans, turn-now), and those that a
/// person answers for outside regulating (replace-set, tighten-rail, inspect ...), whose cells are held.
constexpr std::array kRemedies = {
    RemedyRow{"balance-rail-shim",
              [](Bench& b, const Cause& c) {
                  return Moves{railMove(b, operation::balanceRailShim, c, c.amounts.empty() ? c.amount : std::nullopt)};
              },
              true},
    RemedyRow{"back-rail-shim",
              [](Bench& b, const Cause& c) {
                  return Moves{railMove(b, operation::backRailShim, c, c.amounts.empty() ? c.amount : std::nullopt)};
              }},
    RemedyRow{"rest-rail-shim",
              [](Bench& b, const Cause& c) { return pieceMoves(b, c, c.amounts.empty() ? c.amount : std::nullopt); }},
    RemedyRow{"restore-blow",
              [](Bench& b, const Cause& c) {
                  // On a grand each capstan sets its own blow again.
                  if (!b.piano().vertical() || !c.amount) return Moves{};
                  return pieceMoves(b, c, *c.amount / b.piano().railFactor);
              }},
    RemedyRow{"keep-blow",
              [](Bench& b, const Cause& c) {
                  accept(b, c, dimension::blow);
                  return Moves{};
              }},
    RemedyRow{"lengthen-blow",
              [](Bench& b, const Cause& c) {
                  if (!c.amount) return Moves{};
                  return pieceMoves(b, c, -std::min(*c.amount, c.beside.value_or(*c.amount)) / b.piano().railFactor);
              }},
    RemedyRow{"shims",
              [](Bench& b, const Cause& c) {
                  Moves moves;
                  if (c.amount) moves.push_back(railMove(b, operation::backRailShim, c, c.amount));
                  if (c.beside) moves.push_back(railMove(b, operation::balanceRailShim, c, c.beside));
                  return moves;
              },
              true},
    // A wippen that hangs on the player's finger has no lost motion of its own to be set.
    RemedyRow{"read-stack-out",
              [](Bench& b, const Cause& c) {
                  hold(b, c);
                  holdAll(b, c, dimension::lostMotion);
                  return Moves{};
              }},
    RemedyRow{"capstans", [](Bench&, const Cause&) { return Moves{}; }},
    RemedyRow{"turn-now", [](Bench&, const Cause&) { return Moves{}; }},
    // The dip that is missing is what the single work names as its conflict.
    RemedyRow{"needs-dip", [](Bench&, const Cause&) { return Moves{}; }},
};

} // namespace

void takeOnCauses(Bench& bench, CoreWork& work) {
    for (const Cause& cause : bench.causes) {
        const auto wanted = bench.options.accepted.find(std::string(cause.key));
        const bool asked = wanted != bench.options.accepted.end();
        if (!asked && cause.certainty < kLikely) continue;
        const std::string_view remedy =
            asked && !wanted->second.empty() ? std::string_view(wanted->second) : cause.remedy;
        if (remedy == "none") continue;
        const auto known =
            std::find_if(kRemedies.begin(), kRemedies.end(), [&](const RemedyRow& r) { return r.remedy == remedy; });
        if (!asked) // accepted means answered
            for (const std::string_view check : cause.checks)
                if (std::find(bench.askFirst.begin(), bench.askFirst.end(), check) == bench.askFirst.end())
                    bench.askFirst.push_back(check);
        if (known == kRemedies.end()) {
            hold(bench, cause);
            continue;
        }
        const Moves moves = known->moves(bench, cause);
        if (!moves.empty()) carryOutWhereCheaper(bench, work, moves, asked || known->alone);
    }
}

void holdSharps(Bench& bench) {
    int read = 0, deep = 0;
    for (int n = 1; n <= bench.piano().notes; ++n) {
        if (bench.colour({n}) == KeyColour::sharp) continue;
        const Judged* dip = bench.reviewed.at({{n}, dimension::keyDip});
        if (!dip || dip->verdict == Verdict::missing) continue;
        ++read;
        if (dip->verdict == Verdict::high) ++deep;
    }
    if (deep < 8 || deep * 2 < read) return;
    for (int n = 1; n <= bench.piano().notes; ++n) {
        if (bench.colour({n}) == KeyColour::natural) continue;
        for (const DimensionId id : {dimension::keyDip, dimension::sharpHeight, dimension::sharpProud})
            bench.stand({n}).held.set(id.row);
        bench.stand({n}).cause = "naturals-deep-first";
    }
}

} // namespace hammerline
