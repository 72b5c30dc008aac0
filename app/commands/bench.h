// What most commands begin with: the book, the piano, the pass and the sheet they speak of.
#pragma once

#include "app/arguments.h"
#include "core/history/entry_pass.h"
#include "core/plan/plan.h"
#include "core/sheet/pass_view.h"
#include "db/bench_book.h"

namespace hammerline::app {

/// The book open and one of its pianos loaded.
struct Bench {
    BenchBook book;
    PianoRecord record;
    std::vector<Lesson> lessons; // of the other pianos; the record's piano is taught by them
};
/// The record as it now stands in the book.
Outcome<void> loadAgain(Bench&);
Outcome<Bench> openBench(const Common&, bool json, OpenMode = OpenMode::readWrite);
/// An older book may take a while to open, and says so unless the answer is JSON.
Outcome<BenchBook> openBook(const std::string& path, bool json, OpenMode = OpenMode::readWrite);

/// A file's bytes. Refuses cannotRead with path and cause, tooLarge beyond 256 MB.
Outcome<std::string> readFile(const std::string& path, std::size_t mostMegabytes = 64);

/// A built-in sheet by name, else a JSON file. Refuses badSpecSheet, cannotRead.
Outcome<SpecSheet> sheetFrom(const std::string& nameOrFile);

/// The pass meant: by number or label, empty: the last. Refuses noSuchPass.
Outcome<int> passOf(const Bench&, const std::string& numberOrLabel);

Outcome<PlanOptions> planOptions(const PlanRequest&);
/// The plan in force for a request, with the sheet in use.
Outcome<Plan> planFor(const Bench&, const PlanRequest&);

/// NAME=VALUE. Refuses usage.
Outcome<std::pair<std::string, std::string>> pairOf(const std::string& text);

} // namespace hammerline::app
