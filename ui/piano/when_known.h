// What is fitted on this piano, in folds: everything that can be said when it is known, and only what this kind of
// action has. An empty field is as customary.
#pragma once

#include "core/piano/piano.h"
#include "ui/piano/fact_row.h"

#include <map>
#include <vector>

class QVBoxLayout;

namespace hammerline {

class FoldBar;

/// The row of an attribute: a choice where the catalogue lists words, else a field.
FactRow* makeAttributeRow(std::string_view attribute, QWidget* parent);
/// What the piano has of it, what is customary on it, and whether it is asked at all.
void showAttribute(FactRow&, std::string_view attribute, const Piano&);

class WhenKnown : public QWidget {
    Q_OBJECT
public:
    explicit WhenKnown(QWidget* parent);
    void show(const Piano&);
    /// Null: the attribute has no row here.
    FactRow* row(std::string_view attribute) const;
    void forget();
    bool anyRefused() const;
    /// The first fold's bar.
    QWidget* first() const;

Q_SIGNALS:
    void said(const QString& attribute, const QString& value);

private:
    struct Fold {
        FoldBar* bar;
        QWidget* body;
        std::vector<std::string_view> attributes;
    };
    void addFold(QVBoxLayout*, const QString& title, std::vector<std::string_view> attributes, bool open);

    std::vector<Fold> m_folds;
    std::map<std::string, FactRow*, std::less<>> m_rows;
};

} // namespace hammerline
