// Reference data of tests/reference: columns of a CSV (after its # source line) and JSON documents.
#pragma once

#include <nlohmann/json.hpp>

#include <fstream>
#include <map>
#include <sstream>
#include <stdexcept>
#include <string>
#include <vector>

namespace reference {

inline std::ifstream open(const std::string& name) {
    std::ifstream in(std::string(HAMMERLINE_SOURCE_DIR) + "/tests/reference/" + name);
    if (!in) throw std::runtime_error("no reference file " + name);
    return in;
}

inline nlohmann::json json(const std::string& name) {
    auto in = open(name);
    return nlohmann::json::parse(in);
}

/// Fields by column name, as text.
inline std::map<std::string, std::vector<std::string>> table(const std::string& name) {
    auto in = open(name);
    std::map<std::string, std::vector<std::string>> out;
    std::vector<std::string> header;
    for (std::string line; std::getline(in, line);) {
        if (!line.empty() && line.back() == '\r') line.pop_back();
        if (line.empty() || line[0] == '#') continue;
        std::vector<std::string> fields;
        std::stringstream row(line);
        for (std::string field; std::getline(row, field, ',');)
            fields.push_back(field);
        if (header.empty()) {
            header = fields;
            continue;
        }
        for (std::size_t i = 0; i < header.size() && i < fields.size(); ++i)
            out[header[i]].push_back(fields[i]);
    }
    return out;
}

inline std::vector<double> numbers(const std::vector<std::string>& texts) {
    std::vector<double> out;
    for (const auto& text : texts)
        out.push_back(std::stod(text));
    return out;
}

inline std::vector<double> column(const std::string& file, const std::string& name) {
    return numbers(table(file).at(name));
}

} // namespace reference
