#include "app/console.h"

#include "core/sheet/sheet.h"
#include "db/document.h"
#include "ui/words/keeping.h"
#include "ui/words/plainly.h"
#include "ui/words/said.h"
#include "ui/words/words.h"

#include <QCoreApplication>

#include <cstdio>

namespace hammerline::app {

namespace {

/// The commands for what the sentence advises; the window has buttons for it.
QString commandsFor(const Refusal& refusal) {
    if (!words::canBeRescued(refusal)) return {};
    return QCoreApplication::translate("console", "hammerline restore \"%1\" BACKUP puts a backup in its place; "
                                                  "hammerline restore \"%1\" --rescue reads what can be read.")
               .arg(words::utf8(refusal.offending)) +
           u'\n';
}

bool quiet = false;
bool spokenWanted = false;

} // namespace

QString inConsole(const char* text) {
    return QCoreApplication::translate("console", text);
}

QString countedInConsole(const char* text, int n) {
    return QCoreApplication::translate("console", text, nullptr, n);
}

void speakSentences() {
    spokenWanted = true;
}

bool sentencesWanted() {
    return spokenWanted;
}

void beQuiet() {
    quiet = true;
}

bool outputKept() {
    const bool flushed = std::fflush(stdout) == 0;
    if (flushed && std::ferror(stdout) == 0) return true;
    const QString lost = QCoreApplication::translate(
        "console", "What was to be printed is lost: standard output takes no more (is the disk full?). What was "
                   "already stored in the book stays.");
    std::fprintf(stderr, "%s\n", lost.toUtf8().constData());
    return false;
}

Outcome<void> writeOut(const std::string& path, std::string_view bytes) {
    if (path != "-") return writeDocument(path, bytes);
    std::fwrite(bytes.data(), 1, bytes.size(), stdout); // outputKept() sees what is lost
    return {};
}

void sayWritten(const QString& line, const std::string& path, bool json) {
    if (path != "-") say(line, json);
}

int refused(const Refusal& refusal, bool json) {
    const std::string sentence = words::plainly(words::sentence(refusal)).toStdString();
    // Scripts read the object where they read every other one; people read the sentence.
    if (json) std::fprintf(stdout, "%s\n", refusalJson(refusal, sentence).c_str());
    std::fprintf(stderr, "%s\n%s", sentence.c_str(), words::plainly(commandsFor(refusal)).toUtf8().constData());
    return kRefused;
}

void say(const QString& line, bool json) {
    if (!json) std::fprintf(stdout, "%s\n", words::plainly(line).toUtf8().constData());
}

void ask(const QString& line, bool json) {
    if (!json && !quiet) std::fprintf(stderr, "%s\n", words::plainly(line).toUtf8().constData());
}

void printJson(const std::string& object, bool json) {
    if (json) std::fprintf(stdout, "%s\n", object.c_str());
}

int done(std::int64_t act, bool json, const std::string& moreKeys) {
    printJson("{\"done\": true, \"act\": " + std::to_string(act) + moreKeys + "}", json);
    return kDone;
}

} // namespace hammerline::app
