// What the drawings of doing say. `step`: StepOfWork::drawing; `kinds`: as the drawing has them, for one id
// may have a drawing for each kind.
#pragma once

#include <QString>

#include <array>
#include <span>
#include <string_view>

namespace hammerline::words {

/// From where it is seen; what the test is; its figure, where there is one; and the whole as one sentence for someone
/// who does not see it.
struct DoingText {
    std::string_view step, kinds;
    const char *view, *test, *figure, *sentence;
};
std::span<const DoingText> doingTexts();

/// A part or an act, by the key a drawing names it with; empty: there is no such key.
QString doingName(std::string_view key);
QString doingView(std::string_view step, std::string_view kinds);
QString doingTest(std::string_view step, std::string_view kinds);
QString doingFigure(std::string_view step, std::string_view kinds);
QString doingSentence(std::string_view step, std::string_view kinds);
QString doingTestHead();

} // namespace hammerline::words
