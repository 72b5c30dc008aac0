#include "ui/words/second_opinion.h"

#include "core/sheet/base64.h"
#include "ui/words/piano_record.h"
#include "ui/words/profile_svg.h"
#include "ui/words/said.h"
#include "ui/words/survey_names.h"
#include "ui/words/words.h"

#include <QCoreApplication>

#include <algorithm>

namespace hammerline::words {
namespace {

QString opinionText(const char* source) {
    return QCoreApplication::translate("second-opinion", source);
}

QString escaped(const QString& text) {
    return text.toHtmlEscaped().replace(QLatin1Char('\n'), QStringLiteral("<br>"));
}

QString tag(const char* name, const QString& inside) {
    const QString n = QLatin1String(name);
    return QLatin1Char('<') + n + QLatin1Char('>') + inside + QStringLiteral("</") + n + QStringLiteral(">\n");
}

/// The piano's own colours follow the reader's light or dark screen; every size is relative to the reader's type.
constexpr const char* kStyle =
    ":root{color-scheme:light dark;--ink:#1b1b1b;--soft:#5a5a5a;--paper:#fff;--rule:#bbb;--box:#f3f1ec}"
    "@media(prefers-color-scheme:dark){:root{--ink:#eee;--soft:#aaa;--paper:#161616;--rule:#555;--box:#232323}}"
    "*{box-sizing:border-box}body{margin:0;background:var(--paper);color:var(--ink);"
    "font:1rem/1.5 system-ui,sans-serif;overflow-wrap:break-word}"
    "main{max-width:60rem;margin:0 auto;padding:1rem}h1{font-size:1.6rem;line-height:1.2;margin:.5rem 0}"
    "h2{font-size:1.15rem;margin:0 0 .3rem}section{border-top:1px solid var(--rule);padding:1rem 0}"
    ".soft{color:var(--soft)}.ask{background:var(--box);padding:1rem;border:0;font-size:1.1rem}"
    "figure{margin:.6rem 0}img,svg{max-width:100%;height:auto;display:block}figcaption{color:var(--soft)}"
    ".photos{display:grid;gap:1rem;grid-template-columns:repeat(auto-fill,minmax(min(100%,26rem),1fr))}"
    "label{display:block;margin-top:.6rem}textarea,input{width:100%;font:inherit;color:inherit;"
    "background:var(--box);border:1px solid var(--rule);border-radius:.3rem;padding:.5rem}"
    "textarea{min-height:4.5rem}button{font:inherit;padding:.7rem 1.2rem;margin-top:.8rem;min-height:2.75rem}"
    "pre{white-space:pre-wrap;background:var(--box);padding:.8rem}";

/// Saves what was typed as a text file. Without it the page is read and answered by mail all the same.
constexpr const char* kScript =
    "document.getElementById('save').hidden=false;"
    "document.getElementById('answer').addEventListener('submit',function(e){e.preventDefault();"
    "var f=e.target,t=f.dataset.head+'who: '+f.who.value.replace(/\\s+/g,' ')+'\\n';"
    "f.querySelectorAll('textarea').forEach(function(a){"
    "if(a.value.trim())t+='['+a.name+'] '+a.value.trim()+'\\n';});"
    "var l=document.createElement('a');l.href=URL.createObjectURL(new Blob([t],{type:'text/plain'}));"
    "l.download='answer.txt';document.body.appendChild(l);l.click();l.remove();});";

QString figureOf(const Photo& photo, const PianoRecord& record) {
    const QString caption = escaped(photoSentence(photo, record.piano));
    const auto found = record.pictures.find(photo.hash);
    if (found == record.pictures.end())
        return tag("p", opinionText(QT_TRANSLATE_NOOP("second-opinion", "A photograph that is not here: ")) + caption);
    const Picture& picture = found->second;
    const QString image = QStringLiteral("<img loading=\"lazy\" width=\"%1\" height=\"%2\" alt=\"%3\" "
                                         "src=\"data:image/%4;base64,%5\">")
                              .arg(picture.width)
                              .arg(picture.height)
                              .arg(caption, utf8(picture.kind), utf8(toBase64(picture.bytes)));
    return tag("figure", image + tag("figcaption", caption));
}

QString answerField(const OpinionItem& item) {
    return QStringLiteral("<label>%1<textarea name=\"%2\"></textarea></label>\n")
        .arg(opinionText(QT_TRANSLATE_NOOP("second-opinion", "Your answer to this")),
             escaped(utf8(answerCode(item.about))));
}

QString itemSection(const OpinionItem& item, const PianoRecord& record) {
    QString inside = tag("h2", escaped(item.title));
    if (!item.text.isEmpty()) inside += tag("p", escaped(item.text));
    for (const Remark* remark : item.remarks)
        inside += tag("p", escaped(remarkSentence(*remark, record.piano)));
    QString figures;
    for (const Photo* photo : item.photos)
        figures += figureOf(*photo, record);
    if (!figures.isEmpty()) inside += QStringLiteral("<div class=\"photos\">\n%1</div>\n").arg(figures);
    return tag("section", inside + answerField(item));
}

QString profilesSection(const PassView& view, const Piano& piano) {
    QString inside;
    for (const DimensionId id : view.review.asked) {
        const QString drawing = profileSvg(view, id, piano);
        if (drawing.isEmpty()) continue;
        inside += tag("figure", drawing + tag("figcaption", escaped(name(id))));
    }
    if (inside.isEmpty()) return {};
    const QString legend = opinionText(QT_TRANSLATE_NOOP(
        "second-opinion", "A dot is a reading within its zone, a triangle one that is out; the band is the zone. Notes "
                          "run from the bass at the left."));
    return tag("section", tag("h2", opinionText(QT_TRANSLATE_NOOP("second-opinion", "What was measured"))) +
                              tag("p", legend) + inside);
}

QString headLines(const PianoRecord& record) {
    return QStringLiteral("piano: ") + utf8(record.uuid) + QLatin1Char('\n');
}

/// For those who answer by mail, and where no script runs.
QString byMail(const std::vector<OpinionItem>& items, const PianoRecord& record) {
    QString lines = headLines(record) + QStringLiteral("who: \n");
    for (const OpinionItem& item : items)
        lines += QLatin1Char('[') + utf8(answerCode(item.about)) + QStringLiteral("] \n");
    const QString how = opinionText(QT_TRANSLATE_NOOP(
        "second-opinion",
        "Copy these lines into a mail, write behind the brackets, and leave out what you have nothing "
        "to say to."));
    return QStringLiteral("<details><summary>%1</summary>\n%2<pre>%3</pre></details>\n")
        .arg(opinionText(QT_TRANSLATE_NOOP("second-opinion", "Answer by mail instead")), tag("p", how),
             lines.toHtmlEscaped());
}

Identity shownIdentity(Identity identity, bool whose) {
    if (whose) return identity;
    for (const char* own : {"owner", "contact", "place", "room"})
        identity.erase(own);
    return identity;
}

QString headSection(const PianoRecord& record, const OpinionOptions& options) {
    const Piano& piano = record.piano;
    QString inside = tag("h1", escaped(utf8(piano.name)));
    QStringList about{actionName(piano.action),
                      opinionText(QT_TRANSLATE_NOOP("second-opinion", "%1 notes")).arg(piano.notes)};
    const QString identity = identityLine(shownIdentity(record.identity, options.whose));
    if (!identity.isEmpty()) about << identity;
    inside += QStringLiteral("<p class=\"soft\">%1</p>\n").arg(escaped(about.join(QStringLiteral(", "))));
    QString asks =
        opinionText(QT_TRANSLATE_NOOP("second-opinion", "A second opinion is asked for, %1")).arg(utf8(options.on));
    if (!options.from.empty())
        asks += opinionText(QT_TRANSLATE_NOOP("second-opinion", ", by %1")).arg(utf8(options.from));
    return inside + QStringLiteral("<p class=\"soft\">%1</p>\n").arg(escaped(asks));
}

template <class Said>
bool belongs(const Said& said, const About& about, const std::vector<NoteNumber>& notes) {
    if (said.about.part.empty() || said.about.part != about.part) return false;
    const bool sameFault = said.about.fault.empty() || said.about.fault == about.fault;
    const bool atNote = !said.about.note || notes.empty() || std::ranges::find(notes, *said.about.note) != notes.end();
    return sameFault && atNote;
}

class ItemGatherer {
public:
    explicit ItemGatherer(const PianoRecord& record) : m_record(record) {}

