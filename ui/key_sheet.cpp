#include "ui/key_sheet.h"

#include <QAction>
#include <QCoreApplication>
#include <QMenu>
#include <QMenuBar>

namespace hammerline {

namespace {

QString tr(const char* text) {
    return QCoreApplication::translate("KeySheet", text);
}

void addMenu(const QMenu& menu, QList<KeyRow>& rows) {
    for (const QAction* action : menu.actions()) {
        if (action->menu()) addMenu(*action->menu(), rows);
        QString name = action->text();
        name.remove(u'&').remove(QChar(0x2026));
        for (const QKeySequence& key : action->shortcuts())
            rows << KeyRow{key.toString(QKeySequence::NativeText), name};
    }
}

} // namespace

QList<KeyGroup> keyGroups(const QMenuBar& bar) {
    QList<KeyGroup> groups;
    for (const QAction* top : bar.actions()) {
        if (!top->menu()) continue;
        KeyGroup group;
        group.title = top->text().remove(u'&');
        addMenu(*top->menu(), group.rows);
        if (!group.rows.isEmpty()) groups << group;
    }
    groups << KeyGroup{tr("Everywhere"),
                       {{tr("arrows, PgUp, PgDn, Home, End"), tr("move; on the keyboard strip: the note")},
                        {tr("[ and ]"), tr("dimension before, after")},
                        {tr("Tab, Shift+Tab"), tr("next, previous field")}}};
    groups << KeyGroup{tr("Measure and the entry at the bench"),
                       {{tr("Enter, Shift+Enter"), tr("store and next, back in the order; empty: skip")},
                        {tr("*"), tr("same as the note before")},
                        {tr("R"), tr("read this cell again: a further trial")},
                        {tr("B, L, C, O"), tr("blocks, no let-off, no check, off rail")},
                        {tr("K, T, S, X"), tr("ok, strap tight, slack, torn")},
                        {tr("E, K, L"), tr("damper early, right, late")},
                        {tr("N"), tr("not fitted at this note")},
                        {tr("Y"), tr("this note is right")},
                        {tr("H"), tr("how to measure")},
                        {tr("<2.5  >2.5  2.2..3.7"), tr("less than, more than, a go / no-go pair")},
                        {tr("F9, Enter"), tr("doubtful: as typed, as suggested")},
                        {tr("F2, Esc"), tr("edit what was typed, leave it as it was")},
                        {tr("Del"), tr("take the reading back; nothing is erased")},
                        {tr("Ctrl+D"), tr("down over the selected cells")},
                        {tr("Ctrl+V, Ctrl+C"), tr("paste a table with preview, copy")}}};
    groups << KeyGroup{tr("Survey"),
                       {{tr("Y, Shift+Y"), tr("sound; the rest of the row sound")},
                        {tr("a letter, W, M"), tr("the fault it names, watch, mended")},
                        {tr("*, Del"), tr("as last, not looked at")},
                        {tr("F2, Ctrl+Enter"), tr("the form, add what it says")}}};
    groups << KeyGroup{tr("Review"), {{tr("Enter"), tr("measure this reading again")}}};
    groups << KeyGroup{tr("Adjust"),
                       {{tr("Space"), tr("set to the aim")},
                        {tr("digits"), tr("what was really done: 1/8, 0.25")},
                        {tr("Backspace, S"), tr("not done; stop, the screw does not turn")},
                        {tr("PgDn, PgUp"), tr("next, previous work")},
                        {tr("Ctrl+R"), tr("reckon the plan again")}}};
    return groups;
}

QString keySheet(const QMenuBar& bar) {
    const auto groups = keyGroups(bar);
    qsizetype all = 0;
    for (const KeyGroup& group : groups)
        all += group.rows.size() + 2;
    QString columns[2];
    qsizetype so = 0;
    for (const KeyGroup& group : groups) {
        QString& html = columns[2 * so >= all ? 1 : 0];
        html += QStringLiteral("<tr><td colspan=2><b>%1</b></td></tr>").arg(group.title.toHtmlEscaped());
        for (const KeyRow& row : group.rows)
            html += QStringLiteral("<tr><td style='white-space:nowrap'><b>%1</b>&nbsp;&nbsp;</td><td>%2</td></tr>")
                        .arg(row.keys.toHtmlEscaped(), row.does.toHtmlEscaped());
        html += QStringLiteral("<tr><td colspan=2>&nbsp;</td></tr>");
        so += group.rows.size() + 2;
    }
    return QStringLiteral("<table><tr><td valign=top><table>%1</table></td><td width=24></td><td valign=top><table>%2"
                          "</table></td></tr></table>")
        .arg(columns[0], columns[1]);
}

} // namespace hammerline
