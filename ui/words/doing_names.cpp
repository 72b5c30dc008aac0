// Parts, tools and acts that the drawings of doing name.
#include "ui/words/doing.h"
#include "ui/words/said.h"

namespace hammerline::words {

namespace {

#define T(text) QT_TRANSLATE_NOOP("doing", text)
constexpr std::array kDoingNames{
    KeyedText{"balance-pin", T("balance pin")},
    KeyedText{"bar-at-foot", T("slotted bar at its foot")},
    KeyedText{"bed", T("key bed")},
    KeyedText{"bends", T("one tool bends below the head")},
    KeyedText{"bolt", T("bolt, from the plate")},
    KeyedText{"both-shoulders", T("both shoulders alike")},
    KeyedText{"bracket", T("bracket")},
    KeyedText{"bushing", T("bushing cloth; press both sides in turn")},
    KeyedText{"butt", T("butt")},
    KeyedText{"button", T("button")},
    KeyedText{"catcher", T("catcher")},
    KeyedText{"catcher-stem", T("catcher's stem")},
    KeyedText{"check", T("check")},
    KeyedText{"cushion", T("cushion")},
    KeyedText{"damper-lever", T("damper lever")},
    KeyedText{"do-balance-paper", T("paper under the felt: key up")},
    KeyedText{"do-bridle-wire", T("bend away from the butt: tighter")},
    KeyedText{"do-capstan", T("an eighth anticlockwise: less play")},
    KeyedText{"do-check", T("bend a little: caught nearer the string")},
    KeyedText{"do-drop", T("clockwise: more drop")},
    KeyedText{"do-ease", T("squeeze once, lightly")},
    KeyedText{"do-file", T("from the shoulder up")},
    KeyedText{"do-front-paper", T("paper under the felt: shallower")},
    KeyedText{"do-let-off", T("an eighth clockwise: lets go earlier")},
    KeyedText{"do-lever", T("screw in: the lever's front goes lower")},
    KeyedText{"do-rest-rail", T("a thicker pad: the blow is shorter")},
    KeyedText{"do-seat", T("lower it onto all studs")},
    KeyedText{"do-space", T("tap the foot over, tighten")},
    KeyedText{"do-space-key", T("bend the pin: the front goes with it")},
    KeyedText{"do-spoon", T("bend the tip a hair: earlier")},
    KeyedText{"do-spring", T("draw it up a little: stronger")},
    KeyedText{"do-square", T("twist a little beyond, hold till cool")},
    KeyedText{"do-square-key", T("bend the pin at its foot: key upright")},
    KeyedText{"do-travel", T("now it travels to this side")},
    KeyedText{"drop-screw", T("drop screw")},
    KeyedText{"felt-lifted", T("felt, lifted")},
    KeyedText{"flange", T("flange")},
    KeyedText{"forked-bar", T("forked bar at the foot")},
    KeyedText{"front-pin", T("front pin")},
    KeyedText{"hammer", T("hammer")},
    KeyedText{"head", T("head")},
    KeyedText{"holds-foot", T("the other holds the foot")},
    KeyedText{"hook", T("small hook")},
    KeyedText{"hook-on-eye", T("hook on the eye")},
    KeyedText{"hooked-tool", T("hook on the screw")},
    KeyedText{"hot-air", T("warm the middle of the shank")},
    KeyedText{"jack", T("jack")},
    KeyedText{"key", T("key")},
    KeyedText{"key-aside", T("the key stands aside")},
    KeyedText{"key-below", T("key, turned over")},
    KeyedText{"key-leans", T("the key leans")},
    KeyedText{"knob", T("knob, finger-tight")},
    KeyedText{"knuckle", T("knuckle")},
    KeyedText{"lath", T("abrasive on a lath")},
    KeyedText{"let-off-rail", T("let-off rail")},
    KeyedText{"lever", T("repetition lever")},
    KeyedText{"lever-foot", T("foot of the lever")},
    KeyedText{"lever-screw", T("screw at the lever's rear end")},
    KeyedText{"new-paper", T("paper, in tweezers")},
    KeyedText{"pad", T("pad at every bracket")},
    KeyedText{"paper-slip", T("paper under one side of the flange")},
    KeyedText{"papers", T("papers that lie there")},
    KeyedText{"rail", T("rail")},
    KeyedText{"rod-in-capstan", T("rod in the capstan's hole")},
    KeyedText{"screw-loosened", T("screw, a little loose")},
    KeyedText{"shank", T("shank")},
    KeyedText{"shield", T("metal shield")},
    KeyedText{"slotted-rod", T("slotted rod, behind the wippen")},
    KeyedText{"socket", T("socket of the bracket")},
    KeyedText{"spoon", T("spoon")},
    KeyedText{"spring", T("repetition spring")},
    KeyedText{"stop-here", T("stop before the crown")},
    KeyedText{"strap", T("strap")},
    KeyedText{"string", T("string")},
    KeyedText{"stud", T("stud")},
    KeyedText{"three-strings", T("its three strings")},
    KeyedText{"toe", T("jack's toe")},
    KeyedText{"wippen", T("wippen")},
    KeyedText{"wood-of-head", T("wood of the head")},
};
#undef T

} // namespace

QString doingName(std::string_view key) {
    return saidOf(kDoingNames, key, "doing");
}

} // namespace hammerline::words
