// A picture that has just come, offered to the place that is looked at: what it is, and the two keys that answer.
#pragma once

#include <QWidget>

class QLabel;
class QPushButton;

namespace hammerline {

class OfferBand : public QWidget {
    Q_OBJECT
public:
    explicit OfferBand(QWidget* parent);
    /// `place`: what it would be added to.
    void offer(const QImage& thumb, const QString& file, const QString& place);

Q_SIGNALS:
    void taken();
    void left();

private:
    QLabel *m_thumb, *m_words;
    QPushButton *m_take, *m_leave;
};

/// The keys, wherever one is in the window.
inline constexpr const char* kTakePicture = "Ctrl+T";
inline constexpr const char* kLeavePicture = "Ctrl+Shift+T";

} // namespace hammerline
