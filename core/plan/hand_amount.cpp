// Turns in words a hand can do (computation 9.5): no false precision, never beyond the cap of one go.
#include "core/plan/plan.h"

#include <algorithm>
#include <array>
#include <cmath>

namespace hammerline {

namespace {

constexpr std::array<std::string_view, 9> kAbout = {"",          "about-1/8", "about-1/4", "about-3/8", "about-1/2",
                                                    "about-5/8", "about-3/4", "about-7/8", "about-1"};
constexpr std::array<std::string_view, 9> kUnder = {"",          "under-1/8", "under-1/4", "under-3/8", "under-1/2",
                                                    "under-5/8", "under-3/4", "under-7/8", "under-1"};

struct Look {
    double cap;
    std::string_view words;
};
constexpr std::array kLooks = {Look{0.125, "1/8-look-then-on"}, Look{0.25, "1/4-look-then-on"},
                               Look{0.5, "1/2-look-then-on"}};
constexpr double kTouch = 0.75 / 8; // below this the hand only just feels it

} // namespace

std::string_view handAmount(double turns, double cap) {
    double amount = std::abs(turns);
    if (amount < 1e-9) return "";
    // A tenth over the cap is still the cap to a hand; beyond that the rest waits for a look.
    if (cap > 0 && amount > 1.1 * cap) {
        for (const Look& look : kLooks)
            if (cap <= look.cap + 1e-9) return look.words;
        return kLooks.back().words;
    }
    if (cap > 0) amount = std::min(amount, cap);
    if (amount < kTouch) return "touch";
    const double eighths = amount * 8;
    const auto whole = static_cast<std::size_t>(std::ceil(eighths - 0.16));
    if (whole >= kAbout.size()) return kLooks.back().words;
    return eighths > static_cast<double>(whole) - 0.3 ? kAbout[whole] : kUnder[whole];
}

} // namespace hammerline
