// The one field of the entry at the bench: very large digits, and keys that act at once while nothing is typed.
#pragma once

#include <QLineEdit>

#include <functional>

namespace hammerline {

class BenchField : public QLineEdit {
    Q_OBJECT
public:
    explicit BenchField(QWidget* parent);
    /// Sees every key first; true where it was used.
    void setKeys(std::function<bool(QKeyEvent*)> keys) { m_keys = std::move(keys); }

protected:
    void keyPressEvent(QKeyEvent*) override;
    bool event(QEvent*) override;

private:
    std::function<bool(QKeyEvent*)> m_keys;
};

} // namespace hammerline
