// Names for files that a person is offered.
#pragma once

#include <QString>
#include <QStringList>

namespace hammerline {

/// Says what the file is; what no file system takes becomes a hyphen.
QString fileNameOf(const QStringList& parts, const char* ending);
/// The ending that was left away when the name was typed.
QString withEnding(QString path, const char* ending);

} // namespace hammerline
