// One program: without a command the window, with one the same functions and the same numbers on the terminal.
#include "app/arguments.h"
#include "app/commands/commands.h"
#include "app/console.h"
#include "ui/window.h"
#include "ui/words/english_plurals.h"

#include <QApplication>
#include <QCoreApplication>
#include <QGuiApplication>

#include <clocale>
#include <csignal>

namespace hammerline::app {
namespace {

/// Printing and pictures need fonts, not a display.
bool wantsPaper(const Request& request) {
    if (const auto* window = std::get_if<WindowRequest>(&request)) return !window->picture.empty();
    return std::holds_alternative<PrintRequest>(request);
}

int runWindowCommand(int argc, char** argv, const WindowRequest& request) {
    QApplication application(argc, argv);
    std::setlocale(LC_NUMERIC, "C"); // QApplication takes the user's; machine text is always with a point
    words::EnglishPlurals plurals;
    QCoreApplication::installTranslator(&plurals);
    WindowOptions options;
    options.book = QString::fromStdString(request.book);
    options.piano = QString::fromStdString(request.piano);
    options.station = QString::fromStdString(request.station);
    options.theme = QString::fromStdString(request.theme);
    options.out = QString::fromStdString(request.picture);
    options.settings = QString::fromStdString(request.settings);
    options.typed = QString::fromStdString(request.typed);
    options.dimension = QString::fromStdString(request.dimension);
    options.note = request.note;
    options.pass = request.pass;
    options.textSize = request.textSize;
    options.size = QSize(request.width, request.height);
    options.scale = request.scale;
    options.another = request.another;
    return runWindow(application, options);
}

/// A command, under the application that it needs: paper needs fonts (Gui), all else nothing.
template <class Application>
int runCommand(int argc, char** argv, const Arguments& arguments) {
    const Application application(argc, argv);
    std::setlocale(LC_NUMERIC, "C");
    words::EnglishPlurals plurals;
    QCoreApplication::installTranslator(&plurals);
    const int status = std::visit(
        [&](const auto& request) {
            if constexpr (std::is_same_v<std::decay_t<decltype(request)>, WindowRequest>)
                return kRefused; // the window has an application of its own
            else
                return run(request, arguments.json);
        },
        arguments.request);
    return outputKept() ? status : kRefused;
}

} // namespace
} // namespace hammerline::app

int main(int argc, char** argv) {
    using namespace hammerline::app;
    std::signal(SIGPIPE, SIG_IGN); // a reader that has gone is told as an error of the write
    const auto read = readArguments(argc, argv);
    if (const int* status = std::get_if<int>(&read)) return outputKept() ? *status : kRefused;
    const auto& arguments = std::get<Arguments>(read);
    if (arguments.quiet) beQuiet();
    if (arguments.spoken) speakSentences();
    QCoreApplication::setApplicationName(QStringLiteral("hammerline"));
    QCoreApplication::setApplicationVersion(QStringLiteral(HAMMERLINE_VERSION));
    if (wantsPaper(arguments.request)) qputenv("QT_QPA_PLATFORM", "offscreen");
    if (const auto* window = std::get_if<WindowRequest>(&arguments.request))
        return runWindowCommand(argc, argv, *window);
    return wantsPaper(arguments.request) ? runCommand<QGuiApplication>(argc, argv, arguments)
                                         : runCommand<QCoreApplication>(argc, argv, arguments);
}
