#include "tools/verbs/section.hpp"

#include <fmt/format.h>

#include <CLI/CLI.hpp>
#include <charconv>

#include "tools/answer/plain_text.hpp"
#include "tools/failure.hpp"
#include "tools/files.hpp"
#include "tools/section/section_answer.hpp"
#include "tools/section/section_drawing.hpp"
#include "tools/verbs/usage.hpp"

namespace dewgap::tools {
namespace {

constexpr const char* section_footer =
    R"(A cut through a window's edge, drawn in a TOML file, lengths in mm, x to the right, y upwards.
  Examples: examples/section/. In the file:
  [section]    name; note; cavities = "standard difference" (10 K) or "solved walls";
               shown_mm = [x, y, x, y], the part that the drawing shows
  [materials]  own ones, W/(m K): old_putty = 0.4. Carried without being listed: glass, acrylic,
               polycarbonate, softwood, hardwood, steel, putty, brick and others
  [[items]]    name; material, or cavity = "unventilated", "slightly ventilated" or "open to NAME" of a
               side, or conductance_W_m2K of a gap; rectangle_mm = [x, y, x, y] or polygon_mm =
               [[x, y], ...]; replaces = ["..."], items that it is drawn over; emissivities of a cavity
  [stack]      along = "x" or "y"; from_mm = [x, y]; across_mm: for
  [[layers]]   name; material (or as in items); thickness_mm: one behind the other, under the items
  [[sides]]    name; kind = "room", "outdoors" or "cut-off"; temperature_C; resistance_m2K_W of the
               surface; corner_resistance_m2K_W within corner_reach_mm of inner corners; its outer edges:
               on_x_mm = [...], on_y_mm = [...], between_mm = [[x, y], [x, y]], along_mm = the same, all
               the way round from the first point to the second with the section on the left
  [[points]]   name; at_mm = [x, y]: whose temperature is asked for
  [frame]      for Uf or Psi of ISO 10077-2: length_mm, the frame's projected length; beside = ["..."],
               panes and gaps beside it from air to air, or the panel; beside_mm, their visible length;
               frame_u_value_W_m2K, known from a section with the panel: then Psi is told, else Uf
Every outer edge belongs to one side. L2D is held between two schemes and its error bound is proved; the
  error of a temperature is an estimate. Left out: moisture, heat carried by air, heat along the length.
Exit codes: 0 answered; 1 the bounds were not reached, and what was is on stderr; 2 bad input or usage; 3 a
  file cannot be read or written. Anything but 0: no answer at all.)";

double bound_of(const std::string& typed, double otherwise) {
  if (typed.empty()) return otherwise;
  double value = 0.0;
  const auto* end = typed.data() + typed.size();
  const auto [at, error] = std::from_chars(typed.data(), end, value);
  if (error != std::errc() || at != end || !(value >= 1e-9 && value <= 0.1))
    bad_usage("section", fmt::format("--bound {}: must be a number from 1e-9 to 0.1, a share of L2D",
                                     one_line(typed, 40)));
  return value;
}

SectionOptions options_of(const SectionVerb& verb, const SectionFile& file) {
  SectionOptions options;
  options.coupling_error_bound = bound_of(verb.bound, options.coupling_error_bound);
  options.max_cells = static_cast<std::size_t>(
      whole_number({"section", "--most-cells", 100, 4'000'000}, verb.most_cells, options.max_cells));
  options.cavities = file.cavities;
  for (const auto& point : file.points) options.watched.push_back(point.at);
  if (verb.points_only) options.aim = SectionAim::temperatures_only;
  return options;
}

SectionFile read_file(const SectionVerb& verb, Streams streams) {
  auto read = read_section(read_whole(verb.path, streams));
  if (verb.points_only && read.problems.empty() && read.file.points.empty())
    bad_usage("section", "--points-only: the file has no [[points]]");
  if (!read.problems.empty())
    throw Failure(ExitCode::bad_input, problem_lines(file_title(verb.path), read.problems));
  return std::move(read.file);
}

/// What the library or the drawing refuses is told at the file's lines.
template <class Work>
auto with_file(const SectionVerb& verb, const SectionFile& file, const Work& work) {
  try {
    return work();
  } catch (const InvalidInput& refused) {
    throw Failure(ExitCode::bad_input, problem_lines(file_title(verb.path), drawing_problems(file, refused)));
  }
}

SolvedSection solved_section(const SectionVerb& verb, Streams streams) {
  SolvedSection solved{read_file(verb, streams), {}, {}};
  solved.options = options_of(verb, solved.file);
  solved.result =
      with_file(verb, solved.file, [&] { return verb.compute(solved.file.section, solved.options); });
  if (solved.result.status != SectionStatus::converged)
    throw Failure(ExitCode::not_computed,
                  fmt::format("dewgap section: {}: {}\n", file_title(verb.path), reached_text(solved)));
  return solved;
}

std::string in_form(const SolvedSection& solved, const SectionVerb& verb) {
  if (verb.json) return json_section(solved);
  if (verb.csv) return csv_section(solved);
  return verb.svg ? section_picture(solved, "section").svg() : text_section(solved);
}

}  // namespace

void SectionVerb::set_up(CLI::App& verb) {
  // The file is not marked as required here: a missing one would hide an option that is not known.
  verb.add_option("FILE", path, "section file, or - for stdin")->type_name("FILE");
  auto* as_json = verb.add_flag("--json", json, "answer for programs; its form: dewgap schema --section");
  auto* as_svg = verb.add_flag("--svg", svg, "the drawing with isotherms")->excludes(as_json);
  verb.add_flag("--csv", csv, "temperatures along the room side")->excludes(as_json)->excludes(as_svg);
  verb.add_option("--bound", bound, "how far L2D may be wrong, a share, 1e-9 to 0.1; as a rule 5e-4")
      ->type_name("SHARE");
  verb.add_option("--most-cells", most_cells, "of a grid, 100 to 4000000; as a rule 400000")->type_name("N");
  verb.add_flag("--points-only", points_only,
                "temperatures of [[points]] alone, where faces of no resistance touch");
  verb.add_option("--output", output, "file for the answer; as a rule - for stdout")->type_name("FILE");
  verb.footer(section_footer);
}

void SectionVerb::run(Streams streams) const {
  if (path.empty()) bad_usage("section", "which section file?");
  if (output != "-" && same_file(path, output))
    bad_usage("section", "--output would overwrite the section file");
  const auto solved = solved_section(*this, streams);
  write_whole(output, with_file(*this, solved.file, [&] { return in_form(solved, *this); }), streams);
}

}  // namespace dewgap::tools
