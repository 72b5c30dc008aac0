// Whose piano it is, as fields of a form: every one may stay empty. Used by the Piano station and by a new piano.
#pragma once

#include "core/history/identity.h"

#include <QObject>

class QFormLayout;
class QLineEdit;

namespace hammerline {

class IdentityFields : public QObject {
    Q_OBJECT
public:
    /// A row for each field, at the end of the form.
    IdentityFields(QFormLayout*, QObject* parent);
    void show(const Identity&);
    /// All that is typed. Refuses what readIdentity refuses.
    Outcome<Identity> typed() const;
    QLineEdit* field(std::string_view key) const;

Q_SIGNALS:
    /// One field was left with another text than it had.
    void said(const QString& key, const QString& value);

private:
    std::map<std::string, QLineEdit*, std::less<>> m_fields;
};

} // namespace hammerline
