#include "ui/window.h"

#include "db/document.h"
#include "ui/book_door.h"
#include "ui/main_window.h"
#include "ui/stations/action_wide.h"
#include "ui/stations/bench_entry.h"
#include "ui/stations/how_to.h"
#include "ui/stations/measure_station.h"
#include "ui/stations/measure_view.h"
#include "ui/stations/work_next.h"
#include "ui/widgets/dialogs.h"
#include "ui/widgets/keyboard_strip.h"
#include "ui/words/plainly.h"
#include "ui/words/words.h"

#include <QApplication>
#include <QBuffer>
#include <QFileInfo>
#include <QImage>
#include <QPainter>

#include <clocale>
#include <cstdio>

namespace hammerline {

namespace {

Theme themeNamed(const QString& name) {
    return name == QLatin1String("dark") ? Theme::dark : name == QLatin1String("light") ? Theme::light : desktopTheme();
}

void standAt(Workbench& bench, const WindowOptions& options) {
    if (options.pass > 0) bench.choosePass(options.pass);
    if (!options.dimension.isEmpty())
        if (const auto dimension = findDimension(options.dimension.toStdString())) bench.setDimension(*dimension);
    if (options.note > 0) bench.setNote({options.note});
}

/// What is being typed, as a person would see it.
void openField(MainWindow& window, bool entry, const QString& typed) {
    if (entry) {
        if (window.showBenchEntry() && !typed.isEmpty()) window.benchEntry()->type(typed);
    } else if (auto* measure = qobject_cast<MeasureStation*>(window.station())) {
        measure->grid().type(typed);
    }
}

QByteArray plainBytes(const Refusal& refusal) {
    return words::plainly(words::sentence(refusal)).toUtf8();
}

bool paint(QWidget& window, const WindowOptions& options) {
    window.setAttribute(Qt::WA_DontShowOnScreen);
    window.resize(options.size);
    window.show();
    for (NextLine* each : window.findChildren<NextLine*>())
        each->refresh(); // it waits a moment for more typing; a picture does not
    for (int i = 0; i < 3; ++i)
        QApplication::processEvents();
    QImage image((QSizeF(options.size) * options.scale).toSize(), QImage::Format_RGB32);
    image.setDevicePixelRatio(options.scale);
    window.render(&image);
    // as every file for people: whole or not at all, never over a bench book
    const QByteArray kind = QFileInfo(options.out).suffix().toLatin1();
    QByteArray bytes;
    QBuffer buffer(&bytes);
    if (!image.save(&buffer, kind.isEmpty() ? "PNG" : kind.constData())) {
        std::fputs("The picture was not made: its name ends in no kind of picture known here. Use .png.\n", stderr);
        return false;
    }
    const auto written =
        writeDocument(options.out.toStdString(), {bytes.constData(), static_cast<std::size_t>(bytes.size())});
    if (!written) std::fprintf(stderr, "%s\n", plainBytes(written.error()).constData());
    return written.has_value();
}

/// A second start with the book that is open here brings this window forward.
void answerAt(BookDoor& door, Workbench& bench, MainWindow& window) {
    QObject::connect(&bench, &Workbench::bookChanged, &door, [&] { door.standAt(bench.path()); });
    QObject::connect(&door, &BookDoor::knocked, &window, [&](const Knock& knock) {
        window.comeForward(knock.token);
        if (!knock.station.isEmpty()) window.showStation(knock.station);
    });
}

} // namespace

int runWindow(QApplication& app, const WindowOptions& options) {
    std::setlocale(LC_NUMERIC, "C"); // QApplication takes the desktop's; machine text stays dot-decimal
    app.setApplicationName(QStringLiteral("Hammerline"));
    app.setDesktopFileName(QStringLiteral("org.hammerline.Hammerline"));
    const bool picture = !options.out.isEmpty();
    const QByteArray token = qgetenv("XDG_ACTIVATION_TOKEN");
    if (!options.settings.isEmpty() && isBook(options.settings.toStdString())) {
        const Refusal refusal{RefusalCode::fileExists, {}, options.settings.toStdString(), {}};
        std::fprintf(stderr, "%s\n", plainBytes(refusal).constData());
        return 2; // settings are written over whatever lies there
    }
    Settings settings(options.settings);
    dress(themeNamed(options.theme.isEmpty() ? settings.text(Setting::theme) : options.theme),
          options.textSize > 0 ? options.textSize : settings.number(Setting::textSize));

    QString book = options.book;
    const QString last = picture || settings.recentBooks().isEmpty() ? QString() : settings.recentBooks().first();
    if (book.isEmpty()) book = last;
    const bool runsAlready =
        !picture && !options.another && !book.isEmpty() && BookDoor::knock(book, {options.station, token});
    if (runsAlready) return 0;

    Workbench bench;
    MainWindow window(bench, settings);
    BookDoor door;
    if (!picture) answerAt(door, bench, window);
    if (picture) Dialogs::nobodyThere();
    // the book that was open last comes back where it was left, whether it is named or not
    const bool again = !last.isEmpty() && QFileInfo(book).absoluteFilePath() == last;
    const std::string piano =
        (options.piano.isEmpty() && again ? settings.text(Setting::lastPiano) : options.piano).toStdString();
    if (!book.isEmpty()) {
        if (!picture) window.openBook(book, piano);
        if (picture)
            if (const auto opened = bench.openBook(book, piano); !opened) {
                std::fprintf(stderr, "The picture was not made. %s\n", plainBytes(opened.error()).constData());
                return 2;
            }
        if (again && options.piano.isEmpty()) bench.choosePass(settings.number(Setting::lastPass));
    }
    standAt(bench, options);
    const bool entry = options.station == QLatin1String("bench") || options.station == QLatin1String("bench-entry");
    if (picture && options.station == QLatin1String("how-to")) {
        const Piano* chosen = bench.piano();
        HowToDialog dialog(dimensionsToShow(chosen), bench.dimension(), chosen ? chosen->action : ActionKind::upright,
                           nullptr);
        return paint(dialog, options) ? 0 : 2;
    }
    const int wide = actionPageNamed(options.station);
    const QString station = options.station.isEmpty() ? settings.text(Setting::station) : options.station;
    if (!window.showStation(entry || wide >= 0 ? QStringLiteral("measure") : station))
        window.showStation(QStringLiteral("measure"));
    if (wide >= 0) window.showNoteWide(wide);
    if (entry || !options.typed.isEmpty()) openField(window, entry, options.typed);
    if (picture) return paint(window, options) ? 0 : 2;
    window.followDesktop();
    window.show();
    return app.exec();
}

} // namespace hammerline
