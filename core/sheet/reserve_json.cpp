#include "core/sheet/reserve_json.h"

#include "core/sheet/json_number.hpp"

namespace hammerline {

using sheet::Json;

std::string reservesJson(std::span<const Reserve> reserves) {
    Json out = Json::array();
    for (const Reserve& each : reserves)
        out.push_back({{"of", sheet::text(key(each.of))},
                       {"note", each.note.value},
                       {"from", sheet::text(key(each.from))},
                       {"left", sheet::rounded(each.left)},
                       {"unit", each.turns ? "turn" : "mm"},
                       {"per_round", sheet::rounded(each.perRound)},
                       {"rounds", each.rounds ? Json(*each.rounds) : Json(nullptr)},
                       {"read", each.toRead ? sheet::text(key(*each.toRead)) : Json(nullptr)}});
    return sheet::dump(out);
}

std::string settlingsJson(std::span<const Settling> settlings) {
    Json out = Json::array();
    for (const Settling& each : settlings) {
        Json bands = Json::array();
        for (const SettlingBand& band : each.bands)
            bands.push_back({{"dimension", sheet::text(key(band.dimension))},
                             {"keys", !band.keys                       ? Json(nullptr)
                                      : *band.keys == KeyColour::sharp ? Json("sharp")
                                                                       : Json("natural")},
                             {"least", sheet::rounded(band.least)},
                             {"most", sheet::rounded(band.most)}});
        out.push_back({{"part", sheet::text(each.row->part)},
                       {"notes", writeNotes(each.notes)},
                       {"first_visit", each.firstVisit},
                       {"settled_by", each.settledBy},
                       {"source", sheet::text(each.row->source)},
                       {"bands", bands}});
    }
    return sheet::dump(out);
}

std::string settlingCellsJson(std::span<const SettlingCell> cells) {
    Json out = Json::array();
    for (const SettlingCell& each : cells)
        out.push_back({{"note", each.cell.note.value},
                       {"dimension", sheet::text(key(each.cell.dimension))},
                       {"low", sheet::rounded(each.low)},
                       {"high", sheet::rounded(each.high)}});
    return sheet::dump(out);
}

} // namespace hammerline
