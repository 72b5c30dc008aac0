// The sheets through the real painter: the same lines on the same pages at any resolution and on both papers, no row
// cut by a page, and every page says what it is and which rows are on it.
#include "core/plan/plan_in_force.h"
#include "ui/print/sheets.h"
#include "ui/words/words.h"

#include <QPdfWriter>
#include <QProcess>
#include <QRegularExpression>

#include "window_bench.h"
#include <set>

using namespace hammerline;

namespace {

struct PdfWord {
    QString text;
    double left = 0, top = 0, right = 0, bottom = 0; // points
};
struct PaperPage {
    double width = 0, height = 0; // points
    std::vector<PdfWord> words;
    QString text() const {
        QStringList all;
        for (const PdfWord& word : words)
            all << word.text;
        return all.join(u' ');
    }
};

constexpr double kPointsPerMm = 72 / 25.4;

/// What a PDF reader of another house finds on the pages (pdftotext of poppler).
std::vector<PaperPage> pagesOf(const QString& pdf) {
    QProcess reader;
    reader.start(QStringLiteral("pdftotext"), {QStringLiteral("-bbox"), pdf, QStringLiteral("-")});
    if (!reader.waitForFinished()) return {};
    std::vector<PaperPage> pages;
    const QString out = QString::fromUtf8(reader.readAllStandardOutput());
    static const QRegularExpression tag(QStringLiteral(
        "<page width=\"([\\d.]+)\" height=\"([\\d.]+)\">|<word xMin=\"(-?[\\d.]+)\" yMin=\"(-?[\\d.]+)\" "
        "xMax=\"(-?[\\d.]+)\" yMax=\"(-?[\\d.]+)\">([^<]*)</word>"));
    for (auto found = tag.globalMatch(out); found.hasNext();) {
        const auto match = found.next();
        if (!match.captured(1).isEmpty())
            pages.push_back({match.captured(1).toDouble(), match.captured(2).toDouble(), {}});
        else if (!pages.empty())
            pages.back().words.push_back({match.captured(7), match.captured(3).toDouble(), match.captured(4).toDouble(),
                                          match.captured(5).toDouble(), match.captured(6).toDouble()});
    }
    return pages;
}

constexpr std::array kSheets{
    SheetKind::adjustment, SheetKind::largeAdjustment, SheetKind::check,  SheetKind::survey,   SheetKind::parts,
    SheetKind::labels,     SheetKind::comparison,      SheetKind::record, SheetKind::estimate, SheetKind::card};

} // namespace

class PaperTest : public QObject, protected WindowBench {
    Q_OBJECT
private Q_SLOTS:
    /// A piano with something for every sheet: two passes with much out, findings of several parts, a plan.
    void initTestCase() {
        dress(Theme::light, 100);
        open("old-upright");
        for (int pass = 0; pass < 2; ++pass) {
            std::vector<NewReading> all;
            for (int n = 1; n <= 88; ++n) {
                const auto add = [&](DimensionId id, std::int64_t tenths) {
                    Reading made;
                    made.count = tenths * kTenth;
                    made.typed = std::to_string(tenths / 10) + '.' + std::to_string(tenths % 10);
                    made.typedUnit = "mm";
                    if (fitted(id, {n}, *m_bench->piano())) all.push_back({{{n}, id}, made});
                };
                add(dimension::letOff, pass == 0 ? 50 + n % 9 : 30 + n % 4);
                add(dimension::lostMotion, n % 5 == 0 ? 14 : 3);
                add(dimension::checking, n % 3 == 0 ? 230 : 160);
            }
            QVERIFY(m_bench->addPass({}).has_value());
            QVERIFY(m_bench->enterAll(all, "entry").has_value());
            if (pass == 0) {
                for (const char* found : {"1-12 bridle-strap rotted", "12,23 jack slow", "5-20 jack-spring weak"}) {
                    const auto findings = parseFindings(found, *m_bench->piano());
                    QVERIFY2(findings.has_value(), found);
                    QVERIFY(m_bench->addFindings(*findings).has_value());
                }
            }
        }
        PlanOptions options;
        options.stage = Stage::whole;
        auto plan = planInForce(*m_bench->record(), m_bench->sheet(), 1, options);
        QVERIFY(plan.has_value());
        m_plan = std::move(*plan);
    }
    void cleanupTestCase() { close(); }

    void theSameLinesAtAnyResolution() {
        for (const SheetKind kind : kSheets)
            for (const Paper paper : {Paper::a4, Paper::letter}) {
                if (paper == Paper::letter && kind != SheetKind::adjustment) continue;
                const auto coarse = print(kind, paper, 96), middle = print(kind, paper, 300),
                           fine = print(kind, paper, 1200);
                QVERIFY(!fine.empty() && !fine.front().words.empty());
                for (const auto& other : {coarse, middle}) {
                    QCOMPARE(other.size(), fine.size());
                    for (std::size_t p = 0; p < fine.size(); ++p) {
                        QCOMPARE(other[p].text(), fine[p].text());
                        for (std::size_t i = 0; i < fine[p].words.size(); ++i) {
                            const PdfWord &a = other[p].words[i], &b = fine[p].words[i];
                            // 96 dots to the inch: three quarters of a point to the dot
                            QVERIFY2(
                                std::abs(a.left - b.left) < 1 && std::abs(a.top - b.top) < 1 &&
                                    std::abs(a.right - b.right) < 1.5,
                                qPrintable(QStringLiteral("sheet %1: %2").arg(static_cast<int>(kind)).arg(a.text)));
                        }
                    }
                }
            }
    }

