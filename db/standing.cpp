#include "db/standing.h"

#include "db/versions.h"

namespace hammerline {

std::string isCurrent(std::string_view table, std::string_view condition) {
    return "EXISTS (SELECT 1 FROM " + std::string(table) + " x WHERE " + std::string(condition) +
           " AND x.withdrawn = 0 AND " + isHead(subject(table)) + ")";
}

const std::vector<Ground>& grounds() {
    static const std::vector<Ground> rows = {
        {"plan_version", "plan_id", isCurrent("done", "x.plan_id = v.plan_id")},
        {"pass_version", "pass_id",
         isCurrent("reading", "x.pass_id = v.pass_id") + " OR " + isCurrent("done", "x.pass_id = v.pass_id") + " OR " +
             isCurrent("plan_version", "x.plan_id IN (SELECT id FROM plan WHERE pass_id = v.pass_id)") + " OR " +
             isCurrent("remark", "x.pass_id = v.pass_id") + " OR " + isCurrent("photo", "x.pass_id = v.pass_id")},
        {"setup", "piano_id",
         isCurrent("pass_version", "x.pass_id IN (SELECT id FROM pass WHERE piano_id = v.piano_id)") + " OR " +
             isCurrent("finding", "x.piano_id = v.piano_id") + " OR " +
             isCurrent("symptom", "x.piano_id = v.piano_id") + " OR " +
             isCurrent("work_mark", "x.piano_id = v.piano_id") + " OR " +
             isCurrent("aim_override", "x.piano_id = v.piano_id") + " OR " +
             isCurrent("remark", "x.piano_id = v.piano_id") + " OR " + isCurrent("photo", "x.piano_id = v.piano_id")},
    };
    return rows;
}

} // namespace hammerline
