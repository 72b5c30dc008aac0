// What was found out and not read again, over passes that read different things.
#include "core/sheet/not_read_since.h"

#include <catch2/catch.hpp>

using namespace hammerline;

namespace {

constexpr std::int64_t kTenthOfMm = kNmPerMm / 10;

void readIn(Pass& pass, int note, DimensionId id, int tenths) {
    Reading reading;
    reading.count = tenths * kTenthOfMm;
    pass.cells[{{note}, id}].trials = {reading};
}

} // namespace

TEST_CASE("what an earlier pass found out counts until it is read again") {
    PianoRecord record;
    record.piano = *makePiano(ActionKind::upright, 88);
    record.specName = "upright";
    record.passes.resize(3);
    for (int i = 0; i < 3; ++i)
        record.passes[static_cast<std::size_t>(i)].number = i + 1;
    // zones of `upright`: let-off to 4.5 at the most, lost motion far under 2
    readIn(record.passes[0], 10, dimension::letOff, 80);
    readIn(record.passes[0], 11, dimension::letOff, 80);
    readIn(record.passes[0], 12, dimension::lostMotion, 30);
    readIn(record.passes[1], 10, dimension::letOff, 32);     // mended
    readIn(record.passes[1], 13, dimension::lostMotion, 30); // found later
    readIn(record.passes[2], 11, dimension::letOff, 90);     // read again: what it is now is no matter here

    std::vector<PassView> views;
    for (int i = 1; i <= 3; ++i)
        views.push_back(*viewPass(record, i));
    const std::vector<const PassView*> all{&views[0], &views[1], &views[2]};
    const auto left = notReadSince(all);
    std::vector<std::pair<int, int>> said; // note, pass
    for (const NotReadSince& each : left) {
        CHECK(each.judged.cell.dimension == dimension::lostMotion);
        said.emplace_back(each.judged.cell.note.value, each.pass);
    }
    CHECK(said == std::vector<std::pair<int, int>>{{12, 1}, {13, 2}});
    CHECK(notReadSince(std::span(all).first(1)).empty());
    const std::vector<const PassView*> without{nullptr, &views[1], &views[2]};
    CHECK(notReadSince(without).size() == 1);
    CHECK(notReadSince({}).empty());
}
