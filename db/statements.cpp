#include "db/statements.h"

#include "db/guard.h"

#include <algorithm>

namespace hammerline {

Uuid Query::uuid(int column) const {
    const auto value = m_statement->getColumn(column);
    Uuid uuid{};
    if (!value.isBlob() || value.getBytes() != static_cast<int>(uuid.size()))
        fail(RefusalCode::damagedBook, {}, "uuid");
    const auto* bytes = static_cast<const std::uint8_t*>(value.getBlob());
    std::copy(bytes, bytes + uuid.size(), uuid.begin());
    return uuid;
}

std::optional<Digest> Query::digest(int column) const {
    const std::string bytes = text(column);
    Digest digest{};
    if (bytes.size() != digest.size()) return std::nullopt;
    std::copy(bytes.begin(), bytes.end(), digest.begin());
    return digest;
}

Query& Query::put(const Value& value) {
    if (const auto* number = std::get_if<std::int64_t>(&value)) return *this << *number;
    if (const auto* text = std::get_if<std::string>(&value)) return *this << *text;
    return *this << std::nullopt;
}

Value Query::value(int column) const {
    const auto found = m_statement->getColumn(column);
    if (found.isNull()) return {};
    if (found.isInteger()) return found.getInt64();
    return found.getString();
}

Query Statements::operator()(const std::string& sql) {
    auto found = m_kept.find(sql);
    if (found == m_kept.end()) found = m_kept.emplace(sql, SQLite::Statement(m_db, sql)).first;
    return Query(found->second);
}

} // namespace hammerline
