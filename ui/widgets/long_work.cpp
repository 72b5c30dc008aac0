#include "ui/widgets/long_work.h"

#include "ui/widgets/dialogs.h"

#include <QCoreApplication>
#include <QLabel>
#include <QProgressDialog>

#include <algorithm>

namespace hammerline {

namespace {
constexpr int kSteps = 1000;
constexpr int kBreath = 30; // ms: smooth to the eye, and next to nothing of the work's time
} // namespace

LongWork::LongWork(QWidget* parent, const QString& what, std::int64_t size)
    : m_parent(parent)
    , m_what(what)
    , m_size(std::max<std::int64_t>(size, 1))
    , m_patience(Dialogs::now().patience())
    , m_breath(std::min(kBreath, m_patience)) {
    m_since.start();
}

LongWork::~LongWork() = default;

void LongWork::showBar() {
    m_bar = std::make_unique<QProgressDialog>(m_what, QProgressDialog::tr("Stop"), 0, kSteps, m_parent);
    m_bar->setObjectName(QStringLiteral("long-work"));
    m_bar->findChild<QLabel*>()->setTextFormat(Qt::PlainText); // it names a file
    m_bar->setWindowModality(Qt::WindowModal);
    m_bar->setMinimumDuration(0);
    m_bar->setAutoReset(false);
    m_bar->setAutoClose(false);
    m_bar->setValue(0);
    m_bar->show();
}

bool LongWork::share(double done) {
    if (!m_bar && m_since.elapsed() < m_patience) return true;
    if (!m_bar) showBar();
    if (m_since.elapsed() >= m_breath) {
        const int value = std::max(m_bar->value(), static_cast<int>(std::min(done, 1.0) * kSteps));
        if (value != m_bar->value())
            m_bar->setValue(value); // lets the window breathe by itself
        else if (m_bar->isVisible())
            QCoreApplication::processEvents();
        m_since.start();
    }
    return !m_bar->wasCanceled();
}

} // namespace hammerline
