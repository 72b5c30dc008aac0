#include "ui/widgets/bench_dialogs.h"

#include "core/pass/line_sag.h"
#include "db/storing_intake.h"
#include "ui/widgets/look.h"
#include "ui/words/words.h"

#include <QCheckBox>
#include <QComboBox>
#include <QDialogButtonBox>
#include <QFormLayout>
#include <QLabel>
#include <QLineEdit>
#include <QPushButton>

namespace hammerline {

namespace {

QLabel* remarkIn(QFormLayout* form, QDialog* dialog) {
    auto* remark = new QLabel(dialog);
    remark->setWordWrap(true);
    remark->setForegroundRole(QPalette::BrightText);
    form->addRow(remark);
    return remark;
}

void addButtons(QFormLayout* form, QDialog* dialog, const QString& take) {
    auto* buttons = new QDialogButtonBox(dialog);
    buttons->addButton(take, QDialogButtonBox::AcceptRole)->setDefault(true);
    buttons->addButton(QDialog::tr("Leave it"), QDialogButtonBox::RejectRole);
    QObject::connect(buttons, &QDialogButtonBox::accepted, dialog, &QDialog::accept);
    QObject::connect(buttons, &QDialogButtonBox::rejected, dialog, &QDialog::reject);
    form->addRow(buttons);
}

/// A number with either decimal mark in a range; none where the field is empty.
Outcome<std::optional<double>> numberIn(const QLineEdit* field, double low, double high) {
    const QString text = field->text().trimmed();
    if (text.isEmpty()) return std::optional<double>{};
    const auto typed = parseQuantity(text.toStdString(), Unit::percent);
    if (!typed) return tl::unexpected(typed.error());
    const double value = toTrade(typed->count, Kind::share);
    if (value < low || value > high) return refuse(RefusalCode::outOfRange, text.toStdString());
    return std::optional(value);
}

} // namespace

NewPassDialog::NewPassDialog(const PianoRecord& record, QWidget* parent)
    : QDialog(parent)
    , m_piano(record.piano)
    , m_label(new QLineEdit(this))
    , m_temperature(new QLineEdit(this))
    , m_humidity(new QLineEdit(this))
    , m_lineSag(new QLineEdit(this))
    , m_stackIn(new QCheckBox(tr("Player stack in its place"), this))
    , m_weightsOn(new QCheckBox(tr("Weights on the keys (action out)"), this))
    , m_onBench(new QCheckBox(tr("Key frame on the bench, not in the piano"), this)) {
    setWindowTitle(tr("New pass"));
    auto* form = new QFormLayout(this);
    const NewPass next = nextPass(record);
    if (record.passes.empty()) m_label->setText(tr("as found"));
    m_label->setPlaceholderText(tr("after the first round, ..."));
    form->addRow(tr("&Name"), m_label);
    form->addRow(tr("&Temperature, \u00B0C"), m_temperature);
    form->addRow(tr("&Humidity, %"), m_humidity);
    m_stackIn->setVisible(record.piano.hasPlayer());
    m_stackIn->setChecked(next.stackIn);
    m_weightsOn->setChecked(next.weightsOn);
    form->addRow(QString(), m_stackIn);
    form->addRow(QString(), m_weightsOn);
    form->addRow(QString(), m_onBench);
    m_onBench->setChecked(next.onBench);
    for (const Dimension& dimension : dimensions()) {
        if (dimension.references.empty() || !fittedAnywhere(dimension.id, record.piano)) continue;
        auto* choice = new QComboBox(this);
        for (const std::string_view reference : dimension.references)
            choice->addItem(words::referenceName(dimension.id, reference),
                            QString::fromUtf8(reference.data(), static_cast<qsizetype>(reference.size())));
        if (const auto last = next.references.find(dimension.id); last != next.references.end())
            choice->setCurrentIndex(std::max(0, choice->findData(QString::fromStdString(last->second))));
        form->addRow(words::name(dimension.id), choice);
        m_references.emplace_back(dimension.id, choice);
        if (dimension.id != dimension::keyHeight) continue;
        m_lineSag->setPlaceholderText(tr("straight; or 0.28, or steel 0.5 mm 10 N"));
        m_lineSag->setToolTip(tr("A stretched line hangs in the middle. Type by how much, in mm, or its material, "
                                 "thickness and pull."));
        m_lineSag->setText(QString::fromStdString(next.lineSag));
        form->addRow(tr("Sag of a &line"), m_lineSag);
        connect(choice, &QComboBox::currentIndexChanged, this, &NewPassDialog::check);
    }
    m_remark = remarkIn(form, this);
    addButtons(form, this, tr("Begin it"));
    for (QLineEdit* field : {m_temperature, m_humidity, m_lineSag})
        connect(field, &QLineEdit::textChanged, this, &NewPassDialog::check);
    check();
}

bool NewPassDialog::againstLine() const {
    for (const auto& [dimension, choice] : m_references)
        if (dimension == dimension::keyHeight) return choice->currentIndex() == 0;
    return false;
}

void NewPassDialog::check() {
    m_lineSag->setEnabled(againstLine());
    const auto made = pass();
    m_remark->setText(made ? QString() : words::sentence(made.error()));
}

void NewPassDialog::fill(const QString& label, const QString& temperature, const QString& humidity) {
    m_label->setText(label);
    m_temperature->setText(temperature);
    m_humidity->setText(humidity);
}

Outcome<NewPass> NewPassDialog::pass() const {
    NewPass pass;
    pass.label = m_label->text().trimmed().toStdString();
    const auto temperature = numberIn(m_temperature, -20, 60);
    if (!temperature) return tl::unexpected(temperature.error());
    const auto humidity = numberIn(m_humidity, 0, 100);
    if (!humidity) return tl::unexpected(humidity.error());
    pass.temperature = *temperature;
    pass.humidity = *humidity;
    pass.stackIn = m_stackIn->isChecked();
    pass.weightsOn = m_weightsOn->isChecked();
    pass.onBench = m_onBench->isChecked();
    if (againstLine()) pass.lineSag = m_lineSag->text().trimmed().toStdString();
    if (const auto sag = readLineSag(pass.lineSag, m_piano); !sag) return tl::unexpected(sag.error());
    for (const auto& [dimension, choice] : m_references)
        if (choice->currentIndex() > 0) pass.references[dimension] = choice->currentData().toString().toStdString();
    return pass;
}

} // namespace hammerline
