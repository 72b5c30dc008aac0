#include "core/survey/job.h"

#include "core/piano/year_of_humidity.h"
#include "core/survey/odd_parts.h"
#include "core/survey/sizes.h"
#include "core/survey/standing.h"

#include <algorithm>
#include <map>

namespace hammerline {
namespace {

/// How many units of its work a part's notes are: notes, sections, the piano once, a share of a set.
double unitsOf(const Part& part, std::span<const NoteNumber> notes, const Piano& piano) {
    if (notes.empty()) return 0;
    std::set<std::size_t> pieces;
    switch (part.unit) {
    case PartUnit::piano:
        return 1;
    case PartUnit::set:
        return static_cast<double>(notes.size()) / static_cast<double>(notesOf(part, piano).size());
    case PartUnit::section:
        for (const NoteNumber n : notes)
            pieces.insert(pieceOf(part, n, piano));
        return static_cast<double>(pieces.size());
    case PartUnit::note:
    case PartUnit::bushing:
        break;
    }
    return static_cast<double>(notes.size());
}

/// What is, or was, done at the note: a part that is mended now is said so without its remedy, which an earlier finding
/// named; else the part's customary one.
std::string_view remedyAt(const Part& part, NoteNumber note, const Standing& standing,
                          std::span<const Finding> findings) {
    const Finding* now = standing.at(part, note);
    if (const Remedy* remedy = now ? remedyOf(*now) : nullptr) return remedy->key;
    for (std::size_t i = findings.size(); i-- > 0;) {
        const Finding& before = findings[i];
        const bool here = before.part == part.key && (!before.note || *before.note == note);
        if (const Remedy* remedy = here ? remedyOf(before) : nullptr) return remedy->key;
    }
    return part.remedies.front().key;
}

/// What the workshop has settled for the part, by the unit; else by remedy as it is customary. `set`: the notes of a
/// set that is renewed whole, all by the remedy of the first.
double minutesOf(const Part& part, std::span<const NoteNumber> notes, const Standing& standing,
                 std::span<const Finding> findings, const JobTerms& terms, bool wholeSet) {
    const Piano& piano = standing.piano();
    if (const auto own = terms.minutes.find(std::string(part.key)); own != terms.minutes.end())
        return own->second * unitsOf(part, notes, piano);
    std::map<std::string_view, std::vector<NoteNumber>> byRemedy;
    const auto first = std::ranges::find_if(notes, [&](NoteNumber note) {
        return standing.state(part, note) == FindingState::toDo; // of a set that is renewed whole, by the remedy chosen
    });
    for (const NoteNumber note : notes)
        byRemedy[remedyAt(part, wholeSet && first != notes.end() ? *first : note, standing, findings)].push_back(note);
    double minutes = 0;
    for (const auto& [key, at] : byRemedy) {
        const Remedy* remedy = findRemedy(part, key);
        minutes += minutesOfRemedy(part, key, at, piano, terms.hand, wholeSet || (remedy && remedy->set));
    }
    return minutes;
}

bool workless(const Remedy* remedy) {
    return remedy && (remedy->key == "leave" || remedy->key == "refer");
}

/// Findings of one part, note by note.
JobLine lineOf(const Part& part, const Standing& standing, const JobTerms& terms) {
    JobLine line;
    line.part = part.key;
    line.stage = part.stage;
    for (const NoteNumber n : notesOf(part, standing.piano())) {
        const Finding* f = standing.at(part, n);
        const FindingState state = f ? f->state : FindingState::notLookedAt;
        if (f && !f->note && state != FindingState::sound) line.wholePiano = true;
        if (state == FindingState::notLookedAt) line.notLookedAt.push_back(n);
        if (state == FindingState::watch) line.watch.push_back(n);
        if (state == FindingState::mended) line.mended.push_back(n);
        if (state != FindingState::toDo) continue;
        line.toDo.push_back(n);
        const Remedy* remedy = remedyOf(*f);
        line.first = line.first || standing.blocks(*f);
        line.specialist = line.specialist || (remedy && remedy->key == "refer");
        const bool missing = remedy && !remedy->supply.empty() && !terms.inHand.contains(std::string(remedy->supply));
        if (missing) line.waitsFor.emplace(remedy->supply);
    }
    line.waits = !line.waitsFor.empty();
    return line;
}

/// The notes work is reckoned for: those to do, less what is left or referred; all of a set that is renewed whole.
std::vector<NoteNumber> workedNotes(const Part& part, JobLine& line, const Standing& standing,
                                    const std::vector<PartsLine>& orders) {
    const auto order = std::find_if(orders.begin(), orders.end(),
                                    [&](const PartsLine& o) { return o.from == part.key && o.wholeSet; });
    std::vector<NoteNumber> notes;
    for (const NoteNumber n : line.toDo)
        if (!workless(remedyOf(*standing.at(part, n)))) notes.push_back(n);
    if (notes.empty() || order == orders.end()) return notes;
    line.wholeSet = true;
    if (!damperFeltSize(part).empty()) return order->notes;
    return notesOf(part, standing.piano());
}

} // namespace

namespace {

std::optional<double> termNumber(const std::string& text) {
    const auto read = parseQuantity(text, Unit::mm);
    if (!read || read->count < 0 || read->unitTyped) return std::nullopt;
    return toTrade(read->count, Kind::length);
}

/// "9.5x28": width and length of a piece, mm.
std::optional<std::array<double, 2>> pieceSize(const std::string& text) {
    const auto cross = text.find('x');
    if (cross == std::string::npos) return std::nullopt;
    const auto width = termNumber(text.substr(0, cross)), length = termNumber(text.substr(cross + 1));
    const auto fits = [](const std::optional<double>& side) { return side && *side >= 1 && *side <= 200; };
    if (!fits(width) || !fits(length)) return std::nullopt;
    return std::array{*width, *length};
}

bool isCut(std::string_view supply) {
    const auto all = cutPieces();
    return std::any_of(all.begin(), all.end(), [&](const CutPiece& piece) { return piece.supply == supply; });
}

std::pair<std::string, std::string> atDot(const std::string& name) {
    const auto dot = name.find('.');
    if (dot == std::string::npos) return {name, {}};
    return {name.substr(0, dot), name.substr(dot + 1)};
}

bool isSupply(std::string_view name) {
    const auto all = parts();
    return std::any_of(all.begin(), all.end(), [&](const Part& part) {
        return std::any_of(part.remedies.begin(), part.remedies.end(),
                           [&](const Remedy& remedy) { return !name.empty() && remedy.supply == name; });
    });
}

} // namespace

Outcome<std::pair<std::string, std::string>> parseTerm(std::string_view text) {
    const auto equals = text.find('=');
    const auto unread = [&] { return refuse(RefusalCode::usage, std::string(text)); };
    if (equals == std::string_view::npos) return unread();
    const std::string name(text.substr(0, equals)), value(text.substr(equals + 1));
    const auto [head, of] = atDot(name);
    if (name == "yearly-humidity" && !value.empty()) {
        if (!parseYearOfHumidity(value)) return unread();
        return std::pair{name, value};
    }
    if (head == "odd-part" || head == "work-done") return parseBeside(name, value);
    const auto amount = termNumber(value);
    const bool yesOrNo = value == "yes" || value == "no";
    if ((head == "minutes" || head == "only-these") && !findPart(of)) return refuse(RefusalCode::unknownPart, of);
    const bool ofSupply = head == "in-hand" || head == "ordered";
    if (ofSupply && !isSupply(of)) return refuse(RefusalCode::unknownPart, of);
    if (head == "size") {
        const auto size = parseSize(of, value);
        if (!size) return tl::unexpected(size.error());
        return std::pair{"size." + sizeName(*size), size->value};
    }
    if (head == "piece" && !isCut(of)) return refuse(RefusalCode::unknownPart, of);
    const bool read = (head == "minutes" && amount && *amount <= 6000) ||
                      ((name == "spare-percent" || name == "spare-at-least") && amount && *amount <= 100) ||
                      ((head == "only-these" || ofSupply) && yesOrNo) || (head == "piece" && pieceSize(value)) ||
                      (name == "job" && (value == "whole" || value == "asked")) ||
                      (name == "hand" && (value == "practised" || value == "beginner"));
    if (!read) return unread();
    return std::pair{name, value};
}

JobTerms jobTerms(const std::map<std::string, std::string>& preferences) {
    JobTerms terms;
    for (const auto& [name, value] : preferences) {
        const auto [head, of] = atDot(name);
        const auto amount = termNumber(value);
        if (head == "minutes" && amount && findPart(of)) terms.minutes[of] = *amount;
        if (head == "spare-percent" && amount && *amount <= 100) terms.spares.percent = *amount;
        if (head == "spare-at-least" && amount && *amount <= 100) terms.spares.atLeast = static_cast<int>(*amount);
        if (head == "only-these" && value == "yes") terms.spares.onlyThese.push_back(of);
        if (head == "in-hand" && value == "yes") terms.inHand.insert(of);
        if (head == "ordered" && value == "yes") terms.ordered.insert(of);
        if (head == "size" && !value.empty())
            if (auto measured = parseSize(of, value)) terms.spares.sizes.push_back(std::move(*measured));
        if (const auto size = pieceSize(value); head == "piece" && size && isCut(of)) terms.spares.cut[of] = *size;
        if (head == "hand" && value == "beginner") terms.hand = Hand::beginner;
    }
    return terms;
}

std::string_view whyNotOrdered(std::string_view supply, std::span<const PartsLine> lines) {
    const auto ours = [&](const PartsLine& line) { return line.part == supply; };
    if (std::ranges::none_of(lines, ours)) return "unknown";
    const bool measured = std::ranges::all_of(
        lines, [&](const PartsLine& line) { return !ours(line) || !line.bySize || !line.measured.empty(); });
    return measured ? std::string_view{} : "size";
}

Job wholeJob(std::span<const Finding> findings, const Piano& piano, const JobTerms& terms) {
    Job job;
    const Standing standing(findings, piano);
    const auto orders = partsList(findings, piano, terms.spares);
    for (const Part& part : parts()) {
        JobLine line = lineOf(part, standing, terms);
        if (line.toDo.empty() && line.watch.empty() && line.mended.empty()) continue;
        const auto worked = workedNotes(part, line, standing, orders);
        line.minutesOpen = minutesOf(part, worked, standing, findings, terms, line.wholeSet);
        line.minutesDone = minutesOf(part, line.mended, standing, findings, terms, false);
        line.specialist = line.specialist || (!worked.empty() && line.minutesOpen == 0);
        job.minutesOpen += line.minutesOpen;
        job.minutesDone += line.minutesDone;
        job.lines.push_back(std::move(line));
    }
    std::stable_sort(job.lines.begin(), job.lines.end(),
                     [](const JobLine& a, const JobLine& b) { return a.stage < b.stage; });
    job.unforeseen = job.minutesOpen / 10;
    for (int i = 1; i <= piano.notes; ++i)
        job.blockedNotes += !standing.blockersOf(NoteNumber{i}).empty();
    return job;
}

double minutesOf(std::span<const Finding> findings, const Piano& piano) {
    return wholeJob(findings, piano).minutesOpen;
}

std::vector<NoteNumber> sampleHammers(const Piano& piano) {
    std::vector<NoteNumber> out;
    for (const Section& s : sectionsOf(piano)) {
        out.push_back(NoteNumber{s.range.first});
        if (s.range.last != s.range.first) out.push_back(NoteNumber{s.range.last});
    }
    return out;
}

} // namespace hammerline
