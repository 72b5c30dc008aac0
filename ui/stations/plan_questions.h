// The questions that come before a plan, answered at the keyboard as states of the survey.
#pragma once

#include "ui/workbench.h"

#include <QWidget>

namespace hammerline {

/// Asks the first of them and stores the answer. Gives what was refused, as a sentence; "survey" where the fault is to
/// be named in the Survey station; empty: answered, or left open.
QString answerQuestion(QWidget* parent, Workbench&, const std::vector<std::string_view>& open);

} // namespace hammerline
