// A page for somebody who knows: findings, photographs, readings drawn as profiles, one question, and room to answer.
// One HTML file that needs nothing else: no network, no script to be read, and it fits a telephone.
#pragma once

#include "core/sheet/answers.h"
#include "core/sheet/pass_view.h"

#include <QString>

namespace hammerline::words {

struct OpinionOptions {
    QString question;   // may be empty
    std::string from;   // who asks; may be empty
    std::string on;     // YYYY-MM-DD
    bool whose = false; // also the owner, the contact and the place
};

/// What one answer is given to: findings that say the same of several notes are one.
struct OpinionItem {
    About about;
    QString title, text;
    std::vector<const Photo*> photos;
    std::vector<const Remark*> remarks;
};
/// Findings to do or to watch, then what else has a photograph or a remark. Points into the record.
std::vector<OpinionItem> opinionItems(const PianoRecord&);

/// Pictures are taken from record.pictures; a photograph whose picture is not there is named only. `view`: of the pass
/// whose readings are drawn; null: none.
QString opinionPage(const PianoRecord&, const PassView* view, const OpinionOptions&);

} // namespace hammerline::words
