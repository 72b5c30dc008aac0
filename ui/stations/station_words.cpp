#include "ui/stations/station_words.h"

#include "db/document.h"
#include "ui/print/sheets.h"
#include "ui/widgets/dialogs.h"
#include "ui/words/words.h"

#include <QComboBox>
#include <QCoreApplication>
#include <QLabel>
#include <QPrintPreviewDialog>
#include <QPrinter>
#include <QPushButton>
#include <QScrollArea>
#include <QTextDocument>

#include <cmath>

namespace hammerline {

RowCell noteCell(NoteNumber note, const Piano& piano, bool bold) {
    RowCell cell(words::noteName(note, piano), bold);
    cell.kind = RowCell::Kind::note;
    cell.sharp = colourOf(note, piano) == KeyColour::sharp;
    return cell;
}

RowCell plateCell(const Judged& judged) {
    RowCell cell;
    cell.kind = RowCell::Kind::plate;
    cell.bold = true;
    const bool low = judged.verdict == Verdict::low, high = judged.verdict == Verdict::high;
    if (low || high) cell.marks = std::max(1, judged.marks()) * (low ? -1 : 1);
    if (judged.word)
        cell.text = words::name(*judged.word);
    else if (judged.verdict == Verdict::undecided)
        cell.text = QStringLiteral("?");
    else if (judged.deviation && !judged.infinite)
        cell.text = (*judged.deviation < 0 ? QString(QChar(0x2212)) : QStringLiteral("+")) +
                    QString::number(std::abs(*judged.deviation), 'f', 1);
    return cell;
}

std::vector<Unit> unitsOf(Kind kind) {
    std::vector<Unit> units;
    for (const Unit unit : {Unit::mm, Unit::cm, Unit::inch, Unit::thou, Unit::gram, Unit::ounce, Unit::percent})
        if (kindOf(unit) == kind) units.push_back(unit);
    return units;
}

QString timeText(double minutes) {
    const int all = static_cast<int>(std::lround(minutes));
    if (all < 60) return QCoreApplication::translate("Station", "%1 min").arg(all);
    return QCoreApplication::translate("Station", "%1 h %2").arg(all / 60).arg(all % 60, 2, 10, QLatin1Char('0'));
}

QComboBox* makeChoice(const QString& name, QWidget* parent) {
    auto* box = new QComboBox(parent);
    box->setAccessibleName(name);
    box->setMinimumHeight(u(7.5));
    box->setFocusPolicy(Qt::StrongFocus);
    return box;
}

QLabel* makeText(QWidget* parent) {
    auto* label = new QLabel(parent);
    label->setTextFormat(Qt::RichText);
    label->setWordWrap(true);
    label->setAlignment(Qt::AlignLeft | Qt::AlignTop);
    label->setContentsMargins(u(3), u(2), u(3), u(2));
    label->setTextInteractionFlags(Qt::TextSelectableByMouse);
    label->setFocusPolicy(Qt::NoFocus);
    return label;
}

QWidget* makeScrolled(QLabel* label, QWidget* parent) {
    auto* area = new QScrollArea(parent);
    area->setWidget(label);
    area->setWidgetResizable(true);
    area->setFrameShape(QFrame::NoFrame);
    area->setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    area->setBackgroundRole(QPalette::Base);
    label->setBackgroundRole(QPalette::Base);
    return area;
}

QPushButton* makeMainButton(const QString& text, QWidget* parent) {
    auto* button = new QPushButton(text, parent);
    button->setMinimumHeight(u(7.5));
    QPalette palette = button->palette();
    const Look& look = lookOf(*button);
    palette.setColor(QPalette::Button, QColor::fromRgb(look.act));
    palette.setColor(QPalette::ButtonText, QColor::fromRgb(look.actText));
    button->setPalette(palette);
    button->setFont(face(Text::body, true));
    return button;
}

QString previewSheet(QWidget* parent, int sheetKind, const PianoRecord& record, int pass, const Plan* plan,
                     int before) {
    const auto kind = static_cast<SheetKind>(sheetKind);
    PaperOptions options;
    options.comparedWith = before;
    const auto sheet = composeSheet(kind, record, pass, plan, options);
    if (!sheet) return words::sentence(sheet.error());
    QPrinter printer(QPrinter::HighResolution);
    printer.setPageSize(QPageSize(usualPaper() == Paper::letter ? QPageSize::Letter : QPageSize::A4));
    // a PDF is offered under this name: the piano, the sheet and the day
    printer.setDocName(
        QStringLiteral("%1, %2, %3")
            .arg(QString::fromStdString(record.piano.name), sheet->title(), options.date.toString(Qt::ISODate)));
    QPrintPreviewDialog dialog(&printer, parent);
    dialog.setWindowTitle(sheet->title());
    QObject::connect(&dialog, &QPrintPreviewDialog::paintRequested, &dialog, [&](QPrinter* device) {
        const std::string file = device->outputFileName().toStdString();
        if (isBook(file)) // nothing is printed over a bench book
            return Dialogs::now().say(
                &dialog, sheet->title(),
                Qt::convertFromPlainText(words::sentence(Refusal{RefusalCode::fileExists, {}, file, {}})));
        static_cast<void>(paintSheet(*device, kind, record, pass, plan, options));
    });
    Dialogs::now().run(dialog);
    return {};
}

} // namespace hammerline
