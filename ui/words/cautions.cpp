// Cautions where the work is, in our own words. They defer to local rules and to licensed practice.
#include "ui/words/words.h"

#include <QCoreApplication>

#include <array>

namespace hammerline::words {

namespace {

struct Caution {
    std::string_view id;
    const char* text;
};

constexpr std::array kCautions = {
    Caution{"tipping", QT_TRANSLATE_NOOP("cautions",
                                         "An upright falls backward, the more with action, keys or a player stack out. "
                                         "Block the wheels, keep the back near a wall or a helper behind, children "
                                         "away; never tilt it or lay it down alone.")},
    Caution{"tension",
            QT_TRANSLATE_NOOP("cautions", "The strings pull with the weight of tonnes. Do not loosen pins, strings or "
                                          "plate screws on the word of this program; wear eye cover near a broken "
                                          "string, and leave such work to a trained technician.")},
    Caution{"force",
            QT_TRANSLATE_NOOP("cautions", "Nothing is forced: not a screw that does not turn, not a wire that was bent "
                                          "twice, not the tongue of a brass rail. Hold the wooden part with a second "
                                          "tool while bending.")},
    Caution{"solvents", QT_TRANSLATE_NOOP(
                            "cautions", "Thin glue and solvents give off vapour that may sicken hours later: open the "
                                        "windows, keep face and skin away, wear eye cover, no flame. Follow the "
                                        "sheet of the product.")},
    Caution{"dust",
            QT_TRANSLATE_NOOP("cautions", "Old felt and the dust in a piano may hold mould, insects, metal and remains "
                                          "of poison against moth. Wear a mask, wipe damp, do not blow; wash your "
                                          "hands.")},
    Caution{"lead",
            QT_TRANSLATE_NOOP("cautions", "Key leads and old lead tubes shed poisonous dust. Gloves and mask, damp "
                                          "wiping, no sanding, no food near; keep children away and follow the local "
                                          "rules for waste.")},
    Caution{"ivory",
            QT_TRANSLATE_NOOP("cautions", "Old white key tops may be ivory, which is protected. Ask what the law where "
                                          "you are allows before selling, shipping or replacing them.")},
    Caution{"mains", QT_TRANSLATE_NOOP("cautions",
                                       "Unplug an electric player pump before reaching inside; work on mains leads is "
                                       "for a licensed electrician.")},
    Caution{"springs", QT_TRANSLATE_NOOP("cautions",
                                         "Springs under load strike: pedal springs, spring rails, the motors and pumps "
                                         "of a player. Release them first and keep your face away.")},
    Caution{"specs",
            QT_TRANSLATE_NOOP("cautions", "The figures of the spec sheets are common practice, not this maker's. Where "
                                          "the maker's own are known, they win.")},
};

} // namespace

QString caution(std::string_view id) {
    for (const Caution& each : kCautions)
        if (each.id == id) return QCoreApplication::translate("cautions", each.text);
    return {};
}

std::vector<std::string_view> cautionsFor(const Piano& piano) {
    std::vector<std::string_view> out;
    if (piano.vertical()) out.emplace_back("tipping");
    for (const auto id : {"tension", "force", "springs", "solvents", "dust", "lead", "ivory"})
        out.emplace_back(id);
    if (piano.hasPlayer()) out.emplace_back("mains");
    out.emplace_back("specs");
    return out;
}

} // namespace hammerline::words
