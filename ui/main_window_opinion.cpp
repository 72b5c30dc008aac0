// A second opinion: the page that asks for it, and the answer that comes back as advice.
#include "core/sheet/answers.h"
#include "db/document.h"
#include "ui/file_names.h"
#include "ui/main_window.h"
#include "ui/widgets/dialogs.h"
#include "ui/words/piano_record.h"
#include "ui/words/said.h"
#include "ui/words/second_opinion.h"

#include <QClipboard>
#include <QDate>
#include <QDir>
#include <QFile>
#include <QGuiApplication>
#include <QMenu>

namespace hammerline {

void MainWindow::buildOpinionMenu(QMenu* book) {
    QMenu* menu = book->addMenu(tr("Second opinion"));
    menu->addAction(tr("Ask for one…"), this, &MainWindow::askOpinion);
    menu->addSeparator();
    menu->addAction(tr("Take in an answer from a file…"), this, [this] {
        const QString file = Dialogs::now().fileToOpen(this, tr("Answer"), tr("Answers (*.txt);;All files (*)"));
        if (file.isEmpty()) return;
        takeAnswerFile(file);
    });
    menu->addAction(tr("Take in an answer that was copied"), this,
                    [this] { takeAnswer(QGuiApplication::clipboard()->text().toStdString(), tr("What was copied")); });
    connect(menu, &QMenu::aboutToShow, this, [this, menu] {
        for (QAction* each : menu->actions())
            each->setEnabled(m_bench.record());
    });
}

void MainWindow::takeAnswerFile(const QString& path) {
    constexpr qint64 kMost = 1'000'000;
    QFile file(path);
    if (!file.open(QIODevice::ReadOnly)) return report(readingRefusal(path.toStdString(), ENOENT));
    if (file.size() > kMost) return report({RefusalCode::tooLarge, {}, path.toStdString(), "1 MB"});
    takeAnswer(file.readAll().toStdString(), path);
}

/// Without the owner, the contact and the place: it goes out of the house.
void MainWindow::askOpinion() {
    if (!leaveStation() || !m_bench.record()) return;
    const auto question =
        Dialogs::now().ask(this, tr("Second opinion"), tr("One question, in your words (may stay empty):"));
    if (!question) return;
    const QString date = QDate::currentDate().toString(Qt::ISODate);
    const QString name =
        fileNameOf({QString::fromStdString(m_bench.record()->piano.name), tr("second opinion"), date}, ".html");
    const QString file = withEnding(
        Dialogs::now().fileToSave(this, tr("Second opinion"), beside(name), tr("Page for a browser (*.html)")),
        ".html");
    if (file.isEmpty()) return;
    const auto record = m_bench.recordWithPictures();
    if (!record) return report(record.error());
    words::OpinionOptions options;
    options.question = *question;
    options.from = identityValue(record->identity, "worker");
    options.on = date.toStdString();
    const std::string page = words::opinionPage(*record, m_bench.view(), options).toStdString();
    if (const auto written = writeDocument(file.toStdString(), page); !written) return report(written.error());
    say(tr("Written: %1. It is read in any browser and holds everything it needs; send it, and take in the answer "
           "here.")
            .arg(QDir::toNativeSeparators(file)));
}

void MainWindow::takeAnswer(const std::string& text, const QString& from) {
    if (!m_bench.record()) return;
    const std::string today = QDate::currentDate().toString(Qt::ISODate).toStdString();
    const auto answers = readAnswers(text, *m_bench.record(), today);
    if (!answers) {
        Refusal refusal = answers.error();
        if (refusal.code == RefusalCode::emptyFile) refusal.offending = from.toStdString();
        if (refusal.place.line > 0) refusal.place.source = from.toStdString();
        return report(refusal);
    }
    const std::vector<Remark> fresh = notYetSaid(*answers, *m_bench.record());
    if (fresh.empty()) return say(tr("This answer was taken in before; nothing was changed."));
    if (const auto kept = m_bench.addRemarks(fresh); !kept) return report(kept.error());
    say(tr("Advice taken in: %n line(s). It stands beside the findings, at Survey under Photographs.", nullptr,
           static_cast<int>(fresh.size())));
}

} // namespace hammerline
