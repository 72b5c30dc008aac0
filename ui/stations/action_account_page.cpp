// Page 1 of the wide note: the account of the dip.
#include "ui/stations/action_page.h"
#include "ui/stations/action_what_if.h"
#include "ui/widgets/account_painter.h"
#include "ui/words/account_labels.h"

#include <QPainter>

namespace hammerline {

namespace {

constexpr double kAccountMargin = 4, kAccountHead = 9, kBothFrom = 240; // units

class AccountPage : public ActionPage {
public:
    AccountPage(ActionDesk& actionDesk, QWidget* parent)
        : ActionPage(actionDesk, parent), m_whatIf(new WhatIf(actionDesk, this)) {
        connect(m_whatIf, &WhatIf::refused, this, &ActionPage::refused);
    }

    QString title() const override { return tr("Account of the dip"); }
    QString sentence() const override { return words::accountLines(desk().note()).join(QStringLiteral(". ")); }
    QList<KeyHint> pageHints() const override {
        return {{QStringLiteral("left right"), tr("note")},
                {QStringLiteral("up down"), tr("handle")},
                {QStringLiteral("Shift right"), tr("move it")},
                {QStringLiteral("Del"), tr("put back")},
                {QStringLiteral("Enter"), tr("take over as aim")}};
    }
    DimensionId stripDimension() const override { return dimension::aftertouch; }
    bool useKey(int key, Qt::KeyboardModifiers modifiers) override {
        return m_whatIf->useKey(key, modifiers); // also where it has no room: the account follows all the same
    }

protected:
    void paintEvent(QPaintEvent*) override {
        QPainter painter(this);
        const DrawnStyle style = screenStyle(*this);
        painter.fillRect(rect(), ink(style.look.paper));
        if (!desk().ready()) return paintNothing(painter);
        const NoteAction& action = desk().note();
        const double left = u(kAccountMargin);
        painter.setRenderHint(QPainter::Antialiasing);
        painter.setPen(ink(style.look.ink));
        const QString head = tr("Where the key's way goes");
        drawnText(painter, style, style.strong, {left, units(6)}, head);
        painter.setPen(ink(style.look.ink2));
        const double after = left + drawnWidth(style.strong, head) + units(4);
        drawnText(painter, style, style.plain, {after, units(6)},
                  tr("mm at the key's front. %1").arg(words::ratioSentence(action.account.ratio)));
        const double high = accountHeight(style, action);
        paintAccount(painter, QRectF(left, units(kAccountHead), accountWide() - 2 * left, high), action, style);
        painter.setPen(ink(style.look.ink));
        double y = units(kAccountHead) + high + units(3.5);
        for (const QString& line : {words::againstSentence(action.account), words::inferredSentence(action.account)}) {
            if (line.isEmpty()) continue;
            drawnText(painter, style, style.bold, {left, y}, line);
            y += units(6);
        }
    }
    void resizeEvent(QResizeEvent*) override {
        m_whatIf->setVisible(width() >= u(kBothFrom));
        m_whatIf->setGeometry(accountWide(), 0, width() - accountWide(), height());
    }

private:
    /// The handles stand beside the account where there is room for both.
    int accountWide() const { return width() >= u(kBothFrom) ? width() - m_whatIf->sizeHint().width() : width(); }

    WhatIf* m_whatIf;
};

} // namespace

ActionPage* makeAccountPage(ActionDesk& desk, QWidget* parent) {
    return new AccountPage(desk, parent);
}

} // namespace hammerline
