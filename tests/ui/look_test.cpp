// The look against published measures of seeing: contrast in every state of a cell, the ramp of deviations for
// colour-blind viewers and in grey, digits that stand in columns.
#include "ui/stations/measure_delegate.h"
#include "ui/stations/measure_model.h"
#include "ui/stations/measure_view.h"

#include <QCheckBox>
#include <QComboBox>
#include <QFontMetricsF>
#include <QJsonArray>
#include <QJsonDocument>
#include <QJsonObject>
#include <QLineEdit>
#include <QPushButton>
#include <QRadioButton>
#include <QSpinBox>
#include <QTest>
#include <QToolButton>

#include "colour_science.h"
#include "window_bench.h"

using namespace hammerline;

namespace {

/// WCAG 2.2, success criteria 1.4.3 (text) and 1.4.11 (graphics). Never rounded up.
constexpr double kText = 4.5, kGraphic = 3.0;
/// Between colours that mean different things: tests/reference/palette_differences.json, where a palette that is known
/// to fail (RdYlGn) lies under 3 and those made for colour-blind viewers over 7.
constexpr double kTellApart = 10.0;

QJsonObject referenceJson(const char* name) {
    QFile file(QStringLiteral(HAMMERLINE_SOURCE_DIR "/tests/reference/") + QLatin1String(name));
    return file.open(QIODevice::ReadOnly) ? QJsonDocument::fromJson(file.readAll()).object() : QJsonObject();
}

QRgb fromHex(const QString& text) {
    return QColor(text.startsWith(u'#') ? text : u'#' + text).rgb();
}

/// Normal sight and the three severe deficiencies, from the published matrices.
std::vector<std::pair<QString, colour::Matrix>> views() {
    std::vector<std::pair<QString, colour::Matrix>> all{
        {QStringLiteral("normal"), {{{1, 0, 0}, {0, 1, 0}, {0, 0, 1}}}}};
    const QJsonObject published = referenceJson("cvd_machado_matrices.json");
    for (const char* name : {"deutan", "protan", "tritan"}) {
        colour::Matrix matrix{};
        const QJsonArray rows = published[QLatin1String(name)].toArray();
        for (int i = 0; i < 3; ++i)
            for (int j = 0; j < 3; ++j)
                matrix.at(static_cast<std::size_t>(i)).at(static_cast<std::size_t>(j)) =
                    rows.at(i).toArray().at(j).toDouble();
        all.emplace_back(QLatin1String(name), matrix);
    }
    return all;
}

double leastDifference(const std::vector<QRgb>& colours, const colour::Matrix& view) {
    double least = 1000;
    for (std::size_t i = 0; i < colours.size(); ++i)
        for (std::size_t j = 0; j < i; ++j)
            least = std::min(least, colour::difference(colour::seen(colours[i], view), colour::seen(colours[j], view)));
    return least;
}

std::vector<QRgb> rampOf(Theme theme) {
    std::vector<QRgb> fills;
    for (const RampStop& stop : lookOf(theme).ramp)
        fills.push_back(stop.fill);
    return fills;
}

constexpr std::array kThemes{Theme::light, Theme::dark};

QByteArray ratio(const QString& what, double value) {
    return (what + QStringLiteral(": ") + QString::number(value, 'f', 2)).toUtf8();
}

} // namespace

class LookTest : public QObject, protected WindowBench {
    Q_OBJECT
private Q_SLOTS:
    void initTestCase() { dress(Theme::light, 100); }
    void cleanup() { close(); }

    // --- the measures themselves, against figures from outside

    void contrastIsThatOfThePublishedFormula() {
        QFile file(QStringLiteral(HAMMERLINE_SOURCE_DIR "/tests/reference/wcag_contrast.csv"));
        QVERIFY(file.open(QIODevice::ReadOnly));
        int checked = 0;
        for (const QByteArray& line : file.readAll().split('\n')) {
            const QList<QByteArray> cells = line.trimmed().split(',');
            if (cells.size() != 5 || !cells[0].startsWith('#')) continue;
            const double wanted = cells[4].toDouble();
            const double got =
                colour::contrast(fromHex(QString::fromLatin1(cells[0])), fromHex(QString::fromLatin1(cells[1])));
            QVERIFY2(std::abs(got - wanted) <= 1e-9 * wanted, line.constData());
            ++checked;
        }
        QVERIFY(checked >= 10);
    }

