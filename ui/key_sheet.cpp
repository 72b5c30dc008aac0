#include "ui/key_sheet.h"

#include "ui/widgets/look.h"

#include <QAction>
#include <QCoreApplication>
#include <QDialogButtonBox>
#include <QMenu>
#include <QMenuBar>
#include <QTextEdit>
#include <QVBoxLayout>

namespace hammerline {

namespace {

struct KeySheetText {
    Q_DECLARE_TR_FUNCTIONS(KeySheet)
};

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
    groups << KeyGroup{
        KeySheetText::tr("Everywhere"),
        {{KeySheetText::tr("arrows, PgUp, PgDn, Home, End"), KeySheetText::tr("move; on the keyboard strip: the note")},
         {KeySheetText::tr("[ and ]"), KeySheetText::tr("dimension before, after")},
         {KeySheetText::tr("Tab, Shift+Tab"), KeySheetText::tr("next, previous field")},
         {KeySheetText::tr("two dates: Left, Right; with Shift"),
          KeySheetText::tr("another date at the right; at the left")}}};
    groups << KeyGroup{
        KeySheetText::tr("Measure and bench entry"),
        {{KeySheetText::tr("Enter, Shift+Enter"), KeySheetText::tr("store and next, back in the order; empty: skip")},
         {KeySheetText::tr("*"), KeySheetText::tr("same as the note before")},
         {KeySheetText::tr("R"), KeySheetText::tr("read this cell again: a further trial")},
         {KeySheetText::tr("B, L, C, O"), KeySheetText::tr("blocks, no let-off, no check, off rail")},
         {KeySheetText::tr("K, T, S, X"), KeySheetText::tr("ok, strap tight, slack, torn")},
         {KeySheetText::tr("E, K, L"), KeySheetText::tr("damper early, right, late")},
         {KeySheetText::tr("B, T, S, X, R, L, D, H, W, M, N, P, F"),
          KeySheetText::tr("in a column of words: its own words, named in the line of keys below")},
         {KeySheetText::tr("N"), KeySheetText::tr("not fitted at this note")},
         {KeySheetText::tr("Y"), KeySheetText::tr("this note is right")},
         {KeySheetText::tr("Shift+Y"), KeySheetText::tr("in a column of words: the rest of it is right")},
         {KeySheetText::tr("H"), KeySheetText::tr("how to measure")},
         {KeySheetText::tr("<2.5  >2.5  2.2..3.7"), KeySheetText::tr("less than, more than, a go / no-go pair")},
         {KeySheetText::tr("F9, Enter"), KeySheetText::tr("doubtful: as typed, as suggested")},
         {KeySheetText::tr("F2, Esc"), KeySheetText::tr("edit what was typed, leave it as it was")},
         {KeySheetText::tr("Del"), KeySheetText::tr("take the reading back; nothing is erased")},
         {KeySheetText::tr("Ctrl+D"), KeySheetText::tr("down over the selected cells")},
         {KeySheetText::tr("Ctrl+V, Ctrl+C"), KeySheetText::tr("paste a table with preview, copy")}}};
    groups << KeyGroup{
        KeySheetText::tr("Piano"),
        {{KeySheetText::tr("Enter"), KeySheetText::tr("keep a field; in the lists: change minutes or a zone")},
         {KeySheetText::tr("U"), KeySheetText::tr("in the list of zones: the unit that is typed for it")},
         {KeySheetText::tr("T"), KeySheetText::tr("in the list of work: it turns the other way round")},
         {KeySheetText::tr("Del"), KeySheetText::tr("take back what was said of this piano")},
         {KeySheetText::tr("B, Shift+arrow"), KeySheetText::tr("on the strip: the next break, move it by a note")}}};
    groups << KeyGroup{KeySheetText::tr("Survey"),
                       {{KeySheetText::tr("Y, Shift+Y"), KeySheetText::tr("sound; the rest of the row sound")},
                        {KeySheetText::tr("a letter, W, M"), KeySheetText::tr("the fault it names, watch, mended")},
                        {KeySheetText::tr("*, Del"), KeySheetText::tr("as last, not looked at")},
                        {KeySheetText::tr("F2, Ctrl+Enter"), KeySheetText::tr("the form, add what it says")},
                        {KeySheetText::tr("Ctrl+PgDn, Ctrl+PgUp"),
                         KeySheetText::tr("parts to order, the whole job, symptoms, photographs")}}};
    groups << KeyGroup{KeySheetText::tr("Review"),
                       {{KeySheetText::tr("Enter"), KeySheetText::tr("measure this reading again")}}};
    groups << KeyGroup{
        KeySheetText::tr("Work"),
        {{KeySheetText::tr("Space"), KeySheetText::tr("a step: done; a line: set to the aim; or not")},
         {KeySheetText::tr("digits"), KeySheetText::tr("notes done now; at a line what was turned: 1/8")},
         {KeySheetText::tr("Backspace"), KeySheetText::tr("not done: this line, the notes kept last")},
         {KeySheetText::tr("N, S"), KeySheetText::tr("a step not needed; a screw that does not turn")},
         {KeySheetText::tr("PgDn, PgUp"), KeySheetText::tr("next step, step before")},
         {KeySheetText::tr("A"), KeySheetText::tr("answer what is asked before the plan")},
         {KeySheetText::tr("Ctrl+R"), KeySheetText::tr("reckon the plan again")}}};
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
            html += QStringLiteral("<tr><td width='36%'><b>%1</b>&nbsp;&nbsp;</td><td>%2</td></tr>")
                        .arg(row.keys.toHtmlEscaped(), row.does.toHtmlEscaped());
        html += QStringLiteral("<tr><td colspan=2>&nbsp;</td></tr>");
        so += group.rows.size() + 2;
    }
    return QStringLiteral("<table width='100%'><tr><td width='50%' valign=top><table width='100%'>%1</table></td>"
                          "<td valign=top><table width='100%'>%2</table></td></tr></table>")
        .arg(columns[0], columns[1]);
}

KeySheetDialog::KeySheetDialog(const QString& sheet, QWidget* parent) : QDialog(parent) {
    setWindowTitle(tr("All keys"));
    auto* text = new QTextEdit(this);
    text->setReadOnly(true);
    text->setTextInteractionFlags(Qt::TextSelectableByMouse | Qt::TextSelectableByKeyboard);
    text->setTabChangesFocus(true);
    text->setFrameShape(QFrame::NoFrame);
    text->setFont(face(Text::body));
    text->document()->setDocumentMargin(u(4));
    text->setAccessibleName(windowTitle());
    text->setHtml(sheet);
    auto* buttons = new QDialogButtonBox(this);
    buttons->addButton(tr("Close"), QDialogButtonBox::RejectRole);
    connect(buttons, &QDialogButtonBox::rejected, this, &QDialog::reject);
    auto* column = new QVBoxLayout(this);
    column->addWidget(text, 1);
    column->addWidget(buttons);
    text->setFocus();
    if (parent) resize(parent->size() * 0.9);
}

} // namespace hammerline
