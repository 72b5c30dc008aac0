#include "ui/words/glossary.h"

#include <QCoreApplication>

#include <algorithm>
#include <array>

namespace hammerline::words {

namespace {

// Trade terms as the handbooks use them; the meanings are our own words.
constexpr std::array kTerms = {
    Term{QT_TRANSLATE_NOOP("glossary", "access"),
         QT_TRANSLATE_NOOP("glossary", "What has to come off or out before a part can be reached: action in, tilted or "
                                       "out, one key off, all keys off. Work is listed by it, so that each is opened "
                                       "once.")},
    Term{QT_TRANSLATE_NOOP("glossary", "aftertouch"),
         QT_TRANSLATE_NOOP("glossary", "How far the key still goes down after the hammer was let off. Too little, and "
                                       "the jack does not leave the butt or knuckle; too much, and the touch is "
                                       "spongy.")},
    Term{QT_TRANSLATE_NOOP("glossary", "aim"),
         QT_TRANSLATE_NOOP("glossary", "The value that a part is set to: the middle of its zone, or what fits its "
                                       "neighbours.")},
    Term{QT_TRANSLATE_NOOP("glossary", "balance rail"),
         QT_TRANSLATE_NOOP("glossary", "The rail with the pins on which the keys tilt. Paper under its felts lifts "
                                       "a key.")},
    Term{QT_TRANSLATE_NOOP("glossary", "band"),
         QT_TRANSLATE_NOOP("glossary", "Where a value lies in nineteen cases of twenty, by all that was read.")},
    Term{QT_TRANSLATE_NOOP("glossary", "bench book"),
         QT_TRANSLATE_NOOP("glossary", "The file that holds the pianos: readings, findings, plans, what was done, "
                                       "photographs. Nothing in it is erased; what is taken back stays readable.")},
    Term{QT_TRANSLATE_NOOP("glossary", "blocks"),
         QT_TRANSLATE_NOOP("glossary", "The hammer is not let off: it is pressed against the string as long as the key "
                                       "is down.")},
    Term{QT_TRANSLATE_NOOP("glossary", "blow"),
         QT_TRANSLATE_NOOP("glossary", "The way of the hammer from its rest to the string, measured at the crown of "
                                       "the hammer.")},
    Term{QT_TRANSLATE_NOOP("glossary", "butt"),
         QT_TRANSLATE_NOOP("glossary", "On an upright the wooden part at the foot of the hammer shank; the jack pushes "
                                       "against it.")},
    Term{QT_TRANSLATE_NOOP("glossary", "capstan"),
         QT_TRANSLATE_NOOP("glossary", "The screw or button on the key that lifts the wippen. Turning it changes lost "
                                       "motion on an upright, blow on a grand.")},
    Term{QT_TRANSLATE_NOOP("glossary", "catcher"),
         QT_TRANSLATE_NOOP("glossary",
                           "On an upright the leathered piece at the butt that the back check catches after "
                           "the blow.")},
    Term{QT_TRANSLATE_NOOP("glossary", "cause"),
         QT_TRANSLATE_NOOP("glossary", "One thing behind many readings, such as a sunk rail. It is looked at and "
                                       "answered first; then single notes.")},
    Term{QT_TRANSLATE_NOOP("glossary", "checking"),
         QT_TRANSLATE_NOOP("glossary", "How far from the string the hammer is caught after a firm blow.")},
    Term{QT_TRANSLATE_NOOP("glossary", "conflict"),
         QT_TRANSLATE_NOOP("glossary", "What cannot all be inside its zone at one note, whatever is turned. It says "
                                       "what may give.")},
    Term{QT_TRANSLATE_NOOP("glossary", "crown"),
         QT_TRANSLATE_NOOP("glossary", "Of a hammer, the tip that meets the string. Of a key line, how much higher the "
                                       "middle keys are set than the ends.")},
    Term{QT_TRANSLATE_NOOP("glossary", "damper timing"),
         QT_TRANSLATE_NOOP("glossary", "How far the hammer or key has gone when the damper begins to leave the "
                                       "string.")},
    Term{QT_TRANSLATE_NOOP("glossary", "dip"),
         QT_TRANSLATE_NOOP("glossary", "How far the front of the key goes down under a firm finger.")},
    Term{QT_TRANSLATE_NOOP("glossary", "drop"),
         QT_TRANSLATE_NOOP("glossary", "How far the hammer falls back after let-off while the key is held down "
                                       "slowly.")},
    Term{QT_TRANSLATE_NOOP("glossary", "even"),
         QT_TRANSLATE_NOOP("glossary", "The best grade: hardly any place is plainly outside its zone, and no note "
                                       "stands off its neighbours.")},
    Term{QT_TRANSLATE_NOOP("glossary", "finding"),
         QT_TRANSLATE_NOOP("glossary",
                           "What the survey saw at a part: the fault, what mends it, and whether that is to "
                           "do, watched or done.")},
    Term{QT_TRANSLATE_NOOP("glossary", "flange"),
         QT_TRANSLATE_NOOP("glossary",
                           "The small hinge that carries a moving part on its centre pin and is screwed to a "
                           "rail.")},
    Term{QT_TRANSLATE_NOOP("glossary", "floats"),
         QT_TRANSLATE_NOOP("glossary", "What is not set but follows from the others: where dip, blow and let-off are "
                                       "set, aftertouch floats.")},
    Term{QT_TRANSLATE_NOOP("glossary", "gauge"),
         QT_TRANSLATE_NOOP("glossary", "What a distance is read with: a rule, a block, a strip of paper, a dial. How "
                                       "well it tells decides what may be concluded.")},
    Term{QT_TRANSLATE_NOOP("glossary", "go"),
         QT_TRANSLATE_NOOP("glossary", "As much as is turned or bent at once before one looks again.")},
    Term{QT_TRANSLATE_NOOP("glossary", "grade"),
         QT_TRANSLATE_NOOP("glossary", "How far the piano is, by everything that is known of it: even, good for this "
                                       "piano, or not yet.")},
    Term{QT_TRANSLATE_NOOP("glossary", "half-blow rail"),
         QT_TRANSLATE_NOOP("glossary", "The hammer rest rail of an upright as the soft pedal moves it: nearer the "
                                       "strings.")},
    Term{QT_TRANSLATE_NOOP("glossary", "held back"),
         QT_TRANSLATE_NOOP("glossary", "Not worked on yet, because a cause that was seen would undo or spare the work. "
                                       "Answer it first.")},
    Term{QT_TRANSLATE_NOOP("glossary", "jack"),
         QT_TRANSLATE_NOOP("glossary", "The part that pushes the hammer and slips out from under it at let-off.")},
    Term{QT_TRANSLATE_NOOP("glossary", "key height"),
         QT_TRANSLATE_NOOP("glossary", "How high the front of a white key stands, from the key bed or from a straight "
                                       "line over the keys.")},
    Term{QT_TRANSLATE_NOOP("glossary", "knuckle"),
         QT_TRANSLATE_NOOP("glossary", "On a grand the leather roll under the hammer shank that the jack pushes "
                                       "against.")},
    Term{QT_TRANSLATE_NOOP("glossary", "learned"),
         QT_TRANSLATE_NOOP("glossary", "Taken from this piano's own trials: how much a turn changes here, and how sure "
                                       "that is.")},
    Term{QT_TRANSLATE_NOOP("glossary", "let-off"),
         QT_TRANSLATE_NOOP("glossary", "How far from the string the hammer is let go of while the key is pressed "
                                       "slowly.")},
    Term{QT_TRANSLATE_NOOP("glossary", "lost motion"),
         QT_TRANSLATE_NOOP("glossary",
                           "How far the key goes down before the hammer begins to move. Below nothing means "
                           "that the hammer is held off its rail.")},
    Term{QT_TRANSLATE_NOOP("glossary", "off rail"),
         QT_TRANSLATE_NOOP("glossary", "The hammer does not lie on its rest rail: the capstan holds it up.")},
    Term{QT_TRANSLATE_NOOP("glossary", "off its neighbours"),
         QT_TRANSLATE_NOOP("glossary", "Inside its zone or not, this note differs more from the notes beside it than a "
                                       "player's finger forgives.")},
    Term{QT_TRANSLATE_NOOP("glossary", "pass"),
         QT_TRANSLATE_NOOP("glossary",
                           "One going through the notes with the gauges. The next pass is compared with the "
                           "one before.")},
    Term{QT_TRANSLATE_NOOP("glossary", "plainly outside"),
         QT_TRANSLATE_NOOP("glossary", "Outside its zone by more than an eighth of the zone's width: no matter of the "
                                       "gauge.")},
    Term{QT_TRANSLATE_NOOP("glossary", "plan"),
         QT_TRANSLATE_NOOP("glossary", "What to turn, bend or shim, which way and to which aim, in an order in which "
                                       "later work does not undo earlier work.")},
    Term{QT_TRANSLATE_NOOP("glossary", "proud"),
         QT_TRANSLATE_NOOP("glossary", "Standing above. A pressed sharp must stay proud of the white keys beside it.")},
    Term{QT_TRANSLATE_NOOP("glossary", "punching"),
         QT_TRANSLATE_NOOP("glossary",
                           "A ring of paper, card or felt on a key pin: under the balance felt it lifts the "
                           "key, under the front felt it lessens the dip.")},
    Term{QT_TRANSLATE_NOOP("glossary", "ratio"),
         QT_TRANSLATE_NOOP("glossary", "How many millimetres the hammer moves for one at the front of the key.")},
    Term{QT_TRANSLATE_NOOP("glossary", "reading"),
         QT_TRANSLATE_NOOP("glossary", "One value read with a gauge, or a word in its place: blocks, off rail, ok.")},
    Term{QT_TRANSLATE_NOOP("glossary", "reference note"),
         QT_TRANSLATE_NOOP("glossary", "A note read again at the start and the end of a pass: had something moved, it "
                                       "would show there.")},
    Term{QT_TRANSLATE_NOOP("glossary", "repetition lever"),
         QT_TRANSLATE_NOOP("glossary", "On a grand the sprung lever that lifts the hammer a little, so that the jack "
                                       "comes back under the knuckle.")},
    Term{QT_TRANSLATE_NOOP("glossary", "rest rail"),
         QT_TRANSLATE_NOOP("glossary", "The padded rail on which the hammer shanks of an upright lie at rest.")},
    Term{QT_TRANSLATE_NOOP("glossary", "section"),
         QT_TRANSLATE_NOOP("glossary",
                           "Notes between two breaks of the action or the plate. Rails, lines and neighbours "
                           "are judged within one.")},
    Term{QT_TRANSLATE_NOOP("glossary", "share of the zone"),
         QT_TRANSLATE_NOOP("glossary", "How far from the middle, in halves of the zone's width: 1.0 is the edge. It is "
                                       "no distance in millimetres.")},
    Term{QT_TRANSLATE_NOOP("glossary", "spec sheet"),
         QT_TRANSLATE_NOOP("glossary", "The zones that a piano is judged by, with the source of each. A maker's own "
                                       "figures win over the customary ones.")},
    Term{QT_TRANSLATE_NOOP("glossary", "spoon"),
         QT_TRANSLATE_NOOP("glossary", "The bent metal piece at the wippen of an upright that lifts the damper "
                                       "lever.")},
    Term{QT_TRANSLATE_NOOP("glossary", "stale"),
         QT_TRANSLATE_NOOP("glossary",
                           "Read before something was done that moved it. It counts as an expectation, not as "
                           "a reading of now.")},
    Term{QT_TRANSLATE_NOOP("glossary", "step"),
         QT_TRANSLATE_NOOP("glossary",
                           "In a row of readings, the difference to the note before. In the work, one thing "
                           "to be done.")},
    Term{QT_TRANSLATE_NOOP("glossary", "strap"),
         QT_TRANSLATE_NOOP("glossary",
                           "The bridle strap of an upright: a tape from butt to wippen that helps the hammer "
                           "back.")},
    Term{QT_TRANSLATE_NOOP("glossary", "survey"),
         QT_TRANSLATE_NOOP("glossary", "The looking through of every part, before anything is measured.")},
    Term{QT_TRANSLATE_NOOP("glossary", "taken as"),
         QT_TRANSLATE_NOOP("glossary",
                           "What the plan starts from where that is not the last reading: other readings of "
                           "the note, or work before it, say so.")},
    Term{QT_TRANSLATE_NOOP("glossary", "touch-up"),
         QT_TRANSLATE_NOOP("glossary", "A plan of the least work that brings in what is out, and leaves the rest "
                                       "alone.")},
    Term{QT_TRANSLATE_NOOP("glossary", "trial"),
         QT_TRANSLATE_NOOP("glossary",
                           "A known turn at a few notes, read before and after: so this piano says how much a "
                           "turn changes.")},
    Term{QT_TRANSLATE_NOOP("glossary", "undecided"),
         QT_TRANSLATE_NOOP("glossary",
                           "So near the edge of its zone that this gauge cannot tell on which side it lies. "
                           "Read it again, or leave it.")},
    Term{QT_TRANSLATE_NOOP("glossary", "uncertainty"),
         QT_TRANSLATE_NOOP("glossary", "How far a reading is off the truth as a rule, one standard deviation: two of "
                                       "three readings lie nearer.")},
    Term{QT_TRANSLATE_NOOP("glossary", "uneven"),
         QT_TRANSLATE_NOOP("glossary", "More different from its neighbours than the evenness limit of its dimension.")},
    Term{QT_TRANSLATE_NOOP("glossary", "wippen"),
         QT_TRANSLATE_NOOP("glossary", "The lever between key and hammer; it carries the jack.")},
    Term{QT_TRANSLATE_NOOP("glossary", "zone"),
         QT_TRANSLATE_NOOP("glossary", "From where to where a value is right, with its aim between.")},
};

QString inGlossary(const char* text) {
    return QCoreApplication::translate("glossary", text);
}

bool wordEnds(const QString& text, qsizetype at) {
    return at < 0 || at >= text.size() || !text[at].isLetter();
}

qsizetype placeOf(const QString& text, const QString& name) {
    for (qsizetype at = text.indexOf(name); at >= 0; at = text.indexOf(name, at + 1))
        if (wordEnds(text, at - 1) && wordEnds(text, at + name.size())) return at;
    return -1;
}

} // namespace

std::span<const Term> terms() {
    return kTerms;
}

QString termName(const Term& term) {
    return inGlossary(term.name);
}

QString termText(const Term& term) {
    return inGlossary(term.text);
}

std::vector<const Term*> termsIn(const QString& text) {
    std::vector<const Term*> byLength;
    for (const Term& term : kTerms)
        byLength.push_back(&term);
    std::ranges::stable_sort(byLength, std::ranges::greater{}, [](const Term* t) { return termName(*t).size(); });
    QString left = text.toLower();
    std::vector<std::pair<qsizetype, const Term*>> found;
    for (const Term* term : byLength) {
        const QString name = termName(*term).toLower();
        const qsizetype at = placeOf(left, name);
        if (at < 0) continue;
        left.replace(at, name.size(), QString(name.size(), u'.'));
        found.emplace_back(at, term);
    }
    std::ranges::sort(found);
    std::vector<const Term*> result;
    for (const auto& each : found)
        result.push_back(each.second);
    return result;
}

QString termsAsHtml(const std::vector<const Term*>& list) {
    QString html;
    for (const Term* term : list)
        html += QStringLiteral("<p><b>%1</b>&nbsp;&nbsp;%2</p>")
                    .arg(termName(*term).toHtmlEscaped(), termText(*term).toHtmlEscaped());
    return html;
}

} // namespace hammerline::words
