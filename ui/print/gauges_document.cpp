// Gauges of paper at their true size, from this piano's own zones: cut on the outer edge of their lines, which is where
// every size counts to.
#include "ui/print/documents.h"
#include "ui/print/gauge_shapes.h"
#include "ui/words/said.h"
#include "ui/words/words.h"

#include <QCoreApplication>

namespace hammerline::print {

namespace {

using words::onPaper;

constexpr double kNotesAt = 58;  // mm from the left: what a gauge is for
constexpr double kLineRoom = 14; // mm at the right, for the check line down the page
constexpr Type kGaugeText{9.5}, kGaugeFigure{11, true}, kGaugeName{13, true};

/// Zone of a dimension at the first note that has one, in mm.
struct GaugeZone {
    DimensionId id{};
    double aim = 0;
    std::optional<double> low{}, high{};
    bool inCatalogue = false;
};

GaugeZone zoneAt(const Zones& zones, NoteNumber note, DimensionId id) {
    const std::optional<Zone>& zone = zones.at({note, id});
    if (!zone) return {.id = id};
    GaugeZone out{.id = id, .aim = toTrade(zone->nominal, Kind::length), .low = {}, .high = {}, .inCatalogue = true};
    if (zone->low) out.low = toTrade(*zone->low, Kind::length);
    if (zone->high) out.high = toTrade(*zone->high, Kind::length);
    return out;
}

NoteNumber middleNote(const Piano& piano, KeyColour colour) {
    for (int n = piano.notes / 2; n <= piano.notes; ++n)
        if (colourOf({n}, piano) == colour) return {n};
    return {1};
}

QString shownMm(const GaugeZone& zone, double mm) {
    return words::shown(zone.id, fromTrade(mm, Kind::length));
}

QString goodFrom(const GaugeZone& zone) {
    if (!zone.low || !zone.high) return {};
    return onPaper(QT_TRANSLATE_NOOP("paper", "good: %1 to %2"))
        .arg(shownMm(zone, *zone.low), shownMm(zone, *zone.high));
}

Solid gaugeHead(int number, const QString& name, const QString& use) {
    return {7.5,
            [=](Canvas& c, const QRectF& r) {
                c.text(r.x(), r.y() + 6, QStringLiteral("%1  %2").arg(number).arg(name), kGaugeName);
                c.textWithin(r.x() + kNotesAt, r.y() + 6, r.width() - kNotesAt - kLineRoom, use, {9});
            },
            true};
}

/// The first thing: a line of 100 mm across and one down, to lay one's own rule on.
Solid checkLines(const PaperOptions& options) {
    const bool corrected = options.measured > 0 && std::abs(options.measured - 100) > 1e-9;
    const QString head =
        onPaper(QT_TRANSLATE_NOOP("paper", "First lay your own rule on this line. From outer edge to outer "
                                           "edge it must be 100 mm."));
    const QString ifNot =
        corrected
            ? onPaper(QT_TRANSLATE_NOOP("paper",
                                        "Corrected for a printer that made %1 mm of it. If it is still not 100: "
                                        "print again with what you read."))
                  .arg(words::number(options.measured, 1))
            : onPaper(QT_TRANSLATE_NOOP("paper", "If it is not: print at 100 % (\u201Cactual size\u201D), or give what "
                                                 "you read (--measured 98.7) and print again."));
    return {26, [=](Canvas& c, const QRectF& r) {
                c.frame({r.x(), r.y(), r.width() - kLineRoom, 24}, 0.5);
                c.fill({r.x(), r.y(), 1.8, 24});
                c.textWithin(r.x() + 5, r.y() + 5.5, r.width() - kLineRoom - 8, head, {10.5, true});
                paintRule(c, r.x() + 6, r.y() + 8, 100, 10);
                c.text(r.x() + 110, r.y() + 14.5, onPaper(QT_TRANSLATE_NOOP("paper", "100 mm")), kGaugeFigure);
                c.textWithin(r.x() + 5, r.y() + 21.6, r.width() - kLineRoom - 8, ifNot, kGaugeText);
                paintUprightLine(c, r.right() - 5, r.y() + 28, 100);
            }};
}

Solid dipBlocks(const GaugeZone& naturals, const GaugeZone& sharps) {
    const double high = std::max(naturals.aim, sharps.aim);
    return {high + 3, [=](Canvas& c, const QRectF& r) {
                c.frame({r.x(), r.y(), 64, naturals.aim}, kGaugeLine);
                c.text(r.x() + 32, r.y() + naturals.aim / 2 + 1.4,
                       onPaper(QT_TRANSLATE_NOOP("paper", "naturals %1")).arg(shownMm(naturals, naturals.aim)),
                       kGaugeFigure, Align::centre);
                c.text(r.x() + 138, r.y() + 4.2, goodFrom(naturals), kGaugeText);
                if (!sharps.inCatalogue) return;
                c.frame({r.x() + 74, r.y(), 54, sharps.aim}, kGaugeLine);
                c.text(r.x() + 101, r.y() + sharps.aim / 2 + 1.4,
                       onPaper(QT_TRANSLATE_NOOP("paper", "sharps %1")).arg(shownMm(sharps, sharps.aim)), kGaugeFigure,
                       Align::centre);
                c.text(r.x() + 138, r.y() + 8.6, goodFrom(sharps), kGaugeText);
            }};
}

Solid sharpStep(const GaugeZone& height, const GaugeZone& proud) {
    constexpr double kArm = 6;
    return {height.aim + kArm + 3, [=](Canvas& c, const QRectF& r) {
                paintStepGauge(c, r.x(), r.y(), 66, kArm, height.aim);
                c.text(r.x() + 42, r.y() + kArm + height.aim / 2 + 1.4, shownMm(height, height.aim), kGaugeFigure);
                c.text(r.x() + 52, r.y() + kArm + height.aim / 2 + 1.4, goodFrom(height), kGaugeText);
                if (!proud.inCatalogue) return;
                const QString use = onPaper(QT_TRANSLATE_NOOP("paper", "pressed sharp over a resting natural: %1"))
                                        .arg(shownMm(proud, proud.aim));
                c.text(r.x() + 96, r.y() + 4.2, use, kGaugeText);
                c.fill({r.x() + 96, r.y() + 6.5, 34, proud.aim});
            }};
}

Solid blowStick(const GaugeZone& blow, const GaugeZone& damper) {
    return {19.5, [=](Canvas& c, const QRectF& r) {
                c.frame({r.x(), r.y(), blow.aim, 9}, kGaugeLine);
                c.text(r.x() + blow.aim / 2, r.y() + 6, shownMm(blow, blow.aim), kGaugeFigure, Align::centre);
                if (blow.low && blow.high) {
                    c.frame({r.x(), r.y() + 10.5, *blow.high, 7}, kGaugeLine);
                    paintNick(c, r.x() + *blow.low, r.y() + 10.5, 7);
                    c.text(r.x() + 2, r.y() + 15.4,
                           onPaper(QT_TRANSLATE_NOOP("paper", "%1 nick, %2 end"))
                               .arg(shownMm(blow, *blow.low), shownMm(blow, *blow.high)),
                           kGaugeText);
                }
                if (!damper.inCatalogue) return;
                c.text(r.x() + 66, r.y() + 4.2, onPaper(QT_TRANSLATE_NOOP("paper", "half the blow, for the dampers:")),
                       kGaugeText);
                c.frame({r.x() + 66, r.y() + 6.5, damper.aim, 9}, kGaugeLine);
                c.text(r.x() + 66 + damper.aim / 2, r.y() + 12.4, shownMm(damper, damper.aim), kGaugeFigure,
                       Align::centre);
                c.text(r.x() + 70 + damper.aim, r.y() + 12.4,
                       onPaper(QT_TRANSLATE_NOOP("paper", "of the hammer's way: there the damper stirs")), kGaugeText);
            }};
}

/// Notes in a row whose zone is the same.
struct StripGroup {
    int first = 0, last = 0;
    GaugeZone zone;
};

std::vector<StripGroup> stripGroups(const Zones& zones, const Piano& piano, DimensionId id) {
    std::vector<StripGroup> out;
    for (int n = 1; n <= piano.notes; ++n) {
        if (zones.overrideAt({{n}, id})) continue; // a note's own zone has no strip of its own
        const GaugeZone zone = zoneAt(zones, {n}, id);
        if (!zone.inCatalogue || !zone.low || !zone.high) continue;
        const bool same = !out.empty() && std::abs(out.back().zone.aim - zone.aim) < 0.05;
        if (same)
            out.back().last = n;
        else
            out.push_back({n, n, zone});
    }
    // A zone that slopes along the keyboard gives too many: the ends and two between are enough to file by.
    constexpr std::size_t kMost = 4;
    if (out.size() <= kMost) return out;
    std::vector<StripGroup> few;
    for (std::size_t i = 0; i < kMost; ++i)
        few.push_back(out[i * (out.size() - 1) / (kMost - 1)]);
    return few;
}

Solid strips(const std::vector<StripGroup>& groups) {
    double most = 0;
    for (const StripGroup& group : groups)
        most = std::max(most, *group.zone.low + group.zone.aim + *group.zone.high);
    return {most + 11, [=](Canvas& c, const QRectF& r) {
                const double wide = (r.width() - kLineRoom) / 4;
                for (std::size_t i = 0; i < groups.size(); ++i) {
                    const StripGroup& group = groups[i];
                    const double x = r.x() + wide * static_cast<double>(i);
                    const QString where =
                        group.first == group.last
                            ? onPaper(QT_TRANSLATE_NOOP("paper", "note %1")).arg(group.first)
                            : onPaper(QT_TRANSLATE_NOOP("paper", "notes %1\u2013%2")).arg(group.first).arg(group.last);
                    c.text(x, r.y() + 3.6, where, {9.5, true});
                    double y = r.y() + 5.5;
                    const std::array rows{std::pair{*group.zone.low, QT_TRANSLATE_NOOP("paper", "%1 near")},
                                          std::pair{group.zone.aim, QT_TRANSLATE_NOOP("paper", "%1 aim")},
                                          std::pair{*group.zone.high, QT_TRANSLATE_NOOP("paper", "%1 far")}};
                    for (const auto& [mm, text] : rows) {
                        const bool aim = mm == group.zone.aim;
                        if (aim)
                            c.fill({x, y, 23, mm});
                        else
                            c.frame({x, y, 23, mm}, kGaugeLine);
                        c.text(x + 24.5, y + mm / 2 + 1.2, onPaper(text).arg(shownMm(group.zone, mm)), {9.5, aim});
                        y += mm + 2;
                    }
                }
            }};
}

Solid checkRuler(const GaugeZone& checking) {
    return {16, [=](Canvas& c, const QRectF& r) {
                c.frame({r.x(), r.y(), 60, 14}, kGaugeLine);
                paintTicks(c, r.x(), r.y(), 60, 10);
                if (checking.low && checking.high) {
                    c.frame({r.x() + *checking.low, r.y() + 7.4, *checking.high - *checking.low, 6.6}, 0.35);
                    c.line(r.x() + checking.aim, r.y() + 7.4, r.x() + checking.aim, r.y() + 14, 0.7);
                }
                const double x = r.x() + 63;
                c.text(x, r.y() + 4.6,
                       onPaper(QT_TRANSLATE_NOOP("paper", "checking: aim %1, %2"))
                           .arg(shownMm(checking, checking.aim), goodFrom(checking)),
                       kGaugeText);
                c.text(x, r.y() + 9.2, onPaper(QT_TRANSLATE_NOOP("paper", "also for anything else under 60 mm")),
                       kGaugeText);
            }};
}

Solid spacers(const GaugeZone& aftertouch) {
    return {6.5, [=](Canvas& c, const QRectF& r) {
                double x = r.x();
                for (const auto& limit : {aftertouch.low, aftertouch.high}) {
                    if (!limit) continue;
                    c.fill({x, r.y() + 1.5, 40, *limit});
                    c.text(x + 42, r.y() + 3.4,
                           onPaper(QT_TRANSLATE_NOOP("paper", "%1 thick")).arg(shownMm(aftertouch, *limit)),
                           kGaugeText);
                    x += 86;
                }
            }};
}

QString straightedgeNotes(const Piano& piano) {
    QStringList parts;
    const auto sections = sectionsOf(piano);
    for (std::size_t i = 0; i < sections.size(); ++i) {
        int first = sections[i].range.first, last = sections[i].range.last;
        while (first < last && colourOf({first}, piano) == KeyColour::sharp)
            ++first;
        while (last > first && colourOf({last}, piano) == KeyColour::sharp)
            --last;
        parts << onPaper(QT_TRANSLATE_NOOP("paper", "%1: notes %2 and %3"))
                     .arg(words::sectionName(sections[i], i, sections.size()))
                     .arg(first)
                     .arg(last);
    }
    return onPaper(QT_TRANSLATE_NOOP("paper", "Set these naturals first and lay the straightedge over them; the others "
                                              "come up to it. %1."))
        .arg(parts.join(QStringLiteral("; ")));
}

} // namespace

Document gaugesDocument(const Source& source, const PaperOptions& options) {
    const Piano& piano = source.piano();
    const Zones zones(source.view.sheet, piano, source.record.overrides);
    Document document = emptyDocument(source, onPaper(QT_TRANSLATE_NOOP("paper", "Gauges for this piano, 1 : 1")), {});
    document.subtitle = {{QString::fromStdString(piano.name), true}};
    const QString foot =
        onPaper(QT_TRANSLATE_NOOP("paper", "All sizes in mm, from this piano's zones of this day. Lines "
                                           "are 0.25 mm: cut on their outer edge."));
    document.foot = {4, [foot](Canvas& c, const QRectF& r) { c.textWithin(r.x(), r.y() + 3, r.width(), foot, {8.5}); },
                     false};
    const NoteNumber natural = middleNote(piano, KeyColour::natural), sharp = middleNote(piano, KeyColour::sharp);
    const auto add = [&document](Solid solid) { document.blocks.emplace_back(std::move(solid)); };
    int number = 0;
    const auto headed = [&](const char* name, const char* use, Solid gauge) {
        add(gaugeHead(++number, onPaper(name), onPaper(use)));
        add(std::move(gauge));
    };
    add(checkLines(options));
    if (const auto dip = zoneAt(zones, natural, dimension::keyDip); dip.inCatalogue)
        headed(QT_TRANSLATE_NOOP("paper", "Dip block"),
               QT_TRANSLATE_NOOP("paper", "laid on a key and pressed: level with its neighbours"),
               dipBlocks(dip, zoneAt(zones, sharp, dimension::keyDip)));
    if (const auto height = zoneAt(zones, sharp, dimension::sharpHeight); height.inCatalogue)
        headed(QT_TRANSLATE_NOOP("paper", "Sharp step"),
               QT_TRANSLATE_NOOP("paper", "long arm on two naturals: the sharp just touches under the step"),
               sharpStep(height, zoneAt(zones, sharp, dimension::sharpProud)));
    if (const auto blow = zoneAt(zones, natural, dimension::blow); blow.inCatalogue)
        headed(QT_TRANSLATE_NOOP("paper", "Blow stick"),
               QT_TRANSLATE_NOOP("paper", "between crown and string, hammer at rest; nick and end: limits"),
               blowStick(blow, zoneAt(zones, natural, dimension::damperStart)));
    if (auto groups = stripGroups(zones, piano, dimension::letOff); !groups.empty())
        headed(QT_TRANSLATE_NOOP("paper", "Let-off strips"),
               QT_TRANSLATE_NOOP("paper", "of stiff card, edgewise between crown and string: slips through = farther"),
               strips(groups));
    if (auto groups = stripGroups(zones, piano, dimension::drop); !piano.vertical() && !groups.empty())
        headed(QT_TRANSLATE_NOOP("paper", "Drop strips"),
               QT_TRANSLATE_NOOP("paper", "from the place of let-off to where the hammer comes to rest"),
               strips(groups));
    if (const auto checking = zoneAt(zones, natural, dimension::checking); checking.inCatalogue)
        headed(QT_TRANSLATE_NOOP("paper", "Check ruler"),
               QT_TRANSLATE_NOOP("paper", "zero at the string: the crown after a firm blow, key held down"),
               checkRuler(checking));
    if (const auto after = zoneAt(zones, natural, dimension::aftertouch); after.inCatalogue)
        headed(QT_TRANSLATE_NOOP("paper", "Aftertouch spacers"),
               QT_TRANSLATE_NOOP("paper", "on the front felt: over the thin one the jack escapes, else not"),
               spacers(after));
    add(gaugeHead(++number, onPaper(QT_TRANSLATE_NOOP("paper", "Straightedge")),
                  onPaper(QT_TRANSLATE_NOOP("paper", "where it stands"))));
    add(paragraphBlock({{straightedgeNotes(piano), false}}, 9.5, source.width()));
    add(gap(2));
    add(paragraphBlock(
        {{onPaper(QT_TRANSLATE_NOOP("paper", "How good is a paper gauge?")), true},
         {QStringLiteral(" ") +
              onPaper(QT_TRANSLATE_NOOP(
                  "paper",
                  "Cut on the outer edge it is within about 0.2 mm, glued on wood and filed to the line within "
                  "about 0.1. A spacer's bar shows its thickness on edge: measure ten cards together and "
                  "divide. Paper grows in damp air: lay the rule on it again in another season, and print "
                  "again after a change of the zones.")),
          false}},
        9.5, source.width()));
    return document;
}

} // namespace hammerline::print
