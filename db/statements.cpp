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

Query Statements::operator()(const std::string& sql) {
    auto found = m_kept.find(sql);
    if (found == m_kept.end()) found = m_kept.emplace(sql, SQLite::Statement(m_db, sql)).first;
    return Query(found->second);
}

} // namespace hammerline
