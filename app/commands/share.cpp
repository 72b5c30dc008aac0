// share and advice: a page for somebody who knows, and the answer that comes back.
#include "app/commands/about.h"
#include "app/commands/commands.h"
#include "app/console.h"
#include "core/sheet/answers.h"
#include "ui/words/piano_record.h"
#include "ui/words/said.h"
#include "ui/words/second_opinion.h"

#include <QString>

#include <iostream>
#include <iterator>

namespace hammerline::app {
namespace {

using words::utf8;

constexpr std::size_t kLongestAnswer = 1'000'000;

Outcome<std::string> answerText(const std::string& file) {
    if (file != "-") return readFile(file);
    return std::string(std::istreambuf_iterator<char>(std::cin), {});
}

/// The pass drawn: the one meant, else the last with readings; none is no refusal.
Outcome<std::optional<PassView>> viewOf(const Bench& bench, const std::string& wanted) {
    int number = 0;
    if (!wanted.empty()) {
        const auto meant = passOf(bench, wanted);
        if (!meant) return tl::unexpected(meant.error());
        number = *meant;
    } else {
        for (const Pass& pass : bench.record.passes)
            if (pass.readingCount() > 0) number = pass.number;
    }
    if (number == 0) return std::optional<PassView>{};
    auto view = viewPass(bench.record, number);
    if (!view) return tl::unexpected(view.error());
    return std::optional(std::move(*view));
}

} // namespace

int run(const ShareRequest& request, bool json) {
    auto bench = openBench(request.at, json, OpenMode::readOnly);
    if (!bench) return refused(bench.error(), json);
    const auto view = viewOf(*bench, request.pass);
    if (!view) return refused(view.error(), json);
    if (const auto read = bench->book.loadPictures(bench->record); !read) return refused(read.error(), json);
    auto who = readLine("who", request.who, 200);
    if (!who) return refused(who.error(), json);
    words::OpinionOptions options;
    options.question = utf8(request.question);
    options.from = std::move(*who);
    options.on = dayOf({}).value_or("");
    options.whose = request.whose;
    const std::string page = words::opinionPage(bench->record, *view ? &**view : nullptr, options).toStdString();
    if (const auto written = writeOut(request.out, page); !written) return refused(written.error(), json);
    sayWritten(QStringLiteral("Written: %1 (%2 kB). It is read in any browser, and holds everything it needs.")
                   .arg(utf8(request.out))
                   .arg(page.size() / 1000),
               request.out, json);
    return request.out == "-" ? kDone : done(0, json, ", \"bytes\": " + std::to_string(page.size()));
}

int run(const AdviceRequest& request, bool json) {
    auto bench = openBench(request.at, json);
    if (!bench) return refused(bench.error(), json);
    const auto text = answerText(request.file);
    if (!text) return refused(text.error(), json);
    if (text->size() > kLongestAnswer) return refused({RefusalCode::tooLarge, {}, request.file, "1 MB"}, json);
    const auto answers = readAnswers(*text, bench->record, dayOf({}).value_or(""), request.who);
    if (!answers) {
        Refusal refusal = answers.error();
        if (refusal.code == RefusalCode::emptyFile) refusal.offending = request.file;
        if (refusal.place.line > 0) refusal.place.source = request.file;
        return refused(refusal, json);
    }
    const std::vector<Remark> fresh = notYetSaid(*answers, bench->record);
    const auto act = fresh.empty() ? Outcome<ActId>(0) : bench->book.addRemarks(bench->record.uuid, fresh);
    if (!act) return refused(act.error(), json);
    for (const Remark& answer : fresh)
        say(words::remarkSentence(answer, bench->record.piano), json);
    const auto already = answers->size() - fresh.size();
    if (already > 0) ask(QStringLiteral("%1 was there already.").arg(already), json);
    return done(*act, json, ", \"added\": " + std::to_string(fresh.size()));
}

} // namespace hammerline::app
