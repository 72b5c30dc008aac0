// What a drawing of doing is made of: shapes as tables of points in mm, x toward the strings, y up, where a part is
// seen from the bass end; arrows; and the parts that are named. A scene paints nothing.
#pragma once

#include <QPointF>
#include <QRectF>

#include <cstdint>
#include <string_view>
#include <vector>

namespace hammerline::doing {

enum class Fill : std::uint8_t {
    wood,
    felt,
    metal, // solid
    tool,
    hand,
    paper, // a slip of paper or card: the white of a key in both themes
    dark,  // a sharp
    none,  // an outline
};

enum class Line : std::uint8_t { ink, thin, dashed, hidden };

using Points = std::vector<QPointF>;

/// `round`: radius of its corners, mm. `smooth`: a curve through all points. `wire` above 0: a line of that thickness
/// instead of an outline, mm.
struct Shape {
    Fill fill = Fill::wood;
    Points points = {};
    double round = 0.8;
    bool smooth = false, open = false;
    double wire = 0;
    Line line = Line::ink;
};

/// Two points, or three: then the middle one bends it.
struct Arrow {
    Points way = {};
};

constexpr double kAtPart = -1e9;

enum class Side : std::uint8_t { left, right };

/// A text beside the drawing with a line to the part. `text`: key of words::doingName; a strong one says what is done,
/// and its line leads to the arrow's tail.
struct Named {
    std::string_view text = {};
    QPointF part = {};
    Side side = Side::left;
    bool strong = false;
    double level = kAtPart; // mm; where its text stands, if not beside the part
};

struct Scene {
    QRectF world = {}; // what is seen of it, mm; lower edge first: {left, bottom, width, height}
    std::vector<Shape> shapes = {};
    std::vector<Arrow> arrows = {};
    std::vector<Named> names = {};
};

struct Drawing {
    std::string_view step = {};  // StepOfWork::drawing
    std::string_view kinds = {}; // letters of the kinds that it shows, as kindLetters has them
    Scene act = {}, test = {};   // an empty test is said in words alone
};

/// Every drawing there is.
const std::vector<Drawing>& drawings();
/// `letters`: kindLetters of the piano; one that the drawing shows is enough. Null: nothing is drawn.
const Drawing* drawingOf(std::string_view step, std::string_view letters);

// One part of the action each.
std::vector<Drawing> keyDrawings();
std::vector<Drawing> punchingDrawings();
std::vector<Drawing> capstanDrawings();
std::vector<Drawing> letOffDrawings();
std::vector<Drawing> railDrawings();
std::vector<Drawing> hammerDrawings();
std::vector<Drawing> headDrawings();
std::vector<Drawing> damperDrawings();
std::vector<Drawing> grandDrawings();

} // namespace hammerline::doing
