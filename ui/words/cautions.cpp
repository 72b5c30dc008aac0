// Cautions where the work is, in our own words. They defer to local rules and to licensed practice.
#include "ui/words/kinds_of_action.h"
#include "ui/words/words.h"

#include <QCoreApplication>

#include <array>

namespace hammerline::words {

namespace {

bool player(const Piano& p) {
    return p.hasPlayer();
}
using kind::any;
using kind::dropButton;
using kind::grand;
using kind::overdamper;
using kind::vertical;

/// Of rows of one id the first that is meant on this piano.
struct Caution {
    std::string_view id;
    const char* text;
    bool (*here)(const Piano&) = any;
};

constexpr std::array kCautions = {
    Caution{"tipping",
            QT_TRANSLATE_NOOP("cautions",
                              "An upright falls backward, the more with action, keys or a player stack out. "
                              "Block the wheels, keep the back near a wall or a helper behind, children "
                              "away; never tilt it or lay it down alone. With action, keys or stack out it "
                              "falls more easily than before: wedge it now."),
            player},
    Caution{"tipping",
            QT_TRANSLATE_NOOP("cautions", "An upright falls backward, the more with its action or keys out. Block the "
                                          "wheels, keep the back near a wall or a helper behind, children away; never "
                                          "tilt it or lay it down alone. With action or keys out it falls more easily "
                                          "than before: wedge it now."),
            vertical},
    Caution{"tension",
            QT_TRANSLATE_NOOP("cautions", "The strings pull with the weight of tonnes. Do not loosen pins, strings or "
                                          "plate screws on the word of this program; wear eye cover near a broken "
                                          "string, and leave such work to a trained technician.")},
    Caution{"force",
            QT_TRANSLATE_NOOP("cautions", "Nothing is forced: not a screw that does not turn, not a wire that was bent "
                                          "twice, not old brass or wood. Hold the wooden part with a second "
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
                                          "rules for waste."),
            player},
    Caution{"lead",
            QT_TRANSLATE_NOOP("cautions", "Key leads shed poisonous dust. Gloves and mask, damp "
                                          "wiping, no sanding, no food near; keep children away and follow the local "
                                          "rules for waste.")},
    Caution{"ivory",
            QT_TRANSLATE_NOOP("cautions", "Old white key tops may be ivory, which is protected. Ask what the law where "
                                          "you are allows before selling, shipping or replacing them.")},
    Caution{"mains", QT_TRANSLATE_NOOP("cautions",
                                       "Unplug an electric player pump before reaching inside; work on mains leads is "
                                       "for a licensed electrician.")},
    Caution{"springs",
            QT_TRANSLATE_NOOP("cautions",
                              "Springs under load strike: pedal springs, spring rails, the motors and pumps "
                              "of a player. Release them first and keep your face away."),
            player},
    Caution{"springs", QT_TRANSLATE_NOOP("cautions", "Springs under load strike: pedal springs, spring rails. Release "
                                                     "them first and keep your face away.")},
    Caution{"action-out",
            QT_TRANSLATE_NOOP("cautions",
                              "Before the action comes out: unhook rods and straps that tie it to the "
                              "pedals. The damper cage comes out with it: two people. Hold the action by its "
                              "brackets, tip the top well clear, then lift straight up; watch the wires and "
                              "felts against strings and plate. Never set it down on hammers or wires."),
            overdamper},
    Caution{"action-out",
            QT_TRANSLATE_NOOP("cautions", "Before the action comes out: unhook rods and straps that tie it to the "
                                          "pedals. Hold it by its brackets, tip the top just clear, then lift straight "
                                          "up; watch the bass dampers and the heads against the plate. Never set it "
                                          "down on hammers, dampers or spoons.")},
    Caution{"straps-rotten",
            QT_TRANSLATE_NOOP("cautions", "Rotten straps let the wippens swing down: they catch on the keys and break, "
                                          "many at once. Hold them up with a batten tied to the brackets before the "
                                          "action is moved, out and in.")},
    Caution{"grand-slide",
            QT_TRANSLATE_NOOP("cautions", "Hold the key frame, never the keys: a pressed key lifts its hammer under "
                                          "the pin block, and it breaks as the action moves. Slide straight and "
                                          "slowly, stop at any resistance, leave the soft pedal alone.")},
    Caution{"action-heavy",
            QT_TRANSLATE_NOOP("cautions", "The action weighs as much as a grown child: two people, and a bench close "
                                          "by at the same height.")},
    Caution{"stack-weight",
            QT_TRANSLATE_NOOP("cautions", "A player stack weighs some 25 kg and more, and its parts are brittle: two "
                                          "people, fingers clear of tubes. Try it before you take it out.")},
    Caution{"block-after-capstan",
            QT_TRANSLATE_NOOP("cautions",
                              "Play that is taken up at the button brings the check nearer: a hammer can be "
                              "caught against its string. Try the first three notes for blocking before "
                              "you go on; bend the checks back if they hold."),
            dropButton},
    Caution{"block-after-capstan",
            QT_TRANSLATE_NOOP("cautions", "A raised capstan brings the check nearer: a hammer can be caught against "
                                          "its string. Try the first three notes for blocking before you go on; bend "
                                          "the checks back if they hold.")},
    Caution{"capstan-out",
            QT_TRANSLATE_NOOP("cautions", "Take out only a screw that turns easily, count its turns and put it back by "
                                          "as many. In dry, crumbling wood leave it.")},
    Caution{"thread",
            QT_TRANSLATE_NOOP("cautions", "Not below four turns of thread on the wire. A button that suddenly turns "
                                          "easily has lost its hold: stop."),
            dropButton},
    Caution{"thread",
            QT_TRANSLATE_NOOP("cautions", "Not below 8 mm of thread in the wood. A screw that suddenly turns easily "
                                          "has lost its hold: stop.")},
    Caution{"heat",
            QT_TRANSLATE_NOOP("cautions", "Heat and steam soften old glue: a joint near it opens. Short, shielded, at "
                                          "wood and metal only, never at felt or old plastic. Steam burns.")},
    Caution{"celluloid",
            QT_TRANSLATE_NOOP("cautions", "Old plastic key tops burn fiercely and dissolve in solvents: no flame, no "
                                          "hot iron, no alcohol or acetone near them.")},
    Caution{"shellac",
            QT_TRANSLATE_NOOP("cautions", "Alcohol and solvents lift shellac and old lacquer: try at a hidden place.")},
    Caution{"oil",
            QT_TRANSLATE_NOOP("cautions", "No oil, no spray from the tool box: it swells cloth, kills centres and "
                                          "creeps into the pin block. Dry lubricant or none.")},
    Caution{"mouse-droppings",
            QT_TRANSLATE_NOOP("cautions", "Droppings can carry disease: gloves and mask, wet them first, wipe, do not "
                                          "brush or blow. Air the room.")},
    Caution{"filing-late",
            QT_TRANSLATE_NOOP("cautions", "Filing changes blow, let-off and checking of every note: file before "
                                          "regulating. What was set before is no longer valid.")},
    Caution{"bass-strings",
            QT_TRANSLATE_NOOP("cautions", "Do not touch wound strings with bare or greasy fingers; no glue on a "
                                          "string.")},
    Caution{"lid-hinge",
            QT_TRANSLATE_NOOP("cautions", "Before the lid is raised: are both hinge pins in? A lid without its pins "
                                          "slides off.")},
    Caution{"glue-hours", QT_TRANSLATE_NOOP("cautions", "What was glued today is not loaded today.")},
    Caution{"wire-end",
            QT_TRANSLATE_NOOP("cautions", "A broken string springs and cuts: eye cover and gloves; leave the coil to "
                                          "the tuner.")},
    Caution{"specs",
            QT_TRANSLATE_NOOP("cautions", "The figures of the spec sheets are common practice, not this maker's. Where "
                                          "the maker's own are known, they win.")},
};

struct Meant {
    std::string_view id;
    bool (*here)(const Piano&);
};
// What is meant only on this kind of action, and what is meant on all, in the order of the work.
constexpr std::array kMeant = {
    Meant{"action-out", vertical},
    Meant{"straps-rotten", vertical},
    Meant{"grand-slide", grand},
    Meant{"action-heavy", grand},
    Meant{"lid-hinge", grand},
    Meant{"stack-weight", player},
    Meant{"block-after-capstan", any},
    Meant{"thread", any},
    Meant{"heat", any},
    Meant{"celluloid", any},
    Meant{"shellac", any},
    Meant{"oil", any},
    Meant{"mouse-droppings", any},
    Meant{"filing-late", any},
    Meant{"bass-strings", any},
    Meant{"glue-hours", any},
    Meant{"wire-end", any},
};

} // namespace

QString caution(std::string_view id) {
    for (const Caution& each : kCautions)
        if (each.id == id) return QCoreApplication::translate("cautions", each.text);
    return {};
}

QString caution(std::string_view id, const Piano& piano) {
    for (const Caution& each : kCautions)
        if (each.id == id && each.here(piano)) return QCoreApplication::translate("cautions", each.text);
    return {};
}

std::vector<std::string_view> cautionsFor(const Piano& piano) {
    std::vector<std::string_view> out;
    if (piano.vertical()) out.emplace_back("tipping");
    for (const Meant& each : kMeant)
        if (each.here(piano)) out.emplace_back(each.id);
    for (const auto id : {"tension", "force", "springs", "solvents", "dust", "lead", "ivory"})
        out.emplace_back(id);
    if (piano.hasPlayer()) out.emplace_back("mains");
    out.emplace_back("specs");
    return out;
}

} // namespace hammerline::words
