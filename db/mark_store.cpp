// Steps of the order of work that were ticked by hand.
#include "db/stores.h"
#include "db/versions.h"

namespace hammerline {
namespace {

Key markKey(std::int64_t piano, const std::string& step, std::optional<NoteNumber> note) {
    return {piano, step, std::int64_t{note ? note->value : 0}};
}

} // namespace

void insertMark(ActUnderWay& act, std::int64_t piano, const WorkMark& mark, std::optional<ActId> origin) {
    const auto replaces = toReplace(act, subject("work_mark"), markKey(piano, mark.step, mark.note));
    Query insert = act.book().query("INSERT INTO work_mark (piano_id, step, note, act_id, replaces, origin, state, "
                                    "remark, seconds) VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?)");
    insert << piano << mark.step << (mark.note ? mark.note->value : 0) << act.id() << replaces << origin
           << key(mark.state) << mark.remark << mark.seconds;
    insert.run();
}

void sayWork(ActUnderWay& act, std::int64_t piano, const WorkSaid& said) {
    for (const auto& [step, note] : said.takenBack)
        takeBack(act, subject("work_mark"), markKey(piano, step, note));
    for (const WorkMark& mark : said.marks)
        insertMark(act, piano, mark, {});
}

} // namespace hammerline
