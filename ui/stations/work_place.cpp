#include "ui/stations/work_place.h"

namespace hammerline {

namespace {

QString stationFor(StepAsks asks) {
    switch (asks) {
    case StepAsks::read:
    case StepAsks::readAgain:
        return QStringLiteral("measure");
    case StepAsks::mend:
        return QStringLiteral("survey");
    case StepAsks::turn:
    case StepAsks::trial:
    case StepAsks::tick:
        break;
    }
    return QStringLiteral("work");
}

std::optional<Cell> cellOf(const std::vector<NoteNumber>& notes, std::optional<DimensionId> dimension) {
    if (!dimension) return {};
    return Cell{notes.empty() ? NoteNumber{1} : notes.front(), *dimension};
}

} // namespace

WorkPlace placeOf(const StepNow& now) {
    return {stationFor(now.asks), cellOf(now.notes, now.dimension),
            QString::fromUtf8(now.step->id.data(), static_cast<qsizetype>(now.step->id.size()))};
}

WorkPlace placeOf(const NextAct& next) {
    switch (next.kind) {
    case NextKind::piano:
        return {QStringLiteral("piano"), {}, {}};
    case NextKind::bench:
    case NextKind::measureAgain:
    case NextKind::decide:
        return {QStringLiteral("measure"), cellOf(next.notes, next.dimension), {}};
    case NextKind::look:
        return {QStringLiteral("work"), {}, QString(kQuestionsStep)};
    case NextKind::wait:
        return {QStringLiteral("survey"), {}, {}};
    case NextKind::done:
        return {QStringLiteral("passes"), {}, {}};
    case NextKind::step:
        break;
    }
    return next.step ? placeOf(*next.step) : WorkPlace{QStringLiteral("work"), {}, {}};
}

} // namespace hammerline
