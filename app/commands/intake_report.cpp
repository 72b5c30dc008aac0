#include "app/commands/intake_report.h"

#include "app/console.h"
#include "core/sheet/sheet.h"
#include "ui/words/words.h"

#include <QCoreApplication>
#include <QString>

namespace hammerline::app {

int reportIntake(const Intake& intake, const Piano& piano, int pass, std::size_t taken, bool json) {
    printJson(importJson(intake, pass, taken), json);
    const QStringList counts = {inConsole(QT_TRANSLATE_N_NOOP("console", "%n reading(s) taken"), taken),
                                inConsole(QT_TRANSLATE_N_NOOP("console", "%n question(s)"), intake.questions.size()),
                                inConsole(QT_TRANSLATE_N_NOOP("console", "%n refused"), intake.refused.size())};
    say(inConsole(QT_TRANSLATE_NOOP("console", "Pass %1: %2.")).arg(pass).arg(counts.join(QStringLiteral(", "))), json);
    for (const Question& question : intake.questions)
        ask(words::sentence(question, piano), json);
    for (const RefusedRow& refusedRow : intake.refused)
        ask(words::sentence(refusedRow), json);
    for (const std::string& column : intake.ignoredColumns)
        ask(QStringLiteral("Column \"%1\" means nothing here and was left out.").arg(QString::fromStdString(column)),
            json);
    return intake.questions.empty() && intake.refused.empty() ? kDone : kOutside;
}

void takeDoubtful(Intake& intake, const std::string& reason) {
    std::vector<Question> left;
    for (Question& question : intake.questions) {
        if (!question.mayTake || !question.asTyped || !question.cell) {
            left.push_back(std::move(question));
            continue;
        }
        Reading reading = *question.asTyped;
        reading.taken = true;
        reading.reason = reason;
        intake.sound.push_back({*question.cell, std::move(reading), question.place.line, question.pass});
    }
    intake.questions = std::move(left);
}

} // namespace hammerline::app
