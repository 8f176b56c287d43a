#include <fmt/format.h>

#include <algorithm>

#include "tools/drawing/markup.hpp"
#include "tools/setting_out/drawings.hpp"
#include "tools/setting_out/setting_out.hpp"

namespace dewgap::tools {
namespace {

constexpr double page_width = 186.0;
constexpr double gap = 6.0;

/// Why there is no drawing.
SvgDrawing reasons_drawing(const WindowToSet& window, const std::string& id) {
  SvgDrawing drawing({.width = page_width,
                      .height = 12.0 + 12.0 * static_cast<double>(window.reasons.size()),
                      .id = id,
                      .title = "Not drawn",
                      .description = "Why this window is not set out."});
  const std::string_view word = window.state == WorkState::hold    ? "HOLD: settle first"
                                : window.state == WorkState::leave ? "LEAVE"
                                                                   : "Cannot be done as measured";
  drawing.text({2.0, 6.0}, word, {.size = 4.5, .weight = FontWeight::bold});
  double y = 12.0;
  for (const auto& reason : window.reasons)
    y = drawing.text_lines({2.0, y}, reason, {.size = 3.2, .most_width = page_width - 4.0});
  return drawing;
}

/// Drawings below each other.
class Column {
 public:
  void heading(std::string_view words) {
    const auto fitted = fitted_text(words, page_width, 4.5, 3.0, FontWeight::bold);
    body_ += fmt::format(R"(<text x="2" y="{}" font-size="{}" font-weight="bold">{}</text>)",
                         svg_number(height_ + 6.0), svg_number(fitted.size), escaped(fitted.text)) +
             "\n";
    height_ += 10.0;
  }
  void add(const SvgDrawing& drawing) {
    auto element = drawing.svg();
    element.insert(4, fmt::format(R"( x="0" y="{}")", svg_number(height_)));
    for (const std::string unit : {"width", "height"}) drop_unit(element, unit);
    body_ += element;
    height_ += drawing.canvas().height + gap;
    width_ = std::max(width_, drawing.canvas().width);
  }
  std::string svg() const {
    return fmt::format(
        "<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n<svg xmlns=\"http://www.w3.org/2000/svg\" "
        "width=\"{0}mm\" height=\"{1}mm\" viewBox=\"0 0 {0} {1}\" font-family=\"sans-serif\">\n{2}</svg>\n",
        svg_number(width_), svg_number(height_), body_);
  }

 private:
  /// An inner drawing's size is in units of the outer one.
  static void drop_unit(std::string& element, const std::string& name) {
    const auto start = element.find(name + "=\"") + name.size() + 2;
    const auto unit = element.find("mm\"", start);
    if (unit < element.find('>')) element.erase(unit, 2);
  }

  double width_ = page_width;
  double height_ = 0.0;
  std::string body_;
};

}  // namespace

std::string svg_setting_out(const JobToSet& job) {
  Column column;
  for (const auto& window : job.windows) {
    const auto id = fmt::format("w{}", window.number);
    column.heading(window.title(80));
    if (window.state != WorkState::set_out) {
      column.add(reasons_drawing(window, id));
      if (window.state == WorkState::refused) column.add(refused_opening_drawing(window, id + "-opening"));
      continue;
    }
    column.add(elevation_drawing(window, id + "-sheet"));
    column.add(section_drawing(window, id + "-cut"));
  }
  if (!job.cut_list) return column.svg();
  column.heading("Cut list");
  const auto& groups = job.cut_list->groups;
  for (std::size_t i = 0; i < groups.size(); ++i)
    for (std::size_t layout = 0; layout < groups[i].layouts.size(); ++layout)
      column.add(stock_drawing(groups[i], layout, fmt::format("stock-{}-{}", i + 1, layout + 1)));
  return column.svg();
}

}  // namespace dewgap::tools
