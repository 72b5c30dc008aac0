// The way into the window for app: opens it, or paints a picture of it into a file without a screen.
#pragma once

#include <QSize>
#include <QString>

class QApplication;

namespace hammerline {

struct WindowOptions {
    QString book;     // empty: the last one
    QString piano;    // name or uuid; empty: the last one
    int pass = 0;     // 0: the last one
    QString station;  // "measure"; empty: the last one. "bench-entry" opens the entry at the bench
    QString theme;    // light, dark, desktop; empty: as set
    int textSize = 0; // per cent; 0: as set
    int note = 0;     // note and dimension to stand at; 0 and empty: the first
    QString dimension;
    QString typed; // text to be shown in an open editor (pictures)
    QSize size{1280, 800};
    QString out;          // PNG to write: the window is painted there and the program ends
    double scale = 1;     // device pixels to a pixel of that picture
    QString settings;     // ini file; empty: the person's own
    bool another = false; // a window of its own, also where one runs with this book
};

/// Runs the window until closed, or paints the picture. Exit status: 0, or 2 where the book cannot be opened in a
/// picture (the sentence goes to standard error).
int runWindow(QApplication&, const WindowOptions&);

} // namespace hammerline
