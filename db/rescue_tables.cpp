#include "db/rescue.h"

namespace hammerline {
namespace {

void append(std::vector<TableColumn>& to, const std::vector<TableColumn>& more) {
    to.insert(to.end(), more.begin(), more.end());
}

/// Numbers at the head of a key: by these a stretch can be halved.
std::size_t leadingNumbers(const std::vector<TableColumn>& key) {
    std::size_t count = 0;
    for (const TableColumn& column : key) {
        const std::string_view name = column.name;
        if (name == "part" || name == "symptom" || name == "key" || name == "step" || name == "trial" ||
            name == "act_id")
            break;
        ++count;
    }
    return count;
}

RescueTable plain(std::string name, std::vector<TableColumn> columns, int since = 1) {
    return {std::move(name), std::move(columns), 1, 1, since};
}

} // namespace

const std::vector<RescueTable>& rescueTables() {
    static const std::vector<RescueTable> tables = [] {
        std::vector<RescueTable> all;
        all.push_back(plain("book", {{"id"}, {"uuid"}, {"made_at"}, {"made_by"}, {"oldest_reader"}, {"merged_place"}}));
        all.push_back(plain("session", {{"id"}, {"uuid"}, {"started_at"}, {"program"}}));
        all.push_back(plain("act", {{"id"},
                                    {"session_id"},
                                    {"seq"},
                                    {"place"},
                                    {"at"},
                                    {"kind"},
                                    {"source"},
                                    {"undoes", Points::act},
                                    {"brought"},
                                    {"digest"}}));
        all.push_back(plain("dimension", {{"id"}, {"key"}}));
        all.push_back(plain("picture", {{"id"}, {"hash"}, {"kind"}, {"width"}, {"height"}, {"thumb"}, {"bytes"}}, 4));
        for (const Tag& tag : tags()) {
            std::vector<TableColumn> columns = {{"id"}, {"uuid"}, {"act_id", Points::act}};
            append(columns, tag.columns);
            all.push_back(plain(std::string(tag.table), std::move(columns)));
        }
        for (const Subject& subject : subjects()) {
            std::vector<TableColumn> columns = subject.key;
            columns.push_back({"act_id", Points::act});
            const std::size_t key = columns.size(), split = leadingNumbers(columns);
            append(columns, {{"replaces"}, {"origin", Points::act}, {"withdrawn"}});
            append(columns, subject.content);
            all.push_back({std::string(subject.table), std::move(columns), key, split, subject.since});
            for (const Detail& detail : subject.details) {
                std::vector<TableColumn> own = subject.key;
                own.push_back({"act_id", Points::act});
                append(own, detail.columns);
                const std::size_t ownKey = subject.key.size() + 1 + detail.named;
                all.push_back({std::string(detail.table), std::move(own), ownKey, split});
            }
        }
        return all;
    }();
    return tables;
}

} // namespace hammerline
