// Writes the seed of book_fuzz: a small sound book with a piano, a pass and a reading.
#include "db/bench_book.h"

#include <cstdio>

using namespace hammerline;

namespace {

Outcome<void> writeSeed(const char* path) {
    auto book = BenchBook::create(path);
    if (!book) return tl::unexpected{book.error()};
    Piano piano = *makePiano(ActionKind::upright, 20);
    piano.name = "Hall";
    const auto uuid = book->addPiano(piano, "upright");
    if (!uuid) return tl::unexpected{uuid.error()};
    const auto pass = book->addPass(*uuid, {});
    if (!pass) return tl::unexpected{pass.error()};
    NewReading reading{Cell{{1}, dimension::blow}, {}};
    reading.reading.count = 46'000'000;
    reading.reading.typed = "46";
    reading.reading.typedUnit = "mm";
    const auto act = book->store(*uuid, *pass, std::span(&reading, 1));
    if (!act) return tl::unexpected{act.error()};
    return {};
}

} // namespace

int main(int count, char** words) {
    if (count != 2) return 2;
    const auto written = writeSeed(words[1]);
    if (!written)
        std::fprintf(stderr, "%s %s\n", std::string{key(written.error().code)}.c_str(), written.error().detail.c_str());
    return written ? 0 : 1;
}
