// Five answers that make a piano: kind, keys, player, spec sheet, whose. All can be changed later at its station.
#pragma once

#include "core/history/identity.h"
#include "core/piano/piano.h"

#include <QDialog>

class QButtonGroup;
class QComboBox;
class QLabel;
class QLineEdit;
class QVBoxLayout;

namespace hammerline {

class PickButton;

class NewPianoForm : public QWidget {
    Q_OBJECT
public:
    explicit NewPianoForm(QWidget* parent);
    /// Refuses badCompass, unknownNote (lowest).
    Outcome<Piano> piano() const;
    std::string specName() const;
    /// Refuses badIdentity.
    Outcome<Identity> identity() const;
    /// To the first question.
    void begin();

Q_SIGNALS:
    /// Enter on the last question.
    void answered();
    /// Something of it reads otherwise.
    void changed();

protected:
    /// Enter goes to the next question and, behind the name, begins.
    void keyPressEvent(QKeyEvent*) override;
    bool eventFilter(QObject*, QEvent*) override;

private:
    QVBoxLayout* question(QVBoxLayout* column, const QString& name, const QString& decides);
    void buildQuestions(QVBoxLayout* column);
    void fitKind();
    void check();
    ActionKind kind() const;
    QLineEdit* lineIn(const QString& name, const QString& shown = {});

    QButtonGroup *m_kinds, *m_players;
    QLineEdit *m_keys, *m_lowest, *m_name;
    QLabel *m_highest, *m_refused;
    QWidget* m_playerRow = nullptr;
    QComboBox* m_sheet;
    std::map<std::string_view, QLineEdit*> m_whose;
};

/// The same form for a further piano of the open book.
class NewPianoDialog : public QDialog {
    Q_OBJECT
public:
    explicit NewPianoDialog(QWidget* parent);
    NewPianoForm& form() const { return *m_form; }

private:
    NewPianoForm* m_form;
};

} // namespace hammerline
