#include "core/sheet/json_number.hpp"
#include "core/sheet/note_action.h"
#include "core/sheet/reserve_json.h"
#include "core/stroke/drawn_note.h"

namespace hammerline {
namespace {

using sheet::Json;

std::string_view agreementKey(DipAgreement agreement) {
    switch (agreement) {
    case DipAgreement::customary:
        return "customary-ratio";
    case DipAgreement::agrees:
        return "agrees";
    case DipAgreement::differs:
        return "differs";
    case DipAgreement::unread:
        break;
    }
    return "unread";
}

Json limit(const std::optional<std::int64_t>& value) {
    return value ? Json(toTrade(*value, Kind::length)) : Json(nullptr);
}

Json accountOf(const DipAccount& account) {
    Json terms = Json::array();
    for (const DipTerm& term : account.terms)
        terms.push_back({{"dimension", sheet::text(key(term.dimension))},
                         {"reading", sheet::rounded(term.reading)},
                         {"share", sheet::rounded(term.share)},
                         {"aim", sheet::rounded(term.aim)},
                         {"aim_share", sheet::rounded(term.aimShare)}});
    Json against = Json::array();
    for (const DipDifference& each : account.against)
        against.push_back({{"dimension", sheet::text(key(each.dimension))}, {"mm", sheet::rounded(each.mm)}});
    Json out = {{"terms", terms},
                {"aftertouch", sheet::rounded(account.computed)},
                {"uncertainty", sheet::rounded(account.uncertainty)},
                {"read", sheet::rounded(account.read)},
                {"agreement", sheet::text(agreementKey(account.agreement))},
                {"at_aims", sheet::rounded(account.atAims)},
                {"against_aims", against},
                {"zone", nullptr},
                {"inferred", nullptr}};
    if (account.zone)
        out["zone"] = {{"low", limit(account.zone->low)},
                       {"nominal", limit(account.zone->nominal)},
                       {"high", limit(account.zone->high)}};
    if (account.inferred)
        out["inferred"] = {{"dimension", sheet::text(key(account.inferred->dimension))},
                           {"value", sheet::rounded(account.inferred->value)},
                           {"uncertainty", sheet::rounded(account.inferred->uncertainty)}};
    return out;
}

Json strokeRow(const Stroke& stroke) {
    return {{"moves", sheet::rounded(stroke.moves)},           {"damper_stirs", sheet::rounded(stroke.damperStirs)},
            {"let_off", sheet::rounded(stroke.letOff)},        {"bottom", sheet::rounded(stroke.bottom)},
            {"aftertouch", sheet::rounded(stroke.aftertouch)}, {"drop_at_hammer", sheet::rounded(stroke.dropAtHammer)}};
}

constexpr double kJustBefore = 1e-9; // mm of the key: the jack is about to leave

Json keysOf(const std::vector<DimensionId>& dimensions) {
    Json out = Json::array();
    for (const DimensionId id : dimensions)
        out.push_back(sheet::text(key(id)));
    return out;
}

/// Where the links of the drawing put the hammer: mm from the string, at mm of the key; or why nothing is drawn.
Json drawingOf(const Piano& piano, const PassTable& table, const Zones& zones, const NoteAction& action) {
    const auto drawn = drawnNote(piano, table, zones, action.account.ratio, action.note);
    if (!drawn) return {{"refused", keysOf(drawn.error().readings)}};
    const kinematics::Linkage& linkage = drawn->linkage;
    const kinematics::Distances& mm = linkage.distances();
    Json out = {{"at_rest", sheet::rounded(linkage.at(0).gap)},
                {"at_let_off", nullptr},
                {"let_off", nullptr},
                {"bottom", sheet::rounded(mm.dip)},
                {"damper_stirs", sheet::rounded(drawn->damperStirs ? linkage.damperFrom() : std::nullopt)},
                {"at_aim", keysOf(drawn->atAim)}};
    if (mm.escapeAt > mm.dip) return out; // the jack stays
    out["at_let_off"] = sheet::rounded(linkage.at(mm.escapeAt - kJustBefore).gap);
    out["let_off"] = sheet::rounded(mm.escapeAt);
    return out;
}

} // namespace

std::string actionJson(const PianoRecord& record, const PassView& view, std::span<const NoteAction> actions,
                       const std::optional<Pass>& after) {
    Json rows = Json::array();
    const Zones zones(view.sheet, record.piano, record.overrides);
    const PassTable table(record.piano, view.pass), tableAfter(record.piano, after ? *after : view.pass);
    for (const NoteAction& each : actions) {
        const bool sharp = colourOf(each.note, record.piano) == KeyColour::sharp;
        Json entry = {{"note", each.note.value},
                      {"name", pitchName(each.note, record.piano)},
                      {"keys", sharp ? "sharp" : "natural"},
                      {"ratio", sheet::rounded(each.account.ratio.value)},
                      {"account", accountOf(each.account)},
                      {"stroke", strokeRow(each.stroke)},
                      {"account_after", nullptr},
                      {"stroke_after", nullptr},
                      {"drawing", drawingOf(record.piano, table, zones, each)},
                      {"drawing_after", nullptr},
                      {"stands_out", standsOut(each)},
                      {"left", Json::parse(reservesJson(reservesAt(record, zones, each.note)))}};
        if (each.accountAfter) entry["account_after"] = accountOf(*each.accountAfter);
        if (each.accountAfter) entry["drawing_after"] = drawingOf(record.piano, tableAfter, zones, each);
        if (each.strokeAfter) entry["stroke_after"] = strokeRow(*each.strokeAfter);
        rows.push_back(std::move(entry));
    }
    Json ratios = Json::array();
    for (const Ratio& ratio : view.ratio)
        ratios.push_back({{"value", sheet::rounded(ratio.value)},
                          {"spread", sheet::rounded(ratio.spread)},
                          {"notes", ratio.notes},
                          {"entered", ratio.entered}});
    return sheet::dump({{"piano", record.piano.name},
                        {"pass", view.pass.number},
                        {"ratio", ratios},
                        {"notes", rows},
                        {"settling", Json::parse(settlingsJson(settlingOf(record)))}});
}

} // namespace hammerline
