// How far long work has come, and whether it is to go on.
#pragma once

#include "db/bench_book.h"
#include "db/guard.h"

#include <SQLiteCpp/Database.h>

#include <algorithm>

namespace hammerline {

/// A stretch of a piece of work, as seen by who waits for the whole of it.
class Headway {
public:
    /// `goOn` is to outlive it.
    explicit Headway(const GoOn& goOn) : m_goOn(&goOn) {}
    /// Nobody waits.
    Headway() = default;

    /// The stretch of this one between two shares of it.
    Headway part(double from, double to) const {
        Headway made = *this;
        made.m_from = whole(from);
        made.m_to = whole(to);
        return made;
    }
    /// Says how far it is. False: it is to stop.
    bool goesOn(double share) const { return !m_goOn || !*m_goOn || (*m_goOn)(whole(std::clamp(share, 0.0, 1.0))); }
    /// The same; ends the work with `cancelled` where it is to stop.
    void at(double share) const {
        if (!goesOn(share)) fail(RefusalCode::cancelled);
    }

private:
    double whole(double share) const { return m_from + (m_to - m_from) * share; }

    const GoOn* m_goOn = nullptr;
    double m_from = 0, m_to = 1;
};

/// While it lives, a connection says how far it is within its statements, which may take long, and ends them with
/// `cancelled` where they are to stop. Only for statements that read.
class Watched {
public:
    /// What counts as the whole way follows from the size of the book.
    Watched(SQLite::Database&, const Headway&);
    Watched(const Watched&) = delete;
    Watched& operator=(const Watched&) = delete;
    ~Watched();

private:
    static int look(void* watched);

    SQLite::Database& m_db;
    Headway m_headway;
    double m_looks = 0, m_expected = 1;
};

} // namespace hammerline
