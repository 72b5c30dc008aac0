#include "ui/stations/measure_references.h"

#include "ui/widgets/look.h"
#include "ui/words/words.h"

#include <QHBoxLayout>
#include <QLabel>
#include <QPushButton>
#include <QShortcut>
#include <QVBoxLayout>

#include <algorithm>

namespace hammerline {

namespace {

constexpr int kMostReferences = 4;

bool anyRead(const Pass& pass, DimensionId dimension) {
    return std::any_of(pass.cells.begin(), pass.cells.end(), [dimension](const auto& each) {
        return each.first.dimension == dimension && !each.second.trials.empty();
    });
}

} // namespace

ReferenceBand::ReferenceBand(Workbench& bench, QWidget* parent)
    : QWidget(parent), m_bench(bench), m_text(new QLabel(this)), m_row(new QHBoxLayout) {
    setAutoFillBackground(true);
    setBackgroundRole(QPalette::AlternateBase);
    m_text->setWordWrap(true);
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(u(3), u(1.5), u(3), u(1.5));
    column->setSpacing(u(1));
    column->addWidget(m_text);
    m_row->setSpacing(u(2));
    m_row->addStretch(1);
    column->addLayout(m_row);
    for (int number = 1; number <= kMostReferences; ++number) {
        auto* key = new QShortcut(QKeySequence(QStringLiteral("Alt+%1").arg(number)), parent);
        connect(key, &QShortcut::activated, this, [this, number] { choose(number); });
    }
    hide();
}

bool ReferenceBand::asks() const {
    if (!m_bench.piano() || !m_bench.canWrite()) return false;
    const DimensionId dimension = m_bench.dimension();
    if (row(dimension).references.size() < 2) return false;
    const Pass* pass = m_bench.pass();
    return !pass || (!pass->references.contains(dimension) && !anyRead(*pass, dimension));
}

void ReferenceBand::refresh() {
    const bool shown = asks();
    setVisible(shown);
    if (!shown) {
        m_shown.reset();
        return;
    }
    const DimensionId dimension = m_bench.dimension();
    if (m_shown == dimension) return;
    m_shown = dimension;
    for (QPushButton* each : m_choices)
        delete each;
    m_choices.clear();
    m_text->setText(tr("<b>%1:</b> how is it read in this pass? Said once; else the first reading takes it as marked.")
                        .arg(words::name(dimension)));
    int number = 0;
    for (const std::string_view reference : row(dimension).references) {
        ++number;
        auto* button =
            new QPushButton(tr("%1   Alt %2").arg(words::referenceName(dimension, reference)).arg(number), this);
        button->setAccessibleName(words::referenceName(dimension, reference));
        button->setCheckable(true);
        button->setChecked(number == 1);
        button->setFocusPolicy(Qt::TabFocus);
        connect(button, &QPushButton::clicked, this, [this, number] { choose(number); });
        m_row->insertWidget(number - 1, button);
        m_choices.push_back(button);
    }
}

void ReferenceBand::choose(int number) {
    const auto& references = row(m_bench.dimension()).references;
    const bool there = number >= 1 && number <= static_cast<int>(references.size());
    if (!there || !asks()) return;
    const std::string reference(references[static_cast<std::size_t>(number) - 1]);
    const auto kept = m_bench.setReferences({{m_bench.dimension(), reference}});
    if (!kept) return Q_EMIT refused(kept.error());
    Q_EMIT chosen();
}

} // namespace hammerline
