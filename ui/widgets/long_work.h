// Work that may take more than half a second: how far it has come, and a way to stop it.
#pragma once

#include <QElapsedTimer>
#include <QString>

#include <cstdint>
#include <memory>

class QProgressDialog;
class QWidget;

namespace hammerline {

class LongWork {
public:
    /// `what` as one reads it above the bar; `size` in the unit of at().
    LongWork(QWidget* parent, const QString& what, std::int64_t size = 1);
    ~LongWork();
    LongWork(const LongWork&) = delete;
    LongWork& operator=(const LongWork&) = delete;

    /// Says how far it is and lets the window breathe. False: the person wants it to stop.
    bool at(std::int64_t done) { return share(static_cast<double>(done) / static_cast<double>(m_size)); }
    /// The same, by the share of the whole from 0 to 1.
    bool share(double done);

private:
    void showBar();

    QWidget* m_parent;
    QString m_what;
    std::int64_t m_size;
    int m_patience, m_breath; // ms before there is a bar, and between two moments in which the window breathes
    QElapsedTimer m_since;    // the last of them; at first, the beginning
    std::unique_ptr<QProgressDialog> m_bar;
};

} // namespace hammerline
