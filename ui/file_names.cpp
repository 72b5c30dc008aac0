#include "ui/file_names.h"

namespace hammerline {

QString fileNameOf(const QStringList& parts, const char* ending) {
    QString name = parts.join(QStringLiteral(", "));
    for (QChar& each : name)
        if (each < u' ' || QStringLiteral("/\\:*?\"<>|").contains(each)) each = u'-';
    return name + QLatin1String(ending);
}

QString withEnding(QString path, const char* ending) {
    if (!path.isEmpty() && !path.endsWith(QLatin1String(ending), Qt::CaseInsensitive)) path += QLatin1String(ending);
    return path;
}

} // namespace hammerline
