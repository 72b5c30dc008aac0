#include "ui/words/finish.h"

#include "ui/words/words.h"

#include <QCoreApplication>

#include <cmath>

namespace hammerline::words {

namespace {

QString finishText(const char* text) {
    return QCoreApplication::translate("finish", text);
}

/// What is left to do on the way to the next grade.
QString whatNext(const FinishLine& line) {
    if (line.stop && line.grade == Grade::even)
        return finishText(QT_TRANSLATE_NOOP("finish", " Stop: nothing more is worth its minutes."));
    QStringList missing;
    for (const std::string_view each : line.missing)
        missing << missingForGradeSentence(each);
    const QString why = missing.isEmpty() ? QString() : u' ' + missing.join(u' ');
    if (line.stop)
        return why +
               finishText(QT_TRANSLATE_NOOP(
                   "finish", " Stop: this gauge cannot settle what is left, and nothing more is worth its minutes."));
    return why +
           finishText(QT_TRANSLATE_NOOP("finish", " Still asked for: readings %1, notes to work %2, about %3 minutes."))
               .arg(line.readings)
               .arg(line.notes)
               .arg(line.minutes, 0, 'f', 0);
}

} // namespace

QString finishSentence(const FinishLine& line) {
    if (line.all.cells == 0) return {};
    QString grade = gradeName(line.grade);
    grade[0] = grade[0].toUpper();
    return finishText(QT_TRANSLATE_NOOP("finish", "%1. About %2 of %3 readings' places plainly outside, at most %4."))
               .arg(grade)
               .arg(std::lround(line.all.outside))
               .arg(line.all.cells)
               .arg(static_cast<int>(std::ceil(line.all.atMost() - 1e-9))) +
           whatNext(line);
}

QString samplesSentence(const FromSamples& samples, const Piano& piano) {
    const auto rounded = [](double minutes) { return QString::number(5 * std::lround(minutes / 5)); };
    return finishText(QT_TRANSLATE_NOOP("finish", "From samples: %1 is out at %2 of %3 notes read. %4, all %5 notes: "
                                                  "about %6 minutes (%7 to %8)."))
        .arg(name(samples.dimension))
        .arg(samples.out)
        .arg(samples.read)
        .arg(name(samples.operation, piano))
        .arg(samples.all)
        .arg(rounded(samples.minutes), rounded(samples.low), rounded(samples.high));
}

} // namespace hammerline::words
