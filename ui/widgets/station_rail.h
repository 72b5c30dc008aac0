// The line of hammers: the stations on a rail at the window's left; the current hammer has come forward.
#pragma once

#include <QAbstractButton>
#include <QButtonGroup>
#include <QWidget>

namespace hammerline {

class Hammer : public QAbstractButton {
    Q_OBJECT
public:
    Hammer(int number, const QString& name, QWidget* parent);
    void setState(const QString& line);
    QSize sizeHint() const override;

protected:
    void paintEvent(QPaintEvent*) override;

private:
    int m_number;
    QString m_state;
};

class StationRail : public QWidget {
    Q_OBJECT
public:
    explicit StationRail(const QStringList& names, QWidget* parent = nullptr);
    void setCurrent(int index);
    int current() const;
    /// The line of state under the name: "66 of 88".
    void setState(int index, const QString& line);
    QSize sizeHint() const override;

Q_SIGNALS:
    /// A person asked for a station; nothing has changed yet.
    void asked(int index);

protected:
    void paintEvent(QPaintEvent*) override;

private:
    QButtonGroup m_group;
};

} // namespace hammerline
