#include "ui/pictures/side_by_side.h"

#include "ui/pictures/picture_reading.h"
#include "ui/widgets/look.h"
#include "ui/words/piano_record.h"
#include "ui/words/said.h"

#include <QKeyEvent>
#include <QLabel>
#include <QVBoxLayout>

#include <algorithm>

namespace hammerline {

SideBySide::SideBySide(const Workbench& bench, const About& place, std::vector<std::size_t> photos, QWidget* parent)
    : QDialog(parent), m_bench(bench), m_photos(std::move(photos)) {
    setObjectName(QStringLiteral("sideBySide"));
    setWindowTitle(tr("Two dates: %1").arg(words::aboutText(place, *bench.piano())));
    auto* columns = new QHBoxLayout;
    for (std::size_t side = 0; side < m_pictures.size(); ++side) {
        m_pictures.at(side) = new QLabel(this);
        m_pictures.at(side)->setAlignment(Qt::AlignCenter);
        m_pictures.at(side)->setSizePolicy(QSizePolicy::Ignored, QSizePolicy::Ignored);
        m_words.at(side) = new QLabel(this);
        m_words.at(side)->setFont(face(Text::body));
        m_words.at(side)->setTextFormat(Qt::PlainText);
        m_words.at(side)->setWordWrap(true);
        auto* column = new QVBoxLayout;
        column->addWidget(m_pictures.at(side), 1);
        column->addWidget(m_words.at(side));
        columns->addLayout(column, 1);
    }
    auto* keys = new QLabel(
        tr("Left, Right: another date at the right.  Shift+Left, Shift+Right: at the left.  Esc: back."), this);
    keys->setFont(face(Text::label));
    auto* all = new QVBoxLayout(this);
    all->addLayout(columns, 1);
    all->addWidget(keys);
    if (parent) resize(parent->size() * 0.9);
    showPair(0, m_photos.size() - 1);
}

QString SideBySide::wordsOf(std::size_t at) const {
    const PianoRecord& record = *m_bench.record();
    QString text = words::photoSentence(record.photos.at(m_photos.at(at)), record.piano);
    return text + QLatin1Char('\n') + tr("%1 of %2").arg(at + 1).arg(m_photos.size());
}

void SideBySide::showPair(std::size_t left, std::size_t right) {
    m_left = left;
    m_right = right;
    const std::array places = {left, right};
    for (std::size_t side = 0; side < places.size(); ++side) {
        const Photo& photo = m_bench.record()->photos.at(m_photos.at(places.at(side)));
        const auto picture = m_bench.picture(photo.hash);
        m_images.at(side) = picture ? imageOf(picture->bytes) : QImage();
        m_words.at(side)->setText(wordsOf(places.at(side)));
        m_pictures.at(side)->setAccessibleName(wordsOf(places.at(side)));
    }
    lay();
}

void SideBySide::lay() {
    for (std::size_t side = 0; side < m_images.size(); ++side) {
        QLabel& label = *m_pictures.at(side);
        const QImage& image = m_images.at(side);
        if (image.isNull()) {
            label.setText(tr("This photograph cannot be shown."));
            continue;
        }
        const double sharp = label.devicePixelRatioF();
        QPixmap fitted =
            QPixmap::fromImage(image.scaled(label.size() * sharp, Qt::KeepAspectRatio, Qt::SmoothTransformation));
        fitted.setDevicePixelRatio(sharp);
        label.setPixmap(fitted);
    }
}

void SideBySide::resizeEvent(QResizeEvent* event) {
    QDialog::resizeEvent(event);
    layout()->activate(); // the labels have their sizes now
    lay();
}

void SideBySide::keyPressEvent(QKeyEvent* event) {
    const std::size_t last = m_photos.size() - 1;
    const auto moved = [&](std::size_t from) {
        if (event->key() == Qt::Key_Left) return from - std::min<std::size_t>(from, 1);
        return std::min(from + 1, last);
    };
    const bool arrow = event->key() == Qt::Key_Left || event->key() == Qt::Key_Right;
    if (!arrow) return QDialog::keyPressEvent(event);
    if (event->modifiers().testFlag(Qt::ShiftModifier))
        showPair(moved(m_left), m_right);
    else
        showPair(m_left, moved(m_right));
}

} // namespace hammerline
