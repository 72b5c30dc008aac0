// The window: menus, the line of hammers, the context bar, the stations, the keyboard strip, the note card, the hints.
// It only assembles.
#pragma once

#include "ui/settings/settings.h"
#include "ui/stations/measure_order.h"
#include "ui/stations/stations.h"
#include "ui/widgets/look.h"

#include <QMainWindow>

class QAction;
class QDockWidget;
class QBoxLayout;
class QLabel;
class QStackedWidget;

namespace hammerline {

enum class SheetKind : std::uint8_t;
class ActionWide;
class BenchEntry;
class FirstPage;
class HintBar;
class KeyboardStrip;
class MeasureStation;
class NewPianoForm;
class NextLine;
class NoteCard;
class OfferBand;
class StationRail;
class WatchedFolder;

class MainWindow : public QMainWindow {
    Q_OBJECT
public:
    MainWindow(Workbench&, Settings&, QWidget* parent = nullptr);
    ~MainWindow() override;

    /// Opens the station by its id ("measure"); false where another would not let go.
    bool showStation(const QString& id);
    bool showStation(int index);
    Station* station() const;
    KeyboardStrip& strip() const { return *m_strip; }
    void setTheme(const QString& theme);
    /// From now on "as the desktop" goes dark and light with it.
    void followDesktop();
    void setTextSize(int percent);
    /// Commits an open editor; false where something refused stays open.
    bool leaveStation();

    /// The entry at the bench fills the window; made at its first visit. False where the station keeps a refused text.
    bool showBenchEntry();
    bool leaveBenchEntry();
    BenchEntry* benchEntry() const { return m_entry; }
    bool atBench() const;
    /// The note, wide (F7), in the place of the station; page -1: the one shown last. main_window_wide.cpp
    bool showNoteWide(int page = -1);
    void leaveNoteWide();
    bool noteIsWide() const;
    NoteCard* noteCard() const { return m_card; }
    void showHowTo();

    // Called by the menus and by the command line's start.
    void openBook(const QString& path, const std::string& piano = {});
    void newBook();
    void newPiano();
    FirstPage* firstPage() const { return m_first; }
    void newPass();
    void importFile(const QString& path = {});
    /// An export of whole pianos.
    void importPianos(const QByteArray& bytes, const QString& name);
    void backUpBook(); // main_window_keeping.cpp
    /// To a stick or another disk.
    void backUpElsewhere();
    void verifyBook();
    void mergeBook();
    void restoreBackup(const QString& path = {});
    void reopenBook();
    /// Says so when the newest copy on another device is older than a month of work.
    void remindOfCopy();
    void offerLeftBehind(const QString& book);
    enum class Export : std::uint8_t { readings, parts, everything };
    void exportFile(Export);
    /// To the preview, or straight into a PDF file.
    void printSheet(SheetKind, bool asPdf);

    // main_window_photographs.cpp
    /// New pictures in this folder are offered from now on; empty: of none. Kept for this book.
    void watchFolder(const QString& folder);
    WatchedFolder& watched() const { return *m_watched; }
    void lookSideBySide();
    /// What a photograph taken now is of.
    About place() const;

    // main_window_opinion.cpp
    void askOpinion();
    void takeAnswer(const std::string& text, const QString& from);
    void takeAnswerFile(const QString& path);

    // main_window_arrivals.cpp: what comes in from outside
    /// Shows the window and brings it to the front; `token` is the desktop's leave to do so.
    void comeForward(const QByteArray& token);
    /// A bench book is opened, a table or an export imported; anything else is refused in one sentence.
    void takeIn(const QString& file);

protected:
    void dragEnterEvent(QDragEnterEvent*) override;
    void dropEvent(QDropEvent*) override;
    void closeEvent(QCloseEvent*) override;
    void resizeEvent(QResizeEvent*) override;
    void keyPressEvent(QKeyEvent*) override;

private:
    void buildFrame();
    void buildMenus(); // main_window_menus.cpp
    void buildBookMenu();
    void buildEditMenu();
    void buildGoMenu();
    void buildNotesMenu();
    void buildViewMenu();
    void buildPrintMenu();
    void buildHelpMenu();
    void buildExportMenu(QMenu* book); // main_window_outlets.cpp
    void buildOpinionMenu(QMenu* book);
    void buildPhotographsMenu(QMenu* book);
    void buildWatchedFolder();
    void watchRemembered();
    void offerPicture();
    void takeOffered();
    void leaveOffered();
    void addPicture(const QString& file);
    void keepPicture(const Picture&);
    static bool isPicture(const QString& path);
    static QString pictureFilter();
    void fillSheets(QMenu*, bool asPdf);
    QString whyNotPrinted(SheetKind) const;
    Outcome<std::optional<Plan>> planFor(SheetKind) const;
    QString beside(const QString& name) const;
    void copy(); // main_window_edit.cpp
    void paste();
    void selectAll();
    void find();
    void fillRecent(QMenu*);
    void titleWindow();
    void openAnotherWindow();
    void fillPianos(QMenu*);
    void fillPasses(QMenu*);
    void connectBench();
    void refreshWords();
    void rebuildStations();
    /// The page that was shown, -1 where none was; it is made anew then.
    int forgetNoteWide();
    void refreshRail();
    void refreshBook();
    void refreshTrouble();
    void say(const QString& sentence);
    void report(const Refusal&);
    void offerRescue(const QString& path, const Refusal&);
    void foldCard();
    void layContextBar();
    void stepPanel(int by);
    void goToNote();
    void goToNext();
    void wireMeasure(Station*);
    bool addPiano(const NewPianoForm&); // main_window_begin.cpp
    bool atFirstPage() const;
    void showFirstPage();
    void beginFirst();
    void openDemo();
    void buildBenchActions(); // main_window_bench.cpp
    void buildCard();
    void dressBench();
    MeasureStation* measure();
    void showKeys();
    void undo();
    void redo();
    void remember();

    Workbench& m_bench;
    Settings& m_settings;
    std::array<Station*, 6> m_stations{};
    StationRail* m_rail = nullptr;
    NextLine* m_next = nullptr;
    QLabel *m_title = nullptr, *m_context = nullptr, *m_bookLabel = nullptr, *m_notice = nullptr;
    struct Offered {
        QString file;
        Picture picture;
    };
    Offered m_offered; // read once, when it was offered
    OfferBand* m_offer = nullptr;
    WatchedFolder* m_watched = nullptr;
    QBoxLayout* m_toolRow = nullptr;
    QMainWindow* m_stage = nullptr; // stack and note card share it, so that the strip keeps the whole width
    QStackedWidget* m_stack = nullptr;
    QDockWidget* m_cardDock = nullptr;
    KeyboardStrip* m_strip = nullptr;
    HintBar* m_hints = nullptr;
    QWidget* m_house = nullptr; // everything but the bench entry
    QStackedWidget* m_whole = nullptr;
    BenchEntry* m_entry = nullptr;
    FirstPage* m_first = nullptr; // made where there is no piano
    ActionWide* m_wide = nullptr;
    NoteCard* m_card = nullptr;
    QAction *m_benchAction = nullptr, *m_acrossAction = nullptr;
    QAction *m_cardAction = nullptr, *m_undoAction = nullptr, *m_redoAction = nullptr;
};

} // namespace hammerline
