#include "app/commands/bench.h"

#include "app/commands/progress.h"
#include "app/console.h"
#include "core/plan/plan_in_force.h"
#include "db/files.h"
#include "db/left_behind.h"
#include "ui/words/keeping.h"

#include <array>
#include <cerrno>
#include <cstdio>
#include <filesystem>
#include <memory>

namespace hammerline::app {

Outcome<BenchBook> openBook(const std::string& path, bool json, OpenMode mode) {
    Progress progress(json);
    auto book = BenchBook::open(path, mode, {}, [&progress](double share) { return progress.goesOn(share); });
    for (const LeftBehind& left : leftBehind(path)) // also where it cannot be opened: this may be all that there is
        ask(words::leftBehindSentence(left) + QLatin1Char(' ') + words::leftBehindAdvice(left, path), json);
    return book;
}

Outcome<Bench> openBench(const Common& at, bool json, OpenMode mode) {
    auto book = openBook(at.book, json, mode);
    if (!book) return tl::unexpected(book.error());
    auto uuid = book->findPiano(at.piano);
    if (!uuid) return tl::unexpected(uuid.error());
    auto record = book->load(*uuid);
    if (!record) return tl::unexpected(record.error());
    std::vector<Lesson> lessons = book->lessonsFor(*record).value_or(std::vector<Lesson>{});
    teach(*record, lessons);
    if (!record->leftOut.empty()) ask(words::leftOutSentence(*record), json);
    return Bench{std::move(*book), std::move(*record), std::move(lessons)};
}

Outcome<void> loadAgain(Bench& bench) {
    auto again = bench.book.load(bench.record.uuid);
    if (!again) return tl::unexpected(again.error());
    bench.record = std::move(*again);
    teach(bench.record, bench.lessons);
    return {};
}

namespace {

struct CloseFile {
    void operator()(std::FILE* file) const { std::fclose(file); }
};
using File = std::unique_ptr<std::FILE, CloseFile>;

} // namespace

Outcome<std::string> readFile(const std::string& path, std::size_t mostMegabytes) {
    if (const auto file = requireFile(path); !file) return tl::unexpected(file.error());
    const File file(std::fopen(path.c_str(), "rb"));
    if (!file) return tl::unexpected(readingRefusal(path, errno));
    std::string bytes;
    std::array<char, 1 << 16> block;
    while (const std::size_t n = std::fread(block.data(), 1, block.size(), file.get())) {
        bytes.append(block.data(), n);
        if (bytes.size() > mostMegabytes << 20U)
            return refuse(RefusalCode::tooLarge, path, std::to_string(mostMegabytes) + " MB");
    }
    if (std::ferror(file.get())) return tl::unexpected(readingRefusal(path, errno));
    return bytes;
}

Outcome<SpecSheet> sheetFrom(const std::string& nameOrFile) {
    if (auto sheet = builtInSheet(nameOrFile)) return sheet;
    auto bytes = readFile(nameOrFile, 1); // a sheet has some kilobytes
    if (!bytes) return tl::unexpected(bytes.error());
    auto sheet = readSpecSheet(*bytes);
    if (!sheet) sheet.error().place.source = nameOrFile;
    return sheet;
}

Outcome<int> passOf(const Bench& bench, const std::string& numberOrLabel) {
    return bench.book.findPass(bench.record.uuid, numberOrLabel);
}

Outcome<std::pair<std::string, std::string>> pairOf(const std::string& text) {
    const auto at = text.find('=');
    if (at == std::string::npos || at == 0) return refuse(RefusalCode::usage, text + ": NAME=VALUE is needed");
    return std::pair{text.substr(0, at), text.substr(at + 1)};
}

namespace {

template <class Choice, std::size_t N>
Outcome<Choice> choose(const std::string& text, const char* option, const std::array<Choice, N>& choices) {
    std::string known;
    for (const Choice each : choices) {
        if (key(each) == text) return each;
        known += (known.empty() ? "" : ", ") + std::string(key(each));
    }
    return refuse(RefusalCode::usage, std::string(option) + ' ' + text + ": known are " + known);
}

} // namespace

Outcome<PlanOptions> planOptions(const PlanRequest& request) {
    PlanOptions options;
    if (!request.intent.empty()) {
        const auto intent = choose(request.intent, "--intent", std::array{Intent::touchUp, Intent::full});
        if (!intent) return tl::unexpected(intent.error());
        options.intent = *intent;
    }
    if (!request.floating.empty()) {
        const auto floating =
            choose(request.floating, "--float", std::array{Float::dip, Float::blow, Float::aftertouch});
        if (!floating) return tl::unexpected(floating.error());
        options.floating = *floating;
    }
    if (!request.stage.empty()) {
        const auto stage = choose(request.stage, "--stage", std::array{Stage::trial, Stage::sections, Stage::whole});
        if (!stage) return tl::unexpected(stage.error());
        options.stage = *stage;
    }
    if (request.minutes && *request.minutes <= 0) return refuse(RefusalCode::usage, "--minutes takes a number above 0");
    options.minutes = request.minutes;
    for (const std::string& each : request.accept) {
        const auto at = each.find('=');
        options.accepted[each.substr(0, at)] = at == std::string::npos ? std::string{} : each.substr(at + 1);
    }
    return options;
}

namespace {

/// What is accepted must be there: a cause that no longer stands is refused, never ignored.
Outcome<void> acceptedStand(const Plan& plan, const std::vector<std::string>& accepted) {
    for (const std::string& each : accepted) {
        const std::string wanted = each.substr(0, each.find('='));
        const auto stands = [&](const Cause& cause) { return cause.key == wanted; };
        if (std::any_of(plan.causes.begin(), plan.causes.end(), stands)) continue;
        std::string found;
        for (const Cause& cause : plan.causes)
            found += (found.empty() ? "" : ", ") + std::string(cause.key);
        return refuse(RefusalCode::unknownCause, wanted, found.empty() ? "-" : found);
    }
    return {};
}

} // namespace

Outcome<Plan> planFor(const Bench& bench, const PlanRequest& request) {
    const auto pass = passOf(bench, request.pass);
    if (!pass) return tl::unexpected(pass.error());
    std::optional<PlanOptions> options;
    if (request.anyOption()) {
        auto read = planOptions(request);
        if (!read) return tl::unexpected(read.error());
        options = std::move(*read);
    }
    auto plan = planInForce(bench.record, sheetOf(bench.record), *pass, options);
    if (plan)
        if (auto stands = acceptedStand(*plan, request.accept); !stands) return tl::unexpected(stands.error());
    return plan;
}

} // namespace hammerline::app
