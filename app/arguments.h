// What the command line asks for, as plain structs. Only arguments.cpp knows the library that reads it.
#pragma once

#include <map>
#include <optional>
#include <string>
#include <utility>
#include <variant>
#include <vector>

namespace hammerline::app {

struct Common {
    std::string book;
    std::string piano;
};

struct SetUp {
    std::optional<std::string> action, lowest, sections, spec, rename;
    std::optional<int> notes, lastDamper;
    bool player = false;
    std::vector<std::string> attributes;                        // NAME=VALUE
    std::map<std::string, std::optional<std::string>> identity; // by key; empty takes the field back
};

struct DemoRequest {
    std::string book;
};
struct NewRequest {
    Common at;
    SetUp setUp;
};
struct PianoRequest {
    Common at;
    SetUp setUp;
};
struct PassRequest {
    Common at;
    std::string label;
    std::optional<double> temperature, humidity;
    std::string stack, weights, place;
    std::optional<std::string> lineSag;
    std::vector<std::string> references; // DIMENSION=REFERENCE
    bool settled = false;
};
struct ImportRequest {
    Common at;
    std::string file, pass, decimal;
    std::vector<std::string> map, units;
    bool takeDoubtful = false;
};
struct EnterRequest {
    Common at;
    std::string note, dimension, text, pass, unit, reason;
    bool repeat = false, takeDoubtful = false;
};
struct UndoRequest {
    std::string book;
    bool redo = false;
};
struct OverrideRequest {
    Common at;
    std::string note, dimension, low, nominal, high, reason, review;
};
struct CheckRequest {
    Common at;
    std::string pass, spec, rule = "plain";
};
struct ActionRequest {
    Common at;
    std::string note, pass;
};
struct PlanRequest {
    Common at;
    std::string pass, intent, floating, stage;
    std::optional<double> minutes;
    std::vector<std::string> accept; // CAUSE[=REMEDY]
    bool anyOption() const {
        return !intent.empty() || !floating.empty() || !stage.empty() || minutes || !accept.empty();
    }
};
struct TickRequest {
    bool notDone = false;
    PlanRequest plan;
    bool all = false, aim = false;
    std::string step;
    std::string amount; // as typed: turns or mm
};
struct CompareRequest {
    Common at;
    std::string from, to;
};
struct SurveyRequest {
    Common at;
    std::vector<std::string> add, state, symptom;
    std::vector<std::string> looks;        // "CHECK yes|no", of the last pass
    std::vector<std::string> settings;     // NAME=VALUE: minutes, spares, what is in hand
    std::vector<std::string> checkNumbers; // "PART NUMBERS AS THEY LIE"
    bool cautions = false;                 // all of them on standard error
};
struct WorkRequest {
    Common at;
    std::string step, remark, notHere;
    std::optional<std::string> done, undone; // notes
    double minutes = 0;
};
struct NextRequest {
    Common at;
};
struct PrintRequest {
    std::string from, to; // comparison: the two passes; empty: the first that read something, the newest
    PlanRequest plan;
    std::string sheet, out, paper = "A4";
    double measured = 100; // gauges: what the line of 100 mm measured
};
struct ExportRequest {
    Common at;
    std::string out;
};
struct ListRequest {
    std::string book, find;
    bool archived = false;
};
struct ArchiveRequest {
    Common at;
    bool away = true;
};
struct RemarkRequest {
    Common at;
    std::string text, note, pass, part, fault, finding, who, date, kind;
    int remove = 0, accept = 0, decline = 0; // by number in the list, from 1
};
struct BackupRequest {
    std::string book, out;
};
struct RestoreRequest {
    std::string book, from;
    bool rescue = false;
};
struct MergeRequest {
    std::string book, other;
};
struct VerifyRequest {
    std::string book;
};
struct IdsRequest {};
/// The window; with `picture` it draws one station without a display and ends.
struct WindowRequest {
    std::string book, piano, station, theme, picture, settings, dimension, typed;
    int width = 1280, height = 800, pass = 0, note = 0, textSize = 0;
    double scale = 1;
    bool another = false;
};

struct PhotoRequest {
    Common at;
    std::vector<std::string> files;
    std::string note, pass, part, fault, finding, caption, who, date, out;
    bool original = false;
    int remove = 0, show = 0; // by number in the list, from 1
};
struct ShareRequest {
    Common at;
    std::string out, question, who, pass;
    bool whose = false;
};
struct AdviceRequest {
    Common at;
    std::string file, who;
};
struct ExperienceRequest {
    Common at;
};
struct GaugeRequest {
    Common at;
    std::string dimension; // else all with repeats
    std::string persons;   // pass numbers, each another person's: 2,3,4
};
struct VisitsRequest {
    std::string book;
};
struct EstimateRequest {
    Common at;
    std::vector<std::string> settings; // NAME=VALUE
};

using Request = std::variant<WindowRequest, DemoRequest, NewRequest, PianoRequest, PassRequest, ImportRequest,
                             EnterRequest, UndoRequest, OverrideRequest, CheckRequest, ActionRequest, PlanRequest,
                             TickRequest, CompareRequest, SurveyRequest, WorkRequest, NextRequest, PrintRequest,
                             ExportRequest, ListRequest, BackupRequest, RestoreRequest, MergeRequest, VerifyRequest,
                             IdsRequest, ArchiveRequest, RemarkRequest, EstimateRequest, PhotoRequest, ShareRequest,
                             AdviceRequest, ExperienceRequest, VisitsRequest, GaugeRequest>;

struct Arguments {
    Request request;
    bool json = false, quiet = false, spoken = false;
};

/// Either what is asked for, or the exit status when help or a refusal was printed already.
std::variant<Arguments, int> readArguments(int argc, char** argv);

} // namespace hammerline::app
