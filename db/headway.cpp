#include "db/headway.h"

#include "db/connection.h"

#include <sqlite3.h>

namespace hammerline {
namespace {

constexpr int kInstructionsBetweenLooks = 5'000; // of SQLite's virtual machine: less than a millisecond
constexpr double kInstructionsAPage = 5'000;     // that a check of the whole book takes

} // namespace

Watched::Watched(SQLite::Database& db, const Headway& headway) : m_db(db), m_headway(headway) {
    m_expected = static_cast<double>(pragmaNumber(db, "page_count")) * kInstructionsAPage / kInstructionsBetweenLooks;
    m_headway.at(0);
    sqlite3_progress_handler(db.getHandle(), kInstructionsBetweenLooks, look, this);
}

Watched::~Watched() {
    sqlite3_progress_handler(m_db.getHandle(), 0, nullptr, nullptr);
}

int Watched::look(void* watched) {
    auto& self = *static_cast<Watched*>(watched);
    ++self.m_looks;
    return self.m_headway.goesOn(self.m_looks / (self.m_expected + 1)) ? 0 : 1;
}

} // namespace hammerline
