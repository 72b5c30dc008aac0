// The Passes station: two passes side by side, what got worse, what this piano answers, and whether it is even.
#include "ui/print/sheets.h"
#include "ui/stations/station_words.h"
#include "ui/stations/stations.h"
#include "ui/widgets/empty_state.h"
#include "ui/words/words.h"

#include <QComboBox>
#include <QHBoxLayout>
#include <QLabel>
#include <QStackedWidget>
#include <QVBoxLayout>

namespace hammerline {
namespace {

QString number(std::optional<double> value, int decimals = 1) {
    if (!value) return QStringLiteral("·");
    return QString::number(*value, 'f', decimals).replace(QLatin1Char('-'), QChar(0x2212));
}

class PassesStation : public Station {
    Q_OBJECT
public:
    explicit PassesStation(Workbench& workbench) : Station(workbench) {
        setObjectName(QStringLiteral("passes"));
        m_stack = new QStackedWidget(this);
        auto* column = new QVBoxLayout(this);
        column->setContentsMargins(0, 0, 0, 0);
        column->addWidget(m_stack);
        auto* page = new QWidget(m_stack);
        auto* row = new QHBoxLayout(page);
        row->setContentsMargins(0, 0, 0, 0);
        row->setSpacing(0);
        m_table = new RowTable(tr("Dimensions, before and now"),
                               {{tr("dimension"), 0},
                                {tr("read in both"), 22, Qt::AlignRight},
                                {tr("out before"), 22, Qt::AlignRight},
                                {tr("out now"), 18, Qt::AlignRight},
                                {tr("got worse"), 20, Qt::AlignRight},
                                {tr("spread before"), 26, Qt::AlignRight},
                                {tr("spread now"), 22, Qt::AlignRight}},
                               7.5, page);
        row->addWidget(m_table, 3);
        m_text = makeText(page);
        m_text->setAlignment(Qt::AlignTop | Qt::AlignLeft);
        m_text->setMargin(u(4));
        m_text->setBackgroundRole(QPalette::Base);
        m_text->setAutoFillBackground(true);
        row->addWidget(m_text, 2);
        m_stack->addWidget(page);
        m_stack->addWidget(new EmptyState(tr("One pass so far. The next one shows what changed."), m_stack));
        makeTools();
        connect(&bench(), &Workbench::recordChanged, this, &PassesStation::fill);
        connect(&bench(), &Workbench::bookChanged, this, &PassesStation::fill);
        fill();
    }

    QString context() const override {
        return m_comparison ? tr("<b>%1</b>").arg(words::gradeName(m_comparison->grade)) : QString();
    }
    QWidget* tools() override { return m_tools; }
    QList<KeyHint> hints() const override {
        return {{QStringLiteral("↑ ↓"), tr("dimension")}, {tr("Ctrl P"), tr("print")}};
    }
    QString hintRemark() const override { return tr("passes are compared only like with like"); }
    void arrive() override { m_table->setFocus(); }
    void print() override {
        const PianoRecord* record = bench().record();
        if (!record || !m_comparison) return;
        const QString refused = previewSheet(this, static_cast<int>(SheetKind::comparison), *record, m_comparison->to,
                                             nullptr, m_comparison->from);
        if (!refused.isEmpty()) Q_EMIT notice(refused);
    }

private:
    void makeTools() {
        m_tools = new QWidget(this);
        auto* row = new QHBoxLayout(m_tools);
        row->setContentsMargins(0, 0, 0, 0);
        m_from = makeChoice(tr("Before"), m_tools);
        m_to = makeChoice(tr("Now"), m_tools);
        for (QComboBox* box : {m_from, m_to}) {
            row->addWidget(box);
            connect(box, qOverload<int>(&QComboBox::activated), this, [this] { compare(); });
        }
        m_tools->hide();
    }

    void fill() {
        const PianoRecord* record = bench().record();
        const int passes = record ? static_cast<int>(record->passes.size()) : 0;
        m_stack->setCurrentIndex(passes > 1 ? 0 : 1);
        if (m_from->count() != passes) {
            for (QComboBox* box : {m_from, m_to}) {
                box->clear();
                for (int i = 1; i <= passes; ++i)
                    box->addItem(
                        tr("pass %1, %2")
                            .arg(i)
                            .arg(QString::fromStdString(record->passes[static_cast<std::size_t>(i - 1)].label)),
                        i);
            }
            m_from->setCurrentIndex(0);
            m_to->setCurrentIndex(passes - 1);
        }
        compare();
    }

