// The Piano station: what is said of the piano, in two stages, and its figures. Every field is one fact; leaving it
// keeps it, or says below it why it cannot be.
#include "ui/piano/breaks.h"
#include "ui/piano/figures.h"
#include "ui/piano/first_things.h"
#include "ui/piano/fold.h"
#include "ui/piano/key_arms.h"
#include "ui/piano/when_known.h"
#include "ui/stations/station_words.h"
#include "ui/stations/stations.h"
#include "ui/widgets/empty_state.h"
#include "ui/words/said.h"
#include "ui/words/words.h"

#include <QBoxLayout>
#include <QKeyEvent>
#include <QLineEdit>
#include <QScrollArea>
#include <QStackedWidget>

namespace hammerline {
namespace {

constexpr double kFirstLeast = 58, kKnownLeast = 58, kFiguresLeast = 86; // units
constexpr double kSideBySide = 226;                                      // units of the whole station

/// A panel whose rows are scrolled.
Panel* scrolledPanel(QWidget* rows, QWidget* parent) {
    auto* scroll = new QScrollArea(parent);
    scroll->setFocusPolicy(Qt::NoFocus); // its fields take it
    scroll->setWidgetResizable(true);
    scroll->setFrameShape(QFrame::NoFrame);
    scroll->setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    rows->setBackgroundRole(QPalette::Base);
    rows->setAutoFillBackground(true);
    scroll->setWidget(rows);
    return new Panel({}, scroll, parent);
}

/// "88 from A0", "85": the number of keys, and the lowest one where a second word names it.
Outcome<Piano> compassOf(const QString& text, const Piano& piano) {
    const QStringList parts = text.simplified().split(u' ', Qt::SkipEmptyParts);
    const int notes = parts.isEmpty() ? 0 : parts.first().toInt();
    int lowest = piano.lowestMidi;
    if (parts.size() > 1) {
        const auto read = parseLowest(parts.last().toStdString());
        if (!read) return tl::unexpected(read.error());
        lowest = *read;
    }
    return makePiano(piano.action, notes, lowest);
}

/// Another kind or compass: what was said of the action is kept where it still fits.
Piano withWhatWasSaid(Piano fresh, const Piano& before) {
    fresh.name = before.name;
    for (const auto& [name, value] : attributePairs(before))
        if (concerns(name, fresh)) (void)setAttribute(fresh, name, value);
    return fresh;
}

class PianoStation : public Station {
    Q_OBJECT
public:
    explicit PianoStation(Workbench& workbench) : Station(workbench) {
        setObjectName(QStringLiteral("piano"));
        m_stack = new QStackedWidget(this);
        auto* column = new QVBoxLayout(this);
        column->setContentsMargins(0, 0, 0, 0);
        column->addWidget(m_stack);
        m_stack->addWidget(new EmptyState(tr("No piano yet. Ctrl+N enters one."), m_stack));
        m_stack->addWidget(makePage());
        m_breaks = new PianoBreaks(bench(), this);
        connect(m_breaks, &PianoBreaks::said, this, &PianoStation::set);
        connect(m_known, &WhenKnown::said, this, &PianoStation::set);
        connect(m_figures, &PianoFigures::said, this, &PianoStation::set);
        connect(m_figures, &PianoFigures::refused, this,
                [this](const Refusal& refusal) { Q_EMIT notice(words::sentence(refusal)); });
        connect(m_first, &FirstThings::said, this, &PianoStation::setFirst);
        connect(m_first, &FirstThings::putAway, this, &PianoStation::putAway);
        connect(&bench(), &Workbench::recordChanged, this, &PianoStation::fill);
        connect(&bench(), &Workbench::bookChanged, this, &PianoStation::fill);
        fill();
    }

