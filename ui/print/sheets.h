// Sheets on paper: one painter for the preview, a printer, a PDF file and a picture.
#pragma once

#include "core/plan/plan.h"

#include <QDate>
#include <QImage>
#include <QPageSize>
#include <QPagedPaintDevice>

#include <memory>

namespace hammerline {

enum class SheetKind : std::uint8_t {
    adjustment,
    check,
    survey,
    parts,
    labels,
    comparison,
    record,
    gauges,
    action,
    estimate,
    card,
    work,
    largeAdjustment
};
/// The two that print a plan: the adjustment list as it is and in large print.
bool printsPlan(SheetKind);
enum class Paper : std::uint8_t { a4, letter };

/// The paper that a person prints on; at first what is usual in the locale's country.
Paper usualPaper();
void setUsualPaper(Paper);

struct PaperOptions {
    Paper paper = Paper::a4;
    QPageSize other = QPageSize(QPageSize::Custom); // another size than these two, where valid
    QDate date = QDate::currentDate();
    int comparedWith = 0; // comparison: the earlier pass; 0: the first one that read something
    /// Gauges: what the check line of 100 mm measured on the last print; all is drawn larger or smaller by it.
    double measured = 100;
};

/// A sheet cut into pages, ready to be painted on anything. Needs a QGuiApplication (fonts).
class PrintedSheet {
public:
    PrintedSheet(PrintedSheet&&) noexcept;
    PrintedSheet& operator=(PrintedSheet&&) noexcept;
    ~PrintedSheet();
    int pages() const;
    std::size_t rows() const;
    QString title() const;
    /// Page size and margins are set on the device first, so that the page is the one that was composed.
    void paint(QPagedPaintDevice&) const;
    /// The whole sheet as a PDF file.
    QByteArray pdf() const;
    /// A page (from 0) as a picture on white, margins included.
    QImage picture(int page, double dotsPerInch) const;

private:
    struct Inner;
    friend Outcome<PrintedSheet> composeSheet(SheetKind, const PianoRecord&, int, const Plan*, const PaperOptions&);
    explicit PrintedSheet(std::unique_ptr<Inner>);
    std::unique_ptr<Inner> m_inner;
};

/// Refuses noSuchPass; noPlan for an adjustment list without one.
Outcome<PrintedSheet> composeSheet(SheetKind, const PianoRecord&, int pass, const Plan*, const PaperOptions& = {});

/// Composes and paints in one go. The device keeps the page size that it was given.
Outcome<int> paintSheet(QPagedPaintDevice&, SheetKind, const PianoRecord&, int pass, const Plan*,
                        const PaperOptions& = {});

/// Writes the PDF beside its place first and renames it then, so that nothing half-done is left. Gives the pages.
/// Refuses as composeSheet, and cannotWrite with the path.
Outcome<int> printToPdf(SheetKind, const PianoRecord&, int pass, const Plan*, const PaperOptions&,
                        const std::string& path);

} // namespace hammerline
