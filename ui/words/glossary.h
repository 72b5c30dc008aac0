// What the words of the program mean, in one sentence or two each: the glossary, and help on a label.
#pragma once

#include <QString>

#include <span>
#include <vector>

namespace hammerline::words {

struct Term {
    const char* name; // as labels write it, in lower case
    const char* text; // its meaning
};

/// All of them, in the order of the alphabet in English.
std::span<const Term> terms();
QString termName(const Term&);
QString termText(const Term&);

/// The terms that occur in a text as whole words, as they stand there; of two that overlap the longer one.
std::vector<const Term*> termsIn(const QString& text);
/// Name and meaning as a paragraph of rich text each.
QString termsAsHtml(const std::vector<const Term*>&);

} // namespace hammerline::words
