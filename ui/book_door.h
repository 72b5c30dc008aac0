// The door of an open book: a second start with the same book knocks there, and the running window comes forward. It is
// a socket in the person's own runtime folder, so nobody else can knock or stand in the way.
#pragma once

#include <QByteArray>
#include <QObject>
#include <QString>

class QLocalServer;

namespace hammerline {

/// What a second start asks of the running window.
struct Knock {
    QString station;  // empty: as it stands
    QByteArray token; // by which a desktop lets a window come forward (XDG activation); may be empty
};

class BookDoor : public QObject {
    Q_OBJECT
public:
    explicit BookDoor(QObject* parent = nullptr);
    ~BookDoor() override;

    /// Stands at the door of this book, and leaves the one before. A socket that a killed window left is cleared away;
    /// where another window answers at the door, it stays there. Empty: at no door.
    void standAt(const QString& book);
    bool stands() const;

    /// Whether a running window answered within `patience` ms that it came forward. A window that hangs does not
    /// answer; then this start opens one of its own.
    static bool knock(const QString& book, const Knock&, int patience = 3000);
    /// Where the socket of a book lies; empty where the machine gives no runtime folder of the person's own.
    static QString placeOf(const QString& book);

Q_SIGNALS:
    void knocked(const hammerline::Knock&);

private:
    void answer();
    QLocalServer* m_server;
};

} // namespace hammerline
