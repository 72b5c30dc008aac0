#include "ui/words/account_labels.h"

#include "ui/words/said.h"
#include "ui/words/words.h"

namespace hammerline::words {

namespace {

QString inAccount(const char* text) {
    return QCoreApplication::translate("account", text);
}

QString readWords(DimensionId id, const std::optional<double>& mm) {
    if (!mm) return inAccount(QT_TRANSLATE_NOOP("account", "not read"));
    const QString value = shown(id, fromTrade(*mm, Kind::length));
    const bool atHammer = id == dimension::letOff || id == dimension::blow;
    if (atHammer) return inAccount(QT_TRANSLATE_NOOP("account", "read %1 at the hammer")).arg(value);
    return inAccount(QT_TRANSLATE_NOOP("account", "read %1")).arg(value);
}

} // namespace

AccountRow accountRow(const DipTerm& term, const Ratio&) {
    return {name(term.dimension), readWords(term.dimension, term.reading), termMeaning(term.dimension)};
}

AccountRow accountLastRow(const DipAccount& account) {
    return {inAccount(QT_TRANSLATE_NOOP("account", "Aftertouch left")), readWords(dimension::aftertouch, account.read),
            termMeaning(dimension::aftertouch)};
}

QString shareAfter(const DipTerm& term) {
    return term.share ? shareText(*term.share) : QString{};
}

QString leftAfter(const NoteAction& action) {
    QStringList parts;
    if (action.accountAfter && action.accountAfter->computed)
        parts << inAccount(QT_TRANSLATE_NOOP("account", "%1 after the plan"))
                     .arg(keyTravel(*action.accountAfter->computed));
    if (action.account.zone)
        parts << inAccount(QT_TRANSLATE_NOOP("account", "zone %1, set to %2"))
                     .arg(zoneText(dimension::aftertouch, *action.account.zone),
                          shown(dimension::aftertouch, action.account.zone->nominal));
    return parts.join(QStringLiteral(" \u00B7 "));
}

QString accountLegend(int entry) {
    switch (entry) {
    case 0:
        return inAccount(QT_TRANSLATE_NOOP("account", "gives way"));
    case 1:
        return inAccount(QT_TRANSLATE_NOOP("account", "takes way"));
    case 2:
        return inAccount(QT_TRANSLATE_NOOP("account", "after the plan"));
    default:
        return inAccount(QT_TRANSLATE_NOOP("account", "read at the note itself"));
    }
}

QString wholeMm(int mm) {
    return number(mm, 0);
}

QString stripHead(const QString& section) {
    return inAccount(QT_TRANSLATE_NOOP("account", "All of %1, against the aims")).arg(section);
}

QString stripRemark() {
    return inAccount(QT_TRANSLATE_NOOP("account", "mm at the key's front: above the line gives, below it takes; shaded "
                                                  "where the aftertouch is good"));
}

QString stripAims() {
    return inAccount(QT_TRANSLATE_NOOP("account", "at the aims"));
}

QString stripFigure(double mm) {
    return (mm > 0 ? QStringLiteral("+") : QString{}) + number(mm, 1);
}

QString stripTerm(std::size_t place) {
    constexpr std::array kTerms = {dimension::keyDip, dimension::lostMotion, dimension::letOff, dimension::blow};
    return name(kTerms.at(place)).toLower();
}

QString stripLeft() {
    return inAccount(QT_TRANSLATE_NOOP("account", "aftertouch left"));
}

QString stripSentence(const QString& section, std::span<const NoteAction> actions) {
    int complete = 0, within = 0;
    std::map<DimensionId, std::vector<NoteNumber>> costs;
    for (const NoteAction& action : actions) {
        const auto left = judgedLeft(action.account);
        if (!left) continue;
        ++complete;
        within += left->verdict == Verdict::within ? 1 : 0;
        const auto& against = action.account.against;
        const bool takes = !against.empty() && against.front().mm < 0;
        if (takes) costs[against.front().dimension].push_back(action.note);
    }
    QStringList said{
        inAccount(QT_TRANSLATE_NOOP("account", "%1: %2 of %3 accounts leave an aftertouch within its zone."))
            .arg(section)
            .arg(within)
            .arg(complete)};
    for (const auto& [id, notes] : costs)
        said << inAccount(QT_TRANSLATE_NOOP("account", "%1 takes most at %2."))
                    .arg(name(id), QString::fromStdString(writeNotes(notes)));
    return said.join(QLatin1Char(' '));
}

} // namespace hammerline::words
