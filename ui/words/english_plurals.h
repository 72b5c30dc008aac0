// English plurals of counted sentences. The sources are written "%n note(s)"; every other language brings a catalogue,
// and English, which has no catalogue of its own, gets its endings here.
#pragma once

#include <QTranslator>

namespace hammerline::words {

class EnglishPlurals : public QTranslator {
public:
    /// Only counted sentences are answered (n >= 0); all others are left to the source text.
    QString translate(const char* context, const char* source, const char* disambiguation, int n) const override;
    bool isEmpty() const override { return false; }
};

} // namespace hammerline::words
