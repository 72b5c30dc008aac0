#include "core/sheet/json_walk.hpp"

#include "core/intake/encoding.h"

namespace hammerline::sheet {
namespace {

constexpr int kDeepest = 32;
constexpr std::ptrdiff_t kBetweenLooks = 1 << 16; // bytes: a millisecond

struct Stopped {};

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

} // namespace

Outcome<Json> parseJson(std::string_view text, const GoOn& goOn) {
    if (text.starts_with("\xEF\xBB\xBF")) text.remove_prefix(3);
    bool tooDeep = false;
    const auto shallow = [&](int depth, Json::parse_event_t, Json&) {
        tooDeep = tooDeep || depth > kDeepest;
        return depth <= kDeepest;
    };
    try {
        Json json = Json::parse(Bytes(text, text.data(), goOn), Bytes(text, text.data() + text.size(), goOn), shallow);
        if (tooDeep) return refuse(RefusalCode::badJson, {}, "depth");
        return json;
    } catch (const Json::parse_error& wrong) {
        const std::size_t at = wrong.byte > 0 ? wrong.byte - 1 : 0;
        return refuse(RefusalCode::badJson, {}, "syntax", placeOf(text, at));
    } catch (const Stopped&) {
        return refuse(RefusalCode::cancelled);
    } catch (const Json::exception&) { // a number that no double holds
        return refuse(RefusalCode::badJson, {}, "range");
    }
}

} // namespace hammerline::sheet
