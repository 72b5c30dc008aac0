// Every text that a person sees goes through tr(): with a translator that puts each text between brackets, what stands
// outside of brackets is data (names, numbers, keys) or was forgotten.
#include "core/causes/rule.h"
#include "core/causes/symptom_rows.h"
#include "core/operation/operation.h"
#include "ui/key_sheet.h"
#include "ui/stations/station.h"
#include "ui/words/said.h"
#include "ui/words/words.h"

#include <QAbstractButton>
#include <QComboBox>
#include <QLabel>
#include <QLineEdit>
#include <QMenu>
#include <QMenuBar>
#include <QRegularExpression>
#include <QTranslator>

#include "window_bench.h"

using namespace hammerline;

namespace {

class Bracketing : public QTranslator {
public:
    bool isEmpty() const override { return false; }
    QString translate(const char*, const char* source, const char*, int) const override {
        const QString text = QString::fromUtf8(source);
        return text.isEmpty() ? text : QChar(0x27E6) + text + QChar(0x27E7);
    }
};

/// What is left of a text when all that was translated is taken out, and what is no word: markup, numbers, units, keys,
/// pitches, names that the book or the person gave.
QString untranslated(QString text) {
    static const QRegularExpression tag(QStringLiteral("<[^>]*>|&[a-z]+;"));
    static const QRegularExpression translated(QStringLiteral("\u27E6[^\u27E6\u27E7]*\u27E7"));
    static const QRegularExpression data(QStringLiteral(
        "Test upright|as found|t\\.hammerline|Ctrl|Shift|Enter|Return|Space|Backspace|Esc|Tab|Del|PgDn|PgUp|"
        "Home|End|PgDown|Up|Down|Left|Right|F\\d+"));
    static const QRegularExpression word(QStringLiteral("\\p{L}{3,}"));
    text.remove(tag);
    for (qsizetype before = -1; before != text.size();) {
        before = text.size();
        text.remove(translated);
    }
    text.remove(data);
    return word.match(text).captured();
}

} // namespace

class TranslationTest : public QObject, protected WindowBench {
    Q_OBJECT
private Q_SLOTS:
    void initTestCase() {
        QVERIFY(QCoreApplication::installTranslator(&m_brackets));
        open("old-upright");
        std::vector<NewReading> all;
        for (int n = 1; n <= 88; ++n)
            all.push_back({{{n}, dimension::letOff}, reading(n % 4 == 0 ? "6.0" : "2.9")});
        QVERIFY(m_bench->enterAll(all, "entry").has_value());
        NewPass second;
        second.label = "as found";
        QVERIFY(m_bench->addPass(second).has_value());
        QVERIFY(m_bench->enterAll(all, "entry").has_value());
    }
    void cleanupTestCase() {
        close();
        QCoreApplication::removeTranslator(&m_brackets);
    }

    void theMeasureIsRight() {
        QCOMPARE(untranslated(QStringLiteral("\u27E6Pass \u27E6one\u27E7 of 2\u27E7 <b>C4</b> 2.5 mm")), QString());
        QCOMPARE(untranslated(QStringLiteral("Forgotten \u27E6kept\u27E7")), QStringLiteral("Forgotten"));
    }

    void everyStation() {
        for (const char* id : {"piano", "survey", "measure", "review", "work", "passes"}) {
            QVERIFY(m_window->showStation(QLatin1String(id)));
            Station* station = m_window->station();
            const QString at = QLatin1String(id);
            see(at + QStringLiteral(" context"), station->context());
            see(at + QStringLiteral(" remark"), station->hintRemark());
            for (const KeyHint& hint : station->hints()) {
                see(at + QStringLiteral(" hint key"), hint.keys);
                see(at + QStringLiteral(" hint"), hint.does);
            }
            for (const QString& line : station->strip().legend)
                see(at + QStringLiteral(" strip"), line);
            widgets(at, *m_window);
            if (station->tools()) widgets(at, *station->tools());
        }
        report();
    }

