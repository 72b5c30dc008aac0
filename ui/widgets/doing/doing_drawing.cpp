#include "ui/widgets/doing/doing_drawing.h"

#include "ui/words/doing.h"

namespace hammerline {

namespace doing {

const std::vector<Drawing>& drawings() {
    static const std::vector<Drawing> all = [] {
        std::vector<Drawing> out;
        for (const auto& part : {keyDrawings(), punchingDrawings(), capstanDrawings(), letOffDrawings(), railDrawings(),
                                 hammerDrawings(), headDrawings(), damperDrawings(), grandDrawings()})
            out.insert(out.end(), part.begin(), part.end());
        return out;
    }();
    return all;
}

const Drawing* drawingOf(std::string_view step, std::string_view letters) {
    for (const Drawing& each : drawings())
        if (each.step == step && each.kinds.find_first_of(letters) != std::string_view::npos) return &each;
    return nullptr;
}

} // namespace doing

DoingDrawing::DoingDrawing(QWidget* parent) : QWidget(parent) {
    setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Expanding);
    setAccessibleName(tr("Drawing of the adjustment"));
}

bool DoingDrawing::setSubject(std::string_view drawing, std::string_view letters) {
    m_drawing = doing::drawingOf(drawing, letters);
    setAccessibleDescription(m_drawing ? words::doingSentence(m_drawing->step, m_drawing->kinds) : QString());
    updateGeometry();
    update();
    return m_drawing != nullptr;
}

QSize DoingDrawing::sizeHint() const {
    return m_drawing ? QSize(u(160), u(63)) : QSize(0, 0);
}

void DoingDrawing::paintEvent(QPaintEvent*) {
    if (!m_drawing) return;
    QPainter painter(this);
    const DrawnStyle style = screenStyle(*this);
    painter.fillRect(rect(), ink(style.look.paper));
    doing::paintDrawing(painter, style, *m_drawing, doing::layDrawing(rect(), style, *m_drawing));
}

} // namespace hammerline
