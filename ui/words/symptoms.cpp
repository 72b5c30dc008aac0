// What is heard or felt at the keyboard, by the ids of core/causes.
#include "ui/words/words.h"

#include <QCoreApplication>

#include <array>

namespace hammerline::words {

namespace {

struct SymptomWords {
    std::string_view id;
    const char* text;
};
#define SAY(text) QT_TRANSLATE_NOOP("symptoms", text)
constexpr std::array kSymptoms{
    SymptomWords{"double-strike", SAY("Double strike")},
    SymptomWords{"double-strike-one-note", SAY("Double strike, one note")},
    SymptomWords{"bobbling-only-by-player", SAY("Bobbling, only by the player")},
    SymptomWords{"blocks", SAY("Blocks")},
    SymptomWords{"hammer-does-not-come-back", SAY("Hammer does not come back")},
    SymptomWords{"repeats-only-if-key-comes-all-the-way-up", SAY("Repeats only if the key comes all the way up")},
    SymptomWords{"not-checking", SAY("Not checking")},
    SymptomWords{"checks-too-near", SAY("Checks too near")},
    SymptomWords{"weak-tone", SAY("Weak tone")},
    SymptomWords{"weak-on-one-note", SAY("Weak on one note")},
    SymptomWords{"click-on-key-return", SAY("Click on the key's return")},
    SymptomWords{"click-at-the-bottom", SAY("Click at the bottom")},
    SymptomWords{"buzz", SAY("Buzz")},
    SymptomWords{"key-sticks-down", SAY("Key sticks down")},
    SymptomWords{"heavy-touch-all", SAY("Heavy touch, all notes")},
    SymptomWords{"heavy-touch-middle-of-stroke", SAY("Heavy touch in the middle of the stroke")},
    SymptomWords{"note-rings-after-release", SAY("Note rings after release")},
    SymptomWords{"ringing-all", SAY("Ringing, all notes")},
    SymptomWords{"damper-lifts-unevenly-by-pedal", SAY("Dampers lift unevenly by the pedal")},
    SymptomWords{"all-keys-front-low", SAY("All keys low in front")},
    SymptomWords{"hammers-stand-off-the-rail", SAY("Hammers stand off the rail")},
    SymptomWords{"keys-rattle-sideways", SAY("Keys rattle sideways")},
    SymptomWords{"soft-pedal-keys-wink", SAY("Soft pedal: keys wink")},
    SymptomWords{"soft-pedal-does-nothing", SAY("Soft pedal does nothing")},
    SymptomWords{"sharps-bury", SAY("Sharps bury themselves")},
    SymptomWords{"notes-get-fast-worse-after-a-pass", SAY("Notes get worse soon after a pass")},
    SymptomWords{"one-contiguous-block-wrong", SAY("One block of neighbours is wrong")},
    SymptomWords{"grand-bubbling-all", SAY("Grand: bubbling, all notes")},
    SymptomWords{"grand-second-blow-fails", SAY("Grand: the second blow fails")},
};
#undef SAY

} // namespace

/// A symptom without a row is shown by its id.
QString symptomName(std::string_view id) {
    for (const SymptomWords& row : kSymptoms)
        if (row.id == id) return QCoreApplication::translate("symptoms", row.text);
    return QString::fromUtf8(id.data(), static_cast<qsizetype>(id.size()));
}

} // namespace hammerline::words
