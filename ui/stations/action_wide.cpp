#include "ui/stations/action_wide.h"

#include "ui/print/sheets.h"
#include "ui/stations/station_words.h"
#include "ui/widgets/hint_bar.h"
#include "ui/widgets/marks.h"
#include "ui/words/words.h"

#include <QEvent>
#include <QHBoxLayout>
#include <QKeyEvent>
#include <QPainter>
#include <QScrollArea>
#include <QScrollBar>
#include <QStackedWidget>
#include <QToolButton>
#include <QVBoxLayout>

#include <algorithm>

namespace hammerline {

namespace {

constexpr double kTabsHigh = 9; // units

/// A tab with its key; the page shown stands on paper.
class PageTab : public QToolButton {
public:
    PageTab(const QString& key, const QString& text, QWidget* parent) : QToolButton(parent), m_key(key) {
        setText(text);
        setCheckable(true);
        setAutoExclusive(true);
        setFocusPolicy(Qt::NoFocus);
        setAccessibleName(text);
        setAccessibleDescription(key);
    }
    QSize sizeHint() const override {
        const int text = qRound(noteWidth(this->text(), face(Text::digits, true)));
        return {text + u(15), u(kTabsHigh)};
    }

protected:
    void paintEvent(QPaintEvent*) override {
        QPainter painter(this);
        const Look& look = lookOf(*this);
        if (isChecked()) painter.fillRect(rect(), ink(look.paper));
        painter.setRenderHint(QPainter::Antialiasing);
        painter.setFont(face(Text::label));
        const double cap = paintKeyCap(painter, u(3.5), height() / 2.0, m_key, look);
        painter.setFont(face(Text::digits, isChecked()));
        painter.setPen(ink(isChecked() ? look.ink : look.ink2));
        painter.drawText(QPointF(cap + u(2), height() / 2.0 + QFontMetricsF(painter.font()).capHeight() / 2), text());
        painter.fillRect(QRect(width() - 1, 0, 1, height()), ink(look.line));
    }

private:
    QString m_key;
};

/// Scrolls a page where the window is low or the type large. Page up and down move it; the other keys are the note's.
class PageScroll : public QScrollArea {
public:
    PageScroll(ActionPage* page, QWidget* parent) : QScrollArea(parent) {
        setFrameShape(QFrame::NoFrame);
        setWidgetResizable(true);
        setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
        setFocusPolicy(Qt::NoFocus);
        setWidget(page);
    }
    ActionPage* page() const { return qobject_cast<ActionPage*>(widget()); }

protected:
    void keyPressEvent(QKeyEvent* event) override {
        const bool turns = event->key() == Qt::Key_PageUp || event->key() == Qt::Key_PageDown;
        if (turns)
            QScrollArea::keyPressEvent(event);
        else
            event->ignore();
    }
};

} // namespace

int actionPageNamed(const QString& name) {
    const QStringList names{QStringLiteral("account"), QStringLiteral("stroke"), QStringLiteral("action")};
    return static_cast<int>(names.indexOf(name));
}

ActionWide::ActionWide(Workbench& bench, QWidget* parent)
    : Station(bench, parent), m_desk(bench), m_pages(new QStackedWidget(this)) {
    setObjectName(QStringLiteral("note-wide"));
    setFocusPolicy(Qt::StrongFocus);
    setAccessibleName(tr("The note, wide"));
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(0);
    auto* bar = new QHBoxLayout;
    bar->setContentsMargins(0, 0, 0, 0);
    bar->setSpacing(0);
    column->addLayout(bar);
    column->addWidget(m_pages, 1);
    for (ActionPage* page :
         {makeAccountPage(m_desk, m_pages), makeStrokePage(m_desk, m_pages), makeDrawnPage(m_desk, m_pages)}) {
        const int index = m_pages->addWidget(new PageScroll(page, m_pages));
        connect(page, &ActionPage::refused, this, &Station::notice);
        auto* tab = new PageTab(QString::number(index + 1), page->title(), this);
        connect(tab, &QToolButton::clicked, this, [this, index] { showPage(index); });
        bar->addWidget(tab);
        m_tabs << tab;
    }
    bar->addStretch(1);
    m_tabs.first()->setChecked(true);
    connect(&m_desk, &ActionDesk::changed, this, [this] {
        if (!isVisible()) return;
        update();
        Q_EMIT wordsChanged();
    });
}

ActionPage* ActionWide::current() const {
    return static_cast<const PageScroll*>(m_pages->currentWidget())->page();
}

int ActionWide::page() const {
    return m_pages->currentIndex();
}

void ActionWide::showPage(int index) {
    if (index < 0 || index >= m_pages->count()) return;
    m_pages->setCurrentIndex(index);
    m_tabs.at(index)->setChecked(true);
    current()->setFocus();
    Q_EMIT wordsChanged();
}

void ActionWide::arrive() {
    current()->setFocus();
}

QString ActionWide::context() const {
    const Pass* pass = bench().pass();
    if (!pass) return tr("No pass yet");
    const QString label = QString::fromStdString(pass->label).toHtmlEscaped();
    return label.isEmpty() ? tr("pass %1").arg(pass->number) : tr("pass %1, %2").arg(pass->number).arg(label);
}

QList<KeyHint> ActionWide::hints() const {
    QList<KeyHint> out{{QStringLiteral("F7"), tr("back")}, {QStringLiteral("1 2 3"), tr("account, stroke, action")}};
    out << current()->pageHints();
    const auto* scroll = static_cast<const PageScroll*>(m_pages->currentWidget());
    if (scroll->verticalScrollBar()->maximum() > 0) out.insert(2, {QStringLiteral("PgDn"), tr("further down")});
    return out;
}

QString ActionWide::hintRemark() const {
    return {};
}

StripMarks ActionWide::strip() const {
    StripMarks marks;
    marks.dimension = current()->stripDimension();
    return marks;
}

QList<QWidget*> ActionWide::panels() {
    return {current()};
}

void ActionWide::stepDimension(int by) {
    stepNote(by);
}

/// Ctrl+P: the strokes of all notes, and the accounts of those that stand out.
void ActionWide::print() {
    if (!m_desk.ready()) return;
    const QString refused =
        previewSheet(this, static_cast<int>(SheetKind::action), *bench().record(), bench().passNumber(), m_desk.plan());
    if (!refused.isEmpty()) Q_EMIT notice(refused);
}

void ActionWide::stepNote(int by) {
    if (!m_desk.ready()) return;
    const int wanted = std::clamp(bench().note().value + by, 1, bench().piano()->notes);
    bench().setNote({wanted});
}

void ActionWide::toSectionEnd(bool last) {
    if (!m_desk.ready()) return;
    const Piano& piano = *bench().piano();
    const NoteRange range = sectionsOf(piano)[sectionIndexOf(bench().note(), piano)].range;
    bench().setNote({last ? range.last : range.first});
}

/// Keys that every page has, where the page itself did not want them.
bool ActionWide::goKey(int key) {
    switch (key) {
    case Qt::Key_Escape:
        Q_EMIT left();
        return true;
    case Qt::Key_1:
    case Qt::Key_2:
    case Qt::Key_3:
        showPage(key - Qt::Key_1);
        return true;
    case Qt::Key_Left:
    case Qt::Key_BracketLeft:
        stepNote(-1);
        return true;
    case Qt::Key_Right:
    case Qt::Key_BracketRight:
        stepNote(1);
        return true;
    case Qt::Key_Home:
        toSectionEnd(false);
        return true;
    case Qt::Key_End:
        toSectionEnd(true);
        return true;
    default:
        return false;
    }
}

void ActionWide::keyPressEvent(QKeyEvent* event) {
    if (m_desk.ready() && current()->useKey(event->key(), event->modifiers())) return;
    if (!goKey(event->key())) Station::keyPressEvent(event);
}

/// The bar of the tabs holds the note's name at its right.
void ActionWide::paintEvent(QPaintEvent*) {
    QPainter painter(this);
    const Look& look = lookOf(*this);
    painter.fillRect(rect(), ink(look.paper));
    painter.fillRect(QRect(0, 0, width(), u(kTabsHigh)), ink(look.head));
    if (!m_desk.ready()) return;
    const Piano& piano = *bench().piano();
    const NoteNumber note = bench().note();
    const auto sections = sectionsOf(piano);
    const std::size_t section = sectionIndexOf(note, piano);
    painter.setRenderHint(QPainter::Antialiasing);
    painter.setFont(face(Text::title, true));
    painter.setPen(ink(look.ink));
    const QString name = words::noteName(note, piano);
    const QString where = tr("%1 \u00B7 %2, %3 from its break")
                              .arg(colourOf(note, piano) == KeyColour::sharp ? tr("sharp") : tr("natural"),
                                   words::sectionName(sections[section], section, sections.size()))
                              .arg(note.value - sections[section].range.first + 1);
    const double base = u(kTabsHigh) / 2.0 + QFontMetricsF(painter.font()).capHeight() / 2;
    const double small = noteWidth(where, face(Text::body)), right = width() - u(4);
    const double big = noteWidth(name, painter.font());
    const double left = m_tabs.last()->geometry().right() + u(4);
    if (right - small - u(3) - big < left) {
        paintNote(painter, {std::max(left, right - big), base}, name);
        return;
    }
    paintNote(painter, {right - small - u(3) - big, base}, name);
    painter.setFont(face(Text::body));
    painter.setPen(ink(look.ink2));
    paintNote(painter, {right - small, base}, where);
}

void ActionWide::changeEvent(QEvent* event) {
    Station::changeEvent(event);
    if (event->type() == QEvent::FontChange || event->type() == QEvent::PaletteChange) update();
}

} // namespace hammerline
