// A window on a book of its own, for one test: the dialogs answer from what was laid ready, and what a person types
// goes to the field that has the focus by then. Base of the test classes of the window.
#pragma once

#include "ui/main_window.h"
#include "ui/stations/measure_editor.h"
#include "ui/stations/measure_view.h"
#include "ui/widgets/dialogs.h"
#include "ui/widgets/row_table.h"

#include <QAction>
#include <QTemporaryDir>
#include <QTest>

#include <functional>
#include <memory>

namespace hammerline {

/// Answers every dialog through the seam; `onRun` sees our own dialogs first.
class Answering : public Dialogs {
public:
    bool run(QDialog& dialog) override {
        ++ran;
        if (onRun) onRun(dialog);
        return takes;
    }
    void say(QWidget*, const QString&, const QString& text) override { said = text; }
    QString fileToOpen(QWidget*, const QString&, const QString&) override { return file; }
    QString folderToOpen(QWidget*, const QString&) override { return file; }
    QString fileToSave(QWidget*, const QString&, const QString&, const QString&) override { return file; }
    int choose(QWidget*, const QString&, const QString& text, const QStringList&, const QString&) override {
        said = text;
        return choice;
    }
    int patience() const override { return waits; }
    /// What was laid ready, one answer a question, then always `typed`.
    std::optional<QString> ask(QWidget*, const QString& title, const QString& label, const QString&) override {
        asked << title + QStringLiteral(": ") + label;
        return answers.isEmpty() ? typed : std::optional(answers.takeFirst());
    }

    std::function<void(QDialog&)> onRun;
    QString said, file;
    QStringList asked, answers;
    std::optional<QString> typed;
    int choice = -1, ran = 0;
    int waits = 60'000; // long work keeps quiet
    bool takes = true;
};

constexpr std::int64_t kTenth = kNmPerMm / 10;

class WindowBench {
protected:
    using Attributes = std::vector<std::pair<const char*, const char*>>;

    /// A new book with one upright of 88 notes, and the window on it at Measure.
    void open(const char* sheet = "upright", const Attributes& attributes = {}) {
        close();
        dress(m_theme, m_textSize);
        m_folder = std::make_unique<QTemporaryDir>();
        auto answering = std::make_unique<Answering>();
        m_dialogs = answering.get();
        Dialogs::replace(std::move(answering));
        m_bench = std::make_unique<Workbench>();
        QVERIFY(m_bench->createBook(path()).has_value());
        addPiano(ActionKind::upright, 88, "Test upright", sheet, attributes);
        openWindow();
        m_bench->setCell({{1}, dimension::letOff});
    }
    void close() {
        m_window.reset();
        m_settings.reset();
        m_bench.reset();
        Dialogs::replace(nullptr);
    }
    void openWindow() {
        m_settings = std::make_unique<Settings>(m_folder->filePath(QStringLiteral("t.ini")));
        m_window = std::make_unique<MainWindow>(*m_bench, *m_settings);
        QVERIFY(m_window->showStation(QStringLiteral("measure")));
        m_window->show();
        grid().setFocus();
    }
    void addPiano(ActionKind kind, int notes, const char* name, const char* sheet = nullptr,
                  const Attributes& attributes = {}) {
        auto piano = makePiano(kind, notes);
        QVERIFY(piano.has_value());
        piano->name = name;
        for (const auto& [attribute, value] : attributes)
            QVERIFY(setAttribute(*piano, attribute, value).has_value());
        const char* usual = kind == ActionKind::grand ? "grand" : "upright";
        QVERIFY(m_bench->addPiano(*piano, sheet ? sheet : usual).has_value());
    }
    QString path() const { return m_folder->filePath(QStringLiteral("t.hammerline")); }

    static Reading reading(const char* typed) {
        Reading made;
        made.count = parseQuantity(typed, Unit::mm)->count;
        made.typed = typed;
        made.typedUnit = "mm";
        return made;
    }
    std::int64_t valueAt(int note, DimensionId id) {
        return m_bench->pass() ? m_bench->pass()->value({{note}, id}).value_or(0) : 0;
    }

    MeasureView& grid() { return *m_window->findChild<MeasureView*>(); }
    /// The field of the grid while it is open, else the grid.
    QWidget* focus() { return grid().editor() ? static_cast<QWidget*>(grid().editor()) : &grid(); }
    void typeInGrid(const QString& text) {
        for (const QChar key : text)
            QTest::keyClick(focus(), key.toLatin1());
    }
    QAction* shortcut(const QString& keys) {
        for (QAction* action : m_window->actions())
            if (action->shortcut() == QKeySequence(keys)) return action;
        return nullptr;
    }
    /// A list of the station in front, by the name that is read out.
    RowTable* table(const QString& name) {
        for (RowTable* each : m_window->station()->findChildren<RowTable*>())
            if (each->accessibleName() == name) return each;
        return nullptr;
    }
    /// Makes a row current as a person does, so that what follows the current row follows.
    static bool choose(RowTable& table, const std::function<bool(const ListRow&)>& wanted) {
        for (std::size_t i = 0; i < table.rows().size(); ++i)
            if (const ListRow& row = table.rows()[i]; row.heading.isEmpty() && wanted(row)) {
                table.setCurrentIndex(table.model()->index(static_cast<int>(i), 0));
                return true;
            }
        return false;
    }

    std::unique_ptr<QTemporaryDir> m_folder;
    std::unique_ptr<Workbench> m_bench;
    std::unique_ptr<Settings> m_settings;
    std::unique_ptr<MainWindow> m_window;
    Answering* m_dialogs = nullptr;
    Theme m_theme = Theme::light;
    int m_textSize = 100;
};

} // namespace hammerline
