#include "ui/stations/bench_entry.h"

#include "ui/stations/bench_field.h"
#include "ui/stations/measure_acts.h"
#include "ui/widgets/hint_bar.h"
#include "ui/widgets/keyboard_strip.h"
#include "ui/widgets/spoken.h"
#include "ui/words/words.h"

#include <QResizeEvent>

#include <utility>

namespace hammerline {

namespace {
constexpr double kDesignWidth = 1280, kDesignHeight = 800;
constexpr double kValue = 150; // px of the typed value in the design's window
} // namespace

BenchEntry::BenchEntry(Workbench& bench, QWidget* parent)
    : QWidget(parent)
    , m_bench(bench)
    , m_field(new BenchField(this))
    , m_strip(new KeyboardStrip(bench, this))
    , m_hints(new HintBar(this)) {
    setObjectName(QStringLiteral("benchEntry"));
    setAccessibleName(tr("Bench entry"));
    setAutoFillBackground(true);
    setFocusProxy(m_field);
    m_strip->setFocusPolicy(Qt::ClickFocus);
    m_field->setKeys([this](QKeyEvent* event) { return key(event); });
    connect(m_field, &QLineEdit::textChanged, this, &BenchEntry::textChanged);
    for (const auto signal : {&Workbench::noteChanged, &Workbench::dimensionChanged})
        connect(&m_bench, signal, this, &BenchEntry::follow);
    connect(&m_bench, &Workbench::planChanged, this, &BenchEntry::refresh);
    for (const auto signal : {&Workbench::recordChanged, &Workbench::passChanged, &Workbench::pianoChanged})
        connect(&m_bench, signal, this, [this] { setOrder(m_order); });
    setOrder({});
}

void BenchEntry::setOrder(const EntryOrder& order) {
    const bool another = order != m_order;
    m_order = order;
    m_walk = EntryWalk(m_bench, m_order, m_bench.columns());
    if (another) m_stays = m_walk.size() == 0;
    refresh();
}

void BenchEntry::arrive() {
    if (!m_bench.piano()) return;
    if (!canTake(m_bench, m_bench.cell())) {
        const auto next = m_walk.step(m_bench.cell(), 1);
        goTo(next ? next : m_walk.first());
    }
    m_at = m_bench.cell();
    m_last.reset();
    m_repeat = false;
    m_stays = m_walk.size() == 0;
    refresh();
    m_field->setFocus();
    if (m_stays) sayEnd();
}

void BenchEntry::say(const QString& sentence) {
    m_notice = sentence;
    m_field->setAccessibleDescription(sentence);
    update();
}

void BenchEntry::type(const QString& text) {
    m_field->setText(text);
}

/// The current cell was changed from outside (a key of the strip was clicked): what is typed belongs to the cell where
/// it was typed, and is stored there; what cannot be stored yet keeps the hand there.
void BenchEntry::follow() {
    if (const Cell can = cellToType(m_bench, m_bench.cell()); can != m_bench.cell()) return m_bench.setCell(can);
    const Cell to = m_bench.cell();
    if (to != m_at) m_stays = false; // another cell was chosen
    if (to != m_at && !m_field->text().isEmpty()) {
        using Meaning = Understanding::Kind;
        if (m_meaning.kind != Meaning::sound) {
            m_bench.setCell(m_at);
            (void)commit();
            return;
        }
        const Reading reading = *m_meaning.reading;
        const bool again = std::exchange(m_repeat, false);
        m_last = m_at;
        m_field->clear();
        const auto stored = again ? m_bench.repeat(m_last.value(), reading) : m_bench.enter(m_last.value(), reading);
        if (!stored) Q_EMIT refused(stored.error());
    }
    m_at = to;
    refresh();
}

/// Another cell or another record: what stands in the field is understood afresh, never changed.
void BenchEntry::refresh() {
    if (!m_bench.piano()) return;
    textChanged();
    const Measured* measured = m_bench.pass() ? m_bench.pass()->at(m_bench.cell()) : nullptr;
    const bool shown = measured && !measured->missing() && !m_repeat;
    m_field->setPlaceholderText(shown ? words::shown(m_bench.dimension(), measured->trials.back()) : QString());
    if (m_stripShows != m_bench.dimension()) {
        StripMarks marks;
        marks.dimension = m_stripShows = m_bench.dimension();
        m_strip->setMarks(marks);
    }
    m_field->setAccessibleName(
        tr("Note %1, %2").arg(words::noteName(m_bench.note(), *m_bench.piano()), words::name(m_bench.dimension())));
    update();
}

void BenchEntry::textChanged() {
    m_asking = false;
    m_meaning = understand(m_bench, m_field->text(), m_bench.cell());
    m_hints->setHints(hints(), {});
    layOut();
    update();
}

bool BenchEntry::commit() {
    using Meaning = Understanding::Kind;
    if (m_meaning.kind == Meaning::empty) return true;
    if (m_meaning.kind == Meaning::sound) return store(*m_meaning.reading);
    m_asking = true;
    sayAt(*m_field, m_meaning.headline);
    m_field->selectAll(); // what is typed now takes the place of what was refused
    m_hints->setHints(hints(), {});
    update();
    return false;
}

/// After a stored reading a screen reader says its verdict and where the hand goes next.
void BenchEntry::speak() {
    QStringList said;
    if (const PassView* view = m_last ? m_bench.view() : nullptr)
        if (const Judged* judged = view->review.at(*m_last)) said << words::cellSentence(*judged, *m_bench.piano());
    said << tr("next: %1").arg(words::noteName(m_bench.note(), *m_bench.piano()));
    sayAt(*m_field, said.join(QStringLiteral("; ")));
}

QList<KeyHint> BenchEntry::hints() const {
    if (!m_bench.piano()) return {};
    using Meaning = Understanding::Kind;
    if (m_asking && m_meaning.kind == Meaning::question) {
        QList<KeyHint> keys;
        if (!m_meaning.suggestion.isEmpty()) keys << KeyHint{tr("Enter"), tr("take %1").arg(m_meaning.suggestion)};
        if (m_meaning.reading)
            keys << KeyHint{QStringLiteral("F9"), tr("take %1 as typed").arg(m_field->text().trimmed())};
        return keys << KeyHint{tr("Esc"), tr("type it again")};
    }
    if (!m_field->text().isEmpty())
        return {{tr("Enter"), tr("store, next")},
                {tr("Shift Enter"), tr("store, back")},
                {tr("Esc"), tr("empty the field")},
                {QStringLiteral("Ctrl Z"), tr("take back")}};
    QList<KeyHint> keys{{tr("Enter"), tr("skip")}, {tr("Shift Enter"), tr("back")}};
    for (const WordKey& word : wordKeys()) {
        const auto meant = wordFor(word.key, m_bench.cell());
        if (meant == word.word)
            keys << KeyHint{QString(QChar(static_cast<char16_t>(word.key))), words::name(word.word)};
    }
    return keys << KeyHint{QStringLiteral("Y"), tr("right")} << KeyHint{QStringLiteral("*"), tr("same as last")}
                << KeyHint{QStringLiteral("R"), tr("repeat")} << KeyHint{QStringLiteral("N"), tr("not fitted")}
                << KeyHint{tr("Tab"), tr("dimension")} << KeyHint{QStringLiteral("F3"), tr("order")}
                << KeyHint{QStringLiteral("H"), tr("how to measure")}
                << KeyHint{QStringLiteral("Ctrl Z"), tr("take back")};
}

// --- places

QRectF BenchEntry::fieldBox() const {
    return {px(40), px(222), px(330), px(190)};
}

void BenchEntry::layOut() {
    const int strip = m_strip->sizeHint().height(), hints = m_hints->sizeHint().height();
    // strip and hints keep their own size; what is left is the design's upper part
    const double room = height() - strip - hints;
    m_scale = std::max(0.35, std::min(room / 656.0, width() / kDesignWidth));
    m_wide = std::max(1.0, width() / (kDesignWidth * m_scale));
    m_strip->setGeometry(0, height() - strip - hints, width(), strip);
    m_hints->setGeometry(0, height() - hints, width(), hints);
    const QRectF box = fieldBox();
    const QRectF text = box.adjusted(px(10), px(40), -px(10), -px(6));
    m_field->setGeometry(text.toRect());
    // long texts (fractions, pairs) grow smaller instead of running out of sight
    QFont font = QWidget::font();
    double size = px(kValue);
    const QString shown = m_field->text().isEmpty() ? m_field->placeholderText() : m_field->text();
    for (;;) {
        font.setPixelSize(std::max(8, qRound(size)));
        font.setBold(true);
        if (size < px(40) || QFontMetricsF(font).horizontalAdvance(shown) < text.width() - px(16)) break;
        size *= 0.92;
    }
    m_field->setFont(font);
    QPalette palette = this->palette();
    palette.setColor(QPalette::Base, Qt::transparent);
    m_field->setPalette(palette);
}

void BenchEntry::resizeEvent(QResizeEvent* event) {
    QWidget::resizeEvent(event);
    layOut();
}

void BenchEntry::changeEvent(QEvent* event) {
    QWidget::changeEvent(event);
    if (event->type() == QEvent::FontChange || event->type() == QEvent::PaletteChange) layOut();
}

} // namespace hammerline
