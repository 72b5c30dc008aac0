// Findings as they are typed: "20,23,31-40 bridle-strap rotted replace-set" (commands.md).
#include "core/survey/filing.h"
#include "core/survey/survey.h"

#include <algorithm>

namespace hammerline {
namespace {

using TypedWords = std::vector<std::string_view>;

constexpr bool blank(char c) {
    return c == ' ' || c == '\t' || c == '\n' || c == '\r';
}

TypedWords typedWords(std::string_view text) {
    TypedWords out;
    std::size_t i = 0;
    while (i < text.size()) {
        while (i < text.size() && blank(text[i]))
            ++i;
        const auto from = i;
        while (i < text.size() && !blank(text[i]))
            ++i;
        if (i > from) out.push_back(text.substr(from, i - from));
    }
    return out;
}

std::string joined(std::span<const std::string_view> words, char with) {
    std::string out;
    for (const auto word : words) {
        if (!out.empty()) out += with;
        out += word;
    }
    return out;
}

/// The longest head of `words` that, joined by hyphens, is a key; takes it off. "loop broken" reads as loop-broken.
template <class Row>
const Row* take(std::span<const std::string_view>& words, std::span<const Row> rows) {
    for (std::size_t n = words.size(); n > 0; --n) {
        const std::string typed = joined(words.first(n), '-');
        const auto found = std::find_if(rows.begin(), rows.end(), [&](const Row& r) { return r.key == typed; });
        if (found == rows.end()) continue;
        words = words.subspan(n);
        return &*found;
    }
    return nullptr;
}

template <class Row>
std::string keysOf(std::span<const Row> rows) {
    std::string out;
    for (const Row& r : rows) {
        if (!out.empty()) out += '|';
        out += r.key;
    }
    return out;
}

/// Notes and part, with the words that follow them.
struct Head {
    const Part* part = nullptr;
    std::vector<NoteNumber> notes;
    bool wholePiano = false;
    std::vector<std::string_view> rest;
};

/// Notes named by number must all have the part; notes named by a word ("all", "bass") mean those that have it.
Outcome<std::vector<NoteNumber>> notesWith(const Part& part, std::string_view typed, const Piano& piano) {
    auto notes = parseNotes(typed, piano);
    if (!notes) return notes;
    std::vector<NoteNumber> without;
    for (const NoteNumber n : *notes)
        if (!fitted(part, n, piano)) without.push_back(n);
    const bool byName = typed.find_first_of("0123456789") == std::string_view::npos;
    if (without.size() == notes->size() || (!without.empty() && !byName))
        return refuse(RefusalCode::notFitted, writeNotes(without), std::string(part.key), {{}, 0, 0, "part"});
    std::erase_if(*notes, [&](NoteNumber n) { return !fitted(part, n, piano); });
    return notes;
}

/// A part among the typed words: its first word, and the one behind its last.
struct PartAmongWords {
    const Part* part = nullptr;
    std::size_t first = 0, behind = 0;
};

/// The first words that are a part, as many as belong to it: "let-off button" is the button, as "let-off-button" is.
PartAmongWords partAmong(std::span<const std::string_view> words) {
    for (std::size_t first = 0; first < words.size(); ++first)
        for (std::size_t behind = words.size(); behind > first; --behind)
            if (const Part* part = findPart(joined(words.subspan(first, behind - first), '-')))
                return {part, first, behind};
    return {};
}

Outcome<Head> readHead(std::string_view text, const Piano& piano) {
    const TypedWords words = typedWords(text);
    const PartAmongWords found = partAmong(words);
    if (!found.part) {
        const std::string asked = words.size() > 1 ? std::string(words[1]) : std::string(text);
        return refuse(RefusalCode::unknownPart, asked, {}, {{}, 0, 0, "part"});
    }
    Head head;
    head.part = found.part;
    const std::span all(words);
    const std::string typed = joined(all.first(found.first), ' ');
    if (typed.empty()) return refuse(RefusalCode::unknownNote, {}, {}, {{}, 0, 0, "notes"});
    auto notes = notesWith(*head.part, typed, piano);
    if (!notes) return tl::unexpected(notes.error());
    head.notes = std::move(*notes);
    head.wholePiano = head.part->unit == PartUnit::piano && head.notes.size() == notesOf(*head.part, piano).size();
    const auto rest = all.subspan(found.behind);
    head.rest.assign(rest.begin(), rest.end());
    return head;
}

/// One finding a note; a part of the whole piano named with all its notes is one finding without a note.
std::vector<Finding> spread(const Head& head, const Finding& pattern) {
    std::vector<Finding> out;
    if (head.wholePiano) return {pattern};
    for (const NoteNumber n : head.notes) {
        out.push_back(pattern);
        out.back().note = n;
    }
    return out;
}

/// The cord loop stands on a flange of wood or brass, never where the butts hang on a brass rail.
bool cordOnBrassRail(const Part& part, std::string_view fault, const Piano& piano) {
    return part.key == "butt-spring" && fault == "loop-broken" && piano.butt == Butt::brassRail;
}

Outcome<double> readReshaped(std::string_view typed) {
    const auto length = parseQuantity(typed, Unit::mm);
    if (!length) return tl::unexpected(length.error());
    const double mm = toTrade(length->count, Kind::length);
    if (mm <= 0 || mm > 10) return refuse(RefusalCode::outOfRange, std::string(typed), "0..10");
    return mm;
}

/// What follows a fault: a remedy, for a hammer head also the millimetres filed.
Outcome<Finding> readRemedy(const Part& part, Finding finding, std::span<const std::string_view> rest) {
    if (rest.empty()) return finding;
    if (const Remedy* remedy = take(rest, part.remedies)) finding.remedy = remedy->key;
    if (rest.empty()) return finding;
    if (part.key == "hammer-head" && finding.remedy == "reshape") {
        const auto filed = readReshaped(joined(rest, ' '));
        if (!filed) return tl::unexpected(filed.error());
        finding.amount = *filed;
        return finding;
    }
    return refuse(RefusalCode::unknownRemedy, joined(rest, '-'), keysOf(part.remedies), {{}, 0, 0, "remedy"});
}

/// A fault and what follows it. "loose screw" may be the fault loose-screw or a loose one with the remedy screw: a
/// hyphen settles it, blanks mean the first reading that holds to the end of the line.
Outcome<Finding> readFault(const Part& part, std::span<const std::string_view> words) {
    Finding finding;
    finding.part = part.key;
    if (part.key == "hammer-head" && !words.empty() && words.front() == "hammers-filed") {
        finding.fault = "deep-grooves";
        finding.remedy = "reshape";
        finding.state = FindingState::mended;
        return readRemedy(part, finding, words.subspan(1));
    }
    std::optional<Refusal> refusal;
    for (std::size_t n = 1; n <= words.size(); ++n) {
        const Fault* fault = findFault(part, joined(words.first(n), '-'));
        if (!fault) continue;
        finding.fault = fault->key;
        if (filingPass(finding.fault) > 0) finding.remedy = "reshape";
        if (filingPass(finding.fault) > 0) finding.state = FindingState::mended;
        auto whole = readRemedy(part, finding, words.subspan(n));
        if (whole) return whole;
        refusal = whole.error();
    }
    if (refusal) return tl::unexpected(*refusal);
    return refuse(RefusalCode::unknownFault, joined(words, '-'), keysOf(part.faults), {{}, 0, 0, "fault"});
}

} // namespace

Outcome<std::vector<Finding>> parseFindings(std::string_view text, const Piano& piano) {
    const auto head = readHead(text, piano);
    if (!head) return tl::unexpected(head.error());
    const auto finding = readFault(*head->part, head->rest);
    if (!finding) return tl::unexpected(finding.error());
    if (cordOnBrassRail(*head->part, finding->fault, piano))
        return refuse(RefusalCode::notFitted, writeNotes(head->notes), finding->fault, {{}, 0, 0, "fault"});
    return spread(*head, *finding);
}

Outcome<std::vector<Finding>> parseFindingStates(std::string_view text, const Piano& piano) {
    const auto head = readHead(text, piano);
    if (!head) return tl::unexpected(head.error());
    const auto state = parseFindingState(joined(head->rest, '-'));
    if (!state) return tl::unexpected(state.error());
    Finding finding;
    finding.part = head->part->key;
    finding.state = *state;
    return spread(*head, finding);
}

Outcome<Symptom> parseSymptom(std::string_view text, const Piano& piano) {
    const TypedWords words = typedWords(text);
    const auto known = symptomsOf(piano);
    for (std::size_t n = 0; n < words.size(); ++n) {
        const std::string typed = joined(std::span(words).subspan(n), '-');
        if (std::find(known.begin(), known.end(), typed) == known.end()) continue;
        const auto notes = parseNotes(n == 0 ? "all" : joined(std::span(words).first(n), ' '), piano);
        if (!notes) return tl::unexpected(notes.error());
        return Symptom{typed, {notes->front().value, notes->back().value}, 0};
    }
    return refuse(RefusalCode::unknownSymptom,
                  words.size() > 1 ? joined(std::span(words).subspan(1), '-') : std::string(text), joined(known, '|'),
                  {{}, 0, 0, "symptom"});
}

} // namespace hammerline
