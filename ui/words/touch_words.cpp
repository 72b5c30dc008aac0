#include "ui/words/touch_words.h"

#include "ui/words/said.h"
#include "ui/words/words.h"

#include <QCoreApplication>
#include <QStringList>

namespace hammerline::words {
namespace {

struct TouchText {
    TouchSays says;
    const char *upright, *grand;
};

/// The order of looking is common practice, no source; that a butt spring alone may weigh 17 g is a list post's of
/// 1998.
constexpr std::array kTouchTexts = {
    TouchText{TouchSays::right, QT_TRANSLATE_NOOP("readings", "Both are in order."),
              QT_TRANSLATE_NOOP("readings", "Both are in order.")},
    TouchText{
        TouchSays::friction,
        QT_TRANSLATE_NOOP("readings", "Too much friction. Look at the key alone first (front and balance), then at "
                                      "the centres of wippen, jack and hammer, the butt leather, capstan and heel."),
        QT_TRANSLATE_NOOP("readings", "Too much friction. Look at the key alone first (front and balance), then at "
                                      "the centres of wippen, jack and hammer, the knuckle, capstan and heel.")},
    TouchText{
        TouchSays::weight,
        QT_TRANSLATE_NOOP("readings", "Too heavy. Look at the butt spring (up to 17 g by itself), and whether the "
                                      "damper still rests on the key. The springs make this figure a word of "
                                      "caution on an upright."),
        QT_TRANSLATE_NOOP("readings", "Too heavy. Look at heavy hammers, missing leads, a capstan that was moved.")},
    TouchText{TouchSays::light,
              QT_TRANSLATE_NOOP("readings",
                                "Light; the key may not come home. Look at a missing butt spring, leads that "
                                "were added, hammers filed short."),
              QT_TRANSLATE_NOOP("readings", "Light; the key may not come home. Look at leads that were added, hammers "
                                            "filed short.")},
    TouchText{TouchSays::hidden,
              QT_TRANSLATE_NOOP("readings",
                                "Much friction, hidden by little weight: leads added, or a weak spring. Cure "
                                "the friction first, then weigh again."),
              QT_TRANSLATE_NOOP("readings", "Much friction, hidden by little weight: leads added. Cure the friction "
                                            "first, then weigh again.")},
    TouchText{TouchSays::loose,
              QT_TRANSLATE_NOOP("readings", "Very little friction: try the centres for side play and click."),
              QT_TRANSLATE_NOOP("readings", "Very little friction: try the centres for side play and click.")},
};

QString touchText(const char* text) {
    return QCoreApplication::translate("readings", text);
}

} // namespace

QString touchFigures(const NoteTouch& touch) {
    return touchText(QT_TRANSLATE_NOOP("readings", "Friction %1 g, mean weight %2 g."))
        .arg(number(touch.touch.friction), number(touch.touch.mean));
}

QString touchSentence(const NoteTouch& touch, const Piano& piano) {
    QStringList out;
    for (const TouchSays says : touch.says)
        for (const TouchText& each : kTouchTexts)
            if (each.says == says) out << touchText(piano.vertical() ? each.upright : each.grand);
    return out.join(QLatin1Char(' '));
}

} // namespace hammerline::words
