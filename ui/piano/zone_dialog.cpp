#include "ui/piano/spec_panel.h"
#include "ui/words/words.h"

#include <QDialogButtonBox>
#include <QFormLayout>
#include <QLabel>
#include <QLineEdit>
#include <QPushButton>

namespace hammerline {

namespace {

QString limitText(const std::optional<std::int64_t>& count, DimensionId dimension) {
    return count ? words::shown(dimension, *count) : QString();
}

} // namespace

ZoneDialog::ZoneDialog(const ZoneRow& row, Unit unit, const Piano& piano, QWidget* parent)
    : QDialog(parent)
    , m_row(row)
    , m_unit(unit)
    , m_piano(piano)
    , m_notes(new QLineEdit(this))
    , m_reason(new QLineEdit(this))
    , m_remark(new QLabel(this)) {
    setWindowTitle(tr("Zone of %1").arg(words::name(row.dimension).toLower()));
    auto* form = new QFormLayout(this);
    m_first = addLimits(form, row.first, false);
    if (row.first != row.last) m_last = addLimits(form, row.last, true);
    m_notes->setPlaceholderText(tr("empty: every note of this row"));
    form->addRow(tr("O&nly the notes"), m_notes);
    form->addRow(tr("&Reason"), m_reason);
    m_remark->setWordWrap(true);
    m_remark->setForegroundRole(QPalette::BrightText);
    m_remark->setMinimumHeight(u(9)); // the form keeps its size when a sentence comes
    form->addRow(m_remark);
    auto* buttons = new QDialogButtonBox(this);
    buttons->addButton(tr("Keep it"), QDialogButtonBox::AcceptRole)->setDefault(true);
    buttons->addButton(tr("Leave it"), QDialogButtonBox::RejectRole);
    connect(buttons, &QDialogButtonBox::accepted, this, [this] {
        check();
        if (change()) accept();
    });
    connect(buttons, &QDialogButtonBox::rejected, this, &QDialog::reject);
    form->addRow(buttons);
    for (QLineEdit* field : {m_notes, m_reason})
        connect(field, &QLineEdit::textEdited, this, [this] { m_remark->clear(); });
    m_first[1]->setFocus();
}

std::array<QLineEdit*, 3> ZoneDialog::addLimits(QFormLayout* form, const Zone& zone, bool last) {
    const std::array<QString, 3> names =
        last ? std::array{tr("Low at the last note"), tr("Aim at the last note"), tr("High at the last note")}
             : std::array{tr("&Low"), tr("&Aim"), tr("&High")};
    const std::array<std::optional<std::int64_t>, 3> counts{zone.low, zone.nominal, zone.high};
    std::array<QLineEdit*, 3> fields{};
    for (std::size_t i = 0; i < fields.size(); ++i) {
        fields.at(i) = new QLineEdit(limitText(counts.at(i), m_row.dimension), this);
        if (i != 1) fields.at(i)->setPlaceholderText(tr("empty: open on this side"));
        form->addRow(names.at(i), fields.at(i));
        connect(fields.at(i), &QLineEdit::textEdited, this, [this] { m_remark->clear(); });
    }
    return fields;
}

void ZoneDialog::fill(const QStringList& limits, const QString& notes, const QString& reason) {
    for (int i = 0; i < limits.size(); ++i) {
        auto& three = i < 3 ? m_first : m_last;
        if (QLineEdit* field = three.at(static_cast<std::size_t>(i % 3))) field->setText(limits[i]);
    }
    m_notes->setText(notes);
    m_reason->setText(reason);
}

/// A limit that was left as shown keeps its own value: what is shown is rounded.
Outcome<Zone> ZoneDialog::zoneOf(const std::array<QLineEdit*, 3>& fields) const {
    const Zone& before = &fields == &m_last ? m_row.last : m_row.first;
    const std::array<std::optional<std::int64_t>, 3> counts{before.low, before.nominal, before.high};
    std::array<std::optional<std::int64_t>, 3> read;
    QStringList typed;
    for (std::size_t i = 0; i < fields.size(); ++i) {
        const QString text = fields.at(i)->text().trimmed();
        typed << text;
        if (text == limitText(counts.at(i), m_row.dimension)) {
            read.at(i) = counts.at(i);
        } else if (!text.isEmpty()) {
            const auto quantity = parseQuantity(text.toStdString(), m_unit);
            if (!quantity) return tl::unexpected(quantity.error());
            read.at(i) = quantity->count;
        }
    }
    if (!read[1]) return refuse(RefusalCode::badZone, typed.join(QStringLiteral(", ")).toStdString());
    const Zone zone{read[0], *read[1], read[2]};
    if (!ordered(zone)) return refuse(RefusalCode::badZone, typed.join(QStringLiteral(", ")).toStdString());
    return zone;
}

Outcome<ZoneDialog::Change> ZoneDialog::change() const {
    Change change{m_row, {}, m_reason->text().trimmed().toStdString()};
    const auto first = zoneOf(m_first);
    if (!first) return tl::unexpected(first.error());
    change.row.first = change.row.last = *first;
    if (m_last[0]) {
        const auto last = zoneOf(m_last);
        if (!last) return tl::unexpected(last.error());
        change.row.last = *last;
    }
    if (const QString notes = m_notes->text().trimmed(); !notes.isEmpty()) {
        auto named = parseNotes(notes.toStdString(), m_piano);
        if (!named) return tl::unexpected(named.error());
        change.notes = std::move(*named);
    }
    if (change.reason.empty()) return refuse(RefusalCode::reasonMissing);
    change.row.source = change.reason;
    return change;
}

void ZoneDialog::check() {
    const auto made = change();
    m_remark->setText(made ? QString() : words::sentence(made.error()));
}

} // namespace hammerline
