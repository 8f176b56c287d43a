// Section files: TOML tables turned into a section.
#include <fmt/format.h>

#include <algorithm>
#include <set>

#include "tools/answer/plain_text.hpp"
#include "tools/section/fill_kernel.hpp"
#include "tools/section/frame_figures.hpp"
#include "tools/section/section_file.hpp"
#include "tools/section/sides_kernel.hpp"

namespace dewgap::tools {
namespace {

using namespace section_file;

std::vector<SectionPoint> rectangle(SectionPoint one, SectionPoint other) {
  const SectionPoint low{std::min(one.x_m, other.x_m), std::min(one.y_m, other.y_m)};
  const SectionPoint high{std::max(one.x_m, other.x_m), std::max(one.y_m, other.y_m)};
  return {low, {high.x_m, low.y_m}, high, {low.x_m, high.y_m}};
}

/// [stack]: where the layers begin and which way they follow each other.
struct Stack {
  bool along_x = true;
  SectionPoint next;
  double across_m = 0.0;
};

class Reading {
 public:
  explicit Reading(const TomlNode::Table& root) : root_(root) {}

  ReadSection read() {
    refuse_unknown();
    read_heading();
    if (const auto* own = table("materials")) take(materials_.read(*own));
    read_stack();
    each("layers", [&](TableKeys& keys) { read_layer(keys); });
    each("items", [&](TableKeys& keys) { read_item(keys); });
    each("sides", [&](TableKeys& keys) { read_side(keys); });
    each("points", [&](TableKeys& keys) { read_point(keys); });
    read_frame();
    check_whole();
    std::stable_sort(problems_.begin(), problems_.end(), [](const FileProblem& a, const FileProblem& b) {
      return std::pair(a.mark.line, a.mark.column) < std::pair(b.mark.line, b.mark.column);
    });
    return {std::move(file_), std::move(problems_)};
  }

 private:
  void report(TextMark mark, std::string what) { problems_.push_back({mark, std::move(what)}); }
  void take(const std::vector<FileProblem>& problems) {
    problems_.insert(problems_.end(), problems.begin(), problems.end());
  }
  void take(const TableKeys& keys) { take(keys.problems()); }

  void refuse_unknown() {
    const auto known = table_names();
    for (const auto& entry : root_) {
      if (std::find(known.begin(), known.end(), entry.key) != known.end()) continue;
      const bool is_table = std::holds_alternative<TomlNode::Table>(entry.node.value);
      report(entry.mark, fmt::format("{}: {}{}", one_line(entry.key, 40),
                                     is_table ? "unknown section" : "unknown key outside all sections",
                                     nearest_hint(entry.key, known)));
    }
  }

  const TomlEntry* find(std::string_view name) const { return entry_of(root_, name); }

  const TomlNode::Table* table(std::string_view name) {
    const auto* entry = find(name);
    if (entry == nullptr) return nullptr;
    const auto* keys = std::get_if<TomlNode::Table>(&entry->node.value);
    if (keys == nullptr)
      report(entry->node.mark, fmt::format("{0}: {1} is {2}, not a section; write [{0}] on a line of its own",
                                           name, value_text(entry->node), kind_text(entry->node)));
    return keys;
  }

  template <class Work>
  void each(std::string_view name, const Work& work) {
    const auto* entry = find(name);
    if (entry == nullptr) return;
    const auto* list = std::get_if<TomlNode::List>(&entry->node.value);
    const auto is_table = [](const TomlNode& node) {
      return std::holds_alternative<TomlNode::Table>(node.value);
    };
    if (list == nullptr || !std::all_of(list->begin(), list->end(), is_table)) {
      report(entry->node.mark, fmt::format("{0}: not a list of sections; write [[{0}]] above each", name));
      return;
    }
    for (std::size_t i = 0; i < list->size(); ++i) {
      const auto& keys = std::get<TomlNode::Table>((*list)[i].value);
      TableKeys one(name, part_path(name, keys, i), keys, (*list)[i].mark);
      work(one);
      take(one);
    }
  }

