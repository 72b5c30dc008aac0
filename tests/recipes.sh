#!/usr/bin/env bash
# Follows the recipes of DEVELOPERS.md in a copy of the sources: adds a made-up dimension, operation, part with a fault,
# and cause, builds the program without optimising, and takes them through check, plan, survey, sheet, export and import.
# A recipe that has become untrue fails here, and so does a table that counts its rows by hand.
set -euo pipefail
cd "$(dirname "$0")/.."
copy=${1:-.build/recipes}
rm -rf "$copy/tree"
mkdir -p "$copy/tree"
cp -r CMakeLists.txt app core db ui resources "$copy/tree/"
build=$(cd "$copy" && pwd)/build
cd "$copy/tree"

# after FILE TEXT LINES: LINES are put behind the one line that holds TEXT (the last where several do).
after() {
    FIND=$2 ADD=$3 perl -0777 -i -pe '
        my $at = rindex($_, $ENV{FIND});
        die "no \"$ENV{FIND}\" in $ARGV\n" if $at < 0;
        my $end = index($_, "\n", $at) + 1;
        substr($_, $end, 0) = "$ENV{ADD}\n";' "$1"
}
# before FILE TEXT LINES: LINES are put before the last line that holds TEXT.
before() {
    FIND=$2 ADD=$3 perl -0777 -i -pe '
        my $at = rindex($_, $ENV{FIND});
        die "no \"$ENV{FIND}\" in $ARGV\n" if $at < 0;
        my $start = rindex($_, "\n", $at) + 1;
        substr($_, $start, 0) = "$ENV{ADD}\n";' "$1"
}
# instead FILE OLD NEW, once
instead() {
    FIND=$2 ADD=$3 perl -0777 -i -pe '
        my $at = index($_, $ENV{FIND});
        die "no \"$ENV{FIND}\" in $ARGV\n" if $at < 0;
        substr($_, $at, length $ENV{FIND}) = $ENV{ADD};' "$1"
}

# --- Add a dimension: the gap of a part that no action has
last=$(grep -oP 'kDimensionCount = dimension::\K\w+' core/piano/dimension.h)
place=$(grep -oP "$last\{\K[0-9]+" core/piano/dimension.h)
instead core/piano/dimension.h "$last{$place}" "$last{$place}, madeUpGap{$((place + 1))}"
instead core/piano/dimension.h "kDimensionCount = dimension::$last" "kDimensionCount = dimension::madeUpGap"
before core/piano/dimension.cpp 'Dimension{feltLeft,' \
    '    Dimension{madeUpGap, "made-up-gap", Kind::length, Unit::mm, kTenths, mm(0), mm(25), mm(0), mm(20),
              {mm(0.5), mm(0.3), mm(0.2)}, {15, 30}, MeasuredAt::other, ReadWhere::everyNote, {}, {}},'
for sheet in upright old-upright drop grand; do
    instead resources/spec/$sheet.json ' "zones": [' ' "zones": [
  {"dimension": "made-up-gap", "low": 1, "nominal": 2, "high": 3, "source": "made up"},'
done
before ui/words/readings.cpp 'DimensionWords{dimension::feltLeft' \
    '    DimensionWords{dimension::madeUpGap, QT_TRANSLATE_NOOP("readings", "Made-up gap"),
                   QT_TRANSLATE_NOOP("readings", "Made-up"), QT_TRANSLATE_NOOP("readings", "narrow"),
                   QT_TRANSLATE_NOOP("readings", "wide")},'
before core/intake/header_words.cpp 'HeaderWords{Use::dimension, feltLeft' \
    '    HeaderWords{Use::dimension, madeUpGap, "|made up gap|"},'

# --- Add an operation: a shim that widens it
last=$(grep -oP 'kOperationCount = operation::\K\w+' core/piano/operation_id.h)
place=$(grep -oP "$last\{\K[0-9]+" core/piano/operation_id.h)
instead core/piano/operation_id.h "$last{$place}" "$last{$place}, madeUpShim{$((place + 1))}"
instead core/piano/operation_id.h "kOperationCount = operation::$last" "kOperationCount = operation::madeUpShim"
instead core/piano/operation_id.cpp '"lever-timing",    "inspect"' '"lever-timing",    "inspect", "made-up-shim"'
after core/operation/catalogue.cpp 'Operation{operation::inspect,' \
    '    Operation{operation::madeUpShim, mm, false, actionIn, {2, 4}, 0, 0, "", kMadeUpDisturbs, "U11", madeUpGap},'
before core/operation/catalogue.cpp 'using enum AmountUnit;' \
    'constexpr std::array kMadeUpDisturbs = {madeUpGap};'
after core/operation/on_this_action.cpp '// inspect' '    always,'
after core/operation/on_this_action.cpp '{inspect, inspect},' '    {add, remove},'
after core/operation/first_responses.cpp 'Plain{operation::leverTiming' \
    '    Plain{operation::madeUpShim, {madeUpGap, 1, 0.1}},'
