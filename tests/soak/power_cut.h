// A disk whose power may go at any moment, replayed from the calls that failing_calls.cpp wrote down. Of a file only
// what was synced is sure to be there, of a folder only the names that were there when it was synced (man 2 fsync).
#pragma once

#include <cstdint>
#include <filesystem>
#include <functional>
#include <map>
#include <set>
#include <string>

namespace hammerline::soak {

struct CallHead;

class PowerCut {
public:
    /// The folder as it is now, all of it synced.
    explicit PowerCut(const std::filesystem::path& folder);

    /// Calls `cut(when)` for each different state that the disk may be in after one of the calls; layOut() then lays
    /// that state out. `turning`: only after a call that makes bytes last or changes a name; `every`: only one in so
    /// many of them. After the replay layOut() gives the state a long time after the last call, with nothing synced
    /// since: only what is sure.
    void replay(const std::filesystem::path& log, bool turning, long every,
                const std::function<void(const std::string& when)>& cut);
    void layOut(const std::filesystem::path& folder) const;

private:
    struct Bytes {
        std::string now, synced;
    };
    using Names = std::map<std::string, int>; // name in the folder -> which bytes

    /// What may have reached the disk besides what was synced: nothing, the names alone, or the bytes alone.
    enum class Luck : std::uint8_t { none, names, bytes };

    void apply(const CallHead&, const std::string& bytes);
    std::size_t print(Luck) const;
    std::map<std::string, const std::string*> files(Luck) const;

    std::map<int, Bytes> m_bytes;
    std::map<std::uint64_t, int> m_ofNode; // the file that the system knows by this number now
    Names m_names, m_synced;
    std::uint64_t m_folder = 0;
    int m_last = 0;
    Luck m_luck = Luck::none;
    std::set<std::size_t> m_seen;
};

} // namespace hammerline::soak