  static std::string part_path(std::string_view table, const TomlNode::Table& keys, std::size_t place) {
    for (const auto& entry : keys)
      if (const auto* text = std::get_if<std::string>(&entry.node.value); entry.key == "name" && text)
        return fmt::format("{} \"{}\"", table, one_line(*text, 40));
    return fmt::format("{} {}", table, place + 1);
  }

  void read_heading() {
    const auto* keys = table("section");
    if (keys == nullptr && find("section") != nullptr) return;
    const auto mark = keys == nullptr ? TextMark{} : find("section")->mark;
    const TomlNode::Table none;
    TableKeys heading("section", "section", keys == nullptr ? none : *keys, mark);
    if (keys != nullptr) {
      file_.name = heading.text("name");
      file_.note = heading.text("note");
      if (heading.word("cavities") == 1U) file_.cavities = CavityRule::solved_walls;
      if (const auto shown = heading.numbers("shown_mm"); !shown.empty()) {
        const auto corners =
            rectangle({1e-3 * shown[0], 1e-3 * shown[1]}, {1e-3 * shown[2], 1e-3 * shown[3]});
        file_.shown = ShownPart{corners[0], corners[2]};
        if (!(corners[2].x_m > corners[0].x_m && corners[2].y_m > corners[0].y_m))
          heading.refuse("shown_mm", "has no area");
      }
    }
    take(heading);
  }

  void read_stack() {
    const auto* keys = table("stack");
    if (keys == nullptr) return;
    TableKeys given("stack", "stack", *keys, find("stack")->mark);
    const auto along = given.word("along");
    const auto from = given.numbers("from_mm");
    const auto across = given.number("across_mm");
    if (along && across && !from.empty())
      stack_ = Stack{*along == 0, {1e-3 * from[0], 1e-3 * from[1]}, 1e-3 * *across};
    take(given);
  }

  void add_item(TableKeys& keys, std::vector<SectionPoint> polygon, std::vector<std::string> replaces) {
    const auto filled = fill_of(keys, materials_);
    const auto name = keys.text("name");
    file_.section.items.push_back({name, filled.fill, std::move(polygon), std::move(replaces)});
    file_.looks.push_back(filled.look);
    file_.items.push_back({name, keys.path(), keys.mark()});
    if (const auto* open = std::get_if<OpenFill>(&filled.fill))
      opened_.push_back({open->boundary, keys.path(), keys.mark_of("cavity")});
  }

  void read_layer(TableKeys& keys) {
    if (find("stack") == nullptr)
      keys.report(keys.mark(), "layers need a [stack]: along, from_mm and across_mm");
    const double thickness_m = 1e-3 * keys.number("thickness_mm").value_or(0.0);
    const Stack stack = stack_.value_or(Stack{});
    SectionPoint end = stack.next;
    (stack.along_x ? end.x_m : end.y_m) += thickness_m;
    SectionPoint far = end;
    (stack.along_x ? far.y_m : far.x_m) += stack.across_m;
    add_item(keys, rectangle(stack.next, far), {});
    if (stack_) stack_->next = end;
  }

  void read_item(TableKeys& keys) {
    std::vector<SectionPoint> polygon = keys.points("polygon_mm");
    if (const auto corners = keys.numbers("rectangle_mm"); !corners.empty())
      polygon = rectangle({1e-3 * corners[0], 1e-3 * corners[1]}, {1e-3 * corners[2], 1e-3 * corners[3]});
    if (keys.has("polygon_mm") == keys.has("rectangle_mm"))
      keys.report(keys.mark(), keys.has("polygon_mm")
                                   ? "both rectangle_mm and polygon_mm; give one of them"
                                   : "neither rectangle_mm = [x, y, x, y] nor polygon_mm = [[x, y], ...]");
    auto replaces = keys.texts("replaces");
    for (const auto& name : replaces) require_earlier(keys, name);
    add_item(keys, std::move(polygon), std::move(replaces));
  }

