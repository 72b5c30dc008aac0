#include "ui/questions/answering.h"

#include "core/causes/causes.h"

#include <QRegularExpression>

#include <array>

namespace hammerline {

namespace {

struct Tried {
    std::string_view question, part, fault;
};
constexpr std::array kTried = {
    Tried{.question = "try-let-off-screws", .part = "let-off-screw", .fault = "seized"},
    Tried{.question = "capstan", .part = "capstan", .fault = "reserve-short"},
};

Outcome<void> keep(Workbench& bench, Outcome<std::vector<Finding>> findings) {
    if (!findings) return tl::unexpected(findings.error());
    return bench.addFindings(*findings);
}

std::string atNotes(const std::string& notes, const Part& part, std::string_view state) {
    return (notes.empty() ? "all" : notes) + ' ' + std::string(part.key) + ' ' + std::string(state);
}

} // namespace

QuestionForm formOf(std::string_view question) {
    for (const Tried& each : kTried)
        if (each.question == question)
            return {.kind = QuestionForm::Kind::tried, .part = findPart(each.part), .fault = each.fault};
    const auto check = checkQuestion(question);
    if (check && check->yesOrNo) return {.kind = QuestionForm::Kind::look};
    const Part* part = findPart(check ? check->part : question);
    return part ? QuestionForm{.kind = QuestionForm::Kind::whole, .part = part} : QuestionForm{};
}

Outcome<void> answerLook(Workbench& bench, std::string_view question, bool yes) {
    if (!bench.pass()) return refuse(RefusalCode::noSuchPass);
    const auto look = parseLook(std::string(question) + (yes ? " yes" : " no"), *bench.pass());
    if (!look) return tl::unexpected(look.error());
    return bench.setPreference(look->first, look->second);
}

Outcome<void> answerSound(Workbench& bench, const Part& part, const std::string& notes) {
    return keep(bench, parseFindingStates(atNotes(notes, part, "sound"), *bench.piano()));
}

Outcome<void> answerFaulty(Workbench& bench, const Part& part, std::string_view fault, const std::string& notes) {
    return keep(bench, parseFindings(atNotes(notes, part, fault), *bench.piano()));
}

bool isBareLetter(const QString& notes) {
    static const QRegularExpression letter(QStringLiteral("(^|[,\\s])[A-Ga-g]([,\\s]|$)"));
    return letter.match(notes.trimmed()).hasMatch();
}

} // namespace hammerline
