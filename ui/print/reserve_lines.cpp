#include "ui/print/reserve_lines.h"

#include "core/sheet/pass_view.h"
#include "ui/words/reserve.h"

namespace hammerline::print {

std::vector<Paragraph> reserveLines(const Source& source) {
    const PianoRecord& record = source.record;
    std::vector<Paragraph> lines;
    bool known = false;
    for (const LeastReserve& each : leastReserves(record, {sheetOf(record), record.piano, record.overrides})) {
        known = known || each.reserve.rounds.has_value();
        lines.push_back({{words::leastReserveSentence(each, record.piano) + u'.', false}});
    }
    return known ? lines : std::vector<Paragraph>{};
}

std::vector<Paragraph> settlingLines(const PianoRecord& record) {
    std::vector<Paragraph> lines;
    for (const Settling& each : settlingOf(record))
        lines.push_back(
            {{words::settlingSentence(each, record.piano) + QLatin1Char(' ') + words::settlingSource(each), false}});
    return lines;
}

} // namespace hammerline::print
