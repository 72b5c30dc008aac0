// About: the version, what is new, the licence, and what other people wrote.
#pragma once

#include <QDialog>
#include <QList>
#include <QString>

class QTabWidget;

namespace hammerline {

struct AboutPage {
    QString title, text; // plain text
};

/// The pages in their order: about, what is new, licence, other people's work.
QList<AboutPage> aboutPages();

class AboutDialog : public QDialog {
    Q_OBJECT
public:
    explicit AboutDialog(QWidget* parent);
};

} // namespace hammerline
