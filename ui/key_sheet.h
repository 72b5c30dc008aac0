// The sheet of all keys: those of the menus as the menus have them, those of the stations as they are used there.
#pragma once

#include <QDialog>
#include <QList>
#include <QString>

class QMenuBar;

namespace hammerline {

struct KeyRow {
    QString keys, does;
};
struct KeyGroup {
    QString title;
    QList<KeyRow> rows;
};

QList<KeyGroup> keyGroups(const QMenuBar&);
/// As a table in two columns of groups.
QString keySheet(const QMenuBar&);

/// The sheet in a window of its own, nearly as large as the one it stands over; it scrolls by the keys.
class KeySheetDialog : public QDialog {
    Q_OBJECT
public:
    KeySheetDialog(const QString& sheet, QWidget* parent);
};

} // namespace hammerline
