#include "ui/stations/measure_station.h"

#include "ui/stations/measure_acts.h"
#include "ui/stations/measure_editor.h"
#include "ui/stations/measure_intake.h"
#include "ui/stations/measure_paste.h"
#include "ui/stations/measure_references.h"
#include "ui/stations/measure_view.h"
#include "ui/stations/station_words.h"
#include "ui/stations/stations.h"
#include "ui/widgets/dialogs.h"
#include "ui/widgets/empty_state.h"
#include "ui/widgets/key_button.h"
#include "ui/widgets/look.h"
#include "ui/words/words.h"

#include <QAbstractItemView>
#include <QComboBox>
#include <QCoreApplication>
#include <QHBoxLayout>
#include <QKeyEvent>
#include <QLabel>
#include <QScopeGuard>
#include <QVBoxLayout>

namespace hammerline {

MeasureStation::MeasureStation(Workbench& workbench) : Station(workbench) {
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(0);
    m_empty = new EmptyState(tr("No piano yet. Ctrl+N enters one."), this);
    m_view = new MeasureView(bench(), this);
    m_references = new ReferenceBand(bench(), this);
    column->addWidget(m_empty, 1);
    column->addWidget(m_references);
    column->addWidget(m_view, 1);
    buildTools();
    connect(m_view, &MeasureView::refused, this,
            [this](const Refusal& refusal) { Q_EMIT notice(words::sentence(refusal)); });
    connect(m_view, &MeasureView::pasted, this, &MeasureStation::paste);
    connect(m_view, &MeasureView::undoAsked, this, &MeasureStation::undoAsked);
    connect(m_view, &MeasureView::redoAsked, this, &MeasureStation::redoAsked);
    connect(m_view, &MeasureView::howToAsked, this, &MeasureStation::howToAsked);
    connect(m_view, &MeasureView::editingChanged, this, &Station::wordsChanged);
    connect(&bench(), &Workbench::dimensionChanged, this, [this] {
        refreshUnits();
        Q_EMIT wordsChanged();
    });
    connect(&bench(), &Workbench::pianoChanged, this, &MeasureStation::refreshEmpty);
    connect(&bench(), &Workbench::recordChanged, this, &MeasureStation::refreshUnits);
    for (const auto signal : {&Workbench::pianoChanged, &Workbench::recordChanged})
        connect(&bench(), signal, this, &MeasureStation::followOrder);
    for (const auto signal :
         {&Workbench::pianoChanged, &Workbench::recordChanged, &Workbench::passChanged, &Workbench::dimensionChanged})
        connect(&bench(), signal, m_references, &ReferenceBand::refresh);
    connect(m_references, &ReferenceBand::refused, m_view, &MeasureView::refused);
    connect(m_references, &ReferenceBand::chosen, this, [this] { m_view->setFocus(); });
    followOrder();
    refreshEmpty();
    refreshUnits();
    m_references->refresh();
}

void MeasureStation::buildTools() {
    m_tools = new QWidget(this);
    auto* row = new QHBoxLayout(m_tools);
    row->setContentsMargins(0, 0, 0, 0);
    row->setSpacing(u(2.5));
    const auto labelled = [&](const QString& text, QWidget* field) {
        auto* label = new QLabel(text, m_tools);
        label->setFont(face(Text::body));
        label->setBuddy(field);
        field->setFont(face(Text::body));
        field->setFixedHeight(u(7.5));
        row->addWidget(label);
        row->addWidget(field);
        row->addSpacing(u(1));
    };
    m_order = new QComboBox(m_tools);
    m_order->setObjectName(QStringLiteral("entryOrder"));
    m_order->setAccessibleName(tr("Order of entry"));
    m_order->setFocusPolicy(Qt::ClickFocus);
    for (int i = 0; i < static_cast<int>(entryOrderIds().size()); ++i)
        m_order->addItem(entryOrderName(static_cast<EntryOrder::Kind>(i)));
    labelled(tr("&Order"), m_order);
    m_unit = new QComboBox(m_tools);
    m_unit->setAccessibleName(tr("Unit of a bare number"));
    m_unit->setFocusPolicy(Qt::ClickFocus);
    labelled(tr("&Unit"), m_unit);
    auto* benchButton = new KeyButton(tr("Bench entry"), QStringLiteral("F11"), m_tools);
    benchButton->setFocusPolicy(Qt::TabFocus);
    row->addWidget(benchButton);
    connect(benchButton, &QAbstractButton::clicked, this, &MeasureStation::benchAsked);
    m_order->installEventFilter(this);
    m_unit->installEventFilter(this);
    connect(m_order, &QComboBox::activated, this, &MeasureStation::chooseOrder);
    connect(m_unit, &QComboBox::activated, this, [this](int i) {
        const auto unit = static_cast<Unit>(m_unit->itemData(i).toInt());
        if (const auto set = bench().setUnit(bench().dimension(), unit); !set)
            Q_EMIT notice(words::sentence(set.error()));
        m_view->setFocus();
    });
}

const EntryOrder& MeasureStation::order() const {
    return m_view->order();
}

void MeasureStation::setOrder(const EntryOrder& order) {
    m_view->setOrder(order);
    showOrder();
}

void MeasureStation::showOrder() {
    for (int i = 0; i < m_order->count(); ++i)
        m_order->setItemText(i, entryOrderName(static_cast<EntryOrder::Kind>(i)));
    const int now = static_cast<int>(m_view->order().kind);
    if (m_view->order().across) m_order->setItemText(now, entryOrderName(m_view->order())); // F4 is seen where it acts
    m_order->setCurrentIndex(now);
}

/// The order belongs to the piano, and another window or an undo may change it.
void MeasureStation::followOrder() {
    const EntryOrder kept = entryOrderOf(bench().record());
    if (kept == m_view->order()) return showOrder();
    setOrder(kept);
    Q_EMIT orderChosen(kept);
}

void MeasureStation::keep(const EntryOrder& order) {
    setOrder(order); // also where the book cannot be written
    if (const auto kept = keepEntryOrder(bench(), order); !kept) Q_EMIT notice(words::sentence(kept.error()));
    Q_EMIT orderChosen(order);
}

/// A choice keeps the focus while it is open; digits typed at a closed one are readings.
bool MeasureStation::eventFilter(QObject* watched, QEvent* event) {
    const auto* choice = qobject_cast<QComboBox*>(watched);
    if (event->type() != QEvent::KeyPress || !choice || choice->view()->isVisible()) return false;
    auto* key = static_cast<QKeyEvent*>(event);
    const bool digit = key->text().size() == 1 && QStringLiteral("0123456789.,<>~+-").contains(key->text());
    if (!digit || !bench().piano()) return false;
    m_view->setFocus();
    QCoreApplication::sendEvent(m_view, key);
    return true;
}

void MeasureStation::chooseOrder(int index) {
    EntryOrder order = m_view->order();
    const auto typingGoesOn = qScopeGuard([this] { m_view->setFocus(); }); // also where the question was left
    const auto kind = static_cast<EntryOrder::Kind>(index);
    if (kind == EntryOrder::Kind::everyNth) {
        const auto typed =
            Dialogs::now().ask(this, tr("Order of entry"), tr("Every how many notes?"), QString::number(order.every));
        const int every = typed ? typed->toInt() : 0;
        if (every < 1) return showOrder();
        order.every = every;
    }
    if (kind == EntryOrder::Kind::ownList && bench().piano()) {
        const auto typed =
            Dialogs::now().ask(this, tr("Order of entry"), tr("Which notes? For instance: 1, 8, 15-20, bass"),
                               QString::fromStdString(writeNotes(order.listed)));
        if (!typed) return showOrder();
        const auto notes = parseNotes(typed->toStdString(), *bench().piano());
        if (!notes) {
            Q_EMIT notice(words::sentence(notes.error()));
            return showOrder();
        }
        order.listed = *notes;
    }
    order.kind = kind;
    keep(order);
}

void MeasureStation::stepOrder(int by) {
    const int count = static_cast<int>(entryOrderIds().size());
    chooseOrder((static_cast<int>(m_view->order().kind) + by + count) % count);
}

void MeasureStation::setAcross(bool on) {
    EntryOrder order = m_view->order();
    order.across = on;
    keep(order);
}

void MeasureStation::refreshUnits() {
    if (!bench().piano()) return;
    const DimensionId dimension = bench().dimension();
    const std::pair now{row(dimension).kind, bench().unitOf(dimension)};
    if (now == m_unitsShown) return; // asked at every reading
    m_unitsShown = now;
    m_unit->clear();
    for (const Unit unit : unitsOf(row(dimension).kind)) {
        m_unit->addItem(words::unitName(unit), static_cast<int>(unit));
        if (unit == bench().unitOf(dimension)) m_unit->setCurrentIndex(m_unit->count() - 1);
    }
}

void MeasureStation::refreshEmpty() {
    m_empty->setVisible(!bench().piano());
    m_view->setVisible(bench().piano() != nullptr);
    m_tools->setEnabled(bench().piano() != nullptr);
}

QString MeasureStation::context() const {
    if (!bench().piano()) return {};
    const Pass* pass = bench().pass();
    if (!pass) return tr("No pass yet: the first reading begins it");
    QStringList said{tr("Pass %1").arg(pass->number)};
    if (!pass->label.empty()) said << QString::fromStdString(pass->label).toHtmlEscaped();
    for (const QString& each : words::passConditions(*pass, *bench().piano()))
        said << each.toHtmlEscaped();
    if (pass->climate)
        said
            << tr("%1 \u00B0C, %2 % RH").arg(pass->climate->celsius, 0, 'f', 1).arg(pass->climate->humidity, 0, 'f', 0);
    return said.join(QStringLiteral(" &nbsp;\u00B7&nbsp; "));
}

QList<KeyHint> MeasureStation::hints() const {
    if (!bench().piano())
        return {{QStringLiteral("Ctrl N"), tr("new piano")}, {QStringLiteral("Ctrl O"), tr("open a bench book")}};
    if (const ReadingEditor* field = m_view->editor()) {
        QList<KeyHint> keys{{tr("Enter"), tr("store, next")},
                            {tr("Shift Enter"), tr("store, back")},
                            {tr("Esc"), tr("leave the cell as it was")},
                            {QStringLiteral("Ctrl Z"), tr("take back")}};
        if (field->asking()) keys.prepend({QStringLiteral("F9"), tr("take it as typed")});
        return keys;
    }
    QList<KeyHint> keys{{tr("Enter"), tr("next")},
                        {tr("Shift Enter"), tr("back")},
                        {QStringLiteral("*"), tr("same as above")},
                        {QStringLiteral("R"), tr("repeat")},
                        {tr("Del"), tr("take back")},
                        {QStringLiteral("H"), tr("how to measure")}};
    for (const WordKey& key : wordKeys()) {
        const auto meant = wordFor(key.key, bench().cell());
        if (meant == key.word) keys << KeyHint{QString(QChar(static_cast<char16_t>(key.key))), words::name(key.word)};
    }
    keys << KeyHint{QStringLiteral("N"), tr("not fitted")} << KeyHint{QStringLiteral("Y"), tr("note is right")}
         << KeyHint{QStringLiteral("F1"), tr("all keys")};
    return keys;
}

QString MeasureStation::hintRemark() const {
    return tr("nothing typed is ever lost");
}

void MeasureStation::arrive() {
    if (bench().piano())
        m_view->setFocus();
    else
        setFocus();
}

bool MeasureStation::leave() {
    return m_view->commitEditor();
}

void MeasureStation::stepDimension(int by) {
    if (m_view->commitEditor()) Station::stepDimension(by);
}

QList<QWidget*> MeasureStation::panels() {
    return {m_view};
}

void MeasureStation::paste(const QString& text) {
    if (!bench().piano() || !m_view->commitEditor()) return;
    const QByteArray bytes = text.toUtf8();
    std::unique_ptr<IntakeDialog> preview;
    std::vector<DimensionId> columns;
    for (int c = 0; c < m_view->readings().columnCount(); ++c)
        columns.push_back(m_view->readings().dimensionAt(c));
    if (isBareBlock(text))
        preview = std::make_unique<IntakeDialog>(bench(), layDown(bench(), text, bench().cell(), columns), this);
    else
        preview = std::make_unique<IntakeDialog>(bench(), bytes, QString(), this);
    if (!Dialogs::now().run(*preview)) return;
    const Intake taken = preview->taken();
    std::vector<NewReading> readings;
    bool named = !taken.notFitted.empty();
    for (const Sound& sound : taken.sound) {
        readings.push_back({sound.cell, sound.reading});
        named = named || !sound.pass.empty();
    }
    if (readings.empty() && !named) return;
    const auto stored = named ? bench().importAll(taken, {}) : bench().enterAll(readings, "paste");
    if (!stored) Q_EMIT notice(words::sentence(stored.error()));
}

Station* makeMeasureStation(Workbench& workbench) {
    return new MeasureStation(workbench);
}

} // namespace hammerline
