#include "ui/words/plainly.h"

namespace hammerline::words {
namespace {

bool turnsRound(ushort c) {
    const bool mark = c == 0x200E || c == 0x200F || c == 0x061C;
    const bool embedding = c >= 0x202A && c <= 0x202E;
    const bool isolate = c >= 0x2066 && c <= 0x2069;
    return mark || embedding || isolate;
}

bool controls(QChar c) {
    const bool ends = c == QLatin1Char('\n') || c == QLatin1Char('\t');
    return c.category() == QChar::Other_Control && !ends;
}

} // namespace

QString plainly(const QString& text) {
    QString out;
    out.reserve(text.size());
    for (const QChar c : text) {
        if (controls(c))
            out += QStringLiteral("\\x%1").arg(c.unicode(), 2, 16, QLatin1Char('0'));
        else if (turnsRound(c.unicode()))
            out += QStringLiteral("\\u%1").arg(c.unicode(), 4, 16, QLatin1Char('0'));
        else
            out += c;
    }
    return out;
}

QString shortened(const QString& text, int most) {
    if (text.size() <= most) return text;
    const qsizetype half = most / 2;
    return text.left(half) + QChar(0x2026) + text.right(most - half - 1);
}

} // namespace hammerline::words
