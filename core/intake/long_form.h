// The long form in pieces as they come from a file, so that a million readings pass in the memory of one piece.
#pragma once

#include "core/intake/intake.h"

#include <memory>

namespace hammerline {

/// Takes UTF-8 text (other encodings: readLongForm) piece by piece and gives each sound reading away at once. After a
/// refusal nothing more may be added, and what was given away is not to be kept.
class LongFormReader {
public:
    /// The piano outlives the reader. `named` as PianoNames found it; false is right for a file of one piano.
    LongFormReader(const Piano&, std::function<void(Sound&&)> take, bool named = false,
                   std::optional<char> separator = std::nullopt);
    LongFormReader(const Piano&&, std::function<void(Sound&&)>, bool = false, std::optional<char> = {}) = delete;
    ~LongFormReader();
    LongFormReader(const LongFormReader&) = delete;
    LongFormReader& operator=(const LongFormReader&) = delete;

    /// Passes without readings are given away as they are read too, in their order among the sound readings; without
    /// this they are listed in the result. Before the first add().
    void onPass(std::function<void(SaidPass&&)> said);
    /// Refuses badTable (unterminated quote, zero byte, not UTF-8, not the long form) and severalPianos.
    Outcome<void> add(std::string_view piece);
    /// Refuses as add does, and emptyFile. `sound` of the result is empty.
    Outcome<Intake> finish();

private:
    struct State;
    std::unique_ptr<State> m_state;
};

/// The separator of a file that begins so.
char separatorOfHead(std::string_view head);

/// Whether some row of the long form bears the name of a piano, looked for before reading: rows of other pianos are
/// left out only where ours is in the file.
class PianoNames {
public:
    PianoNames(std::string_view name, char separator);
    void add(std::string_view piece);
    bool found() const { return m_found; }

private:
    std::vector<std::string> m_beginnings;
    std::string m_tail;
    bool m_found = false;
};

} // namespace hammerline
