// Page 1 of the wide note: the account of the dip.
#include "ui/stations/action_page.h"
#include "ui/stations/action_what_if.h"
#include "ui/widgets/account_painter.h"
#include "ui/widgets/account_strip.h"
#include "ui/widgets/drawn_head.h"
#include "ui/words/account_labels.h"
#include "ui/words/words.h"

#include <QPainter>

#include <algorithm>

namespace hammerline {

namespace {

constexpr double kAccountMargin = 4, kBothFrom = 240, kBetweenSums = 1.5; // units

class AccountPage : public ActionPage {
public:
    AccountPage(ActionDesk& actionDesk, QWidget* parent)
        : ActionPage(actionDesk, parent), m_whatIf(new WhatIf(actionDesk, this)) {
        connect(m_whatIf, &WhatIf::refused, this, &ActionPage::refused);
    }

    QString title() const override { return tr("Account of the dip"); }
    QString sentence() const override {
        return words::accountLines(desk().note()).join(QStringLiteral(". ")) + QStringLiteral(". ") +
               words::stripSentence(sectionText(), sectionOfNote());
    }
    QList<KeyHint> pageHints() const override {
        return {{QStringLiteral("left right"), tr("note")},
                {QStringLiteral("up down"), tr("handle")},
                {QStringLiteral("Shift right"), tr("move it")},
                {QStringLiteral("Del"), tr("put back")},
                {QStringLiteral("Enter"), tr("take over as aim")}};
    }
    DimensionId stripDimension() const override { return dimension::aftertouch; }
    int wantedHeight(int wide) const override {
        const double account = accountHigh(accountWide(wide));
        const double handles = m_whatIf->sizeHint().height();
        return qRound(beside(wide) ? std::max(account, handles) : account + handles);
    }
    bool useKey(int key, Qt::KeyboardModifiers modifiers) override {
        const bool used = m_whatIf->useKey(key, modifiers);
        const bool chose = key == Qt::Key_Up || key == Qt::Key_Down;
        if (used && chose) reveal(m_whatIf->currentRow().translated(m_whatIf->pos()));
        return used;
    }

protected:
    void paintEvent(QPaintEvent*) override {
        QPainter painter(this);
        const DrawnStyle style = screenStyle(*this);
        painter.fillRect(rect(), ink(style.look.paper));
        if (!desk().ready()) return paintNothing(painter);
        const NoteAction& action = desk().note();
        const double left = units(kAccountMargin), room = accountWide(width()) - 2 * left;
        painter.setRenderHint(QPainter::Antialiasing);
        const DrawnHead above = head();
        above.paint(painter, style, left, room);
        const double top = above.height(style, room), high = accountHeight(style, action);
        paintAccount(painter, QRectF(left, top, room, high), action, style);
        painter.setPen(ink(style.look.ink));
        double y = top + high;
        for (const QString& line : sums())
            y = drawnParagraph(painter, style, style.bold, QRectF(left, y, room, 1e4), line) + units(kBetweenSums);
        paintSection(painter, style, y + units(kBetweenSums), left, room);
    }
    void resizeEvent(QResizeEvent* event) override {
        ActionPage::resizeEvent(event);
        place();
    }
    void refreshPage() override {
        place();
        update();
    }

private:
    std::span<const NoteAction> sectionOfNote() const {
        const Piano& piano = *desk().bench().piano();
        const NoteRange range = sectionsOf(piano)[sectionIndexOf(desk().bench().note(), piano)].range;
        return std::span(desk().all())
            .subspan(static_cast<std::size_t>(range.first) - 1, static_cast<std::size_t>(range.last - range.first) + 1);
    }
    QString sectionText() const {
        const Piano& piano = *desk().bench().piano();
        const auto sections = sectionsOf(piano);
        const std::size_t at = sectionIndexOf(desk().bench().note(), piano);
        return QStringLiteral("%1 %2\u2013%3")
            .arg(words::sectionName(sections[at], at, sections.size()))
            .arg(sections[at].range.first)
            .arg(sections[at].range.last);
    }
    DrawnHead sectionHead() const { return {words::stripHead(sectionText()), words::stripRemark()}; }
    void paintSection(QPainter& painter, const DrawnStyle& style, double top, double left, double room) {
        const DrawnHead above = sectionHead();
        painter.save();
        painter.translate(0, top);
        painter.fillRect(QRectF(0, 0, left + room, 1), ink(style.look.line));
        above.paint(painter, style, left, room);
        paintAccountStrip(painter, QRectF(left, above.height(style, room), room, accountStripHeight(style)),
                          sectionOfNote(), desk().bench().note(), *desk().bench().piano(), style);
        painter.restore();
    }
    /// The handles stand beside the account where there is room for both, else below it.
    static bool beside(int wide) { return wide >= u(kBothFrom); }
    int accountWide(int wide) const { return beside(wide) ? wide - m_whatIf->sizeHint().width() : wide; }
    DrawnHead head() const {
        return {tr("Where the key's way goes"),
                tr("mm at the key's front. %1").arg(words::ratioSentence(desk().note().account.ratio))};
    }
    QStringList sums() const {
        QStringList out{words::againstSentence(desk().note().account), words::inferredSentence(desk().note().account)};
        out.removeAll(QString());
        return out;
    }
    double accountHigh(int wide) const {
        const DrawnStyle style = screenStyle(*this);
        const double room = wide - 2 * units(kAccountMargin);
        double high = head().height(style, room) + accountHeight(style, desk().note());
        for (const QString& line : sums())
            high += paragraphHigh(style.bold, room, line) + units(kBetweenSums);
        return high + sectionHead().height(style, room) + accountStripHeight(style) + units(2 * kBetweenSums);
    }
    void place() {
        if (!desk().ready()) return;
        const int wide = accountWide(width());
        if (beside(width())) return m_whatIf->setGeometry(wide, 0, width() - wide, height());
        const int top = qRound(accountHigh(wide));
        m_whatIf->setGeometry(0, top, width(), std::max(height() - top, m_whatIf->sizeHint().height()));
    }

    WhatIf* m_whatIf;
};

} // namespace

ActionPage* makeAccountPage(ActionDesk& desk, QWidget* parent) {
    return new AccountPage(desk, parent);
}

} // namespace hammerline
