#include "ui/widgets/long_work.h"

#include "ui/widgets/dialogs.h"

#include <QProgressDialog>

#include <algorithm>

namespace hammerline {

namespace {
constexpr int kSteps = 1000;
} // namespace

LongWork::LongWork(QWidget* parent, const QString& what, std::int64_t size)
    : m_bar(std::make_unique<QProgressDialog>(what, QProgressDialog::tr("Stop"), 0, kSteps, parent))
    , m_size(std::max<std::int64_t>(size, 1)) {
    m_bar->setObjectName(QStringLiteral("long-work"));
    m_bar->setWindowModality(Qt::WindowModal);
    m_bar->setMinimumDuration(Dialogs::now().patience());
    m_bar->setAutoReset(false);
    m_bar->setAutoClose(false);
    m_bar->setValue(0);
}

LongWork::~LongWork() = default;

bool LongWork::at(std::int64_t done) {
    m_bar->setValue(static_cast<int>(std::min(done, m_size) * kSteps / m_size));
    return !m_bar->wasCanceled();
}

} // namespace hammerline
