// Writes the seed of book_fuzz: a small sound book with a piano, a pass and a reading.
#include "db/bench_book.h"

#include <cstdio>

using namespace hammerline;

int main(int count, char** words) {
    if (count != 2) return 2;
    auto book = BenchBook::create(words[1]);
    if (!book) return 1;
    Piano piano = *makePiano(ActionKind::upright, 20);
    piano.name = "Hall";
    const auto uuid = book->addPiano(piano, "upright");
    if (!uuid) return 1;
    const auto pass = book->addPass(*uuid, {});
    if (!pass) return 1;
    NewReading reading{Cell{{1}, dimension::blow}, {}};
    reading.reading.count = 46'000'000;
    reading.reading.typed = "46";
    reading.reading.typedUnit = "mm";
    return book->store(*uuid, *pass, std::span(&reading, 1)) ? 0 : 1;
}
