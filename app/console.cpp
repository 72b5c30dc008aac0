#include "app/console.h"

#include "core/sheet/sheet.h"
#include "ui/words/keeping.h"
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

} // namespace

int refused(const Refusal& refusal, bool json) {
    const std::string sentence = words::sentence(refusal).toStdString();
    // Scripts read the object where they read every other one; people read the sentence.
    if (json) std::fprintf(stdout, "%s\n", refusalJson(refusal, sentence).c_str());
    std::fprintf(stderr, "%s\n%s", sentence.c_str(), commandsFor(refusal).toUtf8().constData());
    return kRefused;
}

void say(const QString& line, bool json) {
    if (!json) std::fprintf(stdout, "%s\n", line.toUtf8().constData());
}

void ask(const QString& line, bool json) {
    if (!json) std::fprintf(stderr, "%s\n", line.toUtf8().constData());
}

void printJson(const std::string& object, bool json) {
    if (json) std::fprintf(stdout, "%s\n", object.c_str());
}

int done(std::int64_t act, bool json, const std::string& moreKeys) {
    printJson("{\"done\": true, \"act\": " + std::to_string(act) + moreKeys + "}", json);
    return kDone;
}

} // namespace hammerline::app
