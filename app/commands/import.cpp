// import: a file of readings into the book, in one transaction and one act.
#include "app/commands/bench.h"
#include "app/commands/commands.h"
#include "app/commands/file_pieces.h"
#include "app/commands/import_export.h"
#include "app/commands/intake_report.h"
#include "app/commands/progress.h"
#include "app/console.h"
#include "core/intake/long_form.h"
#include "core/sheet/export_reading.h"
#include "db/storing_intake.h"

#include <filesystem>

namespace hammerline::app {
namespace {

Outcome<TableOptions> tableOptions(const ImportRequest& request) {
    TableOptions options;
    for (const std::string& each : request.map) {
        const auto pair = pairOf(each);
        if (!pair) return tl::unexpected(pair.error());
        const auto id = findDimension(pair->second);
        if (!id) return tl::unexpected(id.error());
        options.columns[pair->first] = *id;
    }
    for (const std::string& each : request.units) {
        const auto pair = pairOf(each);
        if (!pair) return tl::unexpected(pair.error());
        const auto id = findDimension(pair->first);
        if (!id) return tl::unexpected(id.error());
        const auto unit = parseUnit(pair->second);
        if (!unit) return tl::unexpected(unit.error());
        options.units[*id] = *unit;
    }
    if (!request.decimal.empty()) options.decimal = request.decimal.front();
    return options;
}

/// Into the book goes the name alone: where it lay is nobody's business who gets the book.
std::string nameOf(const std::string& path) {
    return std::filesystem::path(path).filename().string();
}

struct Imported {
    Intake intake;
    std::size_t taken = 0;
    int pass = 0;
};

class Import {
public:
    Import(Bench& bench, const ImportRequest& request, std::optional<int> pass, TableOptions options, bool json)
        : m_bench(bench), m_request(request), m_pass(pass), m_options(std::move(options)), m_json(json) {}

    /// The program's own export is read in pieces; all else as a whole.
    Outcome<Imported> run(FilePieces& pieces) {
        const auto head = pieces.peek();
        if (!head) return tl::unexpected(head.error());
        // our own exports are UTF-8, which the pieces may be cut from; UTF-16 has to be seen as a whole
        const bool wide = head->starts_with("\xFF\xFE") || head->starts_with("\xFE\xFF");
        if (wide || !isLongForm(*head)) return whole(pieces);
        auto streamed = inPieces(pieces);
        const bool otherEncoding = !streamed && streamed.error().detail == "encoding";
        if (otherEncoding && pieces.rewind()) return whole(pieces);
        return streamed;
    }

private:
    Outcome<Imported> inPieces(FilePieces& pieces) {
        const bool named = namesPiano(pieces);
        return stored([&](StoringIntake& taking) -> Outcome<Intake> {
            Progress progress(pieces.size(), m_json);
            LongFormReader reader(
                m_bench.record.piano, [&](Sound&& sound) { taking.take(sound); }, named, m_options.separator);
            reader.onPass([&](SaidPass&& pass) { taking.take(pass); });
            while (true) {
                const auto piece = pieces.next();
                if (progress.cancelled()) return refuse(RefusalCode::cancelled);
                if (!piece) return tl::unexpected(piece.error());
                if (piece->empty()) return reader.finish();
                if (const auto added = reader.add(*piece); !added) return tl::unexpected(added.error());
                if (const auto stopped = taking.outcome(); !stopped) return tl::unexpected(stopped.error());
                progress.at(pieces.position(), taking.taken());
            }
        });
    }

    Outcome<Imported> whole(FilePieces& pieces) {
        const auto bytes = pieces.rest(kMostWhole >> 20U);
        if (!bytes) return tl::unexpected(bytes.error());
        auto intake = readReadings(*bytes, m_bench.record.piano, m_options);
        if (!intake) return tl::unexpected(intake.error());
        return stored([&](StoringIntake&) -> Outcome<Intake> { return std::move(intake); });
    }

    /// Rows of other pianos are left out only where ours is in the file.
    bool namesPiano(FilePieces& pieces) const {
        const auto head = pieces.peek();
        const char separator = m_options.separator.value_or(separatorOfHead(*head));
        PianoNames names(m_bench.record.piano.name, separator);
        names.add(*head);
        if (names.found() || !pieces.canRewind()) return names.found();
        while (!names.found()) {
            const auto piece = pieces.next();
            if (!piece || piece->empty()) break;
            names.add(*piece);
        }
        pieces.rewind();
        return names.found();
    }

    template <class Read>
    Outcome<Imported> stored(Read&& read) {
        Imported out;
        const auto act =
            m_bench.book.importInto(m_bench.record.uuid, nameOf(m_request.file), [&](Importing& into) -> Outcome<void> {
                StoringIntake taking(into, m_bench.record, m_pass,
                                     m_request.pass.empty()); // --pass: whatever the file names
                auto intake = read(taking);
                if (!intake) return tl::unexpected(intake.error());
                if (m_request.takeDoubtful) takeDoubtful(*intake, {});
                const auto finished = taking.finish(*intake);
                out = {std::move(*intake), taking.taken(), taking.lastPass()};
                return finished;
            });
        if (!act) return tl::unexpected(act.error());
        return out;
    }

    Bench& m_bench;
    const ImportRequest& m_request;
    std::optional<int> m_pass;
    TableOptions m_options;
    bool m_json;
};

} // namespace

namespace {

int importTable(const ImportRequest& request, FilePieces& pieces, bool json) {
    auto bench = openBench(request.at, json);
    if (!bench) return refused(bench.error(), json);
    auto options = tableOptions(request);
    if (!options) return refused(options.error(), json);
    std::optional<int> pass = passForEntry(bench->record);
    if (!request.pass.empty()) {
        const auto named = passOf(*bench, request.pass);
        if (!named) return refused(named.error(), json);
        pass = *named;
    }
    speakAsThePass(bench->record, pass, *options);
    auto imported = Import(*bench, request, pass, std::move(*options), json).run(pieces);
    if (!imported) return refused(ofFile(imported.error(), request.file), json);
    return reportIntake(imported->intake, bench->record.piano, imported->pass, imported->taken, json);
}

} // namespace

int run(const ImportRequest& request, bool json) {
    auto pieces = FilePieces::open(request.file);
    if (!pieces) return refused(pieces.error(), json);
    const auto head = pieces->peek();
    if (!head) return refused(head.error(), json);
    return looksLikeJson(*head) ? importExport(request, *pieces, json) : importTable(request, *pieces, json);
}

} // namespace hammerline::app
