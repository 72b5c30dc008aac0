// Which pianos of a book the pianos of an export belong to.
#pragma once

#include "db/bench_book.h"

namespace hammerline {

/// By uuid, else by name where no other of the file has that piano; else as a new one.
std::vector<BenchBook::Incoming> incomingTo(std::span<const PianoLine> book, std::vector<PianoRecord> file);

} // namespace hammerline