    void everyPageIsWholeAndSaysWhatItIs() {
        for (const SheetKind kind : kSheets)
            for (const Paper paper : {Paper::a4, Paper::letter}) {
                const auto sheet = composeSheet(kind, *m_bench->record(), passOf(kind), &m_plan, optionsFor(paper));
                QVERIFY(sheet.has_value());
                const auto pages = print(kind, paper, 1200);
                QCOMPARE(static_cast<int>(pages.size()), sheet->pages());
                std::size_t last = 0;
                for (std::size_t p = 0; p < pages.size(); ++p) {
                    const PaperPage& page = pages[p];
                    const QString text = page.text();
                    QVERIFY(text.contains(QStringLiteral("page %1 of %2").arg(p + 1).arg(pages.size())));
                    QVERIFY(text.contains(sheet->title().section(u' ', 0, 0)));
                    QVERIFY(text.contains(QStringLiteral("Test upright")));
                    for (const PdfWord& word : page.words) { // nothing is cut by an edge
                        const double margin = 14 * kPointsPerMm - 2;
                        // The large print's marks of the sections stand in the margin, 4.5 mm from the edge: printers
                        // leave about 4.2 mm free (common practice, no source).
                        const double right = kind == SheetKind::largeAdjustment ? 4.5 * kPointsPerMm : margin;
                        QVERIFY2(word.left >= margin && word.right <= page.width - right && word.top >= margin &&
                                     word.bottom <= page.height - margin,
                                 qPrintable(word.text));
                    }
                    // "notes 1 to 34 of 88": the rows go on from page to page without a hole
                    static const QRegularExpression rows(QStringLiteral("(\\d+) to (\\d+) of (\\d+)"));
                    if (const auto match = rows.match(text); match.hasMatch()) {
                        QCOMPARE(match.captured(1).toULongLong(), last + 1);
                        last = match.captured(2).toULongLong();
                        QCOMPARE(match.captured(3).toULongLong(), sheet->rows());
                    }
                }
                QCOMPARE(last, sheet->rows());
            }
    }

    /// A line of the adjustment list is one line: its note, its direction and its aim on one page side by side.
    void theWordsFollowWhatThisPianoAnswers() {
        const Piano upright;
        Step step;
        step.operation = operation::letOffTurn;
        step.direction = directionOf(step.operation, 1, upright);
        const Direction other = otherWay(step.operation, step.direction, upright);
        const QString textbook = words::directionEffect(step.direction, step.operation, upright);
        const QString opposite = words::directionEffect(other, step.operation, upright);
        QVERIFY(textbook != opposite);
        QCOMPARE(words::directionEffect(step, upright), textbook);
        step.opposite = true;
        QCOMPARE(words::directionEffect(step, upright), opposite);
        QVERIFY(words::headline(step, upright).endsWith(opposite));
        const QString sentence = words::directionSentence(step.operation, step.direction, upright, true);
        QVERIFY(sentence.startsWith(words::directionWord(step.direction, step.operation, upright)));
        QVERIFY(sentence.contains(opposite) && !sentence.contains(textbook));
    }
    void noRowIsSplitOverPages_data() {
        QTest::addColumn<int>("kind");
        QTest::addColumn<double>("points"); // of the directions
        QTest::addColumn<int>("columns");
        QTest::newRow("usual") << static_cast<int>(SheetKind::adjustment) << 15.0 << 2;
        QTest::newRow("large print") << static_cast<int>(SheetKind::largeAdjustment) << 32.0 << 1;
    }
    void noRowIsSplitOverPages() {
        QFETCH(int, kind);
        QFETCH(double, points);
        QFETCH(int, columns);
        for (const Paper paper : {Paper::a4, Paper::letter}) {
            std::map<int, int> seen; // lines a note has
            int lines = 0;
            for (const PaperPage& page : print(static_cast<SheetKind>(kind), paper, 300))
                for (const PdfWord& out : page.words) {
                    if (out.text != QLatin1String("OUT") || out.bottom - out.top < 1.15 * points) continue;
                    const double half = columns == 2 ? page.width / 2 : page.width;
                    int note = 0, numbers = 0;
                    for (const PdfWord& word : page.words) {
                        const bool sameColumn = (word.left < half) == (out.left < half);
                        const double off = std::abs((word.top + word.bottom) - (out.top + out.bottom)) / 2;
                        if (!sameColumn || off > 0.27 * points) continue;
                        if (word.right < out.left && note == 0) note = word.text.toInt();
                        if (word.left > out.right && word.text.front().isDigit()) ++numbers;
                    }
                    QVERIFY(note > 0);
                    QVERIFY2(numbers > 0, qPrintable(QStringLiteral("note %1 has no aim beside it").arg(note)));
                    ++seen[note];
                    ++lines;
                }
            int expected = 0;
            for (const Step& step : m_plan.steps)
                expected += step.operation == operation::letOffTurn && step.direction == Direction::out;
            QCOMPARE(lines, expected);
            QVERIFY(expected > 40);
        }
    }

