#include "ui/stations/survey_job.h"

#include "ui/widgets/dialogs.h"
#include "ui/widgets/look.h"
#include "ui/words/survey_names.h"

#include <QHeaderView>
#include <QKeyEvent>
#include <QTextDocument>

namespace hammerline {

namespace {

enum Column { what, open, hours, state, count };
constexpr int kPart = Qt::UserRole;

QString lineText(const JobLine& line) {
    const auto notes = [](const std::vector<NoteNumber>& list) { return QString::fromStdString(writeNotes(list)); };
    QStringList out;
    if (line.wholePiano && !line.toDo.empty())
        out << SurveyJob::tr("to do");
    else if (!line.toDo.empty())
        out << notes(line.toDo);
    if (!line.watch.empty())
        out << SurveyJob::tr("watch %1").arg(line.wholePiano ? SurveyJob::tr("it") : notes(line.watch));
    if (!line.mended.empty()) out << SurveyJob::tr("%n mended", nullptr, static_cast<int>(line.mended.size()));
    return out.join(QStringLiteral(", "));
}

QString lineState(const JobLine& line) {
    if (line.toDo.empty()) return line.mended.empty() ? SurveyJob::tr("watch") : words::workStateName(WorkState::done);
    if (line.specialist) return SurveyJob::tr("refer to a specialist");
    if (line.waits) return SurveyJob::tr("waits for parts");
    return line.first ? SurveyJob::tr("mend first") : words::workStateName(WorkState::open);
}

} // namespace

SurveyJob::SurveyJob(Workbench& bench, QWidget* parent) : QTreeWidget(parent), m_bench(bench) {
    setObjectName(QStringLiteral("job"));
    setAccessibleName(tr("Order of the whole job"));
    setColumnCount(Column::count);
    setHeaderLabels({tr("in this order"), tr("what is open"), tr("time"), tr("state")});
    setRootIsDecorated(false);
    setItemsExpandable(false);
    setIndentation(u(4));
    setUniformRowHeights(true);
    setAllColumnsShowFocus(true);
    setFrameShape(NoFrame);
    setFont(face(Text::body));
    header()->setFont(face(Text::label));
    header()->setStretchLastSection(false);
    header()->setSectionResizeMode(QHeaderView::ResizeToContents);
    header()->setSectionResizeMode(Column::open, QHeaderView::Stretch);
    headerItem()->setTextAlignment(Column::hours, Qt::AlignRight | Qt::AlignVCenter);
    const auto changed = [this] {
        m_old = true;
        if (isVisible()) refresh();
    };
    connect(&m_bench, &Workbench::recordChanged, this, changed);
    connect(&m_bench, &Workbench::pianoChanged, this, changed);
}

void SurveyJob::showEvent(QShowEvent* event) {
    QTreeWidget::showEvent(event);
    if (m_old) refresh();
}

void SurveyJob::addStep(int number, const WorkOrderStep& step) {
    const auto fill = [](QTreeWidgetItem* item, const QStringList& texts, bool strong) {
        for (int column = 0; column < Column::count; ++column) {
            item->setText(column, texts.value(column));
            item->setToolTip(column, Qt::convertFromPlainText(texts.value(column), Qt::WhiteSpaceNormal));
            item->setFont(column, face(strong ? Text::body : Text::label, strong && column == Column::what));
        }
        item->setTextAlignment(Column::hours, Qt::AlignRight | Qt::AlignVCenter);
        // as wide as its words: the column takes its width from here
        const int words = QFontMetrics(item->font(0)).horizontalAdvance(item->text(0));
        item->setSizeHint(0, QSize(words + u(6), u(5.5)));
    };
    const auto time = [](double minutes) { return minutes > 0 ? words::hours(minutes) : QString(); };
    auto* item = new QTreeWidgetItem(this);
    fill(item,
         {tr("%1  %2").arg(number).arg(words::workStepName(step.id)), words::workStepText(step), time(step.minutesOpen),
          words::workStateName(step.state)},
         true);
    for (const JobLine& line : step.lines) {
        auto* child = new QTreeWidgetItem(item);
        fill(child, {words::partOfActionName(line.part), lineText(line), time(line.minutesOpen), lineState(line)},
             false);
        child->setData(0, kPart, QString::fromUtf8(line.part.data(), qsizetype(line.part.size())));
    }
    item->setExpanded(true);
}

void SurveyJob::refresh() {
    m_old = false;
    const QString part = currentPart();
    clear();
    m_order = {};
    if (!m_bench.record()) return;
    m_order = workOrder(*m_bench.record());
    int number = 0;
    for (const WorkOrderStep& step : m_order.steps)
        addStep(++number, step);
    for (QTreeWidgetItemIterator it(this); *it; ++it)
        if (!part.isEmpty() && (*it)->data(0, kPart).toString() == part) setCurrentItem(*it);
    if (!currentItem() && topLevelItemCount() > 0) setCurrentItem(topLevelItem(0));
}

QString SurveyJob::currentPart() const {
    return currentItem() ? currentItem()->data(0, kPart).toString() : QString();
}

void SurveyJob::askMinutes() {
    const QString key = currentPart();
    const Part* part = findPart(key.toStdString());
    if (!part) return;
    const JobTerms terms = jobTerms(m_bench.record()->preferences);
    const auto own = terms.minutes.find(std::string(part->key));
    const double now = own != terms.minutes.end() ? own->second : part->minutes[static_cast<std::size_t>(terms.hand)];
    const auto typed = Dialogs::now().ask(this, tr("Minutes"),
                                          tr("%1: minutes each that are usual with you (customary: %2)")
                                              .arg(words::partOfActionName(part->key))
                                              .arg(part->minutes[0]),
                                          QString::number(now));
    if (!typed) return;
    const auto term = parseTerm("minutes." + std::string(part->key) + '=' + typed->trimmed().toStdString());
    if (!term)
        Q_EMIT refused(
            {RefusalCode::usage, {}, tr("\"%1\" is no number of minutes (0 to 6000).").arg(*typed).toStdString(), {}});
    else if (const auto set = m_bench.setPreference(term->first, term->second); !set)
        Q_EMIT refused(set.error());
}

void SurveyJob::keyPressEvent(QKeyEvent* event) {
    const bool enter = event->key() == Qt::Key_Return || event->key() == Qt::Key_Enter || event->key() == Qt::Key_F2;
    if (enter && !currentPart().isEmpty())
        askMinutes();
    else
        QTreeWidget::keyPressEvent(event);
}

} // namespace hammerline
