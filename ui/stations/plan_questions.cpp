#include "ui/stations/plan_questions.h"

#include "ui/widgets/dialogs.h"
#include "ui/words/survey_names.h"

#include <QCoreApplication>

#include <array>

namespace hammerline {

namespace {

QString questionText(const char* text) {
    return QCoreApplication::translate("PlanQuestions", text);
}

QString store(Workbench& bench, Outcome<std::vector<Finding>> findings) {
    if (!findings) return words::sentence(findings.error());
    const auto added = bench.addFindings(*findings);
    return added ? QString() : words::sentence(added.error());
}

/// What is tried at single notes: it is sound where it was tried, and nowhere else.
struct Tried {
    std::string_view question, part, fault;
};
constexpr std::array kTried = {Tried{"try-let-off-screws", "let-off-screw", "seized"},
                               Tried{"capstan", "capstan", "reserve-short"}};

/// Where it is in order and where it is not: two lists of notes, both one act.
QString askNotes(QWidget* parent, Workbench& bench, const Tried& tried, const QString& question) {
    const QString suggested = words::surveyAnswer(tried.question, *bench.piano()).section(QLatin1Char(' '), 0, 0);
    const QString title = words::partOfActionName(tried.part);
    const auto good = Dialogs::now().ask(
        parent, title,
        questionText(QT_TRANSLATE_NOOP("PlanQuestions", "%1\n\nNotes that were tried and are in order:")).arg(question),
        suggested);
    if (!good) return {};
    const auto bad = Dialogs::now().ask(
        parent, title,
        questionText(
            QT_TRANSLATE_NOOP("PlanQuestions", "Notes where it is not in order: %1 (empty: none). Force nothing."))
            .arg(words::faultName(tried.fault)));
    if (!bad) return {};
    std::vector<Finding> all;
    const std::string part = " " + std::string(tried.part) + " ";
    if (!good->trimmed().isEmpty()) {
        auto read = parseFindingStates(good->trimmed().toStdString() + part + "sound", *bench.piano());
        if (!read) return words::sentence(read.error());
        all = std::move(*read);
    }
    if (!bad->trimmed().isEmpty()) {
        auto read = parseFindings(bad->trimmed().toStdString() + part + std::string(tried.fault), *bench.piano());
        if (!read) return words::sentence(read.error());
        all.insert(all.end(), read->begin(), read->end());
    }
    return all.empty() ? QString() : store(bench, all);
}

QString askYesOrNo(QWidget* parent, Workbench& bench, std::string_view check, const QString& question) {
    const int taken =
        Dialogs::now().choose(parent, questionText(QT_TRANSLATE_NOOP("PlanQuestions", "Before this plan")), question,
                              {questionText(QT_TRANSLATE_NOOP("PlanQuestions", "Yes")),
                               questionText(QT_TRANSLATE_NOOP("PlanQuestions", "No")),
                               questionText(QT_TRANSLATE_NOOP("PlanQuestions", "Later"))});
    if (taken != 0 && taken != 1) return {};
    const auto look = parseLook(std::string(check) + (taken == 0 ? " yes" : " no"), *bench.pass());
    if (!look) return words::sentence(look.error());
    const auto kept = bench.setPreference(look->first, look->second);
    return kept ? QString() : words::sentence(kept.error());
}

} // namespace

QString answerQuestion(QWidget* parent, Workbench& bench, const std::vector<std::string_view>& open) {
    if (open.empty() || !bench.piano()) return {};
    const std::string_view id = open.front();
    const QString question = words::askFirstSentence(id, *bench.piano());
    const auto check = checkQuestion(id);
    if (check && check->yesOrNo) return askYesOrNo(parent, bench, id, question);
    for (const Tried& each : kTried)
        if (each.question == id) return askNotes(parent, bench, each, question);
    const std::string part(check ? check->part : id);
    if (!findPart(part)) {
        Dialogs::now().say(parent, questionText(QT_TRANSLATE_NOOP("PlanQuestions", "Before this plan")), question);
        return {};
    }
    const int taken =
        Dialogs::now().choose(parent, words::partOfActionName(part), question,
                              {questionText(QT_TRANSLATE_NOOP("PlanQuestions", "Sound")),
                               questionText(QT_TRANSLATE_NOOP("PlanQuestions", "Not sound: to the survey")),
                               questionText(QT_TRANSLATE_NOOP("PlanQuestions", "Later"))});
    if (taken == 0) return store(bench, parseFindingStates("all " + part + " sound", *bench.piano()));
    return taken == 1 ? QStringLiteral("survey") : QString();
}

} // namespace hammerline
