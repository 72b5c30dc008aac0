#include "ui/words/set_up_answers.h"

#include "ui/words/said.h"
#include "ui/words/words.h"

#include <QRegularExpression>

namespace hammerline::words {

namespace {

constexpr std::array kDecides{
    KeyedText{"damping", QT_TRANSLATE_NOOP("setup", "Decides how a damper is timed: at its spoon or at its wire.")},
    KeyedText{"last-damper", QT_TRANSLATE_NOOP("setup", "Notes above it have none and are never asked.")},
    KeyedText{"butt", QT_TRANSLATE_NOOP("setup", "Decides which parts are offered: flanges, loops, or plates.")},
    KeyedText{"rest-rail",
              QT_TRANSLATE_NOOP("setup", "In pieces? The last note before each cut (44). Each piece moves by itself.")},
    KeyedText{"brackets",
              QT_TRANSLATE_NOOP("setup", "Notes at the brackets, where pads go. One box for each on the list.")},
    KeyedText{"rest-rail-factor", QT_TRANSLATE_NOOP("setup", "Blow that 1 mm of pad takes or gives, in mm.")},
    KeyedText{"capstan", QT_TRANSLATE_NOOP("setup", "Decides what is turned, and with which tool.")},
    KeyedText{"capstan-reserve",
              QT_TRANSLATE_NOOP("setup", "Of the worst one, in mm. No plan turns a capstan further out.")},
    KeyedText{"capstan-length",
              QT_TRANSLATE_NOOP("setup", "Of one taken out, under its head to its tip: the thread is reckoned by it.")},
    KeyedText{"crown", QT_TRANSLATE_NOOP("setup", "How much the key line rises at its middle, mm; straight for none.")},
    KeyedText{"let-off", QT_TRANSLATE_NOOP("setup", "Decides from where the let-off is turned.")},
    KeyedText{"player", QT_TRANSLATE_NOOP("setup", "Decides whether a step speaks of a stack.")},
    KeyedText{"player-works", QT_TRANSLATE_NOOP("setup", "Decides where its fingers are given their clearance.")},
    KeyedText{"keys", QT_TRANSLATE_NOOP("setup", "Hooked ones are unhooked one by one before a key comes out.")},
    KeyedText{"balance-screws",
              QT_TRANSLATE_NOOP("setup", "Notes at the screws of the balance rail: keys sunk between two are seen.")},
    KeyedText{"ratio-natural",
              QT_TRANSLATE_NOOP("setup", "Hammer travel for 1 mm of key. Empty: from this piano's own readings.")},
    KeyedText{"ratio-sharp", QT_TRANSLATE_NOOP("setup", "Empty: follows the naturals' by the arms.")},
    KeyedText{"stock", QT_TRANSLATE_NOOP("setup", "The papers you have, with mm or in. Shims are made up of these.")},
    KeyedText{"sections",
              QT_TRANSLATE_NOOP("setup", "Notes are compared within one. Breaks (28, 58), or ranges with names.")},
};

// What a free form takes; %1 is what was typed, %2 what core allows.
constexpr std::array kTakes{
    KeyedText{"last-damper",
              QT_TRANSLATE_NOOP("setup", "\"%1\" is no note of this piano. Last damper: %2, 0 where there is none.")},
    KeyedText{"rest-rail",
              QT_TRANSLATE_NOOP("setup", "\"%1\" does not cut the rail. Name the last note before each cut "
                                         "(44), or the pieces without a gap (1-44, 45-88).")},
    KeyedText{"brackets", QT_TRANSLATE_NOOP("setup", "\"%1\" are no brackets of this rail. Name their notes in order, "
                                                     "at least two at each piece (1, 29, 58, 88).")},
    KeyedText{"balance-screws",
              QT_TRANSLATE_NOOP("setup", "\"%1\" are no notes in order. Write them like 1, 14, 27, 40.")},
    KeyedText{"arms-natural",
              QT_TRANSLATE_NOOP("setup",
                                "\"%1\" cannot be the arms F, P, T, C of a key: four lengths in mm, 600 at most, "
                                "the front pin (P) behind the front edge (F). One not measured stays empty.")},
    KeyedText{"rest-rail-factor", QT_TRANSLATE_NOOP("setup", "\"%1\" cannot be: 1 mm at the rail gives 0.8 to 2 mm.")},
    KeyedText{"ratio-natural", QT_TRANSLATE_NOOP("setup", "\"%1\" cannot be: the hammer goes 3 to 10 times as far.")},
    KeyedText{"stock", QT_TRANSLATE_NOOP("setup", "\"%1\" is no list of papers. Write them like 0.003 in, 0.13 mm.")},
    KeyedText{"capstan-length", QT_TRANSLATE_NOOP("setup", "\"%1\" is no length of a screw: 0 to 80 mm.")},
    KeyedText{"crown", QT_TRANSLATE_NOOP("setup", "\"%1\" is no crown: straight, as-found, or 0 to 2 mm.")},
    KeyedText{"capstan-reserve", QT_TRANSLATE_NOOP("setup", "\"%1\" is no length of thread: 0 to 60 mm.")},
};

QString listed(const std::vector<NoteRange>& pieces) {
    QStringList all;
    for (const NoteRange& piece : pieces)
        all += QStringLiteral("%1–%2").arg(piece.first).arg(piece.last);
    return all.join(QStringLiteral(", "));
}

/// An attribute of which nothing was said, by the value that the piano has all the same.
QString presetValue(std::string_view attribute, const Piano& piano) {
    const auto usual = makePiano(piano.action, piano.notes, piano.lowestMidi);
    if (!usual) return {};
    QStringList all;
    if (attribute == "brackets") {
        for (const auto& notes : piano.brackets)
            for (const int note : notes)
                all += QString::number(note);
    } else if (attribute == "stock") {
        for (const Length paper : usual->stock)
            all += number(paper.mm(), 2);
        return QCoreApplication::translate("setup", "%1 mm").arg(all.join(QStringLiteral(", ")));
    }
    return all.join(QStringLiteral(", "));
}

} // namespace

QString whatItDecides(std::string_view attribute) {
    return saidOf(kDecides, attribute, "setup");
}

QString customaryAnswer(std::string_view attribute, const Piano& piano) {
    const auto usual = makePiano(piano.action, piano.notes, piano.lowestMidi);
    if (!usual) return {};
    if (attribute == "sections") {
        std::vector<NoteRange> ranges;
        for (const Section& section : sectionsOf(*usual))
            ranges.push_back(section.range);
        return listed(ranges);
    }
    if (attribute == "last-damper") return QCoreApplication::translate("setup", "all notes");
    if (attribute == "crown") return QCoreApplication::translate("setup", "as found");
    if (attribute == "rest-rail") return QCoreApplication::translate("setup", "one piece");
    if (attribute == "rest-rail-factor") return number(usual->railFactor, 2);
    if (attribute == "ratio-natural") return number(defaultRatio(piano, KeyColour::natural), 2);
    if (attribute == "ratio-sharp") return number(defaultRatio(piano, KeyColour::sharp), 2);
    const QString preset = presetValue(attribute, piano);
    return preset.isEmpty() ? QCoreApplication::translate("setup", "not said") : preset;
}

QString answerText(std::string_view value) {
    static const QRegularExpression separator(QStringLiteral("\\s*[,;]\\s*"));
    static const QRegularExpression range(QStringLiteral("(\\d)-(?=\\d)"));
    QString text = utf8(value);
    text.replace(separator, QStringLiteral(", "));
    return text.replace(range, QStringLiteral("\\1–"));
}

QString refusedAnswer(std::string_view attribute, std::string_view value, std::string_view allowed) {
    const bool sharp = attribute == "arms-sharp" || attribute == "ratio-sharp";
    const std::string_view alike = !sharp ? attribute : attribute == "arms-sharp" ? "arms-natural" : "ratio-natural";
    QString text = saidOf(kTakes, alike, "setup");
    if (text.isEmpty()) text = QCoreApplication::translate("setup", "\"%1\" does not fit %3. It takes %2.");
    QString range = utf8(allowed);
    range.replace(QStringLiteral(".."), QStringLiteral("–"));
    // Replaced by hand and in this order: what was typed may itself hold a %.
    const QString parts[] = {utf8(value.substr(0, 80)), range, utf8(attribute)};
    QString out;
    for (qsizetype i = 0; i < text.size(); ++i) {
        const bool place = text[i] == u'%' && i + 1 < text.size() && text[i + 1] >= u'1' && text[i + 1] <= u'3';
        out += place ? parts[text[++i].digitValue() - 1] : QString(text[i]);
    }
    return out;
}

} // namespace hammerline::words
