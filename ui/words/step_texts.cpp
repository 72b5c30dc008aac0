#include "ui/words/step_texts.h"

#include "core/work/work.h"
#include "ui/words/said.h"
#include "ui/words/step_figures.h"

#include <QRegularExpression>

#include <algorithm>

namespace hammerline::words {
namespace {

#define T(text) QT_TRANSLATE_NOOP("work", text)
constexpr std::array kWorkAccessNames{
    KeyedText{"closed", T("nothing opened")},
    KeyedText{"front-open", T("lid, top panel and fallboard off")},
    KeyedText{"bottom-open", T("bottom panel off")},
    KeyedText{"in", T("action in")},
    KeyedText{"rail-off", T("rest rail off or swung, action in")},
    KeyedText{"tilted", T("action tipped toward you and held")},
    KeyedText{"one-key", T("one key off at a time")},
    KeyedText{"keys-off", T("keys off")},
    KeyedText{"out", T("action out, on the bench")},
    KeyedText{"stack-out", T("player stack out")},
    KeyedText{"stack-in", T("player stack in")},
    KeyedText{"g-in", T("action in its place")},
    KeyedText{"g-drawn", T("action drawn out onto a level bench")},
    KeyedText{"g-stack-off", T("stack lifted off the keys")},
    KeyedText{"g-keys-off", T("stack and keys off")},
    KeyedText{"g-belly", T("action out, work in the cavity")},
    KeyedText{"g-under", T("from below: lyre and trap levers")},
};
#undef T

} // namespace

const StepText* stepText(std::string_view id) {
    for (const auto part : {beforeSteps(), openingSteps(), keysSteps(), benchSteps(), seatedSteps(), uprightSteps(),
                            grandSteps(), playerSteps(), afterSteps()})
        for (const StepText& text : part)
            if (text.id == id) return &text;
    return nullptr;
}

QString ofStep(const char* text, const Piano& piano) {
    if (!*text) return {};
    static const QRegularExpression kinds(QStringLiteral("^([A-Z]+)\\|"));
    const QString letters = utf8(kindLetters(piano));
    QStringList shown;
    for (QString line : QCoreApplication::translate("work", text).split(QLatin1Char('\n'))) {
        const auto found = kinds.match(line);
        const QString meant = found.captured(1);
        const bool here = std::any_of(meant.begin(), meant.end(), [&](QChar kind) { return letters.contains(kind); });
        if (found.hasMatch() && !here) continue;
        shown << withFigures(line.mid(found.capturedLength()), piano);
    }
    return shown.join(QLatin1Char(' '));
}

QString workAccessName(std::string_view access) {
    return saidOf(kWorkAccessNames, access, "work");
}

} // namespace hammerline::words
