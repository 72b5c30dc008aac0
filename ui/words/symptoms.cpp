// What is heard or felt at the keyboard, by the ids of core/causes.
#include "ui/words/said.h"
#include "ui/words/words.h"

#include <QCoreApplication>

#include <array>

namespace hammerline::words {

namespace {

#define SAY(text) QT_TRANSLATE_NOOP("symptoms", text)
constexpr std::array kSymptoms{
    KeyedText{"double-strike", SAY("Double strike")},
    KeyedText{"double-strike-one-note", SAY("Double strike, one note")},
    KeyedText{"bobbling-only-by-player", SAY("Bobbling, only by the player")},
    KeyedText{"blocks", SAY("Blocks")},
    KeyedText{"hammer-does-not-come-back", SAY("Hammer does not come back")},
    KeyedText{"repeats-only-if-key-comes-all-the-way-up", SAY("Repeats only if the key comes all the way up")},
    KeyedText{"not-checking", SAY("Not checking")},
    KeyedText{"checks-too-near", SAY("Checks too near")},
    KeyedText{"weak-tone", SAY("Weak tone")},
    KeyedText{"weak-on-one-note", SAY("Weak on one note")},
    KeyedText{"click-on-key-return", SAY("Click on the key's return")},
    KeyedText{"click-at-the-bottom", SAY("Click at the bottom")},
    KeyedText{"buzz", SAY("Buzz")},
    KeyedText{"key-sticks-down", SAY("Key sticks down")},
    KeyedText{"heavy-touch-all", SAY("Heavy touch, all notes")},
    KeyedText{"heavy-touch-middle-of-stroke", SAY("Heavy touch in the middle of the stroke")},
    KeyedText{"note-rings-after-release", SAY("Note rings after release")},
    KeyedText{"ringing-all", SAY("Ringing, all notes")},
    KeyedText{"damper-lifts-unevenly-by-pedal", SAY("Dampers lift unevenly by the pedal")},
    KeyedText{"all-keys-front-low", SAY("All keys low in front")},
    KeyedText{"hammers-stand-off-the-rail", SAY("Hammers stand off the rail")},
    KeyedText{"keys-rattle-sideways", SAY("Keys rattle sideways")},
    KeyedText{"soft-pedal-keys-wink", SAY("Soft pedal: keys wink")},
    KeyedText{"soft-pedal-does-nothing", SAY("Soft pedal does nothing")},
    KeyedText{"sharps-bury", SAY("Sharps bury themselves")},
    KeyedText{"notes-get-fast-worse-after-a-pass", SAY("Notes get worse soon after a pass")},
    KeyedText{"one-contiguous-block-wrong", SAY("One block of neighbours is wrong")},
    KeyedText{"grand-bubbling-all", SAY("Grand: bubbling, all notes")},
    KeyedText{"grand-second-blow-fails", SAY("Grand: the second blow fails")},
};
// What is looked at for a symptom.
constexpr std::array kChecks{
    KeyedText{"lost-motion", SAY("lost motion too great")},
    KeyedText{"aftertouch", SAY("too little aftertouch")},
    KeyedText{"let-off-too-near", SAY("let-off too near the string")},
    KeyedText{"blow-long", SAY("blow too long")},
    KeyedText{"dip-shallow", SAY("dip too shallow")},
    KeyedText{"key-height-low", SAY("keys too low in front")},
    KeyedText{"check-far", SAY("checks too far from the string, or not at all")},
    KeyedText{"check-too-near", SAY("checks too near the string")},
    KeyedText{"dampers-early", SAY("dampers lift too early")},
    KeyedText{"dampers-late", SAY("dampers lift too late")},
    KeyedText{"hammers-off-rail", SAY("hammers off the rest rail")},
    KeyedText{"player-clearance", SAY("player fingers too near the part they work")},
    KeyedText{"half-blow", SAY("half-blow out of its zone")},
    KeyedText{"straps-tight", SAY("bridle straps too tight")},
    KeyedText{"strap-torn", SAY("bridle strap torn")},
    KeyedText{"down-weight-high", SAY("down weight too high")},
    KeyedText{"up-weight-low", SAY("up weight too low")},
    KeyedText{"let-off-far", SAY("let-off too far from the string")},
    KeyedText{"blow-short", SAY("blow too short")},
    KeyedText{"aftertouch-large", SAY("too much aftertouch")},
    KeyedText{"naturals-deep", SAY("naturals dip too deep")},
    KeyedText{"sharp-height-low", SAY("sharps too low over the naturals")},
    KeyedText{"sharp-proud", SAY("pressed sharps not proud enough")},
    KeyedText{"drop-too-close", SAY("too little drop")},
    KeyedText{"jack-spring", SAY("the jack spring")},
    KeyedText{"damper-spring", SAY("the damper lever spring")},
    KeyedText{"jack-centre", SAY("the jack's centre")},
    KeyedText{"butt-spring", SAY("the butt spring")},
    KeyedText{"jack-tip-pin-spring", SAY("the jack: its tip, pin and spring")},
    KeyedText{"check-wire", SAY("the back-check wire")},
    KeyedText{"player-stop-rail", SAY("the player's stop rail")},
    KeyedText{"finger-stroke", SAY("the stroke of the player's finger")},
    KeyedText{"button-felt", SAY("the felt of the let-off button")},
    KeyedText{"let-off-rail-screws", SAY("the screws of the let-off rail")},
    KeyedText{"hammer-centre", SAY("the hammer's centre")},
    KeyedText{"hammer-rubs-neighbour", SAY("a hammer that rubs its neighbour")},
    KeyedText{"normal-within-limits", SAY("within limits this is normal on an upright")},
    KeyedText{"key-bushing", SAY("the key bushings")},
    KeyedText{"check-felt", SAY("the felt of the back check")},
    KeyedText{"hammer-shank", SAY("the hammer shank")},
    KeyedText{"catcher-tilt", SAY("the tilt of the catcher")},
    KeyedText{"capstan-raised", SAY("a capstan raised since")},
    KeyedText{"tail-rough", SAY("a rough hammer tail")},
    KeyedText{"felt-worn", SAY("worn hammer felt")},
    KeyedText{"butt-loose", SAY("a loose butt or flange")},
    KeyedText{"string", SAY("the string and how the hammer meets it")},
    KeyedText{"butt-cushion", SAY("the butt cushion")},
    KeyedText{"name-board-felt", SAY("the felt between keys and key slip or fallboard")},
    KeyedText{"heel-cloth", SAY("the wippen heel cloth")},
    KeyedText{"jack-stop-felt", SAY("the jack stop felt")},
    KeyedText{"front-felt", SAY("the front felt")},
    KeyedText{"capstan-loose", SAY("a loose capstan")},
    KeyedText{"key-lead", SAY("a loose key lead")},
    KeyedText{"flange-screws", SAY("the flange screws")},
    KeyedText{"plate", SAY("the plate, strings and soundboard")},
    KeyedText{"muffler-rail", SAY("the muffler rail")},
    KeyedText{"loose-hinge", SAY("a loose hinge or fallboard screw")},
    KeyedText{"damper-wire", SAY("the damper wire")},
    KeyedText{"butt-plate", SAY("the butt plate")},
    KeyedText{"key-rubs", SAY("a key that rubs at the slip or its neighbour")},
    KeyedText{"balance-hole", SAY("the balance hole")},
    KeyedText{"key-warped", SAY("a warped key")},
    KeyedText{"pin-rusty", SAY("a rusty key pin")},
    KeyedText{"damp-centres", SAY("centres swollen by damp")},
    KeyedText{"damper-felt", SAY("the damper felt")},
    KeyedText{"spoon-too-far-in", SAY("a spoon too far in")},
    KeyedText{"pedal-free-play", SAY("the free play of the pedal")},
    KeyedText{"damper-wedge", SAY("the damper wedge")},
    KeyedText{"damper-rod", SAY("the damper rod")},
    KeyedText{"action-seated", SAY("whether the action sits on its bolts")},
    KeyedText{"damper-rod-hanger", SAY("the hangers of the damper rod")},
    KeyedText{"three-felts-compared", SAY("balance, front and back felts compared")},
    KeyedText{"straightedge-on-rail", SAY("a straightedge on the balance rail")},
    KeyedText{"room-humidity", SAY("the humidity of the room")},
    KeyedText{"pin-turned", SAY("an oval pin turned against its bushing")},
    KeyedText{"soft-rod-too-long", SAY("a soft-pedal rod too long")},
    KeyedText{"soft-rod", SAY("the soft-pedal rod")},
    KeyedText{"sharp-front-felt", SAY("the front felts of the sharps")},
    KeyedText{"capstan-threads", SAY("the threads of the capstans")},
    KeyedText{"rest-rail-loose", SAY("a loose rest rail")},
    KeyedText{"felts-settling", SAY("new felts that still settle")},
    KeyedText{"repetition-spring-weak", SAY("a weak repetition spring")},
    KeyedText{"knuckle-flat", SAY("a flat knuckle")},
    KeyedText{"repetition-lever-pin", SAY("the centre pin of the repetition lever")},
    KeyedText{"repetition-spring", SAY("the repetition spring")},
};
// What a remedy does besides.
constexpr std::array kSideEffects{
    KeyedText{"checks-nearer", SAY("checks nearer the string")},
    KeyedText{"hammers-off-rail-in-damp", SAY("hammers off the rail in a damp month, if too much")},
    KeyedText{"weaker-soft-blow", SAY("softer playing weaker")},
    KeyedText{"less-power", SAY("less power")},
    KeyedText{"lost-motion-opens", SAY("lost motion opens")},
    KeyedText{"dampers-earlier", SAY("dampers earlier")},
    KeyedText{"pressed-key-below-neighbours", SAY("the pressed key lower than its neighbours")},
    KeyedText{"sharps-bury", SAY("sharps may bury themselves")},
    KeyedText{"lost-motion-less", SAY("less lost motion")},
    KeyedText{"sharp-height-stale", SAY("the sharps' height to read again")},
    KeyedText{"repetition-slower", SAY("slower repetition")},
};
#undef SAY

} // namespace

QString symptomName(std::string_view id) {
    return saidOf(kSymptoms, id, "symptoms");
}

QString symptomCheckName(std::string_view id) {
    return saidOf(kChecks, id, "symptoms");
}

QString sideEffectName(std::string_view id) {
    return saidOf(kSideEffects, id, "symptoms");
}

} // namespace hammerline::words
