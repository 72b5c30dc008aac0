#include "db/directory.h"

#include "db/loading.h"

namespace hammerline {

Directory::Directory(OpenBook& book) {
    for (const PianoLine& line : pianoNames(book)) {
        const std::int64_t piano = pianoRow(book, line.uuid);
        pianos[piano] = line.name;
        for (const PassRow& pass : passRows(book, piano))
            passes[pass.id] = {line.name, pass.number};
    }
}

} // namespace hammerline
