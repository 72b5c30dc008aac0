#include "app/arguments.h"

#include "app/console.h"
#include "app/typed_words.h"

#include <CLI/CLI.hpp>

#include <algorithm>
#include <cstdio>
#include <map>
#include <set>

namespace hammerline::app {
namespace {

/// One command: its options are bound to a request that outlives the parse.
template <class Request>
CLI::App* command(CLI::App& top, Arguments& out, std::vector<std::function<void()>>& chosen, const char* name,
                  const char* help, Request& request) {
    CLI::App* sub = top.add_subcommand(name, help);
    sub->set_help_flag(); // typed_words.cpp answers --help
    sub->add_flag("--json", out.json, "print one JSON object");
    sub->add_flag("--quiet", out.quiet, "no questions, cautions and remarks on standard error");
    chosen.emplace_back([sub, &out, &request] {
        if (sub->parsed()) out.request = request;
    });
    return sub;
}

void spokenOption(CLI::App* sub, Arguments& out) {
    sub->add_flag("--spoken", out.spoken, "whole sentences, a line each, in the place of tables");
}

void bookAndPiano(CLI::App* sub, Common& at) {
    sub->add_option("BOOK", at.book, "the bench book")->required();
    sub->add_option("--piano", at.piano, "name of the piano (not needed where the book has one)");
}

void identityOptions(CLI::App* sub, SetUp& s) {
    sub->add_option("--maker", s.identity["maker"], "who made it");
    sub->add_option("--serial", s.identity["serial"], "its serial number");
    sub->add_option("--year", s.identity["year"], "when it was made: 1912, about 1912");
    sub->add_option("--owner", s.identity["owner"], "whose it is");
    sub->add_option("--contact", s.identity["contact"], "telephone or mail of the owner");
    sub->add_option("--place", s.identity["place"], "where it stands");
    sub->add_option("--room", s.identity["room"], "in which room");
    sub->add_option("--worker", s.identity["worker"], "who works on it");
}

void setUp(CLI::App* sub, SetUp& s) {
    sub->add_option("--action", s.action, "upright, drop or grand")->check(CLI::IsMember({"upright", "drop", "grand"}));
    sub->add_option("--attribute", s.attributes, "NAME=VALUE, see hammerline ids")->allow_extra_args(false);
    sub->add_option("--notes", s.notes, "number of notes, 20 to 108");
    sub->add_option("--lowest", s.lowest, "the lowest note, such as A0");
    sub->add_flag("--player", s.player, "a player stack is fitted");
    sub->add_option("--sections", s.sections, "such as 1-26,27-52,53-88");
    sub->add_option("--last-damper", s.lastDamper, "the last note with a damper");
    sub->add_option("--spec", s.spec, "spec sheet: a file, or upright, old-upright, drop, grand");
    identityOptions(sub, s);
}

void planOptions(CLI::App* sub, PlanRequest& p) {
    sub->add_option("--pass", p.pass, "number or label of the pass");
    sub->add_option("--intent", p.intent, "touch-up or full")->check(CLI::IsMember({"touch-up", "full"}));
    sub->add_option("--float", p.floating, "dip, blow or aftertouch: what may float")
        ->check(CLI::IsMember({"dip", "blow", "aftertouch"}));
    sub->add_option("--minutes", p.minutes, "what can be done in so many minutes");
    sub->add_option("--accept", p.accept, "CAUSE or CAUSE=REMEDY: work this cause")->allow_extra_args(false);
    sub->add_option("--stage", p.stage, "trial, sections or whole")
        ->check(CLI::IsMember({"trial", "sections", "whole"}));
}

struct Requests {
    WindowRequest window;
    DemoRequest demo;
    NewRequest fresh;
    PianoRequest piano;
    PassRequest pass;
    ImportRequest import;
    EnterRequest enter;
    UndoRequest undo{{}, false}, redo{{}, true};
    OverrideRequest override_;
    CheckRequest check;
    ActionRequest action;
    PlanRequest plan;
    TickRequest tick;
    CompareRequest compare;
    SurveyRequest survey;
    WorkRequest work;
    NextRequest next;
    PrintRequest print;
    ExportRequest export_;
    ListRequest list;
    BackupRequest backup;
    RestoreRequest restore;
    MergeRequest merge;
    VerifyRequest verify;
    IdsRequest ids;
    ArchiveRequest archive{{}, true}, unarchive{{}, false};
    RemarkRequest remark;
    EstimateRequest estimate;
    PhotoRequest photo;
    ShareRequest share;
    AdviceRequest advice;
    ExperienceRequest experience;
    GaugeRequest gauge;
    VisitsRequest visits;
};

using Chosen = std::vector<std::function<void()>>;

void measuringCommands(CLI::App& top, Arguments& out, Chosen& chosen, Requests& r) {
    auto* demo = command(top, out, chosen, "demo", "write the demo book", r.demo);
    demo->add_option("BOOK", r.demo.book, "the bench book to write")->required();
    auto* fresh = command(top, out, chosen, "new", "enter a piano; makes the book where there is none", r.fresh);
    bookAndPiano(fresh, r.fresh.at);
    setUp(fresh, r.fresh.setUp);
    auto* piano = command(top, out, chosen, "piano", "change a piano's set-up", r.piano);
    bookAndPiano(piano, r.piano.at);
    piano->add_option("--rename", r.piano.setUp.rename, "another name");
    setUp(piano, r.piano.setUp);
    auto* pass = command(top, out, chosen, "pass", "start a pass", r.pass);
    bookAndPiano(pass, r.pass.at);
    pass->add_option("--label", r.pass.label, "what the pass is called, such as \"after shims\"");
    pass->add_option("--temperature", r.pass.temperature, "degrees Celsius");
    pass->add_option("--humidity", r.pass.humidity, "relative humidity in per cent");
    pass->add_option("--stack", r.pass.stack, "in or out")->check(CLI::IsMember({"in", "out"}));
    pass->add_option("--weights", r.pass.weights, "on or off")->check(CLI::IsMember({"on", "off"}));
    pass->add_option("--at", r.pass.place, "piano or bench: where the key frame lay")
        ->check(CLI::IsMember({"piano", "bench"}));
    pass->add_option("--line-sag", r.pass.lineSag,
                     "how a line that heights are read against hangs: mm at its middle (0.28), or material, "
                     "thickness and pull (\"steel 0.5 mm 10 N\")");
    pass->add_flag("--settled", r.pass.settled, "ask for what new punchings and felts have moved, and nothing else");
    pass->add_option("--reference", r.pass.references, "DIMENSION=REFERENCE, such as key-height=bed")
        ->allow_extra_args(false);
    auto* import = command(top, out, chosen, "import",
                           "take readings from a table of text, or whole pianos from an exported JSON", r.import);
    bookAndPiano(import, r.import.at);
    import->add_option("FILE", r.import.file, "the table (- for standard input), or an exported JSON")->required();
    import->add_option("--pass", r.import.pass, "number or label of the pass");
    import->add_option("--map", r.import.map, "COLUMN=DIMENSION")->allow_extra_args(false);
    import->add_option("--unit", r.import.units, "DIMENSION=UNIT")->allow_extra_args(false);
    import->add_option("--decimal", r.import.decimal, ". or ,")->check(CLI::IsMember({".", ","}));
    import->add_flag("--take-doubtful", r.import.takeDoubtful, "take doubtful values as they are typed");
    auto* enter = command(top, out, chosen, "enter", "enter one reading", r.enter);
    bookAndPiano(enter, r.enter.at);
    enter->add_option("NOTE", r.enter.note, "number or pitch, such as 40 or C4")->required();
    enter->add_option("DIMENSION", r.enter.dimension, "what was measured, such as let-off")->required();
    enter->add_option("TEXT", r.enter.text, "as it is typed: 46, 46,5, 1 13/16, .040in, -0.3, blocks")->required();
    enter->add_option("--pass", r.enter.pass, "number or label of the pass");
    enter->add_option("--unit", r.enter.unit, "unit of a bare number");
    enter->add_flag("--repeat", r.enter.repeat, "a repeat reading of the same cell");
    enter->add_flag("--take-doubtful", r.enter.takeDoubtful, "take a doubtful value as it is typed");
    enter->add_option("--reason", r.enter.reason, "why a doubtful value is right");
    auto* undo = command(top, out, chosen, "undo", "take the last act back", r.undo);
    undo->add_option("BOOK", r.undo.book, "the bench book")->required();
    auto* redo = command(top, out, chosen, "redo", "bring back what undo took", r.redo);
    redo->add_option("BOOK", r.redo.book, "the bench book")->required();
    auto* over = command(top, out, chosen, "override", "a zone of its own for one note or some", r.override_);
    bookAndPiano(over, r.override_.at);
    over->add_option("NOTE", r.override_.note, "number, pitch or range, such as 40, C4 or 20-30")->required();
    over->add_option("DIMENSION", r.override_.dimension, "what is measured, such as let-off")->required();
    over->add_option("LOW", r.override_.low, "the low edge of the zone")->required();
    over->add_option("NOMINAL", r.override_.nominal, "the aim")->required();
    over->add_option("HIGH", r.override_.high, "the high edge of the zone")->required();
    over->add_option("--reason", r.override_.reason, "why; it is kept with the zone")->required();
    over->add_option("--review", r.override_.review, "date to look again, YYYY-MM-DD");
}

void workingCommands(CLI::App& top, Arguments& out, Chosen& chosen, Requests& r) {
    auto* check = command(top, out, chosen, "check", "judge and rank a pass", r.check);
    bookAndPiano(check, r.check.at);
    spokenOption(check, out);
    check->add_option("--pass", r.check.pass, "number or label of the pass");
    check->add_option("--spec", r.check.spec, "another spec sheet: a file or a name");
    check->add_option("--rule", r.check.rule, "plain, guard95 or guardU")
        ->check(CLI::IsMember({"plain", "guard95", "guardU"}));
    auto* action = command(top, out, chosen, "action",
                           "where the key's way goes: account of the dip, stroke, after the plan", r.action);
    bookAndPiano(action, r.action.at);
    spokenOption(action, out);
    action->add_option("--note", r.action.note, "number or pitch of one note, such as 40 or C4 (else all)");
    action->add_option("--pass", r.action.pass, "number or label of the pass");
    auto* plan = command(top, out, chosen, "plan", "what to turn or shim; writes nothing", r.plan);
    bookAndPiano(plan, r.plan.at);
    spokenOption(plan, out);
    planOptions(plan, r.plan);
    auto* tick = command(top, out, chosen, "tick", "record what was done", r.tick);
    bookAndPiano(tick, r.tick.plan.at);
    planOptions(tick, r.tick.plan);
    tick->add_flag("--all", r.tick.all, "every step of the plan");
    tick->add_option("--step", r.tick.step, "one step, by its id");
    tick->add_option("--amount", r.tick.amount, "what was really done: turns (1/8, 0.25) or mm, signed as the plan's");
    tick->add_flag("--aim", r.tick.aim, "it was set to the aim");
    tick->add_flag("--not-done", r.tick.notDone, "it was not done after all: what was said of the step is taken back");
    auto* compare = command(top, out, chosen, "compare", "two passes side by side", r.compare);
    bookAndPiano(compare, r.compare.at);
    spokenOption(compare, out);
    compare->add_option("--from", r.compare.from, "number or label of the earlier pass");
    compare->add_option("--to", r.compare.to, "number or label of the later pass");
    auto* survey =
        command(top, out, chosen, "survey", "findings, parts to order, the order of the whole job", r.survey);
    bookAndPiano(survey, r.survey.at);
    survey->add_flag("--cautions", r.survey.cautions, "every caution that holds for this piano");
    survey->add_option("--add", r.survey.add, "\"NOTES PART FAULT [REMEDY]\"")->allow_extra_args(false);
    survey->add_option("--state", r.survey.state, "\"NOTES PART STATE\"")->allow_extra_args(false);
    survey->add_option("--symptom", r.survey.symptom, "\"NOTES SYMPTOM\"")->allow_extra_args(false);
    survey
        ->add_option(
            "--look", r.survey.looks,
            "\"CHECK yes|no\": what a look showed that decides a cause of the last pass, such as \"mark-capstan yes\"")
        ->allow_extra_args(false);
    survey
        ->add_option("--set", r.survey.settings,
                     "NAME=VALUE: minutes.PART, yearly-humidity, odd-part.NAME, work-done.PLACE.WHAT, spare-percent, "
                     "spare-at-least, "
                     "only-these.PART, in-hand.PART, "
                     "ordered.PART, piece.PART, "
                     "size.PART.FIELD, hand, "
                     "job (whole or asked)")
        ->allow_extra_args(false);
    survey
        ->add_option("--check-numbers", r.survey.checkNumbers,
                     "\"PART NUMBERS\": the numbers on parts as they lie, such as \"key 1-20 22 21 23-88\"")
        ->allow_extra_args(false);
    auto* work =
        command(top, out, chosen, "work", "every step of the work and how it stands; tick one that is done", r.work);
    bookAndPiano(work, r.work.at);
    work->add_option("--step", r.work.step, "one step, by its id: how it is done");
    work->add_option("--done", r.work.done, "the step is done at these notes, such as 1-20 or all");
    work->add_option("--undone", r.work.undone, "it is not done after all, at these notes or all");
    work->add_option("--not-here", r.work.notHere, "the step is not needed on this piano, and why");
    work->add_option("--remark", r.work.remark, "what is to be kept with the tick");
    work->add_option("--minutes", r.work.minutes, "what it took")->check(CLI::Range(0.0, 6000.0));
    auto* next = command(top, out, chosen, "next", "what to do next, in one sentence", r.next);
    bookAndPiano(next, r.next.at);
    auto* print = command(top, out, chosen, "print", "a sheet as PDF", r.print);
    bookAndPiano(print, r.print.plan.at);
    print
        ->add_option("SHEET", r.print.sheet,
                     "adjustment, adjustment-large, check, survey, parts, labels, comparison, record, action, gauges, "
                     "estimate, card or work")
        ->required();
    print->add_option("--out", r.print.out, "FILE.pdf, or - for standard output; parts also as FILE.csv")->required();
    print->add_option("--from", r.print.from, "comparison: the pass before (the first that read something)");
    print->add_option("--to", r.print.to, "comparison: the pass now (the newest)");
    print->add_option("--paper", r.print.paper, "A4 or Letter")
        ->check(CLI::IsMember({"A4", "Letter"}, CLI::ignore_case));
    print
        ->add_option("--measured", r.print.measured,
                     "gauges: what their line of 100 mm measured on the last print, such as 98.7; printed corrected")
        ->check(CLI::Range(90.0, 110.0));
    planOptions(print, r.print.plan);
    auto* ids = command(top, out, chosen, "ids", "every catalogue of stable names", r.ids);
    (void)ids;
}

void bookCommands(CLI::App& top, Arguments& out, Chosen& chosen, Requests& r) {
    auto* exporting = command(top, out, chosen, "export", "readings as CSV, everything as JSON", r.export_);
    bookAndPiano(exporting, r.export_.at);
    exporting
        ->add_option("--out", r.export_.out,
                     "FILE.csv or FILE.json; - for standard output: the table, or with --json everything")
        ->required();
    auto* list = command(top, out, chosen, "list", "the pianos and passes of a book", r.list);
    list->add_option("BOOK", r.list.book, "the bench book")->required();
    list->add_option(
        "--find", r.list.find,
        "words: pianos whose name, maker, number, year, owner, contact, place, room or worker hold them all");
    list->add_flag("--archived", r.list.archived, "also those that are put away");
    auto* backup = command(top, out, chosen, "backup", "a verified copy", r.backup);
    backup->add_option("BOOK", r.backup.book, "the bench book")->required();
    backup->add_option("--out", r.backup.out, "where to (else dated, beside the book)");
    auto* restore = command(top, out, chosen, "restore", "put a backup in the place of a book", r.restore);
    restore->add_option("BOOK", r.restore.book, "the bench book")->required();
    restore->add_option("FROM", r.restore.from, "the backup");
    restore->add_flag(
        "--rescue", r.restore.rescue,
        "read what can still be read of a damaged BOOK, row by row, into a new file (FROM, or one beside it)");
    auto* merge = command(top, out, chosen, "merge", "take in what another book knows", r.merge);
    merge->add_option("BOOK", r.merge.book, "the bench book")->required();
    merge->add_option("OTHER", r.merge.other, "the other book; it is only read")->required();
    auto* verify = command(top, out, chosen, "verify", "is the book sound?", r.verify);
    verify->add_option("BOOK", r.verify.book, "the bench book")->required();
}

void recordCommands(CLI::App& top, Arguments& out, Chosen& chosen, Requests& r) {
    auto* archive =
        command(top, out, chosen, "archive", "put a piano away: out of the list, nothing is lost", r.archive);
    bookAndPiano(archive, r.archive.at);
    auto* back = command(top, out, chosen, "unarchive", "bring back a piano that was put away", r.unarchive);
    bookAndPiano(back, r.unarchive.at);
    auto* remark =
        command(top, out, chosen, "remark", "what you want to remember; without TEXT lists what was said", r.remark);
    bookAndPiano(remark, r.remark.at);
    remark->add_option("TEXT", r.remark.text, "the remark");
    remark->add_option("--note", r.remark.note, "of a note: number or pitch");
    remark->add_option("--pass", r.remark.pass, "of a pass: its number or label");
    remark->add_option("--part", r.remark.part, "of a part of the survey, such as bridle-strap");
    remark->add_option("--fault", r.remark.fault, "of this fault of the part");
    remark->add_option("--who", r.remark.who, "who said it");
    remark->add_option("--date", r.remark.date, "the day, YYYY-MM-DD (else today); of a visit the day it is due");
    remark->add_option("--kind", r.remark.kind, "remark, advice, decision or visit")
        ->check(CLI::IsMember({"remark", "advice", "decision", "visit"}));
    remark->add_option("--finding", r.remark.finding, "\"NOTE PART [FAULT]\": note, part and fault in one");
    auto* photo = command(top, out, chosen, "photo", "photographs into the book; without FILE those in it", r.photo);
    bookAndPiano(photo, r.photo.at);
    photo->add_option("FILE", r.photo.files, "JPEG, PNG or another picture, up to 30 MB each");
    photo->add_option("--note", r.photo.note, "of a note: number or pitch");
    photo->add_option("--pass", r.photo.pass, "of a pass: its number or label");
    photo->add_option("--part", r.photo.part, "of a part of the survey, such as hammer");
    photo->add_option("--fault", r.photo.fault, "of this fault of the part");
    photo->add_option("--finding", r.photo.finding, "\"NOTE PART [FAULT]\": note, part and fault in one");
    photo->add_option("--caption", r.photo.caption, "what is to be seen");
    photo->add_option("--who", r.photo.who, "who took it");
    photo->add_option("--date", r.photo.date, "the day, YYYY-MM-DD (else today)");
    photo->add_flag("--original", r.photo.original, "keep its full size (else at most 1,600 points wide)");
    photo->add_option("--remove", r.photo.remove, "take back the photograph of this number in the list");
    photo->add_option("--show", r.photo.show, "write the picture of this number to --out");
    photo->add_option("--out", r.photo.out, "where --show writes the picture");
    auto* share =
        command(top, out, chosen, "share",
                "one HTML page for a second opinion: findings, photographs, readings, and room to answer", r.share);
    bookAndPiano(share, r.share.at);
    share->add_option("--out", r.share.out, "FILE.html, or - for standard output")->required();
    share->add_option("--question", r.share.question, "what you would like to know");
    share->add_option("--who", r.share.who, "who asks");
    share->add_option("--pass", r.share.pass, "number or label of the pass whose readings are drawn (else the last)");
    share->add_flag("--whose", r.share.whose, "also owner, contact, place and room; they are left out else");
    auto* advice = command(top, out, chosen, "advice", "take an answer to a shared page back into the book", r.advice);
    bookAndPiano(advice, r.advice.at);
    advice->add_option("FILE", r.advice.file, "the saved answer, or the text of a mail (- for standard input)")
        ->required();
    advice->add_option("--who", r.advice.who, "who answered, where the answer does not say");
    auto* experience =
        command(top, out, chosen, "experience",
                "what other pianos of the book, built alike, teach of this one: first guesses only", r.experience);
    bookAndPiano(experience, r.experience.at);
    auto* gauge = command(top, out, chosen, "gauge",
                          "how well each dimension is read: repeats and, with persons, the gauge study", r.gauge);
    bookAndPiano(gauge, r.gauge.at);
    gauge->add_option("--dimension", r.gauge.dimension, "only this dimension (else all that were read repeatedly)");
    gauge->add_option("--persons", r.gauge.persons, "passes of the same state, each read by another person: 2,3,4");
    auto* visits = command(top, out, chosen, "visits", "which piano is due when, over the whole book", r.visits);
    visits->add_option("BOOK", r.visits.book, "the bench book")->required();
    auto* estimate =
        command(top, out, chosen, "estimate", "hours, parts and, where you filled them in, prices", r.estimate);
    bookAndPiano(estimate, r.estimate.at);
    estimate
        ->add_option("--set", r.estimate.settings,
                     "NAME=VALUE: hour, travel, currency, allowance (per cent), exclude (lines between ;), "
                     "part.SUPPLY (price of one, of a metre, of 100 cm2); an empty value takes it back")
        ->allow_extra_args(false);
    remark->add_option("--remove", r.remark.remove, "take back the remark of this number in the list");
    remark->add_option("--accept", r.remark.accept, "accept the advice of this number in the list");
    remark->add_option("--decline", r.remark.decline, "decline the advice of this number in the list");
}

void windowCommand(CLI::App& top, Arguments& out, Chosen& chosen, Requests& r) {
    auto* window = command(top, out, chosen, "window", "open the window on a book (as without a command)", r.window);
    window->add_option("BOOK", r.window.book, "the bench book");
    window->add_option("--piano", r.window.piano, "name of the piano");
    window->add_option(
        "--station", r.window.station,
        "piano, survey, measure, review, adjust, passes, work, bench, how-to; account, stroke or action of a note");
    window->add_flag("--another", r.window.another, "a window of its own, also where one is open on this book");
    window->add_option("--theme", r.window.theme, "light or dark")->check(CLI::IsMember({"light", "dark"}));
    window->add_option("--picture", r.window.picture, "FILE.png: draw the station without a display and end");
    window->add_option("--pass", r.window.pass, "number of the pass");
    window->add_option("--note", r.window.note, "number of the note to stand at");
    window->add_option("--dimension", r.window.dimension, "the dimension to stand at");
    window->add_option("--typed", r.window.typed, "text in the open editor of a picture");
    window->add_option("--text-size", r.window.textSize, "per cent")->check(CLI::Range(80, 200));
    window->add_option("--settings", r.window.settings, "a settings file of its own");
    window->add_option("--width", r.window.width, "of a picture, in points")->check(CLI::Range(640, 7680));
    window->add_option("--height", r.window.height, "of a picture, in points")->check(CLI::Range(400, 4320));
    window->add_option("--scale", r.window.scale, "of a picture: 2 has twice the points each way")
        ->check(CLI::Range(1.0, 4.0));
}

/// What stands for the value of an option in help; the library knows types only.
std::string valueName(const std::string& option, const std::string& type) {
    static const std::map<std::string, std::string> names = {
        {"--piano", "NAME"},        {"--rename", "NAME"},    {"--action", "KIND"},    {"--attribute", "NAME=VALUE"},
        {"--out", "FILE"},          {"--picture", "FILE"},   {"--settings", "FILE"},  {"--spec", "SHEET"},
        {"--pass", "PASS"},         {"--from", "PASS"},      {"--to", "PASS"},        {"--step", "ID"},
        {"--review", "DATE"},       {"--set", "NAME=VALUE"}, {"--accept", "CAUSE"},   {"--paper", "SIZE"},
        {"--map", "COLUMN=DIM"},    {"--unit", "UNIT"},      {"--amount", "AMOUNT"},  {"--station", "STATION"},
        {"--reference", "DIM=REF"}, {"--dimension", "DIM"},  {"--sections", "NOTES"}, {"--lowest", "NOTE"},
        {"--note", "NOTE"},         {"--measured", "MM"},
    };
    const auto found = names.find(option);
    if (found != names.end()) return found->second;
    return type == "TEXT" ? "TEXT" : "N";
}

/// The library tells a list of choices only as "TEXT:{in,out}".
std::vector<std::string> choicesIn(const std::string& type) {
    const auto open = type.find('{');
    const auto close = type.rfind('}');
    if (open == std::string::npos || close == std::string::npos) return {};
    return CLI::detail::split(type.substr(open + 1, close - open - 1), ',');
}

using NumberRange = std::optional<std::pair<double, double>>;

/// The library tells a range only as "INT in [80 - 200]".
NumberRange rangeIn(const std::string& type) {
    double low = 0, high = 0;
    const auto open = type.find(" in [");
    const bool told =
        open != std::string::npos && std::sscanf(type.c_str() + open, " in [%lf - %lf]", &low, &high) == 2;
    return told ? NumberRange(std::pair{low, high}) : std::nullopt;
}

OptionRow::Kind kindOf(const std::string& type) {
    if (type.starts_with("INT")) return OptionRow::Kind::whole;
    return type.starts_with("FLOAT") ? OptionRow::Kind::decimal : OptionRow::Kind::text;
}

bool namesFile(const std::string& option) {
    static const std::set<std::string> files = {"BOOK",  "FILE",      "FROM",       "OTHER",
                                                "--out", "--picture", "--settings", "--spec"};
    return files.contains(option);
}

OptionRow rowOf(const CLI::Option& option) {
    const std::string type = option.get_type_name();
    OptionRow out{.name = option.get_name(),
                  .value = {},
                  .help = option.get_description(),
                  .choices = choicesIn(type),
                  .byPlace = option.get_positional(),
                  .required = option.get_required(),
                  .isFile = namesFile(option.get_name()),
                  .many = option.get_items_expected_max() > 1,
                  .kind = kindOf(type),
                  .range = rangeIn(type)};
    const bool isSwitch = option.get_items_expected_max() == 0;
    if (!out.byPlace && !isSwitch) out.value = valueName(out.name, type.substr(0, type.find(':')));
    return out;
}

OptionTable tableOf(const CLI::App& top) {
    OptionTable out;
    for (const CLI::App* sub : top.get_subcommands([](const CLI::App*) { return true; })) {
        CommandRow command{sub->get_name(), sub->get_description(), {}};
        for (const CLI::Option* each : sub->get_options())
            command.options.push_back(rowOf(*each));
        std::ranges::stable_partition(command.options, &OptionRow::byPlace);
        out.push_back(std::move(command));
    }
    return out;
}

} // namespace

std::variant<Arguments, int> readArguments(int argc, char** argv) {
    Arguments out;
    Requests requests;
    Chosen chosen;
    CLI::App top{"Hammerline", "hammerline"};
    top.set_help_flag();
    top.require_subcommand(0, 1);
    measuringCommands(top, out, chosen, requests);
    workingCommands(top, out, chosen, requests);
    recordCommands(top, out, chosen, requests);
    bookCommands(top, out, chosen, requests);
    windowCommand(top, out, chosen, requests);
    const OptionTable table = tableOf(top);
    const std::vector<std::string> typed(argv + 1, argv + argc);
    const bool json = std::ranges::find(typed, "--json") != typed.end();
    const TypedWords words = readTypedWords(typed, table);
    if (words.answer) {
        std::fputs(words.answer->c_str(), stdout);
        return outputKept() ? kDone : kRefused;
    }
    if (!words.refusal.empty()) return refused(Refusal{RefusalCode::usage, {}, words.refusal, {}}, json);
    try {
        top.parse(std::vector<std::string>(words.words.rbegin(), words.words.rend())); // it takes them from the end
    } catch (const CLI::ParseError& stopped) {
        return refused(Refusal{RefusalCode::usage, {}, stopped.what() + std::string(".") + seeHelp(words.words), {}},
                       json);
    }
    for (std::string* each : {&requests.enter.text, &requests.override_.low, &requests.override_.nominal,
                              &requests.override_.high, &requests.tick.amount})
        *each = unguarded(*each);
    out.request = requests.window;
    for (const auto& each : chosen)
        each();
    return out;
}

} // namespace hammerline::app
