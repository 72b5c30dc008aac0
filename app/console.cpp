#include "app/console.h"

#include "core/sheet/sheet.h"
#include "ui/words/words.h"

#include <cstdio>

namespace hammerline::app {

int refused(const Refusal& refusal, bool json) {
    const std::string sentence = words::sentence(refusal).toStdString();
    // Scripts read the object where they read every other one; people read the sentence.
    if (json) std::fprintf(stdout, "%s\n", refusalJson(refusal, sentence).c_str());
    std::fprintf(stderr, "%s\n", sentence.c_str());
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
