// Work that may take more than half a second: how far it has come, and a way to stop it.
#pragma once

#include <QString>

#include <cstdint>
#include <memory>

class QProgressDialog;
class QWidget;

namespace hammerline {

class LongWork {
public:
    /// `what` as one reads it above the bar; `size` in the unit of at().
    LongWork(QWidget* parent, const QString& what, std::int64_t size);
    ~LongWork();
    LongWork(const LongWork&) = delete;
    LongWork& operator=(const LongWork&) = delete;

    /// Says how far it is and lets the window breathe. False: the person wants it to stop.
    bool at(std::int64_t done);

private:
    std::unique_ptr<QProgressDialog> m_bar;
    std::int64_t m_size;
};

} // namespace hammerline
