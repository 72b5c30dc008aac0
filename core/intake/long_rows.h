// The rows of the long form, one reading each: what their fields mean, and what becomes of them.
#pragma once

#include "core/intake/cell.h"

#include <set>
#include <tuple>

namespace hammerline {

enum class LongField : std::uint8_t { piano, pass, note, dimension, trial, text, unit, state, at };

/// Where the fields stand among the heads; those of a note, a dimension and a text make the long form.
class LongHeads {
public:
    explicit LongHeads(const std::vector<std::string>& heads);
    bool complete() const { return has(LongField::note) && has(LongField::dimension) && has(LongField::text); }
    bool has(LongField field) const { return m_positions[index(field)].has_value(); }
    /// From 1; 1 where the field is missing.
    int column(LongField field) const { return static_cast<int>(m_positions[index(field)].value_or(0)) + 1; }
    /// The field without spaces around it; empty where it is missing.
    std::string_view of(LongField, const std::vector<std::string>& fields) const;
    static std::string_view name(LongField);

private:
    static std::size_t index(LongField field) { return static_cast<std::size_t>(field); }
    std::array<std::optional<std::size_t>, 9> m_positions;
};

class LongRows {
public:
    /// `named`: some row bears the piano's own name; otherwise the file must be of one piano, whatever its name.
    LongRows(const Piano&, std::function<void(Sound&&)> take, LongHeads, bool named);

    /// Instead of listing them in the result.
    void onPass(std::function<void(SaidPass&&)> said) { m_said = std::move(said); }

    /// Refuses severalPianos: none has the piano's name, and there is more than one; and badTable beyond what a file of
    /// readings has (kMostAsked, kMostCells, kMostPasses).
    Outcome<void> read(const std::vector<std::string>& fields, int line);
    Intake finish();

private:
    std::string_view at(LongField field) const { return m_heads.of(field, *m_fields); }
    Outcome<bool> isForeign(std::string_view name);
    void readRow();
    void readPass();
    void readReading(bool taken);
    void forgetOtherNotes();
    void settle(Sound&&);
    bool seenBefore(const Sound&);
    void ask(Question);
    void refuseField(LongField, RefusalCode);

    const Piano& m_piano;
    std::function<void(Sound&&)> m_take;
    std::function<void(SaidPass&&)> m_said;
    LongHeads m_heads;
    bool m_named;
    CellContext m_context;
    const std::vector<std::string>* m_fields{};
    int m_line{};
    Cell m_cell;
    std::optional<std::string> m_only; // the one piano of a file that does not know ours
    std::set<std::string, std::less<>> m_foreign;
    NoteNumber m_knownOf;
    std::string m_knownPass;
    std::optional<Sound> m_last;
    std::map<std::string, std::vector<std::uint64_t>> m_seen; // by pass
    std::set<std::tuple<std::string, std::size_t, int>> m_seenBeyond;
    std::size_t m_saidPasses = 0;
    Intake m_intake;
};

} // namespace hammerline
