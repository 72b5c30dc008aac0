#include "ui/words/beside.h"

#include "ui/words/said.h"

namespace hammerline::words {
namespace {

#define T(text) QT_TRANSLATE_NOOP("survey", text)
constexpr std::array kOddPartStateNames{
    KeyedText{"there", T("in its place")},
    KeyedText{"off", T("taken off, and not decided whether it goes back")},
    KeyedText{"returns", T("taken off, and has to go back")},
    KeyedText{"stays-off", T("taken off, and stays off")},
    KeyedText{"back", T("was off, and is back")},
};
constexpr std::array kPlaceBesideNames{
    KeyedText{"soundboard", T("Soundboard")}, KeyedText{"bridges", T("Bridges")},
    KeyedText{"strings", T("Strings")},       KeyedText{"plate", T("Plate")},
    KeyedText{"pin-block", T("Pin block")},   KeyedText{"case", T("Case")},
};
#undef T

QString withStop(const QString& text) {
    return text.isEmpty() || text.endsWith(u'.') ? text : text + u'.';
}

} // namespace

QString placeBesideName(std::string_view place) {
    return saidOf(kPlaceBesideNames, place, "survey");
}

QString oddPartSentence(const OddPart& part) {
    const QString state = saidOf(kOddPartStateNames, key(part.state), "survey");
    const QString told = part.told.empty() ? QString() : QChar(u' ') + withStop(utf8(part.told));
    return QStringLiteral("%1: %2.%3").arg(utf8(part.name), state, told);
}

QString workBesideSentence(const WorkBeside& work) {
    const QString said =
        withStop(QStringLiteral("%1, %2: %3").arg(placeBesideName(work.place), utf8(work.what), utf8(work.told)));
    if (!work.movesStrings()) return said;
    return said + QChar(u' ') +
           inSurvey(QT_TRANSLATE_NOOP("survey", "The strings may stand otherwise there: blow, let-off, strike line and "
                                                "string fit are read again, and the tuning moves for months."));
}

} // namespace hammerline::words
