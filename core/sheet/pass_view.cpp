#include "core/sheet/pass_view.h"

#include "core/causes/in_visit.h"
#include "core/history/season_of.h"

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
    const Zones zones(sheetInSeason(view.sheet, record, number), record.piano, record.overrides);
    view.review = review(record.piano, view.pass, zones, rule, view.stale);
    const Pass found = foundInVisit(record, view.pass);
    if (found.cells.size() == view.pass.cells.size()) {
        view.causes = findCauses({&record, &view.pass, &view.review});
    } else {
        const Review whole = review(record.piano, found, zones, rule, view.stale);
        view.causes = findCauses({&record, &found, &whole});
    }
    for (const auto colour : {KeyColour::natural, KeyColour::sharp})
        view.ratio[static_cast<std::size_t>(colour)] = estimateRatio(record.piano, record.passes, colour);
    return view;
}

} // namespace hammerline
