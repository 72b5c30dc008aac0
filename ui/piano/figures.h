// The right of the Piano station: key arms, zones, and minutes and turns of the work. One of them is open, the others
// are bars to open them by.
#pragma once

#include <QWidget>

#include <array>

namespace hammerline {

class FoldBar;
class KeyArmsPage;
class SpecPanel;
class WorkPanel;
class Workbench;
struct Refusal;

class PianoFigures : public QWidget {
    Q_OBJECT
public:
    enum class Page : std::uint8_t { arms, zones, work };
    PianoFigures(Workbench&, QWidget* parent);
    void refresh();
    void open(Page);
    Page page() const { return m_page; }
    KeyArmsPage& arms() const { return *m_arms; }
    /// What takes the focus of the open page.
    QWidget* front() const;

Q_SIGNALS:
    /// An attribute of the set-up is to have a value.
    void said(const QString& attribute, const QString& value);
    void refused(const hammerline::Refusal&);

private:
    QString zonesSummary() const;
    QString workSummary() const;

    Workbench& m_bench;
    KeyArmsPage* m_arms;
    SpecPanel* m_spec;
    WorkPanel* m_work;
    std::array<FoldBar*, 3> m_bars{};
    std::array<QWidget*, 3> m_pages{};
    Page m_page = Page::arms;
};

} // namespace hammerline
