// The states of all notes after passes and work, in one run through the history (computation 8).
#pragma once

#include "core/history/note_state.h"
#include "core/history/record.h"

namespace hammerline {

/// The responses by operation and colour, and by section where one answers otherwise.
class Answers {
public:
    Answers(std::span<const Response> responses, const Piano&);
    /// Of the piano as a whole. Null where the operation has none for that colour.
    const Response* of(OperationId, KeyColour) const;
    /// At a note: its section's own answer before the piano's.
    const Response* at(OperationId, NoteNumber) const;

private:
    using Table = std::array<std::array<const Response*, 2>, kOperationCount>;
    const Piano* m_piano;
    Table m_whole{};
    std::vector<Table> m_sections; // empty while all sections answer alike
};

struct RatioOf {
    double value{};
    double spread{}; // one standard deviation between notes
};

/// Relative spread of R between the notes of a colour, until five readings of a note tell it (a guess, no source).
inline constexpr double kUsualSpread = 0.02;

struct StateQuestion {
    const PianoRecord* record{};
    /// The passes to go through, first to last, with heights relative (judge's withRelativeHeights); pass numbers are
    /// those inside.
    std::span<const Pass* const> passes;
    std::array<RatioOf, 2> ratio;
};

/// By note (index note - 1). Readings are weighed with what was expected, within one covariance a note; work moves the
/// state. With `workOfLast` false, what was done after the readings of the last
/// pass is left out (learning compares before and after).
std::vector<NoteState> noteStates(const StateQuestion&, const Answers&, bool workOfLast = true);

/// Moves the note's state by an amount of an operation, and the height of the sharps beside a natural that it lifts:
/// sharp-height is read over the mean of the adjacent naturals, so each takes its share off.
void moveAt(std::vector<NoteState>&, const Piano&, NoteNumber, const Response&, double amount);
/// The same for work that was set to its aim by looking (see setToAim).
void setToAimAt(std::vector<NoteState>&, const Piano&, NoteNumber, const Response&, std::optional<double> aim,
                double u);

/// Between the screws or brackets that carry an amount a rail runs straight; beyond the outermost it goes on level.
double amountBetween(const std::map<int, double>& amounts, NoteNumber);
/// The amount of a done thing at one note; none for "set to the aim" or where it does not touch the note.
std::optional<double> amountAt(const Done&, NoteNumber);

} // namespace hammerline