    void differencesAreThoseOfPublishedPalettes() {
        const QJsonObject published =
            referenceJson("palette_differences.json")[QStringLiteral("min_pairwise_ciede2000")].toObject();
        QVERIFY(published.size() >= 4);
        for (const QString& name : published.keys()) {
            const QJsonObject palette = published[name].toObject();
            std::vector<QRgb> colours;
            for (const QJsonValue& hex : palette[QStringLiteral("colors")].toArray())
                colours.push_back(fromHex(hex.toString()));
            for (const auto& [view, matrix] : views()) {
                const double wanted = palette[view].toDouble(), got = leastDifference(colours, matrix);
                QVERIFY2(std::abs(got - wanted) < 0.05, ratio(name + u' ' + view, got).constData());
            }
        }
    }

    // --- contrast

    void everyStateOfACellIsReadable() {
        using As = CellLook::State;
        int states = 0;
        for (const Theme theme : kThemes)
            for (const As state : {As::empty, As::expected, As::dash, As::word, As::number})
                for (int marks = 0; marks <= 3; ++marks)
                    for (int bits = 0; bits < 16; ++bits) {
                        CellLook cell;
                        cell.state = state;
                        cell.marks = marks;
                        cell.high = bits & 1;
                        cell.stale = bits & 2;
                        const bool sharpRow = bits & 4, selected = bits & 8;
                        const auto [ink, ground] =
                            ReadingDelegate::inkAndGround(cell, sharpRow, selected, lookOf(theme));
                        const double got = colour::contrast(ink, ground);
                        QVERIFY2(got >= kText, ratio(QStringLiteral("theme %1 state %2 marks %3 bits %4")
                                                         .arg(static_cast<int>(theme))
                                                         .arg(static_cast<int>(state))
                                                         .arg(marks)
                                                         .arg(bits),
                                                     got)
                                                   .constData());
                        ++states;
                    }
        QCOMPARE(states, 2 * 5 * 4 * 16);
    }

    /// What stands beside and over the cells: fields, refusals, the echo, headers, bars, rail, buttons.
    void allOtherTextIsReadable() {
        for (const Theme theme : kThemes) {
            const Look& l = lookOf(theme);
            struct Pair {
                const char* what;
                QRgb text, ground;
            };
            for (const Pair& pair : {Pair{"field", l.ink, l.paper},
                                     Pair{"selection in a field", l.ink, l.sel},
                                     Pair{"echo and current header", l.paper, l.ink},
                                     Pair{"refusal", l.ink, l.faultBg},
                                     Pair{"fault sign", l.fault, l.faultBg},
                                     Pair{"remark of a form", l.fault, l.bench},
                                     Pair{"remark on paper", l.fault, l.paper},
                                     Pair{"bench", l.ink, l.bench},
                                     Pair{"secondary on the bench", l.ink2, l.bench},
                                     Pair{"placeholder", l.ink3, l.paper},
                                     Pair{"disabled", l.ink3, l.bench},
                                     Pair{"header", l.ink, l.head},
                                     Pair{"zone in a header", l.ink2, l.head},
                                     Pair{"row of a list", l.ink, l.sel},
                                     Pair{"secondary in a current row", l.ink2, l.sel},
                                     Pair{"expected in a current row", l.ink3, l.sel},
                                     Pair{"in the zone band", l.ink, l.zone},
                                     Pair{"rail", l.railText, l.rail},
                                     Pair{"state on the rail", l.rail2, l.rail},
                                     Pair{"main button", l.actText, l.act}}) {
                const double got = colour::contrast(pair.text, pair.ground);
                QVERIFY2(got >= kText, ratio(QLatin1String(pair.what), got).constData());
            }
            for (const QRgb ground : {l.paper, l.paper2, l.bench}) {
                QVERIFY(colour::contrast(l.edge, ground) >= kGraphic);
                QVERIFY(colour::contrast(l.ring, ground) >= kGraphic);
            }
            QVERIFY(colour::contrast(l.ring, l.halo) >= kGraphic); // the focus shows on every fill
        }
    }

