// The one seam for everything that asks a person in a window of its own. Tests put an answering one in its place.
#pragma once

#include <QString>
#include <QStringList>

#include <memory>
#include <optional>

class QDialog;
class QWidget;

namespace hammerline {

class Dialogs {
public:
    virtual ~Dialogs() = default;
    /// Empty: nothing chosen.
    virtual QString fileToOpen(QWidget* parent, const QString& title, const QString& filter);
    virtual QString folderToOpen(QWidget* parent, const QString& title);
    virtual QString fileToSave(QWidget* parent, const QString& title, const QString& suggested, const QString& filter);
    /// The index of the button taken; -1: closed. `text` is one sentence, `more` what may be read besides.
    virtual int choose(QWidget* parent, const QString& title, const QString& text, const QStringList& buttons,
                       const QString& more = {});
    /// A sentence to be read.
    virtual void say(QWidget* parent, const QString& title, const QString& text);
    virtual std::optional<QString> ask(QWidget* parent, const QString& title, const QString& label,
                                       const QString& initial = {});
    /// Runs a dialog of our own; true: accepted.
    virtual bool run(QDialog& dialog);
    /// How long work may take before it says how far it has come, ms.
    virtual int patience() const;

    /// From now on nobody is there to answer: what would be asked is said on standard error and taken as closed.
    static void nobodyThere();

    static Dialogs& now();
    /// Gives back what was there; null puts the real ones back.
    static std::unique_ptr<Dialogs> replace(std::unique_ptr<Dialogs> by);
};

} // namespace hammerline
