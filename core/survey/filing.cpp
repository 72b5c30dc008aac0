#include "core/survey/filing.h"

namespace hammerline {
namespace {

constexpr std::string_view kFiled = "filed-";

} // namespace

std::string filingFault(int pass) {
    return std::string(kFiled) + std::to_string(pass);
}

int filingPass(std::string_view fault) {
    for (int pass = 1; pass <= kFilingPasses; ++pass)
        if (fault == filingFault(pass)) return pass;
    return 0;
}

bool isFiled(const Finding& finding) {
    const bool head = finding.part == "hammer-head" && finding.remedy == "reshape";
    return head && finding.state == FindingState::mended && finding.amount > 0;
}

double filedInAll(std::span<const Finding> findings, NoteNumber note) {
    double sum = 0;
    for (const Finding& each : findings)
        if (isFiled(each) && (!each.note || *each.note == note)) sum += each.amount;
    return sum;
}

} // namespace hammerline
