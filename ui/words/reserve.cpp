#include "ui/words/reserve.h"

#include "ui/words/said.h"
#include "ui/words/words.h"

namespace hammerline::words {

namespace {

#define T(text) QT_TRANSLATE_NOOP("reserve", text)
constexpr std::array kReserveNames{
    KeyedText{"capstan-thread", T("Capstan thread")},
    KeyedText{"hammer-felt", T("Felt on the hammer")},
    KeyedText{"front-paper", T("Paper under the front felt")},
    KeyedText{"balance-card", T("Card under the balance felt")},
    KeyedText{"let-off-thread", T("Let-off thread")},
};
constexpr std::array kNotKnown{
    KeyedText{"capstan-thread", T("not known: read the capstan reserve")},
    KeyedText{"hammer-felt", T("not known: read the felt left over the wood")},
    KeyedText{"front-paper", T("not known: no recorded work has put any in")},
    KeyedText{"balance-card", T("not known: no recorded work has put any in")},
    KeyedText{"let-off-thread", T("not known: try the screw, and say \u201Csound\u201D in the survey")},
};
constexpr std::array kUsedUp{
    KeyedText{"capstan-thread", T("no whole round is left: renew heel or back cloth, or fit longer screws")},
    KeyedText{"hammer-felt", T("no whole filing is left: then new hammers")},
    KeyedText{"front-paper", T("less than a round can be taken out again")},
    KeyedText{"balance-card", T("less than a round can be taken out again")},
    KeyedText{"let-off-thread", T("less than a round is left to turn")},
};
#undef T

QString ofReserve(const char* text) {
    return QCoreApplication::translate("reserve", text);
}

QString amountLeft(const Reserve& reserve) {
    const QString text = reserve.turns ? ofReserve(QT_TRANSLATE_NOOP("reserve", "%1 turns; a round takes about %2"))
                                       : ofReserve(QT_TRANSLATE_NOOP("reserve", "%1 mm; a round takes about %2"));
    return text.arg(number(*reserve.left), number(reserve.perRound));
}

QString whatIsLeft(const Reserve& reserve) {
    if (!reserve.rounds) return saidOf(kNotKnown, key(reserve.of), "reserve");
    if (*reserve.rounds == 0)
        return QStringLiteral("%1 (%2)").arg(saidOf(kUsedUp, key(reserve.of), "reserve"), amountLeft(reserve));
    const QString rounds =
        reserve.of == ReserveOf::hammerFelt
            ? QCoreApplication::translate("reserve", "at least %n more filing(s)", nullptr, *reserve.rounds)
            : QCoreApplication::translate("reserve", "at least %n more round(s)", nullptr, *reserve.rounds);
    return QStringLiteral("%1 (%2)").arg(rounds, amountLeft(reserve));
}

QString signedMm(double mm) {
    return (mm > 0 ? QStringLiteral("+") : QString{}) + number(mm, 2);
}

} // namespace

QString reserveName(ReserveOf of) {
    return saidOf(kReserveNames, key(of), "reserve");
}

QString reserveSentence(const Reserve& reserve) {
    return QStringLiteral("%1: %2").arg(reserveName(reserve.of), whatIsLeft(reserve));
}

QString leastReserveSentence(const LeastReserve& least, const Piano& piano) {
    const Reserve& reserve = least.reserve;
    if (!reserve.rounds) return reserveSentence(reserve);
    const QString where =
        least.known < piano.notes
            ? QCoreApplication::translate("reserve", "%1, least of %n note(s) known at %2: %3", nullptr, least.known)
            : ofReserve(QT_TRANSLATE_NOOP("reserve", "%1, least at note %2: %3"));
    return where.arg(reserveName(reserve.of), noteName(reserve.note, piano), whatIsLeft(reserve));
}

QString settlingSentence(const Settling& settling, const Piano& piano) {
    QStringList figures, others;
    const bool sharpAlone = settling.notes.size() == 1 && colourOf(settling.notes[0], piano) == KeyColour::sharp;
    const KeyColour said = sharpAlone ? KeyColour::sharp : KeyColour::natural;
    for (const SettlingBand& band : settling.bands) {
        if (band.keys.value_or(said) != said) continue;
        const QString what = name(band.dimension).toLower();
        if (band.least && band.most)
            figures << ofReserve(QT_TRANSLATE_NOOP("reserve", "%1 %2 to %3"))
                           .arg(what, signedMm(*band.least), signedMm(*band.most));
        else
            others << what;
    }
    QString out = ofReserve(QT_TRANSLATE_NOOP("reserve", "%1, new at %2, settles."))
                      .arg(partOfActionName(settling.row->part), utf8(writeNotes(settling.notes)));
    if (!figures.isEmpty())
        out += QLatin1Char(' ') +
               ofReserve(QT_TRANSLATE_NOOP("reserve", "Expected, in mm: %1.")).arg(figures.join(QStringLiteral(", ")));
    if (!others.isEmpty())
        out += QLatin1Char(' ') +
               ofReserve(QT_TRANSLATE_NOOP("reserve", "Without a figure: %1.")).arg(others.join(QStringLiteral(", ")));
    if (!settling.firstVisit.empty())
        out += QLatin1Char(' ') +
               (settling.firstVisit == settling.settledBy
                    ? ofReserve(QT_TRANSLATE_NOOP("reserve", "Read from %1.")).arg(utf8(settling.firstVisit))
                    : ofReserve(QT_TRANSLATE_NOOP("reserve", "Read from %1; settled about %2."))
                          .arg(utf8(settling.firstVisit), utf8(settling.settledBy)));
    return out;
}

QString settlingSource(const Settling& settling) {
    return ofReserve(QT_TRANSLATE_NOOP("reserve", "Source: %1.")).arg(utf8(settling.row->source));
}

} // namespace hammerline::words
