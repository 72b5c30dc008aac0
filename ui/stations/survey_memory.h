// Photographs and remarks of the place under the cursor: a part at a note. Files are chosen, dropped or pasted.
#pragma once

#include "ui/workbench.h"

#include <QWidget>

class QLabel;
class QLineEdit;
class QListWidget;
class QPushButton;

namespace hammerline {

class SurveyMemory : public QWidget {
    Q_OBJECT
public:
    SurveyMemory(Workbench&, QWidget* parent);
    /// What is shown and added to from now on.
    void showPlace(const About&);
    void takeFocus();
    /// Takes files into the book. False: the first that cannot be taken is refused, and none is kept.
    bool takeFiles(const QStringList& paths);
    void refresh();

Q_SIGNALS:
    void refused(const hammerline::Refusal&);

protected:
    void dragEnterEvent(QDragEnterEvent*) override;
    void dropEvent(QDropEvent*) override;
    void keyPressEvent(QKeyEvent*) override;
    bool eventFilter(QObject*, QEvent*) override;

private:
    void chooseFiles();
    void paste();
    void keep(std::vector<BenchBook::NewPhoto>);
    void addRemark();
    /// The first advice of this place that nobody has decided on; null: none.
    const Remark* openAdvice() const;
    void decide(const char* accepted);
    void lookAt(const QString& hash);
    void removeChosen();
    bool here(const About&) const;
    Photo freshPhoto() const;

    Workbench& m_bench;
    About m_place;
    QLabel* m_title;
    QListWidget* m_pictures;
    QLabel* m_said;
    QLineEdit* m_remark;
    QPushButton* m_add;
    QWidget* m_decide;
};

} // namespace hammerline
