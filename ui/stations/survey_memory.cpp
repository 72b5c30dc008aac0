#include "ui/stations/survey_memory.h"

#include "ui/pictures/picture_reading.h"
#include "ui/widgets/dialogs.h"
#include "ui/widgets/look.h"
#include "ui/words/piano_record.h"
#include "ui/words/said.h"

#include <QBuffer>
#include <QClipboard>
#include <QDate>
#include <QDialog>
#include <QDragEnterEvent>
#include <QGuiApplication>
#include <QHBoxLayout>
#include <QKeyEvent>
#include <QLabel>
#include <QLineEdit>
#include <QListWidget>
#include <QMimeData>
#include <QPushButton>
#include <QScrollArea>
#include <QVBoxLayout>

#include <algorithm>

namespace hammerline {

namespace {

using words::utf8;

constexpr int kThumbShown = 24; // units of measure, the longer side
constexpr int kHashRole = Qt::UserRole, kNumberRole = Qt::UserRole + 1;

QStringList filesOf(const QMimeData* data) {
    QStringList paths;
    for (const QUrl& url : data->urls())
        if (url.isLocalFile()) paths << url.toLocalFile();
    return paths;
}

bool isOpenAdvice(const Remark& remark) {
    return remark.kind == RemarkKind::advice && remark.accepted.empty();
}

QString today() {
    return QDate::currentDate().toString(Qt::ISODate);
}

} // namespace

SurveyMemory::SurveyMemory(Workbench& bench, QWidget* parent)
    : QWidget(parent)
    , m_bench(bench)
    , m_title(new QLabel(this))
    , m_pictures(new QListWidget(this))
    , m_said(new QLabel(this))
    , m_remark(new QLineEdit(this))
    , m_add(new QPushButton(tr("Add photograph…"), this))
    , m_decide(new QWidget(this)) {
    setObjectName(QStringLiteral("memory"));
    setAcceptDrops(true);
    m_title->setFont(face(Text::label));
    m_said->setFont(face(Text::label));
    m_said->setWordWrap(true);
    m_said->setAlignment(Qt::AlignTop | Qt::AlignLeft);
    m_said->setTextInteractionFlags(Qt::TextSelectableByMouse);
    m_pictures->setViewMode(QListView::IconMode);
    m_pictures->setFlow(QListView::LeftToRight);
    m_pictures->setWrapping(false);
    m_pictures->setMovement(QListView::Static);
    m_pictures->setIconSize(QSize(u(kThumbShown), u(kThumbShown)));
    m_pictures->setFrameShape(QFrame::NoFrame);
    m_pictures->setAcceptDrops(false); // the page takes what is dropped
    m_pictures->setAccessibleName(tr("Photographs of this place"));
    m_remark->setPlaceholderText(tr("Remark, kept with today's date"));
    m_remark->setAccessibleName(tr("Remark"));
    auto* line = new QHBoxLayout;
    line->addWidget(m_remark, 1);
    line->addWidget(m_add);
    auto* words = new QScrollArea(this);
    words->setWidget(m_said);
    words->setWidgetResizable(true);
    words->setFrameShape(QFrame::NoFrame);
    words->setFocusPolicy(Qt::NoFocus);
    auto* row = new QHBoxLayout;
    row->addWidget(m_pictures, 3);
    row->addWidget(words, 2);
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(u(1), u(1), u(1), u(1));
    column->setSpacing(u(1));
    column->addWidget(m_title);
    column->addLayout(row, 1);
    auto* answers = new QHBoxLayout(m_decide);
    answers->setContentsMargins(0, 0, 0, 0);
    for (const auto& [text, name, accepted] :
         {std::tuple{tr("Accept"), "accept-advice", "yes"}, {tr("Do not accept"), "refuse-advice", "no"}}) {
        auto* button = new QPushButton(text, m_decide);
        button->setObjectName(QLatin1String(name));
        connect(button, &QPushButton::clicked, this, [this, accepted = accepted] { decide(accepted); });
        answers->addWidget(button);
    }
    line->addWidget(m_decide); // in the line of the remark: the page is low
    column->addLayout(line);
    m_pictures->installEventFilter(this);
    connect(m_add, &QPushButton::clicked, this, &SurveyMemory::chooseFiles);
    connect(m_remark, &QLineEdit::returnPressed, this, &SurveyMemory::addRemark);
    connect(m_pictures, &QListWidget::itemActivated, this,
            [this](QListWidgetItem* item) { lookAt(item->data(kHashRole).toString()); });
    connect(&m_bench, &Workbench::recordChanged, this, [this] {
        if (isVisible()) refresh(); // thumbnails are read from the book when they are looked at
    });
    refresh();
}

void SurveyMemory::showPlace(const About& place) {
    if (place == m_place) return;
    m_place = place;
    if (isVisible()) refresh();
}

void SurveyMemory::takeFocus() {
    refresh();
    m_remark->setFocus();
}

/// What is said of the part as a whole is shown at every note.
bool SurveyMemory::here(const About& about) const {
    const bool samePart = about.part == m_place.part;
    const bool sameNote = !about.note || !m_place.note || *about.note == *m_place.note;
    return samePart && sameNote;
}

void SurveyMemory::refresh() {
    m_pictures->clear();
    QStringList said;
    const PianoRecord* record = m_bench.record();
    setEnabled(record != nullptr);
    if (!record) return;
    m_title->setText(words::aboutText(m_place, record->piano));
    int number = -1;
    for (const Photo& photo : record->photos) {
        ++number;
        if (!here(photo.about)) continue;
        const QImage thumb = imageOf(m_bench.thumb(photo.hash).value_or(std::string()));
        auto* item = new QListWidgetItem(QIcon(QPixmap::fromImage(thumb)), utf8(photo.on), m_pictures);
        item->setToolTip(words::photoSentence(photo, record->piano).toHtmlEscaped());
        item->setData(kHashRole, utf8(photo.hash));
        item->setData(kNumberRole, number);
    }
    const Remark* open = openAdvice();
    if (open) said << tr("To be decided: %1").arg(words::remarkSentence(*open, record->piano));
    for (const Remark& remark : record->remarks)
        if (here(remark.about) && &remark != open) said << words::remarkSentence(remark, record->piano);
    m_decide->setVisible(open != nullptr);
    if (m_pictures->count() == 0 && said.isEmpty())
        said << tr("Nothing yet. Drop a picture here, paste one, or choose a file; a remark is kept by Enter.");
    m_said->setText(said.join(QLatin1Char('\n')));
}

const Remark* SurveyMemory::openAdvice() const {
    const auto& remarks = m_bench.record()->remarks;
    const auto found =
        std::ranges::find_if(remarks, [&](const Remark& each) { return isOpenAdvice(each) && here(each.about); });
    return found == remarks.end() ? nullptr : &*found;
}

void SurveyMemory::decide(const char* accepted) {
    const Remark* open = openAdvice();
    if (!open) return;
    const Remark advice = *open; // the record is read again
    if (const auto kept = m_bench.decideAdvice(advice, accepted); !kept) Q_EMIT refused(kept.error());
}

Photo SurveyMemory::freshPhoto() const {
    Photo photo;
    photo.about = m_place;
    photo.on = today().toStdString();
    return photo;
}

void SurveyMemory::keep(std::vector<BenchBook::NewPhoto> fresh) {
    if (fresh.empty()) return;
    if (const auto kept = m_bench.addPhotos(fresh); !kept) Q_EMIT refused(kept.error());
}

bool SurveyMemory::takeFiles(const QStringList& paths) {
    std::vector<BenchBook::NewPhoto> fresh;
    for (const QString& path : paths) {
        auto picture = readPictureFile(path);
        if (!picture) {
            Q_EMIT refused(picture.error());
            return false;
        }
        Photo photo = freshPhoto();
        photo.hash = picture->hash;
        const bool there = std::ranges::any_of(m_bench.record()->photos, [&](const Photo& each) {
            return each.hash == photo.hash && each.about == photo.about;
        });
        if (!there) fresh.push_back({std::move(photo), std::move(*picture)});
    }
    keep(std::move(fresh));
    return true;
}

void SurveyMemory::chooseFiles() {
    const QString chosen = Dialogs::now().fileToOpen(
        this, tr("Photograph"), tr("Pictures (*.jpg *.jpeg *.png *.webp *.bmp *.gif *.tif *.tiff)"));
    if (!chosen.isEmpty()) takeFiles({chosen});
}

void SurveyMemory::paste() {
    const QMimeData* held = QGuiApplication::clipboard()->mimeData();
    if (!held) return;
    if (const QStringList files = filesOf(held); !files.isEmpty()) {
        takeFiles(files);
        return;
    }
    const QImage image = qvariant_cast<QImage>(held->imageData());
    if (image.isNull()) return;
    QByteArray bytes;
    QBuffer buffer(&bytes);
    buffer.open(QIODevice::WriteOnly);
    image.save(&buffer, "png");
    auto picture = readPicture(bytes, tr("the picture pasted"));
    if (!picture) return Q_EMIT refused(picture.error());
    Photo photo = freshPhoto();
    photo.hash = picture->hash;
    std::vector<BenchBook::NewPhoto> fresh;
    fresh.push_back({std::move(photo), std::move(*picture)});
    keep(std::move(fresh));
}

void SurveyMemory::addRemark() {
    Remark remark;
    auto text = readRemarkText(m_remark->text().toStdString());
    if (!text) return;
    remark.text = std::move(*text);
    remark.about = m_place;
    remark.on = today().toStdString();
    remark.who = identityValue(m_bench.record()->identity, "worker");
    if (const auto kept = m_bench.addRemark(remark); !kept) return Q_EMIT refused(kept.error());
    m_remark->clear();
}

/// The picture in a window of its own, as large as it fits.
void SurveyMemory::lookAt(const QString& hash) {
    const auto picture = m_bench.picture(hash.toStdString());
    const QImage image = picture ? imageOf(picture->bytes) : QImage();
    if (image.isNull()) return Q_EMIT refused({RefusalCode::badPicture, {}, "This photograph", ""});
    QDialog dialog(this);
    dialog.setWindowTitle(m_title->text());
    auto* label = new QLabel(&dialog);
    label->setPixmap(
        QPixmap::fromImage(image.scaled(window()->size() * 0.9, Qt::KeepAspectRatio, Qt::SmoothTransformation)));
    auto* column = new QVBoxLayout(&dialog);
    column->setContentsMargins(0, 0, 0, 0);
    column->addWidget(label);
    Dialogs::now().run(dialog);
}

void SurveyMemory::removeChosen() {
    const QListWidgetItem* item = m_pictures->currentItem();
    if (!item) return;
    const auto number = static_cast<std::size_t>(item->data(kNumberRole).toInt());
    if (const auto gone = m_bench.removePhoto(m_bench.record()->photos.at(number)); !gone) Q_EMIT refused(gone.error());
}

void SurveyMemory::dragEnterEvent(QDragEnterEvent* event) {
    if (!filesOf(event->mimeData()).isEmpty()) event->acceptProposedAction();
}

void SurveyMemory::dropEvent(QDropEvent* event) {
    takeFiles(filesOf(event->mimeData()));
    event->acceptProposedAction();
}

/// Del at the pictures: a list would take the key for its search.
bool SurveyMemory::eventFilter(QObject* watched, QEvent* event) {
    const bool pressed = event->type() == QEvent::KeyPress;
    if (!pressed || static_cast<QKeyEvent*>(event)->key() != Qt::Key_Delete)
        return QWidget::eventFilter(watched, event);
    removeChosen();
    return true;
}

void SurveyMemory::keyPressEvent(QKeyEvent* event) {
    if (event->matches(QKeySequence::Paste))
        paste();
    else
        QWidget::keyPressEvent(event);
}

} // namespace hammerline
