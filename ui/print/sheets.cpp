#include "ui/print/sheets.h"

#include "db/document.h"
#include "ui/print/documents.h"

#include <QBuffer>
#include <QLocale>
#include <QPainter>
#include <QPdfWriter>

#include <algorithm>

namespace hammerline {

namespace {
std::optional<Paper> chosenPaper;
} // namespace

Paper usualPaper() {
    const bool letter = QLocale().measurementSystem() == QLocale::ImperialUSSystem;
    return chosenPaper.value_or(letter ? Paper::letter : Paper::a4);
}

void setUsualPaper(Paper paper) {
    chosenPaper = paper;
}

namespace {

constexpr double kMmPerInch = 25.4;

print::PaperSize sizeOf(Paper paper) {
    return paper == Paper::a4 ? print::PaperSize{210, 297, 14} : print::PaperSize{215.9, 279.4, 14};
}

print::PaperSize sizeOf(const QPageSize& page) {
    const QSizeF mm = page.size(QPageSize::Millimeter);
    return {mm.width(), mm.height(), 14};
}

QPageSize pageSizeOf(const print::PaperSize& size) {
    // The two usual sizes by name, so that a printer finds its tray.
    for (const auto id : {QPageSize::A4, QPageSize::Letter}) {
        const QSizeF mm = QPageSize(id).size(QPageSize::Millimeter);
        if (std::abs(mm.width() - size.width) < 0.6 && std::abs(mm.height() - size.height) < 0.6) return QPageSize(id);
    }
    return QPageSize(QSizeF(size.width, size.height), QPageSize::Millimeter);
}

/// What the paper holds of a drawing that is enlarged on it.
print::PaperSize roomOf(const print::PaperSize& size, double enlarged) {
    return {size.innerWidth() / enlarged + 2 * size.margin, size.innerHeight() / enlarged + 2 * size.margin,
            size.margin};
}

Outcome<print::Document> adjustment(const print::Source& source, const Plan* plan, print::LineSize size) {
    if (!plan) return refuse(RefusalCode::noPlan);
    return print::adjustmentDocument(source, adjustmentSheet(source.record, source.view, *plan), *plan, size);
}

/// The first pass that read something: what the piano was before all work, as the window compares.
int firstRead(const PianoRecord& record, int now) {
    const auto found = std::ranges::find_if(record.passes, [](const Pass& pass) { return pass.readingCount() > 0; });
    const int first = found == record.passes.end() ? 1 : found->number;
    return first < now ? first : std::max(1, now - 1);
}

Outcome<print::Document> comparison(const print::Source& source, int from) {
    const int now = source.view.pass.number;
    if (from == 0) from = firstRead(source.record, now);
    const Outcome<PassView> before = viewPass(source.record, from, Rule::plain, source.view.sheet);
    if (!before) return tl::unexpected(before.error());
    const Outcome<Comparison> compared = comparePasses(source.record, source.view.sheet, from, now);
    if (!compared) return tl::unexpected(compared.error());
    const Outcome<FinishLine> finish = finishOf(source.record, source.view.sheet, now);
    if (!finish) return tl::unexpected(finish.error());
    return print::comparisonDocument(source, *before, *compared, *finish,
                                     comparisonSheet(source.record, *before, source.view, *compared));
}

Outcome<print::Document> documentOf(SheetKind kind, const print::Source& source, const Plan* plan,
                                    const PaperOptions& options) {
    switch (kind) {
    case SheetKind::adjustment:
        return adjustment(source, plan, print::LineSize::usual);
    case SheetKind::largeAdjustment:
        return adjustment(source, plan, print::LineSize::large);
    case SheetKind::check:
        return print::checkDocument(source, checkSheet(source.record, source.view));
    case SheetKind::comparison:
        return comparison(source, options.comparedWith);
    case SheetKind::survey:
        return print::surveyDocument(source);
    case SheetKind::parts:
        return print::partsDocument(source);
    case SheetKind::labels:
        return print::labelsDocument(source);
    case SheetKind::record:
        return print::recordDocument(source);
    case SheetKind::action:
        return print::actionDocument(source, plan);
    case SheetKind::gauges:
        return print::gaugesDocument(source, options);
    case SheetKind::estimate:
        return print::estimateDocument(source);
    case SheetKind::card:
        return print::cardDocument(source);
    case SheetKind::work:
        return print::workDocument(source);
    }
    return refuse(RefusalCode::usage);
}

/// What a sheet that needs no readings is printed with where there is no pass yet.
Outcome<PassView> viewFor(SheetKind kind, const PianoRecord& record, int pass) {
    const bool ofReadings =
        printsPlan(kind) || kind == SheetKind::check || kind == SheetKind::comparison || kind == SheetKind::action;
    if (ofReadings || !record.passes.empty()) return viewPass(record, pass);
    PassView none;
    none.pass.number = 0;
    none.sheet = sheetOf(record);
    return none;
}

} // namespace

bool printsPlan(SheetKind kind) {
    return kind == SheetKind::adjustment || kind == SheetKind::largeAdjustment;
}

/// What a document's closures point into lives here as long as the sheet does.
struct PrintedSheet::Inner {
    PianoRecord record;
    std::optional<Plan> plan;
    PassView view;
    print::PaperSize size;
    double enlarged = 1; // against a printer that draws too small
    print::Document document;
    std::vector<print::Page> pages;

