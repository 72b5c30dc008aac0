// The Piano station: the set-up as a form. Every field is one fact; leaving it keeps it, or says why it cannot be.
#include "ui/print/sheets.h"
#include "ui/stations/identity_fields.h"
#include "ui/stations/piano_breaks.h"
#include "ui/stations/piano_fields.h"
#include "ui/stations/spec_panel.h"
#include "ui/stations/station_words.h"
#include "ui/stations/stations.h"
#include "ui/stations/work_panel.h"
#include "ui/widgets/empty_state.h"
#include "ui/widgets/key_drawing.h"
#include "ui/words/words.h"

#include <QComboBox>
#include <QFormLayout>
#include <QHBoxLayout>
#include <QLabel>
#include <QLineEdit>
#include <QPushButton>
#include <QScrollArea>
#include <QStackedWidget>
#include <QVBoxLayout>

namespace hammerline {
namespace {

class PianoStation : public Station {
    Q_OBJECT
public:
    explicit PianoStation(Workbench& workbench) : Station(workbench) {
        setObjectName(QStringLiteral("piano"));
        m_breaks = new PianoBreaks(bench(), this);
        connect(m_breaks, &PianoBreaks::said, this,
                [this](const QString& name, const QString& value) { set(name.toStdString(), value); });
        m_fields = new AttributeFields(this);
        connect(m_fields, &AttributeFields::said, this,
                [this](const QString& name, const QString& value) { set(name.toStdString(), value); });
        m_stack = new QStackedWidget(this);
        auto* column = new QVBoxLayout(this);
        column->setContentsMargins(0, 0, 0, 0);
        column->addWidget(m_stack);
        m_stack->addWidget(new EmptyState(tr("No piano yet. Ctrl+N enters one."), m_stack));
        m_stack->addWidget(makePage());
        connect(&bench(), &Workbench::recordChanged, this, &PianoStation::fill);
        connect(&bench(), &Workbench::bookChanged, this, &PianoStation::fill);
        fill();
    }

    QString context() const override {
        const Piano* piano = bench().piano();
        if (!piano) return {};
        return tr("%1, %n note(s)", nullptr, piano->notes).arg(words::actionName(piano->action)) +
               QStringLiteral(" · ") + words::specName(bench().sheet().name);
    }
    QList<KeyHint> hints() const override {
        return {{tr("Tab"), tr("next field")},
                {tr("Enter"), tr("keep; in a list: change")},
                {QStringLiteral("F6"), tr("work, zones")},
                {QStringLiteral("T"), tr("turns the other way round")},
                {tr("Del"), tr("take back what was said here")},
                {QStringLiteral("Ctrl N"), tr("new piano")}};
    }
    QString hintRemark() const override { return tr("a maker's own figures win over these sheets"); }
    StripMarks strip() const override {
        StripMarks marks;
        marks.plain = true;
        marks.legend = {tr("Breaks"), tr("drag, or B and"), tr("Shift+arrow here"), tr("line: dampers")};
        return marks;
    }
    StripTool* stripTool() override { return m_breaks; }
    void arrive() override { m_name->setFocus(); }

    QList<QWidget*> panels() override { return {m_name, m_work, m_spec}; }

private:
    QWidget* makePage() {
        auto* page = new QWidget(m_stack);
        auto* row = new QHBoxLayout(page);
        row->setContentsMargins(0, 0, 0, 0);
        row->setSpacing(0);
        auto* fittedPanel = new Panel({}, makeForm(page), page);
        fittedPanel->setTitle(tr("What is fitted"), tr("decides which steps exist"));
        m_work = new WorkPanel(bench(), page);
        connect(m_work, &WorkPanel::said, this,
                [this](const QString& name, const QString& value) { set(name.toStdString(), value); });
        m_work->setMinimumHeight(u(45));
        auto* middle =
            new QScrollArea(page); // where the drawing leaves the list no room (large type), both are scrolled
        middle->setFocusPolicy(Qt::NoFocus);
        middle->setWidgetResizable(true);
        middle->setFrameShape(QFrame::NoFrame);
        middle->setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
        auto* both = new QWidget(middle);
        auto* column = new QVBoxLayout(both);
        column->setContentsMargins(0, 0, 0, 0);
        column->setSpacing(0);
        column->addWidget(makeKeyArms(both));
        column->addWidget(m_work, 1);
        middle->setWidget(both);
        m_spec = new SpecPanel(bench(), page);
        connect(m_spec, &SpecPanel::refused, this,
                [this](const Refusal& refusal) { Q_EMIT notice(words::sentence(refusal)); });
        fittedPanel->setMinimumWidth(u(52));
        middle->setMinimumWidth(u(53));
        m_spec->setMinimumWidth(u(86));
        row->addWidget(fittedPanel, 38);
        row->addWidget(middle, 33);
        row->addWidget(m_spec, 47);
        return page;
    }

