#include "ui/first/first_page.h"

#include "ui/stations/station_words.h"
#include "ui/stations/stations.h"
#include "ui/widgets/dialogs.h"
#include "ui/widgets/hint_bar.h"
#include "ui/widgets/key_button.h"
#include "ui/widgets/look.h"

#include <QApplication>
#include <QDir>
#include <QFileInfo>
#include <QGridLayout>
#include <QKeyEvent>
#include <QLabel>
#include <QPushButton>
#include <QRegularExpression>
#include <QScrollArea>
#include <QStandardPaths>
#include <QVBoxLayout>

#include <array>

namespace hammerline {

namespace {

constexpr int kWaysWide = 150, kMargin = 10; // u

/// What each station is for, in the order of the rail.
constexpr std::array kStationIsFor{
    std::pair{"piano", QT_TRANSLATE_NOOP("FirstPage", "what kind of action it is; that decides which steps exist.")},
    std::pair{"survey",
              QT_TRANSLATE_NOOP("FirstPage", "look over the parts, name what is worn, order the right number.")},
    std::pair{"measure", QT_TRANSLATE_NOOP("FirstPage", "type a reading and Enter; the next note comes by itself.")},
    std::pair{"review",
              QT_TRANSLATE_NOOP("FirstPage", "which notes are out, how far, and whether one cause explains them.")},
    std::pair{"work",
              QT_TRANSLATE_NOOP("FirstPage", "the whole job in order: what to turn or shim, which way, how much.")},
    std::pair{"passes",
              QT_TRANSLATE_NOOP("FirstPage", "measured again: what came of it, and when it is good enough.")}};

QString isFor(const QString& station) {
    for (const auto& [id, sentence] : kStationIsFor)
        if (station == QLatin1String(id)) return QCoreApplication::translate("FirstPage", sentence);
    return {};
}

/// A new file under the piano's name, in the person's documents; one that stands there is never taken.
QString freePath(const QString& piano) {
    QString name = piano.trimmed().toLower();
    name.replace(QRegularExpression(QStringLiteral("[^\\p{L}\\p{N}]+")), QStringLiteral("-"));
    name.truncate(60);
    while (name.startsWith(QLatin1Char('-')))
        name.remove(0, 1);
    while (name.endsWith(QLatin1Char('-')))
        name.chop(1);
    if (name.isEmpty()) name = QStringLiteral("bench");
    const QDir folder(QStandardPaths::writableLocation(QStandardPaths::DocumentsLocation));
    QString path = folder.filePath(name + QStringLiteral(".hammerline"));
    for (int i = 2; QFileInfo::exists(path); ++i)
        path = folder.filePath(QStringLiteral("%1-%2.hammerline").arg(name).arg(i));
    return path;
}

QLabel* lineOf(const QString& text, Text size, QWidget* parent, bool bold = false) {
    auto* label = new QLabel(text, parent);
    label->setFont(face(size, bold));
    label->setWordWrap(true);
    return label;
}

/// Scrolls where the window is low or the type large; nothing of a page may leave the window.
QScrollArea* scrolling(QWidget* inside, QWidget* parent) {
    auto* area = new QScrollArea(parent);
    area->setFrameShape(QFrame::NoFrame);
    area->setWidgetResizable(true);
    area->setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    area->setFocusPolicy(Qt::NoFocus);
    area->setWidget(inside);
    // where the hand is, is seen, however it came there
    QObject::connect(qApp, &QApplication::focusChanged, area, [area, inside](QWidget*, QWidget* now) {
        if (now && inside->isAncestorOf(now)) area->ensureWidgetVisible(now);
    });
    return area;
}

} // namespace

FirstPage::FirstPage(QWidget* parent)
    : QWidget(parent)
    , m_form(new NewPianoForm(this))
    , m_begin(makeMainButton(tr("Begin"), this))
    , m_elsewhere(new QPushButton(tr("Elsewhere…"), this))
    , m_said(lineOf({}, Text::body, this))
    , m_place(lineOf({}, Text::label, this)) {
    m_said->setObjectName(QStringLiteral("firstNotice"));
    m_said->setTextFormat(Qt::PlainText);
    m_said->hide();
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(0);
    auto* row = new QHBoxLayout;
    row->setSpacing(0);
    row->addWidget(scrolling(buildWays(), this), 5);
    row->addWidget(scrolling(buildQuestions(), this), 6);
    column->addLayout(row, 1);
    auto* hints = new HintBar(this);
    hints->setHints({{QStringLiteral("N"), tr("new piano")},
                     {QStringLiteral("O"), tr("open a book")},
                     {QStringLiteral("D"), tr("the demo")},
                     {tr("arrows"), tr("choose")},
                     {tr("Enter"), tr("next question")},
                     {QStringLiteral("F1"), tr("keys")}},
                    {});
    column->addWidget(hints);
    connect(m_form, &NewPianoForm::answered, m_begin, &QPushButton::click);
    connect(m_form, &NewPianoForm::changed, this, [this] { showPlace(); });
    connect(m_begin, &QPushButton::clicked, this, [this] { Q_EMIT begun(); });
    connect(m_elsewhere, &QPushButton::clicked, this, [this] { chooseElsewhere(); });
    showPlace();
}

QWidget* FirstPage::buildWays() {
    auto* page = new QWidget(this);
    auto* column = new QVBoxLayout(page);
    column->setContentsMargins(u(kMargin), u(kMargin), u(kMargin), u(4));
    column->setSpacing(u(2));
    column->addWidget(lineOf(tr("Hammerline"), Text::pitch, page, true));
    column->addWidget(
        lineOf(tr("A bench book for piano actions. It takes what you measure at each note, says what to turn, "
                  "which way and in what order, and shows what came of it."),
               Text::listDigits, page));
    const auto way = [&](const QString& name, const QString& key, const QString& said, auto act) {
        auto* button = new KeyButton(name, key, page);
        button->setFocusPolicy(Qt::StrongFocus);
        connect(button, &QAbstractButton::clicked, this, act);
        auto* line = new QHBoxLayout;
        line->setSpacing(u(3));
        line->addWidget(button);
        line->addWidget(lineOf(said, Text::body, page), 1);
        column->addLayout(line);
        return button;
    };
    m_first = way(tr("New piano"), QStringLiteral("N"), tr("five questions, then the first reading"),
                  [this] { m_form->begin(); });
    way(tr("Open a bench book"), QStringLiteral("O"), tr("one file; or drop it on this page"),
        [this] { Q_EMIT openAsked(); });
    way(tr("Look at the demo"), QStringLiteral("D"), tr("an invented piano; change what you like, it is a copy"),
        [this] { Q_EMIT demoAsked(); });
    column->addWidget(m_said);
    column->addSpacing(u(3));
    column->addWidget(lineOf(tr("The stations, in the order of work; nothing is locked"), Text::body, page, true));
    auto* table = new QGridLayout;
    table->setHorizontalSpacing(u(3));
    int at = 0;
    for (const StationRow& station : stationRows()) {
        table->addWidget(lineOf(QString::number(at + 1), Text::body, page, true), at, 0, Qt::AlignTop);
        table->addWidget(lineOf(QCoreApplication::translate("Station", station.name), Text::body, page, true), at, 1,
                         Qt::AlignTop);
        table->addWidget(lineOf(isFor(QLatin1String(station.id)), Text::body, page), at, 2, Qt::AlignTop);
        ++at;
    }
    table->setColumnStretch(2, 1);
    column->addLayout(table);
    column->addSpacing(u(3));
    column->addWidget(
        lineOf(tr("You need: a rule, a stick cut to the blow, strips of card or paper of known thickness, a "
                  "screwdriver that fits. A ruler is enough to begin. Nothing typed is ever lost. Nothing "
                  "leaves this machine."),
               Text::label, page));
    column->addStretch(1);
    return page;
}

QWidget* FirstPage::buildQuestions() {
    auto* page = new QWidget(this);
    page->setBackgroundRole(QPalette::Base);
    page->setAutoFillBackground(true);
    auto* column = new QVBoxLayout(page);
    column->setContentsMargins(u(7), u(kMargin), u(7), u(4));
    column->setSpacing(u(3));
    column->addWidget(lineOf(tr("New piano"), Text::title, page, true));
    column->addWidget(lineOf(tr("Five answers are enough. All can be changed later."), Text::body, page));
    column->addWidget(m_form);
    auto* row = new QHBoxLayout;
    row->addWidget(m_begin);
    row->addWidget(m_place, 1);
    row->addWidget(m_elsewhere);
    column->addLayout(row);
    column->addStretch(1);
    return page;
}

void FirstPage::setBook(const QString& book) {
    m_book = book;
    showPlace();
}

QString FirstPage::path() const {
    if (!m_book.isEmpty()) return {};
    if (!m_chosen.isEmpty()) return m_chosen;
    const auto piano = m_form->piano();
    return freePath(piano ? QString::fromStdString(piano->name) : QString());
}

void FirstPage::showPlace() {
    m_begin->setEnabled(m_form->piano().has_value() && m_form->identity().has_value());
    m_elsewhere->setVisible(m_book.isEmpty());
    m_place->setText(m_book.isEmpty() ? tr("The file is made then: %1").arg(QDir::toNativeSeparators(path()))
                                      : tr("It goes into the open book, %1.").arg(QFileInfo(m_book).fileName()));
}

void FirstPage::chooseElsewhere() {
    QString chosen = Dialogs::now().fileToSave(this, tr("New bench book"), path(), tr("Bench books (*.hammerline)"));
    if (chosen.isEmpty()) return;
    if (!chosen.endsWith(QLatin1String(".hammerline"))) chosen += QLatin1String(".hammerline");
    m_chosen = chosen;
    showPlace();
}

void FirstPage::say(const QString& sentence) {
    m_said->setText(sentence);
    m_said->setVisible(!sentence.isEmpty());
}

void FirstPage::showEvent(QShowEvent* event) {
    QWidget::showEvent(event);
    m_first->setFocus(Qt::OtherFocusReason);
}

void FirstPage::keyPressEvent(QKeyEvent* event) {
    switch (event->key()) {
    case Qt::Key_N:
        return m_form->begin();
    case Qt::Key_O:
        return Q_EMIT openAsked();
    case Qt::Key_D:
        return Q_EMIT demoAsked();
    case Qt::Key_Escape:
        return m_first->setFocus(Qt::OtherFocusReason);
    default:
        break;
    }
    const bool enter = event->key() == Qt::Key_Return || event->key() == Qt::Key_Enter;
    auto* button = qobject_cast<QAbstractButton*>(focusWidget());
    if (enter && button) return button->click(); // a button here does not take Enter by itself
    QWidget::keyPressEvent(event);
}

} // namespace hammerline
