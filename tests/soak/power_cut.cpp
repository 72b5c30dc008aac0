#include "tests/soak/power_cut.h"

#include "tests/soak/calls_log.h"

#include <sys/stat.h>

#include <fstream>
#include <sstream>

namespace hammerline::soak {
namespace {

namespace fs = std::filesystem;

std::uint64_t nodeAt(const fs::path& path) {
    struct stat found {};
    return lstat(path.c_str(), &found) == 0 ? found.st_ino : 0;
}

std::string readAll(const fs::path& path) {
    std::ifstream in(path, std::ios::binary);
    std::ostringstream text;
    text << in.rdbuf();
    return text.str();
}

std::string nameOf(const char* path) {
    return fs::path(path).filename().string();
}

const char* const kCalls[] = {"open", "write", "truncate", "sync", "rename", "link", "unlink"};

} // namespace

PowerCut::PowerCut(const fs::path& folder) : m_folder(nodeAt(folder)) {
    for (const auto& entry : fs::directory_iterator(folder)) {
        const std::string bytes = readAll(entry.path());
        m_bytes[++m_last] = {bytes, bytes};
        m_ofNode[nodeAt(entry.path())] = m_last;
        m_names[entry.path().filename().string()] = m_last;
    }
    m_synced = m_names;
    m_seen.insert(print(Luck::none));
}

void PowerCut::apply(const CallHead& call, const std::string& bytes) {
    const auto file = [&]() -> Bytes& { return m_bytes[m_ofNode[call.node]]; };
    const std::string from = nameOf(call.from), to = nameOf(call.to);
    switch (call.kind) {
    case CallKind::made:
        if (!m_names.contains(from)) { // the system may give the number of a file that is gone
            m_bytes[++m_last] = {};
            m_ofNode[call.node] = m_last;
            m_names[from] = m_last;
        } else if (call.at == 1) {
            file().now.clear();
        }
        return;
    case CallKind::wrote:
        if (file().now.size() < call.at + bytes.size()) file().now.resize(call.at + bytes.size());
        file().now.replace(call.at, bytes.size(), bytes);
        return;
    case CallKind::cut:
        file().now.resize(call.at);
        return;
    case CallKind::synced:
        if (call.node == m_folder)
            m_synced = m_names;
        else
            file().synced = file().now;
        return;
    case CallKind::renamed:
        m_names[to] = m_names[from];
        m_names.erase(from);
        return;
    case CallKind::linked:
        m_names[to] = m_names[from];
        return;
    case CallKind::unlinked:
        m_names.erase(from);
        return;
    }
}

std::map<std::string, const std::string*> PowerCut::files(Luck luck) const {
    std::map<std::string, const std::string*> out;
    for (const auto& [name, id] : luck == Luck::names ? m_names : m_synced)
        out[name] = luck == Luck::bytes ? &m_bytes.at(id).now : &m_bytes.at(id).synced;
    return out;
}

std::size_t PowerCut::print(Luck luck) const {
    std::size_t all = 0;
    const std::hash<std::string> hash;
    for (const auto& [name, bytes] : files(luck))
        all = all * 1'000'003 + hash(name) * 31 + hash(*bytes);
    return all;
}

void PowerCut::layOut(const fs::path& folder) const {
    fs::remove_all(folder);
    fs::create_directory(folder);
    for (const auto& [name, bytes] : files(m_luck))
        std::ofstream(folder / name, std::ios::binary) << *bytes;
}

void PowerCut::replay(const fs::path& log, bool turning, long every,
                      const std::function<void(const std::string&)>& cut) {
    std::ifstream in(log, std::ios::binary);
    CallHead call{};
    long met = 0;
    for (int number = 1; in.read(reinterpret_cast<char*>(&call), sizeof call); ++number) {
        std::string bytes(call.kind == CallKind::wrote ? call.size : 0, '\0');
        in.read(bytes.data(), static_cast<std::streamsize>(bytes.size()));
        apply(call, bytes);
        const bool isTurning =
            call.kind != CallKind::made && call.kind != CallKind::wrote && call.kind != CallKind::cut;
        if (turning && !isTurning) continue;
        if (++met % every != 0) continue;
        for (const Luck luck : {Luck::none, Luck::names, Luck::bytes}) {
            if (!m_seen.insert(print(luck)).second) continue;
            m_luck = luck;
            const char* with = luck == Luck::none ? "" : luck == Luck::names ? ", names kept" : ", bytes kept";
            cut("after call " + std::to_string(number) + " (" + kCalls[static_cast<std::size_t>(call.kind)] + ")" +
                with);
        }
    }
    m_luck = Luck::none;
}

} // namespace hammerline::soak
