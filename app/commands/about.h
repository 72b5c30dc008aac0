// What a remark or a photograph is about, from the options of its command.
#pragma once

#include "app/commands/bench.h"

namespace hammerline::app {

struct AboutOptions {
    std::string note, pass, part, fault, finding; // finding: "NOTE PART [FAULT]"
};
/// Refuses usage and what checkAbout refuses.
Outcome<About> aboutOf(AboutOptions, const Bench&);
/// The day said, else today. Refuses badDate.
Outcome<std::string> dayOf(const std::string& said);

} // namespace hammerline::app
