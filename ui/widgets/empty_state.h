// One sentence in a panel's top left where there is nothing to show yet: what is missing and the key that helps.
#pragma once

#include <QLabel>

namespace hammerline {

class EmptyState : public QLabel {
    Q_OBJECT
public:
    explicit EmptyState(const QString& sentence, QWidget* parent = nullptr);
};

} // namespace hammerline
