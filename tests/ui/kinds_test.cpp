// Nothing of another kind of action is said of a piano: on no sheet, in no step of the work, no caution, no question,
// no way of measuring. Which part belongs to which kind: common practice, no source.
#include "core/plan/plan.h"
#include "core/survey/job.h"
#include "core/work/work.h"
#include "ui/print/sheets.h"
#include "ui/words/how_to.h"
#include "ui/words/step_texts.h"
#include "ui/words/survey_names.h"
#include "ui/words/words.h"

#include <QProcess>
#include <QRegularExpression>
#include <QTemporaryDir>
#include <QtTest>

using namespace hammerline;

namespace {

struct Sample {
    const char* name;
    ActionKind action;
    const char* sheet;
    std::vector<std::pair<const char*, const char*>> attributes;
    const char* foreign; // words of other kinds
};

// A piano of each kind that is met, and the words that its owner must not read.
#define OF_GRANDS                                                                                                      \
    "grands?|knuckles?|repetition levers?|lever height|lyre|under the pin block|drawn out|key shift|una "              \
    "corda|underlevers?|"                                                                                              \
    "lid hinges?|stop rail of the dampers|drop screws?"
#define OF_STACKS "|player|stack|pneumatics?|tubes"
const std::array kSamples = {
    Sample{"upright with cord loops",
           ActionKind::upright,
           "upright",
           {{"butt", "cord-loop"}, {"last-damper", "66"}},
           OF_GRANDS OF_STACKS "|brass rails?|tongues?|overdampers?|birdcage|lifters?"},
    Sample{"old upright with brass rail and player",
           ActionKind::upright,
           "old-upright",
           {{"butt", "brass-rail"}, {"player", "above"}, {"last-damper", "66"}},
           OF_GRANDS "|overdampers?|birdcage|cord loops?|lifters?"},
    Sample{"drop action",
           ActionKind::drop,
           "drop",
           {{"last-damper", "66"}},
           OF_GRANDS OF_STACKS "|brass rails?|tongues?|overdampers?|birdcage|8 mm|(?<!Keys and )capstans"},
    Sample{"overdamper",
           ActionKind::upright,
           "old-upright",
           {{"damping", "overdamper"}, {"butt", "cord-loop"}, {"last-damper", "66"}},
           OF_GRANDS OF_STACKS "|brass rails?|tongues?|spoons?|lifters?|head toward the strings?"},
    Sample{"grand",
           ActionKind::grand,
           "grand",
           {{"last-damper", "68"}},
           "uprights?|rest rails?|butts?|spoons?|bridles?|straps?|tipping|tilted|tilting|catchers?|half-blow|"
           "brass rails?|lifters|stickers?|mufflers?|overdampers?|birdcage|player|stack of the player|falls backward|"
           "lost motion|top panel|bottom panel|back posts"},
};

Piano pianoOf(const Sample& sample) {
    Piano piano = *makePiano(sample.action);
    piano.name = "Hall";
    for (const auto& [name, value] : sample.attributes)
        if (!setAttribute(piano, name, value)) qFatal("%s", name);
    return piano;
}

QString numberOf(std::int64_t count, DimensionId id) {
    return QString::number(toTrade(count, row(id).kind), 'g', 4);
}

QStringList textsOf(const StepOfWork& step, const Piano& piano) {
    const words::StepText& text = *words::stepText(step.id);
    QStringList said;
    for (const char* each : {text.name, text.whatFor, text.tools, text.how, text.way, text.goodWhen, text.mistake,
                             text.takes, text.records})
        if (each) said << words::ofStep(each, piano);
    if (const auto access = accessFor(step, piano, 0); !access.empty()) said << words::workAccessName(access);
    for (const std::string_view caution : cautionsOf(step, piano))
        said << words::caution(caution, piano);
    return said;
}

QStringList workSaid(const Piano& piano) {
    QStringList said;
    for (const Operation& operation : operations()) {
        if (!applies(operation.id, piano)) continue;
        said << words::name(operation.id, piano) << words::partName(operation.id)
             << words::directionSentence(operation.id, piano) << words::stopSentence(operation.guard, piano)
             << words::accessName(accessOf(operation.id, piano), piano);
    }
    for (const StepOfWork* step : stepsOf(piano))
        said << textsOf(*step, piano);
    return said;
}

QStringList readingsSaid(const Piano& piano) {
    QStringList said;
    for (const Dimension& dimension : dimensions()) {
        if (!fittedAnywhere(dimension.id, piano)) continue;
        said << words::name(dimension.id);
        const words::HowTo how = words::howTo(dimension.id, piano.action);
        said << how.fromTo << how.how << how.with << how.reference;
    }
    return said;
}

QStringList surveySaid(const Piano& piano) {
    QStringList said;
    for (const std::string_view id : words::cautionsFor(piano))
        said << words::caution(id, piano);
    for (const std::string_view id : askBeforePlan({}, piano))
        said << words::surveyQuestion(id, piano);
    for (const std::string_view symptom : symptomsOf(piano))
        said << words::symptomName(symptom);
    PianoRecord heard;
    heard.piano = piano;
    for (const std::string_view symptom : symptomsOf(piano))
        heard.symptoms.push_back({std::string(symptom), {1, piano.notes}, 1});
    for (const Advice& advice : adviceOf(heard))
        said << words::adviceSentence(advice, piano);
    for (const Part& part : parts())
        if (fitted(part, piano)) said << words::partOfActionName(part.key) << words::supplyName(part.key);
    return said;
}

/// A record with something for every sheet: two passes in which everything is out, each part with a fault.
PianoRecord recordOf(const Sample& sample) {
    PianoRecord record;
    record.uuid = "kinds";
    record.piano = pianoOf(sample);
    record.specName = sample.sheet;
    const Zones zones(*builtInSheet(sample.sheet), record.piano, {});
    for (const int number : {1, 2}) {
        Pass& pass = record.passes.emplace_back();
        pass.number = number;
        for (const Dimension& dimension : dimensions())
            for (int n = 1; n <= record.piano.notes; n += dimension.wordsOnly ? 7 : 1) {
                const Cell cell{{n}, dimension.id};
                const auto& zone = zones.at(cell);
                Reading reading;
                if (dimension.wordsOnly)
                    reading.word = dimension.words.front();
                else if (zone && zone->high)
                    reading.count = *zone->high + (n % 3) * (*zone->high - zone->nominal) / number;
                else
                    continue;
                if (fitted(dimension.id, {n}, record.piano)) pass.cells[cell].trials = {reading};
            }
    }
    for (const Part& part : parts()) {
        if (!fitted(part, record.piano)) continue;
        Finding& finding = record.findings.emplace_back();
        finding.note = notesOf(part, record.piano).front();
        finding.part = part.key;
        finding.fault = part.faults.front().key;
        // What all readings stand on is only watched: else no note would have a plan.
        if (part.unit != PartUnit::note || notesOf(part, record.piano).empty()) finding.state = FindingState::watch;
    }
    return record;
}

QString readerFinds(const QString& pdf) {
    QProcess reader;
    reader.start(QStringLiteral("pdftotext"), {QStringLiteral("-layout"), pdf, QStringLiteral("-")});
    if (!reader.waitForFinished()) return {};
    return QString::fromUtf8(reader.readAllStandardOutput()).simplified();
}

} // namespace

