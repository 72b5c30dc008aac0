#include "ui/piano/when_known.h"

#include "ui/piano/fold.h"
#include "ui/words/said.h"
#include "ui/words/set_up_answers.h"
#include "ui/words/words.h"

#include <QVBoxLayout>

namespace hammerline {

namespace {

using words::utf8;

std::string_view valuesOf(std::string_view attribute) {
    for (const AttributeRow& row : attributes())
        if (row.name == attribute) return row.values;
    return {};
}

/// Words alone; a word or a number is typed.
bool isChoice(std::string_view attribute) {
    const std::string_view values = valuesOf(attribute);
    const bool words = values.find('|') != std::string_view::npos,
               numbers = values.find("..") != std::string_view::npos;
    return words && !numbers;
}

std::string saidValue(std::string_view attribute, const Piano& piano) {
    for (const auto& [name, value] : attributePairs(piano))
        if (name == attribute) return value;
    return {};
}

/// The value of a choice: the one that leaves the piano as it is.
QString chosenValue(std::string_view attribute, const Piano& piano) {
    for (const QString& value : utf8(valuesOf(attribute)).split(QLatin1Char('|'))) {
        Piano tried = piano;
        if (setAttribute(tried, attribute, value.toStdString()) && tried == piano) return value;
    }
    return {};
}

FactRow::Choices possibleValues(std::string_view attribute, const Piano& piano) {
    FactRow::Choices choices;
    for (const QString& value : utf8(valuesOf(attribute)).split(QLatin1Char('|')))
        if (possible(attribute, value.toStdString(), piano))
            choices.append({words::attributeValue(attribute, value.toStdString()), value});
    return choices;
}

} // namespace

FactRow* makeAttributeRow(std::string_view attribute, QWidget* parent) {
    return new FactRow(words::attributeName(attribute), words::whatItDecides(attribute),
                       isChoice(attribute) ? FactRow::Answer::chosen : FactRow::Answer::typed, parent);
}

void showAttribute(FactRow& row, std::string_view attribute, const Piano& piano) {
    row.setVisible(concerns(attribute, piano));
    if (row.choice()) {
        row.setChoices(possibleValues(attribute, piano));
        row.choose(chosenValue(attribute, piano));
    } else {
        row.show(words::answerText(saidValue(attribute, piano)), words::customaryAnswer(attribute, piano));
    }
}

WhenKnown::WhenKnown(QWidget* parent) : QWidget(parent) {
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(0);
    addFold(column, tr("Dampers"), {"damping", "last-damper"}, true);
    addFold(column, tr("Butts and rest rail"), {"butt", "rest-rail", "brackets", "rest-rail-factor"}, true);
    addFold(column, tr("Capstans and let-off"), {"capstan", "capstan-length", "capstan-reserve", "let-off"}, false);
    addFold(column, tr("Keys and papers"), {"keys", "crown", "balance-screws", "stock"}, false);
    addFold(column, tr("Sections"), {"sections"}, false);
    addFold(column, tr("How it answers"), {"ratio-natural", "ratio-sharp"}, false);
    column->addStretch(1);
}

void WhenKnown::addFold(QVBoxLayout* column, const QString& title, std::vector<std::string_view> attributes,
                        bool open) {
    Fold fold{new FoldBar(title, this), new QWidget(this), std::move(attributes)};
    auto* rows = new QVBoxLayout(fold.body);
    rows->setContentsMargins(0, 0, 0, 0);
    rows->setSpacing(0);
    for (const std::string_view attribute : fold.attributes) {
        FactRow* row = makeAttributeRow(attribute, fold.body);
        rows->addWidget(row);
        m_rows[std::string(attribute)] = row;
        connect(row, &FactRow::said, this,
                [this, attribute](const QString& value) { Q_EMIT said(utf8(attribute), value); });
    }
    column->addWidget(fold.bar);
    column->addWidget(fold.body);
    connect(fold.bar, &FoldBar::toggled, fold.body, &QWidget::setVisible);
    fold.bar->setChecked(open);
    fold.body->setVisible(open);
    m_folds.push_back(std::move(fold));
}

void WhenKnown::show(const Piano& piano) {
    for (const auto& [attribute, row] : m_rows)
        showAttribute(*row, attribute, piano);
    for (const Fold& fold : m_folds) {
        QStringList lies;
        bool asked = false;
        for (const std::string_view attribute : fold.attributes) {
            const QString answer = row(attribute)->summary();
            const bool here = concerns(attribute, piano);
            asked = asked || here;
            if (here && !answer.isEmpty())
                lies += row(attribute)->choice() ? answer : words::attributeName(attribute) + u' ' + answer;
        }
        fold.bar->setVisible(asked);
        fold.body->setVisible(asked && fold.bar->isChecked());
        fold.bar->setSummary(lies.isEmpty() ? tr("as is customary") : lies.join(QStringLiteral(" · ")));
    }
}

FactRow* WhenKnown::row(std::string_view attribute) const {
    const auto found = m_rows.find(attribute);
    return found == m_rows.end() ? nullptr : found->second;
}

void WhenKnown::forget() {
    for (const auto& [attribute, row] : m_rows)
        row->forget();
}

bool WhenKnown::anyRefused() const {
    return std::ranges::any_of(m_rows, [](const auto& each) { return each.second->isRefused(); });
}

QWidget* WhenKnown::first() const {
    return m_folds.front().bar;
}

} // namespace hammerline
