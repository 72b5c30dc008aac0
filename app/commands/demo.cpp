// demo: a school's upright after a damp winter and the grand of its practice room, invented and marked so.
#include "app/commands/commands.h"
#include "app/commands/demo_story.h"
#include "app/console.h"

#include <QString>

#include <chrono>

namespace hammerline::resources {
extern const std::string_view demoUpright, demoUprightReadings, demoGrand, demoGrandReadings;
}

namespace hammerline::app {

int run(const DemoRequest& request, bool json) {
    using namespace std::chrono;
    StoryClock clock;
    clock.today = duration_cast<microseconds>(system_clock::now().time_since_epoch()).count();
    clock.now = clock.today;
    const Writer writer{.program = "hammerline", .now = [&clock] { return clock.now; }};
    const auto fill = [&clock](BenchBook& book) -> Outcome<void> {
        if (auto told = tellStory(book, clock, resources::demoUpright, resources::demoUprightReadings); !told)
            return told;
        return tellStory(book, clock, resources::demoGrand, resources::demoGrandReadings);
    };
    const auto book = BenchBook::createFilled(request.book, fill, writer);
    if (!book) return refused(book.error(), json);
    say(QStringLiteral("Demo book written: %1 (every reading in it is invented).")
            .arg(QString::fromStdString(request.book)),
        json);
    return done(1, json);
}

} // namespace hammerline::app
