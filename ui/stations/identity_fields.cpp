#include "ui/stations/identity_fields.h"

#include "ui/stations/piano_fields.h"
#include "ui/words/piano_record.h"
#include "ui/words/said.h"

#include <QFormLayout>
#include <QLineEdit>

namespace hammerline {

IdentityFields::IdentityFields(QFormLayout* form, QObject* parent) : QObject(parent) {
    for (const std::string_view key : identityKeys()) {
        QLineEdit* field = fieldIn(form, words::identityName(key));
        field->setObjectName(QStringLiteral("identity-") + words::utf8(key));
        field->setPlaceholderText(words::identityHint(key));
        m_fields[std::string(key)] = field;
        connect(field, &QLineEdit::editingFinished, this, [this, key, field] {
            if (field->isModified()) Q_EMIT said(words::utf8(key), field->text());
            field->setModified(false);
        });
    }
}

void IdentityFields::show(const Identity& identity) {
    for (const auto& [key, field] : m_fields) {
        field->setText(words::utf8(identityValue(identity, key)));
        field->setModified(false);
        field->setCursorPosition(0);
    }
}

Outcome<Identity> IdentityFields::typed() const {
    Identity all;
    for (const auto& [key, field] : m_fields) {
        auto read = readIdentity(key, field->text().toStdString());
        if (!read) return tl::unexpected(read.error());
        if (!read->empty()) all[key] = std::move(*read);
    }
    return all;
}

QLineEdit* IdentityFields::field(std::string_view key) const {
    const auto found = m_fields.find(key);
    return found == m_fields.end() ? nullptr : found->second;
}

} // namespace hammerline