    void thePaletteOfEveryWidgetIsReadable() {
        using P = QPalette;
        for (const Theme theme : kThemes) {
            const QPalette palette = paletteOf(theme);
            for (const auto group : {P::Active, P::Inactive, P::Disabled})
                for (const auto& [text, ground] : {std::pair{P::Text, P::Base},
                                                   {P::Text, P::AlternateBase},
                                                   {P::WindowText, P::Window},
                                                   {P::ButtonText, P::Button},
                                                   {P::HighlightedText, P::Highlight},
                                                   {P::ToolTipText, P::ToolTipBase},
                                                   {P::PlaceholderText, P::Base},
                                                   {P::BrightText, P::Window},
                                                   {P::Link, P::Base}}) {
                    const double got =
                        colour::contrast(palette.color(group, text).rgb(), palette.color(group, ground).rgb());
                    QVERIFY2(got >= kText,
                             ratio(QStringLiteral("role %1 on %2, group %3").arg(text).arg(ground).arg(group), got)
                                 .constData());
                }
        }
    }

    // --- the ramp

    /// WCAG 2.1, 1.4.11: what shows where a field is has 3:1 at least against what lies beside it.
    void theFrameOfAFieldIsSeenInBothThemes() {
        for (const Theme theme : kThemes) {
            dress(theme, 100);
            QWidget page;
            page.setBackgroundRole(QPalette::Base);
            page.setAutoFillBackground(true);
            page.resize(120, 60);
            QLineEdit field(&page);
            field.setGeometry(10, 10, 100, 30);
            const QImage image = page.grab().toImage();
            const QRgb beside = image.pixel(4, 25);
            double best = 1;
            for (int x = 8; x < 14; ++x)
                best = std::max(best, colour::contrast(image.pixel(x, 25), beside));
            QVERIFY2(best >= 3, qPrintable(QString::number(best)));
        }
        dress(Theme::light, 100);
    }

    /// The same of everything that is pressed or chosen, on both grounds it stands on, and of what is drawn inside it.
    void theEdgeOfEveryControlIsSeenInBothThemes() {
        const std::vector<std::pair<const char*, std::function<QWidget*(QWidget*)>>> controls{
            {"button", [](QWidget* on) { return new QPushButton(QStringLiteral("x"), on); }},
            {"tool", [](QWidget* on) { return new QToolButton(on); }},
            {"choice", [](QWidget* on) { return new QComboBox(on); }},
            {"number", [](QWidget* on) { return new QSpinBox(on); }},
            {"box", [](QWidget* on) { return new QCheckBox(on); }},
            {"one of several", [](QWidget* on) { return new QRadioButton(on); }},
            {"field", [](QWidget* on) { return new QLineEdit(on); }}};
        for (const Theme theme : kThemes)
            for (const auto ground : {QPalette::Base, QPalette::Window})
                for (const auto& [name, make] : controls) {
                    dress(theme, 100);
                    QWidget page;
                    page.setBackgroundRole(ground);
                    page.setAutoFillBackground(true);
                    page.resize(140, 60);
                    QWidget* control = make(&page);
                    control->setFocusPolicy(Qt::NoFocus);
                    control->setGeometry(20, 15, 100, 30);
                    const QImage image = page.grab().toImage();
                    const QRgb beside = image.pixel(10, 30);
                    double best = 1;
                    for (int x = 18; x < 30; ++x)
                        best = std::max(best, colour::contrast(image.pixel(x, 30), beside));
                    QVERIFY2(best >= 3, qPrintable(QStringLiteral("%1 in theme %2 on role %3: %4")
                                                       .arg(QLatin1String(name))
                                                       .arg(static_cast<int>(theme))
                                                       .arg(ground)
                                                       .arg(best)));
                }
        dress(Theme::light, 100);
    }

    void theRampIsToldApartByColourBlindViewers() {
        QCOMPARE(views().size(), std::size_t{4});
        for (const Theme theme : kThemes)
            for (const auto& [name, view] : views()) {
                const double least = leastDifference(rampOf(theme), view);
                QVERIFY2(least >= kTellApart, ratio(name, least).constData());
            }
    }

