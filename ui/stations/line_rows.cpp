#include "ui/stations/line_rows.h"

#include "ui/words/said.h"
#include "ui/words/words.h"

#include <algorithm>
#include <cmath>

namespace hammerline {

namespace {

using words::atStation;

/// Small below the aim: a hand's words, paper, or why; which way it works is said above the list.
QString amountOf(const AdjustmentLine& line, const AdjustmentWork& work) {
    if (isTrial(line, work)) return atStation(QT_TRANSLATE_NOOP("Station", "then read it, and type what it reads"));
    if (!line.handAmount.empty()) return words::amountWords(line.handAmount);
    if (!line.step->stack.empty()) {
        QStringList pieces;
        for (const Length piece : line.step->stack)
            pieces << words::number(piece.mm(), 2);
        return atStation(QT_TRANSLATE_NOOP("Station", "%1 mm")).arg(pieces.join(QStringLiteral(" + ")));
    }
    if (line.mm && *line.mm != 0)
        return atStation(QT_TRANSLATE_NOOP("Station", "%1 mm")).arg(words::number(std::abs(*line.mm), 2));
    if (line.afterStep && line.step->why == "follows")
        return atStation(QT_TRANSLATE_NOOP("Station", "after step %1")).arg(*line.afterStep);
    return words::whySentence(line.step->why);
}

RowCell tickCell(bool open, bool stopped) {
    RowCell box;
    box.kind = RowCell::Kind::tick;
    box.part = stopped ? 3 : open ? 0 : 2;
    return box;
}

/// Direction and aim in the largest type of the list, one run.
RowCell phraseCell(const Step& step, const QString& joint, const QString& aim, bool open, const Piano& piano) {
    RowCell phrase(words::directionWord(step.direction, step.operation, piano), open);
    phrase.kind = RowCell::Kind::phrase;
    phrase.sign = words::signOf(step.operation, step.direction, piano);
    phrase.size = Text::aim;
    if (!aim.isEmpty()) phrase.joint = joint;
    phrase.aim = aim;
    return phrase;
}

RowCell linePhrase(const AdjustmentLine& line, const AdjustmentWork& work, bool open, bool stopped,
                   const Piano& piano) {
    if (stopped) {
        RowCell phrase(atStation(QT_TRANSLATE_NOOP("Station", "STOPPED")), true);
        phrase.kind = RowCell::Kind::phrase;
        phrase.size = Text::aim;
        phrase.below = atStation(QT_TRANSLATE_NOOP("Station", "gone to the survey"));
        return phrase;
    }
    const Step& step = *line.step;
    const bool trial = isTrial(line, work);
    const QString turn =
        trial ? atStation(QT_TRANSLATE_NOOP("Station", "%1 turn")).arg(words::turnText(std::abs(work.trial->amount)))
              : QString();
    const QString to = trial ? QString() : atStation(QT_TRANSLATE_NOOP("Station", "to"));
    RowCell phrase = phraseCell(step, to, trial ? turn : step.aim ? words::aimText(step) : QString(), open, piano);
    phrase.below = amountOf(line, work);
    return phrase;
}

/// What was read, always; where the plan starts from something else, that stands below.
RowCell readCell(const AdjustmentLine& line) {
    const DimensionId dimension = line.step->aimDimension;
    RowCell read(line.nowWord ? words::name(*line.nowWord)
                 : line.read  ? words::shown(dimension, *line.read)
                              : QString());
    read.kind = RowCell::Kind::plate;
    read.marks = line.side * line.marks;
    read.size = Text::listDigits;
    const auto shownAs = [&](std::int64_t value) { return words::shown(dimension, value); };
    const auto taken = line.takenAs();
    const bool other = taken && !line.nowWord && shownAs(*taken) != shownAs(*line.read);
    if (other) read.below = atStation(QT_TRANSLATE_NOOP("Station", "taken as %1")).arg(shownAs(*taken));
    const bool unread = !line.nowWord && !line.read && line.now;
    if (unread) read.below = atStation(QT_TRANSLATE_NOOP("Station", "expected %1")).arg(shownAs(*line.now));
    return read;
}

ListRow lineRow(const AdjustmentLine& line, const AdjustmentWork& work, int key, const Piano& piano,
                const LineStates& states) {
    const Step& step = *line.step;
    const auto ticked = states.ticked.find(step.id);
    const bool open = ticked == states.ticked.end(), stopped = states.stopped.contains(step.id);
    ListRow row;
    row.key = key;
    const QString said = stopped ? atStation(QT_TRANSLATE_NOOP("Station", "stopped, gone to the survey"))
                         : open  ? amountOf(line, work)
                                 : atStation(QT_TRANSLATE_NOOP("Station", "done")) + QLatin1Char(' ') + ticked->second;
    row.sentence =
        QStringLiteral("%1: %2. %3").arg(words::noteName(line.note, piano), words::headline(step, piano), said);
    RowCell done(open ? QString() : ticked->second);
    done.size = Text::listDigits;
    row.cells = {tickCell(open, stopped), noteCell(line.note, piano, open), readCell(line),
                 linePhrase(line, work, open, stopped, piano), done};
    return row;
}

ListRow moveRow(const SheetMove& move, int key, const Piano& piano, const LineStates& states) {
    ListRow row;
    row.key = key;
    const auto ticked = states.ticked.find(move.step->id);
    const bool open = ticked == states.ticked.end();
    RowCell where(move.range.first > 0 ? QStringLiteral("%1–%2").arg(move.range.first).arg(move.range.last) : QString(),
                  open);
    QStringList places;
    for (const CommonPlace& place : move.places)
        places << QStringLiteral("%1: %2").arg(place.at.value).arg(words::number(place.mm, 2));
    RowCell phrase = phraseCell(
        *move.step, {},
        move.go ? atStation(QT_TRANSLATE_NOOP("Station", "%1 mm")).arg(words::number(*move.go, 1)) : QString(), open,
        piano);
    if (move.step->operation == operation::inspect) phrase.text = words::whySentence(move.step->why);
    constexpr qsizetype kPlacesALine = 4;
    QStringList lines;
    for (qsizetype at = 0; at < places.size(); at += kPlacesALine)
        lines << places.mid(at, kPlacesALine).join(QStringLiteral("   "));
    if (move.goes > 1) lines.prepend(atStation(QT_TRANSLATE_NOOP("Station", "go 1 of %1, then look:")).arg(move.goes));
    phrase.below = lines.join(QLatin1Char('\n'));
    row.height = 10.5 + 3.5 * static_cast<double>(std::max<qsizetype>(lines.size() - 1, 0));
    RowCell done(open ? QString() : ticked->second);
    done.size = Text::listDigits;
    row.cells = {tickCell(open, false), where, {}, phrase, done};
    row.sentence =
        QStringLiteral("%1, %2").arg(words::name(move.step->operation, piano), words::headline(*move.step, piano));
    return row;
}

ListRow headingRow(const QString& text) {
    ListRow heading;
    heading.heading = text;
    heading.height = 5.5;
    return heading;
}

} // namespace

const Step* stepOf(const AdjustmentWork& work, int key) {
    const auto lines = static_cast<int>(work.lines.size());
    if (key < 0) return nullptr;
    if (key < lines) return work.lines[static_cast<std::size_t>(key)].step;
    const auto move = static_cast<std::size_t>(key - lines);
    return move < work.moves.size() ? work.moves[move].step : nullptr;
}

bool isTrial(const AdjustmentLine& line, const AdjustmentWork& work) {
    return work.trial && std::ranges::find(work.trial->notes, line.note) != work.trial->notes.end();
}

std::vector<ListRow> lineRows(const AdjustmentWork& work, const Piano& piano, const LineStates& states) {
    std::vector<ListRow> rows;
    const auto sections = sectionsOf(piano);
    int key = static_cast<int>(work.lines.size());
    for (const SheetMove& move : work.moves)
        rows.push_back(moveRow(move, key++, piano, states));
    const auto trials = std::ranges::count_if(work.lines, [&](const auto& line) { return isTrial(line, work); });
    if (trials > 0) {
        rows.push_back(headingRow(QCoreApplication::translate("Station", "A  Trial first: %n note(s), each read again",
                                                              nullptr, static_cast<int>(trials))));
        for (std::size_t i = 0; i < work.lines.size(); ++i)
            if (isTrial(work.lines[i], work))
                rows.push_back(lineRow(work.lines[i], work, static_cast<int>(i), piano, states));
        if (static_cast<std::size_t>(trials) < work.lines.size())
            rows.push_back(
                headingRow(atStation(QT_TRANSLATE_NOOP("Station", "B  Then these, as the trial has shown"))));
    }
    std::size_t section = sections.size();
    for (std::size_t i = 0; i < work.lines.size(); ++i) {
        const AdjustmentLine& line = work.lines[i];
        if (isTrial(line, work)) continue;
        if (line.section != section) {
            section = line.section;
            rows.push_back(headingRow(QStringLiteral("%1 %2–%3")
                                          .arg(words::sectionName(sections[section], section, sections.size()))
                                          .arg(sections[section].range.first)
                                          .arg(sections[section].range.last)));
        }
        rows.push_back(lineRow(line, work, static_cast<int>(i), piano, states));
    }
    return rows;
}

} // namespace hammerline
