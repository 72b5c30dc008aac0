// Of the table that is looked at: how it is read, and what of it is taken.
#include "core/intake/long_form.h"
#include "db/storing_intake.h"
#include "ui/stations/measure_intake.h"
#include "ui/widgets/long_work.h"
#include "ui/words/words.h"

#include <QComboBox>
#include <QLabel>
#include <QPushButton>

#include <algorithm>
#include <set>

namespace hammerline {

namespace {
constexpr std::size_t kLongFile = std::size_t{1} << 20, kPiece = std::size_t{1} << 18;
}

/// A long file of the program's own form is read piece by piece, so that it can be stopped; all else at once.
Outcome<Intake> IntakeDialog::readTable() {
    const std::string_view bytes(m_bytes.constData(), static_cast<std::size_t>(m_bytes.size()));
    const bool wide = bytes.starts_with("\xFF\xFE") || bytes.starts_with("\xFE\xFF");
    const auto whole = [&] { return readReadings(bytes, *m_bench.piano(), m_options); };
    if (bytes.size() < kLongFile || wide || !isLongForm(bytes.substr(0, kPiece))) return whole();
    LongWork work(this, tr("Reading %1").arg(m_source), m_bytes.size());
    PianoNames names(m_bench.piano()->name, m_options.separator.value_or(separatorOfHead(bytes.substr(0, kPiece))));
    names.add(bytes);
    std::vector<Sound> sound;
    LongFormReader reader(
        *m_bench.piano(), [&](Sound&& each) { sound.push_back(std::move(each)); }, names.found(), m_options.separator);
    for (std::size_t at = 0; at < bytes.size(); at += kPiece) {
        if (!work.at(static_cast<std::int64_t>(at))) return refuse(RefusalCode::cancelled);
        const auto added = reader.add(bytes.substr(at, kPiece));
        if (!added && added.error().detail == "encoding") return whole();
        if (!added) return tl::unexpected(added.error());
    }
    auto intake = reader.finish();
    if (intake) intake->sound = std::move(sound);
    return intake;
}

void IntakeDialog::read() {
    // what the pass was asked once holds for the file as well
    speakAsThePass(*m_bench.record(), m_bench.joinsPass() ? std::optional(m_bench.passNumber()) : std::nullopt,
                   m_options);
    auto found = readTable();
    m_readable = found.has_value();
    m_refusal.clear();
    if (found) {
        m_intake = std::move(*found);
    } else {
        m_intake = {};
        found.error().place.source = m_source.toStdString();
        m_refusal = words::sentence(found.error());
    }
    std::set<std::string> passes;
    for (const Sound& sound : m_intake.sound)
        passes.insert(sound.pass);
    for (const SaidNotFitted& mark : m_intake.notFitted)
        passes.insert(mark.pass);
    for (const Question& question : m_intake.questions)
        passes.insert(question.pass);
    m_pass->clear();
    passes.erase(std::string{});
    if (!passes.empty()) m_pass->addItem(tr("each into the pass it names"), QString());
    for (const std::string& pass : passes)
        m_pass->addItem(tr("only pass %1, into the pass shown").arg(QString::fromStdString(pass)),
                        QString::fromStdString(pass));
    m_pass->setVisible(!passes.empty());
    buildColumns();
    m_columns->setVisible(!m_intake.columns.empty()); // the long form says itself what each is
    fill();
}

bool IntakeDialog::wanted(const std::string& pass) const {
    const QString only = m_pass->currentData().toString();
    return only.isEmpty() || pass == only.toStdString();
}

Intake IntakeDialog::taken() const {
    Intake out;
    out.longForm = m_intake.longForm;
    out.references = m_intake.references;
    const bool each = m_pass->currentData().toString().isEmpty();
    const auto add = [&](auto& list, const auto& item) {
        list.push_back(item);
        if (!each) list.back().pass.clear();
    };
    for (const Sound& sound : m_intake.sound)
        if (wanted(sound.pass)) add(out.sound, sound);
    for (const auto& [i, said] : m_answers) {
        const Question& question = m_intake.questions[i];
        if (!wanted(question.pass)) continue;
        if (const auto reading = answered(question, said))
            add(out.sound, Sound{*question.cell, *reading, question.place.line, question.pass});
    }
    for (const SaidNotFitted& mark : m_intake.notFitted)
        if (wanted(mark.pass)) add(out.notFitted, mark);
    if (each) out.passes = m_intake.passes;
    return out;
}

std::size_t IntakeDialog::takenCount() const {
    const auto ours = [&](const auto& item) { return wanted(item.pass); };
    const auto answers = std::count_if(m_answers.begin(), m_answers.end(),
                                       [&](const auto& each) { return wanted(m_intake.questions[each.first].pass); });
    return static_cast<std::size_t>(std::count_if(m_intake.sound.begin(), m_intake.sound.end(), ours) + answers);
}

void IntakeDialog::choosePass(const QString& name) {
    m_pass->setCurrentIndex(std::max(0, m_pass->findData(name)));
    fill();
}

std::optional<Reading> IntakeDialog::answered(const Question& question, Answer said) const {
    if (!question.cell || said == Answer::leave) return {};
    if (said == Answer::asTyped) {
        if (!question.mayTake || !question.asTyped) return {};
        Reading reading = *question.asTyped;
        reading.taken = true;
        return reading;
    }
    if (question.suggestion.empty()) return {};
    const auto entry = m_bench.understand(question.suggestion, *question.cell);
    return entry ? entry->sound : std::nullopt;
}

bool IntakeDialog::answer(std::size_t question, Answer said) {
    if (question >= m_intake.questions.size()) return false;
    if (said == Answer::leave) {
        m_answers.erase(question);
    } else {
        if (!answered(m_intake.questions[question], said)) return false;
        m_answers[question] = said;
    }
    m_summary->setText(summary());
    m_take->setEnabled(takenCount() > 0 || !m_intake.notFitted.empty());
    return true;
}

} // namespace hammerline