class KindsTest : public QObject {
    Q_OBJECT

    QTemporaryDir m_folder;

    static void saysNothingOf(const QString& foreign, const QStringList& said) {
        const QRegularExpression word(QStringLiteral("\\b(%1)\\b").arg(foreign),
                                      QRegularExpression::CaseInsensitiveOption);
        QStringList found;
        for (const QString& sentence : said)
            for (auto each = word.globalMatch(sentence); each.hasNext();) {
                const auto match = each.next();
                found << match.captured() + QStringLiteral(": ") +
                             sentence.mid(std::max<qsizetype>(0, match.capturedStart() - 70), 150);
            }
        found.removeDuplicates();
        QVERIFY2(found.isEmpty(), qPrintable(found.join(u'\n')));
    }

    static void rows() {
        QTest::addColumn<int>("sample");
        for (std::size_t i = 0; i < kSamples.size(); ++i)
            QTest::newRow(kSamples[i].name) << static_cast<int>(i);
    }
    static const Sample& sample() {
        QFETCH(int, sample);
        return kSamples[static_cast<std::size_t>(sample)];
    }

private Q_SLOTS:
    void work_data() { rows(); }
    void work() { saysNothingOf(QString::fromUtf8(sample().foreign), workSaid(pianoOf(sample()))); }

    void readings_data() { rows(); }
    void readings() { saysNothingOf(QString::fromUtf8(sample().foreign), readingsSaid(pianoOf(sample()))); }

    void survey_data() { rows(); }
    void survey() { saysNothingOf(QString::fromUtf8(sample().foreign), surveySaid(pianoOf(sample()))); }

    void sheets_data() { rows(); }
    void sheets() {
        const PianoRecord record = recordOf(sample());
        const auto plan = makePlan(record, *builtInSheet(sample().sheet), 2, {});
        QVERIFY(plan.has_value() && !plan->steps.empty());
        QStringList said;
        for (const SheetKind kind :
             {SheetKind::adjustment, SheetKind::largeAdjustment, SheetKind::check, SheetKind::work, SheetKind::survey,
              SheetKind::parts, SheetKind::labels, SheetKind::comparison, SheetKind::record, SheetKind::gauges,
              SheetKind::action, SheetKind::estimate, SheetKind::card}) {
            const QString pdf = m_folder.filePath(QStringLiteral("sheet.pdf"));
            const auto pages = printToPdf(kind, record, 2, &*plan, {}, pdf.toStdString());
            QVERIFY(pages.has_value());
            said << readerFinds(pdf);
            QVERIFY(said.back().size() > 100);
        }
        saysNothingOf(QString::fromUtf8(sample().foreign), said);
    }

