// From what a dimension is counted, asked over the grid before its first reading of a pass: the key bed or the piano's
// own line, a finger or a weight. Alt and a number choose; the first reading takes it as it is marked.
#pragma once

#include "ui/workbench.h"

#include <QWidget>

class QHBoxLayout;
class QLabel;
class QPushButton;

namespace hammerline {

class ReferenceBand : public QWidget {
    Q_OBJECT
public:
    ReferenceBand(Workbench&, QWidget* parent);
    /// Shown where the current dimension has several references, none was said in this pass, and nothing read yet.
    void refresh();
    /// The n-th reference, from 1; nothing where there is none, or nothing is asked.
    void choose(int number);

Q_SIGNALS:
    void chosen();
    void refused(const hammerline::Refusal&);

private:
    bool asks() const;

    Workbench& m_bench;
    QLabel* m_text;
    QHBoxLayout* m_row;
    std::vector<QPushButton*> m_choices;
    std::optional<DimensionId> m_shown;
};

} // namespace hammerline
