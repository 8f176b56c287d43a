// The parts of a section's drawing: where things stand on paper, and what is drawn in which order.
#pragma once

#include <string>
#include <vector>

#include "tools/section/isotherms.hpp"
#include "tools/section/section_drawing.hpp"

namespace dewgap::tools::section_picture_kernel {

inline constexpr double text_size = 2.8;
inline constexpr double side_margin = 27.0;  ///< left and right of the section, for the names of its sides
inline constexpr double top = 22.0;          ///< of the section, under the headings
inline constexpr double most_width = 170.0;
inline constexpr double most_height = 150.0;
inline constexpr double label_width = 56.0;
inline constexpr double least_page_width = 190.0;
inline constexpr double label_step = 4.6;
inline constexpr double legend_row = 5.6;
/// Parts that are thinner on paper are drawn solid, and no thinner than half of this.
inline constexpr double thin_part = 0.7;

struct PartLabel {
  Point part;
  std::string words;
  FontWeight weight = FontWeight::regular;
};

/// One entry of the legend.
struct LegendEntry {
  Material hatch;
  std::string words;
};

/// Section coordinates, m, to paper, mm.
struct Layout {
  ShownPart shown;
  double ratio = 1.0;  ///< mm of the section to one of the paper
  double left = side_margin;
  double section_top = top;

  double width() const { return 1e3 * (shown.high.x_m - shown.low.x_m) / ratio; }
  double height() const { return 1e3 * (shown.high.y_m - shown.low.y_m) / ratio; }
  Point at(SectionPoint point) const {
    return {left + 1e3 * (point.x_m - shown.low.x_m) / ratio,
            section_top + 1e3 * (shown.high.y_m - point.y_m) / ratio};
  }
  double tolerance_m(double on_paper_mm) const { return 1e-3 * on_paper_mm * ratio; }
};

/// The layout for the whole section or the part that the file shows.
Layout layout_of(const SolvedSection& solved);
/// "1:2", "2:1".
std::string scale_text(double ratio);

/// Names of the items that are seen, each with a point inside it; the coldest point of the room side among
/// them. From top to bottom, so that lines to a column at the right do not cross.
std::vector<PartLabel> part_labels(const SolvedSection& solved, const Layout& layout);
std::vector<LegendEntry> legend_entries(const SolvedSection& solved);

/// Part of a polygon within the rectangle.
std::vector<SectionPoint> clipped_polygon(const std::vector<SectionPoint>& polygon, const ShownPart& shown);

bool overlaps(const Box& one, const Box& other);
/// Box of a text whose baseline is centred at a point.
Box centred_box(Point at, std::string_view words, double size, FontWeight weight = FontWeight::regular);
bool crosses(Point from, Point to, const Box& box);

/// Draws onto one canvas, in the order of its functions.
class Picture {
 public:
  Picture(const SolvedSection& solved, const std::string& id);
  SvgDrawing drawn() &&;

 private:
  void headings();
  void parts();
  void shown_border();
  void faces();
  void isotherms();
  void coldest();
  void labels();
  void side_names();
  void isotherm_labels();
  void key(double y);
  void legend(double y);

  double bottom() const;
  double label_left() const { return 2.0 * layout_.left + layout_.width(); }
  Point label_at(std::size_t place) const;
  void name_side(std::size_t side);
  void label_level(std::size_t level);
  std::size_t crowd(const Box& box, std::size_t level) const;
  bool is_free(const Box& box) const;
  bool over_section(const Box& box) const;
  std::string ink(std::size_t level) const;
  std::string level_text(std::size_t level) const;

  const SolvedSection& solved_;
  Layout layout_;
  std::vector<PartLabel> labels_;
  std::vector<LegendEntry> legend_;
  IsothermLevels levels_;
  std::vector<std::vector<std::vector<Point>>> lines_;  ///< by level, on paper
  std::vector<Box> taken_;                              ///< by texts on or beside the section
  SvgDrawing drawing_;
};

}  // namespace dewgap::tools::section_picture_kernel
