// The catalogue of parts: rows as text become rows as values, once. What is fitted follows from kind and attributes.
#include "core/survey/catalogue_text.h"

#include <algorithm>
#include <deque>

namespace hammerline {
namespace {

using survey::Row;

std::vector<std::string_view> wordsOf(std::string_view list) {
    std::vector<std::string_view> out;
    while (!list.empty()) {
        const auto end = std::min(list.find(' '), list.size());
        if (end > 0) out.push_back(list.substr(0, end));
        list.remove_prefix(std::min(end + 1, list.size()));
    }
    return out;
}

std::pair<std::string_view, std::string_view> split(std::string_view text, char at) {
    const auto place = text.find(at);
    if (place == std::string_view::npos) return {text, {}};
    return {text.substr(0, place), text.substr(place + 1)};
}

bool isSet(std::string_view remedy) {
    return remedy.size() > 4 && remedy.substr(remedy.size() - 4) == "-set";
}

template <class Row>
bool holds(const std::vector<Row>& rows, std::string_view key) {
    return std::any_of(rows.begin(), rows.end(), [&](const Row& r) { return r.key == key; });
}

/// The row's remedies, then those that any part may need.
std::vector<Remedy> remediesOf(const Row& row) {
    std::vector<Remedy> out;
    for (const auto word : wordsOf(row.remedies)) {
        const auto [name, supply] = split(word, '=');
        const bool orders = word.find('=') != std::string_view::npos;
        out.push_back({name, orders && supply.empty() ? row.key : supply, isSet(name)});
    }
    const auto add = [&](Remedy r) {
        if (!holds(out, r.key)) out.push_back(r);
    };
    add({"clean", {}, false});
    add({"ease", {}, false});
    add({"tighten", {}, false});
    add({"replace", row.key, false});
    if (row.wholeSet) add({"replace-set", row.key, true});
    add({"leave", {}, false});
    add({"refer", {}, false});
    return out;
}

/// The row's faults, then those that may befall any part, each with its customary remedy.
std::vector<Fault> faultsOf(const Row& row, const std::vector<Remedy>& remedies) {
    std::vector<Fault> out;
    for (const auto word : wordsOf(row.faults)) {
        const auto [name, remedy] = split(word, '>');
        out.push_back({name, remedy.empty() ? remedies.front().key : remedy});
    }
    const auto renewal =
        std::find_if(remedies.begin(), remedies.end(), [](const Remedy& r) { return !r.supply.empty(); });
    const auto add = [&](std::string_view name, std::string_view remedy) {
        if (!holds(out, name)) out.push_back({name, remedy});
    };
    add("broken", renewal->key);
    add("worn", renewal->key);
    add("missing", renewal->key);
    add("loose", holds(remedies, "glue") ? "glue" : "tighten");
    return out;
}

/// A letter of the table, or a dimension's own key.
std::vector<DimensionId> dimensionsOf(std::string_view letter) {
    using namespace dimension;
    if (letter == "H") return {keyHeight, sharpHeight, sharpProud};
    if (letter == "D") return {keyDip, sharpProud};
    if (letter == "M") return {lostMotion};
    if (letter == "B") return {blow};
    if (letter == "O") return {letOff};
    if (letter == "P") return {dimension::drop};
    if (letter == "A") return {aftertouch};
    if (letter == "K") return {checking};
    if (letter == "S") return {damperStart};
    const auto found = findDimension(letter);
    return found ? std::vector{*found} : std::vector<DimensionId>{};
}

std::vector<DimensionId> staleOf(std::string_view list) {
    std::vector<DimensionId> out;
    if (list == "all") {
        for (const Dimension& d : dimensions())
            out.push_back(d.id);
        return out;
    }
    for (const auto word : wordsOf(list))
        for (const DimensionId each : dimensionsOf(word))
            if (std::find(out.begin(), out.end(), each) == out.end()) out.push_back(each);
    return out;
}

/// The rows with what their spans point into; built once, never changed.
class Catalogue {
public:
    Catalogue() {
        for (const auto rows : {survey::actionRows(), survey::furtherRows()})
            for (const Row& row : rows)
                add(row);
    }
    std::span<const Part> parts() const { return m_parts; }

private:
    void add(const Row& row) {
        const auto& remedies = m_remedies.emplace_back(remediesOf(row));
        const auto& faults = m_faults.emplace_back(faultsOf(row, remedies));
        const bool overTenth = row.mustIf == "over-a-tenth";
        const auto& mustIf = m_mustIf.emplace_back(overTenth ? std::vector<std::string_view>{} : wordsOf(row.mustIf));
        const auto& stale = m_stale.emplace_back(staleOf(row.stale));
        m_parts.push_back({row.number, row.key, row.kinds, faults, remedies, row.must, mustIf, overTenth, stale,
                           row.stale == "all", row.unit, row.minutes, row.wholeSet, row.stage, row.caution, row.has,
                           row.damper});
    }

    std::vector<Part> m_parts;
    std::deque<std::vector<Fault>> m_faults;
    std::deque<std::vector<Remedy>> m_remedies;
    std::deque<std::vector<std::string_view>> m_mustIf;
    std::deque<std::vector<DimensionId>> m_stale;
};

char letterOf(ActionKind kind) {
    switch (kind) {
    case ActionKind::upright:
        return 'U';
    case ActionKind::drop:
        return 'D';
    case ActionKind::grand:
        return 'G';
    }
    return ' ';
}

template <class Row>
const Row* find(std::span<const Row> rows, std::string_view key) {
    const auto found = std::find_if(rows.begin(), rows.end(), [&](const Row& r) { return r.key == key; });
    return found == rows.end() ? nullptr : &*found;
}

} // namespace

std::span<const Part> parts() {
    static const Catalogue catalogue;
    return catalogue.parts();
}

const Part* findPart(std::string_view key) {
    return find(parts(), key);
}
const Fault* findFault(const Part& part, std::string_view key) {
    return find(part.faults, key);
}
const Remedy* findRemedy(const Part& part, std::string_view key) {
    return find(part.remedies, key);
}

bool fitted(const Part& part, const Piano& piano) {
    const bool kind = part.kinds.find(letterOf(piano.action)) != std::string_view::npos;
    const bool anyKind = part.kinds == "P";
    return (kind || anyKind) && (part.has == nullptr || part.has(piano));
}

bool fitted(const Part& part, NoteNumber note, const Piano& piano) {
    if (!piano.contains(note) || !fitted(part, piano)) return false;
    return !part.damper || hasDamper(note, piano);
}

std::vector<NoteNumber> notesOf(const Part& part, const Piano& piano) {
    std::vector<NoteNumber> out;
    for (int i = 1; i <= piano.notes; ++i)
        if (fitted(part, NoteNumber{i}, piano)) out.push_back(NoteNumber{i});
    return out;
}

} // namespace hammerline
