#include "core/sheet/pass_view.h"

namespace hammerline {

SpecSheet sheetOf(const PianoRecord& record) {
    if (record.spec) return *record.spec;
    if (auto named = builtInSheet(record.specName)) return std::move(*named);
    return builtInSheet(defaultSheet(record.piano.action)).value();
}

Outcome<PassView> viewPass(const PianoRecord& record, int number, Rule rule, const std::optional<SpecSheet>& sheet) {
    const Pass* pass = record.pass(number);
    if (!pass) return refuse(RefusalCode::noSuchPass, std::to_string(number));
    PassView view;
    view.pass = withRelativeHeights(record.piano, *pass);
    view.sheet = sheet ? *sheet : sheetOf(record);
    view.stale = staleCells(record, *pass);
    const Zones zones(view.sheet, record.piano, record.overrides);
    view.review = review(record.piano, view.pass, zones, rule, view.stale);
    view.causes = findCauses({&record, &view.pass, &view.review});
    for (const auto colour : {KeyColour::natural, KeyColour::sharp})
        view.ratio[static_cast<std::size_t>(colour)] = estimateRatio(record.piano, record.passes, colour);
    return view;
}

} // namespace hammerline