    QString context() const override {
        const Piano* piano = bench().piano();
        if (!piano) return {};
        return tr("%1, %n note(s)", nullptr, piano->notes).arg(words::actionName(piano->action)) +
               QStringLiteral(" · ") + words::specName(bench().sheet().name);
    }
    QList<KeyHint> hints() const override {
        return {{tr("Tab"), tr("next field")},
                {tr("Enter"), tr("keep, and on")},
                {tr("Esc"), tr("as it was")},
                {QStringLiteral("F6"), tr("next panel")},
                {QStringLiteral("Z"), tr("zones")},
                {QStringLiteral("W"), tr("minutes and turns")},
                {QStringLiteral("Ctrl N"), tr("new piano")}};
    }
    QString hintRemark() const override { return tr("an empty field is as customary"); }
    StripMarks strip() const override {
        StripMarks marks;
        marks.plain = true;
        marks.legend = {tr("Breaks"), tr("drag, or B and"), tr("Shift+arrow here"), tr("line: dampers")};
        return marks;
    }
    StripTool* stripTool() override { return m_breaks; }
    About place() const override { return {}; } // the piano
    void arrive() override { m_first->row("name")->editor()->setFocus(); }
    /// What was refused stays in front until it is mended or given up.
    bool leave() override {
        auto* at = qobject_cast<QLineEdit*>(window()->focusWidget());
        if (at && isAncestorOf(at)) Q_EMIT at->editingFinished(); // the hand stays in it
        const bool refused = m_first->anyRefused() || m_known->anyRefused() || m_figures->arms().isRefused();
        if (refused) Q_EMIT notice(tr("One answer here cannot be kept (▲). Mend it, or Esc in its field."));
        return !refused;
    }
    QList<QWidget*> panels() override { return {m_firstPanel, m_knownPanel, m_figures}; }

protected:
    void keyPressEvent(QKeyEvent* event) override {
        const bool plain = event->modifiers() == Qt::NoModifier;
        const bool zones = plain && event->key() == Qt::Key_Z, work = plain && event->key() == Qt::Key_W;
        if (!zones && !work) return Station::keyPressEvent(event);
        using Page = PianoFigures::Page;
        const Page wanted = zones ? Page::zones : Page::work;
        m_figures->open(m_figures->page() == wanted ? Page::arms : wanted);
        m_figures->front()->setFocus(Qt::ShortcutFocusReason);
    }
    /// Beside each other where there is room for both, else one above the other.
    void resizeEvent(QResizeEvent* event) override {
        Station::resizeEvent(event);
        m_left->setDirection(width() >= u(kSideBySide) ? QBoxLayout::LeftToRight : QBoxLayout::TopToBottom);
    }

private:
    QWidget* makePage() {
        auto* page = new QWidget(m_stack);
        auto* row = new QHBoxLayout(page);
        row->setContentsMargins(0, 0, 0, 0);
        row->setSpacing(0);
        auto* left = new QWidget(page);
        m_left = new QBoxLayout(QBoxLayout::TopToBottom, left); // until it is known how much room there is
        m_left->setContentsMargins(0, 0, 0, 0);
        m_left->setSpacing(0);
        m_first = new FirstThings(left);
        m_known = new WhenKnown(left);
        m_firstPanel = scrolledPanel(m_first, left);
        m_firstPanel->setTitle(tr("First things"), tr("decide which steps exist"));
        m_firstPanel->setMinimumWidth(u(kFirstLeast));
        m_firstPanel->setFocusProxy(m_first->row("name")->editor());
        m_knownPanel = scrolledPanel(m_known, left);
        m_knownPanel->setTitle(tr("When you know it"), tr("italic: customary, in force"));
        m_knownPanel->setMinimumWidth(u(kKnownLeast));
        m_knownPanel->setFocusProxy(m_known->first());
        m_left->addWidget(m_firstPanel, 40);
        m_left->addWidget(m_knownPanel, 44);
        m_figures = new PianoFigures(bench(), page);
        m_figures->setMinimumWidth(u(kFiguresLeast));
        row->addWidget(left, 168);
        row->addWidget(m_figures, 130);
        return page;
    }

    void fill() {
        const PianoRecord* record = bench().record();
        m_stack->setCurrentIndex(record ? 1 : 0);
        if (!record) return Q_EMIT wordsChanged();
        const bool another = std::exchange(m_shown, record->uuid) != record->uuid;
        if (another) forget();
        m_first->show(*record);
        m_known->show(record->piano);
        m_figures->refresh();
        Q_EMIT wordsChanged();
    }

    void forget() {
        m_first->forget();
        m_known->forget();
        m_figures->arms().forget();
    }