  void require_earlier(TableKeys& keys, const std::string& name) const {
    std::vector<std::string> earlier;
    for (const auto& item : file_.items) earlier.push_back(item.name);
    if (std::find(earlier.begin(), earlier.end(), name) == earlier.end())
      keys.report(keys.mark_of("replaces"), fmt::format("replaces: \"{}\" is no earlier item or layer{}",
                                                        one_line(name, 40), nearest_hint(name, earlier)));
  }

  void read_side(TableKeys& keys) {
    file_.section.boundaries.push_back(side_of(keys));
    file_.sides.push_back({file_.section.boundaries.back().name, keys.path(), keys.mark()});
  }

  void read_point(TableKeys& keys) {
    const auto name = keys.text("name");
    if (const auto at = keys.numbers("at_mm"); !at.empty())
      file_.points.push_back({name, {1e-3 * at[0], 1e-3 * at[1]}, keys.mark_of("at_mm")});
  }

  void read_frame() {
    const auto* keys = table("frame");
    if (keys == nullptr) return;
    TableKeys given("frame", "frame", *keys, find("frame")->mark);
    const auto length = given.number("length_mm");
    const auto beside_mm = given.number("beside_mm");
    auto beside = given.texts("beside");
    if (given.has("beside") && beside.empty() && given.problems().empty())
      given.refuse("beside", "names nothing");
    const auto u_value = given.number("frame_u_value_W_m2K");
    if (length && beside_mm && !beside.empty()) {
      file_.frame = FrameBeside{1e-3 * *length, std::move(beside), 1e-3 * *beside_mm, u_value, given.mark()};
      take(frame_problems(file_));
    }
    take(given);
  }

  void check_whole() {
    if (find("items") == nullptr && find("layers") == nullptr)
      report({}, "items: missing; a section has at least one of [[items]] or [[layers]]");
    if (find("sides") == nullptr)
      report({}, "sides: missing; a section has [[sides]]: room, outdoors and cut-offs");
    if (file_.items.size() > most_parts)
      report(file_.items[most_parts].mark,
             fmt::format("items: {} items and layers (permitted: up to {})", file_.items.size(), most_parts));
    check_lines();
    std::vector<std::string> names;
    for (const auto& side : file_.sides) names.push_back(side.name);
    for (const auto& open : opened_)
      if (std::find(names.begin(), names.end(), open.name) == names.end())
        report(open.mark, fmt::format("{}: cavity: open to \"{}\", which is no side{}", open.path,
                                      one_line(open.name, 40), nearest_hint(open.name, names)));
  }

  /// Every line of the drawing is carried through all of it.
  void check_lines() {
    constexpr std::size_t most_fields = 250'000;
    std::set<double> x, y;
    for (const auto& item : file_.section.items)
      for (const auto& point : item.polygon) {
        x.insert(point.x_m);
        y.insert(point.y_m);
      }
    if (x.size() * y.size() > most_fields)
      report({},
             fmt::format("items: their edges lie on {} lines along y and {} along x, which make {} fields "
                         "(permitted: up to {})",
                         x.size(), y.size(), x.size() * y.size(), most_fields));
  }

  const TomlNode::Table& root_;
  SectionFile file_;
  Materials materials_;
  std::optional<Stack> stack_;
  std::vector<FilePart> opened_;  ///< name: of the side that a cavity is open to
  std::vector<FileProblem> problems_;
};

}  // namespace

ReadSection read_section(std::string_view text) {
  const TomlText toml = read_toml(text);
  if (!toml.fault) return Reading(toml.root).read();
  ReadSection read;
  read.problems.push_back({toml.fault->mark, toml.fault->what});
  if (!toml.fault->hint.empty()) read.problems.push_back({toml.fault->mark, "hint: " + toml.fault->hint});
  return read;
}

}  // namespace dewgap::tools
