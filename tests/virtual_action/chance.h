// Chance that is the same on every machine: the standard's generators are, its distributions are not.
#pragma once

#include <cmath>
#include <cstdint>
#include <random>

namespace virtual_action {

class Chance {
public:
    explicit Chance(std::uint64_t seed) : m_engine(seed * 0x9E3779B97F4A7C15ULL + 0x1234567) {}
    /// Uniform in [low, high).
    double between(double low, double high) {
        return low + (high - low) * static_cast<double>(m_engine() >> 11) * 0x1.0p-53;
    }
    /// Normal with that standard deviation.
    double normal(double sd) {
        const double u = between(1e-16, 1), v = between(0, 1);
        return sd * std::sqrt(-2 * std::log(u)) * std::cos(6.283185307179586 * v);
    }
    bool one(double share) { return between(0, 1) < share; }

private:
    std::mt19937_64 m_engine;
};

} // namespace virtual_action
