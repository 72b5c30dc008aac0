// The first things said of a piano: kind, keys, player, spec sheet, name, and whose it is; below them what the work on
// such a piano will meet.
#pragma once

#include "core/history/record.h"
#include "ui/piano/fact_row.h"

#include <map>

class QPushButton;

namespace hammerline {

class FoldBar;

class FirstThings : public QWidget {
    Q_OBJECT
public:
    explicit FirstThings(QWidget* parent);
    void show(const PianoRecord&);
    FactRow* row(std::string_view name) const;
    void forget();
    bool anyRefused() const;

Q_SIGNALS:
    /// name, kind, keys, spec, player, player-works, or identity-KEY.
    void said(const QString& what, const QString& value);
    void putAway();

private:
    void add(class QVBoxLayout*, std::string_view name, FactRow*);
    void showWhatItMeets(const Piano&);

    std::map<std::string, FactRow*, std::less<>> m_rows;
    FoldBar* m_whose;
    class QLabel *m_meets, *m_caution;
    QPushButton* m_away;
};

} // namespace hammerline
