// Two dates of the same place side by side: how far the filing has come, what the strap looked like before.
#pragma once

#include "ui/workbench.h"

#include <QDialog>

class QLabel;

namespace hammerline {

class SideBySide : public QDialog {
    Q_OBJECT
public:
    /// At least two photographs, as photosOfPlace gives them: the first and the last are shown.
    SideBySide(const Workbench&, const About& place, std::vector<std::size_t> photos, QWidget* parent);
    /// Places in the list given: left, right.
    std::pair<std::size_t, std::size_t> shown() const { return {m_left, m_right}; }

protected:
    void keyPressEvent(QKeyEvent*) override;
    void resizeEvent(QResizeEvent*) override;

private:
    void showPair(std::size_t left, std::size_t right);
    void lay();
    QString wordsOf(std::size_t) const;

    const Workbench& m_bench;
    std::vector<std::size_t> m_photos;
    std::size_t m_left = 0, m_right = 0;
    std::array<QImage, 2> m_images;
    std::array<QLabel*, 2> m_pictures{}, m_words{};
};

} // namespace hammerline
