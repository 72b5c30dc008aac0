// A piano worked at through the built program: set up, read, planned, ticked, compared, every answer as JSON.
#pragma once

#include <catch2/catch.hpp>

#include "program.h"
#include <map>
#include <set>

namespace hammerline::test {

using nlohmann::json;
/// By note: dimension -> text as it is typed.
using Readings = std::map<int, std::map<std::string, std::string>>;

inline std::string typed(double value) {
    std::ostringstream text;
    text << value;
    return text.str();
}

inline bool isNatural(int note) {
    static const std::set<int> naturals = {0, 2, 4, 5, 7, 9, 11};
    return naturals.contains((note + 8) % 12);
}

struct OwnZone {
    std::string dimension;
    double low, nominal, high;
};
/// A spec sheet of the program with zones of its own for some dimensions, as a file in the folder.
inline std::string ownSheet(const Folder& folder, const std::string& base, const std::vector<OwnZone>& zones) {
    json sheet = json::parse(readAll(std::string(HAMMERLINE_SOURCE_DIR) + "/resources/spec/" + base + ".json"));
    sheet["name"] = base + " of its own";
    for (auto& row : sheet.at("zones"))
        for (const OwnZone& own : zones)
            if (row.at("dimension") == own.dimension) {
                row["low"] = own.low;
                row["nominal"] = own.nominal;
                row["high"] = own.high;
            }
    const std::string file = folder / "own.json";
    std::ofstream(file) << sheet.dump();
    return file;
}

class Bench {
public:
    explicit Bench(std::vector<std::string> setUp) : m_book(m_folder / "book.hammerline") {
        done("new", std::move(setUp));
    }

    /// Runs a command that writes; it must not be refused.
    void done(const std::string& command, std::vector<std::string> words) {
        words.insert(words.begin(), {command, m_book});
        if (command == "new") words.insert(words.end(), {"--piano", "P"});
        const Answer answer = program(words);
        INFO(command << ": " << answer.err);
        REQUIRE(answer.status < 2);
    }
    json answer(const std::string& command, std::vector<std::string> words = {}) const {
        words.insert(words.begin(), {command, m_book});
        words.emplace_back("--json");
        const Answer answer = program(words);
        INFO(command << ": " << answer.err);
        REQUIRE(answer.status < 2);
        return answer.json();
    }
    const std::string& path() const { return m_book; }
    std::string file(const std::string& name) const { return m_folder / name; }
    json check() const { return answer("check"); }
    json plan(std::vector<std::string> options = {}) const { return answer("plan", std::move(options)); }
    json survey() const { return answer("survey"); }

    /// A table of readings, as a file that is imported. `doubtful`: values that are asked about are meant.
    void read(const Readings& readings, bool doubtful = false) {
        std::set<std::string> dimensions;
        for (const auto& [note, row] : readings)
            for (const auto& [dimension, text] : row)
                dimensions.insert(dimension);
        std::ostringstream table;
        table << "note";
        for (const auto& dimension : dimensions)
            table << ',' << dimension;
        for (const auto& [note, row] : readings) {
            table << '\n' << note;
            for (const auto& dimension : dimensions)
                table << ',' << (row.contains(dimension) ? row.at(dimension) : "");
        }
        const std::string file = m_folder / "readings.csv";
        std::ofstream(file) << table.str() << '\n';
        std::vector<std::string> words = {file};
        if (doubtful) words.emplace_back("--take-doubtful");
        const json taken = answer("import", words);
        INFO(taken.dump());
        REQUIRE(taken.at("questions").empty());
        REQUIRE(taken.at("refused_rows").empty());
        REQUIRE(taken.at("ignored_columns").empty());
    }
    void enter(int note, const std::string& dimension, const std::string& text) {
        done("enter", {std::to_string(note), dimension, text});
    }
    void found(const std::string& finding) { done("survey", {"--add", finding}); }
    void state(const std::string& state) { done("survey", {"--state", state}); }
    void tick(const std::string& step) { done("tick", {"--step", step}); }

    /// A printed sheet as text.
    std::string sheet(const std::string& which) const {
        const std::string pdf = m_folder / (which + ".pdf");
        REQUIRE(program({"print", m_book, which, "--out", pdf}).status < 2);
        return runWords({"pdftotext", "-layout", pdf, "-"}).out;
    }

private:
    Folder m_folder;
    std::string m_book;
};

/// A step by its id; a null where the plan has none.
inline json step(const json& plan, const std::string& id) {
    for (const auto& each : plan.at("steps"))
        if (each.at("id") == id) return each;
    return nullptr;
}
inline json stepAt(const json& plan, const std::string& operation, int note) {
    return step(plan, operation + ':' + std::to_string(note));
}
inline std::vector<json> steps(const json& plan, const std::string& operation) {
    std::vector<json> out;
    for (const auto& each : plan.at("steps"))
        if (each.at("operation") == operation) out.push_back(each);
    return out;
}
inline json expected(const json& plan, int note, const std::string& dimension) {
    for (const auto& each : plan.at("expected"))
        if (each.at("note") == note && each.at("dimension") == dimension) return each.at("value");
    return nullptr;
}
/// The reading of a cell in an answer of check; a null where it has none.
inline json reading(const json& check, int note, const std::string& dimension) {
    for (const auto& each : check.at("ranked"))
        if (each.at("note") == note && each.at("dimension") == dimension) return each;
    return nullptr;
}
/// The dimensions that go stale by the plan's work.
inline std::set<std::string> staleAfter(const json& plan) {
    std::set<std::string> out;
    for (const auto& each : plan.at("stale_after"))
        out.insert(each.at("dimension").get<std::string>());
    return out;
}
inline std::set<std::string> operationsOf(const json& plan) {
    std::set<std::string> out;
    for (const auto& each : plan.at("steps"))
        out.insert(each.at("operation").get<std::string>());
    return out;
}
inline std::set<int> notesOfSteps(const json& plan) {
    std::set<int> out;
    for (const auto& each : plan.at("steps"))
        for (const auto& note : each.at("notes"))
            out.insert(note.get<int>());
    return out;
}
inline bool asksFirst(const json& plan, const std::string& question) {
    const auto& asked = plan.at("ask_first");
    return std::find(asked.begin(), asked.end(), question) != asked.end();
}
/// The one cause of a check; fails where there is none or more.
inline json onlyCause(const json& check) {
    INFO(check.at("causes").dump());
    REQUIRE(check.at("causes").size() == 1);
    return check.at("causes")[0];
}
/// The amount of a common step at the place where it is largest.
inline double largestOf(const json& common) {
    double largest = 0;
    for (const auto& [place, amount] : common.at("amounts").items())
        largest = std::max(largest, std::abs(amount.get<double>()));
    return largest;
}

} // namespace hammerline::test
