#include "ui/widgets/dialogs.h"

#include "ui/words/plainly.h"

#include <QDialog>
#include <QFileDialog>
#include <QInputDialog>
#include <QMessageBox>
#include <QPushButton>

#include <cstdio>

namespace hammerline {

namespace {
std::unique_ptr<Dialogs>& present() {
    static std::unique_ptr<Dialogs> dialogs = std::make_unique<Dialogs>();
    return dialogs;
}

/// A picture is drawn without a person, who alone could close a window that asks.
class NobodyThere : public Dialogs {
public:
    QString fileToOpen(QWidget*, const QString&, const QString&) override { return {}; }
    QString folderToOpen(QWidget*, const QString&) override { return {}; }
    QString fileToSave(QWidget*, const QString&, const QString&, const QString&) override { return {}; }
    int choose(QWidget*, const QString&, const QString& text, const QStringList&, const QString&) override {
        told(text);
        return -1;
    }
    void say(QWidget*, const QString&, const QString& text) override { told(text); }
    std::optional<QString> ask(QWidget*, const QString&, const QString&, const QString&) override { return {}; }
    bool run(QDialog&) override { return false; }

private:
    static void told(const QString& text) { std::fprintf(stderr, "%s\n", words::plainly(text).toUtf8().constData()); }
};
} // namespace

void Dialogs::nobodyThere() {
    replace(std::make_unique<NobodyThere>());
}

QString Dialogs::fileToOpen(QWidget* parent, const QString& title, const QString& filter) {
    return QFileDialog::getOpenFileName(parent, title, {}, filter);
}

QString Dialogs::folderToOpen(QWidget* parent, const QString& title) {
    return QFileDialog::getExistingDirectory(parent, title);
}

QString Dialogs::fileToSave(QWidget* parent, const QString& title, const QString& suggested, const QString& filter) {
    return QFileDialog::getSaveFileName(parent, title, suggested, filter);
}

int Dialogs::choose(QWidget* parent, const QString& title, const QString& text, const QStringList& buttons,
                    const QString& more) {
    QMessageBox box{parent};
    box.setWindowTitle(title);
    box.setTextFormat(Qt::PlainText);
    box.setText(text);
    box.setInformativeText(more);
    QList<QAbstractButton*> made;
    for (const QString& button : buttons)
        made.append(box.addButton(button, QMessageBox::AcceptRole));
    box.exec();
    return static_cast<int>(made.indexOf(box.clickedButton()));
}

void Dialogs::say(QWidget* parent, const QString& title, const QString& text) {
    QMessageBox box{parent};
    box.setWindowTitle(title);
    box.setText(text);
    box.addButton(QMessageBox::Close);
    box.exec();
}

std::optional<QString> Dialogs::ask(QWidget* parent, const QString& title, const QString& label,
                                    const QString& initial) {
    bool taken = false;
    const QString text = QInputDialog::getText(parent, title, label, QLineEdit::Normal, initial, &taken);
    return taken ? std::optional(text) : std::nullopt;
}

bool Dialogs::run(QDialog& dialog) {
    return dialog.exec() == QDialog::Accepted;
}

int Dialogs::patience() const {
    return 500;
}

Dialogs& Dialogs::now() {
    return *present();
}

std::unique_ptr<Dialogs> Dialogs::replace(std::unique_ptr<Dialogs> by) {
    auto before = std::exchange(present(), by ? std::move(by) : std::make_unique<Dialogs>());
    return before;
}

} // namespace hammerline