    void page(QPainter& painter, std::size_t number, double dotsPerMm) const {
        print::Canvas canvas(painter, dotsPerMm * enlarged);
        for (const auto& mark : pages[number].marks)
            mark(canvas);
    }
};

PrintedSheet::PrintedSheet(std::unique_ptr<Inner> inner) : m_inner(std::move(inner)) {}
PrintedSheet::PrintedSheet(PrintedSheet&&) noexcept = default;
PrintedSheet& PrintedSheet::operator=(PrintedSheet&&) noexcept = default;
PrintedSheet::~PrintedSheet() = default;

int PrintedSheet::pages() const {
    return static_cast<int>(m_inner->pages.size());
}
std::size_t PrintedSheet::rows() const {
    return m_inner->document.rowCount();
}
QString PrintedSheet::title() const {
    return m_inner->document.title;
}

void PrintedSheet::paint(QPagedPaintDevice& device) const {
    const print::PaperSize& size = m_inner->size;
    device.setPageLayout(QPageLayout(pageSizeOf(size), QPageLayout::Portrait,
                                     QMarginsF(size.margin, size.margin, size.margin, size.margin),
                                     QPageLayout::Millimeter));
    QPainter painter(&device);
    for (std::size_t i = 0; i < m_inner->pages.size(); ++i) {
        if (i > 0) device.newPage();
        m_inner->page(painter, i, device.logicalDpiX() / kMmPerInch);
    }
}

QByteArray PrintedSheet::pdf() const {
    QByteArray bytes;
    QBuffer file(&bytes);
    file.open(QIODevice::WriteOnly);
    QPdfWriter writer(&file);
    writer.setResolution(1200);
    writer.setTitle(title());
    writer.setCreator(QStringLiteral("Hammerline"));
    paint(writer);
    return bytes;
}

QImage PrintedSheet::picture(int page, double dotsPerInch) const {
    const print::PaperSize& size = m_inner->size;
    const double scale = dotsPerInch / kMmPerInch;
    QImage image(qRound(size.width * scale), qRound(size.height * scale), QImage::Format_RGB32);
    image.fill(Qt::white);
    QPainter painter(&image);
    painter.translate(size.margin * scale, size.margin * scale);
    m_inner->page(painter, static_cast<std::size_t>(page), scale);
    return image;
}

Outcome<PrintedSheet> composeSheet(SheetKind kind, const PianoRecord& record, int pass, const Plan* plan,
                                   const PaperOptions& options) {
    auto inner = std::make_unique<PrintedSheet::Inner>();
    inner->record = record;
    if (plan) inner->plan = *plan;
    Outcome<PassView> view = viewFor(kind, inner->record, pass);
    if (!view) return tl::unexpected(view.error());
    inner->view = std::move(*view);
    inner->size = options.other.isValid() ? sizeOf(options.other) : sizeOf(options.paper);
    if (kind == SheetKind::gauges) inner->enlarged = 100 / options.measured;
    const print::PaperSize drawn = roomOf(inner->size, inner->enlarged);
    const print::Source source{inner->record, inner->view, drawn, options.date};
    Outcome<print::Document> document = documentOf(kind, source, inner->plan ? &*inner->plan : nullptr, options);
    if (!document) return tl::unexpected(document.error());
    inner->document = std::move(*document);
    inner->pages = print::compose(inner->document, drawn);
    return PrintedSheet(std::move(inner));
}

Outcome<int> paintSheet(QPagedPaintDevice& device, SheetKind kind, const PianoRecord& record, int pass,
                        const Plan* plan, const PaperOptions& options) {
    PaperOptions own = options;
    own.other = device.pageLayout().pageSize();
    const Outcome<PrintedSheet> sheet = composeSheet(kind, record, pass, plan, own);
    if (!sheet) return tl::unexpected(sheet.error());
    sheet->paint(device);
    return sheet->pages();
}

Outcome<int> printToPdf(SheetKind kind, const PianoRecord& record, int pass, const Plan* plan,
                        const PaperOptions& options, const std::string& path) {
    const Outcome<PrintedSheet> sheet = composeSheet(kind, record, pass, plan, options);
    if (!sheet) return tl::unexpected(sheet.error());
    const QByteArray bytes = sheet->pdf();
    const auto size = static_cast<std::size_t>(bytes.size());
    if (const auto written = writeDocument(path, {bytes.constData(), size}); !written)
        return tl::unexpected(written.error());
    return sheet->pages();
}

} // namespace hammerline
