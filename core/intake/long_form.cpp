#include "core/intake/long_form.h"

#include "core/intake/dialect.h"
#include "core/intake/encoding.h"
#include "core/intake/long_rows.h"
#include "core/intake/records.h"

#include <algorithm>

namespace hammerline {
namespace {

constexpr std::size_t kHeadBytes = 4096;        // enough for the heads and some rows
constexpr std::size_t kLongestRecord = 1 << 20; // a quote that is still open then was never closed

char separatorOf(std::string_view& text, int& firstLine, std::optional<char> chosen) {
    const auto said = separatorLine(text);
    if (said) {
        text.remove_prefix(said->length);
        firstLine = 2;
    }
    if (chosen) return *chosen;
    return said ? said->separator : findSeparator(text);
}

} // namespace

struct LongFormReader::State {
    State(const Piano& onPiano, std::function<void(Sound&&)> taker, bool isNamed, std::optional<char> chosenSeparator)
        : piano(onPiano), take(std::move(taker)), named(isNamed), chosen(chosenSeparator) {}

    /// Reads what is whole in the text; gives how many bytes that were.
    Outcome<std::size_t> read(std::string_view text, bool more) {
        std::size_t before = 0;
        if (!rows) {
            if (more && text.size() < kHeadBytes) return std::size_t{0};
            const std::string_view all = text;
            if (text.starts_with("\xEF\xBB\xBF")) {
                text.remove_prefix(3);
                dialect.encoding = "UTF-8-BOM";
            }
            if (auto opened = open(text, more); !opened) return tl::unexpected{opened.error()};
            before = static_cast<std::size_t>(text.data() - all.data());
        }
        records.refill(text, more);
        while (true) {
            const auto next = records.next(fields, width);
            if (!next) return tl::unexpected{moved(next.error())};
            if (!*next) break;
            if (const auto taken = rows->read(fields, records.line() + firstLine - 1); !taken)
                return tl::unexpected{taken.error()};
        }
        if (const auto sound = decodeText(text.substr(0, records.position())); !isUtf8Text(sound))
            return refuse(RefusalCode::badTable, {}, sound ? "encoding" : sound.error().detail,
                          {{}, records.line() + firstLine - 1, 1, {}});
        return before + records.position();
    }

    /// The heads; `text` moves behind them.
    Outcome<void> open(std::string_view& text, bool more) {
        dialect.separator = separatorOf(text, firstLine, chosen);
        records = RecordReader({}, dialect.separator);
        records.refill(text, more);
        const auto next = records.next(fields);
        if (!next) return tl::unexpected{moved(next.error())};
        if (!*next) return refuse(RefusalCode::emptyFile);
        const LongHeads heads(fields);
        if (!heads.complete()) return refuse(RefusalCode::badTable, {}, "dimension-column", {{}, firstLine, 1, {}});
        width = fields.size();
        rows.emplace(piano, std::move(take), heads, named);
        if (said) rows->onPass(std::move(said));
        text.remove_prefix(records.position());
        return {};
    }

    static bool isUtf8Text(const Outcome<DecodedText>& text) { return text && text->encoding == "UTF-8"; }

    Refusal moved(Refusal refusal) const {
        refusal.place.line += firstLine - 1;
        return refusal;
    }

    const Piano& piano;
    std::function<void(Sound&&)> take;
    std::function<void(SaidPass&&)> said;
    bool named;
    std::optional<char> chosen;
    Dialect dialect;
    RecordReader records{{}, ';'};
    int firstLine = 1;
    std::size_t width = 0;
    std::vector<std::string> fields;
    std::optional<LongRows> rows;
    std::string pending; // begun, not yet whole
};

LongFormReader::LongFormReader(const Piano& piano, std::function<void(Sound&&)> take, bool named,
                               std::optional<char> separator)
    : m_state(std::make_unique<State>(piano, std::move(take), named, separator)) {}

LongFormReader::~LongFormReader() = default;

void LongFormReader::onPass(std::function<void(SaidPass&&)> said) {
    m_state->said = std::move(said);
}

Outcome<void> LongFormReader::add(std::string_view piece) {
    std::string& pending = m_state->pending;
    const bool fresh = pending.empty();
    if (!fresh) pending += piece;
    const auto text = fresh ? piece : std::string_view{pending};
    const auto read = m_state->read(text, true);
    if (!read) return tl::unexpected{read.error()};
    if (text.size() - *read > kLongestRecord)
        return refuse(RefusalCode::badTable, {}, "unterminated-quote", {{}, m_state->records.line(), 1, {}});
    if (fresh)
        pending.assign(text.substr(*read));
    else
        pending.erase(0, *read);
    return {};
}

Outcome<Intake> LongFormReader::finish() {
    const auto read = m_state->read(m_state->pending, false);
    if (!read) return tl::unexpected{read.error()};
    Intake intake = m_state->rows->finish();
    intake.dialect = m_state->dialect;
    return intake;
}

PianoNames::PianoNames(std::string_view name, char separator) {
    std::string quoted{"\""};
    for (const char c : name)
        quoted += c == '"' ? std::string{"\"\""} : std::string(1, c);
    quoted += '"';
    // and with the apostrophe that an export puts before a formula
    for (const std::string& written : {std::string{name}, quoted, "'" + std::string{name}, "\"'" + quoted.substr(1)})
        for (const char lineEnd : {'\n', '\r'})
            m_beginnings.push_back(lineEnd + written + separator);
}

void PianoNames::add(std::string_view piece) {
    if (m_found) return;
    const std::size_t longest = m_beginnings.back().size();
    // what lies across the seam of two pieces
    const std::string seam = m_tail + std::string{piece.substr(0, longest)};
    for (const std::string& each : m_beginnings)
        m_found = m_found || piece.find(each) != piece.npos || seam.find(each) != seam.npos;
    m_tail = piece.size() >= longest ? std::string{piece.substr(piece.size() - longest)} : m_tail + std::string{piece};
}

char separatorOfHead(std::string_view head) {
    if (head.starts_with("\xEF\xBB\xBF")) head.remove_prefix(3);
    int line = 1;
    return separatorOf(head, line, std::nullopt);
}

bool isLongForm(std::string_view bytes) {
    const auto decoded = decodeText(bytes.substr(0, kHeadBytes));
    if (!decoded) return false;
    std::string_view text = decoded->view();
    int line = 1;
    const char separator = separatorOf(text, line, std::nullopt);
    std::vector<std::string> heads;
    const auto first = RecordReader(text, separator).next(heads);
    return first && *first && LongHeads(heads).complete();
}

Outcome<Intake> readLongForm(std::string_view bytes, const Piano& piano, const std::function<void(Sound&&)>& take,
                             const TableOptions& options) {
    const auto decoded = decodeText(bytes);
    if (!decoded) return tl::unexpected{decoded.error()};
    std::string_view text = decoded->view();
    int line = 1;
    const char separator = separatorOf(text, line, options.separator);
    PianoNames names(piano.name, separator);
    names.add(text);
    LongFormReader reader(piano, take, names.found(), options.separator);
    if (const auto added = reader.add(decoded->view()); !added) return tl::unexpected{added.error()};
    auto intake = reader.finish();
    if (!intake) return intake;
    intake->dialect.encoding = decoded->encoding;
    return intake;
}

} // namespace hammerline
