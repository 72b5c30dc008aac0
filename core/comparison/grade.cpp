// The names of the grades, and what a person says that no reading shows.
#include "core/comparison/comparison.h"

#include <algorithm>
#include <array>

namespace hammerline {

namespace {
constexpr std::array kDoubleStrikes = {std::string_view{"double-strike"}, std::string_view{"double-strike-one-note"}};
}

bool doubleStrikeReported(const PianoRecord& record, int number) {
    const Pass* pass = record.pass(number);
    return pass && std::any_of(record.symptoms.begin(), record.symptoms.end(), [&](const Symptom& each) {
               const bool strikes =
                   std::find(kDoubleStrikes.begin(), kDoubleStrikes.end(), each.key) != kDoubleStrikes.end();
               return strikes && each.order > pass->order;
           });
}

std::string_view key(Grade grade) {
    switch (grade) {
    case Grade::even:
        return "even";
    case Grade::goodForThisPiano:
        return "good-for-this-piano";
    case Grade::notYet:
        return "not-yet";
    }
    return {};
}

} // namespace hammerline
