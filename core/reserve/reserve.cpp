#include "core/reserve/reserve.h"

#include <algorithm>
#include <cmath>

namespace hammerline {

namespace {

struct ReserveName {
    ReserveOf of;
    std::string_view key;
};
constexpr std::array kReserveNames = {
    ReserveName{ReserveOf::capstanThread, "capstan-thread"}, ReserveName{ReserveOf::hammerFelt, "hammer-felt"},
    ReserveName{ReserveOf::frontPaper, "front-paper"}, ReserveName{ReserveOf::balanceCard, "balance-card"},
    ReserveName{ReserveOf::letOffThread, "let-off-thread"}};
constexpr std::array kReserveFroms = {std::string_view{"nothing"}, std::string_view{"reading"},
                                      std::string_view{"set-up"}, std::string_view{"work"}, std::string_view{"survey"}};

constexpr std::array kCustomaryRounds = {
    CustomaryRound{ReserveOf::capstanThread, 2.0, "common practice, no source"},
    CustomaryRound{ReserveOf::hammerFelt, 0.5, "common practice, no source"},
    CustomaryRound{ReserveOf::frontPaper, 0.3, "common practice, no source; dip that felts take in a settling"},
    CustomaryRound{ReserveOf::balanceCard, 0.2, "common practice, no source; 0.5 mm at the key's front"},
    CustomaryRound{ReserveOf::letOffThread, 0.5, "common practice, no source"},
};
constexpr double kThirdOfFelt = 1.0 / 3; // may come off in all; common practice, no source
constexpr double kSoundThread = 2;       // turns either way of a let-off screw that was tried; common practice
constexpr double kHair = 1e-9;           // of floor(): 2.0 / 0.5 is four rounds

/// A place in the history: acts are numbered in a book; records made without one go by the pass.
struct Since {
    std::int64_t order = 0;
    int pass = 0;
    bool before(const Done& done) const {
        const bool numbered = order > 0 && done.order > 0;
        return numbered ? done.order > order : done.pass >= pass;
    }
    bool before(const Finding& finding) const { return finding.order > order; }
};

/// The newest reading of a cell that is a plain number, trade units.
struct Newest {
    double value = 0;
    Since since;
};
std::optional<Newest> newest(const PianoRecord& record, Cell cell) {
    for (auto pass = record.passes.rbegin(); pass != record.passes.rend(); ++pass) {
        const Measured* measured = pass->at(cell);
        const auto count = measured ? measured->value() : std::nullopt;
        if (!count) continue;
        const bool standing = pass->referenceOf(cell.dimension) == "standing-out";
        if (standing && !record.piano.capstanLength) continue; // how much is in the wood nobody can say
        const std::int64_t known = standing ? record.piano.capstanLength->nm - *count : *count;
        return Newest{toTrade(known, row(cell.dimension).kind), {measured->order(), pass->number}};
    }
    return std::nullopt;
}

/// Work of one operation at one note: by round (the pass it follows) and in all. Amounts signed as the operation's.
struct WorkedAt {
    double net = 0, forward = 0; // forward: the positive amounts alone
    int toAim = 0;               // without an amount
    double largestRound = 0;
};
WorkedAt workedAt(const PianoRecord& record, OperationId operation, NoteNumber note, const Since& since) {
    WorkedAt out;
    std::map<int, double> rounds;
    for (const Done& done : record.done) {
        const bool here = std::ranges::find(done.notes, note) != done.notes.end();
        if (done.operation != operation || !here) continue;
        const auto own = done.amounts.find(note.value);
        const std::optional<double> amount = own != done.amounts.end() ? std::optional(own->second) : done.amount;
        if (amount) rounds[done.pass] += std::abs(*amount);
        if (!since.before(done)) continue;
        if (!amount) ++out.toAim;
        out.net += amount.value_or(0);
        out.forward += std::max(0.0, amount.value_or(0));
    }
    for (const auto& [pass, sum] : rounds)
        out.largestRound = std::max(out.largestRound, sum);
    return out;
}

Reserve emptyReserve(ReserveOf of, NoteNumber note) {
    Reserve out;
    out.of = of;
    out.note = note;
    out.perRound = customaryRound(of).amount;
    return out;
}

Reserve counted(Reserve reserve, double left, ReserveFrom from) {
    reserve.left = std::max(0.0, left);
    reserve.rounds = static_cast<int>(std::floor(*reserve.left / reserve.perRound + kHair));
    reserve.from = from;
    return reserve;
}

/// mm that a turn lifts the capstan, on the safe side: its effect at the key's front, one standard deviation more, over
/// F/C.
double liftOfTurn(const PianoRecord& record, KeyColour colour) {
    const Piano& piano = record.piano;
    const std::array ratio = {piano.ratio[0].value_or(defaultRatio(piano, KeyColour::natural)),
                              piano.ratio[1].value_or(defaultRatio(piano, KeyColour::sharp))};
    for (const Response& response : firstResponses(piano, ratio)) {
        const bool ours = response.operation == operation::capstanTurn && response.keys.value_or(colour) == colour;
        if (!ours) continue;
        for (const Effect& effect : response.effects)
            if (effect.dimension == dimension::aftertouch)
                return (std::abs(effect.perUnit) + effect.sd) / keyLever(piano.armsOf(colour)).lostPerCapstan;
    }
    return 0;
}

std::optional<double> lowLimit(const Zones& zones, Cell cell) {
    const std::optional<Zone>& zone = zones.at(cell);
    if (!zone || !zone->low) return std::nullopt;
    return toTrade(*zone->low, row(cell.dimension).kind);
}

Reserve capstanThread(const PianoRecord& record, const Zones& zones, NoteNumber note) {
    Reserve out = emptyReserve(ReserveOf::capstanThread, note);
    const Cell cell{note, dimension::capstanReserve};
    const auto limit = lowLimit(zones, cell);
    if (!limit) return out;
    const auto read = newest(record, cell);
    const std::optional<Length>& said = record.piano.capstanReserve;
    const double lift = liftOfTurn(record, colourOf(note, record.piano));
    const WorkedAt worked = workedAt(record, operation::capstanTurn, note, read ? read->since : Since{});
    const double round = toTrade(zones.at(cell)->nominal, Kind::length) - *limit;
    out.perRound = std::max(round > 0 ? round : out.perRound, worked.largestRound * lift);
    if (!read && !said) {
        out.toRead = dimension::capstanReserve;
        return out;
    }
    const double thread = read ? read->value : said->mm();
    const double used = worked.forward * lift + worked.toAim * out.perRound;
    return counted(out, thread - used - *limit, read ? ReserveFrom::reading : ReserveFrom::setUp);
}

/// Filed at the note: in all, and since the reading; `hammer`: when it came, if it is not the old one.
struct FeltGone {
    double inAll = 0, since = 0;
    std::int64_t hammer = -1;
};
FeltGone feltGone(const PianoRecord& record, NoteNumber note, const Since& reading) {
    FeltGone gone;
    for (const Finding& finding : record.findings) {
        const bool here = !finding.note || *finding.note == note;
        const bool done = finding.part == "hammer-head" && finding.state == FindingState::mended;
        if (!here || !done) continue;
        if (finding.remedy == "reshape") {
            gone.inAll += finding.amount;
            gone.since += reading.before(finding) ? finding.amount : 0;
        } else if (finding.remedy.starts_with("replace")) {
            gone.hammer = std::max(gone.hammer, finding.order);
        }
    }
    return gone;
}

/// The most that was ever read over the wood of this hammer, mm.
double thickestRead(const PianoRecord& record, Cell cell, std::int64_t hammer) {
    double most = 0;
    for (const Pass& pass : record.passes) {
        const Measured* measured = pass.at(cell);
        const auto count = measured ? measured->value() : std::nullopt;
        const bool ofThisHammer = measured && measured->order() > hammer;
        if (count && ofThisHammer) most = std::max(most, toTrade(*count, row(cell.dimension).kind));
    }
    return most;
}

/// Every filing pass that the book knows counts; what was read once tells of those before it.
Reserve hammerFelt(const PianoRecord& record, const Zones& zones, NoteNumber note) {
    Reserve out = emptyReserve(ReserveOf::hammerFelt, note);
    const Cell cell{note, dimension::feltLeft};
    const auto limit = lowLimit(zones, cell);
    const auto read = newest(record, cell);
    const FeltGone gone = read ? feltGone(record, note, read->since) : FeltGone{};
    const bool ofAnother = read && gone.hammer > read->since.order;
    if (!limit || !read || ofAnother) {
        out.toRead = dimension::feltLeft;
        return out;
    }
    const double now = read->value - gone.since;
    const double whole = std::max(now + gone.inAll, thickestRead(record, cell, gone.hammer));
    const double ofThird = now - whole * (1 - kThirdOfFelt);
    return counted(out, std::min(now - *limit, ofThird), ReserveFrom::reading);
}

/// What was put in and can be taken out again.
Reserve putIn(const PianoRecord& record, ReserveOf of, OperationId operation, NoteNumber note) {
    Reserve out = emptyReserve(of, note);
    const WorkedAt worked = workedAt(record, operation, note, {});
    out.perRound = std::max(out.perRound, worked.largestRound);
    if (worked.net <= 0) return out;
    return counted(out, worked.net - worked.toAim * out.perRound, ReserveFrom::work);
}

Reserve letOffThread(const PianoRecord& record, NoteNumber note) {
    Reserve out = emptyReserve(ReserveOf::letOffThread, note);
    out.turns = true;
    const Finding* look = standingAt("let-off-screw", note, record.findings);
    const bool tried = look && look->state == FindingState::sound;
    const WorkedAt worked = workedAt(record, operation::letOffTurn, note, {look ? look->order : 0, 0});
    out.perRound = std::max(out.perRound, worked.largestRound);
    if (!tried) return out;
    return counted(out, kSoundThread - std::abs(worked.net) - worked.toAim * out.perRound, ReserveFrom::survey);
}

bool hasThread(const Piano& piano) {
    return piano.capstan != Capstan::fixed;
}

} // namespace

std::string_view key(ReserveOf of) {
    return std::ranges::find(kReserveNames, of, &ReserveName::of)->key;
}
std::string_view key(ReserveFrom from) {
    return kReserveFroms[static_cast<std::size_t>(from)];
}

const CustomaryRound& customaryRound(ReserveOf of) {
    return *std::ranges::find(kCustomaryRounds, of, &CustomaryRound::of);
}

std::vector<Reserve> reservesAt(const PianoRecord& record, const Zones& zones, NoteNumber note) {
    std::vector<Reserve> out;
    if (!record.piano.contains(note)) return out;
    if (hasThread(record.piano)) out.push_back(capstanThread(record, zones, note));
    out.push_back(hammerFelt(record, zones, note));
    out.push_back(putIn(record, ReserveOf::frontPaper, operation::frontPunching, note));
    out.push_back(putIn(record, ReserveOf::balanceCard, operation::balancePunching, note));
    if (applies(operation::letOffTurn, record.piano)) out.push_back(letOffThread(record, note));
    return out;
}

std::vector<LeastReserve> leastReserves(const PianoRecord& record, const Zones& zones) {
    std::map<ReserveOf, LeastReserve> least;
    const auto fewer = [](const Reserve& a, const Reserve& b) {
        if (!a.rounds || !b.rounds) return a.rounds.has_value() && !b.rounds;
        return *a.left / a.perRound < *b.left / b.perRound;
    };
    for (int n = 1; n <= record.piano.notes; ++n)
        for (const Reserve& each : reservesAt(record, zones, {n})) {
            LeastReserve& here = least.try_emplace(each.of, LeastReserve{each, 0}).first->second;
            if (fewer(each, here.reserve)) here.reserve = each;
            here.known += each.rounds ? 1 : 0;
        }
    std::vector<LeastReserve> out;
    for (const auto& [of, each] : least)
        out.push_back(each);
    return out;
}

} // namespace hammerline
