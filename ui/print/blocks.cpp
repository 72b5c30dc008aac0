// The blocks that every sheet is made of.
#include "ui/print/document.h"

namespace hammerline::print {

namespace {
constexpr Type kHeading{14, true}, kSide{9}, kAccess{12, true}, kRemark{9.5};
}

Solid gap(double mm) {
    return {mm, {}, false};
}

Solid paragraphBlock(const Paragraph& text, double points, double width, bool keepWithNext) {
    const Type type{points};
    return {paragraphHeight(text, type, width) + 1.2,
            [text, type](Canvas& c, const QRectF& r) { c.paragraph(r.x(), r.y() + 0.4, r.width(), text, type); },
            keepWithNext};
}

Solid headingBlock(const QString& number, const QString& text, const QString& right) {
    return {9.2,
            [=](Canvas& c, const QRectF& r) {
                const double base = r.y() + 6.4;
                const double side = textWidth(right, kSide);
                double x = r.x();
                if (!number.isEmpty()) x += c.text(x, base, number, kHeading) + 3;
                c.textWithin(x, base, r.right() - side - 4 - x, text, kHeading);
                c.text(r.right(), base, right, kSide, Align::right);
                c.line(r.x(), r.y() + 8.4, r.right(), r.y() + 8.4, 0.3);
            },
            true};
}

Solid accessBar(const QString& access, const QString& remark, const QString& right) {
    return {11.5,
            [=](Canvas& c, const QRectF& r) {
                c.line(r.x(), r.y() + 1.5, r.right(), r.y() + 1.5, 0.55);
                c.line(r.x(), r.y() + 9.7, r.right(), r.y() + 9.7, 0.55);
                const double base = r.y() + 7.1;
                const double x = r.x() + 0.6 + c.text(r.x() + 0.6, base, access, kAccess) + 4;
                const double side = textWidth(right, kSide);
                c.textWithin(x, base, r.right() - side - 4 - x, remark, kRemark);
                c.text(r.right() - 0.6, base, right, kSide, Align::right);
            },
            true};
}

Solid cautionBox(const Paragraph& text, double width) {
    const Type type{9.5};
    const double inner = width - 7.5;
    const double height = paragraphHeight(text, type, inner) + 4;
    return {height + 2.5, [=](Canvas& c, const QRectF& r) {
                c.frame({r.x(), r.y(), r.width(), height}, 0.4);
                c.fill({r.x(), r.y(), 1.8, height});
                c.paragraph(r.x() + 4.5, r.y() + 2, inner, text, type);
            }};
}

Paragraph boldBeforeColon(const QString& text) {
    const auto colon = text.indexOf(QLatin1Char(':'));
    if (colon < 0) return {{text, false}};
    return {{text.left(colon + 1), true}, {text.mid(colon + 1), false}};
}

} // namespace hammerline::print
