// The attributes of a piano as fields of a form: what was said of it, and what is customary where nothing was.
#pragma once

#include "core/piano/piano.h"

#include <QObject>

#include <map>

class QComboBox;
class QFormLayout;
class QLineEdit;

namespace hammerline {

struct AttributeRow;

/// A field with its label, named for those who do not see it.
QLineEdit* fieldIn(QFormLayout*, const QString& label);

class AttributeFields : public QObject {
    Q_OBJECT
public:
    explicit AttributeFields(QObject* parent);
    /// A choice where the catalogue lists words, else a field with the form as its hint.
    void add(const AttributeRow&, QFormLayout*);
    void show(const Piano&);

Q_SIGNALS:
    void said(const QString& name, const QString& value);

private:
    void showCustomaryArms(const Piano&);

    std::map<std::string, QLineEdit*> m_fields;
    std::map<std::string, QComboBox*> m_choices;
};

} // namespace hammerline
