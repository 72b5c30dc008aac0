// The fields by which parts are ordered. Ranges are to warn only. Common practice, no source, but: springs, straps and
// punchings as repairers and a supplier state them (straps 75 to 110 mm; front punchings of 22.2 mm, 7/8 in; key
// bushing cloth .038 to .065 in; damper felts of 3/8 and 7/16 in depth), from memory of public posts.
#include "core/survey/size_rows.h"

namespace hammerline::survey {
namespace {

using enum SizeUnit;

constexpr std::array kCentrePinSize = {SizeField{"diameter", mm, 1.15, 1.5}, SizeField{"number", number, 17, 25},
                                       SizeField{"length", mm, 8, 20}};
constexpr std::array kCentreBushingSize = {SizeField{"thickness", mm, 1, 1.4}};
constexpr std::array kButtPlateSize = {SizeField{"hole-distance", mm}, SizeField{"width", mm}, SizeField{"length", mm}};
constexpr std::array kButtPlateScrewSize = {SizeField{"diameter", mm}, SizeField{"threads-per-inch", number, 40, 64},
                                            SizeField{"length", mm}, SizeField{"head", word}};
constexpr std::array kBrassFlangeRailSize = {SizeField{"section-length", mm}, SizeField{"tongues", number},
                                             SizeField{"pitch", mm}, SizeField{"hole", mm}};
constexpr std::array kBridleStrapSize = {SizeField{"kind", word}, SizeField{"length", mm, 75, 110}};
constexpr std::array kButtLeatherSize = {SizeField{"width", mm, 9, 11}, SizeField{"length", mm, 25, 32},
                                         SizeField{"thickness", mm, 1.5, 2.5}};
constexpr std::array kButtCushionSize = {SizeField{"width", mm}, SizeField{"length", mm}, SizeField{"thickness", mm}};
constexpr std::array kButtSpringSize = {SizeField{"kind", word}, SizeField{"length", mm}, SizeField{"wire", mm}};
constexpr std::array kJackSpringSize = {SizeField{"length", mm, 14, 20}, SizeField{"diameter", mm, 5, 7},
                                        SizeField{"wire", mm, 0.4, 0.5}};
constexpr std::array kWippenHeelClothSize = {SizeField{"width", mm}, SizeField{"length", mm},
                                             SizeField{"thickness", mm, 2.5, 4}};
constexpr std::array kLetOffButtonSize = {SizeField{"diameter", mm, 10, 13}, SizeField{"hole", mm},
                                          SizeField{"thickness", mm, 3, 5}};
constexpr std::array kBackCheckSize = {SizeField{"width", mm}, SizeField{"length", mm}, SizeField{"thickness", mm}};
constexpr std::array kCatcherLeatherSize = {SizeField{"width", mm}, SizeField{"length", mm},
                                            SizeField{"thickness", mm}};
constexpr std::array kHammerHeadSize = {SizeField{"count", number}, SizeField{"bore", mm},
                                        SizeField{"rake", number},  SizeField{"tail", mm},
                                        SizeField{"width", mm},     SizeField{"shank-diameter", mm, 5.4, 6.2}};
constexpr std::array kHammerShankSize = {SizeField{"diameter", mm, 5.4, 6.2}, SizeField{"length", mm}};
constexpr std::array kRestRailClothSize = {SizeField{"width", mm}, SizeField{"length", mm},
                                           SizeField{"thickness", mm, 3, 5}};
constexpr std::array kBackRailClothSize = {SizeField{"width", mm}, SizeField{"length", mm},
                                           SizeField{"thickness", mm, 5, 7}};
constexpr std::array kSpringRailFeltSize = {SizeField{"width", mm}, SizeField{"length", mm},
                                            SizeField{"thickness", mm}};
constexpr std::array kRestRailCushionsSize = {SizeField{"width", mm}, SizeField{"length", mm},
                                              SizeField{"thickness", mm}};
constexpr std::array kFrontFeltSize = {SizeField{"outside", mm, 19, 25}, SizeField{"hole", mm},
                                       SizeField{"thickness", mm, 5, 7.5}};
constexpr std::array kBalanceFeltSize = {SizeField{"outside", mm, 16, 22}, SizeField{"hole", mm},
                                         SizeField{"thickness", mm, 1, 3}};
constexpr std::array kFrontBushingSize = {SizeField{"thickness", mm, 0.95, 1.65}};
constexpr std::array kBalanceBushingSize = {SizeField{"thickness", mm, 0.95, 1.65}};
constexpr std::array kBushingClothSize = {SizeField{"thickness", mm, 0.95, 1.65}};
constexpr std::array kKeyButtonSize = {SizeField{"width", mm}, SizeField{"length", mm}, SizeField{"hole", mm},
                                       SizeField{"kind", word}};
constexpr std::array kKeyTopSize = {SizeField{"width", mm}, SizeField{"length", mm}, SizeField{"thickness", mm}};
constexpr std::array kDamperFeltWedgeSize = {SizeField{"width", mm}, SizeField{"length", mm},
                                             SizeField{"depth", mm, 9, 11.5}};
constexpr std::array kDamperFeltClipSize = {SizeField{"width", mm}, SizeField{"length", mm},
                                            SizeField{"depth", mm, 9, 11.5}};
constexpr std::array kDamperFeltFlatSize = {SizeField{"width", mm}, SizeField{"length", mm},
                                            SizeField{"depth", mm, 9, 11.5}};
constexpr std::array kDamperFeltSplitWedgeSize = {SizeField{"width", mm}, SizeField{"length", mm},
                                                  SizeField{"depth", mm, 9, 11.5}};
constexpr std::array kOverdamperFeltSize = {SizeField{"width", mm}, SizeField{"length", mm}, SizeField{"depth", mm}};
constexpr std::array kDamperLeverSpringSize = {SizeField{"length", mm}, SizeField{"wire", mm}, SizeField{"hook", word}};
constexpr std::array kSpringCordSize = {SizeField{"diameter", mm}};
constexpr std::array kLifterSize = {SizeField{"hole", mm}, SizeField{"length", mm}, SizeField{"thread", mm}};
constexpr std::array kKnuckleSize = {SizeField{"diameter", mm, 9, 10.5}, SizeField{"length", mm},
                                     SizeField{"core", mm}};
constexpr std::array kBackCheckWireSize = {SizeField{"kind", word}, SizeField{"length", mm}, SizeField{"diameter", mm}};

constexpr std::array kSizeRows = {
    SizeRow{"centre-pin", kCentrePinSize},
    SizeRow{"centre-bushing", kCentreBushingSize},
    SizeRow{"butt-plate", kButtPlateSize},
    SizeRow{"butt-plate-screw", kButtPlateScrewSize},
    SizeRow{"brass-flange-rail", kBrassFlangeRailSize},
    SizeRow{"bridle-strap", kBridleStrapSize},
    SizeRow{"butt-leather", kButtLeatherSize},
    SizeRow{"butt-cushion", kButtCushionSize},
    SizeRow{"butt-spring", kButtSpringSize},
    SizeRow{"jack-spring", kJackSpringSize},
    SizeRow{"wippen-heel-cloth", kWippenHeelClothSize},
    SizeRow{"let-off-button", kLetOffButtonSize},
    SizeRow{"back-check", kBackCheckSize},
    SizeRow{"catcher-leather", kCatcherLeatherSize},
    SizeRow{"hammer-head", kHammerHeadSize},
    SizeRow{"hammer-shank", kHammerShankSize},
    SizeRow{"rest-rail-cloth", kRestRailClothSize},
    SizeRow{"back-rail-cloth", kBackRailClothSize},
    SizeRow{"spring-rail-felt", kSpringRailFeltSize},
    SizeRow{"rest-rail-cushions", kRestRailCushionsSize},
    SizeRow{"front-felt", kFrontFeltSize},
    SizeRow{"balance-felt", kBalanceFeltSize},
    SizeRow{"front-bushing", kFrontBushingSize},
    SizeRow{"balance-bushing", kBalanceBushingSize},
    SizeRow{"bushing-cloth", kBushingClothSize},
    SizeRow{"key-button", kKeyButtonSize},
    SizeRow{"key-top", kKeyTopSize},
    SizeRow{"damper-felt-wedge", kDamperFeltWedgeSize},
    SizeRow{"damper-felt-clip", kDamperFeltClipSize},
    SizeRow{"damper-felt-flat", kDamperFeltFlatSize},
    SizeRow{"damper-felt-split-wedge", kDamperFeltSplitWedgeSize},
    SizeRow{"overdamper-felt", kOverdamperFeltSize},
    SizeRow{"damper-lever-spring", kDamperLeverSpringSize},
    SizeRow{"spring-cord", kSpringCordSize},
    SizeRow{"lifter", kLifterSize},
    SizeRow{"knuckle", kKnuckleSize},
    SizeRow{"back-check-wire", kBackCheckWireSize},
};

} // namespace

std::span<const SizeRow> sizeRowsOfSupplies() {
    return kSizeRows;
}

} // namespace hammerline::survey
