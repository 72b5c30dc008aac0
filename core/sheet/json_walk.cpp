#include "core/sheet/json_walk.hpp"

#include "core/intake/encoding.h"

#include <array>

namespace hammerline::sheet {
namespace {

constexpr int kDeepest = 32;
// Of one object, each found by a walk over the others; and of numbers or words in one list: rows of tables are objects.
constexpr std::size_t kMostMembers = 10'000;
constexpr std::ptrdiff_t kBetweenLooks = 1 << 16; // bytes: a millisecond

struct Stopped {};
struct TooWide {};
struct TooDeep {};

/// Over the bytes of a text; says how far it is, and throws Stopped where it is to stop.
class Bytes {
public:
    using iterator_category = std::input_iterator_tag;
    using value_type = char;
    using difference_type = std::ptrdiff_t;
    using pointer = const char*;
    using reference = const char&;

    Bytes(std::string_view text, const char* at, const GoOn& goOn) : m_text(text), m_at(at), m_goOn(&goOn) {}
    reference operator*() const { return *m_at; }
    Bytes& operator++() {
        ++m_at;
        const std::ptrdiff_t read = m_at - m_text.data();
        if (read % kBetweenLooks == 0 && *m_goOn &&
            !(*m_goOn)(static_cast<double>(read) / static_cast<double>(m_text.size())))
            throw Stopped{};
        return *this;
    }
    friend bool operator==(const Bytes& a, const Bytes& b) { return a.m_at == b.m_at; }

private:
    std::string_view m_text;
    const char* m_at;
    const GoOn* m_goOn;
};

class JsonLimits {
public:
    /// False: deeper than any document of ours. Throws TooWide.
    bool within(int depth, Json::parse_event_t event) {
        m_tooDeep = m_tooDeep || depth > kDeepest;
        if (depth > kDeepest) return false;
        const auto at = static_cast<std::size_t>(depth);
        const bool listBegins = event == Json::parse_event_t::array_start;
        if (event == Json::parse_event_t::object_start || listBegins) {
            m_members[at + 1] = 0;
            m_isList[at + 1] = listBegins;
        }
        const bool counts = event == Json::parse_event_t::key || (event == Json::parse_event_t::value && m_isList[at]);
        if (counts && ++m_members[at] > kMostMembers) throw TooWide{};
        return true;
    }
    bool tooDeep() const { return m_tooDeep; }

private:
    bool m_tooDeep = false;
    std::array<std::size_t, kDeepest + 2> m_members{}; // of the object or list that is open at each depth
    std::array<bool, kDeepest + 2> m_isList{};
};

/// Bytes that come in pieces, and the places of the last ones that were read.
struct PiecewiseText {
    const std::function<Outcome<std::string_view>()>& next;
    std::string_view piece{};
    std::size_t at = 0, read = 0;
    std::array<Place, 4> places{}; // the parser looks one or two bytes ahead
    Place place{{}, 1, 1, {}};

    void fill() {
        const auto given = next();
        if (!given) throw given.error();
        piece = *given;
        at = 0;
    }
    void advance() {
        const char c = piece[at];
        places[read++ % places.size()] = place;
        const bool continues = (static_cast<unsigned char>(c) & 0xC0U) == 0x80;
        if (c == '\n')
            ++place.line, place.column = 1;
        else if (!continues)
            ++place.column;
        if (++at == piece.size()) fill();
    }
    /// Of the byte with that number, from 1.
    Place placeOfByte(std::size_t byte) const {
        const std::size_t index = byte > 0 ? byte - 1 : 0;
        const bool known = index < read && index + places.size() >= read;
        return known ? places[index % places.size()] : place;
    }
};

class PiecewiseBytes {
public:
    using iterator_category = std::input_iterator_tag;
    using value_type = char;
    using difference_type = std::ptrdiff_t;
    using pointer = const char*;
    using reference = const char&;

    explicit PiecewiseBytes(PiecewiseText* text) : m_text(text) {}
    reference operator*() const { return m_text->piece[m_text->at]; }
    PiecewiseBytes& operator++() {
        m_text->advance();
        return *this;
    }
    friend bool operator==(const PiecewiseBytes& a, const PiecewiseBytes& b) { return a.atEnd() == b.atEnd(); }

private:
    bool atEnd() const { return m_text == nullptr || m_text->piece.empty(); }
    PiecewiseText* m_text;
};

} // namespace

Outcome<void> skimJson(const std::function<Outcome<std::string_view>()>& next) {
    JsonLimits limits;
    const auto keepsNothing = [&](int depth, Json::parse_event_t event, Json&) {
        if (!limits.within(depth, event)) throw TooDeep{};
        const bool holds = event == Json::parse_event_t::object_start || event == Json::parse_event_t::array_start ||
                           event == Json::parse_event_t::key;
        return holds; // what is in it is seen as well, and then it goes
    };
    PiecewiseText text{next};
    try {
        text.fill();
        if (text.piece.starts_with("\xEF\xBB\xBF")) text.piece.remove_prefix(3);
        [[maybe_unused]] const Json nothing = Json::parse(PiecewiseBytes(&text), PiecewiseBytes(nullptr), keepsNothing);
    } catch (const Refusal& refusal) {
        return tl::unexpected{refusal};
    } catch (const Json::parse_error& wrong) {
        return refuse(RefusalCode::badJson, {}, "syntax", text.placeOfByte(wrong.byte));
    } catch (const TooDeep&) { // at once: what is open grows with every level
        return refuse(RefusalCode::badJson, {}, "depth");
    } catch (const TooWide&) {
        return refuse(RefusalCode::badJson, {}, "members");
    } catch (const Json::exception&) {
        return refuse(RefusalCode::badJson, {}, "range");
    }
    return {};
}

Outcome<Json> parseJson(std::string_view text, const GoOn& goOn) {
    if (text.starts_with("\xEF\xBB\xBF")) text.remove_prefix(3);
    JsonLimits limits;
    const auto within = [&](int depth, Json::parse_event_t event, Json&) { return limits.within(depth, event); };
    try {
        Json json = Json::parse(Bytes(text, text.data(), goOn), Bytes(text, text.data() + text.size(), goOn), within);
        if (limits.tooDeep()) return refuse(RefusalCode::badJson, {}, "depth");
        return json;
    } catch (const Json::parse_error& wrong) {
        const std::size_t at = wrong.byte > 0 ? wrong.byte - 1 : 0;
        return refuse(RefusalCode::badJson, {}, "syntax", placeOf(text, at));
    } catch (const TooWide&) {
        return refuse(RefusalCode::badJson, {}, "members");
    } catch (const Stopped&) {
        return refuse(RefusalCode::cancelled);
    } catch (const Json::exception&) { // a number that no double holds
        return refuse(RefusalCode::badJson, {}, "range");
    }
}

} // namespace hammerline::sheet
