#include "ui/print/owner_words.h"

#include "core/sheet/comparison_sheet.h"
#include "core/sheet/pass_view.h"
#include "ui/words/said.h"

#include <QCoreApplication>
#include <QDate>
#include <QLocale>

#include <algorithm>
#include <array>
#include <functional>
#include <map>
#include <set>

namespace hammerline::print {

namespace {

using words::onPaper;

/// What a player notices where one of these is out. Common practice, no source.
struct Felt {
    std::array<DimensionId, 3> any;
    const char* sentence;
};
using namespace dimension;
constexpr std::array kFelt = {
    Felt{{keyHeight, sharpHeight, sharpProud}, QT_TRANSLATE_NOOP("paper", "The keys do not lie in one line.")},
    Felt{{keyDip, keyDip, keyDip}, QT_TRANSLATE_NOOP("paper", "Some keys go down too deep or not deep enough.")},
    Felt{{lostMotion, jackReturn, jackReturn},
         QT_TRANSLATE_NOOP("paper", "Some keys move before anything happens, or do not speak at all.")},
    Felt{{letOff, dimension::drop, aftertouch},
         QT_TRANSLATE_NOOP("paper", "Soft playing is unsure: some hammers are let go too early or too late.")},
    Felt{{blow, blow, blow}, QT_TRANSLATE_NOOP("paper", "Some notes are weaker or stronger than their neighbours.")},
    Felt{{checking, hammerReturn, repetitionSpring},
         QT_TRANSLATE_NOOP("paper", "Quick repetition is unsure: some hammers do not come to rest as they should.")},
    Felt{{damperStart, damperRise, damperSeat},
         QT_TRANSLATE_NOOP("paper", "Some notes ring on, or are damped too early.")},
    Felt{{downWeight, upWeight, keyFit}, QT_TRANSLATE_NOOP("paper", "Some keys feel heavy, or come back slowly.")},
};
constexpr std::size_t kSentences = 3; // the commonest; the rest stands in the trade's part

int notesOutOf(const Review& review, const Felt& felt) {
    std::set<int> notes;
    for (const Judged& judged : review.ranked) {
        const bool out = judged.verdict == Verdict::low || judged.verdict == Verdict::high;
        if (out && std::ranges::find(felt.any, judged.cell.dimension) != felt.any.end())
            notes.insert(judged.cell.note.value);
    }
    return static_cast<int>(notes.size());
}

Paragraph feltText(const Review& review) {
    std::vector<std::pair<int, const char*>> counted;
    for (const Felt& felt : kFelt)
        if (const int notes = notesOutOf(review, felt); notes > 0) counted.emplace_back(notes, felt.sentence);
    std::ranges::stable_sort(counted, std::greater{}, &std::pair<int, const char*>::first);
    if (counted.size() > kSentences) counted.resize(kSentences);
    QStringList said;
    for (const auto& [notes, sentence] : counted)
        said << onPaper(sentence);
    return {{said.join(QLatin1Char(' ')), false}};
}

/// Notes at which anything was mended or turned.
int notesWorkedAt(const PianoRecord& record) {
    std::set<int> notes;
    for (const Finding& finding : record.findings)
        if (finding.note && finding.state == FindingState::mended) notes.insert(finding.note->value);
    for (const Done& done : record.done)
        for (const NoteNumber note : done.notes)
            if (done.operation != operation::inspect) notes.insert(note.value);
    return static_cast<int>(notes.size());
}

bool anyToDo(const PianoRecord& record) {
    return std::ranges::any_of(record.findings, [](const Finding& each) { return each.state == FindingState::toDo; });
}

/// What was done, in one sentence; nothing where nothing was.
std::vector<Paragraph> doneText(const PianoRecord& record) {
    const int notes = notesWorkedAt(record);
    if (notes == 0) return {};
    return {{{onPaper(QT_TRANSLATE_NOOP("paper", "Since then worn or loose parts were put in order and the playing "
                                                 "parts set anew, at %1 notes."))
                  .arg(notes),
              false}}};
}

/// What a player is to expect and to do: what is still to come, when somebody comes again, the air of the room.
std::vector<Paragraph> comingText(const PianoRecord& record, int still) {
    QStringList said;
    if (still > 0) said << onPaper(QT_TRANSLATE_NOOP("paper", "These still feel or sound unlike the others."));
    if (anyToDo(record)) said << onPaper(QT_TRANSLATE_NOOP("paper", "Some repairs are still to come."));
    std::string due;
    for (const Remark& remark : record.remarks)
        if (remark.kind == RemarkKind::visit) due = std::max(due, remark.on);
    if (const QDate day = QDate::fromString(words::utf8(due), Qt::ISODate); day.isValid())
        said << onPaper(QT_TRANSLATE_NOOP("paper", "The next visit is due on %1."))
                    .arg(QLocale(QLocale::English).toString(day, QStringLiteral("d MMMM yyyy")));
    said << onPaper(QT_TRANSLATE_NOOP("paper", "It helps the piano most where the air of the room stays even: neither "
                                               "heater nor open window beside it."));
    return {{{said.join(QLatin1Char(' ')), false}}};
}

std::vector<Paragraph> withTheTrade(std::vector<Paragraph> lines) {
    lines.push_back({{onPaper(QT_TRANSLATE_NOOP("paper", "What follows is written for the trade.")), false}});
    return lines;
}

} // namespace

std::vector<Paragraph> ownersWords(const Source& source) {
    const PianoRecord& record = source.record;
    std::vector<const Pass*> read;
    for (const Pass& pass : record.passes)
        if (pass.readingCount() > 0) read.push_back(&pass);
    if (read.empty()) return {};
    const auto found = viewPass(record, read.front()->number);
    if (!found) return {};
    std::vector<Paragraph> lines;
    const int out = notesOut(found->review);
    const QString first =
        out == 0
            ? onPaper(QT_TRANSLATE_NOOP("paper", "When it was first measured, every note that was looked at worked "
                                                 "as it should."))
            : onPaper(QT_TRANSLATE_NOOP("paper", "When it was first measured, %1 of its %2 notes did not work as "
                                                 "they should."))
                  .arg(out)
                  .arg(record.piano.notes);
    lines.push_back({{first, true}});
    if (out > 0) lines.push_back(feltText(found->review));
    for (Paragraph& line : doneText(record))
        lines.push_back(std::move(line));
    if (read.size() < 2) return withTheTrade(std::move(lines));
    const auto left = viewPass(record, read.back()->number);
    if (!left) return withTheTrade(std::move(lines));
    const int still = notesOut(left->review);
    lines.push_back(
        {{still == 0
              ? onPaper(QT_TRANSLATE_NOOP("paper", "When it was last measured, nothing that was looked at was "
                                                   "out any more."))
              : onPaper(QT_TRANSLATE_NOOP("paper", "When it was last measured, %1 notes still wanted attention."))
                    .arg(still),
          true}});
    for (Paragraph& line : comingText(record, still))
        lines.push_back(std::move(line));
    return withTheTrade(std::move(lines));
}

} // namespace hammerline::print