    /// Labels are cut with straight cuts: the labels of a page lie in rows, whole rows apart.
    void labelsLieInStraightRows() {
        for (const PaperPage& page : print(SheetKind::labels, Paper::a4, 300)) {
            std::set<int> tops; // tenths of a point
            for (const PdfWord& word : page.words)
                if (word.bottom - word.top > 16 && word.text.front().isDigit()) tops.insert(qRound(word.top * 10));
            int before = 0;
            for (const int top : tops) {
                const double apart = (top - before) / 10.0 / kPointsPerMm;
                QVERIFY2(before == 0 || apart < 0.1 || apart > 10.5, qPrintable(QString::number(apart)));
                before = top;
            }
        }
    }

    /// The words of the check list are explained on it, and a share of the zone is not read as millimetres.
    void theCheckListExplainsItsWords() {
        const QString text = print(SheetKind::check, Paper::a4, 300).front().text();
        for (const char* word : {"uneven: within", "step: within", "the gauge cannot say", "1.0 × is the edge"})
            QVERIFY2(text.contains(QLatin1String(word)) || text.contains(QString::fromUtf8(word)), qPrintable(text));
        QVERIFY(!text.contains(QStringLiteral("A tick means"))); // there is no box on it
        QVERIFY(print(SheetKind::adjustment, Paper::a4, 300).front().text().contains(QStringLiteral("A tick means")));
    }

    /// The owner reads what is known: what was found out and never read again is not in order.
    void theRecordSaysWhatWasNotReadAgain() {
        QVERIFY(m_bench->addPass({}).has_value());
        Reading good;
        good.count = 30 * kTenth;
        good.typed = "3.0";
        good.typedUnit = "mm";
        QVERIFY(m_bench->enter({{5}, dimension::letOff}, good).has_value());
        QString text;
        for (const PaperPage& page : print(SheetKind::record, Paper::a4, 300))
            text += page.text() + QLatin1Char(' ');
        QVERIFY2(text.contains(QStringLiteral("out at 0 of the 1 notes read")), qPrintable(text));
        const auto at = text.indexOf(QStringLiteral("not read again since"));
        QVERIFY2(at > 0 && text.indexOf(QStringLiteral("Lost motion:"), at) > at, qPrintable(text));
        QVERIFY(m_bench->undo().has_value());
        QVERIFY(m_bench->undo().has_value());
    }

    /// Without a choice the piano as it was found stands beside it as it is, not the few readings between.
    void aComparisonIsWithTheFirstPassAndNamesWhatItCounts() {
        const QString text = print(SheetKind::comparison, Paper::a4, 300).front().text();
        QVERIFY2(text.contains(QStringLiteral("against pass 1")), qPrintable(text));
        QVERIFY2(text.contains(QStringLiteral("Grade of pass 2, all its readings")), qPrintable(text));
    }

    /// A sheet with nothing on it is one page that says so.
    void anEmptySheetIsAPage() {
        addPiano(ActionKind::upright, 88, "Empty");
        for (const SheetKind kind : {SheetKind::survey, SheetKind::parts}) {
            const auto sheet = composeSheet(kind, *m_bench->record(), 0, nullptr, optionsFor(Paper::a4));
            QVERIFY2(sheet.has_value(), qPrintable(QString::number(static_cast<int>(kind))));
            QCOMPARE(sheet->pages(), 1);
            QCOMPARE(sheet->picture(0, 40).size(), QSize(331, 468)); // 210 and 297 mm at 40 dots to the inch
        }
        QVERIFY(m_bench->choosePiano("Test upright").has_value());
    }

private:
    static int passOf(SheetKind kind) { return printsPlan(kind) ? 1 : 2; }
    static PaperOptions optionsFor(Paper paper) {
        PaperOptions options;
        options.paper = paper;
        options.date = QDate(2026, 11, 25);
        return options;
    }
    std::vector<PaperPage> print(SheetKind kind, Paper paper, int resolution) {
        const QString pdf = m_folder->filePath(QStringLiteral("sheet.pdf"));
        const auto sheet = composeSheet(kind, *m_bench->record(), passOf(kind), &m_plan, optionsFor(paper));
        if (!sheet) return {};
        {
            QPdfWriter writer(pdf);
            writer.setResolution(resolution);
            sheet->paint(writer);
        }
        return pagesOf(pdf);
    }
    Plan m_plan;
};

QTEST_MAIN(PaperTest)
#include "paper_test.moc"
