#include "ui/words/doing.h"

#include "ui/words/said.h"

namespace hammerline::words {

namespace {

QString ofDoing(const char* text) {
    return QCoreApplication::translate("doing", text);
}

const DoingText* textOf(std::string_view step, std::string_view kinds) {
    for (const DoingText& each : doingTexts())
        if (each.step == step && each.kinds == kinds) return &each;
    return nullptr;
}

} // namespace

QString doingView(std::string_view step, std::string_view kinds) {
    const DoingText* text = textOf(step, kinds);
    return text ? ofDoing(text->view) : QString();
}

QString doingTest(std::string_view step, std::string_view kinds) {
    const DoingText* text = textOf(step, kinds);
    return text ? ofDoing(text->test) : QString();
}

QString doingFigure(std::string_view step, std::string_view kinds) {
    const DoingText* text = textOf(step, kinds);
    return text && *text->figure ? ofDoing(text->figure) : QString();
}

QString doingSentence(std::string_view step, std::string_view kinds) {
    const DoingText* text = textOf(step, kinds);
    return text ? ofDoing(text->sentence) : QString();
}

QString doingTestHead() {
    return ofDoing(QT_TRANSLATE_NOOP("doing", "The test"));
}

} // namespace hammerline::words
