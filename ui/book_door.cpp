#include "ui/book_door.h"

#include <QCryptographicHash>
#include <QFileInfo>
#include <QLocalServer>
#include <QLocalSocket>
#include <unistd.h>

namespace hammerline {

namespace {

constexpr int kDoorProbe = 500; // ms; a window that hangs still accepts a connection

const QByteArray kShown = "shown\n";

bool isOwnFolder(const QFileInfo& folder) {
    constexpr auto kOthers =
        QFile::ReadGroup | QFile::WriteGroup | QFile::ExeGroup | QFile::ReadOther | QFile::WriteOther | QFile::ExeOther;
    return folder.isDir() && folder.ownerId() == getuid() && !(folder.permissions() & kOthers);
}

bool someoneAnswers(const QString& place) {
    QLocalSocket probe;
    probe.connectToServer(place);
    return probe.waitForConnected(kDoorProbe);
}

} // namespace

BookDoor::BookDoor(QObject* parent) : QObject(parent), m_server(new QLocalServer(this)) {
    m_server->setSocketOptions(QLocalServer::UserAccessOption);
    connect(m_server, &QLocalServer::newConnection, this, &BookDoor::answer);
}

BookDoor::~BookDoor() = default;

/// The book by where it really lies, so that a link to it leads to the same door.
QString BookDoor::placeOf(const QString& book) {
    const QString folder = qEnvironmentVariable("XDG_RUNTIME_DIR");
    const QString real = QFileInfo(book).canonicalFilePath();
    if (folder.isEmpty() || real.isEmpty() || !isOwnFolder(QFileInfo(folder))) return {};
    const QByteArray hash = QCryptographicHash::hash(real.toUtf8(), QCryptographicHash::Sha256).toHex();
    return folder + QStringLiteral("/hammerline-") + QString::fromLatin1(hash.left(16));
}

bool BookDoor::stands() const {
    return m_server->isListening();
}

void BookDoor::standAt(const QString& book) {
    const QString place = placeOf(book);
    if (stands() && m_server->fullServerName() == place) return;
    m_server->close();
    // asked first: Qt puts its socket in the place of any other, also of one that is alive
    if (place.isEmpty() || someoneAnswers(place)) return;
    QLocalServer::removeServer(place);
    m_server->listen(place);
}

/// One line each way: "show", the station and the token, parted by tabs; then "shown".
void BookDoor::answer() {
    while (QLocalSocket* caller = m_server->nextPendingConnection()) {
        connect(caller, &QLocalSocket::disconnected, caller, &QObject::deleteLater);
        const auto hear = [this, caller] {
            if (!caller->canReadLine()) return;
            const QList<QByteArray> said = caller->readLine().trimmed().split('\t');
            if (said.first() != "show") return caller->abort();
            Q_EMIT knocked({QString::fromUtf8(said.value(1)), said.value(2)});
            caller->write(kShown);
            caller->flush();
        };
        connect(caller, &QLocalSocket::readyRead, caller, hear);
        hear(); // it may have spoken already
    }
}

bool BookDoor::knock(const QString& book, const Knock& knock, int patience) {
    const QString place = placeOf(book);
    if (place.isEmpty()) return false;
    QLocalSocket socket;
    socket.connectToServer(place);
    if (!socket.waitForConnected(kDoorProbe)) return false;
    socket.write("show\t" + knock.station.toUtf8() + '\t' + knock.token + '\n');
    while (!socket.canReadLine())
        if (!socket.waitForReadyRead(patience)) return false;
    return socket.readLine() == kShown;
}

} // namespace hammerline
