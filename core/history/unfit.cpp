#include "core/history/unfit.h"

#include <algorithm>
#include <cmath>

namespace hammerline {
namespace {

constexpr std::int64_t kMostCount = 1'000'000'000'000; // as the CHECKs of a reading
constexpr std::int64_t kMostTime = std::int64_t{1} << 61;
constexpr double kMostAmount = 1e6; // mm, g, turns
constexpr std::int64_t kMostSeconds = 100LL * 365 * 24 * 3600;

bool within(std::int64_t count) {
    return count >= -kMostCount && count <= kMostCount;
}
bool within(double amount) {
    return std::isfinite(amount) && std::abs(amount) <= kMostAmount;
}
bool isTime(std::int64_t time) {
    return time >= 0 && time <= kMostTime;
}

/// Whether rows are fit, on one piano.
class Fitness {
public:
    explicit Fitness(const Piano& piano) : m_notes(piano.notes) {}

    bool note(NoteNumber note) const { return note.value >= 1 && note.value <= m_notes; }
    bool note(const std::optional<NoteNumber>& which) const { return !which || note(*which); }

    bool fits(const Reading& each) const {
        const bool ordered = each.relation != Relation::between || each.count <= each.upper;
        return within(each.count) && within(each.upper) && ordered && each.trial >= 1 && isTime(each.order) &&
               isTime(each.at);
    }
    bool fits(const Override& each) const {
        const Zone& zone = each.zone;
        const bool lowFits = !zone.low || (within(*zone.low) && *zone.low <= zone.nominal);
        const bool highFits = !zone.high || (within(*zone.high) && zone.nominal <= *zone.high);
        return note(each.cell.note) && within(zone.nominal) && lowFits && highFits;
    }
    bool fits(const Symptom& each) const {
        const bool ordered = each.notes.first <= each.notes.last;
        return note(NoteNumber{each.notes.first}) && note(NoteNumber{each.notes.last}) && ordered && isTime(each.order);
    }
    bool fits(const Finding& each) const {
        return note(each.note) && within(each.amount) && isTime(each.order) && isTime(each.at);
    }
    bool fits(const Done& each) const {
        const bool notesFit = std::ranges::all_of(each.notes, [this](NoteNumber at) { return note(at); });
        const bool amountsFit = std::ranges::all_of(
            each.amounts, [this](const auto& at) { return note(NoteNumber{at.first}) && within(at.second); });
        const bool amountFits = !each.amount || within(*each.amount);
        const bool aimFits = !each.aim || within(*each.aim);
        return notesFit && amountsFit && amountFits && aimFits && isTime(each.order) && isTime(each.at);
    }
    bool fits(const Remark& each) const { return note(each.about.note) && isTime(each.order) && isTime(each.at); }
    bool fits(const Photo& each) const { return note(each.about.note) && isTime(each.order) && isTime(each.at); }
    bool fits(const WorkMark& each) const {
        return note(each.note) && each.seconds >= 0 && each.seconds <= kMostSeconds && isTime(each.order) &&
               isTime(each.at);
    }

private:
    int m_notes;
};

std::string at(const std::optional<NoteNumber>& note) {
    return note ? std::to_string(note->value) : std::string();
}
std::string nameOf(const Override& each) {
    return "override:" + at(each.cell.note) + ':' + std::string(key(each.cell.dimension));
}
std::string nameOf(const Symptom& each) {
    return "symptom:" + std::to_string(each.notes.first) + '-' + std::to_string(each.notes.last) + ':' + each.key;
}
std::string nameOf(const Finding& each) {
    return "finding:" + at(each.note) + ':' + each.part;
}
std::string nameOf(const Done& each) {
    return "done::" + (each.step.empty() ? std::string(key(each.operation)) : each.step);
}
std::string nameOf(const Remark& each) {
    return "remark:" + at(each.about.note) + ':' + each.text;
}
std::string nameOf(const Photo& each) {
    return "photo:" + at(each.about.note) + ':' + each.caption;
}
std::string nameOf(const WorkMark& each) {
    return "work:" + at(each.note) + ':' + each.step;
}

template <class Row>
void leaveOut(std::vector<Row>& rows, const Fitness& fitness, std::vector<std::string>& told) {
    std::erase_if(rows, [&](const Row& each) {
        const bool fits = fitness.fits(each);
        if (!fits) told.push_back(nameOf(each));
        return !fits;
    });
}

void leaveOutReadings(Pass& pass, const Fitness& fitness, std::vector<std::string>& told) {
    std::erase_if(pass.cells, [&](auto& entry) {
        const auto& [cell, measured] = entry;
        const bool noteFits = fitness.note(cell.note);
        const bool fits =
            noteFits && std::ranges::all_of(measured.trials, [&](const Reading& each) { return fitness.fits(each); });
        if (!fits) told.push_back("reading:" + at(cell.note) + ':' + std::string(key(cell.dimension)));
        return !fits;
    });
}

} // namespace

void leaveOutUnfit(PianoRecord& record) {
    const Fitness fitness(record.piano);
    for (Pass& pass : record.passes) {
        leaveOutReadings(pass, fitness, record.leftOut);
        for (std::int64_t* time : {&pass.startedAt, &pass.order})
            if (!isTime(*time)) {
                record.leftOut.push_back("time::" + pass.label);
                *time = 0;
            }
    }
    leaveOut(record.overrides, fitness, record.leftOut);
    leaveOut(record.findings, fitness, record.leftOut);
    leaveOut(record.symptoms, fitness, record.leftOut);
    leaveOut(record.done, fitness, record.leftOut);
    leaveOut(record.remarks, fitness, record.leftOut);
    leaveOut(record.photos, fitness, record.leftOut);
    leaveOut(record.marks, fitness, record.leftOut);
}

} // namespace hammerline
