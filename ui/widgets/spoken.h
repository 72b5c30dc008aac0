// What a painted widget says to a screen reader: a sentence made when it is asked for, and told anew when what it
// speaks of changes under the focus.
#pragma once

#include <QString>

class QWidget;

namespace hammerline {

class Speaking {
public:
    virtual ~Speaking() = default;
    /// What is drawn, in sentences: the whole first, then where the cursor stands.
    virtual QString spoken() const = 0;
};

/// Widgets that are Speaking become charts with a description. Once an application.
void installSpoken();
/// Tells a reader that listens that what this widget says has changed; silent without the focus.
void sayAnew(QWidget&);
/// The description of a field that has the focus: readers speak it when it changes.
void sayAt(QWidget& field, const QString& sentence);

} // namespace hammerline
