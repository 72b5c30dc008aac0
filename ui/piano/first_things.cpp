#include "ui/piano/first_things.h"

#include "core/history/identity.h"
#include "core/spec/spec.h"
#include "core/work/work.h"
#include "ui/piano/fold.h"
#include "ui/piano/when_known.h"
#include "ui/stations/station_words.h"
#include "ui/words/piano_record.h"
#include "ui/words/said.h"
#include "ui/words/words.h"

#include <QComboBox>
#include <QLabel>
#include <QLineEdit>
#include <QPushButton>
#include <QVBoxLayout>

namespace hammerline {

namespace {

using words::utf8;

QString keysText(const Piano& piano) {
    return FirstThings::tr("%1 from %2", "88 from A0").arg(piano.notes).arg(words::pitch({1}, piano));
}

bool anythingRead(const PianoRecord& record) {
    return std::ranges::any_of(record.passes, [](const Pass& pass) { return pass.readingCount() > 0; });
}

std::string identityName(std::string_view key) {
    return "identity-" + std::string(key);
}

} // namespace

FirstThings::FirstThings(QWidget* parent) : QWidget(parent) {
    using Answer = FactRow::Answer;
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(0);
    add(column, "name", new FactRow(tr("Name"), tr("Title of every sheet."), Answer::typed, this));
    add(column, "kind", new FactRow(tr("Kind of action"), {}, Answer::chosen, this));
    add(column, "keys", new FactRow(tr("Keys"), {}, Answer::typed, this));
    add(column, "player", makeAttributeRow("player", this));
    add(column, "player-works", makeAttributeRow("player-works", this));
    add(column, "spec", new FactRow(tr("Spec sheet"), {}, Answer::chosen, this));

    m_whose = new FoldBar(tr("Whose it is"), this);
    auto* whose = new QWidget(this);
    auto* rows = new QVBoxLayout(whose);
    rows->setContentsMargins(0, 0, 0, 0);
    rows->setSpacing(0);
    for (const std::string_view key : identityKeys()) {
        auto* row = new FactRow(words::identityName(key), {}, Answer::typed, whose);
        row->field()->setObjectName(utf8(identityName(key)));
        add(rows, identityName(key), row);
    }
    connect(m_whose, &FoldBar::toggled, whose, &QWidget::setVisible);
    whose->setVisible(false);
    column->addWidget(m_whose);
    column->addWidget(whose);

    m_meets = makeText(this);
    m_caution = makeText(this);
    m_away = new QPushButton(this);
    m_away->setObjectName(QStringLiteral("put-away"));
    connect(m_away, &QPushButton::clicked, this, &FirstThings::putAway);
    auto* last = new QHBoxLayout;
    last->setContentsMargins(u(3), u(1), u(3), u(3));
    last->addWidget(m_away);
    last->addStretch(1);
    column->addWidget(m_meets);
    column->addWidget(m_caution);
    column->addLayout(last);
    column->addStretch(1);
}

void FirstThings::add(QVBoxLayout* column, std::string_view name, FactRow* row) {
    column->addWidget(row);
    m_rows[std::string(name)] = row;
    connect(row, &FactRow::said, this, [this, name = utf8(name)](const QString& value) { Q_EMIT said(name, value); });
}

void FirstThings::show(const PianoRecord& record) {
    const Piano& piano = record.piano;
    const QString held = anythingRead(record) ? tr("Stays as it is: readings were taken on it.") : QString();
    row("name")->show(QString::fromStdString(piano.name));

    FactRow::Choices kinds;
    for (const ActionKind kind : {ActionKind::upright, ActionKind::drop, ActionKind::grand})
        kinds.append({words::actionName(kind), utf8(key(kind))});
    row("kind")->setChoices(kinds);
    row("kind")->choose(utf8(key(piano.action)));
    row("kind")->setDecides(tr("Decides which parts, steps and direction words exist."));
    row("kind")->hold(held);
    row("keys")->show(keysText(piano));
    row("keys")->setDecides(tr("The line of hammers, up to %1.").arg(words::pitch({piano.notes}, piano)));
    row("keys")->hold(held);

    for (const std::string_view attribute : {"player", "player-works"})
        showAttribute(*row(attribute), attribute, piano);

    FactRow::Choices sheets;
    for (const std::string& name : sheetsFor(piano.action))
        sheets.append({words::specName(name), utf8(name)});
    const bool another = std::ranges::none_of(sheets, [&](const auto& s) { return s.second == utf8(record.specName); });
    if (another) sheets.append({words::specName(record.specName), utf8(record.specName)});
    row("spec")->setChoices(sheets);
    row("spec")->choose(utf8(record.specName));
    row("spec")->setDecides(tr("Decides what counts as right; changes no reading."));

    QStringList whose;
    for (const std::string_view key : identityKeys()) {
        const QString value = utf8(identityValue(record.identity, key));
        row(identityName(key))->show(value, words::identityHint(key));
        if (!value.isEmpty()) whose += value;
    }
    m_whose->setSummary(whose.isEmpty() ? tr("may stay empty") : whose.join(QStringLiteral(" · ")));
    m_away->setText(isArchived(record.identity) ? tr("Bring back into the list") : tr("Put away"));
    m_caution->setText(words::caution(piano.vertical() ? "tipping" : "grand-slide", piano));
    showWhatItMeets(piano);
}

void FirstThings::showWhatItMeets(const Piano& piano) {
    const auto steps = stepsOf(piano);
    const auto withNumbers =
        std::ranges::count_if(steps, [](const StepOfWork* step) { return !step->operations.empty(); });
    m_meets->setText(
        tr("<b>On this piano you will meet</b> %n step(s) of work", nullptr, static_cast<int>(steps.size())) +
        tr(", %n of them with lines of their own for every note.", nullptr, static_cast<int>(withNumbers)));
}

FactRow* FirstThings::row(std::string_view name) const {
    return m_rows.find(name)->second;
}

void FirstThings::forget() {
    for (const auto& [name, row] : m_rows)
        row->forget();
}

bool FirstThings::anyRefused() const {
    return std::ranges::any_of(m_rows, [](const auto& each) { return each.second->isRefused(); });
}

} // namespace hammerline