    std::vector<OpinionItem> gather() {
        for (const Finding& finding : m_record.findings)
            if (finding.state == FindingState::toDo || finding.state == FindingState::watch) addFinding(finding);
        for (Row& row : m_rows)
            finish(row);
        for (const Remark& remark : m_record.remarks)
            if (!m_seenRemarks.contains(&remark) && remark.kind == RemarkKind::remark)
                itemAt(remark.about).remarks.push_back(&remark);
        for (const Photo& photo : m_record.photos)
            if (!m_seenPhotos.contains(&photo)) itemAt(photo.about).photos.push_back(&photo);
        return std::move(m_items);
    }

private:
    struct Row {
        Finding finding;
        std::vector<NoteNumber> notes;
    };

    void addFinding(const Finding& finding) {
        const auto same = [&](const Row& row) {
            const Finding& f = row.finding;
            return finding.note && f.note && f.part == finding.part && f.fault == finding.fault &&
                   f.remedy == finding.remedy && f.state == finding.state && f.remark == finding.remark;
        };
        const auto found = std::ranges::find_if(m_rows, same);
        Row& row = found == m_rows.end() ? m_rows.emplace_back(Row{finding, {}}) : *found;
        if (finding.note) row.notes.push_back(*finding.note);
    }

    void finish(Row& row) {
        std::ranges::sort(row.notes);
        OpinionItem item;
        if (row.notes.size() == 1) item.about.note = row.notes.front();
        item.about.part = row.finding.part;
        item.about.fault = row.finding.fault;
        item.title = partOfActionName(row.finding.part);
        item.text = findingSentence(row.finding, row.notes, m_record.piano);
        for (const Remark& remark : m_record.remarks)
            if (belongs(remark, item.about, row.notes) && m_seenRemarks.insert(&remark).second)
                item.remarks.push_back(&remark);
        for (const Photo& photo : m_record.photos)
            if (belongs(photo, item.about, row.notes) && m_seenPhotos.insert(&photo).second)
                item.photos.push_back(&photo);
        m_items.push_back(std::move(item));
    }

