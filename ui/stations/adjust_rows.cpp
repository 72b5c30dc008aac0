#include "ui/stations/adjust_rows.h"

#include "ui/words/said.h"
#include "ui/words/words.h"

#include <algorithm>
#include <cmath>

namespace hammerline {

namespace {

using words::atStation;

int doneOf(const AdjustmentWork& work, const std::set<std::string>& done) {
    int count = 0;
    for (const AdjustmentLine& line : work.lines)
        count += done.contains(line.step->id) ? 1 : 0;
    for (const SheetMove& move : work.moves)
        count += done.contains(move.step->id) ? 1 : 0;
    return count;
}

/// Small beside the aim: a hand's words, paper, the trial, or why.
QString amountOf(const AdjustmentLine& line, const AdjustmentWork& work) {
    if (work.trial && std::ranges::find(work.trial->notes, line.note) != work.trial->notes.end())
        return atStation(QT_TRANSLATE_NOOP("Station", "trial: %1, read, type it"))
            .arg(words::turnText(std::abs(work.trial->amount)));
    if (!line.handAmount.empty()) return words::amountWords(line.handAmount);
    if (!line.step->stack.empty()) {
        QStringList pieces;
        for (const Length piece : line.step->stack)
            pieces << words::number(piece.mm(), 2);
        return pieces.join(QStringLiteral(" + "));
    }
    if (line.mm && *line.mm != 0)
        return atStation(QT_TRANSLATE_NOOP("Station", "%1 mm")).arg(words::number(std::abs(*line.mm), 2));
    if (line.afterStep && line.step->why == "follows")
        return atStation(QT_TRANSLATE_NOOP("Station", "after step %1")).arg(*line.afterStep);
    return words::whySentence(line.step->why);
}

ListRow lineRow(const AdjustmentLine& line, const AdjustmentWork& work, int key, const Piano& piano,
                const std::map<std::string, QString>& done) {
    const Step& step = *line.step;
    const auto ticked = done.find(step.id);
    const bool open = ticked == done.end();
    ListRow row;
    row.key = key;
    row.sentence = QStringLiteral("%1: %2. %3")
                       .arg(words::noteName(line.note, piano), words::headline(step, piano),
                            open ? amountOf(line, work) : atStation(QT_TRANSLATE_NOOP("Station", "done")));
    RowCell box;
    box.kind = RowCell::Kind::tick;
    box.part = open ? 0 : 2;
    RowCell now(line.nowWord ? words::name(*line.nowWord)
                : line.now   ? words::shown(step.aimDimension, *line.now)
                             : QString());
    now.kind = RowCell::Kind::plate;
    now.marks = line.side * line.marks;
    now.size = Text::listDigits;
    RowCell turn(words::directionWord(step.direction, step.operation, piano), open);
    turn.kind = RowCell::Kind::turn;
    turn.sign = words::signOf(step.operation, step.direction, piano);
    turn.size = Text::aim;
    RowCell aim(step.aim ? words::aimText(step) : QString(), open);
    aim.size = Text::aim;
    RowCell amount(amountOf(line, work));
    amount.size = Text::amount;
    RowCell gauge(open ? QString() : ticked->second);
    gauge.size = Text::listDigits;
    row.cells = {box,
                 noteCell(line.note, piano, open),
                 now,
                 turn,
                 soft(step.aim ? atStation(QT_TRANSLATE_NOOP("Station", "to")) : QString()),
                 aim,
                 amount,
                 gauge};
    return row;
}

ListRow moveRow(const SheetMove& move, int key, const Piano& piano, const std::map<std::string, QString>& done) {
    ListRow row;
    row.key = key;
    const bool open = !done.contains(move.step->id);
    RowCell box;
    box.kind = RowCell::Kind::tick;
    box.part = open ? 0 : 2;
    RowCell where(move.range.first > 0 ? QStringLiteral("%1–%2").arg(move.range.first).arg(move.range.last) : QString(),
                  open);
    RowCell turn(words::directionWord(move.step->direction, move.step->operation, piano), open);
    turn.kind = RowCell::Kind::turn;
    turn.sign = words::signOf(move.step->operation, move.step->direction, piano);
    turn.size = Text::aim;
    QStringList places;
    for (const CommonPlace& place : move.places)
        places << QStringLiteral("%1: %2").arg(place.at.value).arg(words::number(place.mm, 2));
    RowCell aim(move.go ? words::number(*move.go, 1) : QString(), open);
    aim.size = Text::aim;
    RowCell amount(places.join(QStringLiteral("   ")));
    amount.size = Text::amount;
    if (move.goes > 1)
        amount.text.prepend(atStation(QT_TRANSLATE_NOOP("Station", "go 1 of %1, then look.  ")).arg(move.goes));
    row.cells = {box, where, {}, turn, {}, aim, amount, {}};
    row.sentence = QStringLiteral("%1, %2").arg(words::name(move.step->operation), words::headline(*move.step, piano));
    return row;
}

} // namespace

std::vector<ListRow> orderRows(const AdjustmentSheet& sheet, const std::set<std::string>& done, const Piano& piano) {
    std::vector<ListRow> rows;
    std::size_t notes = 0;
    for (const MendFirst& mend : sheet.mendFirst)
        notes += std::max<std::size_t>(mend.notes.size(), 1);
    if (notes > 0) {
        ListRow heading;
        heading.heading = words::accessName(Access::bench);
        heading.height = 6;
        rows.push_back(heading);
        RowCell state(atStation(QT_TRANSLATE_NOOP("Station", "Mend first")), true);
        state.kind = RowCell::Kind::state;
        state.part = 3;
        ListRow row;
        row.key = 0;
        row.cells = {state, soft(QString::number(notes)), {}};
        rows.push_back(row);
    }
    for (const AdjustmentVisit& visit : sheet.visits) {
        ListRow heading;
        heading.heading = words::accessName(visit.access, piano);
        heading.headingRight = visit.minutesToGetThere > 0 ? timeText(visit.minutesToGetThere) : QString();
        heading.height = 6;
        rows.push_back(heading);
        for (const AdjustmentWork& work : visit.works) {
            const int all = static_cast<int>(work.lines.size() + work.moves.size()), ready = doneOf(work, done);
            RowCell state(words::name(work.operation), ready < all);
            state.kind = RowCell::Kind::state;
            state.part = ready == 0 ? 0 : ready < all ? 1 : 2;
            ListRow row;
            row.key = work.number;
            row.sentence = atStation(QT_TRANSLATE_NOOP("Station", "%1, %2 of %3 done"))
                               .arg(words::name(work.operation))
                               .arg(ready)
                               .arg(all);
            row.cells = {state, soft(QString::number(all)), soft(timeText(work.minutes))};
            rows.push_back(row);
        }
    }
    return rows;
}

const AdjustmentWork* workOf(const AdjustmentSheet& sheet, int number) {
    for (const AdjustmentVisit& visit : sheet.visits)
        for (const AdjustmentWork& work : visit.works)
            if (work.number == number) return &work;
    return nullptr;
}

const Step* stepOf(const AdjustmentWork& work, int key) {
    const auto lines = static_cast<int>(work.lines.size());
    if (key < 0) return nullptr;
    if (key < lines) return work.lines[static_cast<std::size_t>(key)].step;
    const auto move = static_cast<std::size_t>(key - lines);
    return move < work.moves.size() ? work.moves[move].step : nullptr;
}

std::vector<ListRow> workRows(const AdjustmentWork& work, const Piano& piano,
                              const std::map<std::string, QString>& done) {
    std::vector<ListRow> rows;
    const auto sections = sectionsOf(piano);
    int key = static_cast<int>(work.lines.size());
    for (const SheetMove& move : work.moves)
        rows.push_back(moveRow(move, key++, piano, done));
    key = 0;
    std::size_t section = sections.size();
    for (const AdjustmentLine& line : work.lines) {
        if (line.section != section) {
            section = line.section;
            ListRow heading;
            heading.heading = QStringLiteral("%1 %2–%3")
                                  .arg(words::sectionName(sections[section], section, sections.size()))
                                  .arg(sections[section].range.first)
                                  .arg(sections[section].range.last);
            heading.height = 5.5;
            rows.push_back(heading);
        }
        rows.push_back(lineRow(line, work, key++, piano, done));
    }
    return rows;
}

} // namespace hammerline
