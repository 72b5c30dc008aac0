// Findings of the survey as sentences, states and remedies as words. The keys of faults and remedies are themselves
// the trade's words: a translation lists them as they read without their hyphens.
#include "core/survey/filing.h"
#include "ui/words/said.h"
#include "ui/words/survey_names.h"

#include <QCoreApplication>
#include <QStringList>

#include <array>
#include <cmath>

namespace hammerline::words {

namespace {

QString spoken(std::string_view key) {
    return inSurvey(std::string(key).c_str());
}

struct Special {
    std::string_view key;
    const char* text;
};
// Where the key alone would be too short to be understood.
constexpr std::array kSpecial = {
    Special{"green-pin", QT_TRANSLATE_NOOP("survey", "green pin (verdigris)")},
    Special{"green-pins", QT_TRANSLATE_NOOP("survey", "green pins (verdigris)")},
    Special{"foot-off-its-stud", QT_TRANSLATE_NOOP("survey", "foot off its stud")},
    Special{"deep-grooves", QT_TRANSLATE_NOOP("survey", "deep string cuts")},
    Special{"off", QT_TRANSLATE_NOOP("survey", "come off")},
    Special{"tie-cords", QT_TRANSLATE_NOOP("survey", "tie cords gone")},
    Special{"clip", QT_TRANSLATE_NOOP("survey", "repair clip")},
    Special{"pin", QT_TRANSLATE_NOOP("survey", "new pin")},
    Special{"felt", QT_TRANSLATE_NOOP("survey", "new felt")},
    Special{"warm", QT_TRANSLATE_NOOP("survey", "warm, then a hair")},
    Special{"free", QT_TRANSLATE_NOOP("survey", "set free")},
    Special{"bed", QT_TRANSLATE_NOOP("survey", "bed the frame")},
    Special{"bush", QT_TRANSLATE_NOOP("survey", "bush anew")},
    Special{"set", QT_TRANSLATE_NOOP("survey", "set anew")},
    Special{"refer", QT_TRANSLATE_NOOP("survey", "refer to a specialist")},
    Special{"leave", QT_TRANSLATE_NOOP("survey", "leave as it is")},
    Special{"pack-with-card", QT_TRANSLATE_NOOP("survey", "pack with card")},
    Special{"reshape", QT_TRANSLATE_NOOP("survey", "reshape, a few strokes")},
};

QString phrase(std::string_view key) {
    for (const Special& each : kSpecial)
        if (each.key == key) return inSurvey(each.text);
    std::string words(key);
    for (char& c : words)
        if (c == '-') c = ' ';
    return spoken(words);
}

constexpr std::array<const char*, 5> kStates = {
    QT_TRANSLATE_NOOP("survey", "not looked at"), QT_TRANSLATE_NOOP("survey", "sound"),
    QT_TRANSLATE_NOOP("survey", "watch"),         QT_TRANSLATE_NOOP("survey", "to do"),
    QT_TRANSLATE_NOOP("survey", "mended"),
};

constexpr std::array<const char*, 9> kStages = {
    QT_TRANSLATE_NOOP("survey", "Before anything is moved"),
    QT_TRANSLATE_NOOP("survey", "Action, on the bench"),
    QT_TRANSLATE_NOOP("survey", "Hammers"),
    QT_TRANSLATE_NOOP("survey", "Rails and cushions"),
    QT_TRANSLATE_NOOP("survey", "Key frame, cloth, felts"),
    QT_TRANSLATE_NOOP("survey", "Keys and capstans"),
    QT_TRANSLATE_NOOP("survey", "Dampers"),
    QT_TRANSLATE_NOOP("survey", "Pedals and rods"),
    QT_TRANSLATE_NOOP("survey", "Player, after the action"),
};

/// "Note 23, B♭2": or the whole piano.
QString placeOf(const Finding& finding, const Piano& piano) {
    if (!finding.note) return inSurvey("Whole piano");
    return inSurvey("Note %1").arg(noteName(*finding.note, piano));
}

QString listed(const QStringList& names) {
    if (names.size() < 2) return names.join(QString());
    return inSurvey("%1 and %2").arg(names.mid(0, names.size() - 1).join(inSurvey(", ")), names.back());
}

} // namespace

QString faultName(std::string_view fault) {
    if (const int pass = filingPass(fault)) return inSurvey("filed, pass %1").arg(pass);
    return phrase(fault);
}

QString surveyRemedyName(std::string_view remedy) {
    return phrase(remedy);
}

QString surveyStateName(FindingState state) {
    return inSurvey(kStates[static_cast<std::size_t>(state)]);
}

QString jobStageName(JobStage stage) {
    return inSurvey(kStages[static_cast<std::size_t>(stage)]);
}

QString findingSentence(const Finding& finding, const Piano& piano) {
    return findingSentence(finding, {}, piano);
}

QString findingSentence(const Finding& finding, const std::vector<NoteNumber>& notes, const Piano& piano) {
    const QString place = notes.size() > 1 ? inSurvey("Notes %1").arg(QString::fromStdString(writeNotes(notes)))
                                           : placeOf(finding, piano);
    const QString head = inSurvey("%1, %2").arg(place, partOfActionName(finding.part).toLower());
    if (finding.fault.empty()) return inSurvey("%1: %2.").arg(head, surveyStateName(finding.state));
    QString text = inSurvey("%1: %2").arg(head, faultName(finding.fault));
    if (const Remedy* remedy = remedyOf(finding)) text += inSurvey("; %1").arg(surveyRemedyName(remedy->key));
    if (finding.amount > 0) text += inSurvey(", %1 mm taken off").arg(finding.amount, 0, 'f', 1);
    if (finding.state != FindingState::toDo) text += inSurvey(" (%1)").arg(surveyStateName(finding.state));
    text += inSurvey(".");
    if (!finding.remark.empty()) text += QLatin1Char(' ') + QString::fromStdString(finding.remark);
    if (finding.fault == "seized" && finding.state == FindingState::toDo) text += inSurvey(" Stop: it is not forced.");
    if (blocks(finding))
        text += notes.size() > 1 ? inSurvey(" Mend them before these notes are regulated.")
                                 : inSurvey(" Mend it before this note is regulated.");
    return text;
}

QString hours(double minutes) {
    const int whole = static_cast<int>(std::lround(minutes));
    if (whole < 60) return inSurvey("%1 min").arg(whole);
    return inSurvey("%1 h %2 min").arg(whole / 60).arg(whole % 60, 2, 10, QLatin1Char('0'));
}

QString staleSentence(const Part& part, const Piano& piano) {
    if (part.staleAll) return inSurvey("Every reading is stale after it.");
    QStringList names;
    for (const DimensionId each : part.stale)
        if (fittedAnywhere(each, piano)) names << (names.isEmpty() ? name(each) : name(each).toLower());
    if (names.isEmpty()) return {};
    return (names.size() == 1 ? inSurvey("%1 is stale after it.") : inSurvey("%1 are stale after it."))
        .arg(listed(names));
}

QString notFittedReason(const Part& part, const Piano& piano) {
    if (fitted(part, piano)) return {};
    if (part.kinds == "P") return inSurvey("no player in this piano");
    if (part.kinds == "G") return inSurvey("on a grand only");
    if (part.kinds == "D") return inSurvey("on a drop action only");
    if (part.key == "butt-plate" || part.key == "brass-flange-rail") return inSurvey("on a brass flange rail only");
    return inSurvey("not in this set-up");
}

} // namespace hammerline::words
