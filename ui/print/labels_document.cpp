// The marks for parts that come off: what is written where, and labels to cut out.
#include "core/survey/numbering.h"
#include "core/survey/standing.h"
#include "ui/print/documents.h"
#include "ui/words/said.h"
#include "ui/words/survey_names.h"

#include <QCoreApplication>

namespace hammerline::print {

namespace {

using words::onPaper;

constexpr Type kText{9.5}, kSmall{8.5};

/// One line a part and section: what is written where, with room for what is found on the way back.
TableRow marksRow(const Numbered& numbered, const Section& section, std::size_t index, const Piano& piano) {
    const Part& part = *findPart(numbered.part);
    std::vector<NoteNumber> notes;
    for (int i = section.range.first; i <= section.range.last; ++i)
        if (fitted(part, NoteNumber{i}, piano)) notes.push_back({i});
    const QString name = words::partOfActionName(numbered.part);
    const QString letter(QLatin1Char(numbered.letter));
    const QString range = notes.empty() ? QString{}
                                        : onPaper(QT_TRANSLATE_NOOP("paper", "%1 %2 to %1 %3, %4 pieces, number %5"))
                                              .arg(letter)
                                              .arg(notes.front().value)
                                              .arg(notes.back().value)
                                              .arg(notes.size())
                                              .arg(words::markPlaceName(numbered.place));
    const QString where = words::sectionName(section, index, sectionsOf(piano).size());
    return {notes.empty() ? 0 : 7.5, name,
            [=](Canvas& c, const QRectF& r) {
                const double base = r.y() + 5.2;
                c.textWithin(r.x(), base, 24, where, kText);
                c.textWithin(r.x() + 26, base, 74, range, {9.5, true});
                for (const auto& [x, word] : {std::pair{102.0, QT_TRANSLATE_NOOP("paper", "off")},
                                              {118.0, QT_TRANSLATE_NOOP("paper", "back")}}) {
                    c.tickBox(r.x() + x, r.y() + 1.2);
                    c.text(r.x() + x + 6, base, onPaper(word), kSmall);
                }
                c.text(r.x() + 136, base, onPaper(QT_TRANSLATE_NOOP("paper", "missing, double:")), kSmall);
                c.line(r.x(), r.bottom(), r.right(), r.bottom(), 0.2);
            },
            name};
}

Table marksList(const Piano& piano) {
    Table table = plainTable();
    table.groupHeight = 6.5;
    const auto sections = sectionsOf(piano);
    for (const Numbered& numbered : numberedParts()) {
        if (!findPart(numbered.part) || notesOf(*findPart(numbered.part), piano).empty()) continue;
        for (std::size_t i = 0; i < sections.size(); ++i)
            if (TableRow row = marksRow(numbered, sections[i], i, piano); row.height > 0)
                table.rows.push_back(std::move(row));
    }
    return table;
}

Table labelGrid() {
    Table table;
    table.columns = 6;
    table.gap = 0;
    table.headHeight = 0;
    table.again = gap(0);
    return table;
}

Block plainHeading(const QString& text, double width) {
    return paragraphBlock({{text, true}}, 10, width);
}

} // namespace

Document labelsDocument(const Source& source) {
    Document document = partsSheet(source, onPaper(QT_TRANSLATE_NOOP("paper", "Marks for parts that come off")), {});
    document.rowWord = onPaper(QT_TRANSLATE_NOOP("paper", "marks"));
    document.blocks.emplace_back(paragraphBlock(
        {{onPaper(QT_TRANSLATE_NOOP("paper",
                                    "Every part is marked before it comes off, always at the same place, from the "
                                    "bass end. On the way back the numbers are read as they lie: a number may "
                                    "be missing, double or out of sequence, as old stamped numbers often are.")),
          false}},
        10, source.width()));
    document.blocks.emplace_back(gap(2));
    document.blocks.emplace_back(marksList(source.piano()));
    document.blocks.emplace_back(gap(4));
    document.blocks.emplace_back(headingBlock({}, onPaper(QT_TRANSLATE_NOOP("paper", "Labels, to cut out")), {}));
    // a grid of its own for each part: a heading between the columns of one would shift its rows, and no straight cut
    // would go across
    Table table = labelGrid();
    std::string part;
    const auto close = [&] {
        if (table.rows.empty()) return;
        document.blocks.emplace_back(plainHeading(words::partOfActionName(part), source.width()));
        document.blocks.emplace_back(std::exchange(table, labelGrid()));
    };
    for (const Mark& mark : marksFor(source.piano())) {
        if (part != mark.part) close();
        part = mark.part;
        table.rows.push_back({11,
                              {},
                              [mark, &source_piano = source.record.piano](Canvas& c, const QRectF& r) {
                                  c.frame(r, 0.3);
                                  c.textWithin(r.x() + r.width() / 2, r.y() + 6, r.width() - 2,
                                               QString::fromStdString(mark.text), {14, true}, Align::centre);
                                  c.text(r.x() + r.width() / 2, r.y() + 9.7, words::pitch(mark.note, source_piano),
                                         kSmall, Align::centre);
                              },
                              QString::fromStdString(mark.text)});
    }
    close();
    return document;
}

} // namespace hammerline::print
