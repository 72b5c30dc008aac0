#include "db/stores.h"
#include "db/versions.h"

#include <nlohmann/json.hpp>

#include <cmath>
#include <set>

namespace hammerline {
namespace {

constexpr double kAmountUnits = 1e6;
constexpr double kLargestAmount = 1e6; // mm or turns: far beyond any screw

std::optional<std::int64_t> planRow(OpenBook& book, const std::string& uuid) {
    const auto parsed = parseUuid(uuid);
    if (!parsed) return std::nullopt;
    Query find = book.query("SELECT id FROM plan WHERE uuid = ?");
    find << *parsed;
    return find.step() ? std::optional(find.number(0)) : std::nullopt;
}

void writePlanVersion(ActUnderWay& act, std::int64_t plan) {
    const auto replaces = toReplace(act, subject("plan_version"), {plan});
    Query insert = act.book().query("INSERT INTO plan_version (plan_id, act_id, replaces) VALUES (?, ?, ?)");
    insert << plan << act.id() << replaces;
    insert.run();
}

bool planHolds(OpenBook& book, std::int64_t plan) {
    const auto holds = holding(heads(book, subject("plan_version"), {plan}));
    return holds && !holds->withdrawn;
}

/// json_valid in a CHECK is no use: a schema that is not trusted may not call it (SQLite 3.40).
void requireJson(const std::string& text, std::string_view field) {
    if (!nlohmann::json::accept(text)) fail(RefusalCode::badJson, text.substr(0, 80), std::string(field));
}

/// Row of the plan, frozen now if it is not in the book yet (or was taken back).
std::int64_t frozen(ActUnderWay& act, std::int64_t piano, const FrozenPlan& plan) {
    OpenBook& book = act.book();
    auto row = planRow(book, plan.uuid);
    if (row && planHolds(book, *row)) return *row;
    if (!row) {
        requireJson(plan.options, "options");
        requireJson(plan.content, "content");
        const Uuid uuid = parseUuid(plan.uuid).value_or(newUuid());
        const std::int64_t pass = passRow(book, piano, plan.pass).id;
        Query insert = book.query("INSERT INTO plan (uuid, pass_id, act_id, options, content) VALUES (?, ?, ?, ?, ?)");
        insert << uuid << pass << act.id() << plan.options << plan.content;
        insert.run();
        row = book.db.getLastInsertRowid();
    }
    writePlanVersion(act, *row);
    return *row;
}

std::optional<std::int64_t> planOf(OpenBook& book, const Done& done, std::optional<std::int64_t> frozenNow) {
    if (done.plan.empty()) return done.step.empty() ? std::nullopt : frozenNow;
    const auto row = planRow(book, done.plan);
    if (!row) fail(RefusalCode::noPlan, done.plan);
    return row;
}

void writeNotes(ActUnderWay& act, int item, const Done& done) {
    std::set<int> touched, all;
    for (const NoteNumber note : done.notes)
        touched.insert(note.value);
    all = touched;
    for (const auto& [note, amount] : done.amounts)
        all.insert(note);
    for (const int note : all) {
        const auto amount = done.amounts.find(note);
        Query insert = act.book().query("INSERT INTO done_note VALUES (?, ?, ?, ?, ?, ?)");
        insert << act.id() << item << act.id() << note << touched.contains(note);
        if (amount == done.amounts.end())
            insert << std::nullopt;
        else
            insert << amountCount(amount->second);
        insert.run();
    }
}

} // namespace

void insertDone(ActUnderWay& act, const Done& done, const DoneLine& line) {
    Query insert =
        act.book().query("INSERT INTO done (said_in, item, act_id, origin, pass_id, plan_id, step, operation, "
                         "amount, to_aim, aim) VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?)");
    insert << act.id() << line.item << act.id() << line.origin << line.pass << line.plan << done.step
           << key(done.operation);
    if (done.amount)
        insert << amountCount(*done.amount);
    else
        insert << std::nullopt;
    insert << done.toAim;
    if (done.aim)
        insert << amountCount(*done.aim);
    else
        insert << std::nullopt;
    insert.run();
    writeNotes(act, line.item, done);
}

std::int64_t amountCount(double amount) {
    if (!std::isfinite(amount) || std::abs(amount) > kLargestAmount) fail(RefusalCode::outOfRange, {}, "amount");
    return std::llround(amount * kAmountUnits);
}
double amountOf(std::int64_t count) {
    return static_cast<double>(count) / kAmountUnits;
}

ActId freezePlan(ActUnderWay& act, std::int64_t piano, const FrozenPlan& plan) {
    frozen(act, piano, plan);
    return act.idOrNone();
}

ActId tick(ActUnderWay& act, std::int64_t piano, std::span<const Done> done, const std::optional<FrozenPlan>& plan) {
    std::optional<std::int64_t> frozenNow;
    if (plan) frozenNow = frozen(act, piano, *plan);
    int item = 0;
    for (const Done& each : done)
        insertDone(act, each,
                   {++item, passRow(act.book(), piano, each.pass).id, planOf(act.book(), each, frozenNow), {}});
    return act.idOrNone();
}

void untick(ActUnderWay& act, const std::string& plan, const std::string& step) {
    const auto row = planRow(act.book(), plan);
    if (!row || step.empty()) return;
    std::vector<Key> said;
    Query find = act.book().query("SELECT DISTINCT said_in, item FROM done WHERE plan_id = ? AND step = ?");
    find << *row << step;
    while (find.step())
        said.push_back({find.number(0), find.number(1)});
    for (const Key& each : said)
        takeBack(act, subject("done"), each);
}

} // namespace hammerline
