#include "ui/words/english_plurals.h"

namespace hammerline::words {

QString EnglishPlurals::translate(const char*, const char* source, const char*, int n) const {
    if (n < 0 || !source) return {};
    QString text = QString::fromUtf8(source);
    const bool one = n == 1;
    text.replace(QLatin1String("(es)"), one ? QString() : QStringLiteral("es"));
    text.replace(QLatin1String("(s)"), one ? QString() : QStringLiteral("s"));
    return text;
}

} // namespace hammerline::words
