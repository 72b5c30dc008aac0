#include "ui/stations/how_to.h"

#include "ui/stations/station_words.h"
#include "ui/widgets/action_drawing.h"
#include "ui/widgets/look.h"
#include "ui/words/how_to.h"
#include "ui/words/words.h"

#include <QComboBox>
#include <QHBoxLayout>
#include <QKeyEvent>
#include <QLabel>
#include <QPushButton>
#include <QScrollArea>
#include <QVBoxLayout>

#include <algorithm>

namespace hammerline {

std::vector<DimensionId> dimensionsToShow(const Piano* piano) {
    std::vector<DimensionId> shown;
    for (const Dimension& dimension : dimensions())
        if (!piano || fittedAnywhere(dimension.id, *piano)) shown.push_back(dimension.id);
    return shown;
}

HowToDialog::HowToDialog(std::vector<DimensionId> dimensions, DimensionId first, ActionKind kind, QWidget* parent)
    : QDialog(parent)
    , m_dimensions(std::move(dimensions))
    , m_kind(kind)
    , m_drawing(new ActionDrawing(this))
    , m_title(new QLabel(this))
    , m_text(makeText(this))
    , m_which(makeChoice(tr("Dimension"), this))
    , m_action(makeChoice(tr("Kind of action"), this)) {
    setWindowTitle(tr("How to measure"));
    setObjectName(QStringLiteral("howTo"));
    const auto here = std::find(m_dimensions.begin(), m_dimensions.end(), first);
    if (here == m_dimensions.end()) m_dimensions.insert(m_dimensions.begin(), first);
    m_at = here == m_dimensions.end() ? 0 : static_cast<std::size_t>(here - m_dimensions.begin());
    for (const DimensionId id : m_dimensions)
        m_which->addItem(words::name(id));
    m_action->addItems({words::actionName(ActionKind::upright), words::actionName(ActionKind::grand)});
    auto* top = new QHBoxLayout;
    m_title->setFont(face(Text::title, true));
    top->addWidget(m_title, 1);
    auto* before = new QPushButton(tr("Before  ["), this);
    auto* after = new QPushButton(tr("Next  ]"), this);
    for (QWidget* each : std::initializer_list<QWidget*>{m_which, m_action, before, after}) {
        each->setMinimumHeight(u(7.5));
        top->addWidget(each);
    }
    auto* area = new QScrollArea(this);
    area->setWidget(m_text);
    area->setWidgetResizable(true);
    area->setFrameShape(QFrame::NoFrame);
    area->setBackgroundRole(QPalette::Base);
    area->setAccessibleName(tr("How it is measured"));
    m_text->setBackgroundRole(QPalette::Base);
    auto* body = new QHBoxLayout;
    body->setSpacing(0);
    body->addWidget(m_drawing, 13);
    area->setMaximumWidth(u(150)); // longer lines are hard to read
    body->addWidget(area, 9);
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(u(4), u(3), u(4), u(4));
    column->setSpacing(u(3));
    column->addLayout(top);
    column->addLayout(body, 1);
    auto* close = new QPushButton(tr("Close"), this);
    close->setMinimumHeight(u(7.5));
    close->setDefault(true);
    column->addWidget(close, 0, Qt::AlignRight);
    connect(close, &QPushButton::clicked, this, &QDialog::accept);
    connect(before, &QPushButton::clicked, this, [this] { step(-1); });
    connect(after, &QPushButton::clicked, this, [this] { step(1); });
    for (QPushButton* each : {before, after})
        each->setAutoDefault(false);
    connect(m_which, &QComboBox::activated, this, [this](int i) {
        m_at = static_cast<std::size_t>(i);
        refresh();
    });
    connect(m_action, &QComboBox::activated, this,
            [this](int i) { setKind(i == 1 ? ActionKind::grand : ActionKind::upright); });
    resize(u(275), u(165));
    refresh();
    close->setFocus();
}

void HowToDialog::step(int by) {
    const auto to = static_cast<std::ptrdiff_t>(m_at) + by;
    if (to < 0 || to >= static_cast<std::ptrdiff_t>(m_dimensions.size())) return;
    m_at = static_cast<std::size_t>(to);
    refresh();
}

void HowToDialog::setKind(ActionKind kind) {
    m_kind = kind;
    refresh();
}

QString HowToDialog::text() const {
    return m_text->text();
}

void HowToDialog::refresh() {
    m_title->setText(words::name(dimension()));
    m_which->setCurrentIndex(static_cast<int>(m_at));
    m_action->setCurrentIndex(m_kind == ActionKind::grand ? 1 : 0);
    m_drawing->setSubject(dimension(), m_kind);
    const words::HowTo how = words::howTo(dimension(), m_kind);
    const auto part = [](const QString& title, const QString& body) {
        return QStringLiteral("<p><b>%1</b><br>%2</p>").arg(title.toHtmlEscaped(), body.toHtmlEscaped());
    };
    m_text->setFont(face(Text::listDigits));
    m_text->setText(part(tr("From where to where"), how.fromTo) + part(tr("How"), how.how) +
                    part(tr("With"), how.with) + part(tr("Against"), how.reference) +
                    part(tr("Usual mistake"), how.mistake) +
                    QStringLiteral("<p><i>%1</i></p>").arg(how.beforeAll.toHtmlEscaped()));
}

void HowToDialog::keyPressEvent(QKeyEvent* event) {
    switch (event->key()) {
    case Qt::Key_BracketLeft:
    case Qt::Key_PageUp:
        return step(-1);
    case Qt::Key_BracketRight:
    case Qt::Key_PageDown:
        return step(1);
    case Qt::Key_G:
        return setKind(m_kind == ActionKind::grand ? ActionKind::upright : ActionKind::grand);
    default:
        QDialog::keyPressEvent(event);
    }
}

} // namespace hammerline
