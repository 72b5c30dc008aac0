// Text over several lines, laid out once for each text and width. A QLabel lays the same text out anew for every hint
// of its size, which a panel that follows every key cannot afford.
#pragma once

#include <QTextDocument>
#include <QWidget>

namespace hammerline {

class RichText : public QWidget {
    Q_OBJECT
public:
    explicit RichText(QWidget* parent = nullptr);
    /// `margin` in px around the text.
    void setMargin(int margin);
    void setHtml(const QString&);
    QString html() const { return m_html; }
    QSize sizeHint() const override { return {0, m_height}; }
    QSize minimumSizeHint() const override { return {0, m_height}; }

protected:
    void paintEvent(QPaintEvent*) override;
    void resizeEvent(QResizeEvent*) override;
    void changeEvent(QEvent*) override;

private:
    void layOut();
    QString m_html;
    QTextDocument m_document;
    int m_margin = 0, m_height = 0;
};

} // namespace hammerline
