#include "tests/virtual_action/shop.h"

#include "core/experience/experience.h"
#include "core/history/learned.h"

#include <algorithm>
#include <array>

namespace virtual_action {

using namespace hammerline;

namespace {

constexpr std::array kNotes = {12, 20, 27, 36, 44, 51, 60, 68}; // naturals of an upright of 88
constexpr std::array kTrialNotes = {20, 44, 68};
constexpr double kALittle = 0.05, kSlack = -0.6, kWhole = 1; // turns

/// How much the dimension changes for one turn, by the hidden levers: a capstan by a little, with lost motion to take
/// up; a let-off button by a whole turn, after which its felt's groove lies as before.
double truthOf(OperationId operation, Action action) {
    const bool capstan = operation == operation::capstanTurn;
    const DimensionId id = row(operation).serves;
    double sum = 0;
    for (const int note : kNotes) {
        const auto turn = [&](double turns) {
            capstan ? action.turnCapstan(note, turns) : action.turnLetOff(note, turns);
        };
        if (capstan) turn(kSlack);
        const double before = *action.truth({{note}, id});
        const double by = capstan ? kALittle : kWhole;
        turn(by);
        sum += std::abs(*action.truth({{note}, id}) - before) / by;
    }
    return sum / static_cast<double>(kNotes.size());
}

const Response* responseOf(OperationId operation, std::span<const Response> all) {
    const auto found = std::ranges::find_if(all, [&](const Response& each) { return each.operation == operation; });
    return found == all.end() ? nullptr : &*found;
}

/// Three let-off screws are turned and read on both sides, with the errors of gauge and hand.
PianoRecord tryLetOff(FirstGuess& guess, Action action, std::uint64_t seed) {
    constexpr OperationId kScrew = operation::letOffTurn;
    Workshop shop(action, {}, seed ^ 0x5EEDU);
    PianoRecord record;
    record.piano = action.piano();
    record.passes.resize(2);
    const auto read = [&](std::size_t pass) {
        record.passes[pass].number = static_cast<int>(pass) + 1;
        for (const int note : kTrialNotes) {
            hammerline::Reading reading;
            reading.count = fromTrade(*shop.read({{note}, dimension::letOff}), Kind::length);
            reading.order = static_cast<std::int64_t>(10 * pass) + 1;
            record.passes[pass].cells[{{note}, dimension::letOff}].trials = {reading};
        }
    };
    read(0);
    Done done;
    done.operation = kScrew;
    done.amount = firstTrialOf(kScrew, record.piano);
    done.pass = 1;
    done.order = 5;
    for (const int note : kTrialNotes) {
        shop.turnLetOff(note, *done.amount);
        done.notes.push_back({note});
    }
    record.done.push_back(done);
    read(1);
    const std::array ratio = {defaultRatio(record.piano, KeyColour::natural),
                              defaultRatio(record.piano, KeyColour::sharp)};
    const Learned learned = learn(record, ratio);
    const Effect& effect = responseOf(kScrew, learned.responses)->effects.front();
    guess.learned = std::abs(effect.perUnit);
    guess.learnedSd = effect.sd;
    guess.number = responseOf(kScrew, learned.responses)->learned;
    return record;
}

std::vector<FirstGuess> guessesAt(const Action& action, std::uint64_t seed, PianoRecord& tried) {
    const Piano& piano = action.piano();
    const std::array ratio = {defaultRatio(piano, KeyColour::natural), defaultRatio(piano, KeyColour::sharp)};
    const auto responses = firstResponses(piano, ratio);
    std::vector<FirstGuess> out;
    for (const OperationId operation : {operation::letOffTurn, operation::capstanTurn}) {
        const Response& response = *responseOf(operation, responses);
        FirstGuess guess{operation};
        guess.truth = truthOf(operation, action);
        guess.guess = std::abs(response.effects.front().perUnit);
        guess.sd = response.effects.front().sd;
        guess.low = guess.guess - 1.96 * guess.sd;
        guess.high = guess.guess + 1.96 * guess.sd;
        if (operation == operation::letOffTurn) tried = tryLetOff(guess, action, seed);
        out.push_back(guess);
    }
    return out;
}

} // namespace

std::vector<ShopPiano> workThrough(const Shop& shop, bool taught) {
    const SpecSheet sheet = *builtInSheet("upright");
    std::vector<Lesson> lessons;
    std::vector<ShopPiano> out;
    for (int i = 0; i < shop.pianos; ++i) {
        const std::uint64_t seed = shop.firstSeed + static_cast<std::uint64_t>(i);
        Piano piano = *makePiano(ActionKind::upright);
        if (taught) piano.taught = taughtBy(piano, {}, {}, lessons);
        Action action(piano, sheet, {.make = shop.make}, seed);
        ShopPiano of;
        PianoRecord record;
        of.guesses = guessesAt(action, seed, record);
        if (shop.work == Work::wholeJob) {
            Workshop workshop(action, {}, seed);
            of.played = playProgram(workshop, sheet);
            record = of.played.record;
        }
        record.uuid = std::to_string(seed);
        if (taught) lessons.push_back(lessonOf(record));
        out.push_back(std::move(of));
    }
    return out;
}

} // namespace virtual_action
