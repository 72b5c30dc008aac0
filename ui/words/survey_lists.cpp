// Words of the lists that come out of a survey: parts to order, marks, questions before a plan.
#include "ui/words/survey_names.h"

#include <QCoreApplication>
#include <QStringList>

#include <array>

namespace hammerline::words {

namespace {

QString said(const char* text) {
    return QCoreApplication::translate("survey", text);
}

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
    Sentence{"action-bolts", QT_TRANSLATE_NOOP("survey", "Are the action bolts tight and all feet on their studs?")},
    Sentence{"flange-screws", QT_TRANSLATE_NOOP("survey", "Are the flange screws snug in every section?")},
    Sentence{"let-off-rail", QT_TRANSLATE_NOOP("survey", "Does the let-off rail stand firm at every post?")},
    Sentence{
        "rest-rail-cloth",
        QT_TRANSLATE_NOOP("survey", "Is the hammer rest rail firm, its cloth without grooves, in how many pieces?")},
    Sentence{"back-rail-cloth",
             QT_TRANSLATE_NOOP("survey", "Is the back-rail cloth whole? Where it has turned to putty a new strip comes "
                                         "before any levelling.")},
    Sentence{"trapwork", QT_TRANSLATE_NOOP(
                             "survey", "Soft pedal down: does any key wink? Pedals up: do both rods have free play?")},
    Sentence{"player-stack",
             QT_TRANSLATE_NOOP("survey", "Does the player stack come out? The piano action is regulated without it.")},
    Sentence{"player-stop-rail", QT_TRANSLATE_NOOP("survey", "Is the stop rail of the player there and free?")},
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
    return out.join(said(", "));
}

QString notesText(const std::vector<NoteNumber>& notes) {
    return QString::fromStdString(writeNotes(notes));
}

} // namespace

QString supplySize(const PartsLine& line) {
    for (const Sentence& each : kSizes)
        if (each.id == line.size) return said(each.text);
    return QString::fromStdString(line.size);
}

QString supplyQuantity(const PartsLine& line, int count) {
    if (line.unit == "mm") return said("%1 m").arg(count / 1000.0, 0, 'f', 2);
    if (line.unit == "set") return count == 1 ? said("1 set") : said("%1 sets").arg(count);
    return QString::number(count);
}

QString foundText(const PartsLine& line) {
    if (line.notes.size() <= kNotesNamed) return notesText(line.notes);
    return said("%1 of %2").arg(line.found).arg(line.of);
}

QString markPlaceName(MarkPlace place) {
    return said(kPlaces[static_cast<std::size_t>(place)]);
}

QString markCheckSentence(const MarkCheck& check) {
    if (check.right()) return said("All numbers are there, once each and in order.");
    QStringList out;
    if (!check.missing.empty()) out << said("missing: %1").arg(numbers(check.missing));
    if (!check.doubled.empty()) out << said("there twice: %1").arg(numbers(check.doubled));
    if (!check.foreign.empty()) out << said("not of this piano: %1").arg(numbers(check.foreign));
    if (!check.outOfSequence.empty()) out << said("out of sequence: %1").arg(numbers(check.outOfSequence));
    return said("Numbers %1.").arg(out.join(said("; ")));
}

QString surveyQuestion(std::string_view id) {
    for (const Sentence& each : kQuestions)
        if (each.id == id) return said(each.text);
    return partOfActionName(id);
}

} // namespace hammerline::words
