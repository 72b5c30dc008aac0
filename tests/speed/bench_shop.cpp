// What thirty virtual pianos of one make in one shop teach one another: error of the first guess and after a trial,
// minutes until done; each piano taught by those before it, and the same pianos without. NAME VALUE UNIT goal GOAL
// ok|short.
#include "tests/virtual_action/shop.h"

#include <fmt/format.h>

#include <algorithm>

using namespace virtual_action;

namespace {

constexpr Shop kShop{.pianos = 30, .work = Work::wholeJob, .firstSeed = 1, .make = 1};
constexpr std::size_t kFirstCounted = 10; // the pianos from here on have others to learn from

template <class Of>
double mean(const std::vector<ShopPiano>& shop, Of of) {
    double sum = 0;
    for (std::size_t i = kFirstCounted; i < shop.size(); ++i)
        sum += of(shop[i]);
    return sum / static_cast<double>(shop.size() - kFirstCounted);
}

void line(std::string_view name, double taught, double plain, double goal) {
    const double ratio = taught / plain;
    fmt::print("# {}: {:.3g} taught, {:.3g} without\n", name, taught, plain);
    fmt::print("shop-{}-over-without {:.3g} ratio goal {:g} {}\n", name, ratio, goal, ratio <= goal ? "ok" : "short");
}

} // namespace

int main() {
    const auto plain = workThrough(kShop, false), taught = workThrough(kShop, true);
    const auto both = [&](std::string_view name, double goal, auto of) {
        line(name, mean(taught, of), mean(plain, of), goal);
    };
    both("guess-error-let-off", 1, [](const ShopPiano& p) { return p.guesses[0].error(); });
    both("guess-error-capstan", 1, [](const ShopPiano& p) { return p.guesses[1].error(); });
    both("guess-sd-let-off", 1, [](const ShopPiano& p) { return p.guesses[0].sd; });
    both("after-trial-error-let-off", 1, [](const ShopPiano& p) { return p.guesses[0].errorOfTrial(); });
    both("after-trial-sd-let-off", 1, [](const ShopPiano& p) { return p.guesses[0].learnedSd; });
    both("minutes", 1.02, [](const ShopPiano& p) { return p.played.minutes.all(); });
    const double numbers = mean(taught, [](const ShopPiano& p) { return p.guesses[0].number ? 1.0 : 0.0; });
    const double without = mean(plain, [](const ShopPiano& p) { return p.guesses[0].number ? 1.0 : 0.0; });
    fmt::print("# one trial is enough for a number of turns: {:.0f} % taught, {:.0f} % without\n", 100 * numbers,
               100 * without);
}
