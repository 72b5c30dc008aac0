// Words of the lists that come out of a survey: parts to order, marks, questions before a plan.
#include "core/sheet/parts_csv.h"
#include "ui/words/said.h"
#include "ui/words/size_names.h"
#include "ui/words/survey_names.h"

#include <QCoreApplication>
#include <QStringList>

#include <array>

namespace hammerline::words {

namespace {

struct Sentence {
    std::string_view id;
    const char* text;
};

constexpr std::array kSizes = {
    Sentence{"clip", QT_TRANSLATE_NOOP("survey", "single strings, by width")},
    Sentence{"bichord", QT_TRANSLATE_NOOP("survey", "double strings, graded widths")},
    Sentence{"flat", QT_TRANSLATE_NOOP("survey", "triple strings, graded sizes")},
    Sentence{"split", QT_TRANSLATE_NOOP("survey", "low triple strings")},
};

constexpr std::array kQuestions = {
    Sentence{"try-let-off-screws",
             QT_TRANSLATE_NOOP("survey", "Try three let-off screws in every section by a hair: does the screw turn, or "
                                         "does the eye twist? Enter what each does.")},
    Sentence{"case",
             QT_TRANSLATE_NOOP("survey", "Do castors, toes and back posts carry? The piano is tilted only then.")},
    Sentence{"key-frame", QT_TRANSLATE_NOOP(
                              "survey", "Is the key frame bedded: does it touch at every stud and along the front, and "
                                        "does no stud lift it? Every height and dip is read over it.")},
    Sentence{"action-bolts", QT_TRANSLATE_NOOP("survey", "Are the action bolts tight and all feet on their studs?")},
    Sentence{"flange-screws", QT_TRANSLATE_NOOP("survey", "Are the flange screws snug in every section?")},
    Sentence{"let-off-rail", QT_TRANSLATE_NOOP("survey", "Does the let-off rail stand firm at every post?")},
    Sentence{
        "rest-rail-cloth",
        QT_TRANSLATE_NOOP("survey", "Is the hammer rest rail firm, its cloth without grooves, in how many pieces?")},
    Sentence{"back-rail-cloth",
             QT_TRANSLATE_NOOP("survey", "Is the back-rail cloth whole? Where it has turned to putty a new strip comes "
                                         "before any levelling.")},
    Sentence{"key-slip", QT_TRANSLATE_NOOP("survey", "Do the fronts of the naturals clear the key slip, pressed and at "
                                                     "rest, and all keys the fallboard?")},
    Sentence{"capstan",
             QT_TRANSLATE_NOOP("survey", "Take one sound capstan out in each section, counting its turns: how "
                                         "long is it under its head? Put it back by as many turns. Its "
                                         "length less what stands out of the key is the thread in the wood: "
                                         "are there 8 mm and more, and does it turn snugly? None is taken out "
                                         "of a dry, crumbling key.")},
    Sentence{"damper-wire", QT_TRANSLATE_NOOP("survey", "Press the damper pedal slowly: do all dampers stir together? "
                                                        "The wires come first, the spoons after them.")},
    Sentence{"trapwork", QT_TRANSLATE_NOOP("survey", "Pedals up: do both rods have free play?")},
    Sentence{"bridle-wire",
             QT_TRANSLATE_NOOP("survey", "Soft pedal down: does any key wink? Then its strap is too tight: "
                                         "its wire is bent back, toward the butt, before lost motion is "
                                         "read; what was read there does not count.")},
    Sentence{"player-stack",
             QT_TRANSLATE_NOOP("survey", "Does the player stack come out? The piano action is regulated without it.")},
    Sentence{"player-stop-rail", QT_TRANSLATE_NOOP("survey", "Is the stop rail of the player there and free?")},
};

// Where a grand has other parts than an upright.
constexpr std::array kGrandQuestions = {
    Sentence{"case",
             QT_TRANSLATE_NOOP("survey", "Do the legs and the lyre sit fast, and are both hinge pins of the lid in?")},
    Sentence{"key-slip", QT_TRANSLATE_NOOP("survey", "Do the fronts of the naturals clear the key slip, pressed and at "
                                                     "rest, also with the soft pedal down?")},
    Sentence{"trapwork", QT_TRANSLATE_NOOP("survey", "Pedals up: has each rod of the lyre a little free play?")},
};

// The steps that are no stage of the repairs.
constexpr std::array kSteps = {
    Sentence{"look", QT_TRANSLATE_NOOP("survey", "Look at every part")},
    Sentence{"order", QT_TRANSLATE_NOOP("survey", "Order parts")},
    Sentence{"take-apart", QT_TRANSLATE_NOOP("survey", "Number, take apart, put together")},
    Sentence{"regulate", QT_TRANSLATE_NOOP("survey", "Regulate the piano action")},
    Sentence{"player", QT_TRANSLATE_NOOP("survey", "Player: stack in, clearance, stop rail")},
    Sentence{"record", QT_TRANSLATE_NOOP("survey", "Owner's record")},
};

constexpr std::array<const char*, 4> kWorkStates = {
    QT_TRANSLATE_NOOP("survey", "nothing to do"),
    QT_TRANSLATE_NOOP("survey", "open"),
    QT_TRANSLATE_NOOP("survey", "waits"),
    QT_TRANSLATE_NOOP("survey", "done"),
};

constexpr std::array<const char*, 3> kPlaces = {
    QT_TRANSLATE_NOOP("survey", "on top"),
    QT_TRANSLATE_NOOP("survey", "on the bass side"),
    QT_TRANSLATE_NOOP("survey", "underneath"),
};

constexpr std::size_t kNotesNamed = 8;

QString numbers(const std::vector<int>& values) {
    QStringList out;
    for (const int v : values)
        out << QString::number(v);
    return out.join(inSurvey(", "));
}

QString notesText(const std::vector<NoteNumber>& notes) {
    return QString::fromStdString(writeNotes(notes));
}

} // namespace

QString supplySize(const PartsLine& line) {
    for (const Sentence& each : kSizes)
        if (each.id == line.size) return inSurvey(each.text);
    if (line.unit == "cm2")
        return inSurvey("cut into pieces of %1 mm")
            .arg(QString::fromStdString(line.size).replace(QLatin1Char('x'), QChar(0x00D7)));
    const auto plus = line.size.find(" + ");
    if (plus != std::string::npos)
        return inSurvey("%1 naturals + %2 sharps")
            .arg(QString::fromStdString(line.size.substr(0, plus)), QString::fromStdString(line.size.substr(plus + 3)));
    return QString::fromStdString(line.size);
}

QString supplyQuantity(const PartsLine& line, int count) {
    if (line.unit == "mm") return inSurvey("%1 m").arg(count / 1000.0, 0, 'f', 2);
    if (line.unit == "cm2") return inSurvey("%1 cm²").arg(count);
    if (line.unit == "set") return count == 1 ? inSurvey("1 set") : inSurvey("%1 sets").arg(count);
    return QString::number(count);
}

std::string partsTable(const PianoRecord& record) {
    PartsWords words;
    for (const char* head : {QT_TRANSLATE_NOOP("survey", "part"), QT_TRANSLATE_NOOP("survey", "size"),
                             QT_TRANSLATE_NOOP("survey", "needed"), QT_TRANSLATE_NOOP("survey", "spare"),
                             QT_TRANSLATE_NOOP("survey", "order"), QT_TRANSLATE_NOOP("survey", "unit"),
                             QT_TRANSLATE_NOOP("survey", "faulty"), QT_TRANSLATE_NOOP("survey", "of"),
                             QT_TRANSLATE_NOOP("survey", "notes"), QT_TRANSLATE_NOOP("survey", "measured")})
        words.heads.push_back(inSurvey(head).toStdString());
    words.part = [](const PartsLine& line) { return supplyName(line.part).toStdString(); };
    words.size = [](const PartsLine& line) { return supplySize(line).toStdString(); };
    words.measured = [](const PartsLine& line) { return orderedBy(line).toStdString(); };
    return partsCsv(record, words);
}

QString foundText(const PartsLine& line) {
    if (line.notes.size() <= kNotesNamed) return notesText(line.notes);
    return inSurvey("%1 of %2").arg(line.found).arg(line.of);
}

QString markPlaceName(MarkPlace place) {
    return inSurvey(kPlaces[static_cast<std::size_t>(place)]);
}

QString markCheckSentence(const MarkCheck& check) {
    if (check.right()) return inSurvey("All numbers are there, once each and in order.");
    QStringList out;
    if (!check.missing.empty()) out << inSurvey("missing: %1").arg(numbers(check.missing));
    if (!check.doubled.empty()) out << inSurvey("there twice: %1").arg(numbers(check.doubled));
    if (!check.foreign.empty()) out << inSurvey("not of this piano: %1").arg(numbers(check.foreign));
    if (!check.outOfSequence.empty()) out << inSurvey("out of sequence: %1").arg(numbers(check.outOfSequence));
    return inSurvey("Numbers %1.").arg(out.join(inSurvey("; ")));
}

QString surveyQuestion(std::string_view id, const Piano& piano) {
    if (!piano.vertical())
        for (const Sentence& each : kGrandQuestions)
            if (each.id == id) return inSurvey(each.text);
    for (const Sentence& each : kQuestions)
        if (each.id == id) return inSurvey(each.text);
    return inSurvey("%1: does it hold, is it whole?").arg(partOfActionName(id));
}

QString letOffRailSentence() {
    return inSurvey("More than one let-off screw in twenty does not turn: the whole rail goes to a specialist before "
                    "anything is regulated.");
}

QString surveyAnswer(std::string_view id, const Piano& piano) {
    const bool screws = id == "try-let-off-screws";
    const QString part = screws ? QStringLiteral("let-off-screw") : QString::fromUtf8(id.data(), qsizetype(id.size()));
    if (!screws && id != "capstan") return QStringLiteral("all %1 sound").arg(part);
    const int each = screws ? 3 : 1; // tried in every section: what was not tried is not sound
    std::vector<NoteNumber> tried;
    for (const Section& section : sectionsOf(piano))
        for (int i = section.range.first; i <= std::min(section.range.last, section.range.first + each - 1); ++i)
            tried.push_back({i});
    return QStringLiteral("%1 %2 sound").arg(notesText(tried).remove(QLatin1Char(' ')), part);
}

QString workStepName(std::string_view id) {
    for (const Sentence& each : kSteps)
        if (each.id == id) return inSurvey(each.text);
    for (int i = 0; i <= static_cast<int>(JobStage::player); ++i)
        if (key(static_cast<JobStage>(i)) == id) return jobStageName(static_cast<JobStage>(i));
    return {};
}

QString workStateName(WorkState state) {
    return inSurvey(kWorkStates.at(static_cast<std::size_t>(state)));
}

QString workStepText(const WorkOrderStep& step) {
    QStringList out;
    if (step.id == "look") {
        if (step.open > 0) out << inSurvey("%1 parts not looked at everywhere").arg(step.open);
    } else if (step.id == "order") {
        if (step.open > 0) out << inSurvey("%1 to order or not come yet").arg(step.open);
        if (step.done > 0) out << inSurvey("%1 in hand").arg(step.done);
        return out.join(inSurvey(", "));
    } else if (step.id == "take-apart") {
        if (step.open > 0) out << inSurvey("once, for all repairs");
    } else if (step.id == "regulate" && step.minutesOpen == 0 && step.minutesDone == 0) {
        out << (step.open > 0 ? inSurvey("not measured yet") : inSurvey("nothing is out"));
    } else if (step.id != "record") {
        if (step.open > 0) out << inSurvey("%1 to do").arg(step.open);
        if (step.done > 0) out << inSurvey("%1 done").arg(step.done);
    }
    QStringList waits;
    for (const std::string& supply : step.waitsFor)
        waits << supplyName(supply).toLower();
    if (!waits.isEmpty()) out << inSurvey("waits for %1").arg(waits.join(inSurvey(", ")));
    return out.join(inSurvey(", "));
}

QString termUsage(std::string_view typed) {
    return inSurvey("\"%1\" is no setting of the job. There are minutes.PART=MINUTES, spare-percent=PERCENT, "
                    "spare-at-least=COUNT, only-these.PART=yes or no, in-hand.PART=yes or no, "
                    "ordered.PART=yes or no, size.PART.FIELD=SIZE, piece.PART=WIDTHxLENGTH in mm (what is cut from a "
                    "sheet), hand=practised or beginner, "
                    "job=whole or asked (what readings and findings ask for), yearly-humidity=35-70 (the driest and "
                    "the dampest month: the aim of lost motion goes by it), "
                    "odd-part.NAME=there, off, returns, "
                    "stays-off or back; and what it is, work-done.PLACE.WHAT=where, who, when, result (PLACE: "
                    "soundboard, bridges, strings, plate, pin-block, case).")
        .arg(QString::fromUtf8(typed.data(), qsizetype(typed.size())));
}

} // namespace hammerline::words
