// How a question that comes before a plan is answered: what is asked for, and where the answer is kept. A part's state
// goes to the survey, a look to the pass it was looked at in.
#pragma once

#include "core/survey/survey.h"
#include "ui/workbench.h"

namespace hammerline {

struct QuestionForm {
    enum class Kind : std::uint8_t {
        look,  // yes or no
        whole, // a part, in order or not, wherever it is
        tried, // a part that is tried at single notes: in order where it was tried, and nowhere else
        told,  // nothing to answer: it says what to do
    };
    Kind kind = Kind::told;
    const Part* part = nullptr;  // of whole and tried
    std::string_view fault = {}; // what tried asks about
};

QuestionForm formOf(std::string_view question);
/// Refuses unknownLook, and what the book refuses.
Outcome<void> answerLook(Workbench&, std::string_view question, bool yes);
/// In order at these notes; empty: wherever the piano has the part. Refuses unknownNote.
Outcome<void> answerSound(Workbench&, const Part&, const std::string& notes);
/// The same with what is wrong there.
Outcome<void> answerFaulty(Workbench&, const Part&, std::string_view fault, const std::string& notes);
/// A letter alone names a key of every octave: it is asked about, never guessed.
bool isBareLetter(const QString& notes);

} // namespace hammerline
