// Starts the built program as a person would and reads what it says.
#pragma once

#include <nlohmann/json.hpp>
#include <sys/wait.h>
#include <unistd.h>

#include <array>
#include <cstdio>
#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <sstream>
#include <string>
#include <vector>

namespace hammerline::test {

namespace fs = std::filesystem;

/// A folder of its own that goes with the test.
class Folder {
public:
    Folder() {
        std::string pattern = (fs::temp_directory_path() / "hammerline-XXXXXX").string();
        m_path = ::mkdtemp(pattern.data());
    }
    ~Folder() {
        std::error_code ignored;
        fs::remove_all(m_path, ignored);
    }
    Folder(const Folder&) = delete;
    Folder& operator=(const Folder&) = delete;
    std::string operator/(const std::string& name) const { return (m_path / name).string(); }

private:
    fs::path m_path;
};

struct Answer {
    int status = -1;
    std::string out;
    std::string err;
    nlohmann::json json() const { return nlohmann::json::parse(out); }
};

inline std::string quoted(const std::string& word) {
    std::string out = "'";
    for (const char c : word)
        out += c == '\'' ? std::string("'\\''") : std::string(1, c);
    return out + "'";
}

inline std::string readAll(const std::string& path) {
    std::ifstream in(path, std::ios::binary);
    std::ostringstream text;
    text << in.rdbuf();
    return text.str();
}

/// Runs any command line of words.
inline Answer runWords(const std::vector<std::string>& words) {
    const Folder folder;
    std::string line;
    for (const std::string& word : words)
        line += quoted(word) + ' ';
    line += "</dev/null >" + quoted(folder / "out") + " 2>" + quoted(folder / "err");
    const int status = std::system(line.c_str());
    Answer answer;
    answer.status = WIFEXITED(status) ? WEXITSTATUS(status) : -1;
    answer.out = readAll(folder / "out");
    answer.err = readAll(folder / "err");
    return answer;
}

inline Answer program(std::vector<std::string> words) {
    words.insert(words.begin(), HAMMERLINE_PROGRAM);
    return runWords(words);
}

inline std::string reference(const std::string& name) {
    return std::string(HAMMERLINE_SOURCE_DIR) + "/tests/reference/" + name;
}

} // namespace hammerline::test
