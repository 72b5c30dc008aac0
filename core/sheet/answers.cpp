#include "core/sheet/answers.h"

#include <algorithm>
#include <sstream>

namespace hammerline {
namespace {

std::string withoutQuoteMarks(std::string line) {
    while (!line.empty() && (line.front() == '>' || line.front() == ' ' || line.front() == '\t'))
        line.erase(line.begin());
    while (!line.empty() && (line.back() == '\r' || line.back() == ' '))
        line.pop_back();
    return line;
}

std::optional<std::string> valueOf(const std::string& line, std::string_view name) {
    if (!line.starts_with(name)) return std::nullopt;
    return withoutQuoteMarks(line.substr(name.size()));
}

bool isWhole(const std::string& text) {
    return !text.empty() && text.size() <= 6 && std::ranges::all_of(text, [](char c) { return c >= '0' && c <= '9'; });
}

/// The other way of answerCode.
Outcome<About> aboutOfCode(const std::string& code, const PianoRecord& record) {
    std::istringstream words(code);
    std::string first, part, fault;
    words >> first >> part >> fault;
    About about;
    if (first == "piano") return about;
    if (first == "pass") {
        if (!isWhole(part)) return refuse(RefusalCode::noSuchPass, part);
        about.pass = std::stoi(part);
    } else {
        if (first != "-") {
            const auto note = parseNote(first, record.piano);
            if (!note) return tl::unexpected(note.error());
            about.note = *note;
        }
        about.part = part;
        about.fault = fault;
    }
    if (const auto there = checkAbout(about, record); !there) return tl::unexpected(there.error());
    return about;
}

class AnswerReader {
public:
    AnswerReader(const PianoRecord& record, std::string today, std::string who)
        : m_record(record), m_on(std::move(today)), m_who(std::move(who)) {}

    Outcome<void> take(const std::string& line, int number) {
        const auto end = line.find(']');
        const bool begins = line.starts_with('[') && end != std::string::npos;
        if (begins) {
            close();
            auto about = aboutOfCode(line.substr(1, end - 1), m_record);
            if (!about) return at(number, about.error());
            m_answers.push_back({});
            m_answers.back().kind = RemarkKind::advice;
            m_answers.back().about = std::move(*about);
            m_text = line.substr(end + 1);
            return {};
        }
        if (!m_answers.empty()) {
            m_text += '\n' + line;
            return {};
        }
        return takeHead(line, number);
    }

    Outcome<std::vector<Remark>> finish() {
        close();
        if (m_answers.empty()) return refuse(RefusalCode::emptyFile);
        for (Remark& answer : m_answers) {
            answer.who = m_who;
            answer.on = m_on;
        }
        return std::move(m_answers);
    }

private:
    static tl::unexpected<Refusal> at(int number, Refusal refusal) {
        refusal.place.line = number;
        return tl::unexpected(std::move(refusal));
    }

    Outcome<void> takeHead(const std::string& line, int number) {
        if (const auto piano = valueOf(line, "piano:"); piano && !piano->empty() && *piano != m_record.uuid)
            return at(number, {RefusalCode::otherPiano, {}, m_record.piano.name, *piano});
        if (const auto who = valueOf(line, "who:")) m_who = readLine("who", *who, 200).value_or(m_who);
        if (const auto on = valueOf(line, "on:")) m_on = readDay(*on).value_or(m_on);
        return {};
    }

    /// The answer that was being read; one that says nothing goes.
    void close() {
        if (m_answers.empty()) return;
        if (auto text = readRemarkText(m_text))
            m_answers.back().text = std::move(*text);
        else
            m_answers.pop_back();
        m_text.clear();
    }

    const PianoRecord& m_record;
    std::string m_on, m_who, m_text;
    std::vector<Remark> m_answers;
};

} // namespace

std::string answerCode(const About& about) {
    if (about == About{}) return "piano";
    if (about.pass && !about.note && about.part.empty()) return "pass " + std::to_string(*about.pass);
    std::string code = about.note ? std::to_string(about.note->value) : "-";
    if (!about.part.empty()) code += ' ' + about.part;
    if (!about.fault.empty()) code += ' ' + about.fault;
    return code;
}

Outcome<std::vector<Remark>> readAnswers(std::string_view text, const PianoRecord& record, const std::string& today,
                                         const std::string& who) {
    AnswerReader reader(record, today, who);
    std::istringstream lines{std::string(text)};
    int number = 0;
    for (std::string line; std::getline(lines, line);)
        if (const auto taken = reader.take(withoutQuoteMarks(line), ++number); !taken)
            return tl::unexpected(taken.error());
    return reader.finish();
}

std::vector<Remark> notYetSaid(std::span<const Remark> answers, const PianoRecord& record) {
    std::vector<Remark> fresh;
    for (const Remark& answer : answers) {
        const bool said = std::ranges::any_of(record.remarks, [&](const Remark& each) {
            return each.kind == RemarkKind::advice && each.about == answer.about && each.text == answer.text &&
                   each.who == answer.who;
        });
        if (!said) fresh.push_back(answer);
    }
    return fresh;
}

} // namespace hammerline
