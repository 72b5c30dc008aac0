#include "ui/words/said.h"
#include "ui/words/words.h"

#include <QCoreApplication>

#include <array>
#include <cmath>

namespace hammerline::words {

namespace {

struct ReadingsText {
    Q_DECLARE_TR_FUNCTIONS(readings)
};

constexpr char16_t kMinus = 0x2212, kSharpSign = 0x266F, kDash = 0x2013;

struct DimensionWords {
    DimensionId id;
    const char *name, *shortName, *low, *high;
};

// Rows by dimension; a dimension without a row is shown by its key.
const std::array kDimensions{
    DimensionWords{dimension::keyHeight, QT_TRANSLATE_NOOP("readings", "Key height"),
                   QT_TRANSLATE_NOOP("readings", "Key height"), QT_TRANSLATE_NOOP("readings", "low"),
                   QT_TRANSLATE_NOOP("readings", "high")},
    DimensionWords{dimension::sharpHeight, QT_TRANSLATE_NOOP("readings", "Sharp height"),
                   QT_TRANSLATE_NOOP("readings", "Sharp height"), QT_TRANSLATE_NOOP("readings", "low"),
                   QT_TRANSLATE_NOOP("readings", "high")},
    DimensionWords{dimension::keyDip, QT_TRANSLATE_NOOP("readings", "Key dip"),
                   QT_TRANSLATE_NOOP("readings", "Key dip"), QT_TRANSLATE_NOOP("readings", "shallow"),
                   QT_TRANSLATE_NOOP("readings", "deep")},
    DimensionWords{dimension::lostMotion, QT_TRANSLATE_NOOP("readings", "Lost motion"),
                   QT_TRANSLATE_NOOP("readings", "Lost motion"), QT_TRANSLATE_NOOP("readings", "off rail"),
                   QT_TRANSLATE_NOOP("readings", "too much")},
    DimensionWords{dimension::blow, QT_TRANSLATE_NOOP("readings", "Blow"), QT_TRANSLATE_NOOP("readings", "Blow"),
                   QT_TRANSLATE_NOOP("readings", "shorter"), QT_TRANSLATE_NOOP("readings", "longer")},
    DimensionWords{dimension::letOff, QT_TRANSLATE_NOOP("readings", "Let-off"),
                   QT_TRANSLATE_NOOP("readings", "Let-off"), QT_TRANSLATE_NOOP("readings", "too near"),
                   QT_TRANSLATE_NOOP("readings", "too far")},
    DimensionWords{dimension::drop, QT_TRANSLATE_NOOP("readings", "Drop"), QT_TRANSLATE_NOOP("readings", "Drop"),
                   QT_TRANSLATE_NOOP("readings", "too little"), QT_TRANSLATE_NOOP("readings", "too much")},
    DimensionWords{dimension::aftertouch, QT_TRANSLATE_NOOP("readings", "Aftertouch"),
                   QT_TRANSLATE_NOOP("readings", "Aftertouch"), QT_TRANSLATE_NOOP("readings", "little"),
                   QT_TRANSLATE_NOOP("readings", "much")},
    DimensionWords{dimension::checking, QT_TRANSLATE_NOOP("readings", "Checking"),
                   QT_TRANSLATE_NOOP("readings", "Checking"), QT_TRANSLATE_NOOP("readings", "nearer"),
                   QT_TRANSLATE_NOOP("readings", "farther")},
    DimensionWords{dimension::damperStart, QT_TRANSLATE_NOOP("readings", "Damper lift timing"),
                   QT_TRANSLATE_NOOP("readings", "Damper lift"), QT_TRANSLATE_NOOP("readings", "early"),
                   QT_TRANSLATE_NOOP("readings", "late")},
    DimensionWords{dimension::damperRise, QT_TRANSLATE_NOOP("readings", "Damper rise"),
                   QT_TRANSLATE_NOOP("readings", "Damper rise"), QT_TRANSLATE_NOOP("readings", "little"),
                   QT_TRANSLATE_NOOP("readings", "much")},
    DimensionWords{dimension::halfBlow, QT_TRANSLATE_NOOP("readings", "Half-blow"),
                   QT_TRANSLATE_NOOP("readings", "Half-blow"), QT_TRANSLATE_NOOP("readings", "shorter"),
                   QT_TRANSLATE_NOOP("readings", "longer")},
    DimensionWords{dimension::strap, QT_TRANSLATE_NOOP("readings", "Bridle strap"),
                   QT_TRANSLATE_NOOP("readings", "Strap"), QT_TRANSLATE_NOOP("readings", "tight"),
                   QT_TRANSLATE_NOOP("readings", "slack")},
    DimensionWords{dimension::playerClearance, QT_TRANSLATE_NOOP("readings", "Player clearance"),
                   QT_TRANSLATE_NOOP("readings", "Player clearance"), QT_TRANSLATE_NOOP("readings", "too little"),
                   QT_TRANSLATE_NOOP("readings", "too much")},
    DimensionWords{dimension::capstanReserve, QT_TRANSLATE_NOOP("readings", "Capstan reserve"),
                   QT_TRANSLATE_NOOP("readings", "Capstan reserve"), QT_TRANSLATE_NOOP("readings", "too little"),
                   QT_TRANSLATE_NOOP("readings", "too much")},
    DimensionWords{dimension::downWeight, QT_TRANSLATE_NOOP("readings", "Down weight"),
                   QT_TRANSLATE_NOOP("readings", "Down weight"), QT_TRANSLATE_NOOP("readings", "light"),
                   QT_TRANSLATE_NOOP("readings", "heavy")},
    DimensionWords{dimension::upWeight, QT_TRANSLATE_NOOP("readings", "Up weight"),
                   QT_TRANSLATE_NOOP("readings", "Up weight"), QT_TRANSLATE_NOOP("readings", "weak"),
                   QT_TRANSLATE_NOOP("readings", "strong")},
    DimensionWords{dimension::sharpProud, QT_TRANSLATE_NOOP("readings", "Pressed sharp above naturals"),
                   QT_TRANSLATE_NOOP("readings", "Sharp pressed"), QT_TRANSLATE_NOOP("readings", "too low"),
                   QT_TRANSLATE_NOOP("readings", "too high")},
    DimensionWords{dimension::feltLeft, QT_TRANSLATE_NOOP("readings", "Felt left over the wood"),
                   QT_TRANSLATE_NOOP("readings", "Felt left"), QT_TRANSLATE_NOOP("readings", "too thin"),
                   QT_TRANSLATE_NOOP("readings", "too thick")},
    DimensionWords{dimension::jackReturn, QT_TRANSLATE_NOOP("readings", "Jack return"),
                   QT_TRANSLATE_NOOP("readings", "Jack return"), QT_TRANSLATE_NOOP("readings", "slow"),
                   QT_TRANSLATE_NOOP("readings", "quick")},
    DimensionWords{dimension::hammerReturn, QT_TRANSLATE_NOOP("readings", "Hammer return"),
                   QT_TRANSLATE_NOOP("readings", "Hammer return"), QT_TRANSLATE_NOOP("readings", "slow"),
                   QT_TRANSLATE_NOOP("readings", "quick")},
    DimensionWords{dimension::hammerTravel, QT_TRANSLATE_NOOP("readings", "Hammer travel"),
                   QT_TRANSLATE_NOOP("readings", "Travel"), QT_TRANSLATE_NOOP("readings", "to the bass"),
                   QT_TRANSLATE_NOOP("readings", "to the treble")},
    DimensionWords{dimension::hammerSpace, QT_TRANSLATE_NOOP("readings", "Hammer spacing"),
                   QT_TRANSLATE_NOOP("readings", "Spacing"), QT_TRANSLATE_NOOP("readings", "to the bass"),
                   QT_TRANSLATE_NOOP("readings", "to the treble")},
    DimensionWords{dimension::hammerSquare, QT_TRANSLATE_NOOP("readings", "Hammer square"),
                   QT_TRANSLATE_NOOP("readings", "Square"), QT_TRANSLATE_NOOP("readings", "to the bass"),
                   QT_TRANSLATE_NOOP("readings", "to the treble")},
    DimensionWords{dimension::stringFit, QT_TRANSLATE_NOOP("readings", "Hammer to strings"),
                   QT_TRANSLATE_NOOP("readings", "String fit"), QT_TRANSLATE_NOOP("readings", "open"),
                   QT_TRANSLATE_NOOP("readings", "open")},
    DimensionWords{dimension::jackPosition, QT_TRANSLATE_NOOP("readings", "Jack position"),
                   QT_TRANSLATE_NOOP("readings", "Jack"), QT_TRANSLATE_NOOP("readings", "too shallow"),
                   QT_TRANSLATE_NOOP("readings", "too deep")},
    DimensionWords{dimension::leverHeight, QT_TRANSLATE_NOOP("readings", "Repetition lever height"),
                   QT_TRANSLATE_NOOP("readings", "Lever height"), QT_TRANSLATE_NOOP("readings", "low"),
                   QT_TRANSLATE_NOOP("readings", "high")},
    DimensionWords{dimension::repetitionSpring, QT_TRANSLATE_NOOP("readings", "Repetition spring"),
                   QT_TRANSLATE_NOOP("readings", "Rep. spring"), QT_TRANSLATE_NOOP("readings", "weak"),
                   QT_TRANSLATE_NOOP("readings", "strong")},
    DimensionWords{dimension::keyFit, QT_TRANSLATE_NOOP("readings", "Key fit"),
                   QT_TRANSLATE_NOOP("readings", "Key fit"), QT_TRANSLATE_NOOP("readings", "sticks"),
                   QT_TRANSLATE_NOOP("readings", "loose")},
    DimensionWords{dimension::keySquare, QT_TRANSLATE_NOOP("readings", "Key square"),
                   QT_TRANSLATE_NOOP("readings", "Key square"), QT_TRANSLATE_NOOP("readings", "to the bass"),
                   QT_TRANSLATE_NOOP("readings", "to the treble")},
    DimensionWords{dimension::keySpace, QT_TRANSLATE_NOOP("readings", "Key spacing"),
                   QT_TRANSLATE_NOOP("readings", "Key spacing"), QT_TRANSLATE_NOOP("readings", "to the bass"),
                   QT_TRANSLATE_NOOP("readings", "to the treble")},
    DimensionWords{dimension::damperLine, QT_TRANSLATE_NOOP("readings", "Damper line, by the pedal"),
                   QT_TRANSLATE_NOOP("readings", "Damper line"), QT_TRANSLATE_NOOP("readings", "early"),
                   QT_TRANSLATE_NOOP("readings", "late")},
    DimensionWords{dimension::damperSeat, QT_TRANSLATE_NOOP("readings", "Damper seat"),
                   QT_TRANSLATE_NOOP("readings", "Damper seat"), QT_TRANSLATE_NOOP("readings", "leaks"),
                   QT_TRANSLATE_NOOP("readings", "leaks")},
    DimensionWords{dimension::frameBed, QT_TRANSLATE_NOOP("readings", "Key frame on its bed"),
                   QT_TRANSLATE_NOOP("readings", "Bedding"), QT_TRANSLATE_NOOP("readings", "taps"),
                   QT_TRANSLATE_NOOP("readings", "lifts")},
    DimensionWords{dimension::strikeLine, QT_TRANSLATE_NOOP("readings", "Strike line"),
                   QT_TRANSLATE_NOOP("readings", "Strike line"), QT_TRANSLATE_NOOP("readings", "too near"),
                   QT_TRANSLATE_NOOP("readings", "too far")},
};

const DimensionWords* wordsOf(DimensionId id) {
    for (const DimensionWords& words : kDimensions)
        if (words.id == id) return &words;
    return nullptr;
}

QString withRealMinus(QString digits) {
    return digits.replace(u'-', QChar(kMinus));
}

QString spoken(double value, int decimals) {
    const QString digits = QString::number(std::abs(value), 'f', decimals);
    return (value < 0 ? ReadingsText::tr("minus %1") : ReadingsText::tr("plus %1")).arg(digits);
}

} // namespace

QString name(DimensionId id) {
    const auto* words = wordsOf(id);
    return words ? ReadingsText::tr(words->name) : utf8(key(id));
}

QString shortName(DimensionId id) {
    const auto* words = wordsOf(id);
    return words ? ReadingsText::tr(words->shortName) : utf8(key(id));
}

QString sideName(DimensionId id, bool high) {
    const auto* words = wordsOf(id);
    if (words) return ReadingsText::tr(high ? words->high : words->low);
    return high ? ReadingsText::tr("high") : ReadingsText::tr("low");
}

QString name(WordId id) {
    static constexpr std::array kWords{
        std::pair{word::offRail, QT_TRANSLATE_NOOP("readings", "off rail")},
        std::pair{word::blocks, QT_TRANSLATE_NOOP("readings", "blocks")},
        std::pair{word::noLetOff, QT_TRANSLATE_NOOP("readings", "no let-off")},
        std::pair{word::doesNotCheck, QT_TRANSLATE_NOOP("readings", "no check")},
        std::pair{word::ok, QT_TRANSLATE_NOOP("readings", "ok")},
        std::pair{word::tight, QT_TRANSLATE_NOOP("readings", "tight")},
        std::pair{word::slack, QT_TRANSLATE_NOOP("readings", "slack")},
        std::pair{word::torn, QT_TRANSLATE_NOOP("readings", "torn")},
        std::pair{word::early, QT_TRANSLATE_NOOP("readings", "early")},
        std::pair{word::right, QT_TRANSLATE_NOOP("readings", "right")},
        std::pair{word::late, QT_TRANSLATE_NOOP("readings", "late")},
        std::pair{word::slow, QT_TRANSLATE_NOOP("readings", "slow")},
        std::pair{word::staysOut, QT_TRANSLATE_NOOP("readings", "stays out")},
        std::pair{word::stays, QT_TRANSLATE_NOOP("readings", "stays")},
        std::pair{word::driftsToBass, QT_TRANSLATE_NOOP("readings", "drifts to bass")},
        std::pair{word::driftsToTreble, QT_TRANSLATE_NOOP("readings", "drifts to treble")},
        std::pair{word::rubsNeighbour, QT_TRANSLATE_NOOP("readings", "rubs neighbour")},
        std::pair{word::towardBass, QT_TRANSLATE_NOOP("readings", "to the bass")},
        std::pair{word::towardTreble, QT_TRANSLATE_NOOP("readings", "to the treble")},
        std::pair{word::topLeansToBass, QT_TRANSLATE_NOOP("readings", "top to bass")},
        std::pair{word::topLeansToTreble, QT_TRANSLATE_NOOP("readings", "top to treble")},
        std::pair{word::bassStringOpen, QT_TRANSLATE_NOOP("readings", "bass string open")},
        std::pair{word::middleOpen, QT_TRANSLATE_NOOP("readings", "middle open")},
        std::pair{word::trebleOpen, QT_TRANSLATE_NOOP("readings", "treble open")},
        std::pair{word::twoOpen, QT_TRANSLATE_NOOP("readings", "two open")},
        std::pair{word::tooDeep, QT_TRANSLATE_NOOP("readings", "too deep")},
        std::pair{word::tooShallow, QT_TRANSLATE_NOOP("readings", "too shallow")},
        std::pair{word::leverHigh, QT_TRANSLATE_NOOP("readings", "high")},
        std::pair{word::leverLow, QT_TRANSLATE_NOOP("readings", "low")},
        std::pair{word::weak, QT_TRANSLATE_NOOP("readings", "weak")},
        std::pair{word::kicks, QT_TRANSLATE_NOOP("readings", "kicks")},
        std::pair{word::noSpring, QT_TRANSLATE_NOOP("readings", "none")},
        std::pair{word::sticks, QT_TRANSLATE_NOOP("readings", "sticks")},
        std::pair{word::loose, QT_TRANSLATE_NOOP("readings", "loose")},
        std::pair{word::leansToBass, QT_TRANSLATE_NOOP("readings", "leans to bass")},
        std::pair{word::leansToTreble, QT_TRANSLATE_NOOP("readings", "leans to treble")},
        std::pair{word::rubs, QT_TRANSLATE_NOOP("readings", "rubs")},
        std::pair{word::earlyByPedal, QT_TRANSLATE_NOOP("readings", "early")},
        std::pair{word::lateByPedal, QT_TRANSLATE_NOOP("readings", "late")},
        std::pair{word::oneStringRings, QT_TRANSLATE_NOOP("readings", "one rings")},
        std::pair{word::leaks, QT_TRANSLATE_NOOP("readings", "leaks")},
        std::pair{word::touchesNeighbour, QT_TRANSLATE_NOOP("readings", "touches neighbour")},
        std::pair{word::taps, QT_TRANSLATE_NOOP("readings", "taps")},
        std::pair{word::lifts, QT_TRANSLATE_NOOP("readings", "lifts")},
        std::pair{word::tooNearTheEnd, QT_TRANSLATE_NOOP("readings", "too near end")},
        std::pair{word::tooFarFromTheEnd, QT_TRANSLATE_NOOP("readings", "too far in")},
    };
    for (const auto& [known, words] : kWords)
        if (known == id) return ReadingsText::tr(words);
    return utf8(row(id).key);
}

QString unitName(Unit unit) {
    switch (unit) {
    case Unit::mm:
        return ReadingsText::tr("mm");
    case Unit::cm:
        return ReadingsText::tr("cm");
    case Unit::inch:
        return ReadingsText::tr("in");
    case Unit::thou:
        return ReadingsText::tr("thou");
    case Unit::gram:
        return ReadingsText::tr("g");
    case Unit::ounce:
        return ReadingsText::tr("oz");
    case Unit::percent:
        return ReadingsText::tr("%");
    }
    return {};
}

QString unitName(Kind kind) {
    return kind == Kind::length ? ReadingsText::tr("mm")
           : kind == Kind::mass ? ReadingsText::tr("g")
                                : ReadingsText::tr("%");
}

QString verdictName(Verdict verdict) {
    switch (verdict) {
    case Verdict::within:
        return ReadingsText::tr("within");
    case Verdict::low:
        return ReadingsText::tr("low");
    case Verdict::high:
        return ReadingsText::tr("high");
    case Verdict::undecided:
        return ReadingsText::tr("undecided");
    case Verdict::missing:
        return ReadingsText::tr("missing");
    case Verdict::notFitted:
        return ReadingsText::tr("not fitted");
    }
    return {};
}

QString shown(DimensionId id, std::int64_t count) {
    return withRealMinus(QString::fromStdString(formatCount(count, row(id).shown)));
}

QString shown(DimensionId id, const Reading& reading) {
    if (reading.word) return name(*reading.word);
    const QString value = shown(id, reading.count);
    switch (reading.relation) {
    case Relation::equal:
        return value;
    case Relation::less:
        return QStringLiteral("<") + value;
    case Relation::more:
        return QStringLiteral(">") + value;
    case Relation::between:
        return value + QStringLiteral("..") + shown(id, reading.upper);
    }
    return value;
}

QString valueText(const Judged& judged) {
    if (judged.word) return name(*judged.word);
    if (!judged.value) return {};
    const DimensionId id = judged.cell.dimension;
    const QString value = shown(id, *judged.value);
    if (judged.relation == Relation::less) return QStringLiteral("< ") + value;
    if (judged.relation == Relation::more) return QStringLiteral("> ") + value;
    if (judged.relation == Relation::between && judged.upper) return value + QChar(kDash) + shown(id, *judged.upper);
    return value;
}

QString verdictText(const Judged& judged) {
    const bool outside = judged.verdict == Verdict::low || judged.verdict == Verdict::high;
    QStringList said;
    if (!outside) said << verdictName(judged.verdict);
    if (outside && !judged.word) said << sideName(judged.cell.dimension, judged.verdict == Verdict::high);
    if (judged.uneven || judged.step) said << ReadingsText::tr("uneven");
    if (judged.stale) said << ReadingsText::tr("measured before later work");
    return said.join(ReadingsText::tr(", "));
}

QString cellSentence(const Judged& judged, const Piano& piano) {
    const Dimension& dimension = row(judged.cell.dimension);
    const QString where = ReadingsText::tr("Note %1, %2, %3")
                              .arg(judged.cell.note.value)
                              .arg(pitch(judged.cell.note, piano), name(dimension.id).toLower());
    if (judged.verdict == Verdict::notFitted) return ReadingsText::tr("%1, not fitted").arg(where);
    if (judged.verdict == Verdict::missing) return ReadingsText::tr("%1, nothing entered yet").arg(where);
    QStringList said{where};
    if (judged.word) {
        said << name(*judged.word);
    } else if (judged.value) {
        const QString unit = dimension.kind == Kind::length ? ReadingsText::tr("millimetres")
                             : dimension.kind == Kind::mass ? ReadingsText::tr("grams")
                                                            : ReadingsText::tr("per cent");
        QString value = shown(dimension.id, *judged.value);
        if (judged.relation == Relation::less) value = ReadingsText::tr("less than %1").arg(value);
        if (judged.relation == Relation::more) value = ReadingsText::tr("more than %1").arg(value);
        if (judged.relation == Relation::between && judged.upper)
            value = ReadingsText::tr("%1 to %2").arg(value, shown(dimension.id, *judged.upper));
        said << QStringLiteral("%1 %2").arg(value, unit);
    }
    if (judged.verdict == Verdict::low || judged.verdict == Verdict::high) {
        if (!judged.word) said << sideName(dimension.id, judged.verdict == Verdict::high);
    } else {
        said << verdictName(judged.verdict);
    }
    if (judged.infinite)
        said << ReadingsText::tr("beyond a limit without width");
    else if (judged.deviation && !judged.word)
        said << ReadingsText::tr("deviation %1").arg(spoken(*judged.deviation, 1));
    if (judged.uneven || judged.step) said << ReadingsText::tr("uneven");
    if (judged.stale) said << ReadingsText::tr("measured before later work");
    return said.join(ReadingsText::tr(", "));
}

QString pitch(NoteNumber note, const Piano& piano) {
    return QString::fromStdString(pitchName(note, piano)).replace(u'#', QChar(kSharpSign));
}

QString noteName(NoteNumber note, const Piano& piano) {
    return QStringLiteral("%1 %2").arg(note.value).arg(pitch(note, piano));
}

QString sectionName(const Section& section, std::size_t index, std::size_t count) {
    if (!section.name.empty()) return QString::fromStdString(section.name);
    if (count == 1) return ReadingsText::tr("All notes");
    if (index == 0) return ReadingsText::tr("Bass");
    if (count == 2) return ReadingsText::tr("Treble");
    if (index + 1 == count) return count > 3 ? ReadingsText::tr("High treble") : ReadingsText::tr("Treble");
    if (count > 3 && index + 2 == count) return ReadingsText::tr("Treble");
    return count > 4 ? ReadingsText::tr("Tenor %1").arg(index) : ReadingsText::tr("Tenor");
}

QString zoneText(DimensionId id, const Zone& zone) {
    if (zone.low && zone.high) {
        if (zone.nominal == 0 && *zone.low == -*zone.high)
            return QStringLiteral("\u00B1") + shown(id, *zone.high).remove(u'+');
        return shown(id, *zone.low) + QChar(kDash) + shown(id, *zone.high);
    }
    if (zone.high) return ReadingsText::tr("to %1").arg(shown(id, *zone.high));
    if (zone.low) return ReadingsText::tr("from %1").arg(shown(id, *zone.low));
    return {};
}

QString number(double value, int decimals) {
    QString text = QString::number(std::abs(value), 'f', decimals);
    if (value < 0 && text.toDouble() != 0) text.prepend(QChar(kMinus));
    return text;
}

} // namespace hammerline::words
