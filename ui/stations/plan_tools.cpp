#include "ui/stations/plan_tools.h"

#include "ui/stations/station_words.h"

#include <QComboBox>
#include <QHBoxLayout>
#include <QPushButton>

namespace hammerline {

PlanTools::PlanTools(QWidget* parent) : QWidget(parent) {
    auto* row = new QHBoxLayout(this);
    row->setContentsMargins(0, 0, 0, 0);
    m_stage = choice(tr("Stage"), {tr("Trial notes first"), tr("Section by section"), tr("The whole piano")});
    m_stage->setCurrentIndex(2);
    m_intent = choice(tr("Aim"), {tr("What is out, least work"), tr("Everything to the aim")});
    m_float = choice(tr("May float"), {tr("Dip floats"), tr("Blow floats"), tr("Aftertouch floats")});
    m_float->setCurrentIndex(2);
    m_minutes = choice(tr("Time"), {tr("All the time"), tr("1 hour"), tr("2 hours"), tr("4 hours"), tr("8 hours")});
    auto* print = new QPushButton(tr("Print list"), this);
    print->setMinimumHeight(u(7.5));
    connect(print, &QPushButton::clicked, this, &PlanTools::printAsked);
    row->addWidget(print);
}

QComboBox* PlanTools::choice(const QString& name, const QStringList& items) {
    QComboBox* box = makeChoice(name, this);
    box->addItems(items);
    layout()->addWidget(box);
    connect(box, qOverload<int>(&QComboBox::activated), this, &PlanTools::chosen);
    return box;
}

PlanOptions PlanTools::options() const {
    PlanOptions options;
    options.stage = static_cast<Stage>(std::max(0, m_stage->currentIndex()));
    options.intent = static_cast<Intent>(std::max(0, m_intent->currentIndex()));
    options.floating = static_cast<Float>(std::max(0, m_float->currentIndex()));
    constexpr std::array kHours = {0, 1, 2, 4, 8};
    if (const int i = m_minutes->currentIndex(); i > 0) options.minutes = 60.0 * kHours.at(static_cast<std::size_t>(i));
    return options;
}

} // namespace hammerline
