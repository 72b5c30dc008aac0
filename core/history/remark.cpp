#include "core/history/remark.h"

#include "core/history/record.h"

#include <algorithm>
#include <array>
#include <charconv>
#include <chrono>
#include <tuple>

namespace hammerline {
namespace {

constexpr std::array<std::string_view, 4> kRemarkKinds = {"remark", "advice", "decision", "visit"};
constexpr std::size_t kLongestRemark = 4000;

std::optional<int> wholeOf(std::string_view digits) {
    int value = 0;
    const auto [end, error] = std::from_chars(digits.data(), digits.data() + digits.size(), value);
    const bool all = error == std::errc{} && end == digits.data() + digits.size();
    return all && value >= 0 ? std::optional(value) : std::nullopt;
}

std::string knownFaults(const Part& part) {
    std::string all;
    for (const Fault& fault : part.faults)
        all += (all.empty() ? "" : ", ") + std::string(fault.key);
    return all;
}

} // namespace

std::string_view key(RemarkKind kind) {
    return kRemarkKinds.at(static_cast<std::size_t>(kind));
}

std::optional<RemarkKind> parseRemarkKind(std::string_view text) {
    const auto found = std::ranges::find(kRemarkKinds, text);
    if (found == kRemarkKinds.end()) return std::nullopt;
    return static_cast<RemarkKind>(found - kRemarkKinds.begin());
}

bool sayTheSame(const Remark& a, const Remark& b) {
    const auto said = [](const Remark& r) { return std::tie(r.kind, r.text, r.who, r.on); };
    return said(a) == said(b) && a.about == b.about;
}

Outcome<std::string> readRemarkText(std::string_view typed) {
    std::string text;
    std::size_t from = 0;
    while (from <= typed.size()) {
        const std::size_t to = std::min(typed.find('\n', from), typed.size());
        const auto line = readLine("text", typed.substr(from, to - from), kLongestRemark);
        if (!line) return line;
        text += (text.empty() ? "" : "\n") + *line;
        from = to + 1;
    }
    while (text.ends_with('\n'))
        text.pop_back();
    if (text.empty()) return refuse(RefusalCode::badIdentity, {}, "empty", {{}, 0, 0, "text"});
    if (text.size() > 4 * kLongestRemark)
        return refuse(RefusalCode::badIdentity, {}, "longest:" + std::to_string(kLongestRemark), {{}, 0, 0, "text"});
    return text;
}

Outcome<std::string> readDay(std::string_view typed) {
    const auto wrong = [&] { return refuse(RefusalCode::badDate, std::string(typed)); };
    const bool shaped = typed.size() == 10 && typed[4] == '-' && typed[7] == '-';
    if (!shaped) return wrong();
    const auto year = wholeOf(typed.substr(0, 4)), month = wholeOf(typed.substr(5, 2)), day = wholeOf(typed.substr(8));
    if (!year || !month || !day) return wrong();
    const std::chrono::year_month_day date{std::chrono::year{*year}, std::chrono::month{static_cast<unsigned>(*month)},
                                           std::chrono::day{static_cast<unsigned>(*day)}};
    if (!date.ok() || *year < 1800 || *year > 2199) return wrong();
    return std::string(typed);
}

Outcome<void> checkAbout(const About& about, const PianoRecord& record) {
    if (about.note && !record.piano.contains(*about.note))
        return refuse(RefusalCode::unknownNote, std::to_string(about.note->value));
    if (about.pass && !record.pass(*about.pass)) return refuse(RefusalCode::noSuchPass, std::to_string(*about.pass));
    if (about.part.empty()) return {};
    const Part* part = findPart(about.part);
    if (!part || !fitted(*part, record.piano)) return refuse(RefusalCode::unknownPart, about.part);
    if (about.note && !fitted(*part, *about.note, record.piano)) return refuse(RefusalCode::notFitted, about.part);
    const bool known = about.fault.empty() || findFault(*part, about.fault);
    if (!known) return refuse(RefusalCode::unknownFault, about.fault, knownFaults(*part));
    return {};
}

} // namespace hammerline
