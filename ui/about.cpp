#include "ui/about.h"

#include "db/libraries.h"
#include "ui/widgets/look.h"

#include <QCoreApplication>
#include <QDialogButtonBox>
#include <QLibraryInfo>
#include <QPlainTextEdit>
#include <QTabWidget>
#include <QVBoxLayout>

#include <string_view>

namespace hammerline::resources {
extern const std::string_view licenceText, changesText, noticesText; // resources/embed.cmake
}

namespace hammerline {

namespace {

struct AboutText {
    Q_DECLARE_TR_FUNCTIONS(About)
};

QString embedded(std::string_view text) {
    return QString::fromUtf8(text.data(), static_cast<qsizetype>(text.size()));
}

QString firstPage() {
    QStringList lines{
        AboutText::tr("Hammerline %1").arg(QCoreApplication::applicationVersion()),
        AboutText::tr("A bench book and the arithmetic of regulating piano actions."),
        {},
        AboutText::tr("Free software under the GNU General Public License, version 3 or any later version; it comes "
                      "without any warranty."),
        {},
        AboutText::tr("It stands on:"),
        QStringLiteral("Qt %1 · LGPL-3.0").arg(QString::fromLatin1(qVersion())),
    };
    for (const LibraryRow& row : librariesOfTheBook()) {
        const QString name = QString::fromStdString(row.name + (row.version.empty() ? "" : ' ' + row.version));
        lines << name + QStringLiteral(" · ") + QString::fromStdString(row.licence);
    }
    lines << QStringLiteral("CLI11 · BSD-3-Clause");
    return lines.join(u'\n');
}

} // namespace

QList<AboutPage> aboutPages() {
    return {{AboutText::tr("About"), firstPage()},
            {AboutText::tr("What is new"), embedded(resources::changesText)},
            {AboutText::tr("Licence"), embedded(resources::licenceText)},
            {AboutText::tr("Work of others"), embedded(resources::noticesText)}};
}

AboutDialog::AboutDialog(QWidget* parent) : QDialog(parent) {
    setWindowTitle(tr("About Hammerline"));
    auto* tabs = new QTabWidget(this);
    for (const AboutPage& page : aboutPages()) {
        auto* text = new QPlainTextEdit(page.text, tabs);
        text->setReadOnly(true);
        text->setTextInteractionFlags(Qt::TextSelectableByMouse | Qt::TextSelectableByKeyboard);
        text->setTabChangesFocus(true);
        text->setFrameShape(QFrame::NoFrame);
        text->document()->setDocumentMargin(u(4));
        text->setFont(face(Text::body));
        text->setAccessibleName(page.title);
        tabs->addTab(text, page.title);
    }
    auto* buttons = new QDialogButtonBox(this);
    buttons->addButton(tr("Close"), QDialogButtonBox::RejectRole);
    connect(buttons, &QDialogButtonBox::rejected, this, &QDialog::reject);
    auto* column = new QVBoxLayout(this);
    column->addWidget(tabs, 1);
    column->addWidget(buttons);
    resize(u(180), u(120));
}

} // namespace hammerline
