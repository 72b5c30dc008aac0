// The names of the survey's parts: as rows of the survey, and as they are ordered.
#include "ui/words/survey_names.h"

#include "ui/words/said.h"

#include <QCoreApplication>

#include <algorithm>
#include <array>

namespace hammerline::words {

namespace {

struct PartNames {
    std::string_view key;
    const char* one;  // a row of the survey
    const char* many; // a line of the order; null: as the row
};

// clang-format off
constexpr std::array kParts = {
    PartNames{"action-bolts", QT_TRANSLATE_NOOP("survey", "Action bolts, studs"), nullptr},
    PartNames{"action-brackets", QT_TRANSLATE_NOOP("survey", "Action brackets, rails"), nullptr},
    PartNames{"flange-screws", QT_TRANSLATE_NOOP("survey", "Flange screws"), nullptr},
    PartNames{"brass-flange-rail", QT_TRANSLATE_NOOP("survey", "Brass flange rail, tongues"), nullptr},
    PartNames{"butt-plate", QT_TRANSLATE_NOOP("survey", "Butt plate, screw"), QT_TRANSLATE_NOOP("survey", "Butt plates")},
    PartNames{"hammer-flange", QT_TRANSLATE_NOOP("survey", "Hammer flange, pin"), nullptr},
    PartNames{"butt-leather", QT_TRANSLATE_NOOP("survey", "Butt leather"), QT_TRANSLATE_NOOP("survey", "Butt leathers")},
    PartNames{"butt-cushion", QT_TRANSLATE_NOOP("survey", "Butt cushion"), QT_TRANSLATE_NOOP("survey", "Butt cushions")},
    PartNames{"butt-spring", QT_TRANSLATE_NOOP("survey", "Butt spring"), QT_TRANSLATE_NOOP("survey", "Butt springs")},
    PartNames{"spring-rail", QT_TRANSLATE_NOOP("survey", "Spring rail"), nullptr},
    PartNames{"hammer-shank", QT_TRANSLATE_NOOP("survey", "Hammer shank"), QT_TRANSLATE_NOOP("survey", "Hammer shanks")},
    PartNames{"hammer-head", QT_TRANSLATE_NOOP("survey", "Hammer head"), QT_TRANSLATE_NOOP("survey", "Hammer heads")},
    PartNames{"catcher", QT_TRANSLATE_NOOP("survey", "Catcher"), QT_TRANSLATE_NOOP("survey", "Catchers")},
    PartNames{"back-check", QT_TRANSLATE_NOOP("survey", "Back-check felt"), QT_TRANSLATE_NOOP("survey", "Back-check felts")},
    PartNames{"back-check-wire", QT_TRANSLATE_NOOP("survey", "Back-check wire"), QT_TRANSLATE_NOOP("survey", "Back-check wires")},
    PartNames{"bridle-strap", QT_TRANSLATE_NOOP("survey", "Bridle strap"), QT_TRANSLATE_NOOP("survey", "Bridle straps")},
    PartNames{"bridle-wire", QT_TRANSLATE_NOOP("survey", "Bridle wire"), QT_TRANSLATE_NOOP("survey", "Bridle wires")},
    PartNames{"wippen", QT_TRANSLATE_NOOP("survey", "Wippen, flange, pin"), QT_TRANSLATE_NOOP("survey", "Wippens")},
    PartNames{"wippen-heel-cloth", QT_TRANSLATE_NOOP("survey", "Wippen heel cloth"), QT_TRANSLATE_NOOP("survey", "Wippen heel cloths")},
    PartNames{"sticker", QT_TRANSLATE_NOOP("survey", "Sticker"), QT_TRANSLATE_NOOP("survey", "Stickers")},
    PartNames{"jack", QT_TRANSLATE_NOOP("survey", "Jack, flange, pin"), QT_TRANSLATE_NOOP("survey", "Jacks")},
    PartNames{"jack-spring", QT_TRANSLATE_NOOP("survey", "Jack spring"), QT_TRANSLATE_NOOP("survey", "Jack springs")},
    PartNames{"jack-stop-felt", QT_TRANSLATE_NOOP("survey", "Jack stop felt"), QT_TRANSLATE_NOOP("survey", "Jack stop felts")},
    PartNames{"let-off-rail", QT_TRANSLATE_NOOP("survey", "Let-off rail"), nullptr},
    PartNames{"let-off-screw", QT_TRANSLATE_NOOP("survey", "Let-off screw"), QT_TRANSLATE_NOOP("survey", "Let-off screws")},
    PartNames{"let-off-button", QT_TRANSLATE_NOOP("survey", "Let-off button, felt"), QT_TRANSLATE_NOOP("survey", "Let-off button felts")},
    PartNames{"drop-screw", QT_TRANSLATE_NOOP("survey", "Drop screw, felt"), QT_TRANSLATE_NOOP("survey", "Drop screw felts")},
    PartNames{"repetition-lever", QT_TRANSLATE_NOOP("survey", "Repetition lever"), QT_TRANSLATE_NOOP("survey", "Repetition levers")},
    PartNames{"knuckle", QT_TRANSLATE_NOOP("survey", "Knuckle"), QT_TRANSLATE_NOOP("survey", "Knuckles")},
    PartNames{"rest-rail-cloth", QT_TRANSLATE_NOOP("survey", "Rest rail, cloth"), QT_TRANSLATE_NOOP("survey", "Rest rail cloth")},
    PartNames{"rest-rail-cushions", QT_TRANSLATE_NOOP("survey", "Rest rail cushions"), nullptr},
    PartNames{"rail-lift-rod", QT_TRANSLATE_NOOP("survey", "Rail lift rod"), nullptr},
    PartNames{"rest-felt", QT_TRANSLATE_NOOP("survey", "Rest felt"), nullptr},
    PartNames{"damper-lever", QT_TRANSLATE_NOOP("survey", "Damper lever, pin"), QT_TRANSLATE_NOOP("survey", "Damper levers")},
    PartNames{"damper-lever-spring", QT_TRANSLATE_NOOP("survey", "Damper lever spring"), QT_TRANSLATE_NOOP("survey", "Damper lever springs")},
    PartNames{"spoon", QT_TRANSLATE_NOOP("survey", "Damper spoon"), QT_TRANSLATE_NOOP("survey", "Damper spoons")},
    PartNames{"damper-lever-cloth", QT_TRANSLATE_NOOP("survey", "Damper lever cloth"), QT_TRANSLATE_NOOP("survey", "Damper lever cloths")},
    PartNames{"damper-wire", QT_TRANSLATE_NOOP("survey", "Damper wire, head"), QT_TRANSLATE_NOOP("survey", "Damper wires")},
    PartNames{"damper-felt-wedge", QT_TRANSLATE_NOOP("survey", "Damper felt, wedge"), QT_TRANSLATE_NOOP("survey", "Damper felts, bichord wedge")},
    PartNames{"damper-felt-clip", QT_TRANSLATE_NOOP("survey", "Damper felt, clip"), QT_TRANSLATE_NOOP("survey", "Damper felts, clip")},
    PartNames{"damper-felt-flat", QT_TRANSLATE_NOOP("survey", "Damper felt, flat"), QT_TRANSLATE_NOOP("survey", "Damper felts, flat")},
    PartNames{"damper-felt-split-wedge", QT_TRANSLATE_NOOP("survey", "Damper felt, split"), QT_TRANSLATE_NOOP("survey", "Damper felts, split wedge")},
    PartNames{"damper-rod", QT_TRANSLATE_NOOP("survey", "Damper lift rod"), QT_TRANSLATE_NOOP("survey", "Damper rod bushings")},
    PartNames{"damper-underlever", QT_TRANSLATE_NOOP("survey", "Damper underlever"), QT_TRANSLATE_NOOP("survey", "Damper underlevers")},
    PartNames{"overdamper", QT_TRANSLATE_NOOP("survey", "Overdamper"), QT_TRANSLATE_NOOP("survey", "Overdampers")},
    PartNames{"muffler-rail", QT_TRANSLATE_NOOP("survey", "Muffler rail"), nullptr},
    PartNames{"key", QT_TRANSLATE_NOOP("survey", "Key, stick"), QT_TRANSLATE_NOOP("survey", "Keys")},
    PartNames{"key-top", QT_TRANSLATE_NOOP("survey", "Key top, front"), QT_TRANSLATE_NOOP("survey", "Key tops")},
    PartNames{"balance-hole", QT_TRANSLATE_NOOP("survey", "Balance hole, button"), QT_TRANSLATE_NOOP("survey", "Balance holes")},
    PartNames{"front-bushing", QT_TRANSLATE_NOOP("survey", "Bushing, front"), QT_TRANSLATE_NOOP("survey", "Key bushings, front")},
    PartNames{"balance-bushing", QT_TRANSLATE_NOOP("survey", "Bushing, balance"), QT_TRANSLATE_NOOP("survey", "Key bushings, balance")},
    PartNames{"front-rail-pin", QT_TRANSLATE_NOOP("survey", "Front-rail pin"), QT_TRANSLATE_NOOP("survey", "Front-rail pins")},
    PartNames{"balance-rail-pin", QT_TRANSLATE_NOOP("survey", "Balance-rail pin"), QT_TRANSLATE_NOOP("survey", "Balance-rail pins")},
    PartNames{"balance-felt", QT_TRANSLATE_NOOP("survey", "Balance felt punching"), QT_TRANSLATE_NOOP("survey", "Balance felt punchings")},
    PartNames{"front-felt", QT_TRANSLATE_NOOP("survey", "Front felt punching"), QT_TRANSLATE_NOOP("survey", "Front felt punchings")},
    PartNames{"back-rail-cloth", QT_TRANSLATE_NOOP("survey", "Back-rail cloth"), nullptr},
    PartNames{"paper-punchings", QT_TRANSLATE_NOOP("survey", "Paper punchings"), nullptr},
    PartNames{"key-frame", QT_TRANSLATE_NOOP("survey", "Key frame, bed"), nullptr},
    PartNames{"key-slip", QT_TRANSLATE_NOOP("survey", "Key slip, fallboard"), nullptr},
    PartNames{"capstan", QT_TRANSLATE_NOOP("survey", "Capstan screw"), QT_TRANSLATE_NOOP("survey", "Capstan screws")},
    PartNames{"rocker", QT_TRANSLATE_NOOP("survey", "Rocker, nail capstan"), QT_TRANSLATE_NOOP("survey", "Rockers")},
    PartNames{"lifter", QT_TRANSLATE_NOOP("survey", "Lifter, elbow, grommet"), QT_TRANSLATE_NOOP("survey", "Lifter elbows")},
    PartNames{"trapwork", QT_TRANSLATE_NOOP("survey", "Trapwork, pedals"), QT_TRANSLATE_NOOP("survey", "Trapwork")},
    PartNames{"strings-soundboard", QT_TRANSLATE_NOOP("survey", "Strings, soundboard, plate"), nullptr},
    PartNames{"string-fit", QT_TRANSLATE_NOOP("survey", "String, number and gauge"), QT_TRANSLATE_NOOP("survey", "Strings")},
    PartNames{"case", QT_TRANSLATE_NOOP("survey", "Case, castors"), QT_TRANSLATE_NOOP("survey", "Castors")},
    PartNames{"player-stack", QT_TRANSLATE_NOOP("survey", "Player stack"), nullptr},
    PartNames{"player-stop-rail", QT_TRANSLATE_NOOP("survey", "Player stop rail"), nullptr},
    PartNames{"player-tubes", QT_TRANSLATE_NOOP("survey", "Player tubes, motor, pump"), QT_TRANSLATE_NOOP("survey", "Player tubes")},
    PartNames{"moth-rust", QT_TRANSLATE_NOOP("survey", "Moth, rust, verdigris"), nullptr},
};

struct SupplyName {
    std::string_view key;
    const char* name;
};
constexpr std::array kSupplies = {
    SupplyName{"centre-pin", QT_TRANSLATE_NOOP("survey", "Centre pins")},
    SupplyName{"centre-bushing", QT_TRANSLATE_NOOP("survey", "Centre bushings")},
    SupplyName{"butt-plate-screw", QT_TRANSLATE_NOOP("survey", "Screws for butt plates")},
    SupplyName{"butt", QT_TRANSLATE_NOOP("survey", "Hammer butts")},
    SupplyName{"spring-cord", QT_TRANSLATE_NOOP("survey", "Spring cord")},
    SupplyName{"spring-rail-felt", QT_TRANSLATE_NOOP("survey", "Spring rail felt")},
    SupplyName{"catcher-leather", QT_TRANSLATE_NOOP("survey", "Catcher leathers")},
    SupplyName{"repetition-leather", QT_TRANSLATE_NOOP("survey", "Repetition lever leathers")},
    SupplyName{"bushing-cloth", QT_TRANSLATE_NOOP("survey", "Key bushing cloth")},
    SupplyName{"butt-leather-sheet", QT_TRANSLATE_NOOP("survey", "or leather for the butts")},
    SupplyName{"catcher-leather-sheet", QT_TRANSLATE_NOOP("survey", "or leather for the catchers")},
    SupplyName{"heel-cloth-sheet", QT_TRANSLATE_NOOP("survey", "or cloth for the wippen heels")},
    SupplyName{"lever-cloth-sheet", QT_TRANSLATE_NOOP("survey", "or cloth for the damper levers")},
    SupplyName{"check-felt-sheet", QT_TRANSLATE_NOOP("survey", "or felt for the back-checks")},
    SupplyName{"key-button", QT_TRANSLATE_NOOP("survey", "Key buttons")},
    SupplyName{"name-board-felt", QT_TRANSLATE_NOOP("survey", "Name-board felt")},
    SupplyName{"trapwork-felt", QT_TRANSLATE_NOOP("survey", "Trapwork bushings and felt")},
    SupplyName{"muffler-felt", QT_TRANSLATE_NOOP("survey", "Muffler felt")},
    SupplyName{"overdamper-felt", QT_TRANSLATE_NOOP("survey", "Overdamper felts")},
};
// clang-format on

QString plain(std::string_view key) {
    return QString::fromUtf8(key.data(), static_cast<qsizetype>(key.size()))
        .replace(QLatin1Char('-'), QLatin1Char(' '));
}

const PartNames* find(std::string_view key) {
    const auto found = std::find_if(kParts.begin(), kParts.end(), [&](const PartNames& p) { return p.key == key; });
    return found == kParts.end() ? nullptr : &*found;
}

} // namespace

QString partOfActionName(std::string_view part) {
    const PartNames* names = find(part);
    return names ? inSurvey(names->one) : supplyName(part);
}

QString supplyName(std::string_view supply) {
    for (const SupplyName& each : kSupplies)
        if (each.key == supply) return inSurvey(each.name);
    const PartNames* names = find(supply);
    if (!names) return plain(supply);
    return inSurvey(names->many ? names->many : names->one);
}

} // namespace hammerline::words
