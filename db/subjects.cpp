#include "db/subjects.h"

namespace hammerline {

const std::vector<Subject>& subjects() {
    using enum Points;
    static const std::vector<Subject> rows = {
        {"setup",
         {{"piano_id", piano}},
         {{"name"}, {"action"}, {"notes"}, {"lowest"}, {"spec_name"}, {"spec"}},
         {{"setup_attribute", {{"position"}, {"name"}, {"value"}}, 1}}},
        {"pass_version",
         {{"pass_id", pass}},
         {{"label"}, {"temperature"}, {"humidity"}, {"stack_in"}, {"weights_on"}, {"line_sag"}, {"on_bench"}},
         {{"pass_reference", {{"dimension_id", dimension}, {"reference"}}, 1}}},
        {"reading",
         {{"pass_id", pass}, {"note"}, {"dimension_id", dimension}, {"trial"}},
         {{"relation"}, {"value"}, {"upper"}, {"word"}, {"typed"}, {"unit"}, {"taken"}, {"reason"}},
         {}},
        {"aim_override",
         {{"piano_id", piano}, {"note"}, {"dimension_id", dimension}},
         {{"low"}, {"nominal"}, {"high"}, {"reason"}, {"review_on"}},
         {}},
        {"finding",
         {{"piano_id", piano}, {"note"}, {"part"}, {"fault"}},
         {{"remedy"}, {"state"}, {"amount"}, {"remark"}},
         {}},
        {"symptom", {{"piano_id", piano}, {"symptom"}, {"first"}, {"last"}}, {}, {}},
        {"work_mark", {{"piano_id", piano}, {"step"}, {"note"}}, {{"state"}, {"remark"}, {"seconds"}}, {}, 5},
        {"plan_version", {{"plan_id", plan}}, {}, {}},
        {"done",
         {{"said_in", act}, {"item"}},
         {{"pass_id", pass}, {"plan_id", plan}, {"step"}, {"operation"}, {"amount"}, {"to_aim"}, {"aim"}},
         {{"done_note", {{"note"}, {"touched"}, {"amount"}}, 1}}},
        {"preference", {{"piano_id", piano}, {"key"}}, {{"value"}}, {}},
        {"identity", {{"piano_id", piano}, {"key"}}, {{"value"}}, {}, 4},
        {"remark",
         {{"said_in", act}, {"item"}},
         {{"piano_id", piano},
          {"pass_id", pass},
          {"note"},
          {"part"},
          {"fault"},
          {"kind"},
          {"text"},
          {"who"},
          {"on_day"},
          {"accepted"}},
         {},
         4},
        {"photo",
         {{"said_in", act}, {"item"}},
         {{"piano_id", piano},
          {"pass_id", pass},
          {"note"},
          {"part"},
          {"fault"},
          {"hash"},
          {"caption"},
          {"who"},
          {"on_day"}},
         {},
         4},
    };
    return rows;
}

const Subject& subject(std::string_view table) {
    for (const Subject& row : subjects())
        if (row.table == table) return row;
    return subjects().front();
}

const std::vector<Tag>& tags() {
    using enum Points;
    static const std::vector<Tag> rows = {
        {"piano", piano, {}, "setup", "piano_id"},
        {"pass", pass, {{"piano_id", piano}, {"started_at"}}, "pass_version", "pass_id"},
        {"plan", plan, {{"pass_id", pass}, {"options"}, {"content"}}, "plan_version", "plan_id"},
    };
    return rows;
}

} // namespace hammerline
