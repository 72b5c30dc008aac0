// The estimate: minutes by step and part, parts to order, prices where the user filled them, what is not part of it.
#include "core/sheet/estimate.h"
#include "ui/print/documents.h"
#include "ui/words/piano_record.h"
#include "ui/words/said.h"
#include "ui/words/survey_names.h"
#include "ui/words/work_now.h"

#include <QCoreApplication>

namespace hammerline::print {

namespace {

using words::onPaper;

constexpr Type kHead{9}, kStep{10.5, true}, kText{9.5}, kSmall{8.5};
constexpr double kTimeRight = 36; // right edges of the columns, mm from the right
constexpr double kQuantityRight = 66;

QString money(const std::optional<Money>& amount, const EstimateTerms& terms) {
    if (!amount) return {};
    const QString currency = words::utf8(terms.currency);
    return words::utf8(moneyText(*amount)) + (currency.isEmpty() ? QString() : QLatin1Char(' ') + currency);
}

Table headed(const std::vector<std::pair<double, QString>>& fromRight) {
    Table table = plainTable();
    table.headHeight = 6;
    table.head = [fromRight](Canvas& c, const QRectF& r) {
        for (const auto& [right, text] : fromRight)
            c.text(r.right() - right, r.bottom() - 1.8, text, kHead, Align::right);
        c.line(r.x(), r.bottom(), r.right(), r.bottom(), 0.3);
    };
    table.again = gap(0);
    return table;
}

TableRow stepRow(const EstimateStep& step, const EstimateTerms& terms) {
    const QString name = words::workStepName(step.id), time = minutesText(step.minutes);
    const QString cost = money(step.cost, terms);
    const QString waits = step.waits ? onPaper(QT_TRANSLATE_NOOP("paper", "waits for parts")) : QString();
    return {7,
            {},
            [=](Canvas& c, const QRectF& r) {
                const double base = r.y() + 5;
                c.textWithin(r.x(), base, r.width() - 96, name, kStep);
                c.text(r.right() - kQuantityRight, base, waits, kSmall, Align::right);
                c.text(r.right() - kTimeRight, base, time, kText, Align::right);
                c.text(r.right(), base, cost, kText, Align::right);
                c.line(r.x(), r.bottom(), r.right(), r.bottom(), 0.2);
            },
            name};
}

/// A repair of the step above it.
TableRow repairRow(std::string_view part, double minutes) {
    const QString name = words::partOfActionName(part), time = minutesText(minutes);
    return {5,
            {},
            [=](Canvas& c, const QRectF& r) {
                const double base = r.y() + 3.7;
                c.textWithin(r.x() + 6, base, r.width() - 80, name, kSmall);
                c.text(r.right() - kTimeRight, base, time, kSmall, Align::right);
            },
            name};
}

TableRow partRow(const EstimatePart& part, const EstimateTerms& terms) {
    const QString name = words::supplyName(part.line.part), size = words::supplySize(part.line);
    const QString quantity = words::supplyQuantity(part.line, part.line.quantity);
    const QString price = money(part.price, terms), cost = money(part.cost, terms);
    const bool itself = part.line.with.empty();
    return {6.6,
            {},
            [=](Canvas& c, const QRectF& r) {
                const double base = r.y() + 4.7;
                c.textWithin(r.x() + (itself ? 0 : 6), base, 62, name, itself ? kText : kSmall);
                c.textWithin(r.x() + 70, base, r.width() - 70 - 86, size, kSmall);
                c.text(r.right() - kQuantityRight, base, quantity, kText, Align::right);
                c.text(r.right() - kTimeRight, base, price, kText, Align::right);
                c.text(r.right(), base, cost, kText, Align::right);
                c.line(r.x(), r.bottom(), r.right(), r.bottom(), 0.2);
            },
            name};
}

/// A line of the sum; without an amount a rule stands for it, to be filled by hand.
TableRow sumRow(const QString& name, const QString& time, const QString& amount, bool total) {
    const Type type = total ? Type{12, true} : kText;
    return {total ? 9.5 : 7.0,
            {},
            [=](Canvas& c, const QRectF& r) {
                const double base = r.bottom() - 2.2;
                if (total) c.line(r.x(), r.y() + 0.5, r.right(), r.y() + 0.5, 0.5);
                c.textWithin(r.x(), base, r.width() - 80, name, type);
                c.text(r.right() - kTimeRight, base, time, type, Align::right);
                c.text(r.right(), base, amount, type, Align::right);
                if (amount.isEmpty()) c.line(r.right() - 30, base + 0.8, r.right(), base + 0.8, 0.2);
            },
            name};
}

class EstimateBuilder {
public:
    explicit EstimateBuilder(const Source& source)
        : m_source(source)
        , m_estimate(estimate(source.record))
        , m_document(partsSheet(source, onPaper(QT_TRANSLATE_NOOP("paper", "Estimate")), {})) {
        m_document.rowWord = onPaper(QT_TRANSLATE_NOOP("paper", "lines"));
    }

    Document build() {
        whose();
        work();
        goods();
        sum();
        lines(onPaper(QT_TRANSLATE_NOOP("paper", "What it took before")), took());
        lines(onPaper(QT_TRANSLATE_NOOP("paper", "Not part of this")), exclusions());
        lines(onPaper(QT_TRANSLATE_NOOP("paper", "Decided")), decisions());
        lines(onPaper(QT_TRANSLATE_NOOP("paper", "Good to know")), remarks());
        return std::move(m_document);
    }

private:
    void add(Block block) { m_document.blocks.push_back(std::move(block)); }

