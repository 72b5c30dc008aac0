// Typed quantities: never a crash, and whatever is read is written and read back without loss.
#include "core/intake/intake.h"
#include "tests/fuzz/fuzz.h"

using namespace hammerline;
using fuzz::require;

namespace {

const Piano kPiano = *makePiano(ActionKind::upright);

void readBack(const TypedQuantity& quantity) {
    const Kind kind = kindOf(quantity.unit);
    const std::string exact = exactText(quantity.count, kind);
    const Unit plain = kind == Kind::length ? Unit::mm : kind == Kind::mass ? Unit::gram : Unit::percent;
    const auto again = parseQuantity(exact, plain);
    if (exact.size() < 18) require(again && again->count == quantity.count, "exact text is read back");
    require(quantity.relation != Relation::between || quantity.count <= quantity.upper, "a pair goes upward");
    require(!formatCount(quantity.count, Shown{quantity.unit, 3, 0, 1, true}).empty(), "a count is shown");
    require(!formatCount(quantity.count, Shown{Unit::inch, 0, 64}).empty(), "a count is shown in inches");
}

void readCellOf(std::string_view typed, DimensionId id) {
    EntryContext around;
    around.piano = &kPiano;
    const auto entry = readEntry(typed, Cell{{41}, id}, around);
    if (!entry) return;
    require(entry->sound.has_value() != entry->question.has_value(), "sound or a question");
    if (!entry->question || entry->question->suggestion.empty()) return;
    const auto meant = readEntry(entry->question->suggestion, Cell{{41}, id}, around);
    require(meant && meant->sound, "a suggestion is sound");
}

} // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* bytes, std::size_t size) {
    if (size < 1 || size > 300) return 0;
    const auto typed = fuzz::text(bytes + 1, size - 1);
    constexpr Unit units[] = {Unit::mm, Unit::cm, Unit::inch, Unit::thou, Unit::gram, Unit::ounce, Unit::percent};
    if (const auto quantity = parseQuantity(typed, units[bytes[0] % 7])) readBack(*quantity);
    readCellOf(typed, dimensions()[bytes[0] % dimensions().size()].id);
    return 0;
}