    QWidget* makeKeyArms(QWidget* parent) {
        auto* page = new QWidget(parent);
        page->setBackgroundRole(QPalette::Base);
        page->setAutoFillBackground(true);
        auto* column = new QVBoxLayout(page);
        column->setContentsMargins(0, u(2), 0, u(2));
        column->setSpacing(u(1));
        m_keys = new KeyDrawing(page);
        column->addWidget(m_keys);
        auto* form = new QFormLayout;
        form->setContentsMargins(u(3), 0, u(3), 0);
        form->setRowWrapPolicy(QFormLayout::WrapLongRows);
        form->setVerticalSpacing(u(1));
        for (const AttributeRow& row : attributes())
            if (isArms(row.name)) m_fields->add(row, form);
        column->addLayout(form);
        auto* panel = new Panel({}, page, parent);
        panel->setTitle(tr("Key arms"), tr("mm from the balance pin"));
        return panel;
    }

    static bool isArms(std::string_view name) { return name == "arms-natural" || name == "arms-sharp"; }
    /// Said in the list of work, or where it is measured.
    static bool saidElsewhere(std::string_view name) {
        return name == "gauge-DIMENSION" || name == "minutes-OPERATION" || name == "capstan-up" ||
               name == "let-off-in" || name == "drop-in";
    }

    QWidget* makeForm(QWidget* parent) {
        auto* scroll = new QScrollArea(parent);
        scroll->setFocusPolicy(Qt::NoFocus); // its fields take it
        scroll->setWidgetResizable(true);
        scroll->setFrameShape(QFrame::NoFrame);
        scroll->setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
        auto* page = new QWidget(scroll);
        page->setBackgroundRole(QPalette::Base);
        page->setAutoFillBackground(true);
        m_form = new QFormLayout(page);
        m_form->setContentsMargins(u(3), u(3), u(3), u(3));
        m_form->setHorizontalSpacing(u(2));
        m_form->setVerticalSpacing(u(1.5));
        m_form->setRowWrapPolicy(QFormLayout::WrapLongRows); // large type: the name above its field
        m_form->setFieldGrowthPolicy(QFormLayout::AllNonFixedFieldsGrow);
        m_name = fieldIn(m_form, tr("Name"));
        connect(m_name, &QLineEdit::editingFinished, this, [this] { rename(); });
        m_kind = new QComboBox(page);
        m_kind->setSizeAdjustPolicy(QComboBox::AdjustToMinimumContentsLengthWithIcon);
        m_kind->setMinimumWidth(m_name->minimumWidth());
        m_kind->setAccessibleName(tr("Kind of action"));
        for (const ActionKind kind : {ActionKind::upright, ActionKind::drop, ActionKind::grand})
            m_kind->addItem(words::actionName(kind), static_cast<int>(kind));
        m_form->addRow(tr("Kind of action"), m_kind);
        connect(m_kind, qOverload<int>(&QComboBox::activated), this, [this] { chooseKind(); });
        m_sheet = new QComboBox(page);
        m_sheet->setSizeAdjustPolicy(QComboBox::AdjustToMinimumContentsLengthWithIcon);
        m_sheet->setMinimumWidth(m_name->minimumWidth());
        m_sheet->setAccessibleName(tr("Spec sheet"));
        for (const std::string& name : builtInSheets())
            m_sheet->addItem(words::specName(name), QString::fromStdString(name));
        m_form->addRow(tr("Spec sheet"), m_sheet);
        connect(m_sheet, qOverload<int>(&QComboBox::activated), this, [this] { chooseSheet(); });
        for (const AttributeRow& row : attributes())
            if (!isArms(row.name) && !saidElsewhere(row.name)) m_fields->add(row, m_form);
        auto* whose = new QLabel(tr("Whose it is"), page);
        whose->setContentsMargins(0, u(2), 0, 0);
        m_form->addRow(whose);
        m_identity = new IdentityFields(m_form, this);
        connect(m_identity, &IdentityFields::said, this,
                [this](const QString& key, const QString& value) { say(key.toStdString(), value); });
        m_away = new QPushButton(page);
        m_away->setObjectName(QStringLiteral("put-away"));
        m_form->addRow(m_away);
        connect(m_away, &QPushButton::clicked, this, [this] { putAway(); });
        addSheetButton(tr("Estimate…"), SheetKind::estimate, page);
        addSheetButton(tr("Card for inside the piano…"), SheetKind::card, page);
        addSheetButton(tr("Record for the owner…"), SheetKind::record, page);
        m_caution = makeText(page);
        m_caution->setContentsMargins(0, 0, 0, 0);
        m_form->addRow(m_caution);
        scroll->setWidget(page);
        return scroll;
    }

