// Whose piano it is, and what a person wrote of it.
#include "db/stores.h"
#include "db/versions.h"

namespace hammerline {
namespace {

std::string valueStanding(OpenBook& book, std::int64_t piano, const std::string& field) {
    const auto head = holding(heads(book, subject("identity"), {piano, field}));
    if (!head || head->withdrawn) return {};
    Query find = book.query("SELECT value FROM identity WHERE piano_id = ? AND key = ? AND act_id = ?");
    find << piano << field << head->act;
    return find.step() ? find.text(0) : std::string();
}

void writeField(ActUnderWay& act, std::int64_t piano, const std::string& field, const std::string& value) {
    const Subject& identity = subject("identity");
    if (value == valueStanding(act.book(), piano, field)) return;
    if (value.empty()) {
        takeBack(act, identity, {piano, field});
        return;
    }
    const auto replaces = toReplace(act, identity, {piano, field});
    Query insert =
        act.book().query("INSERT INTO identity (piano_id, key, act_id, replaces, value) VALUES (?, ?, ?, ?, ?)");
    insert << piano << field << act.id() << replaces << value;
    insert.run();
}

std::optional<std::int64_t> passOfRemark(OpenBook& book, std::int64_t piano, const About& about) {
    if (!about.pass) return std::nullopt;
    return passRow(book, piano, *about.pass).id;
}

} // namespace

ActId setIdentity(ActUnderWay& act, std::int64_t piano, const Identity& changes) {
    for (const auto& [field, value] : changes)
        writeField(act, piano, field, value);
    return act.idOrNone();
}

void insertRemark(ActUnderWay& act, std::int64_t piano, const Remark& remark, const RemarkLine& line) {
    const auto pass = line.pass ? line.pass : passOfRemark(act.book(), piano, remark.about);
    const int note = remark.about.note ? remark.about.note->value : 0;
    Query insert = act.book().query(
        "INSERT INTO remark (said_in, item, act_id, origin, piano_id, pass_id, note, part, fault, kind, text, who, "
        "on_day, accepted) VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?)");
    insert << act.id() << line.item << act.id() << line.origin << piano << pass << note << remark.about.part
           << remark.about.fault << key(remark.kind) << remark.text << remark.who << remark.on << remark.accepted;
    insert.run();
}

ActId addRemarks(ActUnderWay& act, std::int64_t piano, std::span<const Remark> remarks) {
    int item = 0;
    for (const Remark& remark : remarks)
        insertRemark(act, piano, remark, {++item, {}, {}});
    return act.idOrNone();
}

ActId removeRemark(ActUnderWay& act, std::int64_t saidIn, int item) {
    const bool held = takeBack(act, subject("remark"), {saidIn, std::int64_t{item}});
    if (!held) fail(RefusalCode::noSuchRemark);
    return act.id();
}

ActId decideAdvice(ActUnderWay& act, std::int64_t saidIn, int item, std::string_view accepted) {
    const Subject& remark = subject("remark");
    const Key name{saidIn, std::int64_t{item}};
    const auto replaces = toReplace(act, remark, name);
    if (!replaces) fail(RefusalCode::noSuchRemark);
    copyVersion(act.book(), remark, name, *replaces, act.id(), false);
    // it says something else now than the row it was copied from: this act is where that comes from
    Query update =
        act.book().query("UPDATE remark SET accepted = ?, origin = NULL WHERE said_in = ? AND item = ? AND act_id = ?");
    update << accepted << saidIn << item << act.id();
    update.run();
    return act.id();
}

} // namespace hammerline