    // The figures that a step names are those that its readings are judged by, on every kind.
    void theFiguresOfAStepAreTheSheets() {
        const std::array judged = {std::pair{"set-dip-naturals", dimension::keyDip},
                                   std::pair{"level-sharps", dimension::sharpHeight},
                                   std::pair{"set-dip-sharps", dimension::sharpProud},
                                   std::pair{"prove-aftertouch", dimension::aftertouch},
                                   std::pair{"set-checks", dimension::checking},
                                   std::pair{"set-grand-checks", dimension::checking},
                                   std::pair{"set-rest-rail", dimension::blow},
                                   std::pair{"set-grand-blow", dimension::blow},
                                   std::pair{"set-damper-pedal", dimension::damperRise},
                                   std::pair{"set-drop", dimension::drop},
                                   std::pair{"set-soft-pedal", dimension::halfBlow},
                                   std::pair{"time-dampers-by-key", dimension::damperStart},
                                   std::pair{"take-up-lost-motion", dimension::lostMotion}};
        for (const Sample& each : kSamples) {
            const Piano piano = pianoOf(each);
            const Zones zones(*builtInSheet(each.sheet), piano, {});
            for (const auto& [id, of] : judged) {
                if (!offered(*findStep(id), piano) || !fittedAnywhere(of, piano)) continue;
                const QString said = words::ofStep(words::stepText(id)->goodWhen, piano);
                for (int n = 1; n <= piano.notes; ++n) {
                    const bool natural = of != dimension::keyDip || colourOf({n}, piano) == KeyColour::natural;
                    const auto& zone = zones.at({{n}, of});
                    if (!zone || !zone->high || !natural || !fitted(of, {n}, piano)) continue;
                    QVERIFY2(said.contains(numberOf(*zone->high, of)),
                             qPrintable(QStringLiteral("%1, %2, note %3: %4")
                                            .arg(QLatin1String(each.name), QLatin1String(id))
                                            .arg(n)
                                            .arg(said)));
                }
            }
        }
    }

    void noStepLeavesAPlaceForAFigureOpen() {
        for (const Sample& each : kSamples) {
            const QString said = workSaid(pianoOf(each)).join(u' ');
            QVERIFY2(!said.contains(u'{') && !said.contains(QStringLiteral(": .")), each.name);
        }
    }

    void anOverdamperComesOutWithItsCageOn() {
        const Piano piano = pianoOf(kSamples[3]);
        const QStringList said = textsOf(*findStep("take-action-out"), piano);
        QVERIFY(said.filter(QStringLiteral("cage off")).isEmpty());
        for (const char* id : {"free-centres", "file-hammers", "mend-hammers"})
            QVERIFY(textsOf(*findStep(id), piano).join(u' ').contains(QStringLiteral("take it off first")));
    }

    void aGrandsStepsAreReachedAsAGrands() {
        const Piano grand = pianoOf(kSamples[4]);
        for (const StepOfWork* step : stepsOf(grand))
            for (const std::string_view access : accessOf(*step, grand)) {
                const bool ofAll = access == "closed" || access == "keys-off";
                QVERIFY2(ofAll || access.starts_with("g-"), std::string(step->id).c_str());
            }
    }

    void aDropActionHasItsKeysUnhooked() {
        const Piano drop = pianoOf(kSamples[2]);
        for (const OperationId id : {operation::balancePunching, operation::frontPunching})
            QCOMPARE(accessOf(id, drop), Access::keysOff);
        for (const char* id : {"set-dip-naturals", "set-dip-sharps", "level-naturals", "ease-keys"})
            QCOMPARE(accessFor(*findStep(id), drop, 3), std::string_view("keys-off"));
    }

    void anOverdamperIsTimedByItsButtons() {
        const Piano piano = pianoOf(kSamples[3]);
        QVERIFY(words::directionSentence(operation::damperWire, piano).contains(QStringLiteral("button")));
    }

    void aGrandsWorkIsTurnedWithTheActionDrawnOut() {
        const Piano grand = pianoOf(kSamples[4]);
        for (const OperationId id : {operation::checkBend, operation::dropTurn, operation::capstanTurn}) {
            QCOMPARE(accessOf(id, grand), Access::actionOut);
            QVERIFY(words::stopSentence(row(id).guard, grand).contains(QStringLiteral("No key is touched")));
        }
        QCOMPARE(askBeforePlan({}, grand).front(), std::string_view("key-frame"));
        QVERIFY(words::directionSentence(operation::letOffTurn, grand).contains(QStringLiteral("seen from above")));
    }
};

QTEST_MAIN(KindsTest)
#include "kinds_test.moc"