    void fill() {
        const PianoRecord* record = bench().record();
        m_stack->setCurrentIndex(record ? 1 : 0);
        m_spec->refresh();
        m_work->refresh();
        if (record) {
            const Piano& piano = record->piano;
            m_keys->setPiano(piano);
            m_caution->setText(words::caution(piano.vertical() ? "tipping" : "grand-slide", piano));
            m_name->setText(QString::fromStdString(piano.name));
            m_name->setCursorPosition(0);
            m_sheet->setCurrentIndex(m_sheet->findData(QString::fromStdString(record->specName)));
            m_fields->show(piano);
            m_identity->show(record->identity);
            m_away->setText(isArchived(record->identity) ? tr("Bring back into the list") : tr("Put away"));
            const bool measured =
                std::ranges::any_of(record->passes, [](const Pass& p) { return p.readingCount() > 0; });
            m_kind->setCurrentIndex(m_kind->findData(static_cast<int>(piano.action)));
            m_kind->setEnabled(!measured);
            m_kind->setToolTip(measured ? tr("Stays: readings were taken on this kind of action.") : QString());
        }
        Q_EMIT wordsChanged();
    }

    void keep(const Piano& piano, const std::string& sheet, const std::optional<SpecSheet>& own) {
        if (const auto kept = bench().changePiano(piano, sheet, own); !kept) {
            Q_EMIT notice(words::sentence(kept.error()));
            fill();
        }
    }

    void set(const std::string& name, const QString& value) {
        const PianoRecord* record = bench().record();
        if (!record) return;
        Piano piano = record->piano;
        if (const auto done = hammerline::setAttribute(piano, name, value.toStdString()); !done) {
            Q_EMIT notice(words::sentence(done.error()));
            fill();
            return;
        }
        if (!(piano == record->piano)) keep(piano, record->specName, record->spec);
    }

    void rename() {
        const PianoRecord* record = bench().record();
        const std::string name = m_name->text().trimmed().toStdString();
        if (!record || name.empty() || name == record->piano.name) return;
        Piano piano = record->piano;
        piano.name = name;
        keep(piano, record->specName, record->spec);
    }

    void chooseSheet() {
        const PianoRecord* record = bench().record();
        if (record) keep(record->piano, m_sheet->currentData().toString().toStdString(), {});
    }

    void addSheetButton(const QString& text, SheetKind kind, QWidget* page) {
        auto* button = new QPushButton(text, page);
        m_form->addRow(button);
        connect(button, &QPushButton::clicked, this, [this, kind] {
            if (!bench().record()) return;
            const QString refused =
                previewSheet(this, static_cast<int>(kind), *bench().record(), bench().passNumber(), nullptr);
            if (!refused.isEmpty()) Q_EMIT notice(refused);
        });
    }

    void say(const std::string& field, const QString& value) {
        if (!bench().record()) return;
        const auto read = readIdentity(field, value.toStdString());
        const auto kept = read ? bench().setIdentity({{field, *read}}) : Outcome<void>(tl::unexpected(read.error()));
        if (kept) return;
        Q_EMIT notice(words::sentence(kept.error()));
        fill();
    }

    /// What was said of the action is kept where it still fits, and the sheet of the other kind comes with it.
    void chooseKind() {
        const PianoRecord* record = bench().record();
        const auto kind = static_cast<ActionKind>(m_kind->currentData().toInt());
        if (!record || kind == record->piano.action) return;
        auto fresh = makePiano(kind, record->piano.notes, record->piano.lowestMidi);
        if (!fresh) return;
        fresh->name = record->piano.name;
        for (const auto& [name, value] : attributePairs(record->piano))
            (void)hammerline::setAttribute(*fresh, name, value);
        keep(*fresh, std::string(defaultSheet(kind)), {});
    }

    void putAway() {
        const PianoRecord* record = bench().record();
        if (!record) return;
        const bool away = !isArchived(record->identity);
        const auto kept = bench().setIdentity({{std::string(kArchived), away ? "yes" : ""}});
        Q_EMIT notice(!kept  ? words::sentence(kept.error())
                      : away ? tr("Put away: no longer among the pianos to choose from, and nothing of it is lost.")
                             : tr("Back in the list."));
    }

    QStackedWidget* m_stack = nullptr;
    QComboBox* m_kind = nullptr;
    IdentityFields* m_identity = nullptr;
    QPushButton* m_away = nullptr;
    QFormLayout* m_form = nullptr;
    QLineEdit* m_name = nullptr;
    QComboBox* m_sheet = nullptr;
    QLabel* m_caution = nullptr;
    KeyDrawing* m_keys = nullptr;
    WorkPanel* m_work = nullptr;
    SpecPanel* m_spec = nullptr;
    PianoBreaks* m_breaks = nullptr;
    AttributeFields* m_fields = nullptr;
};

} // namespace

Station* makePianoStation(Workbench& workbench) {
    return new PianoStation(workbench);
}

} // namespace hammerline

#include "piano_station.moc"
