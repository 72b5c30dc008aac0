// A bench for book tests: a folder of its own under the system's temporary files, a clock that tells what it is told.
#pragma once

#include "db/bench_book.h"

#include <catch2/catch.hpp>

#include <filesystem>
#include <fstream>
#include <memory>
#include <sstream>

namespace hammerline::bench {

class Folder {
public:
    Folder();
    /// In memory where the system has such a place: for tests that commit thousands of times.
    static Folder quick();
    Folder(const Folder&) = delete;
    Folder& operator=(const Folder&) = delete;
    ~Folder();
    std::string file(const std::string& name) const { return (m_path / name).string(); }
    std::vector<std::string> names() const;

private:
    explicit Folder(const std::filesystem::path& where);
    std::filesystem::path m_path;
};

/// The value, or a failed test that names the refusal.
template <class T>
T ok(Outcome<T> outcome) {
    if (!outcome)
        FAIL("refused: " << key(outcome.error().code) << " " << outcome.error().offending << " "
                         << outcome.error().detail);
    return std::move(*outcome);
}
template <class T>
RefusalCode code(const Outcome<T>& outcome) {
    if (outcome) FAIL("was not refused");
    return outcome.error().code;
}

/// Starts on 25 November 2026, 08:00 UTC, and goes on by a second at each look.
Writer writer(std::int64_t start = 1'795'593'600'000'000);

Piano upright(const std::string& name = "Parlour upright");
NewReading mm(int note, DimensionId, double mm, int trial = 1);
NewReading said(int note, DimensionId, WordId, const std::string& typed);
Cell cell(int note, DimensionId);

struct Filled {
    BenchBook book;
    std::string piano;
};
/// A book with one piano, two passes, readings, repeats, words, findings, an override, a ticked plan.
Filled filledBook(const std::string& path, Writer = writer());
/// The same with something in every table of the book, and an undo. Gives its path.
std::string fullBook(const Folder&);

std::string bytesOf(const std::string& path);
/// Opened to be read, and verified.
bool isFoundSound(const std::string& path);

/// Everything of a book that a person can see, piano by piano, as one text: two books with the same text say the same.
std::string contentOf(const BenchBook&);

} // namespace hammerline::bench
