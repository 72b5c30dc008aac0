#include "ui/stations/survey_pages.h"

#include "ui/stations/survey_job.h"
#include "ui/stations/survey_memory.h"
#include "ui/stations/survey_orders.h"
#include "ui/stations/survey_symptoms.h"
#include "ui/widgets/look.h"

#include <QHBoxLayout>
#include <QLabel>
#include <QPushButton>
#include <QStackedWidget>
#include <QVBoxLayout>

namespace hammerline {

std::pair<QWidget*, QHBoxLayout*> headBar(QWidget* parent) {
    auto* bar = new QWidget(parent);
    bar->setAutoFillBackground(true);
    bar->setBackgroundRole(QPalette::Window); // whatever the panel it stands in fills itself with
    QPalette palette = bar->palette();
    palette.setColor(QPalette::Window, ink(lookOf(*parent).head));
    bar->setPalette(palette);
    bar->setFixedHeight(u(7));
    auto* row = new QHBoxLayout(bar);
    row->setContentsMargins(u(3), 0, u(3), 0);
    return {bar, row};
}

QWidget* titleBar(QWidget* parent, const QString& title, QLabel* remark) {
    const auto [bar, row] = headBar(parent);
    row->setSpacing(u(3));
    auto* label = new QLabel(title, bar);
    label->setFont(face(Text::body, true));
    row->addWidget(label);
    remark->setFont(face(Text::label));
    row->addWidget(remark);
    row->addStretch(1);
    return bar;
}

SurveyPages::SurveyPages(Workbench& bench, QWidget* parent)
    : QWidget(parent)
    , m_orders(new SurveyOrders(bench, this))
    , m_job(new SurveyJob(bench, this))
    , m_symptoms(new SurveySymptoms(bench, this))
    , m_memory(new SurveyMemory(bench, this))
    , m_stack(new QStackedWidget(this)) {
    m_stack->setContentsMargins(u(2), 0, u(2), 0); // under the title above it
    m_stack->addWidget(m_orders);
    m_stack->addWidget(m_job);
    m_stack->addWidget(m_symptoms);
    m_stack->addWidget(m_memory);
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(0);
    column->addWidget(makeBar());
    column->addWidget(m_stack, 1);
    connect(m_orders, &SurveyOrders::refused, this, &SurveyPages::refused);
    connect(m_job, &SurveyJob::refused, this, &SurveyPages::refused);
    connect(m_symptoms, &SurveySymptoms::refused, this, &SurveyPages::refused);
    connect(m_memory, &SurveyMemory::refused, this, &SurveyPages::refused);
    showPage(Page::orders);
}

QWidget* SurveyPages::makeBar() {
    const auto [bar, row] = headBar(this);
    row->setSpacing(u(1));
    const std::array names = {tr("Parts to order"), tr("The whole job"), tr("Symptoms"), tr("Photographs")};
    for (std::size_t i = 0; i < names.size(); ++i) {
        auto* button = new QPushButton(names.at(i), bar);
        button->setFlat(true);
        button->setCheckable(true);
        button->setAutoExclusive(true);
        button->setFont(face(Text::body));
        button->setFixedHeight(u(6));
        button->setFocusPolicy(Qt::NoFocus);
        button->setToolTip(tr("Ctrl PgUp, PgDn"));
        connect(button, &QPushButton::clicked, this, [this, i] { showPage(static_cast<Page>(i)); });
        m_buttons.at(i) = button;
        row->addWidget(button);
    }
    row->addStretch(1);
    return bar;
}

SurveyPages::Page SurveyPages::page() const {
    return static_cast<Page>(m_stack->currentIndex());
}

QWidget* SurveyPages::front() const {
    return m_stack->currentWidget();
}

void SurveyPages::showPage(Page page) {
    const auto at = static_cast<std::size_t>(page);
    m_stack->setCurrentIndex(static_cast<int>(at));
    for (std::size_t i = 0; i < m_buttons.size(); ++i) {
        m_buttons.at(i)->setChecked(i == at);
        m_buttons.at(i)->setFont(face(Text::body, i == at));
    }
    if (page == Page::memory) m_memory->refresh();
    Q_EMIT pageChanged();
}

void SurveyPages::step(int by) {
    showPage(static_cast<Page>((m_stack->currentIndex() + by + m_stack->count()) % m_stack->count()));
    if (page() == Page::symptoms)
        m_symptoms->takeFocus();
    else if (page() == Page::memory)
        m_memory->takeFocus();
    else
        front()->setFocus();
}

} // namespace hammerline
