// Book files: whatever the bytes, opening is a refusal or a book, never a crash; a book that opens is loaded and
// verified, and reading it leaves the file as it was.
#include "db/bench_book.h"
#include "tests/fuzz/fuzz.h"

#include <unistd.h>

#include <filesystem>
#include <fstream>
#include <string>

using namespace hammerline;
namespace fs = std::filesystem;

namespace {

const fs::path kFolder = fs::temp_directory_path() / ("hammerline-book-fuzz-" + std::to_string(::getpid()));

} // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* bytes, std::size_t size) {
    fs::create_directories(kFolder);
    const fs::path file = kFolder / "fuzzed.hammerline";
    std::ofstream(file, std::ios::binary)
        .write(reinterpret_cast<const char*>(bytes), static_cast<std::streamsize>(size));
    if (const auto book = BenchBook::open(file.string(), OpenMode::readOnly)) {
        if (const auto pianos = book->pianos())
            for (const auto& piano : *pianos)
                (void)book->load(piano.uuid);
        (void)book->verify();
    }
    std::error_code ignored;
    fs::remove_all(kFolder, ignored);
    return 0;
}