    /// Seven greys on a printer or a grey screen, and worse is always further from the paper.
    void theRampIsToldApartInGrey() {
        for (const Theme theme : kThemes) {
            std::vector<double> lightness;
            for (const QRgb fill : rampOf(theme))
                lightness.push_back(colour::lab(fill)[0]);
            for (std::size_t i = 0; i < lightness.size(); ++i)
                for (std::size_t j = 0; j < i; ++j)
                    QVERIFY2(std::abs(lightness[i] - lightness[j]) >= 5,
                             ratio(QStringLiteral("%1 and %2").arg(i).arg(j), lightness[i] - lightness[j]).constData());
            const double away = theme == Theme::light ? -1 : 1;
            for (std::size_t i = 4; i < 7; ++i) {
                QVERIFY(away * (lightness[i] - lightness[i - 1]) > 0);
                QVERIFY(away * (lightness[6 - i] - lightness[7 - i]) > 0);
            }
        }
    }

    /// Never colour alone: the triangles stand on their base above and on their tip below, as many as the ramp's step.
    void sideAndStrengthAreMarksToo() {
        for (const Theme theme : kThemes) {
            m_theme = theme;
            open();
            // zone 2.4 to 4.0 or wider at every note of the upright sheet: far above, far below
            QVERIFY(m_bench->enter({{20}, dimension::letOff}, reading("9.0")).has_value());
            QVERIFY(m_bench->enter({{60}, dimension::letOff}, reading("0.3")).has_value());
            MeasureView& grid = *m_window->findChild<MeasureView*>();
            const auto rows = [&](int note) {
                m_bench->setCell({{note + 1}, dimension::letOff}); // in view, and not the row in work
                const QModelIndex index = grid.readings().indexOf({{note}, dimension::letOff});
                const CellLook& look = grid.readings().lookAt(index);
                QRect box = ReadingDelegate::cellRect(grid.visualRect(index), index);
                const QImage image = grid.viewport()->grab(box.adjusted(2, 2, -box.width() / 2, -2)).toImage();
                const double text = colour::luminance(lookOf(theme).stop(look.marks, look.high).text);
                const double fill = colour::luminance(lookOf(theme).stop(look.marks, look.high).fill);
                std::vector<int> marked(static_cast<std::size_t>(image.height()));
                for (int y = 0; y < image.height(); ++y)
                    for (int x = 0; x < image.width(); ++x)
                        if (std::abs(colour::luminance(image.pixel(x, y)) - text) <
                            std::abs(colour::luminance(image.pixel(x, y)) - fill))
                            ++marked[static_cast<std::size_t>(y)];
                std::erase(marked, 0);
                return marked;
            };
            const std::vector<int> high = rows(20), low = rows(60);
            QVERIFY(high.size() >= 4 && low.size() >= 4);
            QVERIFY(high.back() > 2 * high.front()); // base below, tip above
            QVERIFY(low.front() > 2 * low.back());
            const auto said = [&](int note) {
                return grid.readings()
                    .data(grid.readings().indexOf({{note}, dimension::letOff}), Qt::AccessibleTextRole)
                    .toString();
            };
            QVERIFY(said(20).contains(QStringLiteral("too far")));
            QVERIFY(said(60).contains(QStringLiteral("too near")));
            close();
        }
        dress(Theme::light, 100);
    }

    // --- digits

    void allDigitsAreEquallyWide() {
        for (const Text size : {Text::tiny, Text::label, Text::body, Text::digits, Text::listDigits, Text::aim,
                                Text::amount, Text::title, Text::pitch})
            for (const bool bold : {false, true}) {
                const QFontMetricsF metrics(face(size, bold));
                const double wanted = metrics.horizontalAdvance(QLatin1Char('0'));
                for (char digit = '1'; digit <= '9'; ++digit)
                    QCOMPARE(metrics.horizontalAdvance(QLatin1Char(digit)), wanted);
            }
        const QFontMetricsF expected(expectedFace(Text::digits));
        for (char digit = '1'; digit <= '9'; ++digit)
            QCOMPARE(expected.horizontalAdvance(QLatin1Char(digit)), expected.horizontalAdvance(QLatin1Char('0')));
    }
};

QTEST_MAIN(LookTest)
#include "look_test.moc"