    void whose() {
        const QString line = words::identityLine(m_source.record.identity);
        if (!line.isEmpty()) add(paragraphBlock({{line, false}}, 10.5, m_source.width()));
        add(gap(1));
    }

    void work() {
        add(headingBlock({}, onPaper(QT_TRANSLATE_NOOP("paper", "Work")), {}));
        Table table = headed({{kTimeRight, onPaper(QT_TRANSLATE_NOOP("paper", "time"))},
                              {0, onPaper(QT_TRANSLATE_NOOP("paper", "amount"))}});
        for (const EstimateStep& step : m_estimate.steps) {
            table.rows.push_back(stepRow(step, m_estimate.terms));
            for (const auto& [part, minutes] : step.parts)
                table.rows.push_back(repairRow(part, minutes));
        }
        if (table.rows.empty())
            return add(paragraphBlock({{onPaper(QT_TRANSLATE_NOOP("paper", "Nothing is open.")), false}}, 10.5,
                                      m_source.width()));
        add(std::move(table));
        add(gap(2));
    }

    void goods() {
        if (m_estimate.parts.empty()) return;
        add(headingBlock({}, onPaper(QT_TRANSLATE_NOOP("paper", "Parts")), {}));
        Table table = headed({{kQuantityRight, onPaper(QT_TRANSLATE_NOOP("paper", "quantity"))},
                              {kTimeRight, onPaper(QT_TRANSLATE_NOOP("paper", "each (or m, 100 cm\u00B2)"))},
                              {0, onPaper(QT_TRANSLATE_NOOP("paper", "amount"))}});
        for (const EstimatePart& part : m_estimate.parts)
            table.rows.push_back(partRow(part, m_estimate.terms));
        add(std::move(table));
        add(gap(2));
    }

    void sum() {
        const EstimateTerms& terms = m_estimate.terms;
        add(headingBlock({}, onPaper(QT_TRANSLATE_NOOP("paper", "Together")), {}));
        Table table = plainTable();
        const double all = m_estimate.minutes + m_estimate.allowanceMinutes;
        const QString hour = terms.hour
                                 ? onPaper(QT_TRANSLATE_NOOP("paper", "Work, %1 an hour")).arg(money(terms.hour, terms))
                                 : onPaper(QT_TRANSLATE_NOOP("paper", "Work"));
        table.rows.push_back(sumRow(
            onPaper(QT_TRANSLATE_NOOP("paper", "Allowance for what shows only once it is apart, %1 % of the repairs"))
                .arg(mm(terms.allowance, 0)),
            minutesText(m_estimate.allowanceMinutes), QStringLiteral(" "), false));
        table.rows.push_back(sumRow(hour, minutesText(all), money(m_estimate.labour, terms), false));
        if (!m_estimate.parts.empty())
            table.rows.push_back(
                sumRow(onPaper(QT_TRANSLATE_NOOP("paper", "Parts")), {}, money(m_estimate.material, terms), false));
        table.rows.push_back(
            sumRow(onPaper(QT_TRANSLATE_NOOP("paper", "Travel")), {}, money(m_estimate.travel, terms), false));
        const bool complete = m_estimate.labour && m_estimate.unpriced == 0;
        table.rows.push_back(sumRow(complete ? onPaper(QT_TRANSLATE_NOOP("paper", "Sum"))
                                             : onPaper(QT_TRANSLATE_NOOP("paper", "Sum of what is filled in")),
                                    minutesText(all), money(m_estimate.total, terms), true));
        add(std::move(table));
        add(gap(2));
    }

    QStringList took() const {
        QStringList all;
        for (const Estimate::Took& each : m_estimate.took)
            all << words::tookSentence(each.step, each.customary, each.really);
        return all;
    }

    QStringList exclusions() const {
        QStringList all;
        for (const std::string& each : m_estimate.terms.exclusions)
            all << words::utf8(each);
        for (const std::string_view part : m_estimate.specialist)
            all << onPaper(QT_TRANSLATE_NOOP("paper", "%1: for a specialist, no time is known for it"))
                       .arg(words::partOfActionName(part));
        return all;
    }

    QStringList decisions() const {
        QStringList all;
        for (const Remark& remark : m_source.record.remarks)
            if (remark.kind == RemarkKind::decision) all << words::remarkSentence(remark, m_source.piano());
        return all;
    }

    QStringList remarks() const {
        QStringList all;
        if (!m_estimate.measured)
            all << onPaper(QT_TRANSLATE_NOOP("paper", "The regulating is not in these hours yet: it shows once the "
                                                      "action is measured."));
        if (m_estimate.unseen > 0)
            all << onPaper(QT_TRANSLATE_NOOP("paper", "%1 parts were not looked at; nothing is said of them."))
                       .arg(m_estimate.unseen);
        if (m_estimate.unpriced > 0)
            all << onPaper(QT_TRANSLATE_NOOP("paper", "%1 lines of parts have no price yet; the sum leaves them out."))
                       .arg(m_estimate.unpriced);
        all << onPaper(QT_TRANSLATE_NOOP("paper", "The times are customary ones, counted from what was found; they are "
                                                  "no promise."));
        return all;
    }

    void lines(const QString& title, const QStringList& all) {
        if (all.isEmpty()) return;
        add(headingBlock({}, title, {}));
        for (const QString& line : all)
            add(paragraphBlock({{line, false}}, 9.5, m_source.width()));
        add(gap(2));
    }

    const Source& m_source;
    Estimate m_estimate;
    Document m_document;
};

} // namespace

Document estimateDocument(const Source& source) {
    return EstimateBuilder(source).build();
}

} // namespace hammerline::print
