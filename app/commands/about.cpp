#include "app/commands/about.h"

#include <QDate>

#include <sstream>

namespace hammerline::app {
namespace {

/// One finding is note, part and fault in one; a note of 0 or "-" means the whole piano.
Outcome<void> takeFinding(AboutOptions& options) {
    if (options.finding.empty()) return {};
    const bool both = !options.note.empty() || !options.part.empty() || !options.fault.empty();
    if (both)
        return refuse(RefusalCode::usage, "--finding stands for --note, --part and --fault: say one or the other");
    std::istringstream words(options.finding);
    std::string more;
    words >> options.note >> options.part >> options.fault >> more;
    if (options.part.empty() || !more.empty())
        return refuse(RefusalCode::usage, "--finding takes \"NOTE PART [FAULT]\", such as \"40 hammer worn\"");
    if (options.note == "-" || options.note == "0") options.note.clear();
    return {};
}

} // namespace

Outcome<About> aboutOf(AboutOptions options, const Bench& bench) {
    if (const auto taken = takeFinding(options); !taken) return tl::unexpected(taken.error());
    About about;
    if (!options.note.empty()) {
        const auto note = parseNote(options.note, bench.record.piano);
        if (!note) return tl::unexpected(note.error());
        about.note = *note;
    }
    if (!options.pass.empty()) {
        const auto pass = passOf(bench, options.pass);
        if (!pass) return tl::unexpected(pass.error());
        about.pass = *pass;
    }
    about.part = options.part;
    about.fault = options.fault;
    if (about.part.empty() && !about.fault.empty())
        return refuse(RefusalCode::usage, "--fault needs the --part that it is a fault of");
    if (const auto there = checkAbout(about, bench.record); !there) return tl::unexpected(there.error());
    return about;
}

Outcome<std::string> dayOf(const std::string& said) {
    return readDay(said.empty() ? QDate::currentDate().toString(Qt::ISODate).toStdString() : said);
}

} // namespace hammerline::app
