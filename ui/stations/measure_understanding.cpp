#include "ui/stations/measure_understanding.h"

#include "ui/words/words.h"

#include <QCoreApplication>
#include <QRegularExpression>

namespace hammerline {

namespace {

struct UnderstandingText {
    Q_DECLARE_TR_FUNCTIONS(Understanding)
};

QString exactMm(std::int64_t nm) {
    return QString::fromStdString(formatCount(nm, {Unit::mm, 2, 0, 1, false})).replace(u'-', QChar(0x2212));
}

QString inches(std::int64_t nm) {
    return QString::fromStdString(formatCount(nm, {Unit::inch, 3, 0, 1, false})).replace(u'-', QChar(0x2212));
}

QString lengthInBoth(std::int64_t nm) {
    return QStringLiteral("%1 mm = %2 in").arg(exactMm(nm), inches(nm));
}

Judged judgedAs(const Workbench& bench, const Reading& reading, Cell cell) {
    Measured measured;
    measured.trials.push_back(reading);
    return judge(cell, measured, bench.zones().at(cell),
                 static_cast<double>(uncertaintyOf(cell.dimension, *bench.piano())), Rule::plain);
}

/// Absolute heights are judged only beside their neighbours, those against a line that hangs only with its sag taken
/// off: nothing is said of one alone.
bool judgedAlone(const Workbench& bench, DimensionId id) {
    const Pass* pass = bench.pass();
    return !(id == dimension::keyHeight && pass && (pass->referenceOf(id) != "line" || !pass->lineSag.empty()));
}

} // namespace

QString inBothUnits(const Reading& reading, DimensionId id) {
    if (reading.word) return words::name(*reading.word);
    const Kind kind = row(id).kind;
    const auto one = [&](std::int64_t count) {
        return kind == Kind::length ? lengthInBoth(count)
                                    : QStringLiteral("%1 %2").arg(words::shown(id, count), words::unitName(kind));
    };
    switch (reading.relation) {
    case Relation::equal:
        return one(reading.count);
    case Relation::less:
        return UnderstandingText::tr("less than %1").arg(one(reading.count));
    case Relation::more:
        return UnderstandingText::tr("more than %1").arg(one(reading.count));
    case Relation::between:
        return UnderstandingText::tr("between %1 and %2 %3")
            .arg(words::shown(id, reading.count), words::shown(id, reading.upper), words::unitName(kind));
    }
    return {};
}

QString inBothUnits(const TypedQuantity& typed, DimensionId id) {
    Reading reading;
    reading.count = typed.count;
    reading.upper = typed.upper;
    reading.relation = typed.relation;
    return inBothUnits(reading, id);
}

QString verdictWords(const Judged& judged) {
    if (judged.word) return words::name(*judged.word);
    if (judged.verdict == Verdict::low || judged.verdict == Verdict::high)
        return words::sideName(judged.cell.dimension, judged.verdict == Verdict::high);
    return words::verdictName(judged.verdict);
}

QString excessText(const Judged& judged, const std::optional<Zone>& zone) {
    const bool high = judged.verdict == Verdict::high;
    if (judged.word || !judged.value || !zone || judged.marks() == 0) return {};
    const auto& edge = high ? zone->high : zone->low;
    if (!edge) return {};
    const std::int64_t beyond = high ? *judged.value - *edge : *edge - *judged.value;
    const DimensionId id = judged.cell.dimension;
    const QString shown = words::shown(id, std::max<std::int64_t>(beyond, 0));
    const bool seen = shown.contains(QRegularExpression(QStringLiteral("[1-9]")));
    return seen ? UnderstandingText::tr("%1 %2 outside").arg(shown, words::unitName(row(id).kind))
                : UnderstandingText::tr("just outside");
}

std::optional<Expected> expectedAfterPlan(const Workbench& bench, Cell cell) {
    const Plan* plan = bench.plan();
    if (!plan || plan->pass + 1 != bench.passNumber()) return {};
    for (const Expected& expected : plan->expected)
        if (expected.cell == cell) return expected;
    return {};
}

Understanding understand(const Workbench& bench, const QString& typed, Cell cell, bool repeat) {
    Understanding meaning;
    if (typed.trimmed().isEmpty()) return meaning;
    auto entry = bench.understand(typed.trimmed().toStdString(), cell);
    const Measured* before = repeat && bench.pass() ? bench.pass()->at(cell) : nullptr;
    if (entry && entry->sound && before) entry->question = askAboutRepeat(cell, *entry->sound, *before, *bench.piano());
    if (!entry) {
        meaning.kind = Understanding::Kind::refused;
        meaning.headline = words::sentence(entry.error());
        meaning.more = UnderstandingText::tr("Type it again, or Esc leaves the cell as it was.");
        return meaning;
    }
    if (entry->question) {
        meaning.kind = Understanding::Kind::question;
        meaning.headline = words::sentence(*entry->question, *bench.piano());
        meaning.suggestion = QString::fromStdString(entry->question->suggestion);
        if (entry->question->mayTake) meaning.reading = entry->question->asTyped;
        return meaning;
    }
    if (!entry->sound) return meaning;
    meaning.kind = Understanding::Kind::sound;
    meaning.reading = entry->sound;
    meaning.headline = inBothUnits(*entry->sound, cell.dimension);
    if (judgedAlone(bench, cell.dimension)) {
        meaning.judged = judgedAs(bench, *entry->sound, cell);
        if (!meaning.judged->word) meaning.more = verdictWords(*meaning.judged);
        const QString excess = excessText(*meaning.judged, bench.zones().at(cell));
        if (!excess.isEmpty()) meaning.more += QStringLiteral(", ") + excess;
    }
    if (const auto expected = expectedAfterPlan(bench, cell)) {
        const QString value = words::shown(cell.dimension, fromTrade(expected->value, row(cell.dimension).kind));
        meaning.more += (meaning.more.isEmpty() ? QString() : QStringLiteral(" \u00B7 ")) +
                        UnderstandingText::tr("expected %1").arg(value);
    }
    return meaning;
}

} // namespace hammerline
