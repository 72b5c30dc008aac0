#include "ui/questions/questions_page.h"

#include <QKeyEvent>
#include <QScrollArea>
#include <QVBoxLayout>

#include <algorithm>

namespace hammerline {

QuestionsPage::QuestionsPage(Workbench& bench, QWidget* parent)
    : Panel({}, new QScrollArea, parent), m_bench(bench), m_scroll(findChild<QScrollArea*>()) {
    m_scroll->setFocusPolicy(Qt::NoFocus);
    m_scroll->setWidgetResizable(true);
    m_scroll->setFrameShape(QFrame::NoFrame);
    m_scroll->setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    auto* list = new QWidget;
    list->setBackgroundRole(QPalette::Base);
    list->setAutoFillBackground(true);
    m_column = new QVBoxLayout(list);
    m_column->setContentsMargins(0, 0, 0, 0);
    m_column->setSpacing(0);
    m_column->addStretch(1);
    m_scroll->setWidget(list);
    say();
}

void QuestionsPage::add(std::string_view question) {
    auto* row = new QuestionRow(m_bench, question, m_scroll->widget());
    m_column->insertWidget(m_column->count() - 1, row);
    row->show(); // now, and not by the next turn of the events: the first of them takes the hand
    m_rows.push_back(row);
    connect(row, &QuestionRow::step, this, [this, row](int by) { step(row, by); });
}

void QuestionsPage::clear() {
    for (QuestionRow* each : m_rows)
        delete each;
    m_rows.clear();
    m_piano = m_bench.record() ? m_bench.record()->uuid : std::string();
}

void QuestionsPage::begin(const std::vector<std::string_view>& open) {
    clear();
    for (const std::string_view each : open)
        add(each);
    say();
    setFocusProxy(m_rows.empty() ? nullptr : m_rows.front());
    setFocus(Qt::OtherFocusReason);
}

void QuestionsPage::show(const std::vector<std::string_view>& open) {
    const bool another = !m_bench.record() || m_bench.record()->uuid != m_piano;
    if (another) clear(); // what was answered there says nothing of this piano
    for (QuestionRow* row : m_rows)
        row->setOpen(std::ranges::find(open, row->question()) != open.end());
    for (const std::string_view each : open) {
        const auto isIt = [each](const QuestionRow* row) { return row->question() == each; };
        if (std::ranges::none_of(m_rows, isIt)) add(each);
    }
    say();
}

int QuestionsPage::openCount() const {
    return static_cast<int>(std::ranges::count_if(m_rows, &QuestionRow::isOpen));
}

void QuestionsPage::say() {
    const int open = openCount(), all = static_cast<int>(m_rows.size());
    setTitle(tr("Before a screw is turned"),
             open == 0 ? tr("all answered: Esc goes on with the work")
                       : tr("%1 of %2 answered · Y in order, N not, L not yet").arg(all - open).arg(all));
}

void QuestionsPage::step(const QuestionRow* from, int by) {
    const auto at = std::ranges::find(m_rows, from) - m_rows.begin() + by;
    if (at >= static_cast<std::ptrdiff_t>(m_rows.size())) return Q_EMIT left();
    QuestionRow* to = m_rows[static_cast<std::size_t>(std::max<std::ptrdiff_t>(at, 0))];
    to->setFocus(Qt::OtherFocusReason);
    m_scroll->ensureWidgetVisible(to);
}

void QuestionsPage::keyPressEvent(QKeyEvent* event) {
    if (event->key() == Qt::Key_Escape) return Q_EMIT left();
    Panel::keyPressEvent(event);
}

} // namespace hammerline
