// How each step is done, in our own words (common practice, no source).
#include "ui/words/step_texts.h"

namespace hammerline::words {
namespace {

#define T(text) QT_TRANSLATE_NOOP("work", text)
constexpr std::array kBeforeSteps = {
    StepText{.id = "first-look",
             .name = T("Take a first look"),
             .whatFor = T("To know what is there, and whether it can stand being worked on, before a screw is turned."),
             .tools = T("Lamp, mirror on a stick, pencil; a phone is the best lamp and mirror."),
             .how = T("Play every note three times: soft, loud, slow. Note what is heard. Press each pedal. Open lid "
                      "and panels and look with the lamp: moth, mouse, rust, broken or missing parts, earlier repairs. "
                      "Look under the key bed: soundboard and ribs.\nUDBO|Look behind: back posts, castors.\nG|Look at "
                      "legs, lyre and the pins of the lid's hinges."),
             .way = T(""),
             .goodWhen = T("Each odd note has one word, and nothing was touched yet."),
             .mistake = T("Beginning to mend the first thing seen."),
             .takes = T("20 / 45 the piano."),
             .records = T("Symptoms per note; findings of the whole piano; event \"first look\".")},
    StepText{
        .id = "take-photographs",
        .name = T("Take photographs"),
        .whatFor = T("The only memory of how it was."),
        .tools = T("A phone or camera, lamp from the side, a rule laid in the picture."),
        .how =
            T("UBDO|Photograph straight on: whole front, bass end, middle, treble end of the action; key slip, rods "
              "and springs; bottom; back.\nG|Photograph the whole front; key slip, cheek blocks and both ends of the "
              "action; dampers and pins from above; lyre and trap levers from below. Photograph the action again when "
              "it is drawn out.\nThen the hammers from above with a rule beside them, one picture a "
              "section. One of every label, number and maker's mark. One of each joint before it is undone."),
        .way = T(""),
        .goodWhen = T("Every rod, spring and screw place can be seen in one of them."),
        .mistake = T("Close pictures only, so that nobody knows where they belong."),
        .takes = T("15 / 25 the piano."),
        .records = T("Photo with a note range and a step.")},
    StepText{.id = "note-the-piano",
             .name = T("Write down what piano it is"),
             .whatFor = T("Maker, serial number, year, owner, room; whoever comes next needs them."),
             .tools = T("Pencil, lamp; a room thermometer and hygrometer (an amateur proves a cheap one overnight in a "
                        "closed jar over damp salt: it should read 75 %)."),
             .how =
                 T("Write maker, serial number (plate, pin block, first key), number of keys and lowest note, who owns "
                   "it, where it stands. Read temperature and humidity today; ask for the yearly low and high."),
             .way = T(""),
             .goodWhen = T("The number was read twice."),
             .mistake = T("A casting or patent number taken for the serial number."),
             .takes = T("5 / 10."),
             .records = T("Fields of the set-up; climate of the day.")},
    StepText{.id = "weigh-the-job",
             .name = T("Weigh the job before it begins"),
             .whatFor = T("The decision whether the work is worth it is made before, not after."),
             .tools = T("Lamp and mirror; the tuning lever only in a technician's hand."),
             .how = T("Have a technician try ten tuning pins for grip. Look for a cracked plate, loose bridges, many "
                      "rusted strings. Add up the hours and parts of the survey, and a tenth more for what shows only "
                      "later. Write down who advised what and what the owner decided."),
             .way = T(""),
             .goodWhen = T("A decision with a name and a date."),
             .mistake = T("An action restored in a piano that will not hold a tuning."),
             .takes = T("30 / 60."),
             .records = T("Event \"advice\" (who, what) and \"decision\"; findings of strings-soundboard.")},
    StepText{
        .id = "stand-it-safe",
        .name = T("Stand the piano safe"),
        .whatFor = T(
            "UDBO|An upright falls backward, the more so with its action out.\nG|A lid or a leg of a grand can fall."),
        .tools = T("Wooden wedges, a plank to spread the load, a blanket, trestles for a bench."),
        .how = T("UDBO|Block the castors. Stand its back a hand from a wall, or have a helper behind it. Take the "
                 "carpet away; the floor is level.\nG|Close the lid, or set it on the long prop with both hinge pins "
                 "in. See that lyre and legs are tight.\nKeep children and animals out. Clear and cover a bench as "
                 "long as the action, at knee or table height."),
        .way = T(""),
        .goodWhen = T("A firm push at the key bed moves nothing."),
        .mistake = T("Trusting old castors."),
        .takes = T("10 / 15."),
        .records = T("Tick; finding case.")},
    StepText{.id = "read-as-found",
             .name = T("Read some notes as found"),
             .whatFor = T("These are the figures to come back to, and the proof of what was gained."),
             .tools = T("Small square, dip block, blow stick, let-off strips."),
             .how = T("One natural near each end of each section and one sharp: key height from the bed, dip, blow, "
                      "let-off, checking. Play what cannot be measured and write the word.\nUDBO|Straps by a glance."),
             .way = T(""),
             .goodWhen = T("Ten notes, twenty minutes."),
             .mistake = T("UBDO|Reading every note by number before the lost motion is right.\nG|Reading every note by "
                          "number before the key frame is bedded."),
             .takes = T("35 / 70."),
             .records = T("First pass.")},
    StepText{.id = "number-parts",
             .name = T("Number the parts"),
             .whatFor = T("Every key, hammer and wippen goes back to its own place."),
             .tools = T("Soft pencil, card with holes for screws, small bags."),
             .how =
                 T("Keys are usually stamped with their numbers: check them, and pencil what is missing. Pencil 1, 10, "
                   "20 and so on, on the rail and on the part beside it. Number every tenth, and every part that comes "
                   "off. Screws go into a bag or a row of holes in a card, with the place written beside it."),
             .way = T("Numbers run from the bass."),
             .goodWhen = T("A stranger could put it together."),
             .mistake = T("Numbers on felt or on a face that is filed or glued later; a label on each of 88 parts."),
             .takes = T("10 / 20."),
             .records = T("Tick; the labels sheet.")},
};
#undef T

} // namespace

std::span<const StepText> beforeSteps() {
    return kBeforeSteps;
}

} // namespace hammerline::words
