#include "core/sheet/parts_csv.h"

#include "core/sheet/csv_field.hpp"
#include "core/survey/job.h"

namespace hammerline {

std::string partsCsv(const PianoRecord& record, const PartsWords& words) {
    std::string out(sheet::kByteOrderMark);
    sheet::csvLine(out, words.heads);
    for (const PartsLine& line : partsList(record.findings, record.piano, jobTerms(record.preferences).spares))
        sheet::csvLine(out, std::vector<std::string>{words.part(line), words.size(line), std::to_string(line.needed),
                                                     std::to_string(line.spare), std::to_string(line.quantity),
                                                     line.unit, std::to_string(line.found), std::to_string(line.of),
                                                     writeNotes(line.notes), words.measured(line)});
    return out;
}

} // namespace hammerline
