// Versions of one thing: which row holds, what a new row replaces, and what happens to rows that disagree.
#pragma once

#include "db/acts.h"
#include "db/subjects.h"

#include <variant>
#include <vector>

namespace hammerline {

/// Joins with a separator: "a, b", or "x.a = n.a AND x.b = n.b" through a pattern where each % is the name.
std::string list(const std::vector<TableColumn>&, std::string_view pattern = "%", std::string_view between = ", ");

/// "x is replaced by none", for a subject's table with alias x.
std::string isHead(const Subject&);

using KeyValue = std::variant<std::int64_t, std::string>;
using Key = std::vector<KeyValue>;
Query& operator<<(Query&, const KeyValue&);

struct Head {
    ActId act{};
    bool withdrawn = false;
};
/// Rows of a key that none replaces, the earlier acts first: by place, on equal places (books that were merged) by
/// session.
std::vector<Head> heads(OpenBook&, const Subject&, const Key&);
/// Of several heads the last that is not withdrawn, else the last. Empty: there is no row of this key.
std::optional<Head> holding(const std::vector<Head>&);

/// What a new row of this key replaces. A dispute is settled on the way: the heads that lose are taken back by acts of
/// their own, which undo passes over, so that undoing the new row does not bring the dispute back.
std::optional<ActId> toReplace(ActUnderWay&, const Subject&, const Key&);

/// Appends a row that takes back what holds. False: nothing holds.
bool takeBack(ActUnderWay&, const Subject&, const Key&);

/// Copies the content of row (key, from) as a new row of act `to`, with its details.
void copyVersion(OpenBook&, const Subject&, const Key&, ActId from, ActId to, bool withdrawn);

} // namespace hammerline
