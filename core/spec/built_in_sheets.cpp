#include "core/spec/built_in_sheets.h"

#include "core/spec/spec.h"

namespace hammerline {

Outcome<SpecSheet> builtInSheet(std::string_view name) {
    for (const SheetText& each : sheetTexts())
        if (each.name == name) return readSpecSheet(each.json);
    return refuse(RefusalCode::badSpecSheet, std::string(name));
}

std::vector<std::string> builtInSheets() {
    std::vector<std::string> names;
    for (const SheetText& each : sheetTexts())
        names.emplace_back(each.name);
    return names;
}

std::string_view defaultSheet(ActionKind kind) {
    return key(kind); // the sheets bear the names of the kinds of action
}

std::vector<std::string> sheetsFor(ActionKind kind) {
    std::vector<std::string> fitting{std::string(defaultSheet(kind))};
    if (kind == ActionKind::upright) fitting.emplace_back("old-upright");
    return fitting;
}

} // namespace hammerline
