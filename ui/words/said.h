// Short ways to a text that is shown. The texts are marked with QT_TRANSLATE_NOOP where they are written; the function
// names the context they stand in.
#pragma once

#include <QCoreApplication>
#include <QString>

#include <array>
#include <string_view>

namespace hammerline::words {

inline QString utf8(std::string_view text) {
    return QString::fromUtf8(text.data(), static_cast<qsizetype>(text.size()));
}

inline QString onPaper(const char* text) {
    return QCoreApplication::translate("paper", text);
}

inline QString atStation(const char* text) {
    return QCoreApplication::translate("Station", text);
}

inline QString inSurvey(const char* text) {
    return QCoreApplication::translate("survey", text);
}

/// A number with a real minus sign; what rounds to zero has none.
QString number(double value, int decimals = 1);

/// A text by the key that core or the book gives.
struct KeyedText {
    std::string_view key;
    const char* text;
};

/// The text of `key` in its context; empty where the rows do not have it.
template <std::size_t N>
QString saidOf(const std::array<KeyedText, N>& rows, std::string_view key, const char* context) {
    for (const KeyedText& row : rows)
        if (row.key == key) return QCoreApplication::translate(context, row.text);
    return {};
}

} // namespace hammerline::words
