// What is told of a passing file that lies beside a book although nobody writes it any more.
#include "ui/words/keeping.h"
#include "ui/words/said.h"

#include <QDateTime>
#include <QFileInfo>

namespace hammerline::words {
namespace {

constexpr const char* kKeepingRoom = "keeping";

QString ofKind(const LeftBehind& left) {
    const auto said = [](const char* text) { return QCoreApplication::translate(kKeepingRoom, text); };
    switch (left.kind) {
    case LeftBehind::Kind::sound: {
        const QDateTime newest = QDateTime::fromMSecsSinceEpoch(left.newest / 1000);
        return said(QT_TRANSLATE_NOOP("keeping", "It is a whole, sound book; its newest entry is of %1."))
            .arg(newest.toString(QStringLiteral("yyyy-MM-dd HH:mm")));
    }
    case LeftBehind::Kind::large:
        return said(QT_TRANSLATE_NOOP("keeping", "It is large and was not looked over."));
    case LeftBehind::Kind::bookItself:
        return said(QT_TRANSLATE_NOOP("keeping", "It is a second name of the book itself, and not needed."));
    case LeftBehind::Kind::broken:
        break;
    }
    return said(QT_TRANSLATE_NOOP("keeping", "It is no whole book, and nothing needs it."));
}

} // namespace

QString leftBehindSentence(const LeftBehind& left) {
    const QString name = QFileInfo(utf8(left.path)).fileName();
    return QCoreApplication::translate(kKeepingRoom,
                                       "Beside the book lies %1, left behind by work that was broken off. %2")
        .arg(name, ofKind(left));
}

QString leftBehindAdvice(const LeftBehind& left, const std::string& book) {
    const QString path = utf8(left.path);
    switch (left.kind) {
    case LeftBehind::Kind::sound:
        return QCoreApplication::translate(kKeepingRoom,
                                           "To put it in place: hammerline restore \"%1\" \"%2\". Otherwise "
                                           "delete it.")
            .arg(utf8(book), path);
    case LeftBehind::Kind::large:
        return QCoreApplication::translate(kKeepingRoom, "Whether it is sound, hammerline verify \"%1\" says.")
            .arg(path);
    case LeftBehind::Kind::bookItself:
    case LeftBehind::Kind::broken:
        break;
    }
    return QCoreApplication::translate(kKeepingRoom, "Delete it.");
}

} // namespace hammerline::words