    /// What core says by an id has words of its own, and no id is read out as it stands.
    void everyIdOfCore() {
        const auto said = [this](const char* where, std::string_view id, const QString& text) {
            const QString which = QStringLiteral("%1 %2").arg(QLatin1String(where), words::utf8(id));
            if (text.isEmpty()) m_left << which + QStringLiteral(" has no words");
            if (text.startsWith(QStringLiteral("\u27E6Look at: ")))
                m_left << which + QStringLiteral(" has no question");
            see(which, text);
        };
        for (const SymptomRow& symptom : symptomRows()) {
            said("symptom", symptom.key, words::symptomName(symptom.key));
            for (const SymptomCheck& check : symptom.checks) {
                said("check of a symptom", check.id, words::symptomCheckName(check.id));
                for (const std::string_view effect : check.sideEffects)
                    said("side effect", effect, words::sideEffectName(effect));
            }
        }
        for (const CauseRule& rule : causeRules()) {
            said("cause", rule.key, words::causeName(rule.key));
            if (!rule.remedy.empty()) said("remedy", rule.remedy, words::remedyName(rule.remedy));
            for (const DecidingCheck& check : rule.checks)
                said("check of a cause", check.id, words::checkSentence(check.id));
        }
        for (const Operation& operation : operations())
            said("operation", key(operation.id), words::name(operation.id));
        for (const AttributeRow& row : attributes()) {
            if (row.name == "gauge-DIMENSION" || row.name == "minutes-OPERATION") continue; // families
            said("attribute", row.name, words::attributeName(row.name));
            if (row.values.find('|') == std::string_view::npos) continue;
            for (const QString& value : words::utf8(row.values).split(QLatin1Char('|')))
                said("value", row.name, words::attributeValue(row.name, value.toStdString()));
        }
        report();
    }

    void everyMenuAndKey() {
        menu(*m_window->menuBar());
        for (const KeyGroup& group : keyGroups(*m_window->menuBar())) {
            see(QStringLiteral("key group"), group.title);
            for (const KeyRow& row : group.rows)
                see(QStringLiteral("key"), row.does);
        }
        report();
    }

private:
    void see(const QString& where, const QString& text) {
        ++m_seen;
        if (const QString left = untranslated(text); !left.isEmpty())
            m_left << QStringLiteral("%1: \"%2\" in \"%3\"").arg(where, left, text.left(80));
    }
    void widgets(const QString& where, const QWidget& root) {
        for (const QWidget* widget : root.findChildren<QWidget*>()) {
            if (widget->window() != root.window()) continue;
            see(where + QStringLiteral(" name"), widget->accessibleName());
            see(where + QStringLiteral(" tip"), widget->toolTip());
            if (const auto* label = qobject_cast<const QLabel*>(widget))
                see(where + QStringLiteral(" label"), label->text());
            if (const auto* button = qobject_cast<const QAbstractButton*>(widget))
                see(where + QStringLiteral(" button"), button->text());
            if (const auto* box = qobject_cast<const QComboBox*>(widget))
                for (int i = 0; i < box->count(); ++i)
                    see(where + QStringLiteral(" choice"), box->itemText(i));
            if (const auto* view = qobject_cast<const QAbstractItemView*>(widget); view && view->model())
                cells(where, *view);
        }
    }
    void cells(const QString& where, const QAbstractItemView& view) {
        const QAbstractItemModel& model = *view.model();
        for (int c = 0; c < model.columnCount(); ++c) {
            see(where + QStringLiteral(" column"), model.headerData(c, Qt::Horizontal, Qt::DisplayRole).toString());
            for (int r = 0; r < std::min(model.rowCount(), 40); ++r) {
                const QModelIndex index = model.index(r, c);
                see(where + QStringLiteral(" cell of ") + view.accessibleName(),
                    index.data(Qt::DisplayRole).toString());
                see(where + QStringLiteral(" spoken"), index.data(Qt::AccessibleTextRole).toString());
            }
        }
    }
    void menu(const QWidget& of) {
        for (const QAction* action : of.actions()) {
            if (!action->isSeparator()) see(QStringLiteral("menu"), action->text());
            if (action->menu()) menu(*action->menu());
        }
    }
    void report() {
        QVERIFY(m_seen > 50);
        m_left.removeDuplicates();
        for (const QString& each : std::exchange(m_left, {}))
            QTest::qFail(qPrintable(each), __FILE__, __LINE__);
        m_seen = 0;
    }

    Bracketing m_brackets;
    QStringList m_left;
    int m_seen = 0;
};

QTEST_MAIN(TranslationTest)
#include "translation_test.moc"
