#include "core/work/reads.h"

#include <algorithm>

namespace hammerline::work {
namespace {

/// Where this share of the notes was read, the dimension is known.
constexpr double kWellRead = 0.8;
/// Of a rail or a rod so many readings tell.
constexpr std::size_t kEnoughSamples = 2;

} // namespace

std::vector<NoteNumber> without(const std::vector<NoteNumber>& all, const std::vector<NoteNumber>& taken) {
    std::vector<NoteNumber> out;
    for (const NoteNumber n : all)
        if (std::find(taken.begin(), taken.end(), n) == taken.end()) out.push_back(n);
    return out;
}

ReadsOfStep readsOf(const StepOfWork& step, const WorkFacts& facts) {
    ReadsOfStep reads;
    const StepEvidence* evidence = evidenceOf(step.id);
    if (!evidence || evidence->dimensions.empty()) return reads;
    reads.well = true;
    for (const DimensionId dimension : evidence->dimensions) {
        const auto notes = notesOf(step, dimension, facts.piano);
        if (notes.empty()) continue;
        const auto found = facts.readings.find(dimension);
        const ReadFacts here = found == facts.readings.end() ? ReadFacts{} : found->second;
        const auto unread = without(notes, here.read);
        const auto outside = without(notes, without(notes, here.outside));
        const std::size_t read = notes.size() - unread.size();
        const bool mostOfThem = static_cast<double>(read) >= kWellRead * static_cast<double>(notes.size());
        const bool well = mostOfThem || (evidence->sampled && read >= kEnoughSamples);
        const bool byNumber = !row(dimension).wordsOnly && !evidence->sampled;
        if (!well || !outside.empty()) reads.first = reads.first.value_or(dimension);
        if (!well && byNumber && !reads.firstUnread) {
            reads.firstUnread = dimension;
            reads.unread = unread;
        }
        reads.any = reads.any || read > 0;
        reads.well = reads.well && well;
        reads.order = std::max(reads.order, here.order);
        reads.outside.insert(reads.outside.end(), outside.begin(), outside.end());
        reads.outsideWords = reads.outsideWords || (row(dimension).wordsOnly && !outside.empty());
    }
    std::sort(reads.outside.begin(), reads.outside.end());
    return reads;
}

} // namespace hammerline::work
