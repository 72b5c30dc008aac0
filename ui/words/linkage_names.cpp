#include "ui/words/linkage_names.h"

#include "ui/words/said.h"
#include "ui/words/words.h"

namespace hammerline::words {

namespace {

QString ofLinkage(const char* text) {
    return QCoreApplication::translate("linkage", text);
}

QString namesOf(const std::vector<DimensionId>& ids) {
    QStringList out;
    for (const DimensionId id : ids)
        out << name(id).toLower();
    return out.join(QStringLiteral(", "));
}

} // namespace

QString partOfDrawing(PartName part) {
    switch (part) {
    case PartName::key:
        return ofLinkage(QT_TRANSLATE_NOOP("linkage", "key"));
    case PartName::wippen:
        return ofLinkage(QT_TRANSLATE_NOOP("linkage", "wippen"));
    case PartName::jack:
        return ofLinkage(QT_TRANSLATE_NOOP("linkage", "jack"));
    case PartName::hammer:
        return ofLinkage(QT_TRANSLATE_NOOP("linkage", "hammer"));
    case PartName::backCheck:
        return ofLinkage(QT_TRANSLATE_NOOP("linkage", "back check"));
    case PartName::damper:
        return ofLinkage(QT_TRANSLATE_NOOP("linkage", "damper"));
    case PartName::letOffButton:
        return ofLinkage(QT_TRANSLATE_NOOP("linkage", "let-off button"));
    case PartName::capstan:
        return ofLinkage(QT_TRANSLATE_NOOP("linkage", "capstan"));
    case PartName::restRail:
        return ofLinkage(QT_TRANSLATE_NOOP("linkage", "rest rail"));
    case PartName::string:
        return ofLinkage(QT_TRANSLATE_NOOP("linkage", "string"));
    case PartName::repetitionLever:
        return ofLinkage(QT_TRANSLATE_NOOP("linkage", "repetition lever"));
    case PartName::none:
        break;
    }
    return {};
}

QString notDrawnSentence(const NotDrawn& refused, const PassTable& table, NoteNumber note, const Piano& piano) {
    QStringList readings;
    for (const DimensionId id : refused.readings) {
        const auto read = table.value({note, id});
        const auto said = table.word({note, id});
        const QString value = read   ? shown(id, fromTrade(*read, Kind::length))
                              : said ? name(*said)
                                     : ofLinkage(QT_TRANSLATE_NOOP("linkage", "(not read)"));
        readings << QStringLiteral("%1 %2").arg(name(id).toLower(), value);
    }
    const QString list = readings.join(QStringLiteral(", "));
    const QString what =
        refused.readings.size() == 1
            ? ofLinkage(QT_TRANSLATE_NOOP("linkage", "%1 cannot be drawn: %2 is beyond what such an action can reach."))
            : ofLinkage(QT_TRANSLATE_NOOP("linkage", "%1 cannot be drawn: no such action has %2 together."));
    return what.arg(noteName(note, piano), list) + QLatin1Char(' ') +
           ofLinkage(QT_TRANSLATE_NOOP("linkage", "Measure these again; account and stroke stay as they are."));
}

QString atAimSentence(const DrawnNote& drawn) {
    if (drawn.atAim.empty()) return {};
    return ofLinkage(QT_TRANSLATE_NOOP("linkage", "Not read, drawn at the aim: %1.")).arg(namesOf(drawn.atAim));
}

} // namespace hammerline::words