    OpinionItem& itemAt(const About& about) {
        const auto found = std::ranges::find_if(m_items, [&](const OpinionItem& item) { return item.about == about; });
        if (found != m_items.end()) return *found;
        OpinionItem item;
        item.about = about;
        const QString title = aboutText(about, m_record.piano);
        item.title = title.left(1).toUpper() + title.mid(1);
        return m_items.emplace_back(std::move(item));
    }

    const PianoRecord& m_record;
    std::vector<Row> m_rows;
    std::vector<OpinionItem> m_items;
    std::set<const Remark*> m_seenRemarks;
    std::set<const Photo*> m_seenPhotos;
};

} // namespace

std::vector<OpinionItem> opinionItems(const PianoRecord& record) {
    return ItemGatherer(record).gather();
}

QString opinionPage(const PianoRecord& record, const PassView* view, const OpinionOptions& options) {
    std::vector<OpinionItem> items = opinionItems(record);
    QString body = headSection(record, options);
    const bool general = std::ranges::none_of(items, [](const OpinionItem& item) { return item.about == About{}; });
    if (!options.question.isEmpty())
        body += QStringLiteral("<section class=\"ask\">%1%2</section>\n")
                    .arg(tag("h2", opinionText(QT_TRANSLATE_NOOP("second-opinion", "The question"))),
                         tag("p", escaped(options.question)));
    QString form;
    for (const OpinionItem& item : items)
        form += itemSection(item, record);
    if (view) form += profilesSection(*view, record.piano);
    if (general) { // something can be said of the whole in any case
        OpinionItem whole;
        whole.title = opinionText(QT_TRANSLATE_NOOP("second-opinion", "On the whole"));
        form += itemSection(whole, record);
        items.push_back(std::move(whole));
    }
    form +=
        tag("section",
            QStringLiteral("<label>%1<input name=\"who\" autocomplete=\"name\"></label>"
                           "<button id=\"save\" type=\"submit\" hidden>%2</button>\n")
                    .arg(opinionText(QT_TRANSLATE_NOOP("second-opinion", "Your name")),
                         opinionText(QT_TRANSLATE_NOOP("second-opinion", "Save the answer as a file to send back"))) +
                byMail(items, record));
    body += QStringLiteral("<form id=\"answer\" data-head=\"%1\">\n%2</form>\n")
                .arg(headLines(record).toHtmlEscaped(), form);
    return QStringLiteral("<!DOCTYPE html>\n<html lang=\"en\">\n<head>\n<meta charset=\"utf-8\">\n"
                          "<meta name=\"viewport\" content=\"width=device-width, initial-scale=1\">\n"
                          "<meta http-equiv=\"Content-Security-Policy\" content=\"default-src 'none'; img-src data:; "
                          "style-src 'unsafe-inline'; script-src 'unsafe-inline'\">\n<title>%1</title>\n"
                          "<style>%2</style>\n</head>\n<body>\n<main>\n%3</main>\n<script>%4</script>\n</body>\n"
                          "</html>\n")
        .arg(escaped(utf8(record.piano.name)), QLatin1String(kStyle), body, QLatin1String(kScript));
}

} // namespace hammerline::words
