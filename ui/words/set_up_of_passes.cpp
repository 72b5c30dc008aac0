// What a pass was asked once, in sentences: where the keys lay, what they were read against, why passes stand apart.
#include "core/pass/line_sag.h"
#include "ui/words/said.h"
#include "ui/words/words.h"

namespace hammerline::words {
namespace {

QString passText(const char* text) {
    return QCoreApplication::translate("passes", text);
}

constexpr std::array kApart{
    KeyedText{"reference",
              QT_TRANSLATE_NOOP("passes", "%1: read against another reference, or the key pressed in another way.")},
    KeyedText{"stack", QT_TRANSLATE_NOOP("passes", "%1: read with the player stack in once and out once.")},
    KeyedText{"weights", QT_TRANSLATE_NOOP("passes", "%1: read once with weights on the keys, once with the action.")},
    KeyedText{"bench", QT_TRANSLATE_NOOP("passes", "%1: read once on the bench and once in the piano, where the "
                                                   "strings are.")},
    KeyedText{"bench-set-up", QT_TRANSLATE_NOOP("passes", "%1: the bench did not hold the keys as the piano does.")},
};

QString mmText(double value) {
    return number(value, 2);
}

QString differing(const ReferenceReading& each, const Piano& piano) {
    const auto sections = sectionsOf(piano);
    QStringList notes;
    for (const NoteNumber note : each.notes)
        notes << noteName(note, piano);
    if (notes.size() > 3) notes = {utf8(writeNotes(each.notes))};
    return passText(QT_TRANSLATE_NOOP("passes", "%1, %2 (%3): %4 in the piano, %5 on the bench"))
        .arg(sectionName(sections[each.section], each.section, sections.size()), name(each.dimension).toLower(),
             notes.join(QStringLiteral(", ")), mmText(each.inPiano), mmText(each.onBench));
}

QString toRead(const BenchSetUp& setUp, const Piano& piano) {
    QStringList cells;
    for (const Cell cell : setUp.toRead)
        cells << noteName(cell.note, piano) + QLatin1Char(' ') + name(cell.dimension).toLower();
    return cells.join(QStringLiteral(", "));
}

} // namespace

QString notComparableSentence(DimensionId id, std::string_view why) {
    const QString said = saidOf(kApart, why, "passes");
    return said.isEmpty() ? QString() : said.arg(name(id));
}

QString benchSentence(const BenchSetUp& setUp, const Piano& piano) {
    QStringList apart;
    switch (setUp.state) {
    case BenchSetUp::State::inPiano:
    case BenchSetUp::State::reproduced:
        return {};
    case BenchSetUp::State::neverInPiano:
        return passText(QT_TRANSLATE_NOOP(
            "passes",
            "No key height and dip were read in the piano before this pass on the bench: what is set here may "
            "not hold in the piano."));
    case BenchSetUp::State::notRead:
        return passText(QT_TRANSLATE_NOOP("passes",
                                          "Bench set-up not checked. Nothing is adjusted before the reference "
                                          "notes are read on the bench as well: %1."))
            .arg(toRead(setUp, piano));
    case BenchSetUp::State::differs:
        break;
    }
    double limit = 0;
    for (const ReferenceReading& each : setUp.compared)
        if (!each.agrees()) {
            apart << differing(each, piano);
            limit = std::max(limit, each.limit);
        }
    return passText(QT_TRANSLATE_NOOP("passes",
                                      "Bench set-up not reproduced. %1; more than %2 mm apart. Read them once "
                                      "more; if they stay apart, shim the frame on the bench until they read "
                                      "as in the piano. Nothing is adjusted until then."))
        .arg(apart.join(QStringLiteral("; ")), mmText(limit));
}

QStringList passConditions(const Pass& pass, const Piano& piano) {
    QStringList said;
    if (piano.hasPlayer())
        said << (pass.stackIn ? passText(QT_TRANSLATE_NOOP("passes", "stack in"))
                              : passText(QT_TRANSLATE_NOOP("passes", "stack out")));
    if (pass.onBench) said << passText(QT_TRANSLATE_NOOP("passes", "on the bench"));
    if (const auto sag = readLineSag(pass.lineSag, piano); sag && *sag > 0)
        said << passText(QT_TRANSLATE_NOOP("passes", "line sags %1 mm")).arg(mmText(*sag));
    return said;
}

} // namespace hammerline::words
