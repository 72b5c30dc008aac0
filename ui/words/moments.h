// The moments of a stroke in words, with the figures of the readings and never the drawing's.
#pragma once

#include "core/stroke/moments.h"

#include <QString>
#include <QStringList>

namespace hammerline::words {

QString momentName(Moment);
QStringList momentLines(Moment, const DrawnNote&);
QString momentSentence(Moment, double travel, const DrawnNote&);
QString lensTitle();
QString lensRemark(const QString& letOffAsRead);

} // namespace hammerline::words
