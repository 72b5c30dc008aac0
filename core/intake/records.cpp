#include "core/intake/records.h"

#include "core/intake/encoding.h"

namespace hammerline {
namespace {
constexpr std::size_t kMostFields = 4096;
} // namespace

bool RecordReader::endsField(std::size_t at) const {
    if (at >= m_text.size()) return true;
    const char c = m_text[at];
    return c == m_separator || c == '\r' || c == '\n';
}

void RecordReader::countLines(std::size_t from, std::size_t to) {
    for (std::size_t i = from; i < to; ++i) {
        const char c = m_text[i];
        if (c == '\n' || (c == '\r' && !(i + 1 < m_text.size() && m_text[i + 1] == '\n'))) ++m_nextLine;
    }
}

/// From behind the opening quote to behind the closing one. Two quotes are one; with inch signs allowed, two quotes
/// behind a digit at the end of a field are an inch sign and the closing quote.
std::size_t RecordReader::quotedField(std::size_t at, std::string& field, bool inchSigns, Scan& scan) const {
    const std::size_t opening = at - 1;
    while (true) {
        const auto quote = m_text.find('"', at);
        if (quote == m_text.npos) {
            scan.fault = Fault::unterminated;
            scan.faultAt = opening;
            return m_text.size();
        }
        field.append(m_text, at, quote - at);
        at = quote + 1;
        if (at >= m_text.size() || m_text[at] != '"') return at;
        field += '"';
        ++at;
        const bool digitBefore = field.size() > 1 && field[field.size() - 2] >= '0' && field[field.size() - 2] <= '9';
        if (inchSigns && digitBefore && endsField(at)) return at;
    }
}

RecordReader::Scan RecordReader::scan(std::vector<std::string>& fields, bool inchSigns) const {
    Scan scan;
    std::size_t at = m_at;
    while (true) {
        if (scan.count == kMostFields) {
            scan.fault = Fault::tooMany;
            scan.faultAt = at;
            return scan;
        }
        if (scan.count == fields.size()) fields.emplace_back();
        std::string& field = fields[scan.count++];
        field.clear();
        if (at < m_text.size() && m_text[at] == '"') {
            at = quotedField(at + 1, field, inchSigns, scan);
            if (scan.fault == Fault::none && !endsField(at)) {
                scan.fault = Fault::textAfter;
                scan.faultAt = at;
            }
            if (scan.fault != Fault::none) return scan;
        } else {
            const std::size_t begin = at;
            while (!endsField(at))
                ++at;
            field.assign(m_text, begin, at - begin);
        }
        if (at >= m_text.size() || m_text[at] != m_separator) break;
        ++at;
    }
    if (at < m_text.size() && m_text[at] == '\r') ++at;
    if (at < m_text.size() && m_text[at] == '\n') ++at;
    scan.end = at;
    return scan;
}

Outcome<bool> RecordReader::next(std::vector<std::string>& fields, std::size_t expected) {
    while (m_at < m_text.size() && (m_text[m_at] == '\r' || m_text[m_at] == '\n')) {
        if (m_more && m_at + 1 == m_text.size()) return false; // the other half of a line break may follow
        countLines(m_at, m_at + 1);
        ++m_at;
    }
    m_line = m_nextLine;
    if (m_at >= m_text.size()) {
        fields.clear();
        return false;
    }
    Scan found = scan(fields, false);
    const bool cut = m_more && (found.fault == Fault::unterminated || found.end >= m_text.size());
    if (expected > 0 && (found.fault != Fault::none || found.count != expected)) {
        std::vector<std::string> again;
        const Scan second = scan(again, true);
        const bool whole = !m_more || second.end < m_text.size();
        if (second.fault == Fault::none && second.count == expected && whole) {
            found = second;
            fields.swap(again);
            return accept(fields, found);
        }
    }
    if (cut) return false;
    if (found.fault == Fault::none) return accept(fields, found);
    auto refusal = refuse(RefusalCode::badTable, {},
                          found.fault == Fault::unterminated ? "unterminated-quote"
                          : found.fault == Fault::tooMany    ? "too-many-columns"
                                                             : "text-after-quote",
                          placeOf(m_text.substr(m_at), found.faultAt - m_at));
    refusal.value().place.line += m_line - 1;
    return refusal;
}

bool RecordReader::accept(std::vector<std::string>& fields, const Scan& found) {
    fields.resize(found.count);
    countLines(m_at, found.end);
    m_at = found.end;
    return true;
}

} // namespace hammerline
