#include "ui/piano/work_panel.h"

#include "core/operation/operation.h"
#include "ui/widgets/dialogs.h"
#include "ui/words/said.h"
#include "ui/words/words.h"

#include <QKeyEvent>
#include <QLocale>

namespace hammerline {

namespace {

using words::utf8;

constexpr int kAccessKeys = 1000; // keys of the rows of getting there start here

QString minutesText(double minutes) {
    return QLocale().toString(minutes, 'g', 4);
}

/// What a row speaks of, by its key: the attribute's last part.
std::string_view workOf(int row) {
    return row >= kAccessKeys ? key(static_cast<Access>(row - kAccessKeys))
                              : key(OperationId{static_cast<std::uint8_t>(row)});
}

ListRow rowOf(const QString& name, double minutes, bool said, int key) {
    ListRow row;
    row.cells = {RowCell(name), RowCell(minutesText(minutes), said), RowCell()};
    row.key = key;
    return row;
}

ListRow operationRow(const Operation& operation, const Piano& piano) {
    const OperationId id = operation.id;
    ListRow row =
        rowOf(words::partName(id), minutesFor(id, piano), piano.minutes.contains(std::string(key(id))), id.row);
    if (unitOf(id, piano) == AmountUnit::turn) {
        const auto turn = turnOf(id, piano);
        row.cells[2] = RowCell(turn ? WorkPanel::tr("%1 %2").arg(words::positiveName(id, piano), words::turnName(*turn))
                                    : WorkPanel::tr("the trial tells"),
                               (piano.*turnAttribute(id)->said).has_value());
        if (turn) {
            row.cells[2].kind = RowCell::Kind::turn;
            row.cells[2].sign = *turn == Turn::clockwise ? words::Sign::clockwise : words::Sign::anticlockwise;
        }
    }
    row.sentence = operation.common ? WorkPanel::tr("%1, %2 minutes in all").arg(row.cells[0].text, row.cells[1].text)
                                    : WorkPanel::tr("%1, %2 minutes a note").arg(row.cells[0].text, row.cells[1].text);
    if (!row.cells[2].text.isEmpty()) row.sentence += QLatin1String(", ") + row.cells[2].text;
    return row;
}

ListRow headingRow(const QString& title, const QString& remark) {
    ListRow row;
    row.heading = title;
    row.headingRight = remark;
    row.height = 5.75;
    return row;
}

} // namespace

WorkPanel::WorkPanel(Workbench& bench, QWidget* parent)
    : Panel({},
            new RowTable(tr("Work"), {{tr("work"), 0}, {tr("min"), 11, Qt::AlignRight}, {tr("which way round"), 34}},
                         5.75),
            parent)
    , m_bench(bench)
    , m_table(findChild<RowTable*>()) {
    setTitle(tr("Work on this piano"), tr("Enter: minutes  ·  T: turn"));
    connect(m_table, &RowTable::chosen, this, &WorkPanel::askMinutes);
    m_table->setKeys([this](QKeyEvent* event) { return keyPressed(event); });
    setFocusProxy(m_table);
    refresh();
}

void WorkPanel::refresh() {
    std::vector<ListRow> rows;
    if (const Piano* piano = m_bench.piano()) {
        for (const Operation& each : operations())
            if (!each.common && applies(each.id, *piano)) rows.push_back(operationRow(each, *piano));
        rows.insert(rows.begin(), headingRow(tr("Each note"), {}));
        rows.push_back(headingRow(tr("All notes at once"), {}));
        for (const Operation& each : operations())
            if (each.common && applies(each.id, *piano)) rows.push_back(operationRow(each, *piano));
        rows.push_back(headingRow(tr("Getting there and back"), {}));
        for (std::size_t i = 0; i < accessKeys().size(); ++i) {
            const auto access = static_cast<Access>(i);
            const bool said = piano->minutes.contains(std::string(key(access)));
            const double minutes = minutesToReach(access, *piano)[0];
            if (minutes <= 0 && !said) continue;
            rows.push_back(rowOf(words::accessName(access, *piano), minutes, said, kAccessKeys + static_cast<int>(i)));
        }
    }
    m_table->setRows(std::move(rows));
}

bool WorkPanel::keyPressed(QKeyEvent* event) {
    const int row = m_table->currentKey();
    if (row < 0) return false;
    if (event->key() == Qt::Key_T && event->modifiers() == Qt::NoModifier) return turnRound(row), true;
    if (event->key() == Qt::Key_Delete) return takeBack(row), true;
    return false;
}

void WorkPanel::askMinutes(int row) {
    const Piano* piano = m_bench.piano();
    if (!piano || row < 0) return;
    Piano customary = *piano;
    customary.minutes.clear();
    const bool access = row >= kAccessKeys;
    const OperationId id{static_cast<std::uint8_t>(access ? 0 : row)};
    const auto way = static_cast<Access>(access ? row - kAccessKeys : 0);
    const auto minutes = [&](const Piano& of) { return access ? minutesToReach(way, of)[0] : minutesFor(id, of); };
    const QString name = access ? words::accessName(way, *piano) : words::name(id);
    const auto typed = Dialogs::now().ask(
        this, name,
        tr("Minutes of practised hands here (customary %1; empty takes it back):").arg(minutesText(minutes(customary))),
        minutesText(minutes(*piano)));
    if (typed) Q_EMIT said(QStringLiteral("minutes-") + utf8(workOf(row)), typed->trimmed());
}

void WorkPanel::turnRound(int row) {
    const Piano* piano = m_bench.piano();
    if (!piano || row >= kAccessKeys) return;
    const OperationId id{static_cast<std::uint8_t>(row)};
    const TurnAttribute* attribute = turnAttribute(id);
    if (!attribute || unitOf(id, *piano) != AmountUnit::turn) return;
    const bool clockwise = turnOf(id, *piano) == Turn::clockwise;
    const auto customary = customaryTurn(id, *piano);
    const Turn other = clockwise ? Turn::anticlockwise : Turn::clockwise;
    Q_EMIT said(utf8(attribute->name), other == customary ? QString()
                                       : clockwise        ? QStringLiteral("anticlockwise")
                                                          : QStringLiteral("clockwise"));
}

void WorkPanel::takeBack(int row) {
    Q_EMIT said(QStringLiteral("minutes-") + utf8(workOf(row)), {});
    const TurnAttribute* attribute = row < kAccessKeys ? turnAttribute({static_cast<std::uint8_t>(row)}) : nullptr;
    if (attribute) Q_EMIT said(utf8(attribute->name), {});
}

} // namespace hammerline