    void compare() {
        m_comparison.reset();
        const PianoRecord* record = bench().record();
        if (record && record->passes.size() > 1) {
            auto compared =
                comparePasses(*record, bench().sheet(), m_from->currentData().toInt(), m_to->currentData().toInt());
            if (compared)
                m_comparison = std::move(*compared);
            else
                Q_EMIT notice(words::sentence(compared.error()));
        }
        if (m_comparison) show(*m_comparison, record->piano);
        Q_EMIT wordsChanged();
    }

    void show(const Comparison& comparison, const Piano& piano) {
        std::vector<ListRow> rows;
        for (const DimensionComparison& each : comparison.dimensions) {
            ListRow row;
            row.key = each.dimension.row;
            row.cells = {RowCell(words::name(each.dimension)),
                         RowCell(QString::number(each.n)),
                         RowCell(QString::number(each.outsideBefore)),
                         RowCell(QString::number(each.outsideNow), true),
                         RowCell(QString::number(each.worseNow), each.worseNow > 0),
                         RowCell(number(each.spreadBefore, 2)),
                         RowCell(number(each.spreadNow, 2), true)};
            rows.push_back(std::move(row));
        }
        m_table->setRows(std::move(rows));
        m_text->setText(gradeText(comparison) + worseText(comparison, piano) + learnedText(comparison) +
                        climateText(comparison));
    }

    static QString heading(const QString& text) {
        return QStringLiteral("<p><b>") + text.toHtmlEscaped() + QStringLiteral("</b>");
    }

    static QString gradeText(const Comparison& comparison) {
        QString html = heading(words::gradeName(comparison.grade));
        for (const std::string_view why : comparison.missingForGrade)
            html += QStringLiteral("<br>") + words::missingForGradeSentence(why).toHtmlEscaped();
        return html;
    }

    static QString worseText(const Comparison& comparison, const Piano& piano) {
        if (comparison.gotWorse.empty()) return heading(tr("Nothing got worse."));
        QString html = heading(tr("Got worse"));
        std::size_t shown = 0;
        for (const Cell& cell : comparison.gotWorse) {
            if (++shown > 12) {
                html += QStringLiteral("<br>") +
                        tr("and %n more", nullptr, static_cast<int>(comparison.gotWorse.size() - 12));
                break;
            }
            html += QStringLiteral("<br>") + words::noteName(cell.note, piano) + QStringLiteral(", ") +
                    words::name(cell.dimension).toLower();
        }
        return html;
    }

    /// "Capstans, naturals: −2.3 mm a turn (−3.4 to −1.2), 3 pairs"
    static QString answer(const Response& response) {
        QString of = words::name(response.operation);
        if (response.keys) of += *response.keys == KeyColour::natural ? tr(", naturals") : tr(", sharps");
        const QString unit = row(response.operation).unit == AmountUnit::turn ? tr("a turn") : tr("a mm");
        return tr("%1: %2 mm %3 (%4 to %5), %n pair(s)", nullptr, response.pairs)
            .arg(of, number(response.effects.front().perUnit), unit, number(response.low95), number(response.high95));
    }

    static QString learnedText(const Comparison& comparison) {
        QString html = heading(tr("What this piano answers"));
        bool any = false;
        for (const Response& response : comparison.learned) {
            if (!response.learned || response.effects.empty()) continue;
            any = true;
            html += QStringLiteral("<br>") + answer(response);
        }
        if (!any)
            html += QStringLiteral("<br>") +
                    tr("Nothing learned yet: tick off what was done, with its amount, and read again.");
        return html;
    }

    static QString climateText(const Comparison& comparison) {
        if (!comparison.climate) return {};
        QString html = heading(tr("Climate")) + QStringLiteral("<br>") +
                       tr("Wood would settle at %1 % moisture before, %2 % now.")
                           .arg(number(comparison.climate->moistureBefore), number(comparison.climate->moistureNow));
        if (comparison.climate->couldExplain) html += QLatin1Char(' ') + tr("That alone could explain a difference.");
        return html;
    }

    QStackedWidget* m_stack = nullptr;
    RowTable* m_table = nullptr;
    QLabel* m_text = nullptr;
    QWidget* m_tools = nullptr;
    QComboBox *m_from = nullptr, *m_to = nullptr;
    std::optional<Comparison> m_comparison;
};

} // namespace

Station* makePassesStation(Workbench& workbench) {
    return new PassesStation(workbench);
}

} // namespace hammerline

#include "passes_station.moc"
