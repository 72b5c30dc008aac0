#include "app/option_table.h"

#include <algorithm>
#include <array>
#include <numeric>
#include <utility>

namespace hammerline::app {
namespace {

using Example = std::pair<std::string_view, std::string_view>;

constexpr std::array kExamples = {
    Example{"demo", "demo demo.hammerline"},
    Example{"new", "new hall.hammerline --piano \"Hall upright\" --action upright --last-damper 66"},
    Example{"piano", "piano hall.hammerline --attribute damping=underdamper"},
    Example{"pass", "pass hall.hammerline --label \"after shims\" --humidity 45"},
    Example{"import", "import hall.hammerline readings.csv --unit let-off=mm"},
    Example{"enter", "enter hall.hammerline 40 let-off 4.2"},
    Example{"undo", "undo hall.hammerline"},
    Example{"redo", "redo hall.hammerline"},
    Example{"override", "override hall.hammerline 40 let-off 2.5 3 3.5 --reason \"thick strings\""},
    Example{"check", "check hall.hammerline --pass 1"},
    Example{"action", "action hall.hammerline --note 33"},
    Example{"plan", "plan hall.hammerline --minutes 60"},
    Example{"tick", "tick hall.hammerline --step let-off-turn:33 --aim"},
    Example{"compare", "compare hall.hammerline --from 1 --to 2"},
    Example{"survey", "survey hall.hammerline --add \"20-30 bridle-strap torn\""},
    Example{"work", "work hall.hammerline --step stand-it-safe --done all"},
    Example{"next", "next hall.hammerline"},
    Example{"print", "print hall.hammerline adjustment --out list.pdf"},
    Example{"export", "export hall.hammerline --out readings.csv"},
    Example{"list", "list hall.hammerline --find \"school 1912\""},
    Example{"archive", "archive hall.hammerline --piano \"Hall upright\""},
    Example{"unarchive", "unarchive hall.hammerline --piano \"Hall upright\""},
    Example{"estimate", "estimate hall.hammerline --set hour=60 --set currency=EUR"},
    Example{"photo", "photo hall.hammerline hammer.jpg --finding \"40 hammer\""},
    Example{"share", "share hall.hammerline --out hall.html --question \"file again, or new hammers?\""},
    Example{"advice", "advice hall.hammerline answer.txt"},
    Example{"experience", "experience hall.hammerline --piano \"Hall upright\""},
    Example{"gauge", "gauge hall.hammerline --dimension let-off --persons 2,3,4"},
    Example{"visits", "visits hall.hammerline"},
    Example{"remark", "remark hall.hammerline \"glued before\" --note 40 --part hammer"},
    Example{"backup", "backup hall.hammerline --out /media/stick/hall.hammerline"},
    Example{"restore", "restore hall.hammerline \"hall 2026-03-12.hammerline\""},
    Example{"merge", "merge hall.hammerline laptop.hammerline"},
    Example{"verify", "verify hall.hammerline"},
    Example{"ids", "ids --json"},
    Example{"window", "window hall.hammerline --station review"},
};

/// How many letters must change (Levenshtein 1966): one row of the table at a time.
std::size_t distance(std::string_view a, std::string_view b) {
    std::vector<std::size_t> row(b.size() + 1);
    std::iota(row.begin(), row.end(), std::size_t{0});
    for (std::size_t i = 1; i <= a.size(); ++i) {
        std::size_t diagonal = std::exchange(row[0], i);
        for (std::size_t j = 1; j <= b.size(); ++j) {
            const std::size_t changed = diagonal + (a[i - 1] == b[j - 1] ? 0 : 1);
            diagonal = row[j];
            row[j] = std::min({changed, row[j] + 1, row[j - 1] + 1});
        }
    }
    return row.back();
}

} // namespace

const CommandRow* find(const OptionTable& table, std::string_view command) {
    const auto found = std::ranges::find(table, command, &CommandRow::name);
    return found == table.end() ? nullptr : &*found;
}

const OptionRow* find(const CommandRow& command, std::string_view option) {
    const auto found = std::ranges::find(command.options, option, &OptionRow::name);
    return found == command.options.end() ? nullptr : &*found;
}

std::string_view exampleOf(std::string_view command) {
    const auto found = std::ranges::find(kExamples, command, &Example::first);
    return found == kExamples.end() ? std::string_view{} : found->second;
}

std::string nearest(std::string_view typed, const std::vector<std::string>& known) {
    std::string best;
    std::size_t least = std::max<std::size_t>(1, typed.size() / 3) + 1;
    for (const std::string& each : known) {
        const bool cutShort = typed.size() >= 3 && each.starts_with(typed);
        const std::size_t away = cutShort ? 1 : distance(typed, each);
        if (away >= least) continue;
        least = away;
        best = each;
    }
    return best;
}

} // namespace hammerline::app