instead core/operation/order_of_work.cpp 'oU11 = {operation::letOffTurn}' \
    'oU11 = {operation::letOffTurn, operation::madeUpShim}'
after core/plan/own_work.cpp 'OwnRow{playerClearance' '    OwnRow{madeUpGap, operation::madeUpShim},'
after ui/words/operations.cpp '"Look at the parts"' \
    '    {QT_TRANSLATE_NOOP("operations", "Made-up shims"), QT_TRANSLATE_NOOP("operations", "made-up shim")},'
after ui/words/directions.cpp 'Way{operation::inspect' \
    '    Way{operation::madeUpShim, true, any, SAY("ADD"), SAY("under the gap"), SAY("wider")},
    Way{operation::madeUpShim, false, any, SAY("TAKE OUT"), SAY("under the gap"), SAY("narrower")},'

# --- Add a part, a fault and a remedy
before core/survey/further_rows.cpp 'Row{70,' \
    '    Row{71, "made-up-part", "UDG", "bent lost>renew", "straighten renew=", Must::note, "", "made-up-gap", perNote,
        {2, 4}, false, action},'
before ui/words/survey_names.cpp 'PartNames{"case"' \
    '    PartNames{"made-up-part", QT_TRANSLATE_NOOP("survey", "Made-up part"),
              QT_TRANSLATE_NOOP("survey", "Made-up parts")},'

# --- Add a cause
instead core/causes/cause_ids.h '"nothing-measurable"' '"nothing-measurable", "made-up-cause"'
after core/causes/rule.h 'std::vector<Match> nothingMeasurable' 'std::vector<Match> madeUpCause(const Keyboard&);'
before core/causes/local_patterns.cpp '} // namespace hammerline' \
    'std::vector<Match> madeUpCause(const Keyboard& keyboard) {
    std::vector<Match> found;
    for (int note = 1; note <= keyboard.input->record->piano.notes; ++note) {
        const Judged* judged = keyboard.input->review->at({NoteNumber{note}, dimension::madeUpGap});
        if (judged && judged->verdict == Verdict::high) found.push_back(Match{{note}, {}, {}, {}, {}, {}, 0});
    }
    return found;
}
'
after core/causes/causes.cpp '{"nothing-measurable", nothingMeasurable' \
    '    {"made-up-cause", madeUpCause, "inspect", kNothing, kNone, kToNothing, 0, 0.5},'

cmake -S . -B "$build" -G Ninja -DCMAKE_BUILD_TYPE=Debug -DCMAKE_CXX_FLAGS_DEBUG=-O0 -DCMAKE_UNITY_BUILD=ON \
    -DHAMMERLINE_TESTS=OFF >"$build.log" 2>&1 || { tail -20 "$build.log"; exit 1; }
ninja -C "$build" hammerline >"$build.log" 2>&1 || { grep -E 'error|FAILED' "$build.log" | head -20; exit 1; }

# --- and through everything
program=$build/app/hammerline
work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT
cd "$work"
export QT_QPA_PLATFORM=offscreen LC_ALL=C.UTF-8
# has FILE TEXT: the answer says it.
has() { grep -qF -- "$2" "$1" || { echo "recipes: no $2 in $1:"; head -c 2000 "$1"; exit 1; }; }
# answers FILE COMMAND...: exit status 1 means that something is out, which is so here.
answers() {
    local file=$1 status=0
    shift
    "$program" "$@" >"$file" 2>"$file.err" || status=$?
    [ "$status" -lt 2 ] || { echo "recipes: $* ended with $status:"; cat "$file.err"; exit 1; }
}

{
    echo note,made-up-gap
    for note in $(seq 88); do
        [ "$note" = 20 ] && echo 20,3.8 || echo "$note,2.0"
    done
} >readings.csv
answers new.txt new book.hammerline --piano "Piano with a gap" --action upright
answers import.txt import book.hammerline readings.csv
answers check.json check book.hammerline --json
has check.json '"made-up-gap"'
has check.json '"made-up-cause"'
answers plan.json plan book.hammerline --json
has plan.json '"made-up-shim:20"'
answers survey.txt survey book.hammerline --add "30 made-up part bent"
answers survey.json survey book.hammerline --json
has survey.json '"made-up-part"'
answers tick.txt tick book.hammerline --step made-up-shim:20
answers enter.txt enter book.hammerline 20 made-up-gap 2.1
answers compare.json compare book.hammerline --json
has compare.json '"made-up-gap"'
for sheet in check adjustment parts record; do
    answers "$sheet.txt" print book.hammerline "$sheet" --out "$sheet.pdf"
done
pdftotext -layout adjustment.pdf adjustment.pdf.txt
answers csv.txt export book.hammerline --out all.csv
has all.csv made-up-gap
answers json.txt export book.hammerline --out all.json
answers again.txt import again.hammerline all.json
answers again2.txt export again.hammerline --out again.json
for made in made-up-gap made-up-shim made-up-part; do
    has again.json "$made"
done
echo "recipes: a made-up dimension, operation, part and cause went through everything"
