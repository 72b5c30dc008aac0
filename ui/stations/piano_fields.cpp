#include "ui/stations/piano_fields.h"

#include "ui/widgets/look.h"
#include "ui/words/said.h"
#include "ui/words/words.h"

#include <QComboBox>
#include <QFormLayout>
#include <QLineEdit>

namespace hammerline {

namespace {

using words::utf8;

/// The attribute as it stands: what was said, else empty.
std::map<std::string, std::string> saidOf(const Piano& piano) {
    std::map<std::string, std::string> said;
    for (const auto& [name, value] : attributePairs(piano))
        said[name] = value;
    return said;
}

/// The value of a choice: the one that leaves the piano as it is.
std::string choiceOf(const Piano& piano, const std::string& name) {
    for (const AttributeRow& row : attributes()) {
        if (row.name != name) continue;
        for (const QString& value : utf8(row.values).split(QLatin1Char('|'))) {
            Piano tried = piano;
            if (hammerline::setAttribute(tried, name, value.toStdString()) && tried == piano)
                return value.toStdString();
        }
    }
    return {};
}

constexpr double kField = 43; // least width: where the form has less beside a name, the field goes below it

} // namespace

QLineEdit* fieldIn(QFormLayout* form, const QString& label) {
    auto* field = new QLineEdit(form->parentWidget());
    field->setMinimumWidth(u(kField));
    field->setAccessibleName(label);
    form->addRow(label, field);
    return field;
}

AttributeFields::AttributeFields(QObject* parent) : QObject(parent) {}

void AttributeFields::add(const AttributeRow& row, QFormLayout* form) {
    const std::string name(row.name);
    const QString label = words::attributeName(row.name);
    if (row.values.find('|') != std::string_view::npos) {
        auto* box = new QComboBox(form->parentWidget());
        box->setSizeAdjustPolicy(QComboBox::AdjustToMinimumContentsLengthWithIcon); // the form gives the width
        box->setMinimumWidth(u(kField));
        box->setAccessibleName(label);
        for (const QString& value : utf8(row.values).split(QLatin1Char('|')))
            box->addItem(words::attributeValue(row.name, value.toStdString()), value);
        form->addRow(label, box);
        m_choices[name] = box;
        connect(box, qOverload<int>(&QComboBox::activated), this,
                [this, name, box] { Q_EMIT said(utf8(name), box->currentData().toString()); });
        return;
    }
    QLineEdit* field = fieldIn(form, label);
    field->setPlaceholderText(utf8(row.values));
    m_fields[name] = field;
    connect(field, &QLineEdit::editingFinished, this, [this, name, field] {
        if (field->isModified()) Q_EMIT said(utf8(name), field->text().trimmed()); // emptied: as is customary again
        field->setModified(false);
    });
}

void AttributeFields::show(const Piano& piano) {
    const auto known = saidOf(piano);
    for (const auto& [name, field] : m_fields) {
        const auto found = known.find(name);
        field->setText(found == known.end() ? QString() : QString::fromStdString(found->second));
        field->setModified(false);
        field->setCursorPosition(0); // long ones from their beginning
    }
    showCustomaryArms(piano);
    for (const auto& [name, box] : m_choices)
        box->setCurrentIndex(box->findData(QString::fromStdString(choiceOf(piano, name))));
}

/// What the drawing takes where nothing was measured.
void AttributeFields::showCustomaryArms(const Piano& piano) {
    const auto usual = makePiano(piano.action, piano.notes, piano.lowestMidi);
    if (!usual) return;
    for (const auto& [name, colour] :
         {std::pair{"arms-natural", KeyColour::natural}, {"arms-sharp", KeyColour::sharp}}) {
        const KeyArms& arms = usual->armsOf(colour);
        m_fields.at(name)->setPlaceholderText(
            QStringLiteral("%1, %2, %3, %4").arg(arms.F()).arg(arms.P()).arg(arms.T()).arg(arms.C()));
    }
}

} // namespace hammerline
