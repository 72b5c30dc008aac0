#include "core/sheet/export_reading.h"

#include "core/sheet/export_passes.hpp"
#include "core/sheet/export_proof.hpp"

namespace hammerline {
namespace {

using sheet::ExportWalk;
using At = ExportWalk::At;

constexpr double kParsed = 0.5; // of the time, for the text as such; what it says takes the rest

std::string_view withoutLeadingSpace(std::string_view text) {
    const auto first = text.find_first_not_of(" \t\r\n");
    return first == text.npos ? std::string_view{} : text.substr(first);
}

void readSetUp(ExportWalk& walk, const At& at, PianoRecord& record) {
    const auto name = walk.text(at, "name", true);
    if (walk.ok() && name.empty()) walk.wrong({nullptr, at.path + "/name"}, "missing");
    record.uuid = walk.uuid(at);
    const auto action = parseActionKind(walk.text(at, "action", true));
    if (walk.ok() && !action) return walk.wrong(*walk.maybe(at, "action"), "unknown");
    const auto notes = walk.whole(at, "notes", 20, 108, true);
    const auto lowestText = walk.text(at, "lowest", true);
    const auto lowest = parseLowest(lowestText);
    if (walk.ok() && !lowest) return walk.wrong(*walk.maybe(at, "lowest"), "unknown");
    if (!walk.ok()) return;
    auto piano = makePiano(*action, static_cast<int>(*notes), *lowest);
    if (!piano) return walk.wrong(*walk.maybe(at, "notes"), "range");
    record.piano = std::move(*piano);
    record.piano.name = name;
    walk.members(at, "attributes", [&](const std::string& attribute, const At& value) {
        if (!value.json->is_string()) return walk.wrong(value, "type");
        const auto set = setAttribute(record.piano, attribute, value.json->get<std::string>());
        if (!set) walk.wrong(value, std::string{key(set.error().code)});
    });
    record.specName = walk.text(at, "spec");
    if (const auto spec = walk.maybe(at, "spec_sheet")) {
        auto read = readSpecSheet(spec->json->dump(-1, ' ', false, sheet::Json::error_handler_t::replace));
        if (!read) return walk.wrong({nullptr, spec->path + "/" + read.error().place.field}, "spec-sheet");
        record.spec = std::move(*read);
    }
}

/// Before anything of it is read: what was changed since is named as that, whatever else is wrong with it now.
void prove(ExportWalk& walk, const At& at, const DigestText& digest, ReadExport& out) {
    const auto proof = digest ? walk.maybe(at, "proof") : std::nullopt;
    if (!proof) return;
    const std::string unfit = sheet::unproven(*at.json, *proof->json, digest);
    if (unfit.empty())
        ++out.proven;
    else
        walk.wrong({nullptr, proof->path}, "proof", unfit);
}

void readPiano(ExportWalk& walk, const At& at, bool takeDoubtful, ReadExport& out) {
    PianoRecord record;
    readSetUp(walk, at, record);
    if (!walk.ok()) return;
    sheet::readPasses(walk, at, record, takeDoubtful, out);
    sheet::readWork(walk, at, record);
    walk.members(at, "preferences", [&](const std::string& name, const At& value) {
        if (name.empty() || !value.json->is_string()) return walk.wrong(value, "type");
        record.preferences[name] = value.json->get<std::string>();
    });
    if (walk.ok()) out.pianos.push_back(std::move(record));
}

} // namespace

Outcome<void> skimExport(const NextPiece& next) {
    return sheet::skimJson(next);
}

bool looksLikeJson(std::string_view head) {
    if (head.starts_with("\xEF\xBB\xBF")) head.remove_prefix(3);
    return withoutLeadingSpace(head).starts_with('{');
}

Outcome<ReadExport> readExport(std::string_view bytes, bool takeDoubtful, const GoOn& goOn, const DigestText& digest) {
    const auto goesOn = [&](double share) { return !goOn || goOn(share); };
    const auto json = sheet::parseJson(bytes, [&](double share) { return goesOn(share * kParsed); });
    if (!json) return tl::unexpected{json.error()};
    ReadExport out;
    ExportWalk walk;
    const At top{&*json, {}};
    if (walk.text(top, "format", true) != "hammerline-export" && walk.ok())
        walk.wrong(*walk.maybe(top, "format"), "unknown");
    walk.whole(top, "version", 1, 1, true);
    double done = 0;
    bool stopped = false;
    if (const auto pianos = walk.maybe(top, "pianos"))
        walk.each(*pianos, [&](const At& at) {
            const double share = done++ / static_cast<double>(pianos->json->size());
            stopped = stopped || !goesOn(kParsed + (1 - kParsed) * share);
            if (!stopped) prove(walk, at, digest, out);
            if (!stopped && walk.ok()) readPiano(walk, at, takeDoubtful, out);
        });
    if (stopped) return refuse(RefusalCode::cancelled);
    if (walk.refusal()) return tl::unexpected{*walk.refusal()};
    return out;
}

} // namespace hammerline
