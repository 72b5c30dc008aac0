#include "ui/stations/survey_orders.h"

#include "ui/widgets/dialogs.h"
#include "ui/widgets/look.h"
#include "ui/words/size_names.h"
#include "ui/words/survey_names.h"

#include <QHeaderView>
#include <QKeyEvent>
#include <QPainter>

#include <algorithm>

namespace hammerline {

namespace {
enum Column { part, found, choice, needed, spare, order, inHand, count };

QString joined(QStringList texts) {
    texts.removeAll(QString());
    return texts.join(QLatin1Char('\n'));
}
} // namespace

SurveyOrders::SurveyOrders(Workbench& bench, QWidget* parent) : QTreeWidget(parent), m_bench(bench) {
    setObjectName(QStringLiteral("orders"));
    setAccessibleName(tr("Parts to order"));
    setColumnCount(Column::count);
    setHeaderLabels({tr("part"), tr("found"), tr("whole set"), tr("needed"), tr("spare"), tr("order"), tr("in hand")});
    setRootIsDecorated(false);
    setUniformRowHeights(true);
    setAllColumnsShowFocus(true);
    setFrameShape(NoFrame);
    setFont(face(Text::body));
    header()->setFont(face(Text::label));
    header()->setStretchLastSection(false);
    header()->setMinimumSectionSize(u(15)); // a head keeps its distance from the next
    header()->setSectionResizeMode(QHeaderView::ResizeToContents);
    header()->setSectionResizeMode(Column::part, QHeaderView::Stretch);
    for (const int column : {needed, spare, order, inHand})
        headerItem()->setTextAlignment(column, Qt::AlignRight | Qt::AlignVCenter);
    connect(this, &QTreeWidget::itemClicked, this, [this](QTreeWidgetItem* item, int column) {
        if (column == Column::choice) toggle(indexOfTopLevelItem(item));
        if (column == Column::inHand) toggleInHand(indexOfTopLevelItem(item));
    });
    connect(&m_bench, &Workbench::recordChanged, this, &SurveyOrders::refresh);
    connect(&m_bench, &Workbench::pianoChanged, this, &SurveyOrders::refresh);
    refresh();
}

/// A set is in question where it is taken whole, or was declined.
bool SurveyOrders::inQuestion(const PartsLine& line) const {
    if (line.wholeSet) return true;
    const JobTerms terms = jobTerms(m_bench.record()->preferences);
    const auto& only = terms.spares.onlyThese;
    return std::find(only.begin(), only.end(), line.from) != only.end();
}

void SurveyOrders::refresh() {
    const int at = currentItem() ? indexOfTopLevelItem(currentItem()) : 0;
    clear();
    m_lines.clear();
    if (!m_bench.record()) return;
    const JobTerms terms = jobTerms(m_bench.record()->preferences);
    m_lines = partsList(m_bench.record()->findings, *m_bench.piano(), terms.spares);
    for (const PartsLine& line : m_lines) {
        auto* item = new QTreeWidgetItem(this);
        const QString name = words::supplyName(line.part);
        const QString size = joined({words::supplySize(line), words::measuredText(line)});
        item->setText(Column::part, line.measured.empty() ? name : tr("%1: %2").arg(name, words::measuredText(line)));
        item->setToolTip(Column::part, joined({size.isEmpty() ? name : tr("%1: %2").arg(name, size),
                                               line.measured.empty() ? words::orderedBy(line) : QString()}));
        item->setText(Column::found, words::foundText(line));
        if (line.with.empty() && inQuestion(line))
            item->setText(Column::choice, line.wholeSet ? tr("whole set") : tr("only these"));
        item->setText(Column::needed, words::supplyQuantity(line, line.needed));
        item->setText(Column::spare, line.spare ? words::supplyQuantity(line, line.spare) : QString());
        item->setText(Column::order, words::supplyQuantity(line, line.quantity));
        if (terms.ordered.contains(line.part)) item->setText(Column::inHand, tr("ordered"));
        if (terms.inHand.contains(line.part)) item->setText(Column::inHand, tr("yes"));
        item->setFont(Column::part, face(Text::body, line.with.empty()));
        item->setFont(Column::order, face(Text::body, true));
        for (const int column : {needed, spare, order, inHand})
            item->setTextAlignment(column, Qt::AlignRight | Qt::AlignVCenter);
        item->setSizeHint(0, QSize(0, u(6)));
    }
    if (at < topLevelItemCount()) setCurrentItem(topLevelItem(at));
}

void SurveyOrders::paintEvent(QPaintEvent* event) {
    QTreeWidget::paintEvent(event);
    if (topLevelItemCount() > 0) return;
    QPainter painter(viewport());
    painter.setPen(ink(lookOf(*this).ink2));
    painter.drawText(viewport()->rect().adjusted(u(0.5), u(2), -u(3), 0), Qt::TextWordWrap,
                     tr("Nothing to order. A finding that replaces a part puts it here."));
}

void SurveyOrders::toggle(int index) {
    if (index < 0 || index >= static_cast<int>(m_lines.size())) return;
    const PartsLine line = m_lines[static_cast<std::size_t>(index)];
    if (!inQuestion(line)) return;
    const auto set = m_bench.setPreference("only-these." + line.from, line.wholeSet ? "yes" : "no");
    if (!set) Q_EMIT refused(set.error());
}

void SurveyOrders::toggleInHand(int index) {
    if (index < 0 || index >= static_cast<int>(m_lines.size())) return;
    const std::string part = m_lines[static_cast<std::size_t>(index)].part;
    const JobTerms terms = jobTerms(m_bench.record()->preferences);
    const bool ordered = terms.ordered.contains(part), inHand = terms.inHand.contains(part);
    const std::string why(whyNotOrdered(part, m_lines));
    const bool mayBeOrdered = why.empty();
    const bool orders = !ordered && !inHand && mayBeOrdered;
    const auto first = m_bench.setPreference("ordered." + part, orders ? "yes" : "no");
    if (!first) return Q_EMIT refused(first.error());
    const auto set = m_bench.setPreference("in-hand." + part, !orders && !inHand ? "yes" : "no");
    if (!set) return Q_EMIT refused(set.error());
    const bool passedOver = !mayBeOrdered && !ordered && !inHand;
    if (passedOver) Q_EMIT refused({RefusalCode::usage, {}, words::notOrderedSentence(part, why).toStdString(), {}});
}

void SurveyOrders::askSizes(int index) {
    if (index < 0 || index >= static_cast<int>(m_lines.size())) return;
    const PartsLine line = m_lines[static_cast<std::size_t>(index)];
    if (!line.bySize) return Q_EMIT refused({RefusalCode::usage, {}, words::sizeUsage(line.part).toStdString(), {}});
    QStringList fields;
    for (const SizeField& each : sizeRow(line.part)->fields)
        fields << QString::fromUtf8(each.key.data(), qsizetype(each.key.size()));
    const auto typed = Dialogs::now().ask(
        this, tr("Sizes of %1").arg(words::supplyName(line.part)),
        tr("%1\nWhat an old one measures, in mm or with the unit's sign: %2. Of some notes: 1-12 %3 11.")
            .arg(words::sizeHow(line.part), fields.join(tr(", ")), fields.front()));
    if (!typed || typed->trimmed().isEmpty()) return;
    std::vector<PartSize> sizes;
    for (const QString& each : typed->split(QLatin1Char(','), Qt::SkipEmptyParts)) {
        QStringList said = each.simplified().split(QLatin1Char(' '));
        const bool ofNotes = said.size() > 2 && said.front().front().isDigit();
        const QString where = ofNotes ? QLatin1Char('@') + said.takeFirst() : QString();
        const std::string name = line.part + '.' + said.takeFirst().toStdString() + where.toStdString();
        const auto size = parseSize(name, said.join(QLatin1Char(' ')).toStdString());
        if (!size) return Q_EMIT refused({RefusalCode::usage, {}, words::sizeUsage(line.part).toStdString(), {}});
        sizes.push_back(*size);
    }
    for (const PartSize& each : sizes) {
        if (const auto set = m_bench.setPreference("size." + sizeName(each), each.value); !set)
            return Q_EMIT refused(set.error());
        if (sizeIsOdd(each)) Q_EMIT refused({RefusalCode::usage, {}, words::oddSizeSentence(each).toStdString(), {}});
    }
}

/// "5 %" is a share, "2" a least number; both hold for the whole order.
void SurveyOrders::askSpares() {
    if (!m_bench.record()) return;
    const Spares now = jobTerms(m_bench.record()->preferences).spares;
    const auto typed = Dialogs::now().ask(
        this, tr("Spares"),
        tr("A share (5 %) or a least number of each (2). Now %1 %, at least %2.").arg(now.percent).arg(now.atLeast));
    if (!typed || typed->trimmed().isEmpty()) return;
    QString text = typed->trimmed();
    const bool share = text.endsWith(QLatin1Char('%'));
    if (share) text = text.chopped(1).trimmed();
    const auto term = parseTerm((share ? "spare-percent=" : "spare-at-least=") + text.toStdString());
    if (!term)
        Q_EMIT refused(
            {RefusalCode::usage, {}, tr("\"%1\" is no share and no number (0 to 100).").arg(*typed).toStdString(), {}});
    else if (const auto set = m_bench.setPreference(term->first, term->second); !set)
        Q_EMIT refused(set.error());
}

/// "9.5 x 28": a piece as measured on the old one; it holds for this piano.
void SurveyOrders::askPiece(PartsLine line) {
    const auto typed =
        Dialogs::now().ask(this, tr("Size of a piece"),
                           tr("Width x length in mm, measured on an old piece. Now %1.").arg(words::supplySize(line)));
    if (!typed || typed->trimmed().isEmpty()) return;
    QString size = typed->toLower().remove(QLatin1Char(' '));
    size.replace(QChar(0x00D7), QLatin1Char('x'));
    const auto term = parseTerm("piece." + line.with + '=' + size.toStdString());
    if (!term)
        Q_EMIT refused({RefusalCode::usage,
                        {},
                        tr("\"%1\" is no size of a piece: width x length in mm, 1 to 200 each, such as 10 x 30.")
                            .arg(*typed)
                            .toStdString(),
                        {}});
    else if (const auto set = m_bench.setPreference(term->first, term->second); !set)
        Q_EMIT refused(set.error());
}

void SurveyOrders::keyPressEvent(QKeyEvent* event) {
    const int line = currentItem() ? indexOfTopLevelItem(currentItem()) : -1;
    switch (event->key()) {
    case Qt::Key_Space:
        return toggle(line);
    case Qt::Key_H:
        return toggleInHand(line);
    case Qt::Key_S:
        return askSizes(line);
    case Qt::Key_F2:
    case Qt::Key_Return:
    case Qt::Key_Enter:
        if (line >= 0 && m_lines[static_cast<std::size_t>(line)].unit == "cm2")
            return askPiece(m_lines[static_cast<std::size_t>(line)]);
        return askSpares();
    default:
        QTreeWidget::keyPressEvent(event);
    }
}

} // namespace hammerline