    Outcome<void> keep(const Piano& piano, const std::string& sheet, const std::optional<SpecSheet>& own) {
        const PianoRecord& record = *bench().record();
        const bool same = piano == record.piano && sheet == record.specName && own == record.spec;
        if (!same) return bench().changePiano(piano, sheet, own);
        fill(); // typed as it was
        return {};
    }

    /// What was refused is said below its field, where it has one here.
    void say(const Outcome<void>& kept, FactRow* row) {
        if (kept) return;
        const QString why = words::sentence(kept.error());
        if (row) return row->refuse(why);
        Q_EMIT notice(why);
        fill();
    }

    void set(const QString& attribute, const QString& value) {
        const PianoRecord* record = bench().record();
        if (!record) return;
        Piano piano = record->piano;
        const std::string name = attribute.toStdString();
        auto done = hammerline::setAttribute(piano, name, value.toStdString());
        if (done) done = keep(piano, record->specName, record->spec);
        if (!done && name.starts_with("arms-")) return m_figures->arms().refuse(words::sentence(done.error()));
        say(done, m_known->row(name));
    }

    void setFirst(const QString& what, const QString& value) {
        if (!bench().record()) return;
        constexpr std::string_view kIdentity = "identity-";
        const std::string name = what.toStdString();
        FactRow* row = m_first->row(name);
        if (name.starts_with(kIdentity)) return say(setIdentity(name.substr(kIdentity.size()), value), row);
        if (name == "name") return say(rename(value), row);
        if (name == "kind") return say(chooseKind(value.toStdString()), row);
        if (name == "keys") return say(chooseCompass(value), row);
        if (name == "spec") return say(keep(bench().record()->piano, value.toStdString(), {}), row);
        set(what, value);
    }

    Outcome<void> setIdentity(const std::string& field, const QString& value) {
        auto read = readIdentity(field, value.toStdString());
        if (!read) return tl::unexpected(read.error());
        return bench().setIdentity({{field, *read}});
    }

    Outcome<void> rename(const QString& value) {
        const PianoRecord& record = *bench().record();
        if (value.isEmpty()) return fill(), Outcome<void>{};
        Piano piano = record.piano;
        piano.name = value.toStdString();
        return keep(piano, record.specName, record.spec);
    }

    /// The sheet of the other kind comes with it.
    Outcome<void> chooseKind(const std::string& value) {
        const Piano& before = bench().record()->piano;
        const auto kind = parseActionKind(value);
        if (!kind) return tl::unexpected(kind.error());
        if (*kind == before.action) return {};
        const auto fresh = makePiano(*kind, before.notes, before.lowestMidi);
        if (!fresh) return tl::unexpected(fresh.error());
        return keep(withWhatWasSaid(*fresh, before), std::string(defaultSheet(*kind)), {});
    }

    Outcome<void> chooseCompass(const QString& text) {
        const PianoRecord& record = *bench().record();
        const auto fresh = compassOf(text, record.piano);
        if (!fresh) return tl::unexpected(fresh.error());
        return keep(withWhatWasSaid(*fresh, record.piano), record.specName, record.spec);
    }

    void putAway() {
        const PianoRecord* record = bench().record();
        if (!record) return;
        const bool away = !isArchived(record->identity);
        const auto kept = bench().setIdentity({{std::string(kArchived), away ? "yes" : ""}});
        Q_EMIT notice(!kept  ? words::sentence(kept.error())
                      : away ? tr("Put away: no longer among the pianos to choose from, and nothing of it is lost.")
                             : tr("Back in the list."));
    }

    QStackedWidget* m_stack = nullptr;
    QBoxLayout* m_left = nullptr;
    Panel *m_firstPanel = nullptr, *m_knownPanel = nullptr;
    FirstThings* m_first = nullptr;
    WhenKnown* m_known = nullptr;
    PianoFigures* m_figures = nullptr;
    PianoBreaks* m_breaks = nullptr;
    std::string m_shown; // the piano's uuid
};

} // namespace

Station* makePianoStation(Workbench& workbench) {
    return new PianoStation(workbench);
}

} // namespace hammerline

#include "piano_station.moc"
