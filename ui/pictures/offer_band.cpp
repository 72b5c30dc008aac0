#include "ui/pictures/offer_band.h"

#include "ui/widgets/look.h"

#include <QHBoxLayout>
#include <QLabel>
#include <QPushButton>

namespace hammerline {

namespace {
constexpr double kThumbHigh = 16; // units of measure
} // namespace

OfferBand::OfferBand(QWidget* parent)
    : QWidget(parent)
    , m_thumb(new QLabel(this))
    , m_words(new QLabel(this))
    , m_take(new QPushButton(tr("Take it (%1)").arg(QLatin1String(kTakePicture)), this))
    , m_leave(new QPushButton(tr("Leave it (%1)").arg(QLatin1String(kLeavePicture)), this)) {
    setObjectName(QStringLiteral("offeredPicture"));
    setAutoFillBackground(true);
    m_words->setWordWrap(true);
    m_words->setTextFormat(Qt::PlainText);
    auto* row = new QHBoxLayout(this);
    row->setContentsMargins(u(4), u(1), u(4), u(1));
    row->setSpacing(u(3));
    row->addWidget(m_thumb);
    row->addWidget(m_words, 1);
    row->addWidget(m_take);
    row->addWidget(m_leave);
    for (QPushButton* button : {m_take, m_leave})
        button->setFocusPolicy(Qt::NoFocus); // what is typed goes on where it was
    connect(m_take, &QPushButton::clicked, this, &OfferBand::taken);
    connect(m_leave, &QPushButton::clicked, this, &OfferBand::left);
    hide();
}

void OfferBand::offer(const QImage& thumb, const QString& file, const QString& place) {
    QPalette palette = this->palette();
    palette.setColor(QPalette::Window, ink(lookOf(*this).head));
    setPalette(palette);
    m_words->setFont(face(Text::body));
    m_words->setText(tr("A new picture, %1. Add it to: %2?").arg(file, place));
    m_thumb->setPixmap(
        QPixmap::fromImage(thumb.scaledToHeight(static_cast<int>(u(kThumbHigh)), Qt::SmoothTransformation)));
    show();
}

} // namespace hammerline
